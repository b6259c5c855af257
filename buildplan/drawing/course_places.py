"""Where the joints of a course lie on its plan: as they are seen from above, opened out like a
flower so that none lies over another.

A joint keeps its direction from the piece's upright axis. Its distance from the middle is its
distance from a pole on the axis below the course, where the piece widens or goes straight up, or
above it, where the piece closes: of a globe this is Lambert's azimuthal equal-area projection.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.marks import Point

HALF, ON_AXIS = 0.5, 0.1


def places_from_above(
    at: Mapping[str, FloatArray], own: Collection[str], course: Collection[str]
) -> dict[str, Point]:
    """Where the joints of a `course` lie on its plan, in metres about the middle: x to the right,
    y away from whoever looks at the front. `at` are places (x, y up, z to the front), `own` the
    joints of the piece or part that the course is of."""
    every = np.array([at[joint] for joint in own])
    joints = sorted(course)
    places = np.array([at[joint] for joint in joints])
    axis = every.mean(axis=0)
    far = np.hypot(places[:, 0] - axis[0], places[:, 2] - axis[2])
    foot, top = float(every[:, 1].min()), float(every[:, 1].max())
    if float(places[:, 1].mean()) > foot + HALF * (top - foot):
        edge = int(np.argmax(places[:, 1]))
        pole = min(top, float(places[edge, 1] + far[edge]))
    else:
        edge = int(np.argmin(places[:, 1]))
        pole = max(foot, float(places[edge, 1] - far[edge]))
    away = np.hypot(far, places[:, 1] - pole)
    away[far < ON_AXIS * far.max()] = 0.0  # one that has no direction lies in the middle
    found: dict[str, Point] = {}
    for joint, place, out in zip(joints, places, away, strict=True):
        angle = math.atan2(float(axis[2] - place[2]), float(place[0] - axis[0]))
        found[joint] = (float(out) * math.cos(angle), float(out) * math.sin(angle))
    return found
