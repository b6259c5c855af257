"""Names from the right on the desk and in the companion: in isolates, or elements that are ones
(HTML, 4.5.25: bdi; 3.2.6: dir=auto), so that a browser turns no line of ours round (UAX 9, 2.4).
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from browser import DESKTOP, begin, opened
from companions import go, post
from desk_pages import at_desk, post_text, served
from playwright.sync_api import Browser, Page, expect

NAME, LABEL, BRAND = "שער 30 (קריאה) Foxglove!", "زهري 3 (فاتح)", "בלונים 7"
EVENT = f"""event: 1
name: {NAME}
designs: [{{design: post.yaml}}]
crew: 2
opening: "10:00"
"""
# What stands where no isolate keeps it: texts, and what is said of a picture or a button.
BARE = r"""() => {
  const letters = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/;
  const turns = (text) => {
    let depth = 0;
    for (const sign of text) {
      if (sign === "\u2068") depth += 1;
      else if (sign === "\u2069") depth -= 1;
      else if (depth === 0 && letters.test(sign)) return true;
    }
    return false;
  };
  const found = [];
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) {
    const within = texts.currentNode.parentElement;
    const own = within.closest("bdi, [dir=auto], script, style")
      || getComputedStyle(within).unicodeBidi === "plaintext";
    if (!own && turns(texts.currentNode.data)) found.push(within.outerHTML);
  }
  for (const one of document.querySelectorAll("*"))
    for (const key of ["title", "aria-label", "alt", "placeholder"])
      if (turns(one.getAttribute(key) ?? "")) found.push(`${key}: ${one.getAttribute(key)}`);
  for (const one of document.querySelectorAll("input[type=text], input[type=search], textarea"))
    if (one.dir === "" && getComputedStyle(one).unicodeBidi !== "plaintext")
      found.push(one.outerHTML);
  return found;
}"""


def bare(page: Page) -> list[str]:
    found = page.evaluate(BARE)
    assert isinstance(found, list)
    return found


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory, browser: Browser) -> Iterator[str]:
    folder = tmp_path_factory.mktemp("from_right")
    text = post_text(NAME).replace("deep blue", LABEL)
    assert LABEL in text
    (folder / "post.yaml").write_text(text, encoding="utf-8")
    (folder / "job.event.yaml").write_text(EVENT, encoding="utf-8")
    (folder / "brand.yaml").write_text(f"name: {BRAND}\n", encoding="utf-8")
    with served(folder) as found:
        yield found


@pytest.mark.parametrize("place", ["#home", "#new", "#post/piece", "#post/file", "#post/print"])
def test_no_name_turns_round_a_line_of_the_desk(browser: Browser, address: str, place: str) -> None:
    with at_desk(browser, address, place, size=DESKTOP) as found:
        page = found.page
        if place == "#post/piece":
            expect(page.locator("bdi", has_text=LABEL).last).to_be_visible()
        if place == "#post/print":
            expect(page.get_by_text(NAME).first).to_be_visible()
            page.get_by_label("Edition").select_option("sale")
        if place == "#home":
            page.get_by_role("button", name="Copy").first.click()
            # what is proposed as a name can be one: no sign of direction is in it
            assert page.locator("dialog input").input_value().isprintable()
        page.wait_for_load_state("networkidle")
        assert bare(page) == []


def test_no_name_turns_round_a_line_of_the_companion(browser: Browser, tmp_path: Path) -> None:
    told = {"name": NAME, "label": LABEL, "brand": BRAND, "note": "קשרו חזק (2), Foxglove."}
    found = opened(browser, post(tmp_path, "sale", buyer=NAME, **told))
    assert bare(found.page) == []
    begin(found.page)
    for screen in ("step", "list", "find", "film", "burst", "more"):
        go(found, screen)
        assert bare(found.page) == [], screen
    found.page.context.close()
