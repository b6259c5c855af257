"""Where the joints of a course lie on its plan: as they are seen from above, opened out like a
flower so that none lies over another.

A joint keeps its direction from the piece's upright axis. Its distance from the middle is its
distance from a pole on the axis below the course, where the piece widens or goes straight up, or
above it, where the piece closes: of a globe this is Lambert's azimuthal equal-area projection.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from math import fsum

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.marks import Point
from buildplan.framework.model import Framework
from buildplan.sequence.laid import RoundCourse

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
        found[joint] = _toward(angle, float(out))
    return found


def places_lying(
    at: Mapping[str, FloatArray], framework: Framework, course: RoundCourse
) -> dict[str, Point]:
    """Where the joints of a ring lie on its plan, and those of its zigzag, which lies flat round it
    before it comes up; metres, as of `places_from_above`. The other knots of the zigzag lie so far
    out as its balloons are long, by the law of cosines."""
    ring = course.ring.chain.joints
    middle = np.mean([at[joint] for joint in ring], axis=0)
    off = {joint: at[joint] - middle for joint in ring}
    near = fsum(math.hypot(one[0], one[2]) for one in off.values()) / len(ring)
    found = {joint: _toward(math.atan2(-one[2], one[0]), near) for joint, one in off.items()}
    walk = course.up.chain.joints if course.up is not None else ()
    for number, tip in enumerate(walk):
        if tip in off:
            continue
        beside = (walk[number - 1], walk[(number + 1) % len(walk)])
        x, y = (fsum(found[joint][axis] for joint in beside) / 2 for axis in (0, 1))
        apart = math.dist(found[beside[0]], found[beside[1]]) / 2
        links = (id_ for id_ in framework.links_at[tip] if _leads_to(framework, id_, beside))
        long = min(framework.balloons[framework.link[id_].balloon].tie_to_tie_m for id_ in links)
        beyond = math.sqrt(max(long**2 - apart**2, 0.0))
        found[tip] = _toward(math.atan2(y, x), math.hypot(x, y) + beyond)
    return found


def _leads_to(framework: Framework, id_: str, joints: Collection[str]) -> bool:
    one = framework.link[id_]
    return one.start in joints or one.finish in joints


def _toward(angle: float, far: float) -> Point:
    return far * math.cos(angle), far * math.sin(angle)
