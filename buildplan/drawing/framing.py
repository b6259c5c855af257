"""How a piece, or a part of it, is fitted into a picture."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Scene, link_length_m
from buildplan.drawing.camera import Camera, PaperView, fit, project
from buildplan.shape.model import Shape

MARGIN_PT = 6.0
NAMES = 0.2  # of a link, about new work, for the names of its joints


def view_of(
    scene: Scene,
    camera: Camera,
    width: float,
    height: float,
    frame: Iterable[str] = (),
    margin: float = MARGIN_PT,
    also: FloatArray | None = None,
) -> PaperView:
    """The view that fits the scene's bodies, bodies about the joints of `frame`, and the points
    `also` (n, 3).

    Framing every joint of the piece keeps its place on the page the same from step to step.
    """
    bodies = scene.bodies
    around = np.array([scene.shape.at[joint] for joint in frame]).reshape(-1, 3)
    size = max((b.gauge_m for b in scene.framework.balloons.values()), default=0.2) / 2
    others = np.zeros((0, 3)) if also is None else also
    radii = np.concatenate([bodies.radius, np.full(len(around), size), np.zeros(len(others))])
    points = np.vstack([bodies.centre, around, others])
    return fit(camera, points, radii, width, height, margin)


def close_view(
    scene: Scene, camera: Camera, width: float, height: float, joints: Iterable[str], room: float
) -> PaperView:
    """The view of some joints with `room` link lengths of surroundings."""
    points = np.array([scene.shape.at[joint] for joint in joints])
    return fit(camera, points, room * link_length_m(scene.framework), width, height, MARGIN_PT)


def close_view_of_new(
    scene: Scene, camera: Camera, width: float, height: float, joints: Iterable[str], room: float
) -> PaperView:
    """The same with no more of the surroundings than the new bodies take, and what names them."""
    link_m, new = link_length_m(scene.framework), scene.bodies.some(scene.bodies.is_new)
    spots, _ = project(camera, np.array([scene.shape.at[joint] for joint in joints]))
    middles, _ = project(camera, new.centre)
    out = new.radius[:, None] + NAMES * link_m
    low = np.maximum(spots.min(axis=0) - room * link_m, (middles - out).min(axis=0))
    high = np.minimum(spots.max(axis=0) + room * link_m, (middles + out).max(axis=0))
    corners = np.array([low, high]) @ camera.axes[:2]
    return fit(camera, corners, 0.0, width, height, MARGIN_PT)


def floor_points(shape: Shape) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    """Corners (4, 3) of the rectangle on the floor that the piece stands over."""
    x, z = shape.width_m / 2, shape.depth_m / 2
    return np.array([(x, 0, z), (x, 0, -z), (-x, 0, z), (-x, 0, -z)], dtype=float)
