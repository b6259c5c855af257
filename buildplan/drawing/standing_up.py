"""How a piece is stood up, drawn from its own shape: where it lies, which edge stays on the
floor, which way it comes up, who stands where, and where ballast goes."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from buildplan.drawing.ballast_bags import bag_marks
from buildplan.drawing.bodies import finished
from buildplan.drawing.camera import Camera, fit
from buildplan.drawing.kneeling_figure import figure_marks
from buildplan.drawing.labels import DARK
from buildplan.drawing.line_art import TYPE
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.people_lifting import lifting_people, person_at_foot
from buildplan.drawing.scene import body_marks
from buildplan.drawing.way_round import PAPER, WAY, pointed
from buildplan.framework.model import Framework
from buildplan.sequence.reach import WITH_ONE_AT_FOOT
from buildplan.shape.holding import base_middles
from buildplan.shape.model import FloatArray, Shape

# From before the piece, above, and from one side, so that the floor behind it is seen.
SEEN_FROM = Camera((0.42, 0.5, 0.76), (0.0, 1.0, 0.0), "standing up")
MARGIN_PT = 8.0
LIES = Ink(fill="#F1F4F6", stroke="#8A9AA8", width=0.8, dash=(3, 2))
STAYS = Ink(stroke=WAY, width=2.0)  # in the colour of the arrow: the piece turns about it
WORDS_PT = 2.4  # above the foot of the picture
TIE = Ink(stroke=DARK, width=1.6)
# How far a wall is behind the piece, and what it hangs from above it. Metres, for looks only.
WALL_M, ABOVE_M = 0.5, 0.4

Point3 = tuple[float, float, float]


def standing_up_picture(
    framework: Framework,
    shape: Shape,
    width: float,
    height: float,
    alt: str,
    people: int = 2,
    words: str = "",
    ballast_at: Sequence[str] = (),
) -> Picture:
    """The piece as it stands, its outline as it lies front up behind its foot, the edge that
    stays on the floor, the way it comes up, the people at its sides, ballast on the joints
    `ballast_at`, and the lines of what holds it.

    Of three `people` or more one holds the foot, in front of it; the others stand by turns to the
    left and to the right. `words` stand at its foot. Lengths of the picture are points.
    """
    low, high = np.min(shape.positions_m, axis=0), np.max(shape.positions_m, axis=0)
    edge_z = float(low[2])
    back = np.array([(x, 0.0, z) for x in (low[0], high[0]) for z in (edge_z, edge_z - high[1])])
    at_foot = [person_at_foot(shape)] if people >= WITH_ONE_AT_FOOT else []
    figures = [*lifting_people(shape, people - len(at_foot)), *at_foot]
    held = _held_m(shape)
    ends = np.array([end for line in held for end in line]).reshape(-1, 3)
    points = np.vstack([shape.positions_m, back, ends, *(one.points for one in figures)])
    view = fit(SEEN_FROM, points, 0.12, width, height, MARGIN_PT)

    def at(x: float, y: float, z: float) -> Point:
        ((right, up),), _ = view.place(np.array([[x, y, z]]))
        return (float(right), float(up))

    left, right, far_left, far_right = (at(*map(float, corner)) for corner in back[[0, 2, 1, 3]])
    marks: list[Mark] = [Polyline((left, right, far_right, far_left), LIES, closed=True)]
    marks += body_marks(finished(framework, shape), view, width, height)
    marks.append(Polyline((left, right), STAYS))
    marks += pointed([at(*one) for one in _way_up_m(low, high)], WAY)
    for figure in figures:
        marks += [mark for _, limbs in figure_marks(figure, view) for mark in limbs]
    marks += [Polyline((at(*one), at(*other)), TIE) for one, other in held]
    for joint in ballast_at:
        marks += bag_marks(at(*(float(value) for value in shape.at[joint] * (1, 0, 1))))
    if words:
        marks.append(Label((width / 2, WORDS_PT), words, TYPE, DARK, halo=PAPER))
    return Picture(width, height, tuple(marks), alt, (("picture", "standing up"),))


def _way_up_m(low: FloatArray, high: FloatArray) -> list[Point3]:
    """The way that the top goes while the piece is stood up about the edge at its back; `low` and
    `high` are the corners (3,) of the box that it stands in."""
    middle, tall, edge_z = float(low[0] + high[0]) / 2, float(high[1]), float(low[2])
    return [
        (middle, tall * math.sin(turn), edge_z - tall * math.cos(turn))
        for turn in np.radians([8.0, 30.0, 52.0, 74.0]).tolist()
    ]


def _held_m(shape: Shape) -> list[tuple[Point3, Point3]]:
    """The lines that hold a piece, each from end to end in metres: the edges of its base, a pole
    behind it, ties from its upper corners to the wall or to what it hangs from."""
    holding, at = shape.holding, shape.positions_m
    low, high = at.min(axis=0), at.max(axis=0)
    top, behind = float(high[1]), float(low[2])
    found: list[tuple[Point3, Point3]] = []
    if holding.base is not None:
        wide, deep = holding.base.width_m / 2, holding.base.depth_m / 2
        for x, z in base_middles(shape.standing, holding.base).tolist():
            found += _round([(x + i * wide, 0.0, z + k * deep) for i, k in _CORNERS])
    if holding.pole:
        x = float(low[0] + high[0]) / 2
        found.append(((x, 0.0, behind), (x, top + 0.1, behind)))
    for x, y, z in _upper_corners(at):
        if holding.tied_to_wall:
            found.append(((x, y, z), (x, y, behind - WALL_M)))
        if holding.hung:
            found.append(((x, y, z), (x, top + ABOVE_M, z)))
    if holding.tied_to_wall:
        sides = ((float(low[0]), 0.0), (float(high[0]), 0.0))
        upper = [(x, top) for x, _ in reversed(sides)]
        found += _round([(x, y, behind - WALL_M) for x, y in (*sides, *upper)])
    return found


_CORNERS = ((-1, -1), (1, -1), (1, 1), (-1, 1))


def _round(corners: list[Point3]) -> list[tuple[Point3, Point3]]:
    """The edges of a polygon."""
    return list(zip(corners, [*corners[1:], corners[0]], strict=True))


def _upper_corners(at: FloatArray) -> list[Point3]:
    """The joints furthest to the left and to the right of those near the top."""
    low, high = float(at[:, 1].min()), float(at[:, 1].max())
    upper = at[at[:, 1] > low + 0.8 * (high - low)]
    ends = (upper[int(upper[:, 0].argmin())], upper[int(upper[:, 0].argmax())])
    return [(float(x), float(y), float(z)) for x, y, z in ends]
