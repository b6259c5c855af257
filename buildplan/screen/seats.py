"""From where each step is seen on a screen: the seat of the printed close-ups, with how much is
seen from it. Laying out is seen from above, what stands from its front."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import brace_of
from buildplan.drawing.bodies import link_length_m
from buildplan.drawing.camera import Camera
from buildplan.drawing.cell_layout import corner_at
from buildplan.drawing.seat import FROM_ABOVE, LYING, brace_seat, seat_before
from buildplan.screen.model import Point, SeatData
from buildplan.sequence.model import Kind, Turn
from buildplan.shape.model import FloatArray, Shape

# What is seen round a brace and round joints by themselves, from which whole balloons go out, in
# lengths of a link on each side; and round a whole piece, in metres.
TIED_ROOM, JOINED_ROOM, MARGIN_M = 0.95, 1.6, 0.4
ON_THE_PIECE = frozenset({Kind.BRACE, Kind.SETTLE, Kind.SINGLE, Kind.JOIN, Kind.LOCK})
# The finished piece: from its front, a little from above and from the right.
WHOLE = Camera((0.25, 0.2, 1.0), (0.0, 1.0, 0.0))


def seat_of(book: Book, kind: Kind, turns: Sequence[Turn]) -> SeatData:
    """The seat for turns of a step of some kind; without joints the whole piece is seen."""
    joints = list(dict.fromkeys(joint for turn in turns for joint in turn.joints))
    if kind not in ON_THE_PIECE or not joints:
        lying = kind is not Kind.STAND_UP and _is_laid(book)
        return _whole(book.shape, FROM_ABOVE if lying else WHOLE, lying, _part_of(book, joints))
    spots = np.array([book.shape.at[joint] for joint in joints])
    low, high = spots.min(axis=0), spots.max(axis=0)
    room = TIED_ROOM if kind in (Kind.BRACE, Kind.SINGLE) else JOINED_ROOM
    across = float(np.linalg.norm(high - low)) + 2 * room * link_length_m(book.framework)
    camera = _before(book, turns, joints)
    return _seat(camera, (low + high) / 2, across, lying=camera.name in LYING)


def _before(book: Book, turns: Sequence[Turn], joints: Sequence[str]) -> Camera:
    """Before the brace that is tied, of several the last; else before the joints."""
    ties = [op for turn in turns for op in turn.operations if op.kind is Kind.BRACE]
    if ties:
        brace = brace_of(book, ties[-1])
        corner = corner_at(book.framework, brace)
        return brace_seat(book.framework, book.shape, brace, corner)
    return seat_before(book.framework, book.shape, joints)


def whole_seat(shape: Shape) -> SeatData:
    """The seat before the finished piece."""
    return _whole(shape, WHOLE, lying=False)


def beside_seat(shape: Shape, right_m: float, top_m: float) -> SeatData:
    """The seat before the finished piece and a person, who reaches as far right and as high."""
    low, high = shape.positions_m.min(axis=0), shape.positions_m.max(axis=0)
    low[1], high[:2] = min(low[1], 0.0), np.maximum(high[:2], (right_m, top_m))
    return _around(low, high, WHOLE, lying=False)


def rounded(vector: FloatArray) -> Point:
    """A point to a tenth of a millimetre."""
    x, y, z = (round(float(value), 4) + 0.0 for value in vector)
    return x, y, z


def _is_laid(book: Book) -> bool:
    framework = book.framework
    return any(part.cells for part in [framework, *(each.framework for each in framework.parts)])


def _part_of(book: Book, joints: Sequence[str]) -> Sequence[str]:
    """The joints of the part that all of some joints belong to; none where it is not one part."""
    for part in book.framework.parts:
        if joints and set(joints) <= set(part.framework.joints):
            return part.framework.joints
    return ()


def _whole(shape: Shape, camera: Camera, lying: bool, joints: Sequence[str] = ()) -> SeatData:
    """The seat before a whole piece, or before the part of it that has some joints."""
    spots = np.array([shape.at[joint] for joint in joints]) if joints else shape.positions_m
    return _around(spots.min(axis=0), spots.max(axis=0), camera, lying)


def _around(low: FloatArray, high: FloatArray, camera: Camera, lying: bool) -> SeatData:
    across = float(max(high[0] - low[0], high[1] - low[1])) + MARGIN_M
    return _seat(camera, (low + high) / 2, across, lying)


def _seat(camera: Camera, about: FloatArray, across: float, lying: bool) -> SeatData:
    return SeatData(
        to_eye=rounded(camera.axes[2]),
        up=rounded(np.array(camera.up)),
        about=rounded(about),
        across_m=round(across, 4),
        lying=lying,
    )
