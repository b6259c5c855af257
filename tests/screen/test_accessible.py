"""The companion for everybody: by keyboard alone, read out, magnified, with little motion, for
large fingers."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from browser import begin, node_module, opened
from companions import go, post, written
from playwright.sync_api import Browser
from screen_pieces import VOICES, book

from buildplan.screen.page import companion

AXE = """async theme => {
  document.documentElement.dataset.theme = theme
  return (await axe.run()).violations
}"""
FROM_THE_RIGHT = "עמוד קצר"
TAKEN = 250  # milliseconds until a drawing has begun


@pytest.fixture(scope="module")
def star(tmp_path_factory: pytest.TempPathFactory) -> Path:
    page = companion(book("reading_star"), VOICES)
    return written(tmp_path_factory.mktemp("star"), "star.html", page)


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


def test_words_from_the_right_stand_by_themselves(browser: Browser, tmp_path: Path) -> None:
    """They do not turn round what stands beside them (Unicode, annex 9)."""
    words = {"name": FROM_THE_RIGHT, "note": FROM_THE_RIGHT}
    found = opened(browser, post(tmp_path, "sale", FROM_THE_RIGHT, **words))
    page = found.page
    assert page.inner_text("h1") == FROM_THE_RIGHT
    for place in ("h1", "header .piece", "footer"):
        assert page.eval_on_selector(place, "e => getComputedStyle(e).unicodeBidi") == "isolate"
    assert found.said == []
