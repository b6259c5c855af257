"""Where one kneels to work on a piece that lies front up, for whatever shows it: the picture of the
person from the side (`person_at_work.py`), and the sign of one seen from above on maps and plans.

One kneels on the floor, never on what lies there: at the place that is free and nearest to where
the close-ups are seen from (`seat.py`), within arms' reach; common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, cached_property

import numpy as np
from scipy.spatial.distance import cdist

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Bodies
from buildplan.drawing.camera import Camera, PaperView
from buildplan.drawing.kneeling_figure import BODY, SKIN
from buildplan.drawing.line_art import INK
from buildplan.drawing.marks import Box, Circle, Ink, Inset, Mark, Picture, Point, Polyline

HIPS_AWAY_M = 0.74  # from the work, level, where the floor is free there
# Where one may kneel instead: so far from the work, and so many ways round it.
REACHES_M, WAYS_ROUND = (0.62, 0.68, HIPS_AWAY_M, 0.8, 0.86, 0.92, 0.98), 72
# Of what a sign is larger than a person, as much as there is room for; the cosine of how far round
# it may be moved for that.
LARGER, SAME_SIDE = (1.0, 0.75, 0.5, 0.25), 0.7
STRETCHED = 2.0  # how much sooner one moves round than reaches further
# What of one who kneels has free floor below it: legs, from the knees to the feet, shoulders and
# head, metres ahead of the hips and to either side.
KNEES_M, KNEES_HALF_M, FEET_M, FEET_HALF_M, CLEAR_M = 0.4, 0.19, 0.31, 0.17, 0.005
SHOULDERS_M, SHOULDERS_HALF_M = 0.28, 0.27
SPREAD_M = 0.51  # more than what of one who kneels is farthest from the hips
AT_ONCE = 48  # places looked at together, nearest first
# The sign is as large as a person on the page, but no smaller and no larger than of such a scale.
LEAST_SCALE, MOST_SCALE = 22.0, 62.0
# Of the sign, in metres ahead of the hips and to either side: its hands before the work and as
# far as arms reach.
HANDS_SHORT_M, REACH_M = 0.1, 0.64
LEGS = ((0.34, 0.13), (-0.24, 0.11))
BACK, SHOULDERS, HEAD_AT, HEAD_M = (-0.02, 0.2), (0.22, 0.19), 0.38, 0.115
LEG_THICK, BACK_THICK, SHOULDER_THICK, ARM_THICK = 0.13, 0.28, 0.18, 0.085
RIM_PT = 0.8  # of its lines


@dataclass(frozen=True, eq=False)
class Kneeling:
    """Somebody who kneels: the middle of the work (3,), and the point (3,) as high as that above
    which the hips are, metres; `size` of those of a person."""

    work: FloatArray
    hips: FloatArray
    size: float = 1.0

    @cached_property
    def toward(self) -> FloatArray:
        """The unit vector (3,) from the work to the person."""
        return _unit(self.hips - self.work)

    def about(self, up: FloatArray) -> FloatArray:
        """Corners (4, 3) about the legs and the back, level; `up` (3,) is from the floor."""
        ends = [self.hips + self.toward * (at * self.size) for at in (FEET_M, -KNEES_M)]
        aside = np.cross(up, self.toward) * (SHOULDERS_HALF_M * self.size)
        return np.array([end + way * aside for end in ends for way in (-1, 1)])


def kneeling_at(bodies: Bodies, middle: FloatArray, camera: Camera, up: FloatArray) -> Kneeling:
    """The one who works about a point (3,) that is seen along `camera`, in what lies there, `up`
    (3,) from the floor: on the free place nearest to the seat, else where least is in the way."""
    return _nearest(bodies, middle, toward_m(camera, up), up, 1.0)[0]


def drawn_larger(bodies: Bodies, one: Kneeling, up: FloatArray, size: float) -> Kneeling:
    """The same one on the same side of the work, up to `size` times as large as a person and so
    many times as far away, as far as there is room among what lies there."""
    for share in LARGER if size > 1.0 else ():
        larger = 1.0 + share * (size - 1.0)
        found, met = _nearest(bodies, one.work, one.toward, up, larger)
        if not met and found.toward @ one.toward > SAME_SIDE:
            return found
    return one


def _nearest(
    bodies: Bodies, middle: FloatArray, toward: FloatArray, up: FloatArray, size: float
) -> tuple[Kneeling, float]:
    """The place nearest to the one `toward` which one would kneel, so large, and how much is in the
    way there, metres."""
    across = np.cross(up, toward)
    flat = (bodies.centre - middle) @ np.array([toward, across]).T
    within = np.linalg.norm(flat, axis=1) < (REACHES_M[-1] + SPREAD_M) * size + bodies.radius
    flat, radius = flat[within], bodies.radius[within]
    ways, away = _places()
    away, best, least = away * size, 0, np.inf
    for first in range(0, len(away), AT_ONCE):
        these = slice(first, first + AT_ONCE)
        met = np.round(_in_the_way(flat, radius, ways[these], away[these], size), 3)
        if met.min() < least:
            best, least = first + int(np.argmin(met)), float(met.min())
        if not least:
            break
    way = ways[best, 0] * toward + ways[best, 1] * across
    return Kneeling(middle, middle + way * away[best], size), least


@cache
def _places() -> tuple[FloatArray, FloatArray]:
    """Where one may kneel, nearest first to where one would: unit vectors (n, 2) from the work, the
    first axis the way one would, and how far away along them (n,), metres."""
    turns = np.arange(WAYS_ROUND) * 2 * np.pi / WAYS_ROUND
    ways = np.tile(np.column_stack([np.cos(turns), np.sin(turns)]), (len(REACHES_M), 1))
    away = np.repeat(np.array(REACHES_M), WAYS_ROUND)
    moved = np.linalg.norm(ways * away[:, None] - (HIPS_AWAY_M, 0.0), axis=1)
    moved += STRETCHED * np.abs(away - HIPS_AWAY_M)
    nearest = np.argsort(np.round(moved, 6), kind="stable")
    return ways[nearest], away[nearest]


def _in_the_way(
    flat: FloatArray, radius: FloatArray, ways: FloatArray, away: FloatArray, size: float
) -> FloatArray:
    """How far the balloons (n, 2), from the work, are in the way of one who kneels `away` (m,)
    along `ways` (m, 2), metres of all together; both legs are one box, and so are the shoulders."""
    hips = ways * away[:, None]
    close = cdist(flat, hips) < SPREAD_M * size + radius[:, None]
    balloon, place = np.nonzero(close)
    off, way = flat[balloon] - hips[place], ways[place]
    along = off[:, 0] * way[:, 0] + off[:, 1] * way[:, 1]
    aside = np.abs(off[:, 1] * way[:, 0] - off[:, 0] * way[:, 1])

    def box(near: float, far: float, half: float) -> FloatArray:
        """How far off one is that reaches from `near` to `far` before and behind the hips."""
        beyond = np.abs(along - (far - near) / 2 * size) - (far + near) / 2 * size
        beside = aside - half * size
        outside = np.hypot(np.maximum(beyond, 0.0), np.maximum(beside, 0.0))
        return np.asarray(outside + np.minimum(np.maximum(beyond, beside), 0.0))

    knees, feet = box(KNEES_M, 0.0, KNEES_HALF_M), box(0.0, FEET_M, FEET_HALF_M)
    shoulders = box(SHOULDERS_M, 0.0, SHOULDERS_HALF_M)
    head = np.hypot(along + HEAD_AT * size, aside) - HEAD_M * size
    nearest = np.minimum(np.minimum(np.minimum(knees, feet), head), shoulders) - radius[balloon]
    met = np.bincount(place, np.maximum(CLEAR_M - nearest, 0.0), len(away))
    return np.asarray(met, dtype=np.float64)


@dataclass(frozen=True)
class Kneeler:
    """One who kneels, from above on a page: the hips, the middle of the work, and points to the
    metre."""

    at: Point
    work: Point
    scale: float

    @property
    def turn(self) -> float:
        """Which way is looked, radians."""
        return math.atan2(self.work[1] - self.at[1], self.work[0] - self.at[0])


def toward_m(camera: Camera, up: FloatArray) -> FloatArray:
    """The level unit vector (3,) from work to the one who looks at it along a camera; `up` is one
    from the floor."""
    away = np.array(camera.axes[2])
    return _unit(away - up * (away @ up))


def sign_size(view: PaperView) -> float:
    """How many times as large as a person the sign of one is on a view: so that it can be seen."""
    return max(1.0, LEAST_SCALE / view.scale)


def kneeler_on(view: PaperView, one: Kneeling) -> Kneeler:
    """Somebody who kneels, on a view from straight above."""
    (work, hips), _ = view.place(np.array([one.work, one.hips]))
    scale = min(view.scale * one.size, MOST_SCALE)
    return Kneeler((float(hips[0]), float(hips[1])), (float(work[0]), float(work[1])), scale)


def kneeler_box(kneeler: Kneeler) -> Box:
    """The box of the sign's back and head, on which nothing else is to lie."""
    (x, y), half = kneeler.at, BACK_THICK * kneeler.scale
    x += math.cos(kneeler.turn) * BACK[1] * kneeler.scale
    y += math.sin(kneeler.turn) * BACK[1] * kneeler.scale
    return (x - half, y - half, x + half, y + half)


