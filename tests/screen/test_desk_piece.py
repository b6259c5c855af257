"""The page of a piece on the desk: its course laid by mouse, finger and keys, painted, mended."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from browser import PHONE
from desk_pages import at_desk, served, tab_to, violations
from playwright.sync_api import Browser, Page, expect
from towers import TOWER, told, write
from typer.testing import CliRunner

from buildplan.cli import app

FOLDER = Path(__file__).parents[2]
AXE = FOLDER / "buildplan/screen/web/node_modules/axe-core/axe.min.js"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("designs")


@pytest.fixture(scope="module")
def address(folder: Path, browser: Browser) -> Iterator[str]:
    write(folder, TOWER)
    with served(folder) as found:
        yield found


def tube_of(folder: Path, name: str = "tower") -> Any:
    return yaml.safe_load((folder / f"{name}.yaml").read_text("utf-8"))["build"]["tube"]


def laid(page: Page, *labels: str) -> None:
    """The strip shows these tiles, and they are saved."""
    expect(page.locator(".strip .tile")).to_have_text(list(labels))
    expect(page.locator("header .saving")).to_have_text("Saved")


def test_a_course_is_laid_by_mouse(browser: Browser, address: str, folder: Path) -> None:
    write(folder, TOWER, "by_mouse")
    with at_desk(browser, address, "#by_mouse/piece") as found:
        page = found.page
        tiles = page.locator(".strip .tile")
        tiles.nth(2).click()
        page.get_by_role("button", name="Add: tip").click()
        laid(page, "straight", "straight", "fan", "tip", "straight")
        tiles.nth(3).drag_to(tiles.nth(0), target_position={"x": 4, "y": 20})
        laid(page, "tip", "straight", "straight", "fan", "straight")
        assert tube_of(folder, "by_mouse")["course"] == [
            "tip",
            "straight",
            "straight",
            "fan",
            "straight",
        ]
        deeds = page.get_by_role("group", name="What to do with tip")
        deeds.get_by_role("button", name="Once more", exact=True).click()
        laid(page, "2×", "tip", "straight", "straight", "fan", "straight")
        page.get_by_role("button", name="Take it out").click()
        laid(page, "straight", "straight", "fan", "straight")
        assert tube_of(folder, "by_mouse") == TOWER["build"]["tube"]


def test_a_course_is_laid_by_keys_alone(browser: Browser, address: str, folder: Path) -> None:
    write(folder, TOWER, "by_keys")
    with at_desk(browser, address, "#by_keys/piece") as found:
        page = found.page
        page.locator(".strip .tile").first.wait_for()
        tab_to(page, ".strip .tile")
        for key in ("End", "Shift+ArrowLeft"):
            page.keyboard.press(key)
        laid(page, "straight", "straight", "straight", "fan")
        expect(told(page)).to_have_text("straight is moved, 3 of 4 now.")
        page.keyboard.press("ArrowRight")
        page.keyboard.press("+")
        laid(page, "straight", "straight", "straight", "2×", "fan")
        expect(page.locator(":focus")).to_have_text("2×")
        page.keyboard.press("Delete")
        laid(page, "straight", "straight", "straight")
        expect(page.locator(":focus")).to_have_text("straight")
        page.keyboard.press("Control+z")
        laid(page, "straight", "straight", "straight", "2×", "fan")
        group = {"repeat": 2, "cells": ["fan"]}
        assert tube_of(folder, "by_keys")["course"] == [*["straight"] * 3, group]


def test_a_course_is_laid_by_a_finger(browser: Browser, address: str, folder: Path) -> None:
    """A finger that rests on a tile carries it; one that goes on at once scrolls."""
    write(folder, TOWER, "by_finger")
    with at_desk(browser, address, "#by_finger/piece", size=PHONE) as found:
        page = found.page
        fan = page.locator(".strip .tile", has_text="fan")
        fan.scroll_into_view_if_needed()
        start, end = fan.bounding_box(), page.locator(".strip .tile").first.bounding_box()
        assert start is not None
        assert end is not None
        finger = page.context.new_cdp_session(page)

        def touch(kind: str, *at: tuple[float, float]) -> None:
            points = [{"x": x, "y": y} for x, y in at]
            finger.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

        for rests in (False, True):
            touch("touchStart", (start["x"] + 20, start["y"] + 20))
            if rests:
                page.locator(".carried").wait_for()
            touch("touchMove", (end["x"] + 12, end["y"] + 20))
            touch("touchMove", (end["x"] + 6, end["y"] + 20))
            touch("touchEnd")
            if not rests:
                laid(page, "straight", "straight", "fan", "straight")
        laid(page, "fan", "straight", "straight", "straight")
        assert tube_of(folder, "by_finger")["course"][0] == "fan"


def test_any_cell_is_made_of_a_tile(browser: Browser, address: str, folder: Path) -> None:
    """A cell of so many outer and inner balloons has its name where it has one."""
    write(folder, TOWER, "any_cell")
    with at_desk(browser, address, "#any_cell/piece") as found:
        page = found.page
        page.locator(".strip .tile").nth(1).click()
        page.get_by_role("button", name="One more: Outer").click()
        laid(page, "straight", "uneven cell 2, 1", "fan", "straight")
        page.get_by_role("button", name="One less: Inner").click()
        laid(page, "straight", "tip", "fan", "straight")
        assert tube_of(folder, "any_cell")["course"][1] == "tip"


def test_a_problem_is_mended_by_its_button(browser: Browser, address: str, folder: Path) -> None:
    ring = json.loads(json.dumps(TOWER))
    del ring["stand_on"]
    ring["build"]["tube"] |= {"closed": True, "chains": 3, "course": ["straight", "fan"] * 5}
    write(folder, ring, "ring")
    with at_desk(browser, address, "#ring/piece") as found:
        page = found.page
        expect(page.locator(".meter-of-turn")).to_contain_text("turns 300 of 360 degrees")
        problem = page.locator(".problem").first
        expect(problem).to_contain_text("outer side is about 1 balloon short")
        mend = problem.locator(".ways button").first
        expect(mend).to_have_text("make 1 fan cell a tip: cell 6")
        mend.click()
        expect(page.locator(".problems")).to_contain_text("No problem is known.")
        cells = [cell for cell in tube_of(folder, "ring")["course"] if isinstance(cell, str)]
        assert cells.count("fan") == 4
        assert cells.count("tip") == 1


def test_what_is_painted_is_counted(browser: Browser, address: str, folder: Path) -> None:
    """The numbers on the page are those of `check --json` of the file as it is then."""
    file = write(folder, TOWER, "painted")
    with at_desk(browser, address, "#painted/piece") as found:
        page = found.page
        page.locator('.picture[data-state="now"] .stage').wait_for()
        page.get_by_role("button", name="Paint", exact=True).click()
        page.get_by_role("radio", name="pink").check()
        page.get_by_label("A tap paints").select_option("all")
        box = page.locator(".stage").bounding_box()
        assert box is not None
        page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
        expect(told(page)).to_contain_text("Painted pink.")
        expect(page.locator(".figures")).to_have_attribute("data-old", "false")
        answer = CliRunner().invoke(app, ["check", str(file), "--json"])
        counts = json.loads(answer.stdout)["counts"]
        assert counts["pink"] > 0
        shown = page.locator(".counts li b").all_inner_texts()
        assert shown == [str(count) for count in counts.values() if count]


@pytest.mark.skipif(not AXE.is_file(), reason="the screen's packages are not installed")
@pytest.mark.parametrize("size", [PHONE, (1440, 900)])
def test_the_page_of_a_piece_is_accessible(
    browser: Browser, address: str, size: tuple[int, int]
) -> None:
    """With its sheets open, by the rules of WCAG 2.2 as axe-core 4 has them."""
    with at_desk(browser, address, "#tower/piece", size=size) as found:
        page = found.page
        page.locator(".strip .tile").nth(2).click()
        page.get_by_role("button", name="Show", exact=True).click()
        page.get_by_role("button", name="Wind", exact=True).click()
        page.evaluate("document.querySelectorAll('details').forEach(fold => { fold.open = true })")
        assert violations(page, AXE.read_text("utf-8")) == []
        page.get_by_role("button", name="Paint", exact=True).click()
        page.locator(".swatch input").last.check()  # it lies beside the edge of a phone
        assert page.evaluate("document.querySelector('main').scrollLeft") == 0


def test_overlays_say_what_the_figures_say(browser: Browser, address: str) -> None:
    with at_desk(browser, address, "#tower/piece") as found:
        page = found.page
        page.get_by_role("button", name="Show", exact=True).click()
        page.get_by_role("button", name="Sizes, with a person").click()
        page.get_by_role("button", name="Foot and tipping").click()
        sizes = page.locator(".figures dd").all_inner_texts()[:3]
        drawn = page.locator(".over .measure")
        expect(drawn).to_have_count(4)
        assert {*sizes, "tips over here first"} == set(drawn.all_text_contents())
        expect(page.locator(".over .foot")).to_have_count(1)
        page.get_by_role("button", name="Wind", exact=True).click()
        wind = page.get_by_label("A gust of")
        wind.press("End")
        expect(page.locator(".shown-card output")).to_contain_text("it goes over")
        wind.press("Home")
        expect(page.locator(".shown-card output")).to_contain_text("it stands")


def test_the_order_of_work_is_gone_through_with_the_pictures_that_are_printed(
    browser: Browser, address: str
) -> None:
    with at_desk(browser, address, "#tower/piece") as found:
        page = found.page
        along = page.get_by_label("Along the work")
        expect(along).to_be_enabled()
        expect(page.locator(".step-name")).to_contain_text("All is built")
        along.press("Home")
        page.get_by_role("button", name="One step on").click()
        expect(page.locator(".step-name")).to_contain_text("Step ")
        page.get_by_role("switch", name="As it will be printed").check()
        picture = page.locator("img.printed-step")
        expect(picture).to_have_js_property("complete", True)
        assert picture.evaluate("image => image.naturalWidth") > 0
        along.press("End")
        expect(page.locator(".step-name")).to_contain_text("All is built")
