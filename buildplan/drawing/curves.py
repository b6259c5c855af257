"""Smooth curves and ellipses as Bezier curves."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.marks import Curve, Ink, Point


def smooth(points: FloatArray, ink: Ink, closed: bool = True) -> Curve:
    """A smooth curve through points (Catmull and Rom 1974, as Bezier curves)."""
    count = len(points)
    if closed:
        before, after = np.roll(points, 1, axis=0), np.roll(points, -1, axis=0)
    else:
        before = np.vstack([points[:1], points[:-1]])
        after = np.vstack([points[1:], points[-1:]])
    slope = (after - before) / 6
    leaving, coming, through = (
        [round_point(point) for point in several.tolist()]
        for several in (points + slope, points - slope, points)
    )
    following = [*range(1, count), 0] if closed else range(1, count)
    pieces = tuple((leaving[j - 1], coming[j], through[j]) for j in following)
    return Curve(through[0], pieces, ink, closed)


def round_point(value: FloatArray | Sequence[float]) -> Point:
    """A point rounded to what paper can show of a form."""
    return (round(float(value[0]), 4), round(float(value[1]), 4))


def ellipse(centre: Point, half_x: float, half_y: float, turn: float, ink: Ink) -> Curve:
    """An ellipse as four Bezier curves, its x half-axis turned by `turn` radians."""
    k = 0.5522847498  # circle by cubic curves, largest error 0.03 %
    c, s = float(np.cos(turn)), float(np.sin(turn))

    def at(x: float, y: float) -> Point:
        x, y = x * half_x, y * half_y
        return (round(centre[0] + c * x - s * y, 4), round(centre[1] + s * x + c * y, 4))

    pieces = (
        (at(1, k), at(k, 1), at(0, 1)),
        (at(-k, 1), at(-1, k), at(-1, 0)),
        (at(-1, -k), at(-k, -1), at(0, -1)),
        (at(k, -1), at(1, -k), at(1, 0)),
    )
    return Curve(at(1, 0), pieces, ink, closed=True)
