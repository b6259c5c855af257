"""How finished pieces and their parts are carried: the room that they need, and what goes through.

Every link balloon is a spheroid about its axis, of radius r and half length c.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from buildplan.framework.model import Framework
from buildplan.shape.bodies import bodies_of
from buildplan.shape.model import FloatArray, Shape

# A tilt is worth its trouble when it saves so much of the height.
WORTH_TILTING = 0.97
# What is lower or narrower than this nobody walks into; a child does where it is higher. From
# memory.
LEAST_WALK_WIDTH_M, LEAST_WALK_HEIGHT_M = 0.5, 1.0
COLUMN_M = 0.01  # how finely an opening is looked at


class CarriedAs(StrEnum):
    """How a piece is turned while it is carried, edge first."""

    UPRIGHT = "upright"
    ON_ITS_SIDE = "on its side"
    TILTED = "tilted"
    FLAT = "flat"


@dataclass(frozen=True)
class Carried:
    """A piece, or a part of one, as the balloons that it is made of: `middles_m` and `axes`
    (links, 3), `radius_m` and `half_m` (links). `name` is that of the part, empty for the whole."""

    name: str
    middles_m: FloatArray
    axes: FloatArray
    radius_m: FloatArray
    half_m: FloatArray

    def extent_m(self, direction: FloatArray) -> float:
        """How far it reaches along a unit vector u, between two planes that touch it.

        A spheroid with axis a reaches sqrt(r^2 + (c^2 - r^2)(a.u)^2) from its middle.
        """
        along = self.axes @ direction
        reach = np.sqrt(self.radius_m**2 + (self.half_m**2 - self.radius_m**2) * along**2)
        middle = self.middles_m @ direction
        return float(np.max(middle + reach) - np.min(middle - reach))


@dataclass(frozen=True)
class CarriedPose:
    """A way to carry it through an opening: the least clear width and height that it needs, and
    how long it is in the way that it travels, in metres. `lean_deg` is how far it is turned in
    its own plane."""

    way: CarriedAs
    lean_deg: float
    width_m: float
    height_m: float
    length_m: float


@dataclass(frozen=True)
class DoorOpening:
    """The largest upright rectangle on the floor that is free between the legs of a piece, seen
    from the front; `highest_m` is how high it is free where that is most. Metres."""

    width_m: float
    height_m: float
    highest_m: float


def whole(framework: Framework, shape: Shape) -> Carried:
    """The finished piece."""
    return _of_links(framework, shape, "", range(len(framework.links)))


def parts(framework: Framework, shape: Shape) -> tuple[Carried, ...]:
    """The parts of an assembly, each finished by itself; none of any other piece."""
    number = {link.id: i for i, link in enumerate(framework.links)}
    return tuple(
        _of_links(framework, shape, part.name, [number[one.id] for one in part.framework.links])
        for part in framework.parts
    )


def _of_links(framework: Framework, shape: Shape, name: str, links: Sequence[int]) -> Carried:
    bodies, these = bodies_of(framework), np.array(links, int)
    return Carried(
        name,
        bodies.midpoints_m(shape.positions_m)[these],
        bodies.axes(shape.positions_m)[these],
        bodies.radius_m[these],
        bodies.length_m[these] / 2,
    )


def least_lean(carried: Carried, across: int = 0) -> tuple[float, float, float]:
    """Turned in the plane of the axis `across` (0 or 2) and the upright so that it is as low as
    can be: the angle from upright in whole degrees, its height then, and its width then in
    metres."""
    angles = range(180)
    heights = []
    for angle in np.radians(np.array(angles)):
        direction = np.array([0.0, np.cos(angle), 0.0])
        direction[across] = np.sin(angle)
        heights.append(carried.extent_m(direction))
    # the least turn serves where several are as low
    lowest = min(angles, key=lambda a: (round(heights[a], 3), min(a, 180 - a)))
    return float(lowest), heights[lowest], heights[(lowest + 90) % 180]


def poses(carried: Carried) -> tuple[CarriedPose, ...]:
    """The poses worth measuring an opening for, always edge first: nobody carries it broadside
    through a door."""
    wide, tall, deep = (carried.extent_m(axis) for axis in np.eye(3))
    across = 0 if wide >= deep else 2
    broad, thin = max(wide, deep), min(wide, deep)
    found = [
        CarriedPose(CarriedAs.UPRIGHT, 0.0, thin, tall, broad),
        CarriedPose(CarriedAs.ON_ITS_SIDE, 90.0, thin, broad, tall),
    ]
    angle, low, long = least_lean(carried, across)
    if low < WORTH_TILTING * min(broad, tall):
        found.append(CarriedPose(CarriedAs.TILTED, min(angle, 180 - angle), thin, low, long))
    narrow, long = sorted((broad, tall))
    found.append(CarriedPose(CarriedAs.FLAT, 0.0, narrow, thin, long))
    return tuple(found)


def walk_through(framework: Framework, shape: Shape) -> DoorOpening | None:
    """What goes through between the legs of a standing piece; None where nobody can walk."""
    piece = whole(framework, shape)
    clear = _clear_heights_m(piece)
    found = None
    for start, finish in _gaps(clear):
        found = _larger(found, _largest(clear[start:finish]))
    return found


def _clear_heights_m(piece: Carried) -> FloatArray:
    """From left to right, how high it is free above the floor; infinite where nothing is above.

    The outline of a spheroid is the ellipse of the matrix r^2 I + (c^2 - r^2) a a', a its axis
    as seen from the front.
    """
    stretch = (piece.half_m**2 - piece.radius_m**2)[:, None]
    across, upright = piece.axes[:, :1], piece.axes[:, 1:2]
    xx = piece.radius_m[:, None] ** 2 + stretch * across**2
    yy = piece.radius_m[:, None] ** 2 + stretch * upright**2
    xy = stretch * across * upright
    middle, half = piece.middles_m, np.sqrt(xx)
    left, right = np.min(middle[:, :1] - half), np.max(middle[:, :1] + half)
    x = np.arange(left, right, COLUMN_M)[None, :] - middle[:, :1]
    within = np.maximum(1 - x**2 / xx, 0.0)
    low = middle[:, 1:2] + xy / xx * x - np.sqrt(np.maximum(yy - xy**2 / xx, 0.0) * within)
    return np.asarray(np.where(x**2 < xx, low, np.inf).min(axis=0))


def _gaps(clear: FloatArray) -> Iterator[tuple[int, int]]:
    """Runs of columns that are high enough, with the piece on both sides and above."""
    free = np.concatenate([[False], clear >= LEAST_WALK_HEIGHT_M, [False]])
    starts = np.flatnonzero(free[1:] & ~free[:-1])
    finishes = np.flatnonzero(~free[1:] & free[:-1])
    for start, finish in zip(starts, finishes, strict=True):
        between = start > 0 and finish < len(clear)
        if between and np.isfinite(clear[start:finish]).all():
            yield int(start), int(finish)


def _largest(clear: FloatArray) -> DoorOpening | None:
    """The largest rectangle below a run of heights that somebody can walk through."""
    best = None
    for height in np.unique(clear):
        free = np.concatenate([[False], clear >= height, [False]])
        starts = np.flatnonzero(free[1:] & ~free[:-1])
        finishes = np.flatnonzero(~free[1:] & free[:-1])
        width = float((finishes - starts).max()) * COLUMN_M
        if width >= LEAST_WALK_WIDTH_M:
            best = _larger(best, DoorOpening(width, float(height), float(clear.max())))
    return best


def _larger(one: DoorOpening | None, other: DoorOpening | None) -> DoorOpening | None:
    if one is None or other is None:
        return one or other
    return one if one.width_m * one.height_m >= other.width_m * other.height_m else other
