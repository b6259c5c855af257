"""Where one kneels to work on a piece that lies front up, for whatever shows it: the picture of the
person from the side (`person_at_work.py`), and the sign of one seen from above on maps and plans.

One kneels where the close-ups are seen from (`seat.py`), at arm's length; common practice, no
source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.camera import Camera, PaperView
from buildplan.drawing.kneeling_figure import BODY, SKIN
from buildplan.drawing.line_art import INK
from buildplan.drawing.marks import Box, Circle, Ink, Inset, Mark, Picture, Point, Polyline

HIPS_AWAY_M = 0.74  # from the work, level
# The sign is as large as a person on the page, but no smaller and no larger than of such a scale;
# in between smaller where a picture has no room beside the work.
LEAST_SCALE, MOST_SCALE = 22.0, 62.0
# Of the sign, in metres ahead of the hips and to either side: behind its feet, its hands before
# the work and as far as arms reach, and the least from the hips to the work.
FEET_M, HANDS_SHORT_M, REACH_M, NEAREST_M = 0.32, 0.1, 0.64, 0.4
LEGS = ((0.34, 0.13), (-0.24, 0.11))
BACK, SHOULDERS, HEAD_AT, HEAD_M = (-0.02, 0.2), (0.22, 0.19), 0.38, 0.115
LEG_THICK, BACK_THICK, SHOULDER_THICK, ARM_THICK = 0.13, 0.28, 0.18, 0.085
RIM_PT, EDGE_PT = 0.8, 4.0  # of its lines; from the edge of a picture


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
    level = away - up * (away @ up)
    return np.asarray(level / np.linalg.norm(level))


def kneeler_on(
    view: PaperView, middle: FloatArray, camera: Camera, size: tuple[float, float]
) -> Kneeler:
    """The one who works about a point (3,) and looks along a camera, on a view from straight above
    in a picture of this size; smaller, and nearer to the work, where there is no room."""
    toward = toward_m(camera, np.array(view.camera.axes[2]))
    (spot, ahead), _ = view.place(np.array([middle, middle + toward]))
    work = (float(spot[0]), float(spot[1]))
    c, s = (float(value) / view.scale for value in ahead - spot)
    room = math.inf
    for at, way, side in zip(work, (c, s), size, strict=True):
        if abs(way) > 1e-6:
            room = min(room, ((side - EDGE_PT - at) if way > 0 else (EDGE_PT - at)) / way)
    fits = room / (HIPS_AWAY_M + FEET_M)
    scale = max(min(view.scale, MOST_SCALE, fits), LEAST_SCALE)
    far = min(HIPS_AWAY_M * max(view.scale, LEAST_SCALE), room - FEET_M * scale)
    far = max(far, NEAREST_M * scale)
    return Kneeler((work[0] + c * far, work[1] + s * far), work, scale)


def between(kneelers: Sequence[Kneeler]) -> Kneeler:
    """One in the middle of several places that are close together."""

    def middle(points: Sequence[Point]) -> Point:
        count = len(points)
        return (
            math.fsum(x for x, _ in points) / count,
            math.fsum(y for _, y in points) / count,
        )

    at, work = middle([one.at for one in kneelers]), middle([one.work for one in kneelers])
    return Kneeler(at, work, kneelers[0].scale)


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
