"""The floor under a standing piece: a soft shadow where it stands."""

from __future__ import annotations

import numpy as np

from buildplan.drawing.camera import PaperView
from buildplan.drawing.curves import ellipse
from buildplan.drawing.marks import Ink, Mark
from buildplan.shape.model import Shape

_TONES = ("#F8F8F9", "#F2F2F4", "#ECECEF", "#E5E6E9", "#DEDFE4", "#D6D8DE")
# What hangs above this share of the piece's height throws no shadow worth drawing.
_NEAR_FLOOR = 0.25
# An ellipse seen edge-on is still drawn this thick, over its width.
_THINNEST = 0.035


def ground_shadow(shape: Shape, view: PaperView) -> list[Mark]:
    """Stepped ellipses under the lower part of the piece, back to front."""
    y = shape.positions_m[:, 1]
    low = shape.positions_m[y <= np.min(y) + _NEAR_FLOOR * max(shape.height_m, 1e-6)]
    middle = (np.min(low, axis=0) + np.max(low, axis=0)) / 2
    half = np.ptp(low, axis=0) / 2 + 0.1 * max(shape.depth_m, 0.2)
    rim = np.array([(middle[0], 0, middle[2])] * 3, dtype=float)
    rim[1, 0] += half[0]
    rim[2, 2] += max(half[2], shape.depth_m / 2)
    (centre, right, front), _ = view.place(rim)
    # the projected ellipse's half-axes are the singular values of its two half-diameters
    turn, sizes, _ = np.linalg.svd(np.column_stack([right - centre, front - centre]))
    long, wide = float(sizes[0]), max(float(sizes[1]), _THINNEST * float(sizes[0]))
    angle = float(np.arctan2(turn[1, 0], turn[0, 0]))
    place = (float(centre[0]), float(centre[1]))
    return [
        ellipse(place, long * share, wide * share, angle, Ink(fill=tone))
        for share, tone in zip((1.14, 1.08, 1.01, 0.93, 0.84, 0.74), _TONES, strict=True)
    ]
