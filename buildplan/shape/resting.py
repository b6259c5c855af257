"""Resting poses: which way up a piece is set on the floor.

A rigid piece rests on a face of its convex hull, and stays there while its centre of mass is over
that face. A mirrored piece is only turned in its middle plane, where the hull is a polygon; any
other piece may rest on any face of the hull in space.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.spatial import ConvexHull, QhullError, cKDTree

from buildplan.shape.bodies import LinkBodies
from buildplan.shape.model import FloatArray, IntArray

EQUAL = 1e-3  # poses within this share of each other count as equally stable
LEVEL = 0.1  # of a body's radius: how much higher a body may lie and still help to carry
SETTLES_BY_RAD = 0.35  # about 20 degrees: farther from a pose than this is another way up
FOOT_SPREAD = 0.05  # of the piece's size: feet nearer together than this count as one place


@dataclass(frozen=True)
class RestingPose:
    """A rotation (3, 3), to be applied as `positions @ rotation.T`, and how stable it is.

    `tip_angle` is the lean in radians at which the rigid piece would go over, `seen_m` (points, 2
    or 3) what of the unturned piece meets the eye.
    """

    rotation: FloatArray
    tip_angle: float
    seen_m: FloatArray

    @cached_property
    def lopsided(self) -> float:
        """How far from left-right symmetric the piece looks (0 is symmetric)."""
        axes = self.seen_m.shape[1]
        return lopsidedness(self.seen_m @ self.rotation[:axes, :axes].T)


def turned_in_plane(angle: float) -> FloatArray:
    """Rotation by `angle` about z, counter-clockwise as seen from the front."""
    cos, sin = np.cos(angle), np.sin(angle)
    return np.array([[cos, -sin, 0.0], [sin, cos, 0.0], [0.0, 0.0, 1.0]])


def lopsidedness(points: FloatArray) -> float:
    """How far the points (n, 2 or 3) are from their own image in a vertical middle line.

    Root mean square distance from each image to its nearest point, over the size; x and y count,
    and z when given.
    """
    middle = 0.5 * (points[:, 0].max() + points[:, 0].min())
    image = points.copy()
    image[:, 0] = 2 * middle - image[:, 0]
    apart, _ = cKDTree(points).query(image)
    return float(np.sqrt((apart**2).mean()) / max(np.ptp(points, axis=0).max(), 1e-12))


def poses_in_plane(
    middle_m: FloatArray, radius_m: FloatArray, centre_m: FloatArray
) -> list[RestingPose]:
    """Every stable way to stand a mirrored piece on an edge of its outline.

    `middle_m` (bodies, 3) with `radius_m` (bodies,) are the bodies, `centre_m` (3,) the centre of
    mass. Edges are those of the hull of the bodies' centres, tilted for their radii.
    """
    flat = middle_m[:, :2]
    corners = _corners(flat)
    poses = []
    for first, second in zip(corners, np.roll(corners, -1), strict=True):
        edge = flat[second] - flat[first]
        length = float(np.hypot(*edge))
        if not length:
            continue
        tilt = np.arcsin(np.clip((radius_m[first] - radius_m[second]) / length, -1, 1))
        # along a counter-clockwise hull the outside is to the right: turned to +x it is the floor
        rotation = turned_in_plane(-float(np.arctan2(edge[1], edge[0]) + tilt))
        placed = middle_m @ rotation.T
        low = placed[:, 1] - radius_m
        carrying = low < low.min() + LEVEL * float(radius_m.mean())
        centre = rotation @ centre_m
        reach = min(centre[0] - placed[carrying, 0].min(), placed[carrying, 0].max() - centre[0])
        if reach <= 0:
            continue
        angle = float(np.arctan2(reach, centre[1] - low.min()))
        poses.append(RestingPose(rotation, angle, flat))
    return poses


def _corners(flat: FloatArray) -> IntArray:
    """Numbers of the hull's corners, counter-clockwise; of points on a line, the two ends."""
    try:
        return np.asarray(ConvexHull(flat).vertices, int)
    except (QhullError, ValueError):
        _, axes = np.linalg.eigh(np.cov(flat.T, bias=True))
        along = flat @ axes[:, -1]
        return np.array([along.argmin(), along.argmax()])


def pose_on(feet: IntArray, positions_m: FloatArray, in_plane: bool) -> RestingPose:
    """The turn that puts the joints `feet` lowest and level with one another.

    Up is the way from the feet to the middle of the piece, square to the line or plane that the
    feet lie in. `in_plane` allows turns about z only.
    """
    points = positions_m[:, :2] if in_plane else positions_m
    spots = points[feet]
    away = points.mean(axis=0) - spots.mean(axis=0)
    _, spread, axes = np.linalg.svd(spots - spots.mean(axis=0), full_matrices=True)
    wide = spread > FOOT_SPREAD * float(np.ptp(points, axis=0).max())
    level = axes[: min(int(wide.sum()), points.shape[1] - 1)]
    upward = away - level.T @ (level @ away)
    if float(np.linalg.norm(upward)) < 1e-6 * max(float(np.linalg.norm(away)), 1e-12):
        upward = axes[len(level)]
    upward = upward / np.linalg.norm(upward)
    if in_plane:
        rotation = turned_in_plane(float(np.pi / 2 - np.arctan2(upward[1], upward[0])))
    else:
        rotation = _down(-upward)
        rotation = _facing(positions_m @ rotation.T) @ rotation
    return RestingPose(rotation, 0.0, positions_m)


