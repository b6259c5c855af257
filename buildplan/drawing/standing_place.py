"""Where the work is on a piece that stands: the whole of it with a ring, and under or beside it
the plan from above, on which the builder's eyes look level. On a side view alone an eye before the
piece would be drawn under it."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from buildplan.drawing.bodies import Scene, link_length_m
from buildplan.drawing.camera import CAMERAS, Camera
from buildplan.drawing.eye import Eye, eyes_for, eyes_on
from buildplan.drawing.line_art import SOFT, TYPE
from buildplan.drawing.marks import Box, Inset, Label, Mark, Picture
from buildplan.drawing.panel import Panel
from buildplan.drawing.scene import step_picture
from buildplan.drawing.seat import STANDING_WHOLE

PLAN = CAMERAS["top"]
# A lower picture has the plan alone.
BOTH_FROM_PT = 84.0
# The share of the height that a plan has under the whole piece, or of the width beside it.
UNDER, BESIDE = 0.54, 0.56
WORDS_PT = TYPE + 2.0  # over the plan


def standing_eyes(
    scene: Scene, size: tuple[float, float], panels: Sequence[Panel]
) -> tuple[Eye, ...]:
    """An eye for each place that panels are seen from, on the plan of a picture of this size."""
    left, low, right, high = _boxes(scene, size)[1]
    return eyes_for(scene, PLAN, (right - left, high - low), panels)


def standing_place(
    scene: Scene,
    size: tuple[float, float],
    joints: Sequence[str],
    eyes: Sequence[Eye],
    words: str,
    alt: str,
) -> Picture:
    """The picture; `eyes` are those of `standing_eyes`, `words` say that the plan is one from
    above."""
    whole_box, plan_box = _boxes(scene, size)
    plan = _shown(scene, PLAN, plan_box, () if whole_box else joints)
    over = (plan_box[0], plan_box[3] + WORDS_PT - TYPE)
    marks: list[Mark] = [
        Inset(eyes_on(plan, eyes), plan_box[:2]),
        Label(over, words, TYPE, SOFT, "start"),
    ]
    if whole_box:
        marks.append(Inset(_shown(scene, STANDING_WHOLE, whole_box, joints), whole_box[:2]))
    return Picture(*size, tuple(marks), alt, (("picture", "whole piece"),))


def _shown(scene: Scene, camera: Camera, box: Box, joints: Sequence[str]) -> Picture:
    left, low, right, high = box
    return step_picture(scene, camera, right - left, high - low, place=joints)


def _boxes(scene: Scene, size: tuple[float, float]) -> tuple[Box | None, Box]:
    """Where the whole piece and the plan are drawn in a picture of this size, each as large as can
    be; the plan alone where it is low."""
    wide, high = size
    if high < BOTH_FROM_PT:
        return None, (0.0, 0.0, wide, high - WORDS_PT)
    deep, cut = UNDER * high, (1 - BESIDE) * wide
    under = (0.0, deep, wide, high), (0.0, 0.0, wide, deep - WORDS_PT)
    beside = (0.0, 0.0, cut, high), (cut, 0.0, wide, high - WORDS_PT)
    at = np.array([scene.shape.at[joint] for joint in scene.shape.joints])
    x, y, z = np.ptp(at, axis=0) + link_length_m(scene.framework)

    def scale(boxes: tuple[Box, Box]) -> float:
        """Of the smaller of the two, in points to the metre."""
        sides = [(x, y), (x, z)]
        pairs = zip(boxes, sides, strict=True)
        across = (min((b[2] - b[0]) / side[0], (b[3] - b[1]) / side[1]) for b, side in pairs)
        return float(min(across))

    return max(under, beside, key=scale)
