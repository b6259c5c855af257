"""Whether a block of a map can be read: what lies on what."""

from __future__ import annotations

from itertools import combinations

import numpy as np

from buildplan.drawing.maps.blocks import MapBlock
from buildplan.shape.model import FloatArray

CLEAR = 2.0  # least bare paper between two discs, and between a disc and another's line


def is_clear(block: MapBlock, radius: float) -> bool:
    """Whether the discs of a block stand clear of one another and of lines that do not end at them,
    and no two lines cross but at a joint of both."""
    at = np.array([joint.at for joint in block.joints])
    apart = np.hypot(*(at[:, None] - at[None, :]).transpose(2, 0, 1))
    if np.any(apart[np.triu_indices(len(at), 1)] < 2 * radius + CLEAR):
        return False
    for line in block.links:
        ends = {line.link.start, line.link.finish}
        others = np.array([j.at for j in block.joints if j.joint not in ends])
        if len(others) and np.any(from_line(others, np.array(line.points)) < radius + CLEAR):
            return False
    return not any(
        _cross(np.array(one.points), np.array(other.points))
        for one, other in combinations(block.links, 2)
        if {one.link.start, one.link.finish}.isdisjoint((other.link.start, other.link.finish))
    )


def from_line(points: FloatArray, line: FloatArray) -> FloatArray:
    """How far each point (n, 2) is from a line through points (m, 2)."""
    start, along = line[:-1], np.diff(line, axis=0)
    off = points[:, None] - start[None]
    share = np.clip((off * along).sum(axis=2) / (along**2).sum(axis=1), 0, 1)
    apart = np.linalg.norm(off - share[:, :, None] * along, axis=2)
    return np.asarray(apart.min(axis=1))


def _cross(one: FloatArray, other: FloatArray) -> bool:
    """Whether two lines through points cross."""
    if np.any(one.max(axis=0) < other.min(axis=0)) or np.any(other.max(axis=0) < one.min(axis=0)):
        return False

    def side(line: FloatArray, points: FloatArray) -> FloatArray:
        along = np.diff(line, axis=0)[:, None]
        off = points[None] - line[:-1, None]
        return np.asarray(np.sign(along[..., 0] * off[..., 1] - along[..., 1] * off[..., 0]))

    first, second = side(one, other), side(other, one)
    return bool(np.any((first[:, :-1] * first[:, 1:] < 0) & (second[:, :-1] * second[:, 1:] < 0).T))
