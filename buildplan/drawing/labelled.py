"""A piece, or a part of one, with the labels of its joints."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from buildplan.drawing.bodies import Bodies, finished
from buildplan.drawing.camera import Camera, PaperView
from buildplan.drawing.framing import view_of
from buildplan.drawing.label_places import place_tags
from buildplan.drawing.labels import joint_dot, joint_tags, leaders
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import RING_MARGIN_PT, body_marks
from buildplan.drawing.visibility import joints_m
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.shape.model import FloatArray, Shape

MOST_LABELS = 160  # more than these would cover the piece: those at its edges only
LABEL_PT = 11.0
BEHIND_SHARE = 0.5  # of a body's radius: a joint this far behind its middle is behind it


def labelled_picture(
    framework: Framework,
    shape: Shape,
    camera: Camera,
    size_pt: float,
    edges: Sequence[str],
    voice: Voice,
    name: str,
    patterns: Mapping[str, int] | None = None,
) -> Picture:
    """The finished piece in a square, each joint with its label; of a large one, `edges` alone.
    The dots of joints that lie behind balloons are hollow; `patterns` are the colours' signs."""
    joints = framework.joints if len(framework.joints) <= MOST_LABELS else edges
    alt = voice.say("{piece} with the labels of its joints.", piece=name)
    return named_joints(framework, shape, camera, size_pt, joints, alt, patterns)


def named_joints(
    framework: Framework,
    shape: Shape,
    camera: Camera,
    size_pt: float,
    joints: Sequence[str],
    alt: str,
    patterns: Mapping[str, int] | None = None,
) -> Picture:
    """The finished piece in a square, some of its joints with their labels; `alt` is what is said
    of it."""
    scene = finished(framework, shape, patterns)
    view = view_of(scene, camera, size_pt, size_pt, shape.joints, margin=RING_MARGIN_PT)
    places, depth = view.place(joints_m(scene, joints))
    spots = [(joint, (float(x), float(y))) for joint, (x, y) in zip(joints, places, strict=True)]
    behind = _behind(places, depth, scene.bodies, view)
    tags = place_tags(spots, size_pt, size_pt, size=LABEL_PT)
    dots = [
        mark
        for (_, spot), hidden in zip(spots, behind, strict=True)
        for mark in joint_dot(spot, hidden=hidden)
    ]
    marks = [*body_marks(scene, view, size_pt, size_pt), *leaders(tags), *dots, *joint_tags(tags)]
    return Picture(size_pt, size_pt, tuple(marks), alt, (("picture", "labels"),))


def _behind(
    places: FloatArray, depth: FloatArray, bodies: Bodies, view: PaperView
) -> Sequence[bool]:
    """Which joints have a balloon between them and the eye."""
    flat, near = view.place(bodies.centre)
    apart = np.linalg.norm(places[:, None] - flat[None], axis=2)
    covered = apart < bodies.radius[None] * view.scale
    before = near[None] - depth[:, None] > BEHIND_SHARE * bodies.radius[None]
    return [bool(one) for one in (covered & before).any(axis=1)]
