"""Which way numbers run."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from sequence_pieces import BALLOONS, STAR, tube

from buildplan.patterns.column import Column, build_column
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


def test_a_chain_that_goes_straight_on_goes_round_nothing() -> None:
    framework = tube(["straight"] * 6)
    assert set(directions(framework, find_shape(framework)).values()) == {Direction.NEITHER}
