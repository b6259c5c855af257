"""What of an outline is narrower than a tube, and the height from which on that is little.

A disc as wide as the tube cannot come there: the share is what a morphological opening by it takes
away (Serra 1982), with corners left as they are.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import sqrt

from shapely import Polygon, distance, get_coordinates, intersection, set_precision
from shapely import points as shapely_points

from buildplan.design.building import METRES_PER_UNIT
from buildplan.design.measures import Units
from buildplan.fitting.inside import WIDTH_PER_GAUGE
from buildplan.fitting.measuring import OVERLAP_GOAL
from buildplan.fitting.outline import Outline
from buildplan.language.messages import Message
from buildplan.shape.whereabouts import WHERE, cell_at

NARROW_ALLOWED = 1 - OVERLAP_GOAL  # of the area: more cannot be missing from a good fit
SHARPEST = 3.0  # a corner that reaches so many times as far as the disc's radius is kept
HALVINGS = 24
HOPELESS = 0.5  # of the area too narrow for a tube: the rest is no likeness
# how many tubes wide a part is that one runs out and back in, and the share of the area in narrower
# ones that leaves no likeness
ABREAST, HOPELESS_ABREAST = 1.5, 0.4
GRID_M = 1e-6
LEAST_PART = 0.02  # of the area, that is a part and not a corner
MOST_PARTS = 3  # that are told
FAR_END, STEPS = 0.95, 8  # of the largest distance; along as much as the root of an area


@dataclass(frozen=True)
class NarrowPart:
    """A part of an outline that is narrower than a tube: where it is, and how wide on average,
    metres."""

    where: Message
    width_m: float


def tube_width_m(gauge: float, units: Units) -> float:
    """How wide a tube of links of a gauge is seen, metres."""
    return WIDTH_PER_GAUGE * gauge * METRES_PER_UNIT[units]


def narrow_share(region: Polygon, width_m: float) -> float:
    """The share of a region's area that lies in parts narrower than `width_m`."""
    return float(1 - _wide_enough(region, width_m).area / region.area)


def narrow_parts(region: Polygon, width_m: float) -> tuple[NarrowPart, ...]:
    """The largest parts of a region that are narrower than `width_m`, largest first."""
    wide = _wide_enough(region, width_m)
    rest = set_precision(region, GRID_M).difference(wide)
    parts = sorted(getattr(rest, "geoms", [rest]), key=lambda part: -part.area)
    told = [part for part in parts if part.area >= LEAST_PART * region.area][:MOST_PARTS]
    return tuple(_parts_told(told, wide, region))


def _parts_told(parts: Sequence[Polygon], wide: Polygon, region: Polygon) -> Iterator[NarrowPart]:
    left, low, right, top = region.bounds
    for part in parts:
        x, y = _far_end(part, wide)
        cell = cell_at((x - left) / (right - left), (y - low) / (top - low))
        # the shorter side of the rectangle of this area and perimeter, or of the square
        half = part.length / 4
        yield NarrowPart(WHERE[cell], half - sqrt(max(0.0, half**2 - part.area)))


def _far_end(part: Polygon, wide: Polygon) -> tuple[float, float]:
    """Where a part is farthest from what is wide: the end of an arm, the middle of a neck."""
    points = get_coordinates(part.exterior.segmentize(sqrt(part.area) / STEPS))
    if wide.is_empty:
        return part.centroid.x, part.centroid.y
    away = distance(wide, shapely_points(points))
    x, y = points[away >= FAR_END * away.max()].mean(axis=0)
    return float(x), float(y)


def _wide_enough(region: Polygon, width_m: float) -> Polygon:
    """What of a region is no narrower than that, with corners as they are."""
    inner = region.buffer(-width_m / 2, join_style="mitre", mitre_limit=SHARPEST)
    opened = inner.buffer(width_m / 2, join_style="mitre", mitre_limit=SHARPEST)
    # on a grid: edges that fall together may else have no intersection at all
    return intersection(opened, region, grid_size=GRID_M)


def promising(outline: Outline, gauges: Sequence[float], units: Units) -> list[float]:
    """Those of the gauges with which a tube comes to most of an outline."""
    return [
        gauge
        for gauge in gauges
        if narrow_share(outline.region, tube_width_m(gauge, units)) <= HOPELESS
    ]


def crowded(outline: Outline, gauges: Sequence[float], units: Units) -> bool:
    """Whether with each of the gauges so much of an outline is hardly wider than the tube that out
    and back it would get in its own way."""
    return all(
        narrow_share(outline.region, ABREAST * tube_width_m(gauge, units)) > HOPELESS_ABREAST
        for gauge in gauges
    )


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
