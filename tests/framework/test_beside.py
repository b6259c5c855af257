"""Parts tied to one side of another, checked against where joints of the solved parts lie."""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest
from seated_parts import BEAM, COLUMN, LINK_M, TOWER, file_of, solved

from buildplan.design.reading import read_design
from buildplan.evaluation.seating import Seated, seated
from buildplan.language.voice import Voice
from buildplan.shape.kinds import ShapeKind
from buildplan.source.problems import in_words


@pytest.mark.parametrize(
    ("place", "axis", "sign"),
    [("left_of", 0, -1), ("right_of", 0, 1), ("in_front_of", 2, 1), ("behind", 2, -1)],
)
@pytest.mark.parametrize(("build", "met"), [(TOWER, 8), (COLUMN, 3)], ids=["tower", "column"])
def test_a_part_is_tied_to_one_side_of_another(
    tmp_path: Path, build: str, met: int, place: str, axis: int, sign: int
) -> None:
    """Both on the floor, clear of one another, and level in the other direction: measured on the
    solved joints (plain geometry, no source needed). Every other ring of a column has a corner
    where the one below has a side, so that three rings meet at three corners."""
    file = file_of(tmp_path, f"name: L, build: {build}", f"name: T, {place}: L, build: {build}")
    (pairs,) = seated(read_design(file)).ties.values()
    assert len(pairs) == met
    framework, shape = solved(file)
    assert not shape.problems
    at = {
        name: np.array([shape.at[j] for j in framework.joints if j.startswith(f"{name}.")])
        for name in "LT"
    }
    apart = at["T"].mean(axis=0) - at["L"].mean(axis=0)
    assert sign * apart[axis] > 0.8 * LINK_M
    assert abs(apart[1]) < 0.1 * LINK_M
    assert abs(apart[2 - axis]) < 0.5 * LINK_M, "to the nearest joint"
    assert {joint.split(".")[0] for joint in shape.standing.feet} == {"L", "T"}


@pytest.mark.parametrize(("left", "right"), [(3, 5), (5, 3)])
def test_a_beam_between_towers_of_two_heights_meets_the_lower_at_its_top(
    tmp_path: Path, left: int, right: int
) -> None:
    """Both stand on the floor, and the higher rises past the beam."""
    towers = {"L": left, "R": right}
    file = file_of(
        tmp_path,
        *(f"name: {name}, build: {TOWER.replace('up: 3', f'up: {up}')}"
          for name, up in towers.items()),
        f"name: B, between: [L, R], build: {BEAM}",
    )  # fmt: skip
    _, shape = solved(file)
    assert not shape.problems
    assert {joint.split(".")[0] for joint in shape.standing.feet} == {"L", "R"}
    top = {
        name: max(at[1] for joint, at in shape.at.items() if joint.startswith(name))
        for name in "LRB"
    }
    low, high = sorted(towers, key=lambda name: towers[name])
    assert top["B"] == pytest.approx(top[low], abs=0.05 * LINK_M)
    assert top[high] == pytest.approx(top[low] + 2 * LINK_M, abs=0.1 * LINK_M)


def test_a_beam_may_be_tied_lower_between_its_towers(tmp_path: Path) -> None:
    """Rows of a wall are called A, B ... from the floor up: a place lower is a row lower."""

    def tied(lower: int) -> Seated:
        beam = f"name: B, between: [L, R], lower: {lower}, build: {BEAM}"
        towers = (f"name: {name}, build: {TOWER}" for name in "LR")
        return seated(read_design(file_of(tmp_path, *towers, beam)))

    highest, lower = (dict(tied(n).ties["B",]) for n in (0, 1))
    assert highest.keys() == lower.keys()
    for own, other in highest.items():
        part, row, number = other[:2], other[2], other[3:]
        assert lower[own] == f"{part}{chr(ord(row) - 1)}{number}"
    (problem,) = tied(9).problems
    assert problem.kind == ShapeKind.NOT_SO_LOW
    (told,) = re.findall(r"lower: (\d+)", in_words(problem, Voice()))
    assert not tied(int(told)).problems
    assert tied(int(told) + 1).problems


def test_two_parts_set_at_one_place_are_told(tmp_path: Path) -> None:
    beam = f"name: B, build: {BEAM}"
    towers = (f"name: {name}, on: B, build: {TOWER}" for name in "LR")
    (problem,) = seated(read_design(file_of(tmp_path, beam, *towers))).problems
    assert problem.kind == ShapeKind.SAME_PLACE
    assert "R comes to lie where part L is" in in_words(problem, Voice())


def test_an_entrance_beside_another_stands_on_the_floor_though_more_joints_met_higher(
    tmp_path: Path,
) -> None:
    """Columns turned by half a step meet at every ring where one is a ring higher; and an entrance
    is set down by its feet, not by its beam (plain geometry, no source needed)."""
    gate, column = tmp_path / "gate", COLUMN.replace("rings: 3", "rings: 4")
    gate.mkdir()
    file_of(
        gate,
        f"name: L, build: {column}",
        f"name: R, build: {column}",
        f"name: B, on: [L, R], build: {BEAM}",
    )
    name = next(one.name for one in gate.iterdir())
    parts = (f"name: E, design: gate/{name}", f"name: F, right_of: E, design: gate/{name}")
    seat = seated(read_design(file_of(tmp_path, *parts)))
    for own, other in seat.ties["F",]:
        assert own.split(".")[2][0] == other.split(".")[2][0], "the same ring of both"
    _, shape = solved(tmp_path / name)
    feet = {one.rpartition(".")[0] for foot in shape.standing.feet for one in foot.split("+")}
    assert feet == {"E.L", "E.R", "F.L", "F.R"}
