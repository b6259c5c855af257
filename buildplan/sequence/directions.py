"""Which way the numbers of a chain run: round, seen from above, or along.

What has braces lies front up while it is built: above is before its front. What is built course
by course stands, or lies if it is flat (see `reach.is_flat`), and is seen from above as it is.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

import numpy as np

from buildplan.framework.model import Framework, LongChain
from buildplan.sequence.courses import built_pieces, in_courses
from buildplan.shape.lying import lies_built
from buildplan.shape.model import FloatArray, Shape


class Direction(StrEnum):
    """How joints 1, 2, 3, ... of a chain follow one another."""

    CLOCKWISE = "clockwise"
    ANTICLOCKWISE = "anticlockwise"
    RIGHT = "to the right"
    LEFT = "to the left"
    UP = "up"
    DOWN = "down"
    BACK = "to the back"
    FRONT = "to the front"
    NEITHER = "neither"


# An area enclosed of less than this share of the square of the way round goes neither way round:
# a chain that goes straight on, or up and down. Ours; a circle encloses 0.08 of it.
LEAST_AREA = 0.002
# An open chain runs nowhere whose ends are nearer to one another than this share of its length.
LEAST_RUN = 0.2
# By the axis along which a chain runs most: towards more of it, and towards less.
_ALONG = (
    (Direction.RIGHT, Direction.LEFT),
    (Direction.UP, Direction.DOWN),
    (Direction.FRONT, Direction.BACK),
)


def directions(framework: Framework, shape: Shape) -> Mapping[str, Direction]:
    """The direction of each long chain, by its letter, as it is laid or as it stands: of a closed
    one seen from above, of an open one as seen from the front."""
    found: dict[str, Direction] = {}
    for _, own in built_pieces(framework):
        stands = in_courses(own) and not lies_built(own, shape)
        for long in own.chains:
            found[long.letter] = _direction(long, shape, stands)
    return found


def _direction(long: LongChain, shape: Shape, stands: bool) -> Direction:
    at = np.array([shape.at[joint] for joint in long.chain.joints])
    return _round(at, stands) if long.chain.closed else _along(at)


def _along(at: FloatArray) -> Direction:
    """The axis along which an open chain goes furthest, from its first joint to its last."""
    run = at[-1] - at[0]
    length = float(np.linalg.norm(np.diff(at, axis=0), axis=1).sum())
    axis = int(np.argmax(np.abs(run)))
    if abs(run[axis]) < LEAST_RUN * length:
        return Direction.NEITHER
    return _ALONG[axis][0 if run[axis] > 0 else 1]


def _round(at: FloatArray, stands: bool) -> Direction:
    seen = _from_above(at, stands)
    following = np.roll(seen, -1, axis=0)
    # twice the area enclosed, positive anticlockwise (Gauss's formula for polygons)
    area = float((seen[:, 0] * following[:, 1] - following[:, 0] * seen[:, 1]).sum()) / 2
    around = float(np.linalg.norm(following - seen, axis=1).sum())
    if abs(area) < LEAST_AREA * around**2:
        return Direction.NEITHER
    return Direction.ANTICLOCKWISE if area > 0 else Direction.CLOCKWISE


def _from_above(at: FloatArray, stands: bool) -> FloatArray:
    """Places across the picture and up it, of somebody who looks down: x to the right; at what
    stands from over it with the front at the foot of the picture, at what lies with y up."""
    across, up = at[:, 0], -at[:, 2] if stands else at[:, 1]
    return np.column_stack([across, up])
