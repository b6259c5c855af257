"""Where an outline cannot be had well at its own height: the smallest at which it can."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from math import ceil

import numpy as np

from buildplan.design.measures import Units
from buildplan.fitting.effort import QUICK, USUAL, Effort
from buildplan.fitting.figure_state import few_enough
from buildplan.fitting.fitting import fit_outline, links_of_tube
from buildplan.fitting.narrow import (
    NarrowPart,
    least_height_m,
    narrow_parts,
    narrow_share,
    tube_width_m,
)
from buildplan.fitting.outline import Outline
from buildplan.fitting.sources import MOST_HEIGHT_M
from buildplan.fitting.tube_design import gauges_from
from buildplan.fitting.workers import each

# Heights tried, each so many times that asked for; and at once, so that few more are tried than
# need be.
TIMES = (1.1, 1.2, 1.35, 1.5, 1.75, 2.0, 2.5, 3.0)
AT_ONCE, STEP_M, HALVINGS = 2, 0.05, 3
MOST_LINKS = 1200  # of a piece that is tried: one of more would take minutes to solve

Work = Callable[[float], float | None]


@dataclass(frozen=True)
class Larger:
    """What came of larger heights: the smallest at which the outline can be had well, None where
    it cannot at any that was tried, and the largest of those (that asked for when none was);
    whether figures were tried as well, and the gauge of the links with which it can be had.

    `narrow` is the share of the outline that at the height asked for is narrower than the tube,
    `parts` where that is, and `least_m` the height below which too much is."""

    height_m: float | None
    tried_m: float
    figures: bool
    gauge: float | None
    narrow: float
    parts: tuple[NarrowPart, ...]
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
    of_figures: Sequence[float] = (),
) -> Larger:
    """The smallest of some larger heights, to 5 cm, at which `outline` can be had with this gauge,
    or as a figure with one of `of_figures`.

    No more heights are tried than `effort` has it, and none at which neither will do: too much of
    the outline is narrower than the tube, and figures have too many cells. First they are tried in
    strides, then what lies below the first that will do is halved. `watch` is told how high has
    been tried in vain; the search ends when that says no.
    """
    width_m = tube_width_m(gauge, units)
    least_m = least_height_m(outline, width_m)
    most_m = outline.height_m * MOST_LINKS / links_of_tube(outline, gauges_from(gauge, units))
    likely = [
        height_m
        for height_m in _likely_heights(outline, least_m, units, of_figures)
        if height_m <= most_m
    ]
    strides = _strides(likely, effort.taller)
    tried_m, found_m, links = outline.height_m, None, None
    work = partial(_good_at, outline, gauge, units, of_figures)
    for first in range(0, len(strides), AT_ONCE):
        at_once = strides[first : first + AT_ONCE]
        found = _first_good(work, at_once)
        if found is not None:
            earlier = [height for height in at_once if height < found[0]]
            found_m, links = _halved(work, max(tried_m, least_m, *earlier), found)
            break
        tried_m = at_once[-1]
        if not watch(tried_m):
            break
    narrow, parts = narrow_share(outline.region, width_m), narrow_parts(outline.region, width_m)
    figures = tried_m > outline.height_m and _few_cells(outline, tried_m, units, of_figures)
    return Larger(found_m, found_m or tried_m, figures, links, narrow, parts, least_m)


def _likely_heights(
    outline: Outline, least_m: float, units: Units, of_figures: Sequence[float]
) -> list[float]:
    """Larger heights that a piece can have, at which a tube or a figure may do."""
    taller = {round(outline.height_m * times / STEP_M) * STEP_M for times in TIMES}
    if least_m < max(taller):
        taller.add(ceil(least_m / STEP_M) * STEP_M)
    return sorted(
        height_m
        for height_m in taller
        if outline.height_m < height_m <= MOST_HEIGHT_M
        and (height_m >= least_m or _few_cells(outline, height_m, units, of_figures))
    )


def _few_cells(
    outline: Outline, height_m: float, units: Units, of_figures: Sequence[float]
) -> bool:
    """Whether a figure as high has no more cells than one may have."""
    if outline.holes:
        return False
    scaled = outline.scaled(height_m / outline.height_m)
    return any(few_enough(scaled, gauges_from(gauge, units)) for gauge in of_figures)


def _strides(heights: Sequence[float], most: int) -> list[float]:
    """So many of the heights at most, evenly spread, the last among them."""
    if len(heights) <= most:
        return list(heights)
    rows = np.linspace(len(heights) / most - 1, len(heights) - 1, most).round().astype(int)
    return [heights[row] for row in rows]


def _halved(work: Work, low_m: float, good: tuple[float, float]) -> tuple[float, float]:
    """The smallest height found by halving what lies between one that will not do, or hardly, and
    one that will; and the gauge with which it can be had there."""
    for _ in range(HALVINGS):
        middle_m = round((low_m + good[0]) / 2 / STEP_M) * STEP_M
        if not low_m < middle_m < good[0]:
            break
        links = each(work, [middle_m])[0]
        if links is not None:
            good = middle_m, links
        else:
            low_m = middle_m
    return good


def _first_good(work: Work, heights: Sequence[float]) -> tuple[float, float] | None:
    """The first of the heights at which it can be had, and with links of which gauge."""
    for height_m, links in zip(heights, each(work, heights), strict=True):
        if links is not None:
            return height_m, links
    return None


def _good_at(
    outline: Outline, gauge: float, units: Units, of_figures: Sequence[float], height_m: float
) -> float | None:
    """The gauge of the links with which it can be had well at a height, the closest where there
    are several; None where it cannot."""
    scaled = outline.scaled(height_m / outline.height_m)
    fits = fit_outline(scaled, (gauge,), units, QUICK, of_figures=of_figures)
    well = [fit for fit in fits if fit.well]
    return max(well, key=lambda fit: fit.likeness).gauges.long if well else None
