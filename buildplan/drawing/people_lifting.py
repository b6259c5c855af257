"""The people who stand a piece up, in space: at its sides, both hands round the chains at a joint,
and of three or more one on its knees who keeps the foot from sliding. How is common practice, no
source."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.kneeling_figure import Posed, kneeling
from buildplan.drawing.standing_figure import standing
from buildplan.shape.model import Shape

UP, AHEAD = np.array([0.0, 1.0, 0.0]), np.array([0.0, 0.0, 1.0])
# Metres: how high hands hold a piece at most, and as a share of how high it is; joints that are so
# much higher or lower serve too; how far from them somebody stands, and from the next person.
HOLD_M, HOLD_SHARE, ABOUT_M, FROM_JOINT_M, APART_M = 1.15, 0.6, 0.4, 0.5, 0.5
# Metres: what is no higher is of the foot; how far from it somebody kneels.
FOOT_M, KNEEL_FROM_M = 0.5, 0.62


def lifting_people(shape: Shape, people: int) -> list[Posed]:
    """So many people who hold a standing piece by turns at its left and at its right."""
    at = shape.positions_m
    high = min(HOLD_M, HOLD_SHARE * float(at[:, 1].max()))
    about = np.abs(at[:, 1] - high)
    level = at[about <= max(ABOUT_M, float(about.min()))]
    found = []
    for number in range(people):
        side = -1.0 if number % 2 == 0 else 1.0
        edge = level[int(np.argmax(side * level[:, 0]))]
        back = np.array([0.0, 0.0, -APART_M * (number // 2)])
        floor = (edge + back) * (1, 0, 1) + np.array([side * FROM_JOINT_M, 0.0, 0.0])
        held = _nearest(level, edge)
        found.append(standing(floor, _level(edge - floor), UP, _left_first(held, edge - floor)))
    return found


def person_at_foot(shape: Shape) -> Posed:
    """Somebody who kneels before the foot of a standing piece, at its middle, with both hands on
    it."""
    at = shape.positions_m
    low = at[at[:, 1] <= max(FOOT_M, float(at[:, 1].min()))]
    before = np.array([(at[:, 0].min() + at[:, 0].max()) / 2, 0.0, at[:, 2].max()])
    held = _nearest(low, _nearest(low, before)[0])
    middle = held.mean(axis=0)
    floor = np.array([middle[0], 0.0, before[2] + KNEEL_FROM_M])
    return kneeling(floor, _level(middle - floor), UP, _left_first(held, middle - floor))


def people_behind(at_m: FloatArray, places: Sequence[tuple[float, float]]) -> list[Posed]:
    """People who stand behind what is lifted, at the places (x, z) of the floor, each with both
    hands at the joints of `at_m` (n, 3) that are nearest."""
    found = []
    for x, z in places:
        floor = np.array([x, 0.0, z])
        held = _nearest(at_m, floor + HOLD_M * UP)
        found.append(standing(floor, AHEAD, UP, _left_first(held, AHEAD)))
    return found


def _nearest(points: FloatArray, place: FloatArray) -> FloatArray:
    """The two points (2, 3) that are nearest to a place."""
    order: Sequence[int] = np.argsort(
        np.linalg.norm(points - place, axis=1), kind="stable"
    ).tolist()
    return np.asarray(points[[order[0], order[min(1, len(order) - 1)]]])


def _level(way: FloatArray) -> FloatArray:
    flat = way * (1, 0, 1)
    return np.asarray(flat / max(float(np.linalg.norm(flat)), 1e-9))


def _left_first(held: FloatArray, way: FloatArray) -> FloatArray:
    """Two points, the one to the left of somebody who looks along `way` first."""
    right = np.cross(_level(way), UP)
    return held if (held[0] - held[1]) @ right <= 0 else held[::-1]
