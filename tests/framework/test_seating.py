"""Parts that say what they stand on or between: where they come to lie.

What meets is checked against where joints of the solved parts lie; that a ring of four beneath a
square of four is turned by 45 degrees at most is plain geometry (no source needed).
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from seated_parts import BEAM, ENTRANCE, FOUR, LINK_M, SIGN, TOWER, WORD, file_of, solved
from trial_file import HEAD
from typer.testing import CliRunner

from buildplan.cli import app
from buildplan.design.reading import read_design
from buildplan.evaluation.seating import seated
from buildplan.shape.model import Shape
from buildplan.source.problems import DesignProblemsError


def front(shape: Shape, joints: tuple[str, str]) -> float:
    """How much nearer the viewer the first of two joints is, in metres."""
    one, other = joints
    return float(shape.at[one][2] - shape.at[other][2])


def test_a_beam_lies_across_columns_and_a_sign_stands_in_the_middle_of_it(tmp_path: Path) -> None:
    file = file_of(tmp_path, *ENTRANCE)
    ties = seated(read_design(file)).ties
    assert len(ties["B",]) == 8, "the four joints of each column's upper ring"
    framework, shape = solved(file)
    assert not shape.problems
    assert shape.standing.stands
    assert {joint.split(".")[0] for joint in shape.standing.feet} == {"L", "R"}
    x = {
        name: np.mean([shape.at[j][0] for j in framework.joints if j.startswith(f"{name}.")])
        for name in "LRBS"
    }
    assert x["L"] < x["B"] < x["R"]
    assert x["L"] - x["B"] == pytest.approx(x["B"] - x["R"], abs=0.1 * LINK_M)
    sign = [shape.at[joint][0] for joint in framework.joints if joint.startswith("S.")]
    middle = (min(sign) + max(sign)) / 2
    assert middle == pytest.approx(x["B"], abs=0.65 * LINK_M), "to the nearest joint"
    # it reads from the front: the foot of an L is to the right of its stem
    low, high = shape.at["S.A13"], shape.at["S.A6"]
    assert low[1] < high[1]
    assert low[0] > high[0]
    assert front(shape, ("S.A6", "S.B6")) == pytest.approx(LINK_M, rel=0.05)


def test_a_beam_between_towers_meets_both_as_high_as_it_can(tmp_path: Path) -> None:
    file = file_of(
        tmp_path,
        f"name: L, build: {TOWER}",
        f"name: R, build: {TOWER}",
        f"name: B, between: [L, R], build: {BEAM}",
    )
    (pairs,) = seated(read_design(file)).ties.values()
    assert {own.split(".")[1] for own, _ in pairs} == {
        *("A1", "B1", "C1", "D1"),
        *("A6", "B6", "C6", "D6"),
    }, "its joints at either end"
    _, shape = solved(file)
    assert not shape.problems
    tops = [shape.at[joint][1] for joint in ("L.D1", "R.D2", "B.B3")]
    assert np.ptp(tops) < 0.05 * LINK_M


def test_what_comes_to_lie_beside_other_parts_is_tied_to_them_too(tmp_path: Path) -> None:
    """A word longer than the beam that it stands on reaches over the towers at its ends."""
    file = file_of(
        tmp_path,
        f"name: L, build: {TOWER}",
        f"name: R, build: {TOWER}",
        f"name: B, between: [L, R], build: {BEAM.replace('across: 5', 'across: 3')}",
        f"name: S, on: B, build: {WORD}",
    )
    pairs = seated(read_design(file)).ties["S",]
    assert {other.split(".")[0] for _, other in pairs} == {"L", "B", "R"}


def test_letters_of_a_word_keep_the_places_at_which_they_are_drawn(tmp_path: Path) -> None:
    alone = tmp_path / "word.yaml"
    alone.write_text(f"{HEAD}  {WORD[1:-1]}\n", "utf-8")
    _, word = solved(alone)
    file = file_of(
        tmp_path,
        f"name: B, build: {BEAM.replace('across: 5', 'across: 9')}",
        f"name: S, on: B, build: {WORD}",
    )
    framework, whole = solved(file)
    assert not whole.problems
    joints = [joint for joint in framework.joints if joint.startswith("S.")]
    there = np.array([whole.at[joint] for joint in joints])
    here = np.array([word.at[joint.removeprefix("S.")] for joint in joints])
    apart = (there - there.mean(axis=0)) - (here - here.mean(axis=0))
    assert float(np.abs(apart).max()) < 0.2 * LINK_M


@pytest.mark.parametrize(
    ("part", "path", "says"),
    [
        ("name: S, on: Q", "build.assembly.parts[1].on", "names no other part"),
        ("name: S, on: S", "build.assembly.parts[1].on", "names no other part"),
        ("name: S, on: [B, B]", "build.assembly.parts[1].on[1]", "twice"),
        ("name: S, on: B, between: [B, B]", "build.assembly.parts[1]", "both"),
        ("name: S, left_of: B, behind: B", "build.assembly.parts[1]", "both"),
        ("name: S, behind: Q", "build.assembly.parts[1].behind", "names no other part"),
        ("name: S, repeat: 2, on: B", "build.assembly.parts[1].on", "one place"),
    ],
)
def test_places_that_cannot_be_are_told(tmp_path: Path, part: str, path: str, says: str) -> None:
    file = file_of(tmp_path, FOUR[0], f"{part}, build: {SIGN}")
    with pytest.raises(DesignProblemsError) as raised:
        read_design(file)
    found = raised.value.problems
    assert any(one.path == path and says in str(one.message) for one in found), found


def test_joints_are_listed_by_where_they_are_and_drawn_with_their_labels(tmp_path: Path) -> None:
    file = file_of(tmp_path, *FOUR[:1], f"name: S, on: B, build: {SIGN}")
    lines = CliRunner().invoke(app, ["check", str(file), "--joints"]).output.splitlines()
    (left,) = (line for line in lines[lines.index("B: 24 joints, B.A1 to B.D6") :][3:4])
    assert left.split("left")[1].replace(" ", "").split(",") == ["B.A1", "B.B1", "B.C1", "B.D1"]
    target = tmp_path / "labels.svg"
    result = CliRunner().invoke(app, ["draw", str(file), "--labels", "--out", str(target)])
    assert result.exit_code == 0, result.output
    drawn = (tmp_path / "labels-B.svg").read_text("utf-8")
    assert all(f">B.{letter}{number}<" in drawn for letter in "ABCD" for number in range(1, 7))
    assert (tmp_path / "labels-S.svg").exists()
