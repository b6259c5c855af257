"""What is seen in a picture and what is covered.

Bodies count as discs of their gauge, painted in the order of their middles' depth, as the
pictures paint them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import numpy.typing as npt

from buildplan.drawing.bodies import Bodies, Scene, link_length_m
from buildplan.drawing.camera import Camera, project

FloatArray = npt.NDArray[np.float64]
BoolArray = npt.NDArray[np.bool_]

# A body that covers less than this share of a new body's disc is left opaque.
SLIGHT_COVER = 0.06
# Depths closer than this are level: existing work is painted first.
LEVEL_M = 1e-6
_SAMPLES = 60


@dataclass(frozen=True, eq=False)
class Sight:
    """What one camera shows of new work and of joints.

    For each new body (m,): `seen` is the part of its disc, counted whole, that nothing
    opaque covers, `by_existing` the part that existing work covers, `weight` its share of
    all discs. `joint_seen` (k,) says which joints no new body covers; `spread` is the least
    distance between two of them on the page, in link lengths; `outlined` counts the bodies
    that have to be seen through.
    """

    seen: FloatArray
    by_existing: FloatArray
    weight: FloatArray
    joint_seen: BoolArray
    spread: float
    outlined: int

    @property
    def share(self) -> float:
        """Share of all new bodies' discs that is seen; 1 when nothing is new."""
        return float(self.seen @ self.weight) if len(self.seen) else 1.0

    @property
    def existing_share(self) -> float:
        """Share of all new bodies' discs that existing work covers."""
        return float(self.by_existing @ self.weight)

    @property
    def joints_share(self) -> float:
        """Share of the joints that is seen; 1 when none was asked for."""
        return float(np.mean(self.joint_seen)) if len(self.joint_seen) else 1.0


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


def in_front_of_new(
    bodies: Bodies, camera: Camera, ties_m: FloatArray, reach_m: float
) -> tuple[BoolArray, FloatArray]:
    """Existing bodies that have to be seen through, and the depth (n,) to paint each body at.

    A body is seen through when it stands already and covers more than a little of something
    new, or a joint of `ties_m` (k, 3). Its filling is painted behind what it would cover (no
    more than `reach_m` behind a joint), its outline at its own depth.
    """
    flat, depth = project(camera, bodies.centre)
    through = np.zeros(len(depth), dtype=bool)
    painted = depth.copy()
    done, new = np.flatnonzero(~bodies.is_new), np.flatnonzero(bodies.is_new)
    if done.size and new.size:
        apart = _distances(flat[done], flat[new])
        share = lens_share(apart, bodies.radius[new][None], bodies.radius[done][:, None])
        over = (share > SLIGHT_COVER) & (depth[done][:, None] > depth[new][None] + LEVEL_M)
        behind = np.min(np.where(over, depth[new][None], np.inf), axis=1)
        through[done] |= np.any(over, axis=1)
        painted[done] = np.minimum(painted[done], behind - 1e-6)
    if done.size and len(ties_m):
        spots, tie_depth = project(camera, ties_m)
        apart = _distances(flat[done], spots)
        over = (apart < bodies.radius[done][:, None]) & (depth[done][:, None] > tie_depth[None])
        behind = np.min(np.where(over, tie_depth[None] - reach_m, np.inf), axis=1)
        through[done] |= np.any(over, axis=1)
        painted[done] = np.minimum(painted[done], behind)
    return through, painted


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


def sight_of(scene: Scene, camera: Camera, joints: Sequence[str] = ()) -> Sight:
    """What a camera shows of a scene's new bodies and of some joints."""
    return sight_of_bodies(
        scene.bodies, camera, joints_m(scene, joints), link_length_m(scene.framework)
    )


def visible_share(scene: Scene, camera: Camera, joints: Sequence[str] = ()) -> float:
    """Share of the new bodies' discs, each counted whole, that nothing opaque covers."""
    return sight_of(scene, camera, joints).share


def joints_m(scene: Scene, joints: Sequence[str]) -> FloatArray:
    """Positions (k, 3) of joints."""
    return np.array([scene.shape.at[joint] for joint in joints]).reshape(-1, 3)


def spread_of(camera: Camera, ties_m: FloatArray, link_m: float) -> float:
    """The least distance between two of some places (k, 3) on the page, in link lengths."""
    spots, _ = project(camera, ties_m)
    pairs = _distances(spots, spots)[np.triu_indices(len(spots), 1)]
    return float(np.min(pairs)) / link_m if len(pairs) else 1.0


def _distances(first: FloatArray, second: FloatArray) -> FloatArray:
    """Distances (n, m) between points (n, 2) and (m, 2)."""
    away = first[:, None] - second[None]
    return np.asarray(np.sqrt(np.einsum("nmk,nmk->nm", away, away)))


def _any_by_row(hits: BoolArray, rows: npt.NDArray[np.intp], count: int) -> BoolArray:
    """(count, s): where any of `hits` (p, s) is true that belongs to each row."""
    found = np.zeros((count, _SAMPLES), dtype=bool)
    np.logical_or.at(found, rows, hits)
    return found


def sight_of_bodies(bodies: Bodies, camera: Camera, ties_m: FloatArray, link_m: float) -> Sight:
    """As `sight_of`, of bodies and positions of joints (k, 3)."""
    through, _ = in_front_of_new(bodies, camera, ties_m, link_m)
    flat, depth = project(camera, bodies.centre)
    new = np.flatnonzero(bodies.is_new)
    rank = np.argsort(paint_order(bodies, depth))
    apart = _distances(flat[new], flat)
    over = (apart < bodies.radius[new][:, None] + bodies.radius) & ~through
    over &= rank > rank[new][:, None]
    rows, others = np.nonzero(over)
    # sample points of each new body's disc, and those that each body over it covers
    points = flat[new][:, None] + bodies.radius[new][:, None, None] * disc_samples()
    away = points[rows] - flat[others][:, None]
    hit = np.einsum("psk,psk->ps", away, away) < (bodies.radius[others] ** 2)[:, None]
    covered = _any_by_row(hit, rows, len(new))
    existing = ~bodies.is_new[others]
    by_existing = _any_by_row(hit[existing], rows[existing], len(new))
    area = bodies.radius[new] ** 2
    return Sight(
        seen=1 - np.mean(covered, axis=1),
        by_existing=np.mean(by_existing, axis=1),
        weight=area / max(float(np.sum(area)), 1e-12),
        joint_seen=~behind_new(bodies, camera, ties_m),
        spread=spread_of(camera, ties_m, link_m),
        outlined=int(np.count_nonzero(through)),
    )
