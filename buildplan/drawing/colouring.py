"""A piece with its colours left open: white balloons, each with its letter where it can be seen."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Bodies, finished
from buildplan.drawing.camera import Camera, fit
from buildplan.drawing.fonts import CAP_HEIGHT
from buildplan.drawing.framing import MARGIN_PT, floor_points
from buildplan.drawing.ground import ground_shadow
from buildplan.drawing.marks import Label, Picture
from buildplan.drawing.scene import body_marks
from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

WHITE = "#FFFFFF"
LETTER_TONE = "#1A1A1A"
# Of a body's width on paper; a letter smaller than the least cannot be read and is left out.
LETTER_SHARE, LEAST_LETTER, MOST_LETTER = 0.42, 5.5, 13.0
# A body is covered where a nearer one lies over its middle, nearer than so many of its radii.
COVERED = 0.82


def colouring_picture(
    framework: Framework,
    shape: Shape,
    camera: Camera,
    letters: Mapping[str, str],
    width: float,
    height: float,
    alt: str,
) -> Picture:
    """The finished piece in white with dark outlines; `letters` by balloon key stand on every
    body whose middle is not covered."""
    white = {key: replace(b, colour=WHITE) for key, b in framework.balloons.items()}
    scene = finished(replace(framework, balloons=white), shape)
    bodies = scene.bodies
    points = np.vstack([bodies.centre, floor_points(shape)])
    radii = np.concatenate([bodies.radius, np.full(4, 0.03 * shape.width_m)])
    view = fit(camera, points, radii, width, height, MARGIN_PT)
    flat, depth = view.place(bodies.centre)
    labels = []
    for i in np.flatnonzero(in_sight(bodies, flat, depth, view.scale)):
        size = min(2 * bodies.radius[i] * view.scale * LETTER_SHARE, MOST_LETTER)
        letter = letters.get(bodies.balloons[i], "")
        if letter and size >= LEAST_LETTER:
            at = (float(flat[i, 0]), float(flat[i, 1] - size * CAP_HEIGHT / 2))
            labels.append(Label(at, letter, round(float(size), 2), LETTER_TONE))
    marks = (*ground_shadow(shape, view), *body_marks(scene, view, width, height), *labels)
    return Picture(width, height, marks, alt)


def in_sight(bodies: Bodies, flat: FloatArray, depth: FloatArray, scale: float) -> np.ndarray:
    """Which bodies (n,) show their middle: no nearer body lies over it on paper."""
    away = np.linalg.norm(flat[:, None] - flat[None, :], axis=2)
    over = (away < COVERED * bodies.radius[None, :] * scale) & (depth[None, :] > depth[:, None])
    return np.asarray(~over.any(axis=1))