def kneeler_sign(kneeler: Kneeler) -> Inset:
    """One who kneels from above: legs, back, arms to the work, head."""
    scale, turn = kneeler.scale, kneeler.turn
    c, s = math.cos(turn), math.sin(turn)
    half = (REACH_M + 0.1) * scale + RIM_PT
    far = math.dist(kneeler.at, kneeler.work) / scale - HANDS_SHORT_M
    hands = min(max(far, HEAD_AT), REACH_M)

    def point(ahead: float, aside: float) -> Point:
        x, y = ahead * scale, aside * scale
        return (half + x * c - y * s, half + x * s + y * c)

    sides = (-1.0, 1.0)
    legs = [[point(a, side * b) for a, b in LEGS] for side in sides]
    arms = [
        [
            point(SHOULDERS[0], side * SHOULDERS[1]),
            point((SHOULDERS[0] + hands) / 2, side * (SHOULDERS[1] + 0.05)),
            point(hands, side * 0.08),
        ]
        for side in sides
    ]
    back = [point(BACK[0], 0.0), point(BACK[1], 0.0)]
    shoulders = [point(SHOULDERS[0], side * SHOULDERS[1]) for side in sides]
    marks: list[Mark] = [
        *_limbs(legs, LEG_THICK * scale),
        *_limbs(arms, ARM_THICK * scale),
        *_lines([back], BACK_THICK * scale, RIM_PT),
        *_lines([shoulders], SHOULDER_THICK * scale, RIM_PT),
        *_lines([back], BACK_THICK * scale),
        *_lines([shoulders], SHOULDER_THICK * scale),
        Circle(point(HEAD_AT, 0.0), HEAD_M * scale, Ink(SKIN, INK, RIM_PT)),
    ]
    picture = Picture(2 * half, 2 * half, tuple(marks), "", (("eye", "builder"),))
    return Inset(picture, (kneeler.at[0] - half, kneeler.at[1] - half))


def _limbs(lines: Sequence[Sequence[Point]], thick: float) -> list[Mark]:
    return [*_lines(lines, thick, RIM_PT), *_lines(lines, thick)]


def _lines(lines: Sequence[Sequence[Point]], thick: float, rim: float = 0.0) -> list[Mark]:
    """Lines of a person, or the rim that stands out from under them."""
    ink = Ink(stroke=INK if rim else BODY, width=thick + 2 * rim)
    return [Polyline(tuple(line), ink) for line in lines]


def _unit(vector: FloatArray) -> FloatArray:
    return np.asarray(vector / max(float(np.linalg.norm(vector)), 1e-12))