def at_rest_on(
    feet: IntArray,
    pose: RestingPose,
    poses: Sequence[RestingPose],
    bodies: LinkBodies,
    at_m: FloatArray,
) -> RestingPose:
    """A pose on the joints `feet` as it comes to rest by itself: where one of two feet hangs above
    the floor the piece, of joints `at_m` (joints, 3), goes over until that is down too. Of the
    stable `poses` it is the nearest on bodies of those joints, `pose` itself where none is near."""
    near = [one for one in poses if _apart_rad(one, pose) < SETTLES_BY_RAD]
    of_feet = np.asarray(np.isin(bodies.ends, feet).any(axis=1))
    on_them = [one for one in near if of_feet[_carrying(bodies, at_m @ one.rotation.T)].all()]
    return min(on_them, key=lambda one: _apart_rad(one, pose), default=pose)


def _carrying(bodies: LinkBodies, placed_m: FloatArray) -> IntArray:
    """Numbers of the bodies of a placed piece that come down to the floor."""
    low = bodies.lowest_m(placed_m)[:, 1]
    return np.flatnonzero(low < low.min() + LEVEL * float(bodies.radius_m.mean()))


def _apart_rad(one: RestingPose, other: RestingPose) -> float:
    """The angle of the turn from one pose to another."""
    cos = (float(np.trace(one.rotation @ other.rotation.T)) - 1) / 2
    return float(np.arccos(np.clip(cos, -1.0, 1.0)))


def poses_in_space(
    bodies: LinkBodies, positions_m: FloatArray, centre_m: FloatArray
) -> list[RestingPose]:
    """Every stable way to rest a piece on a face of its hull, its longest side then along x.

    Faces are those of the hulls of the joints and of the bodies' middles; what carries the piece on
    a face are the bodies, spheroids, that come down there.
    """
    poses = []
    for normal in _face_normals(positions_m, bodies.midpoints_m(positions_m)):
        rotation = _down(normal)
        placed = positions_m @ rotation.T
        low = bodies.lowest_m(placed)
        floor = float(low[:, 1].min())
        carrying = low[low[:, 1] < floor + LEVEL * float(bodies.radius_m.mean())]
        centre = rotation @ centre_m
        reach = inside_by(carrying[:, [0, 2]], centre[[0, 2]])
        if reach <= 0:
            continue
        rotation = _facing(placed) @ rotation
        angle = float(np.arctan2(reach, centre[1] - floor))
        poses.append(RestingPose(rotation, angle, positions_m))
    return poses


def _face_normals(*clouds: FloatArray) -> FloatArray:
    """Outward normals of the faces of the clouds' hulls, each once; a flat cloud has none."""
    found = []
    for points in clouds:
        try:
            found.append(ConvexHull(points).equations[:, :3])
        except (QhullError, ValueError):  # flat, or fewer than four points
            continue
    if not found:
        return np.zeros((0, 3))
    normals = np.vstack(found)
    _, first = np.unique(np.round(normals, 3), axis=0, return_index=True)
    return np.asarray(normals[np.sort(first)])


def _down(normal: FloatArray) -> FloatArray:
    """The least rotation that takes `normal` to straight down."""
    down = np.array([0.0, -1.0, 0.0])
    axis, cos = np.cross(normal, down), float(normal @ down)
    if cos < -1 + 1e-12:
        return np.diag([1.0, -1.0, -1.0])
    cross = np.array(
        [[0, -axis[2], axis[1]], [axis[2], 0, -axis[0]], [-axis[1], axis[0], 0]], dtype=float
    )
    return np.asarray(np.eye(3) + cross + cross @ cross / (1 + cos))


def _facing(placed: FloatArray) -> FloatArray:
    """Rotation about y that lays the longest horizontal direction along x."""
    flat = placed[:, [0, 2]] - placed[:, [0, 2]].mean(axis=0)
    values, axes = np.linalg.eigh(flat.T @ flat)
    if values[1] - values[0] < 1e-6 * max(values[1], 1e-12):
        return np.eye(3)
    along = axes[:, 1] if axes[0, 1] >= 0 else -axes[:, 1]
    cos, sin = along
    return np.array([[cos, 0.0, sin], [0.0, 1.0, 0.0], [-sin, 0.0, cos]])


def inside_by(corners: FloatArray, point: FloatArray) -> float:
    """Least distance from `point` to an edge of the hull of `corners`, negative when outside.

    A hull without area (fewer than three corners not on a line) has no inside: 0 or less.
    """
    spread = corners - corners.mean(axis=0)
    if len(corners) < 3 or np.linalg.eigvalsh(spread.T @ spread)[0] < 1e-12:
        return -float(np.linalg.norm(corners - point, axis=1).min(initial=np.inf))
    return -float(ConvexHull(corners).equations.dot(np.append(point, 1.0)).max())


def best_pose(poses: Sequence[RestingPose], start_m: FloatArray) -> RestingPose | None:
    """The stablest pose; among equals the most symmetric, then the one that has `start_m` (the
    middle of the first section, (3,)) lowest and leftmost. None when there is no pose."""
    if not poses:
        return None
    steadiest = max(pose.tip_angle for pose in poses)
    # a straight side has a pose for every two of its bodies: one of them is looked at
    apart: dict[bytes, RestingPose] = {}
    for pose in poses:
        if pose.tip_angle >= steadiest * (1 - EQUAL):
            apart.setdefault((np.round(pose.rotation, 4) + 0.0).tobytes(), pose)
    steady = list(apart.values())
    straightest = min(pose.lopsided for pose in steady)
    straight = [pose for pose in steady if pose.lopsided <= straightest + EQUAL]

    def rank(pose: RestingPose) -> tuple[float, ...]:
        x, y, z = pose.rotation @ start_m
        return (round(x + y, 4), round(y, 4), round(-z, 4), *np.round(pose.rotation, 4).ravel())

    return min(straight, key=rank)
