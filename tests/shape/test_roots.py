"""The zeros that the shape needs, against scipy's."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from buildplan.shape.roots import bisected


@given(st.floats(-50, 50), st.floats(0.01, 20))
def test_it_finds_what_brent_finds(zero: float, steep: float) -> None:
    """R. Brent, Algorithms for Minimization without Derivatives (1973), as scipy has it."""

    def function(x: float) -> float:
        return math.atan(steep * (x - zero)) + 0.1 * steep * (x - zero)

    found = bisected(function, -100, 100)
    assert found == pytest.approx(brentq(function, -100, 100, xtol=1e-13), abs=1e-11)


def test_no_zero_between_is_refused() -> None:
    with pytest.raises(ValueError, match="same sign"):
        bisected(lambda x: x * x + 1, -1, 1)
