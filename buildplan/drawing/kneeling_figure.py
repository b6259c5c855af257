"""A plain person on its knees, in space: limbs that lead to where its hands are."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.camera import PaperView
from buildplan.drawing.line_art import INK
from buildplan.drawing.marks import Circle, Ink, Mark, Polyline

# Metres, of a person 1.70 m tall (from memory, for looks only).
HIPS_UP, BACK, SHOULDER_ASIDE, HEAD_UP, HEAD = 0.3, 0.5, 0.18, 0.24, 0.105
UPPER_ARM, FOREARM, HAND, WRIST, SHOULDER_BELOW = 0.29, 0.29, 0.045, 0.08, 0.03
KNEE_AHEAD, KNEE_UP, HIP_ASIDE = 0.4, 0.07, 0.1
THIGH_THICK, SHIN_THICK, TORSO_THICK, ARM_THICK, NECK_THICK = 0.14, 0.1, 0.25, 0.08, 0.09
# A back leans so far over its knees at least and at most, degrees; an arm is never quite straight.
LEANS_DEG, STRAIGHT = range(12, 80, 4), 0.97
RIM_PT = 0.9
BODY, SKIN = "#C4CBD1", "#F3F4F5"


@dataclass(frozen=True, eq=False)
class Limb:
    """A part of a person: points (n, 3) that it leads through, and how thick it is; metres."""

    points: FloatArray
    thick: float
    colour: str = BODY


@dataclass(frozen=True, eq=False)
class Posed:
    """A person as groups of limbs that are drawn as one each, the point (3,) of the floor under the
    hips, and the hands (2, 3), left and right; metres."""

    groups: tuple[tuple[Limb, ...], ...]
    floor: FloatArray
    hands: FloatArray

    @property
    def points(self) -> FloatArray:
        """All points (n, 3) that its limbs lead through."""
        return np.vstack([limb.points for group in self.groups for limb in group])


def kneeling(floor: FloatArray, ahead: FloatArray, up: FloatArray, hands: FloatArray) -> Posed:
    """Somebody who kneels with the hips above a point (3,) of the floor and looks `ahead`, a unit
    vector as `up` is, the left hand and the right one at `hands` (2, 3), as near as arms reach."""
    right = np.cross(ahead, up)
    hips = floor + up * HIPS_UP
    sides = (-right, right)
    lean = leaning(hips, ahead, up, hands)
    upper = hips + BACK * (up * np.cos(lean) + ahead * np.sin(lean))
    bowed = lean * 0.7
    head = upper + HEAD_UP * (up * np.cos(bowed) + ahead * np.sin(bowed))
    groups = [
        (Limb(np.array([hips, upper]), TORSO_THICK),),
        (
            Limb(np.array([upper, head]), NECK_THICK, SKIN),
            Limb(head[None], 2 * HEAD, SKIN),
        ),
    ]
    for side in sides:
        hip, knee = hips + side * HIP_ASIDE, floor + ahead * KNEE_AHEAD + side * HIP_ASIDE
        knee = knee + up * KNEE_UP
        foot = floor - ahead * 0.08 + side * HIP_ASIDE + up * KNEE_UP * 0.8
        toes = floor - ahead * 0.22 + side * HIP_ASIDE + up * KNEE_UP * 0.4
        groups.append(
            (
                Limb(np.array([knee, foot, toes]), SHIN_THICK),
                Limb(np.array([hip, knee]), THIGH_THICK),
            )
        )
    arms, reached = arms_to(upper, ahead, up, hands)
    return Posed((*groups, *arms), floor, reached)


def figure_marks(figure: Posed, view: PaperView) -> list[tuple[float, list[Mark]]]:
    """The groups of a person's limbs on a page, each with its depth, the furthest away first."""
    found = []
    for group in figure.groups:
        _, depth = view.place(np.vstack([limb.points for limb in group]))
        found.append((float(np.mean(depth)), _group_marks(group, view)))
    return sorted(found, key=lambda one: one[0])


def _group_marks(group: Sequence[Limb], view: PaperView) -> list[Mark]:
    marks: list[Mark] = []
    for rim in (2 * RIM_PT, 0.0):
        for limb in group:
            flat, _ = view.place(limb.points)
            thick = limb.thick * view.scale + rim
            colour = INK if rim else limb.colour
            spots = [(float(x), float(y)) for x, y in flat]
            if len(spots) == 1 and rim:
                edge = Ink(fill=SKIN, stroke=INK, width=RIM_PT)
                marks.append(Circle(spots[0], (thick - rim) / 2, edge))
            elif len(spots) > 1:
                marks.append(Polyline(tuple(spots), Ink(stroke=colour, width=thick)))
    return marks


def leaning(hips: FloatArray, ahead: FloatArray, up: FloatArray, hands: FloatArray) -> float:
    """How far a back leans over so that both hands reach, radians: no further than it must."""
    reach, right = STRAIGHT * (UPPER_ARM + FOREARM), np.cross(ahead, up)
    for lean in np.radians(LEANS_DEG).tolist():
        upper = hips + BACK * (up * np.cos(lean) + ahead * np.sin(lean))
        shoulders = np.array([upper + side * SHOULDER_ASIDE * right for side in (-1, 1)])
        if float(np.max(np.linalg.norm(hands - shoulders, axis=1))) <= reach:
            break
    return float(lean)


def arms_to(
    upper: FloatArray, ahead: FloatArray, up: FloatArray, hands: FloatArray
) -> tuple[list[tuple[Limb, ...]], FloatArray]:
    """The arms from the top of a back (3,) to `hands` (2, 3), left and right, and where the hands
    come to be."""
    right = np.cross(ahead, up)
    arms: list[tuple[Limb, ...]] = []
    reached: list[FloatArray] = []
    for side, hand in zip((-right, right), hands, strict=True):
        shoulder = upper + side * SHOULDER_ASIDE - up * SHOULDER_BELOW
        elbow, palm = _arm(shoulder, hand, side * 0.5 - up)
        reached.append(palm)
        wrist = palm + (elbow - palm) * WRIST
        arms.append(
            (
                Limb(np.array([shoulder, elbow, palm]), ARM_THICK),
                Limb(np.array([wrist, palm]), 2 * HAND, SKIN),
            )
        )
    return arms, np.array(reached)


def _arm(
    shoulder: FloatArray, hand: FloatArray, bends: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Where elbow and hand are of an arm that bends towards `bends` (3,)."""
    way = hand - shoulder
    far = float(np.linalg.norm(way))
    way = way / max(far, 1e-9)
    far = min(far, STRAIGHT * (UPPER_ARM + FOREARM))
    along = (UPPER_ARM**2 - FOREARM**2 + far**2) / (2 * far)
    out = np.sqrt(max(UPPER_ARM**2 - along**2, 0.0))
    aside = bends - way * (bends @ way)
    aside = aside / max(float(np.linalg.norm(aside)), 1e-9)
    return shoulder + way * along + aside * out, shoulder + way * far
