"""The valleys between the balloons of a joint, in which the two rounds of its lock come to rest."""

from __future__ import annotations

import numpy as np

from buildplan.drawing.arrays import FloatArray

# A round lies on a balloon that is seen less than ON_BALLOON from it, radians; a valley is taken
# that is better by GAIN, and rounds that are not opposite must be better by ALIKE. Ours: rings with
# zigzags keep their rounds above and below, 30 degrees from the nearest balloon.
ON_BALLOON, GAIN, ALIKE = np.radians(25.0), 0.05, 0.1
STEPS = 48  # ways that are tried, all round a joint
LEAST_APART = np.radians(100.0)  # between the two rounds


def valleys(ways: FloatArray, out: FloatArray, across: FloatArray) -> FloatArray:
    """Two unit vectors (2, 3) square to `out`, towards the valleys of a joint that are deepest and
    lie most nearly opposite, the second nearer to `across`.

    `ways` (m, 3) are unit vectors along the balloons of the joint, `out` (3,) points out of the
    piece and `across` (3,) square to it. Where nothing is better it is `across` and its opposite.
    """
    turns = np.arange(STEPS) * 2 * np.pi / STEPS
    sides = np.outer(np.cos(turns), across) + np.outer(np.sin(turns), np.cross(out, across))
    near = (ways @ sides.T).max(axis=0)
    apart = np.abs(turns[:, None] - turns[None, :])
    apart = np.minimum(apart, 2 * np.pi - apart)
    cost = np.maximum(near[:, None], near[None, :]) + ALIKE * (1 - apart / np.pi)
    cost[apart < LEAST_APART] = np.inf
    first, second = np.unravel_index(np.argmin(np.round(cost, 6)), cost.shape)
    if cost[STEPS // 2, 0] - cost[first, second] < GAIN:
        return np.stack([-across, across])
    if np.cos(turns[first]) > np.cos(turns[second]):
        first, second = second, first
    return np.stack([sides[first], sides[second]])
