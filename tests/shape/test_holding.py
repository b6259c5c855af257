"""What holds a piece that does not stand by itself, and which way up it is set."""

from __future__ import annotations

import json
import math
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from buildplan.cli import main
from buildplan.design.building import build_framework
from buildplan.design.model import Design, GivenBase
from buildplan.design.reading import read_design
from buildplan.evaluation.ballast import ballast_kg
from buildplan.evaluation.evaluating import evaluate, resting_shape
from buildplan.evaluation.seating import read_whole
from buildplan.framework.places import joints_named
from buildplan.shape.constants import CONSTANTS, constants_with
from buildplan.shape.holding import (
    advised_base,
    on_base,
    placed_base,
)
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import Base, Standing
from buildplan.source.file_changes import changed_text
from buildplan.source.problems import DesignProblemsError
from buildplan.source.suggestions import Put

HEAD = """\
buildplan: 1
name: Trial
units: cm
balloons:
  a: {kind: link,  nominal: 30, inflate_to: 20, colour: navy, label: blue}
  k: {kind: round, nominal: 12, inflate_to: 9, colour: gold, label: gold}
build:
"""
RING = (
    HEAD
    + """\
  tube:
    {closed: true, chains: 4, long: a, brace: a, single: a, lock: k,
     course: [{repeat: 3, cells: [straight, straight, straight, tip]}]}
"""
)
# an arch of one leg: it leans out over its end
HOOK = (
    HEAD
    + """\
  tube:
    {closed: false, chains: 4, long: a, brace: a, single: a, lock: k,
     course: [{repeat: 3, cells: [straight]}, tip, {repeat: 6, cells: [straight]}]}
stand_on: start
"""
)


DESIGNS = Path(__file__).parents[2] / "designs"
FOOT = ((1, 1), (1, -1), (-1, -1), (-1, 1))


def design(folder: Path, text: str) -> Design:
    file = folder / "trial.yaml"
    file.write_text(text, "utf-8")
    return read_design(file)


def block(height_m: float, half_m: float) -> Standing:
    """A piece with its centre of mass over the middle of a square foot."""
    foot = half_m * np.array(FOOT, float)
    centre = np.array([0.0, height_m, 0.0])
    angle = math.degrees(math.atan2(half_m, height_m))
    return Standing(True, ("A1",), foot, centre, angle)


def test_a_base_lowers_the_centre_of_mass_and_widens_the_foot() -> None:
    """Moments about an edge by hand: tan = reach / height of the common centre of mass."""
    stood = on_base(block(1.0, 0.05), 2.0, Base(0.8, 0.4, 6.0))
    assert stood.centre_of_mass_m[1] == pytest.approx(2.0 * 1.0 / 8.0)
    assert stood.tip_angle_deg == pytest.approx(math.degrees(math.atan2(0.2, 0.25)))
    # a base within the foot only adds its weight
    small = on_base(block(1.0, 0.5), 2.0, Base(0.2, 0.2, 6.0))
    assert small.tip_angle_deg == pytest.approx(math.degrees(math.atan2(0.5, 0.25)))


@pytest.mark.parametrize("height_m", [0.5, 2.0, 4.0])
def test_the_base_that_is_advised_holds_and_can_be_carried(height_m: float) -> None:
    lean = block(height_m, 0.05)
    base = advised_base(lean, 1.5)
    assert on_base(lean, 1.5, base).tip_angle_deg >= 15
    assert base.weight_kg <= 25
    given = constants_with({"base_lean": 22.0, "least_ballast": 14.0})
    base = advised_base(lean, 1.5, given)
    assert on_base(lean, 1.5, base).tip_angle_deg >= 22
    assert base.weight_kg >= 14


def test_feet_that_no_base_reaches_under_have_one_each() -> None:
    """Moments about an edge by hand: the front edges of both bases are one line."""
    feet = np.array([[-1.5, 0.0], [1.5, 0.0]])
    wide = replace(block(1.0, 0.05), foot_polygon_m=np.array(FOOT) * (1.6, 0.05), feet_m=feet)
    base = placed_base(wide, Base(0.4, 0.4, 4.0))
    assert base.count == 2
    stood = on_base(wide, 2.0, base)
    assert stood.centre_of_mass_m[1] == pytest.approx(2.0 * 1.0 / 10.0)
    assert stood.tip_angle_deg == pytest.approx(math.degrees(math.atan2(0.2, 0.2)))
    assert np.abs(stood.foot_polygon_m).max(axis=0) == pytest.approx([1.7, 0.2])
    # one that reaches under both is one
    assert placed_base(wide, Base(3.2, 0.4, 4.0)).count == 1
    advised = advised_base(wide, 2.0)
    assert advised.count == 2
    assert advised.all_kg >= CONSTANTS["least_ballast"].value
    assert on_base(wide, 2.0, advised).tip_angle_deg >= 15


