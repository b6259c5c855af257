"""Parts of an assembly on the desk: set on, beside and between others by a tap or by name."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from desk_pages import at_desk, served
from playwright.sync_api import Browser, expect
from towers import TOWER, told, write

from buildplan.source.yaml_nodes import plain
from buildplan.source.yaml_source import load


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("designs")


@pytest.fixture(scope="module")
def address(folder: Path, browser: Browser) -> Iterator[str]:
    write(folder, TOWER)
    with served(folder) as found:
        yield found


COLUMN = {"around": 4, "rings": 3, "ring": "blue", "between": "ivory", "lock": "lock"}


def parts_of(folder: Path, name: str) -> Any:
    made: Any = plain(load((folder / f"{name}.yaml").read_text("utf-8"), name).root)
    return made["build"]["assembly"]["parts"]


def write_parts(folder: Path, name: str, *parts: Any) -> None:
    rest = {key: value for key, value in TOWER.items() if key != "stand_on"}
    assembly = {"parts": list(parts), "lock": "lock"}
    write(folder, {**rest, "build": {"assembly": assembly}}, name)


def test_a_part_is_added_and_set_on_another_by_a_tap(
    browser: Browser, address: str, folder: Path
) -> None:
    """The side of a part that a tap is on is seen before it is taken."""
    write_parts(
        folder,
        "stack",
        {"name": "L", "build": {"column": COLUMN}},
        {"name": "T", "on": "L", "build": {"column": COLUMN}},
    )
    with at_desk(browser, address, "#stack/piece") as found:
        page = found.page
        page.locator('.picture[data-state="now"] .stage').wait_for()
        page.get_by_role("button", name="One more part").click()
        page.get_by_role("button", name="Column", exact=True).click()
        expect(page.locator(".problem")).to_contain_text("part A")
        expect(page.locator(".waiting")).to_contain_text("Tap the side of a part that A is")
        side = page.locator(".over .side")
        expect(side).to_have_count(10)
        top = side.nth(5).bounding_box()  # of T, the first of its five sides
        box = page.locator(".stage").bounding_box()
        assert top is not None
        assert box is not None
        spot = top["x"] + top["width"] / 2, top["y"] + top["height"] / 2
        page.mouse.move(*spot)
        expect(side.nth(5)).to_have_class("side meant")
        page.mouse.click(*spot)
        expect(told(page)).to_have_text("A stands on T.")
        expect(page.locator(".problems")).to_contain_text("No problem is known.")
        assert parts_of(folder, "stack")[2]["on"] == "T"
        assert ", on: T}" in (folder / "stack.yaml").read_text("utf-8")


def test_parts_are_set_beside_and_between_by_their_names(
    browser: Browser, address: str, folder: Path
) -> None:
    """By keys alone; the file says where each is."""
    tower = {"row": "blue", "upright": "blue", "between": "blue", "lock": "lock", "layers": 2}
    sides = {"wall": {"across": 1, "up": 2, **tower}}
    beam = {"wall": {"across": 3, "up": 1, **tower}}
    write_parts(
        folder,
        "gate",
        *({"name": name, "build": sides} for name in "LR"),
        {"name": "B", "build": beam},
    )
    with at_desk(browser, address, "#gate/piece") as found:
        page = found.page
        expect(page.locator(".problem").first).to_contain_text("part")
        page.get_by_role("button", name="Set B on, beside or between others").press("Enter")
        page.get_by_role("button", name="Between two").press("Enter")
        for name in "LR":
            page.get_by_label("Part", exact=True).select_option(name)
            page.get_by_role("button", name="Take it").press("Enter")
        expect(told(page)).to_have_text("B is between L and R.")
        expect(page.locator(".problems")).to_contain_text("No problem is known.")
        assert parts_of(folder, "gate")[2]["between"] == ["L", "R"]
        page.get_by_role("button", name="Set B on, beside or between others").press("Enter")
        page.get_by_label("Part", exact=True).select_option("L")
        page.get_by_role("button", name="To the right").press("Enter")
        expect(told(page)).to_have_text("B is to the right of L.")
        assert parts_of(folder, "gate")[2] == {"name": "B", "build": beam, "right_of": "L"}


def test_another_design_is_a_part_and_is_chosen_by_its_picture(
    browser: Browser, address: str, folder: Path
) -> None:
    write_parts(folder, "pair", {"name": "L", "build": {"column": COLUMN}})
    with at_desk(browser, address, "#pair/piece") as found:
        page = found.page
        page.get_by_role("button", name="One more part").click()
        page.get_by_role("button", name="Another design of this folder").click()
        others = page.get_by_role("list", name="Another design of this folder")
        others.get_by_role("button", name="Reading Tower").first.click()
        expect(page.locator(".waiting")).to_contain_text("Tap the side of a part that A is")
        made = parts_of(folder, "pair")[1]
        assert made["name"] == "A"
        assert (folder / made["design"]).is_file()


def test_balloons_are_painted_by_keys_alone(browser: Browser, address: str, folder: Path) -> None:
    write(folder, TOWER, "keyed")
    with at_desk(browser, address, "#keyed/piece") as found:
        page = found.page
        page.locator('.picture[data-state="now"] .stage').wait_for()
        page.get_by_role("button", name="Paint", exact=True).press("Enter")
        page.get_by_role("radio", name="pink").press("Space")
        page.get_by_role("button", name="Choose by name").press("Enter")
        page.get_by_label("What to paint").select_option(label="Braces")
        page.get_by_label("A tap paints").select_option("second")
        page.get_by_role("button", name="Paint these").press("Enter")
        expect(told(page)).to_contain_text("Painted pink.")
        painted = yaml.safe_load((folder / "keyed.yaml").read_text("utf-8"))
        assert painted["colour_pattern"] == {"brace": ["pink", "ivory"]}
