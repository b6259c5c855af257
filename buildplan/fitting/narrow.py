"""What of an outline is narrower than a tube, and the height from which on that is little.

A disc as wide as the tube cannot come there: the share is what a morphological opening by it takes
away (Serra 1982), with corners left as they are.
"""

from __future__ import annotations

from collections.abc import Sequence

from shapely import Polygon, intersection

from buildplan.design.building import METRES_PER_UNIT
from buildplan.design.measures import Units
from buildplan.fitting.inside import WIDTH_PER_GAUGE
from buildplan.fitting.measuring import OVERLAP_GOAL
from buildplan.fitting.outline import Outline

NARROW_ALLOWED = 1 - OVERLAP_GOAL  # of the area: more cannot be missing from a good fit
SHARPEST = 3.0  # a corner that reaches so many times as far as the disc's radius is kept
HALVINGS = 24
HOPELESS = 0.5  # of the area too narrow for a tube: the rest is no likeness
GRID_M = 1e-6


def tube_width_m(gauge: float, units: Units) -> float:
    """How wide a tube of links of a gauge is seen, metres."""
    return WIDTH_PER_GAUGE * gauge * METRES_PER_UNIT[units]


def narrow_share(region: Polygon, width_m: float) -> float:
    """The share of a region's area that lies in parts narrower than `width_m`."""
    inner = region.buffer(-width_m / 2, join_style="mitre", mitre_limit=SHARPEST)
    opened = inner.buffer(width_m / 2, join_style="mitre", mitre_limit=SHARPEST)
    # on a grid: edges that fall together may else have no intersection at all
    return float(1 - intersection(opened, region, grid_size=GRID_M).area / region.area)


def promising(outline: Outline, gauges: Sequence[float], units: Units) -> list[float]:
    """Those of the gauges with which a tube comes to most of an outline."""
    return [
        gauge
        for gauge in gauges
        if narrow_share(outline.region, tube_width_m(gauge, units)) <= HOPELESS
    ]


def least_height_m(outline: Outline, width_m: float) -> float:
    """The height, that of `outline` at least, from which on little of it is narrower than a tube
    so wide."""
    if narrow_share(outline.region, width_m) <= NARROW_ALLOWED:
        return outline.height_m
    will_do, too_wide = 0.0, width_m
    for _ in range(HALVINGS):
        middle = (will_do + too_wide) / 2
        if narrow_share(outline.region, middle) <= NARROW_ALLOWED:
            will_do = middle
        else:
            too_wide = middle
    return outline.height_m * width_m / too_wide
