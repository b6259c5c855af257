"""Existing work too small on the page for balloons: each chain as one thick pale line."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Bodies
from buildplan.drawing.camera import PaperView
from buildplan.drawing.marks import Ink, Mark, Point, Polyline
from buildplan.drawing.shading import paled
from buildplan.drawing.symbols import DONE_LINE
from buildplan.framework.model import BalloonType

# Bodies narrower than this on paper are not told apart.
THREAD_BELOW_PT = 2.5
RIM_PT = 0.3
# Lines shorter than this are left out.
SHORT_PT = 4.0
# Joints nearer than this to the last one are left out of a line.
_STEP_PT = 0.8


def thread_marks(
    balloons: Mapping[str, BalloonType], bodies: Bodies, view: PaperView
) -> list[Mark]:
    """Lines along link balloons, those that follow one another end to end in one; rims first.

    Locks are left out: at this size they lie within the lines.
    """
    links = bodies.some(bodies.is_link)
    if not len(links.names):
        return []
    first, _ = view.place(links.first)
    second, depth = view.place(links.second)
    follows = np.zeros(len(depth), dtype=bool)
    follows[1:] = np.all(np.isclose(links.first[1:], links.second[:-1]), axis=1)
    follows[1:] &= links.balloons[1:] == links.balloons[:-1]
    begins = np.flatnonzero(~follows)
    ends = np.append(begins[1:], len(depth))
    runs = sorted(
        zip(begins, ends, strict=True), key=lambda run: float(np.mean(depth[slice(*run)]))
    )
    rims: list[Mark] = []
    fills: list[Mark] = []
    for begin, end in runs:
        points = _thinned(np.vstack([first[begin : begin + 1], second[begin:end]]))
        if len(points) < 2:
            continue
        width = round(float(2 * links.radius[begin] * view.scale), 3)
        colour = paled(balloons[links.balloons[begin]].colour)
        rims.append(Polyline(points, Ink(stroke=DONE_LINE, width=width + 2 * RIM_PT)))
        fills.append(Polyline(points, Ink(stroke=colour, width=width)))
    return [*rims, *fills]


def _thinned(points: FloatArray) -> tuple[Point, ...]:
    """Of points (n, 2) along a line the first in each stretch of it; () when it is so short
    that it lies between its neighbours."""
    along = np.append(0.0, np.cumsum(np.hypot(*np.diff(points, axis=0).T)))
    if along[-1] < SHORT_PT:
        return ()
    stretch = np.floor(along / _STEP_PT)
    kept = np.append(True, stretch[1:] > stretch[:-1])
    kept[-1] = True
    return tuple((round(x, 2), round(y, 2)) for x, y in points[kept].tolist())
