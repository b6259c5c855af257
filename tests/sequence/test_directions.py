"""Which way numbers run."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from sequence_pieces import BALLOONS, STAR, tube

from buildplan.patterns.column import Column, build_column
from buildplan.patterns.wall import Wall, build_wall
from buildplan.sequence.directions import Direction, directions
from buildplan.shape.finding import find_shape


@pytest.mark.parametrize("turned", [False, True])
def test_all_rings_of_a_tube_run_the_same_way_and_the_other_way_in_a_mirror(turned: bool) -> None:
    framework = tube(STAR, closed=True)
    shape = find_shape(framework)
    if turned:
        shape = replace(shape, positions_m=shape.positions_m * (-1.0, 1.0, 1.0))
    found = set(directions(framework, shape).values())
    seen = [shape.at[f"A{i}"][:2] for i in range(1, 41)]
    middle = np.mean(seen, axis=0)
    turns = np.unwrap([np.arctan2(*(at - middle)[::-1]) for at in seen])
    # the angle of a point of the plane grows anticlockwise (definition)
    expected = Direction.ANTICLOCKWISE if turns[-1] > turns[0] else Direction.CLOCKWISE
    assert found == {expected}


def test_rings_and_zigzags_of_a_column_run_one_way_seen_from_above() -> None:
    column = build_column(
        "Post", BALLOONS, Column(around=5, rings=4, ring="long", between="cross", lock="lock")
    )
    shape = find_shape(column)
    (way,) = set(directions(column, shape).values())
    # seen from above, with the front (z) below: from A1 to A2 about the middle
    x, z = zip(*(shape.at[f"A{i}"][[0, 2]] for i in range(1, 6)), strict=True)
    middle = np.mean(x), np.mean(z)
    first, second = ((x[i] - middle[0], -(z[i] - middle[1])) for i in (0, 1))
    turn = first[0] * second[1] - first[1] * second[0]
    assert way is (Direction.ANTICLOCKWISE if turn > 0 else Direction.CLOCKWISE)


@pytest.mark.parametrize(
    ("scale", "way"),
    [((1.0, 1.0, 1.0), Direction.UP), ((1.0, -1.0, 1.0), Direction.DOWN)],
)
def test_an_open_chain_runs_along_and_the_other_way_in_a_mirror(
    scale: tuple[float, float, float], way: Direction
) -> None:
    framework = tube(["straight"] * 6)
    shape = find_shape(framework)
    along = replace(shape, positions_m=shape.positions_m * scale)
    run = along.at["A7"] - along.at["A1"]
    assert np.argmax(np.abs(run)) == 1  # a post, that stands
    assert (run[1] > 0) == (way is Direction.UP)
    assert set(directions(framework, along).values()) == {way}


def test_uprights_of_a_wall_run_up_and_its_rows_along() -> None:
    wall = build_wall(
        "Wall", BALLOONS, Wall(across=3, up=2, layers=1, row="long", upright="cross", lock="lock")
    )
    shape = find_shape(wall)
    for long in wall.chains:
        run = shape.at[long.chain.joints[-1]] - shape.at[long.chain.joints[0]]
        expected = {0: (Direction.LEFT, Direction.RIGHT), 1: (Direction.DOWN, Direction.UP)}
        axis = int(np.argmax(np.abs(run)))
        assert directions(wall, shape)[long.letter] is expected[axis][int(run[axis] > 0)]
