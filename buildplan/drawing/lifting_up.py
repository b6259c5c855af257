"""How a long piece is stood up, drawn from its own shape a little way up: its foot stays on the
floor, people are spread along its upper edge, one holds the foot, ballast lies ready before it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.ballast_bags import bag_marks
from buildplan.drawing.bodies import finished
from buildplan.drawing.camera import fit
from buildplan.drawing.kneeling_figure import figure_marks
from buildplan.drawing.labels import DARK
from buildplan.drawing.line_art import TYPE
from buildplan.drawing.marks import Label, Mark, Picture, Point, Polyline
from buildplan.drawing.people_lifting import people_behind, person_at_foot
from buildplan.drawing.scene import body_marks
from buildplan.drawing.standing_up import (
    LIES,
    MARGIN_PT,
    SEEN_FROM,
    STAYS,
    WORDS_PT,
)
from buildplan.drawing.way_round import PAPER, WAY, pointed
from buildplan.framework.model import Framework
from buildplan.sequence.reach import WITH_ONE_AT_FOOT
from buildplan.shape.model import Shape

# How far up it is drawn, and over which angles its top goes on; how far behind it people are, how
# far before it ballast lies. For looks only.
UP_DEG, WAY_DEG = 22.0, (30.0, 48.0, 66.0, 84.0)
BEHIND_M, READY_M, BAGS_APART_M = 0.3, 0.55, 0.34


def lifting_up_picture(
    framework: Framework,
    shape: Shape,
    width: float,
    height: float,
    alt: str,
    people: int,
    words: str = "",
    ballast_at: Sequence[str] = (),
) -> Picture:
    """The piece a little way up from the floor, the edge that stays there, `people` at it, a bag
    for each joint of `ballast_at`. `words` stand at its foot. Lengths of the picture are points."""
    low, high = np.min(shape.positions_m, axis=0), np.max(shape.positions_m, axis=0)
    edge_z, tall, deep = float(low[2]), float(high[1]), float(high[2] - low[2])
    up = math.radians(UP_DEG)
    lifted = replace(shape, positions_m=_leant_back(shape.positions_m, edge_z, up))
    top_z = edge_z - tall * math.cos(up)
    lies = np.array([(x, 0.0, z) for x in (low[0], high[0]) for z in (edge_z, edge_z - tall)])
    one_at_foot = people >= WITH_ONE_AT_FOOT
    behind = [(x, top_z - BEHIND_M) for x in _spread(low, high, people - one_at_foot)]
    at_foot = [person_at_foot(lifted)] if one_at_foot else []
    at_top = people_behind(lifted.positions_m, behind)
    bags = _ready(shape, ballast_at, edge_z + deep + READY_M)
    figures = [one.points for one in (*at_top, *at_foot)]
    ready = np.array([(x, 0.0, z) for x, z in bags]).reshape(-1, 3)
    points = np.vstack([lifted.positions_m, lies, ready, *figures])
    view = fit(SEEN_FROM, points, 0.12, width, height, MARGIN_PT)

    def at(x: float, y: float, z: float) -> Point:
        ((right, above),), _ = view.place(np.array([[x, y, z]]))
        return (float(right), float(above))

    left, right, far_left, far_right = (at(*map(float, corner)) for corner in lies[[0, 2, 1, 3]])
    marks: list[Mark] = [Polyline((left, right, far_right, far_left), LIES, closed=True)]
    for one in at_top:
        marks += [mark for _, limbs in figure_marks(one, view) for mark in limbs]
    marks += body_marks(finished(framework, lifted), view, width, height)
    marks.append(Polyline((left, right), STAYS))
    middle = float(low[0] + high[0]) / 2
    turns = np.radians(WAY_DEG).tolist()
    way = [at(middle, tall * math.sin(t), edge_z - tall * math.cos(t)) for t in turns]
    marks += pointed(way, WAY)
    for one in at_foot:
        marks += [mark for _, limbs in figure_marks(one, view) for mark in limbs]
    for x, z in bags:
        marks += bag_marks(at(x, 0.0, z))
    if words:
        marks.append(Label((width / 2, WORDS_PT), words, TYPE, DARK, halo=PAPER))
    return Picture(width, height, tuple(marks), alt, (("picture", "standing up"),))


def _spread(low: FloatArray, high: FloatArray, people: int) -> list[float]:
    """Where people stand along a piece, evenly from its left to its right; metres."""
    share = float(high[0] - low[0]) / people
    return [float(low[0]) + share * (number + 0.5) for number in range(people)]


def _leant_back(at_m: FloatArray, edge_z: float, up: float) -> FloatArray:
    """Joints (n, 3) of a standing piece turned back about the edge on the floor at depth `edge_z`,
    until it is only `up` radians from lying on its back."""
    back = math.pi / 2 - up
    y, deep = at_m[:, 1], at_m[:, 2] - edge_z
    turned = at_m.copy()
    turned[:, 1] = y * math.cos(back) + deep * math.sin(back)
    turned[:, 2] = edge_z + deep * math.cos(back) - y * math.sin(back)
    return turned


def _ready(shape: Shape, joints: Sequence[str], z: float) -> list[tuple[float, float]]:
    """Where the bags of some joints lie ready, each before its joint; those of joints behind one
    another side by side."""
    found: list[tuple[float, float]] = []
    for joint in joints:
        x = float(shape.at[joint][0])
        while any(abs(x - other) < BAGS_APART_M for other, _ in found):
            x += BAGS_APART_M
        found.append((x, z))
    return found
