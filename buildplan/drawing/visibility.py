"""What is seen in a picture and what is covered.

Bodies count as discs of their gauge, painted in the order of their middles' depth, as the
pictures paint them.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

import numpy as np
import numpy.typing as npt

from buildplan.drawing.arrays import BoolArray, FloatArray
from buildplan.drawing.bodies import Bodies, Scene
from buildplan.drawing.camera import Camera, project

# A body that covers less than this share of a new body's disc is left opaque.
SLIGHT_COVER = 0.06
# Depths closer than this are level: existing work is painted first.
LEVEL_M = 1e-6
_SAMPLES = 60


@lru_cache(maxsize=8)
def disc_samples(count: int = _SAMPLES) -> FloatArray:
    """Points (count, 2) spread evenly over the unit disc (a sunflower's spiral)."""
    k = np.arange(count) + 0.5
    radius, angle = np.sqrt(k / count), k * np.pi * (3 - np.sqrt(5))
    return np.column_stack([radius * np.cos(angle), radius * np.sin(angle)])


def lens_share(apart: FloatArray, own: FloatArray, other: FloatArray) -> FloatArray:
    """Share of a disc of radius `own` that a disc of radius `other`, `apart` away, covers."""
    a, r, q = np.broadcast_arrays(np.maximum(apart, 1e-12), own, other)
    cut = np.clip((a**2 + r**2 - q**2) / (2 * a * r), -1, 1)
    back = np.clip((a**2 + q**2 - r**2) / (2 * a * q), -1, 1)
    root = (-a + r + q) * (a + r - q) * (a - r + q) * (a + r + q)
    area = r**2 * np.arccos(cut) + q**2 * np.arccos(back) - np.sqrt(np.clip(root, 0, None)) / 2
    inside = np.where(q >= r, 1.0, (q / r) ** 2)
    share = np.where(a <= np.abs(r - q), inside, area / (np.pi * r**2))
    return np.asarray(np.where(a >= r + q, 0.0, share))


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
