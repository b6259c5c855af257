"""Where the rounds of a lock come to rest among the balloons of a joint."""

from __future__ import annotations

import numpy as np
import pytest

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.valleys import valleys

OUT, ACROSS = np.array([0.0, 0.0, 1.0]), np.array([1.0, 0.0, 0.0])


def ring(count: int, first_deg: float = 0.0, lean_deg: float = 0.0) -> FloatArray:
    """Unit vectors (count, 3) evenly round a joint, leaning into the piece."""
    turns = np.radians(first_deg + np.arange(count) * 360 / count)
    lean = np.radians(lean_deg)
    flat = np.stack([np.cos(turns), np.sin(turns), np.zeros(count)], axis=1)
    found: FloatArray = flat * np.cos(lean) - OUT * np.sin(lean)
    return found


def nearest_deg(ways: FloatArray, side: FloatArray) -> float:
    """How far a side is from the nearest balloon, as seen from outside."""
    seen = np.arctan2(ways[:, 1], ways[:, 0]) - np.arctan2(side[1], side[0])
    return float(np.degrees(np.min(np.abs((seen + np.pi) % (2 * np.pi) - np.pi))))


@pytest.mark.parametrize("count", [3, 4, 5, 6, 7])
@pytest.mark.parametrize("lean_deg", [0.0, 30.0])
@pytest.mark.parametrize("first_deg", [0.0, 17.0, 90.0])
def test_each_round_is_between_two_balloons(count: int, lean_deg: float, first_deg: float) -> None:
    ways = ring(count, first_deg, lean_deg)
    low, high = valleys(ways, OUT, ACROSS)
    for side in (low, high):
        assert np.linalg.norm(side) == pytest.approx(1)
        assert side @ OUT == pytest.approx(0)
        assert nearest_deg(ways, side) > 180 / count * 0.45
    assert low @ high < np.cos(np.radians(99))
    assert high @ ACROSS > low @ ACROSS


def test_rounds_that_lie_in_valleys_stay_there() -> None:
    ways = ring(6, 30.0, 20.0)
    assert np.allclose(valleys(ways, OUT, ACROSS), [-ACROSS, ACROSS])
