"""Where a function passes through zero. scipy has better, but importing it for this takes longer
than finding most shapes."""

from __future__ import annotations

from collections.abc import Callable


def bisected(function: Callable[[float], float], low: float, high: float) -> float:
    """A zero of `function` between `low` and `high`, where it has opposite signs (or is zero), to
    the last digit that a float holds. Raises ValueError where the signs are the same."""
    at_low, at_high = function(low), function(high)
    if at_low == 0:
        return low
    if at_high == 0:
        return high
    if (at_low > 0) == (at_high > 0):
        raise ValueError("the function has the same sign at both ends")
    while True:
        middle = (low + high) / 2
        if middle in (low, high):
            return middle
        value = function(middle)
        if value == 0:
            return middle
        if (value > 0) == (at_low > 0):
            low = middle
        else:
            high = middle
