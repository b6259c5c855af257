"""The companion in a browser: offline, silent, by keyboard alone, with anybody's words in it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from browser import DESKTOP, FLAT, WEB, begin, opened
from companions import ORDINARY, go, post, written
from playwright.sync_api import Browser
from screen_pieces import GREAT_WALL, VOICES, book

from buildplan.booklet.common.book import gather_book
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.screen.page import companion

SCREENS = ("step", "list", "find", "film", "burst", "more")
TAKEN = 250  # milliseconds until a drawing has begun


@pytest.fixture(scope="module")
def star(tmp_path_factory: pytest.TempPathFactory) -> Path:
    page = companion(book("reading_star"), VOICES)
    return written(tmp_path_factory.mktemp("star"), "star.html", page)


def test_same_book_same_bytes_and_small_enough(star: Path) -> None:
    assert star.read_text("utf-8") == companion(book("reading_star"), VOICES)
    assert star.stat().st_size < 1_600_000


def test_three_thousand_balloons_are_small_enough_too(tmp_path: Path) -> None:
    read = read_design(written(tmp_path, "wall.yaml", GREAT_WALL))
    wall = gather_book(read, PAPERS["a4"], read.units, "crew")
    assert 2_900 < wall.facts.total < 3_100
    assert len(companion(wall, VOICES).encode()) < 3_000_000


def test_readme_names_what_is_built_in_and_its_licence() -> None:
    """The bundle's own list says: name, version (licence)."""
    readme = (WEB.parents[2] / "README.md").read_text("utf-8")
    listed = (WEB.parent / "bundle" / "LICENCES.txt").read_text("utf-8")
    found = re.findall(r"^([\w-]+) (\d\S+) \((\w+)\)$", listed, re.MULTILINE)
    assert [name for name, _, _ in found] == ["fflate", "qr", "three"]
    for name, version, licence in found:
        assert re.search(rf"{name}(\.js)? {re.escape(version)}", readme)
        assert licence == "MIT"


def test_the_page_forbids_every_request() -> None:
    page = companion(book("reading_star"), VOICES)
    policy = re.search(r'Content-Security-Policy" content="([^"]*)"', page)
    assert policy is not None
    assert "default-src &#x27;none&#x27;" in policy[1]
    assert "http" not in policy[1]
    assert "unsafe" not in policy[1]


def test_every_screen_opens_without_a_request_or_a_message(browser: Browser, star: Path) -> None:
    found = opened(browser, star, fragment="")
    begin(found.page)
    for screen in (*SCREENS, "step"):
        go(found, screen)
        found.page.wait_for_timeout(TAKEN)
    found.page.wait_for_selector(".stage[data-painter=webgl]")
    assert found.said == []
    assert found.asked == [star.as_uri()]


def test_without_webgl_there_are_pictures_all_the_same(browser: Browser, tmp_path: Path) -> None:
    found = opened(browser, post(tmp_path))
    begin(found.page)
    assert found.page.get_attribute(".stage", "data-painter") == "flat"
    found.page.wait_for_function(
        """() => {
          const c = document.querySelector('.stage canvas')
          return c.getContext('2d').getImageData(0, 0, c.width, c.height).data.some(v => v > 0)
        }"""
    )
    assert found.said == []


SCRIPT = '"><script>window.ran=1</script><img src=x onerror="window.ran=1">'
SHORT = "\"><img src=x onerror='window.ran=1'>"


# where the first letter of some words and a later sign of them stand, from the left
PLACES = """node => {
  const text = document.createTreeWalker(node, NodeFilter.SHOW_TEXT).nextNode();
  return [0, text.data.indexOf("F")].map(at => {
    const range = document.createRange();
    range.setStart(text, at);
    range.setEnd(text, at + 1);
    return range.getBoundingClientRect().left;
  });
}"""


def test_a_name_from_the_right_begins_at_its_right_end(browser: Browser, tmp_path: Path) -> None:
    """Unicode Standard Annex 9, P2 and P3: though the page is written from the left."""
    name = "\u05db\u05d5\u05db\u05d1 3 Foxglove"
    words = {"name": name, "brand": name, "contact": name, "licence": name}
    found = opened(browser, post(tmp_path, "sale", "Zed", **words))
    seen = ["header .name", "header .brand", "h1"]
    places = [found.page.locator(one).first.evaluate(PLACES) for one in seen]
    begin(found.page)
    go(found, "more")
    told = found.page.get_by_text(name)
    places += [told.nth(at).evaluate(PLACES) for at in range(told.count())]
    assert len(places) > len(seen) + 2
    assert all(latin < begins for begins, latin in places), places


