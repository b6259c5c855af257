"""Existing work too small on the page for balloons: each chain as one thick pale line."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

import numpy as np

from buildplan.drawing.arrays import FloatArray, IntArray
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
    lines = _lines(first, second, begins)
    ends = np.append(begins[1:], len(depth))
    far = np.add.reduceat(depth, begins) / (ends - begins)
    widths = (2 * links.radius[begins] * view.scale).tolist()
    rims: list[Mark] = []
    fills: list[Mark] = []
    for run in np.argsort(far, kind="stable").tolist():
        points = lines[run]
        if len(points) < 2:
            continue
        width = round(widths[run], 3)
        colour = paled(balloons[links.balloons[begins[run]]].colour)
        rims.append(Polyline(points, Ink(stroke=DONE_LINE, width=width + 2 * RIM_PT)))
        fills.append(Polyline(points, Ink(stroke=colour, width=width)))
    return [*rims, *fills]


def _lines(first: FloatArray, second: FloatArray, begins: IntArray) -> list[tuple[Point, ...]]:
    """The points of each run of links that begins at one of `begins`: of those along it the first
    in each stretch, and its last; none of a run so short that it lies between its neighbours."""
    count = len(first)
    starts = begins + np.arange(len(begins))  # each run has a point more than links
    is_start = np.zeros(count + len(begins), dtype=bool)
    is_start[starts] = True
    points = np.empty((len(is_start), 2))
    points[starts], points[~is_start] = first[begins], second
    steps = np.append(0.0, np.hypot(*np.diff(points, axis=0).T))
    steps[starts] = 0.0
    whole = np.cumsum(steps)
    run = np.cumsum(is_start) - 1
    along = whole - whole[starts][run]
    ends = np.append(starts[1:], len(points)) - 1
    stretch = np.floor(along / _STEP_PT)
    kept = is_start.copy()
    kept[1:] |= stretch[1:] > stretch[:-1]
    kept[ends] = True
    kept &= (along[ends] >= SHORT_PT)[run]
    placed = [(x, y) for x, y in np.round(points[kept], 2).tolist()]
    cuts = np.append(0, np.cumsum(np.bincount(run[kept], minlength=len(begins)))).tolist()
    return [tuple(placed[a:b]) for a, b in pairwise(cuts)]
