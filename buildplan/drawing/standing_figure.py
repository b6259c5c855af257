"""A plain person on its feet, in space, with both hands at what it holds."""

from __future__ import annotations

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.kneeling_figure import (
    BACK,
    HEAD,
    HEAD_UP,
    NECK_THICK,
    SHIN_THICK,
    SKIN,
    THIGH_THICK,
    TORSO_THICK,
    Limb,
    Posed,
    arms_to,
    leaning,
)

# Metres, of a person 1.70 m tall (from memory, for looks only).
STANDS_UP, KNEE_UP, LEGS_ASIDE, STRIDE = 0.9, 0.48, 0.11, 0.12


def standing(floor: FloatArray, ahead: FloatArray, up: FloatArray, hands: FloatArray) -> Posed:
    """Somebody who stands on a point (3,) of the floor and looks `ahead`, a unit vector as `up` is,
    the left hand and the right one at `hands` (2, 3), as near as arms reach."""
    right = np.cross(ahead, up)
    hips = floor + up * STANDS_UP
    lean = leaning(hips, ahead, up, hands)
    upper = hips + BACK * (up * np.cos(lean) + ahead * np.sin(lean))
    head = upper + HEAD_UP * (up * np.cos(lean / 2) + ahead * np.sin(lean / 2))
    groups = [
        (Limb(np.array([hips, upper]), TORSO_THICK),),
        (Limb(np.array([upper, head]), NECK_THICK, SKIN), Limb(head[None], 2 * HEAD, SKIN)),
    ]
    for side, step in ((-right, STRIDE), (right, -STRIDE)):
        foot = floor + side * LEGS_ASIDE + ahead * step + up * 0.04
        knee = floor + side * LEGS_ASIDE + ahead * (step * 0.6 + 0.03) + up * KNEE_UP
        toes = foot + ahead * 0.16 - up * 0.01
        groups.append(
            (
                Limb(np.array([knee, foot, toes]), SHIN_THICK),
                Limb(np.array([hips + side * LEGS_ASIDE * 0.8, knee]), THIGH_THICK),
            )
        )
    arms, reached = arms_to(upper, ahead, up, hands)
    return Posed((*groups, *arms), floor, reached)
