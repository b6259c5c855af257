"""Small plates in the corners of a close-up: its title, and from where it is seen."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.fonts import text_width
from buildplan.drawing.labels import DARK
from buildplan.drawing.marks import Box, Ink, Inset, Label, Picture, Polyline

TITLE_SIZE = 8.0
PAD = 3.0
LINE = Ink(fill="#FFFFFF", stroke="#8A9AA8", width=0.9)


def plate_box(plate: Inset) -> Box:
    """Left, low, right and high edge of a plate."""
    x, y = plate.at
    return (x, y, x + plate.picture.width, y + plate.picture.height)


def title_plate(words: str, size: tuple[float, float]) -> Inset:
    """A line of words in the upper left corner of a picture of `size`."""
    width = text_width(words, TITLE_SIZE, bold=True) + 2 * PAD
    height = TITLE_SIZE + 2 * PAD
    label = Label((PAD, PAD + 1.6), words, TITLE_SIZE, colour=DARK, anchor="start", bold=True)
    plate = Picture(width, height, (_ground(width, height), label), words)
    return Inset(plate, (0.0, size[1] - height))


def corner_plate(
    picture: Picture, size: tuple[float, float], discs: FloatArray, others: Sequence[Inset]
) -> Inset:
    """A small picture on a plate in the corner of a picture of `size` where it covers least
    of `discs` (n, 3: x, y, radius) and nothing of the `others`."""
    width, height = picture.width, picture.height
    right, top = size[0] - width, size[1] - height
    corners = ((right, 0.0), (0.0, 0.0), (right, top), (0.0, top))
    at = min(corners, key=lambda corner: _covered(corner, picture, discs, others))
    plate = Picture(width, height, (_ground(width, height), *picture.marks), picture.alt)
    return Inset(plate, at)


def _covered(
    corner: tuple[float, float], picture: Picture, discs: FloatArray, others: Sequence[Inset]
) -> float:
    """How deep the discs reach into the plate, together; no plate may meet another."""
    box = plate_box(Inset(picture, corner))
    for other in map(plate_box, others):
        if max(box[0], other[0]) < min(box[2], other[2]) and max(box[1], other[1]) < min(
            box[3], other[3]
        ):
            return float("inf")
    nearest = np.clip(discs[:, :2], box[:2], box[2:])
    depth = discs[:, 2] - np.linalg.norm(nearest - discs[:, :2], axis=1)
    return float(np.sum(np.maximum(depth, 0.0)))


def _ground(width: float, height: float) -> Polyline:
    # half the line's width inside the plate, which clips what is beyond it
    near = LINE.width / 2
    right, top = width - near, height - near
    return Polyline(((near, near), (right, near), (right, top), (near, top)), LINE, closed=True)
