"""Where a piece is seen from, and how it is laid on the page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from buildplan.drawing.arrays import FloatArray

Vector = tuple[float, float, float]


@dataclass(frozen=True)
class Camera:
    """A parallel (orthographic) view.

    `direction` points from the piece to the viewer; `up` is the direction that is drawn
    upright, as far as it lies in the view plane. Neither need be of unit length.
    """

    direction: Vector
    up: Vector
    name: str = ""

    @cached_property
    def axes(self) -> FloatArray:
        """(3, 3): unit vectors to the right of the page, up the page, and to the viewer."""
        toward = np.asarray(self.direction, dtype=float)
        toward = toward / np.linalg.norm(toward)
        right = np.cross(np.asarray(self.up, dtype=float), toward)
        right = right / np.linalg.norm(right)
        return np.array([right, np.cross(toward, right), toward])


CAMERAS: Mapping[str, Camera] = {
    "front": Camera((0.0, 0.0, 1.0), (0.0, 1.0, 0.0), "front"),
    "back": Camera((0.0, 0.0, -1.0), (0.0, 1.0, 0.0), "back"),
    "side": Camera((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), "side"),
    "top": Camera((0.0, 1.0, 0.0), (0.0, 0.0, -1.0), "top"),
    "corner": Camera((0.55, 0.26, 0.80), (0.0, 1.0, 0.0), "corner"),
}


def project(camera: Camera, points: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Positions (n, 2) on the view plane and depths (n,) of points (n, 3), in their own unit.

    Depth grows towards the viewer.
    """
    seen = np.asarray(points, dtype=float).reshape(-1, 3) @ camera.axes.T
    return seen[:, :2], seen[:, 2]


def turned(camera: Camera, across_deg: float, over_deg: float) -> Camera:
    """The camera moved round the piece: `across_deg` to the right, `over_deg` upwards."""
    right, up, toward = camera.axes
    a, o = np.radians(across_deg), np.radians(over_deg)
    direction = (toward * np.cos(a) + right * np.sin(a)) * np.cos(o) + up * np.sin(o)
    upright = up * np.cos(o) - (toward * np.cos(a) + right * np.sin(a)) * np.sin(o)
    return Camera(_vector(direction), _vector(upright), camera.name)


def _vector(value: FloatArray) -> Vector:
    return (float(value[0]), float(value[1]), float(value[2]))


def angle_between_deg(first: Camera, second: Camera) -> float:
    """Angle between two directions of view."""
    cosine = float(np.clip(first.axes[2] @ second.axes[2], -1, 1))
    return float(np.degrees(np.arccos(cosine)))


@dataclass(frozen=True)
class PaperView:
    """A camera and where its image lies on the picture: points = scale * projected + origin.

    `scale` is in points per metre.
    """

    camera: Camera
    scale: float
    origin: tuple[float, float]

    def place(self, points_m: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Positions (n, 2) on the picture in points, and depths (n,) in metres."""
        flat, depth = project(self.camera, points_m)
        return flat * self.scale + np.asarray(self.origin), depth


def fit(
    camera: Camera,
    points_m: FloatArray,
    radii_m: FloatArray | float,
    width: float,
    height: float,
    margin: float,
) -> PaperView:
    """The largest view in which balls of `radii_m` about the points stay inside the margins.

    The image is centred. Lengths of the page are points.
    """
    flat, _ = project(camera, points_m)
    radii = np.broadcast_to(np.asarray(radii_m, dtype=float), (len(flat),))[:, None]
    low, high = np.min(flat - radii, axis=0), np.max(flat + radii, axis=0)
    room = np.array([width - 2 * margin, height - 2 * margin])
    scale = float(np.min(room / np.maximum(high - low, 1e-9)))
    origin = np.array([width, height]) / 2 - scale * (low + high) / 2
    return PaperView(camera, scale, (float(origin[0]), float(origin[1])))
