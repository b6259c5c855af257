"""Where two pieces meet: moves that are asked to be short are those that all moves hold."""

from __future__ import annotations

import numpy as np
import pytest

from buildplan.shape.meeting import UPRIGHT_ONLY, meetings
from buildplan.shape.model import FloatArray

A_LINK_M = 0.25


def spots(name: str, count: int, seed: int) -> dict[str, FloatArray]:
    """Joints that lie about as near to one another as those of balloons do."""
    places = np.random.default_rng(seed).uniform(0, 1.2, (count, 3))
    return {f"{name}{number}": place for number, place in enumerate(places)}


@pytest.mark.parametrize("within_m", [0.0, 0.15, 0.3])
def test_short_moves_are_those_of_all_moves(within_m: float) -> None:
    stays, moves = spots("A", 40, 7), spots("B", 40, 8)
    short = list(meetings(stays, moves, A_LINK_M, UPRIGHT_ONLY, within_m))
    of_all = [
        one
        for one in meetings(stays, moves, A_LINK_M, UPRIGHT_ONLY)
        if np.linalg.norm(one.move_m) < within_m
    ]
    assert [one.pairs for one in short] == [one.pairs for one in of_all]
    assert np.array_equal([one.move_m for one in short], [one.move_m for one in of_all])
    assert bool(short) == (within_m > 0)


def test_what_lies_apart_has_no_short_move() -> None:
    far = {joint: at + 5 for joint, at in spots("B", 9, 8).items()}
    assert list(meetings(spots("A", 9, 7), far, A_LINK_M, UPRIGHT_ONLY, 0.3)) == []
