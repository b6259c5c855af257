"""From where each step is seen: the builder's seat, fixed to the piece's own direction there.

A tube lies front up while it is braced; the builder sits at its open end, outside the curve.
What is built as it stands is seen from in front of the work, and laying out from above.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from buildplan.drawing.bodies import link_length_m
from buildplan.framework.model import Brace, Framework
from buildplan.screen.model import Point, SeatData
from buildplan.sequence.model import Kind
from buildplan.shape.model import FloatArray, Shape

# Round from straight outside towards the open end, and above the floor.
ROUND_DEG, ABOVE_DEG = 62.0, 25.0
# How steeply the eyes of someone who stands look down on the work.
DOWN_DEG = 15.0
# What is seen round the work, in lengths of a link on each side.
ROOM = 1.6
ON_THE_PIECE = frozenset({Kind.BRACE, Kind.SETTLE, Kind.SINGLE, Kind.JOIN, Kind.LOCK})
FRONT, UPRIGHT = np.array([0.0, 0.0, 1.0]), np.array([0.0, 1.0, 0.0])


def seat_at(framework: Framework, shape: Shape, kind: Kind, joints: Sequence[str]) -> SeatData:
    """The seat for work of a kind at some joints; without joints the whole piece is seen."""
    if kind not in ON_THE_PIECE or not joints:
        return _whole(shape, lying=kind is not Kind.STAND_UP and _is_laid(framework))
    spots = np.array([shape.at[joint] for joint in joints])
    low, high = spots.min(axis=0), spots.max(axis=0)
    room = 2 * ROOM * link_length_m(framework)
    across = float(np.linalg.norm(high - low)) + room
    brace = _brace_at(framework, joints)
    if brace is None:
        return _seat(_standing(shape, spots), UPRIGHT, (low + high) / 2, across, lying=False)
    to_eye, front = open_end(framework, shape, brace)
    return _seat(to_eye, front, (low + high) / 2, across, lying=True)


def open_end(framework: Framework, shape: Shape, brace: Brace) -> tuple[FloatArray, FloatArray]:
    """The direction (3,) to the eye at the open end of a tube, and its front (3,), at a brace."""
    section = np.array([shape.at[joint] for joint in brace.section])
    front, outside = _section_axes(section)
    along = _runs_round(framework, shape, brace) * np.cross(outside, front)
    turn, rise = np.radians(ROUND_DEG), np.radians(ABOVE_DEG)
    level = outside * np.cos(turn) + along * np.sin(turn)
    return level * np.cos(rise) + front * np.sin(rise), front


def _section_axes(section: FloatArray) -> tuple[FloatArray, FloatArray]:
    """To the front, and to the outside, of a section: A lies outer front, the last chain behind
    it; of three the second lies inside, of two both lie at the front."""
    first, last = section[0], section[-1]
    if len(section) == 2:
        front, outside = FRONT, first - last
    elif len(section) == 3:
        front, outside = first - last, (first + last) / 2 - section[1]
    else:
        front = (first + section[1]) / 2 - (section[2] + last) / 2
        outside = (first + last) / 2 - (section[1] + section[2]) / 2
    front = _unit(front)
    return front, _unit(outside - front * (outside @ front))


def _runs_round(framework: Framework, shape: Shape, brace: Brace) -> float:
    """1 where outside, front and the way on follow one another by the right hand in the part
    that a brace is of, else -1. At a sharp corner the way on says little, so all braces vote."""
    votes = 0.0
    braces = framework.built_with(brace.section[0]).braces
    for before, after in pairwise(braces):
        first, second = (np.array([shape.at[j] for j in each.section]) for each in (before, after))
        front, outside = _section_axes(first)
        votes += float(np.cross(outside, front) @ (second.mean(axis=0) - first.mean(axis=0)))
    return -1.0 if votes < 0 else 1.0


def _brace_at(framework: Framework, joints: Sequence[str]) -> Brace | None:
    """The brace of a tube that has most of the joints, of two the later; beside a skipped joint
    the one that comes after it. None where nothing is braced."""
    part = framework.built_with(joints[0])
    if not part.cells:
        return None
    shared = {brace.number: len({*brace.section} & {*joints}) for brace in part.braces}
    most = max(shared.values(), default=0)
    if most:
        return framework.brace[max(number for number, count in shared.items() if count == most)]
    after = [cell.second for cell in part.cells if joints[0] in cell.skipped]
    return framework.brace[after[0]] if after else None


def _is_laid(framework: Framework) -> bool:
    return any(part.cells for part in [framework, *(each.framework for each in framework.parts)])


def _standing(shape: Shape, spots: FloatArray) -> FloatArray:
    """From in front of the work, outside the piece; what lies in its middle from its front."""
    whole = shape.positions_m
    low, high = whole.min(axis=0), whole.max(axis=0)
    spread = (high - low)[[0, 2]]
    away = (spots.mean(axis=0) - (low + high) / 2) * np.array([1.0, 0.0, 1.0])
    if spread[1] < 0.6 * spread[0]:  # flat, a wall: one stands before its front or its back
        away = FRONT if away[2] >= -1e-6 else -FRONT
    elif np.linalg.norm(away) < 0.1 * spread.max():
        away = FRONT
    down = np.radians(DOWN_DEG)
    return np.asarray(_unit(away) * np.cos(down) + UPRIGHT * np.sin(down))


def _whole(shape: Shape, lying: bool) -> SeatData:
    low, high = shape.positions_m.min(axis=0), shape.positions_m.max(axis=0)
    across = float(max(high[0] - low[0], high[1] - low[1])) + 0.4
    up = UPRIGHT
    to_eye = FRONT if lying else _unit(np.array([0.25, 0.2, 1.0]))
    return _seat(to_eye, up, (low + high) / 2, across, lying)


def whole_seat(shape: Shape) -> SeatData:
    """The seat before the finished piece."""
    return _whole(shape, lying=False)


def _seat(
    to_eye: FloatArray, up: FloatArray, about: FloatArray, across: float, lying: bool
) -> SeatData:
    return SeatData(
        to_eye=rounded(to_eye),
        up=rounded(up),
        about=rounded(about),
        across_m=round(across, 4),
        lying=lying,
    )


def rounded(vector: FloatArray) -> Point:
    """A point to a tenth of a millimetre."""
    x, y, z = (round(float(value), 4) + 0.0 for value in vector)
    return x, y, z


def _unit(vector: FloatArray) -> FloatArray:
    return np.asarray(vector / max(float(np.linalg.norm(vector)), 1e-12))
