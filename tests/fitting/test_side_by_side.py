"""Several outlines of one drawing: found apart, fitted each, and joined side by side."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import CliRunner

from buildplan.cli import app
from buildplan.design.model import Design
from buildplan.evaluation.measured import measure
from buildplan.evaluation.seating import read_whole
from buildplan.fitting.outline import enclosed
from buildplan.fitting.side_by_side import with_keys
from buildplan.fitting.sources import read_outlines
from buildplan.fitting.svg_outline import svg_outlines
from buildplan.patterns.extra_keys import ExtraBalloon
from buildplan.patterns.tube_keys import Tube

SVG = '<svg xmlns="http://www.w3.org/2000/svg">{}</svg>'
LARGE = '<rect x="100" y="0" width="60" height="80"/>'
QUICK = ("--effort", "quick", "--workers", "1")
SMALL = '<rect x="10" y="20" width="60" height="60"/>'


def drawn(folder: Path, *shapes: str) -> Path:
    file = folder / "two.svg"
    file.write_text(SVG.format("".join(shapes)), "utf-8")
    return file


def test_pieces_lie_apart_from_left_to_right_and_others_are_counted(tmp_path: Path) -> None:
    within, across = (
        '<rect x="20" y="30" width="9" height="9"/>',
        '<circle cx="160" cy="20" r="9"/>',
    )
    speck = '<rect x="190" y="0" width="5" height="5"/>'
    found = svg_outlines(drawn(tmp_path, LARGE, SMALL, within, across, speck))
    assert [enclosed(one.points).area for one in found] == pytest.approx([3600, 4800])
    assert [one.left_out for one in found] == [0, 3]


def test_all_together_are_as_high_as_was_asked(tmp_path: Path) -> None:
    found = read_outlines(str(drawn(tmp_path, LARGE, SMALL)), 1.6)
    assert [one.height_m for one in found] == pytest.approx([1.2, 1.6])
    assert [one.name for one in found] == ["two a", "two b"]


def test_a_drawing_of_two_becomes_an_assembly_that_stands(tmp_path: Path) -> None:
    out = tmp_path / "two.yaml"
    call = ["fit", str(drawn(tmp_path, LARGE, SMALL)), "--height", "120cm", "--gauges", "20cm"]
    ended = CliRunner().invoke(app, [*call, *QUICK, "--out", str(out)])
    assert ended.exit_code == 0, ended.output
    design = read_whole(out)
    assert design.units == "cm"
    names = {file.name for file in tmp_path.glob("*.yaml")}
    assert names == {"two.yaml", "two_a.yaml", "two_b.yaml"}
    from buildplan.fitting.checking import file_data

    piece = measure(file_data(out)[1], tmp_path)
    assert piece.problem is None
    assert len(piece.framework.parts) == 2
    first, second = (part.framework.joints for part in piece.framework.parts)
    right = max(piece.shape.at[joint][0] for joint in first)
    assert right < min(piece.shape.at[joint][0] for joint in second), "side by side, as drawn"


def test_what_joins_pieces_is_checked_before_it_is_written(tmp_path: Path) -> None:
    """An ellipse and a triangle face one another low down alone: tied there, they lean on one
    another, and a pole holds them; the file that says so has nothing wrong with it."""
    ellipse = '<ellipse cx="50" cy="60" rx="45" ry="55"/>'
    triangle = '<path d="M110 115 L210 115 L160 5 Z"/>'
    out = tmp_path / "two.yaml"
    call = ["fit", str(drawn(tmp_path, ellipse, triangle)), "--height", "120cm"]
    ended = CliRunner().invoke(app, [*call, "--gauges", "15cm", *QUICK, "--out", str(out)])
    assert out.exists(), ended.output
    checked = CliRunner().invoke(app, ["check", str(out)])
    assert (checked.exit_code == 0) == ("Problem:" not in ended.output.split("two_b.yaml")[-1])
    assert checked.exit_code == 0, checked.output
    assert ("pole: true" in ended.output) == ("pole: true" in out.read_text("utf-8"))


def test_a_palette_calls_every_balloon_of_a_tube_by_its_new_key() -> None:
    """Also those that are tied one by one, and those of each chain."""
    long = {"A": "long", "B": "short", "C": "short", "D": "long"}
    extra = [{"joints": ["A1", "D3"], "balloon": "short"}, ["A2", "D4"]]
    tube = {"closed": True, "chains": 4, "long": long, "brace": "cross", "lock": "lock"}
    link = {"kind": "link", "nominal": 12, "inflate_to": 8, "colour": "navy", "label": "navy"}
    design = Design.model_validate(
        {
            "buildplan": 1,
            "name": "T",
            "units": "in",
            "balloons": dict.fromkeys(("long", "short", "cross", "lock"), link),
            "build": {"tube": {**tube, "extra": extra, "course": ["straight", "fan"]}},
        }
    )
    renamed = with_keys(design, {"short": "short_b", "cross": "cross_b"})
    made = renamed.build.keys_of(Tube)
    assert made is not None
    assert made.long == {"A": "long", "B": "short_b", "C": "short_b", "D": "long"}
    assert made.brace == "cross_b"
    assert made.extra[0] == ExtraBalloon(joints=["A1", "D3"], balloon="short_b")
    assert set(renamed.balloons) == {"long", "short_b", "cross_b", "lock"}


def test_pieces_of_larger_and_of_smaller_balloons_stand_on_one_floor() -> None:
    """A link lies half its thickness above the floor, so that feet of unlike balloons are unlike
    high; the whole still comes down on all of them."""
    link = {"kind": "link", "nominal": 12, "colour": "navy", "label": "navy"}
    lock = {"kind": "round", "nominal": 5, "inflate_to": 3.5, "colour": "navy", "label": "navy"}

    def wall(key: str) -> dict[str, object]:
        grid = {"across": 2, "up": 2, "layers": 2, "lock": "lock"}
        return {"wall": {**grid, "row": key, "upright": key, "between": key}}

    ties = [{"joints": [f"L.{row}3", f"R.{row}1"], "balloon": "large"} for row in "ABDE"]
    piece = measure(
        {
            "buildplan": 1,
            "name": "Two",
            "units": "in",
            "balloons": {
                "large": {**link, "inflate_to": 8},
                "small": {**link, "inflate_to": 7},
                "lock": lock,
            },
            "build": {
                "assembly": {
                    "parts": [
                        {"name": "L", "build": wall("large")},
                        {"name": "R", "build": wall("small")},
                    ],
                    "ties": ties,
                    "lock": "lock",
                }
            },
        }
    )
    lowest = {
        part.name: min(piece.shape.at[joint][1] for joint in part.framework.joints)
        for part in piece.framework.parts
    }
    assert {joint[0] for joint in piece.shape.standing.feet} == {"L", "R"}, lowest
    assert lowest["L"] > lowest["R"]
