"""The main job at the desk: a piece begun, laid, coloured, mended and printed, by mouse, by keys
alone, and from an outline drawn by hand."""

from __future__ import annotations

import json
import math
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from desk_pages import at_desk, page_texts, served, written_posts
from playwright.sync_api import Browser, Locator, Page, expect
from typer.testing import CliRunner

from buildplan.cli import app

Press = Callable[[Locator], None]
MOST_TABS = 150


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("designs")


@pytest.fixture(scope="module")
def address(folder: Path, browser: Browser) -> Iterator[str]:
    with served(folder) as found:
        yield found


def by_mouse(target: Locator) -> None:
    target.click()


def by_keys(target: Locator) -> None:
    """Come to it by the Tab key, as a person without a mouse does, and press it."""
    keys = target.page.keyboard
    target.wait_for()
    for _ in range(MOST_TABS):
        if target.evaluate("one => one === document.activeElement"):
            kind = target.get_attribute("type")
            if kind != "text":
                keys.press("Space" if kind == "radio" else "Enter")
            return
        keys.press("Tab")
    raise AssertionError(f"the Tab key never came to {target}")


def data_of(folder: Path, name: str) -> Any:
    return yaml.safe_load((folder / f"{name}.yaml").read_text("utf-8"))


def cells_in(course: Any) -> int:
    """How many cells a course has, its groups laid out."""
    if isinstance(course, dict):
        return int(course.get("repeat", 1)) * cells_in(course["cells"])
    return sum(map(cells_in, course)) if isinstance(course, list) else 1


def printed(page: Page, press: Press, folder: Path) -> str:
    """Print the open design as a booklet: all that can be read in its PDF, which opens by
    itself."""
    press(page.get_by_role("link", name="Print"))
    with page.context.expect_page() as opened:
        press(page.get_by_role("button", name="Make it"))
        page.locator(".jobs li[data-state=done]").wait_for()
    file = folder / "output" / opened.value.url.rpartition("/")[2]
    opened.value.close()
    return "\n".join(page_texts(file))


@pytest.mark.parametrize("press", [by_mouse, by_keys])
def test_a_tube_is_begun_laid_coloured_mended_and_printed(
    browser: Browser, address: str, folder: Path, press: Press
) -> None:
    title = f"Ring {press.__name__[3:]}"
    name = title.lower().replace(" ", "_")
    with at_desk(browser, address) as found:
        page = found.page
        press(page.get_by_role("link", name="New design"))
        press(page.get_by_role("radio", name="Star", exact=True))
        page.keyboard.press("ArrowRight")
        expect(page.get_by_role("radio", name="Ring", exact=True)).to_be_checked()
        press(page.get_by_role("textbox", name="Name"))
        page.keyboard.type(title)
        press(page.get_by_role("button", name="Make it"))
        expect(page.locator(".strip .tile")).to_have_text(["25×", "straight"])
        assert data_of(folder, name)["name"] == title

        for _ in range(4):
            press(page.get_by_role("button", name="Add: straight"))
        expect(page.locator(".strip .tile")).to_have_count(6)
        problem = page.locator(".problem")
        expect(problem).to_contain_text("turns 416 degrees and a closed tube must turn 360")
        assert cells_in(data_of(folder, name)["build"]["tube"]["course"]) == 29

        press(problem.get_by_role("button", name="make 1 straight cell a fan_in"))
        expect(page.locator(".problems")).to_contain_text("No problem is known.")

        press(page.locator(".balloon-list summary").first)
        press(page.locator(".balloon-list .swatch-button").first)
        press(page.get_by_role("textbox", name="Find a colour"))
        page.keyboard.type("crimson")
        press(page.get_by_role("button", name="crimson", exact=True))
        expect(page.locator("header .saving")).to_have_text("Saved")
        assert data_of(folder, name)["balloons"]["long"]["colour"] == "crimson"
        expect(page.locator(".figures")).to_have_attribute("data-old", "false")

        text = printed(page, press, folder)
        assert title in text
        assert "crimson" in text  # the long chains are called by their colour: by the new one


def test_an_outline_drawn_by_hand_is_printed(browser: Browser, address: str, folder: Path) -> None:
    """A round drawn with the pointer becomes a ring as high as was said."""
    with at_desk(browser, address, "#new") as found:
        page = found.page
        page.get_by_role("radio", name="Draw an outline").check()
        board = page.get_by_role("img", name="Board to draw an outline on").bounding_box()
        assert board is not None
        middle = board["x"] + board["width"] / 2, board["y"] + board["height"] / 2
        for step in range(61):
            angle = math.tau * step / 60
            far = board["width"] / 3
            page.mouse.move(middle[0] + far * math.sin(angle), middle[1] - far * math.cos(angle))
            if step == 0:
                page.mouse.down()
        page.mouse.up()
        expect(page.get_by_role("img", name="the outline is drawn and closed")).to_be_visible()
        page.get_by_role("button", name="Make it").click()
        expect(page.get_by_role("alert").filter(has_text="Say how high")).to_be_visible()
        page.get_by_role("textbox", name="Name").fill("Drawn Round")
        page.get_by_role("textbox", name="Height").fill("1 m")
        page.get_by_role("button", name="Make it").click()
        page.locator("main.piece .strip .tile").first.wait_for()
        expect(page.locator(".figures")).to_have_attribute("data-old", "false")
        text = printed(page, by_mouse, folder)
        assert "Drawn Round" in text
    answer = CliRunner().invoke(app, ["check", str(folder / "drawn_round.yaml"), "--json"])
    facts = json.loads(answer.stdout)
    assert facts["closes"]
    assert facts["size"]["height"] == pytest.approx(100, rel=0.1)  # centimetres
    assert facts["size"]["width"] == pytest.approx(facts["size"]["height"], rel=0.1)


def test_a_piece_changed_outside_meanwhile_has_both_changes(
    browser: Browser, address: str, folder: Path
) -> None:
    written_posts(folder, "Hall Post")
    file = folder / "hall_post.yaml"
    with at_desk(browser, address, "#hall_post/piece") as found:
        page = found.page
        tiles = page.locator(".strip .tile")
        expect(tiles).to_have_text(["straight", "straight"])
        text = file.read_text("utf-8").replace("[straight, straight]", "[straight, tip]")
        file.write_text(text, "utf-8")
        expect(tiles).to_have_text(["straight", "tip"])
        page.get_by_role("button", name="Add: straight").click()
        expect(tiles).to_have_text(["straight", "tip", "straight"])
        expect(page.locator("header .saving")).to_have_text("Saved")
        now = text.replace("[straight, tip]", "[straight, tip, straight]")
        assert file.read_text("utf-8") == now
        page.get_by_role("button", name="Undo").click()
        expect(tiles).to_have_text(["straight", "tip"])
        expect(page.locator("header .saving")).to_have_text("Saved")
        assert file.read_text("utf-8") == text
