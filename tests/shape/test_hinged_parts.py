"""Two columns of unlike heights with a beam tied between them at two joints on each side: a pair of
hinges. In the air it swings; on the floor each column stands on its own four feet, as it did before
it was tied (the statics of a body on a plane: what presses on all its feet does not turn)."""

from __future__ import annotations

from pathlib import Path

import pytest

from buildplan.design.building import build_framework
from buildplan.evaluation.seating import read_whole
from buildplan.framework.model import Framework
from buildplan.shape.bodies import bodies_of
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.examining import examine
from buildplan.shape.finding import find_shape
from buildplan.shape.model import Shape
from buildplan.shape.softness import folds
from buildplan.shape.springs import stiffness_matrix
from buildplan.shape.stiffness import locked
from buildplan.shape.unlocking import folds_unlocked_m

TOWERS = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#C9A227", label: gold}
build:
  assembly:
    parts:
      - {name: L, build: {column: {around: 4, rings: 5, ring: a, between: a, lock: k}}}
      - {name: R, build: {column: {around: 4, rings: 3, ring: a, between: a, lock: k}}}
      - {name: B, between: [L, R], build: {wall: {across: 3, up: 1, layers: 2, row: a, upright: a, between: a, lock: k}}}
    lock: k
"""  # noqa: E501


@pytest.fixture(scope="module")
def towers(tmp_path_factory: pytest.TempPathFactory) -> tuple[Framework, Shape]:
    file: Path = tmp_path_factory.mktemp("towers") / "trial.yaml"
    file.write_text(TOWERS, "utf-8")
    framework = build_framework(read_whole(file))
    return framework, find_shape(framework)


def test_the_floor_holds_what_hinges_would_let_swing(towers: tuple[Framework, Shape]) -> None:
    framework, shape = towers
    bodies, positions = bodies_of(framework), shape.positions_m
    in_the_air = stiffness_matrix(
        locked(framework, bodies, positions, CONSTANTS, CONSTANTS), positions
    )
    assert folds(in_the_air) > 0
    found = examine(framework, shape)
    assert found.stiffness.folds_locked == 0
    assert not found.problems


def test_nothing_is_said_of_lying_flat_where_parts_are_tied_standing(
    towers: tuple[Framework, Shape],
) -> None:
    framework, shape = towers
    found = examine(framework, shape).stiffness
    assert found.folds  # without locks it would
    assert folds_unlocked_m(framework, shape, found, CONSTANTS) == 0
