"""Where an outline cannot be had well at its own height: the smallest at which it can."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from math import ceil

from buildplan.design.measures import Units
from buildplan.fitting.effort import QUICK, USUAL, Effort
from buildplan.fitting.fitting import fit_outline
from buildplan.fitting.narrow import least_height_m, narrow_share, tube_width_m
from buildplan.fitting.outline import Outline
from buildplan.fitting.workers import each

# Heights tried, each so many times that asked for; and at once, so that no more are tried than
# need be.
TIMES = (1.1, 1.2, 1.35, 1.5, 1.75, 2.0, 2.5, 3.0)
AT_ONCE, STEP_M = 2, 0.05


@dataclass(frozen=True)
class Larger:
    """What came of larger heights: the smallest at which the outline can be had well, None where
    it cannot at any that was tried, and the largest of those (that asked for when none was).

    `narrow` is the share of the outline that at the height asked for is narrower than the tube,
    and `least_m` the height below which too much is."""

    height_m: float | None
    tried_m: float
    narrow: float
    least_m: float


def go_on(tried_m: float) -> bool:
    """Watches nothing and lets the search run to its end."""
    return True


def smallest_height(
    outline: Outline,
    gauge: float,
    units: Units = "in",
    effort: Effort = USUAL,
    watch: Callable[[float], bool] = go_on,
) -> Larger:
    """The smallest of some larger heights, to 5 cm, at which `outline` can be had with this gauge.

    No more heights are tried than `effort` has it, and none at which too much of the outline is
    narrower than the tube. `watch` is told how high has been tried in vain;
    the search ends when that says no.
    """
    width_m = tube_width_m(gauge, units)
    narrow, least_m = narrow_share(outline.region, width_m), least_height_m(outline, width_m)
    taller = [round(outline.height_m * times / STEP_M) * STEP_M for times in TIMES]
    if least_m < taller[-1]:
        taller.append(ceil(least_m / STEP_M) * STEP_M)
    likely = {height for height in taller if height > outline.height_m and height >= least_m}
    heights = sorted(likely)[: effort.taller]
    tried_m = outline.height_m
    for first in range(0, len(heights), AT_ONCE):
        at_once = heights[first : first + AT_ONCE]
        good = each(partial(_good_at, outline, gauge, units), at_once)
        for height, found in zip(at_once, good, strict=True):
            if found:
                return Larger(height, height, narrow, least_m)
        tried_m = at_once[-1]
        if not watch(tried_m):
            break
    return Larger(None, tried_m, narrow, least_m)


def _good_at(outline: Outline, gauge: float, units: Units, height_m: float) -> bool:
    scaled = outline.scaled(height_m / outline.height_m)
    return any(fit.well for fit in fit_outline(scaled, (gauge,), units, QUICK))