@pytest.mark.parametrize("name", ["gallery/portal", "gallery/evening_moon", "gallery/slim_column"])
def test_what_stands_on_the_base_that_is_advised_bears_a_draught_without_ballast(name: str) -> None:
    found = read_whole(DESIGNS / f"{name}.yaml")
    free = evaluate(found, found.units, 12)
    assert free.examination.wind.tips_at.low < CONSTANTS["draught"].value
    assert ballast_kg(free.examination) >= CONSTANTS["least_ballast"].value
    (tips,) = [p for p in free.examination.cautions if p.kind is ShapeKind.TIPS_LIGHTLY]
    (put,) = tips.suggestion.ways[0].changes
    assert isinstance(put, Put)
    given = GivenBase.model_validate(put.value)
    held = evaluate(found.model_copy(update={"base": given}), found.units, 12)
    assert held.examination.wind.tips_at.low >= CONSTANTS["draught"].value
    assert ballast_kg(held.examination) == 0
    base = held.shape.holding.base
    assert base is not None
    assert base.count == (2 if name.endswith("portal") else 1)
    assert base.all_kg >= CONSTANTS["least_ballast"].value


def test_a_light_piece_is_told_a_base_or_a_wall_and_either_mends_it(tmp_path: Path) -> None:
    piece = evaluate(design(tmp_path, RING), "cm", 12)
    (tips,) = [p for p in piece.examination.cautions if p.kind is ShapeKind.TIPS_LIGHTLY]
    assert len(tips.suggestion.ways) == 2
    for way in tips.suggestion.ways:
        text, kept = changed_text(RING, way.changes)
        assert kept
        held = evaluate(design(tmp_path, text), "cm", 12)
        assert ShapeKind.TIPS_LIGHTLY not in {p.kind for p in held.examination.cautions}
        assert not held.facts.problems


def test_what_does_not_stand_is_a_condition_once_something_holds_it(tmp_path: Path) -> None:
    free = resting_shape(alone := design(tmp_path, HOOK), build_framework(alone))
    assert not free.standing.stands
    assert ShapeKind.DOES_NOT_STAND in {p.kind for p in free.problems}
    for held_by in ("pole: true", "hung: true", "tied_to_wall: true"):
        held = design(tmp_path, f"{HOOK}{held_by}\n")
        piece = evaluate(held, "cm", 12)
        assert ShapeKind.DOES_NOT_STAND not in {p.kind for p in piece.facts.problems}
        assert piece.facts.stands
    based = design(tmp_path, HOOK + "base: {width: 4 m, depth: 1 m, weight: 20}\n")
    assert resting_shape(based, build_framework(based)).standing.stands


def test_an_end_and_a_cell_name_their_joints(tmp_path: Path) -> None:
    hook = build_framework(design(tmp_path, HOOK))
    assert joints_named(hook, ["start"]) == ("A1", "B1", "C1", "D1")
    # nine straight cells and a tip: eleven balloons outside, nine inside
    assert joints_named(hook, ["finish"]) == ("A12", "B10", "C10", "D12")
    assert joints_named(hook, ["ends"]) == (*hook.braces[0].section, *hook.braces[-1].section)
    assert set(joints_named(hook, ["cell 4"])) == {"A4", "A5", "A6", "D4", "D5", "D6"}
    assert joints_named(hook, ["A3", "cell 1"]) == ("A3", "A1", "D1", "A2", "D2")


@pytest.mark.parametrize("cell", [4, 8, 12])
def test_what_is_to_be_at_the_top_is_there(cell: int, tmp_path: Path) -> None:
    """Each tip of a triangle with three tips: it stands on the side across from it."""
    made = design(tmp_path, f"{RING}top: cell {cell}\n")
    framework = build_framework(made)
    shape = resting_shape(made, framework)
    tip = framework.cells[cell - 1].skipped[0]
    assert shape.at[tip][1] == pytest.approx(max(at[1] for at in shape.at.values()), abs=0.02)


@pytest.mark.parametrize(
    ("more", "kind", "path"),
    [
        ("top: cell 13", "no-such-joint", "top"),
        ("stand_on: start", "no-such-joint", "stand_on"),
        ("top: A99", "no-such-joint", "top"),
        ("top: A1\nstand_on: A5", "way-up-twice", "top"),
        ("base: {width: 60, depth: 40}", "key-missing", "base.weight"),
        ("base: {width: 60, depth: 40, weight: 0}", "out-of-range", "base.weight"),
        ("pole: yes", "wrong-type", "pole"),
    ],
)
def test_mistakes_are_told(more: str, kind: str, path: str, tmp_path: Path) -> None:
    with pytest.raises(DesignProblemsError) as found:
        design(tmp_path, f"{RING}{more}\n")
    assert [(one.kind.value, one.path) for one in found.value.problems] == [(kind, path)]


def test_check_says_what_holds_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "ring.yaml"
    file.write_text(RING + "tied_to_wall: true\n", "utf-8")
    for arguments in (["check", file], ["check", file, "--json"]):
        monkeypatch.setattr(sys, "argv", ["buildplan", *map(str, arguments)])
        with pytest.raises(SystemExit) as ended:
            main()
        assert not ended.value.code
        out = capsys.readouterr().out
        if "--json" in arguments:
            facts = json.loads(out)
            assert facts["held_by"] == {"tied_to_wall": True}
            assert facts["conditions"] == ["is tied to a wall behind it"]
        else:
            assert "is tied to a wall behind it" in out
