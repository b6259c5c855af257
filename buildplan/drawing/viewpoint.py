"""A small block that shows from where a picture is seen: the piece's own box, its front marked."""

from __future__ import annotations

import numpy as np

from buildplan.drawing.camera import Camera, fit
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Polyline
from buildplan.language.grammar import listed
from buildplan.language.speaking import say
from buildplan.shape.model import Shape

# face: its outward axis and sign, its corners in order round it, its tone
_FACES = (
    (2, 1, ((-1, -1, 1), (1, -1, 1), (1, 1, 1), (-1, 1, 1)), "#FFFFFF"),
    (2, -1, ((1, -1, -1), (-1, -1, -1), (-1, 1, -1), (1, 1, -1)), "#E4E8EC"),
    (0, 1, ((1, -1, 1), (1, -1, -1), (1, 1, -1), (1, 1, 1)), "#C9D1D9"),
    (0, -1, ((-1, -1, -1), (-1, -1, 1), (-1, 1, 1), (-1, 1, -1)), "#C9D1D9"),
    (1, 1, ((-1, 1, 1), (1, 1, 1), (1, 1, -1), (-1, 1, -1)), "#EEF1F4"),
    (1, -1, ((-1, -1, -1), (1, -1, -1), (1, -1, 1), (-1, -1, 1)), "#AEB8C2"),
)
_LINE = "#3A4652"
# Turns smaller than this go unsaid, in degrees.
UNSAID_DEG = 15.0
# A box thinner than this share of its longest side would not show its sides.
_THINNEST = 0.22


def viewpoint_words(camera: Camera) -> str:
    """From where a camera looks, in words: `from the left and from above`.

    Left and right are the viewer's, who stands before the front.
    """
    across, over = _turn_deg(camera)
    from_where = []
    if abs(across) > 180 - UNSAID_DEG:
        from_where.append(say("from the back"))
    elif abs(across) > UNSAID_DEG:
        from_where.append(say("from the right") if across > 0 else say("from the left"))
    if abs(over) > UNSAID_DEG:
        from_where.append(say("from above") if over > 0 else say("from below"))
    return listed(from_where or [say("from the front")])


def _turn_deg(camera: Camera) -> tuple[float, float]:
    """How far round to the right, and how far up, a camera stands from the front."""
    x, y, z = camera.axes[2]
    return float(np.degrees(np.arctan2(x, z))), float(np.degrees(np.arcsin(np.clip(y, -1, 1))))


def viewpoint_picture(
    shape: Shape, camera: Camera, size: float, *, front: str = "", alt: str = ""
) -> Picture:
    """A picture `size` points square of the piece's box as `camera` sees it.

    `front` is what is written on the front face when it is seen.
    """
    sides = np.array([shape.width_m, shape.height_m, shape.depth_m])
    half = np.maximum(sides, _THINNEST * np.max(sides)) / 2
    corners = half * np.array([corner for face in _FACES for corner in face[2]])
    view = fit(camera, corners, 0.0, size, size, 2.0)
    marks: list[Mark] = []
    for axis, sign, face, tone in _FACES:
        if sign * camera.axes[2][axis] < 0.02:
            continue
        flat, _ = view.place(half * np.array(face))
        points = tuple((round(float(x), 3), round(float(y), 3)) for x, y in flat)
        marks.append(Polyline(points, Ink(fill=tone, stroke=_LINE, width=0.7), closed=True))
        if front and (axis, sign) == (2, 1):
            x, y = np.mean(flat, axis=0)
            at = (round(float(x), 3), round(float(y) - 2.9, 3))
            marks.append(Label(at, front, 8.0))
    return Picture(size, size, tuple(marks), alt)