def test_words_with_markup_are_shown_and_never_run(browser: Browser, tmp_path: Path) -> None:
    """Markup in every field of the design, the brand and the buyer, and in one's own notes."""
    words = dict.fromkeys(ORDINARY, SCRIPT) | {"label": SHORT}
    found = opened(browser, post(tmp_path, "sale", SCRIPT, **words))
    page = found.page
    begin(page)
    shown = page.inner_text("body")
    page.click(".timing summary")
    page.fill("#note", SCRIPT)
    for screen in SCREENS:
        go(found, screen)
        shown += page.inner_text("body")
    page.fill("#code", "x" * 10_000)
    page.click("text=Take these ticks over")
    go(found, "find")
    page.fill("#joint", SCRIPT)
    shown += page.inner_text("main")
    assert f"There is no joint {SCRIPT}." in shown
    assert f"made for {SCRIPT}" in shown
    assert shown.count(SCRIPT) > 20
    assert SHORT in shown
    page.evaluate("dispatchEvent(new Event('beforeprint'))")
    assert SCRIPT in (page.text_content(".printed") or "")
    assert page.evaluate("window.ran") is None
    assert page.locator("img, main script, .printed script").count() == 0
    assert found.said == []


def test_the_printed_pictures_are_there_and_the_map_leads_to_a_joint(
    browser: Browser, star: Path
) -> None:
    found = opened(browser, star, fragment="#step-11")
    page = found.page
    begin(page)
    assert page.inner_text(".where .count").startswith("Step 11 of")
    page.wait_for_selector(".moves .printed-picture")
    assert "brace" in (page.get_attribute(".moves .printed-picture", "aria-label") or "").lower()
    go(found, "find")
    page.wait_for_selector(".printed-picture")
    labels = set(page.locator(".printed-picture text").all_text_contents())
    assert set(book("reading_star").framework.joints) <= labels
    page.locator(".printed-picture text", has_text=re.compile("^C7$")).first.click(force=True)
    assert page.input_value("#joint") == "C7"
    assert page.locator(".printed-picture .ring").count() >= 1
    assert found.said == []


def test_another_language_changes_every_word(browser: Browser, star: Path) -> None:
    found = opened(browser, star)
    page = found.page
    begin(page)
    go(found, "more")
    page.select_option("#language", "es")
    go(found, "step")
    assert page.evaluate("document.documentElement.lang") == "es"
    assert page.inner_text(".next") == "Siguiente"
    assert "Step" not in page.inner_text("body")


def test_the_seat_comes_back_with_one_tap(browser: Browser, star: Path) -> None:
    found = opened(browser, star, size=DESKTOP)
    page = found.page
    begin(page)
    go(found, "list")
    page.click("ol.steps button:has-text('Braces 6')")
    first = "document.querySelectorAll('.over [data-order=\"1\"]')"
    place = f"() => [...{first}].map(g => g.getAttribute('transform')).join()"
    page.wait_for_selector(".over [data-order='1']", state="attached")
    before = page.evaluate(place)
    page.focus(".stage")
    page.keyboard.press("ArrowLeft")
    page.wait_for_function(f"was => ({place})() !== was", arg=before)
    page.click(".seat")
    page.wait_for_function(f"was => ({place})() === was", arg=before)


def test_what_the_words_name_is_tapped_and_there_is_a_way_back(
    browser: Browser, star: Path
) -> None:
    """Steps, joints and stages; back by the page's button, and by the browser's."""
    found = opened(browser, star, fragment=f"{FLAT}#step-12")
    page = found.page
    begin(page)
    page.click(".text .ref:text-is('11')")
    assert page.inner_text(".where .count").startswith("Step 11 of")
    page.click(".way-back")
    assert page.inner_text(".where .count").startswith("Step 12 of")
    page.click(".text .ref:text-is('B4')")
    page.wait_for_selector("main.find")
    assert page.input_value("#joint") == "B4"
    page.click(".found .steps button:has-text('Braces 3 and 4')")
    assert page.inner_text(".where .count").startswith("Step 12 of")
    assert page.inner_text(".way-back") == "Back to Find"
    page.go_back()
    page.wait_for_selector("main.find")
    assert page.input_value("#joint") == "B4"
    page.go_back()
    page.wait_for_selector("main.step")
    page.click(".where .ref")
    page.wait_for_selector("main.list")
    assert page.evaluate("document.activeElement.textContent").startswith("Brace")
    assert found.said == []
    assert len(found.asked) == 1


def test_a_label_in_the_picture_leads_to_its_joint(browser: Browser, star: Path) -> None:
    found = opened(browser, star, fragment=f"{FLAT}#step-13")
    page = found.page
    begin(page)
    page.wait_for_selector(".over [data-joint=A6]", state="attached")
    place = page.eval_on_selector(
        ".over [data-joint=A6]",
        "g => (r => [r.left, r.top])(g.querySelector('circle').getBoundingClientRect())",
    )
    page.mouse.click(place[0] + 6, place[1] + 6)
    page.wait_for_selector("main.find")
    assert page.input_value("#joint") == "A6"
