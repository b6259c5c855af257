"""Marks of a corner, alike on picture and diagram: a skipped joint, one that only a single is tied
to, a shared balloon."""

from __future__ import annotations

import numpy as np
from shapely.geometry import LineString
from shapely.geometry.base import BaseGeometry

from buildplan.drawing.labels import DARK
from buildplan.drawing.marks import Ink, Mark, Point, Polyline

HATCH_PT, CROSS_PT = 5.0, 4.2
CROSS = Ink(stroke=DARK, width=1.5)
SHARED_LINE = Ink(stroke="#5C6B78", width=0.7)


def crossed_out(spot: Point, reach: float = CROSS_PT) -> list[Mark]:
    """A joint that no brace reaches and nothing is tied to."""
    x, y = spot
    lines = (
        ((x - reach, y - reach), (x + reach, y + reach)),
        ((x - reach, y + reach), (x + reach, y - reach)),
    )
    white = Ink(stroke="#FFFFFF", width=3.4)
    return [Polyline(line, ink) for ink in (white, CROSS) for line in lines]


def boxed_in(spot: Point, reach: float = CROSS_PT) -> list[Mark]:
    """A joint that no brace reaches, where a single is tied: within a square."""
    x, y = spot
    edges = (
        (x - reach, y - reach),
        (x + reach, y - reach),
        (x + reach, y + reach),
        (x - reach, y + reach),
    )
    white = Ink(stroke="#FFFFFF", width=3.4)
    return [Polyline(edges, ink, closed=True) for ink in (white, CROSS)]


def hatching(area: BaseGeometry, apart: float = HATCH_PT) -> list[Mark]:
    """Slanting lines over an area: a balloon that two braces share."""
    if area.is_empty:
        return []
    left, low, right, high = area.bounds
    marks: list[Mark] = []
    for x in np.arange(left - (high - low), right, apart):
        line = LineString([(x, low), (x + high - low, high)]).intersection(area)
        for part in getattr(line, "geoms", [line]):
            if part.geom_type == "LineString" and part.length > 1.0:
                ends = tuple((round(float(a), 2), round(float(b), 2)) for a, b in part.coords)
                marks.append(Polyline(ends, SHARED_LINE))
    return marks
