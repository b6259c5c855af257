"""The companion in a browser: offline, silent, by keyboard alone, with anybody's words in it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from browser import DESKTOP, FLAT, WEB, begin, chromium, node_module, opened
from companions import ORDINARY, go, post, written
from playwright.sync_api import Browser
from screen_pieces import GREAT_WALL, VOICES, book

from buildplan.booklet.common.book import gather_book
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.screen.page import companion

AXE = """async theme => {
  document.documentElement.dataset.theme = theme
  return (await axe.run()).violations
}"""
SCREENS = ("step", "list", "find", "film", "burst", "more")
TAKEN = 250  # milliseconds until a drawing has begun


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as found:
        yield found


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
    assert [name for name, _, _ in found] == ["three", "qr"]
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
    drawn = "c => c.getContext('2d').getImageData(0, 0, c.width, c.height).data.some(v => v > 0)"
    found.page.wait_for_timeout(TAKEN)
    assert found.page.eval_on_selector(".stage canvas", drawn)
    assert found.said == []


def test_the_whole_build_by_keyboard_alone(browser: Browser, tmp_path: Path) -> None:
    """From the cautions to the last step: Tab, Enter, Space and arrow keys; every step is read
    out, every row is ticked."""
    found = opened(browser, post(tmp_path))
    page = found.page
    for _ in range(20):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.matches('.start button.large')"):
            break
    page.keyboard.press("Enter")
    page.wait_for_selector("main.step h1")
    count = int(re.findall(r"\d+", page.inner_text(".where .count"))[1])
    for number in range(1, count + 1):
        assert page.inner_text(".where .count") == f"Step {number} of {count}"
        assert page.inner_text("[aria-live=polite][role=status]").startswith(f"Step {number} of")
        boxes = page.locator("input[type=checkbox]").count()
        ticked = 0
        for _ in range(60):
            page.keyboard.press("Tab")
            if page.evaluate("document.activeElement.matches('input[type=checkbox]')"):
                page.keyboard.press("Space")
                ticked += 1
            if ticked == boxes:
                break
        assert page.locator("input[type=checkbox]:checked").count() == boxes
        page.keyboard.press("ArrowRight")
    go(found, "list")
    assert page.locator(".steps .done").count() == count
    assert found.said == []


def test_axe_finds_no_serious_violation(browser: Browser, star: Path) -> None:
    """axe-core (Deque), the rules of WCAG 2 A and AA, on every screen, light and dark."""
    axe = node_module("axe-core", "axe.min.js")
    found = opened(browser, star)
    page = found.page
    page.evaluate(axe.read_text("utf-8"))

    def violations() -> list[str]:
        return [
            f"{theme} {one['id']}: {one['nodes'][0]['html'][:120]}"
            for theme in ("light", "dark")
            for one in page.evaluate(AXE, theme)
            if one["impact"] in ("serious", "critical")
        ]

    assert violations() == []
    begin(page)
    page.click(".timing summary")
    page.check("#c1")
    assert violations() == [], "step"
    page.evaluate("location.hash = '#step-15'")
    page.click(".text .ref >> nth=0")
    page.wait_for_selector("main.find .steps")
    assert violations() == [], "find, with a way back"
    for screen in ("list", "film", "more"):
        go(found, screen)
        assert violations() == [], screen
    go(found, "burst")
    page.select_option("#burst", "A1-A2")
    assert violations() == [], "burst"


@pytest.mark.parametrize("type_size", ["normal", "largest"])
def test_magnified_four_times_nothing_lies_beside_the_page(
    browser: Browser, star: Path, type_size: str
) -> None:
    """WCAG 2.2, 1.4.10 Reflow: 1280 by 1024 magnified to 400 % is 320 by 256."""
    found = opened(browser, star, size=(320, 256))
    page = found.page
    begin(page)
    for place in ("step-15", "list", "find-A9", "film", "burst-A1-A2", "more"):
        page.evaluate(f"location.hash = '#{place}'")
        page.wait_for_selector(f"main.{place.partition('-')[0]}")
        page.evaluate(f"document.documentElement.dataset.type = '{type_size}'")
        assert page.evaluate("document.documentElement.scrollWidth") == 320, place


def test_where_little_motion_is_wanted_the_film_waits(browser: Browser, tmp_path: Path) -> None:
    found = opened(browser, post(tmp_path))
    page = found.page
    page.emulate_media(reduced_motion="reduce")
    begin(page)
    go(found, "film")
    assert "asks for little motion" in page.inner_text("main")
    was = page.inner_text("main.film .where")
    page.wait_for_timeout(2 * TAKEN)
    assert page.inner_text("main.film .where") == was
    page.click("text=One on")
    assert page.inner_text("main.film .where") != was


def test_buttons_are_large_enough_for_a_finger(browser: Browser, star: Path) -> None:
    found = opened(browser, star)
    begin(found.page)
    for screen in ("step", "list", "find", "film", "burst", "more"):
        go(found, screen)
        for button in found.page.query_selector_all("button:visible"):
            box = button.bounding_box()
            assert box is not None
            assert min(box["width"], box["height"]) >= 48 - 0.5, button.inner_text()


SCRIPT = '"><script>window.ran=1</script><img src=x onerror="window.ran=1">'
SHORT = "\"><img src=x onerror='window.ran=1'>"
FROM_THE_RIGHT = "עמוד קצר"


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


def test_words_from_the_right_stand_by_themselves(browser: Browser, tmp_path: Path) -> None:
    """They do not turn round what stands beside them (Unicode, annex 9)."""
    words = {"name": FROM_THE_RIGHT, "note": FROM_THE_RIGHT}
    found = opened(browser, post(tmp_path, "sale", FROM_THE_RIGHT, **words))
    page = found.page
    assert page.inner_text("h1") == FROM_THE_RIGHT
    for place in ("h1", "header .piece", "footer"):
        assert page.eval_on_selector(place, "e => getComputedStyle(e).unicodeBidi") == "isolate"
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
    found = opened(browser, star, fragment=f"{FLAT}#step-15")
    page = found.page
    begin(page)
    page.click(".text .ref:text-is('13')")
    assert page.inner_text(".where .count").startswith("Step 13 of")
    page.click(".way-back")
    assert page.inner_text(".where .count").startswith("Step 15 of")
    page.click(".text .ref:text-is('B9')")
    page.wait_for_selector("main.find")
    assert page.input_value("#joint") == "B9"
    page.click(".found .steps button:has-text('Brace 9')")
    assert page.inner_text(".where .count").startswith("Step 15 of")
    assert page.inner_text(".way-back") == "Back to Find"
    page.go_back()
    page.wait_for_selector("main.find")
    assert page.input_value("#joint") == "B9"
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
