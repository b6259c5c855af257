"""What is seen in a picture and what is covered.

Bodies count as discs of their gauge, painted in the order of their middles' depth, as the
pictures paint them.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from buildplan.drawing.arrays import BoolArray, FloatArray
from buildplan.drawing.bodies import Bodies, Scene
from buildplan.drawing.camera import Camera, project

# Depths closer than this are level: existing work is painted first.
LEVEL_M = 1e-6


def paint_order(bodies: Bodies, depth: FloatArray) -> npt.NDArray[np.intp]:
    """Rows in the order of painting: deepest first, existing before new where level."""
    rows = np.arange(len(depth))
    return np.lexsort((rows, bodies.is_new, np.round(depth / LEVEL_M)))


def behind_what_is_new(bodies: Bodies, camera: Camera) -> FloatArray:
    """The depth (n,) at which to paint each body so that nothing that stands already is drawn
    over something new: its own, or behind all that it would cover."""
    flat, depth = project(camera, bodies.centre)
    painted = depth.copy()
    done, new = np.flatnonzero(~bodies.is_new), np.flatnonzero(bodies.is_new)
    if done.size and new.size:
        apart = _distances(flat[done], flat[new])
        over = apart < bodies.radius[done][:, None] + bodies.radius[new][None]
        over &= depth[done][:, None] > depth[new][None]
        behind = np.min(np.where(over, depth[new][None], np.inf), axis=1)
        painted[done] = np.minimum(painted[done], behind - LEVEL_M)
    return painted


def behind_new(bodies: Bodies, camera: Camera, places_m: FloatArray) -> BoolArray:
    """Which places (k, 3) lie behind a new body."""
    new = np.flatnonzero(bodies.is_new)
    flat, depth = project(camera, bodies.centre[new])
    spots, place_depth = project(camera, places_m)
    apart = _distances(spots, flat)
    radius = bodies.radius[new][None]
    # the rim of a disc is the turn of a round body: a joint there is still seen past it
    hides = (apart < 0.9 * radius) & (depth[None] > place_depth[:, None] + 0.1 * radius)
    return np.asarray(np.any(hides, axis=1))


def joints_m(scene: Scene, joints: Sequence[str]) -> FloatArray:
    """Positions (k, 3) of joints."""
    return np.array([scene.shape.at[joint] for joint in joints]).reshape(-1, 3)


def _distances(first: FloatArray, second: FloatArray) -> FloatArray:
    """Distances (n, m) between points (n, 2) and (m, 2)."""
    away = first[:, None] - second[None]
    return np.asarray(np.sqrt(np.einsum("nmk,nmk->nm", away, away)))
