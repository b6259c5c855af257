"""Where an outline cannot be had well at its own height: the smallest at which it can."""

from __future__ import annotations

from functools import partial

from buildplan.design.measures import Units
from buildplan.fitting.effort import QUICK
from buildplan.fitting.fitting import fit_outline
from buildplan.fitting.outline import Outline
from buildplan.fitting.workers import each

# Heights tried, each so many times that asked for; and at once, so that no more are tried than
# need be.
TIMES = (1.1, 1.2, 1.35, 1.5, 1.75, 2.0, 2.5, 3.0)
AT_ONCE, STEP_M = 2, 0.05


def smallest_height_m(outline: Outline, gauge: float, units: Units = "in") -> float | None:
    """The smallest of some larger heights at which `outline` can be had with this gauge, to 5 cm;
    None when it is not at the largest."""
    taller = sorted({round(outline.height_m * times / STEP_M) * STEP_M for times in TIMES})
    heights = [height for height in taller if height > outline.height_m]
    for first in range(0, len(heights), AT_ONCE):
        at_once = heights[first : first + AT_ONCE]
        good = each(partial(_good_at, outline, gauge, units), at_once)
        for height, found in zip(at_once, good, strict=True):
            if found:
                return height
    return None


def _good_at(outline: Outline, gauge: float, units: Units, height_m: float) -> bool:
    scaled = outline.scaled(height_m / outline.height_m)
    return any(fit.good for fit in fit_outline(scaled, (gauge,), units, QUICK))
