"""The builder's eye on a small picture of the whole piece: where a close-up is seen from."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from buildplan.drawing.bodies import Scene, link_length_m
from buildplan.drawing.camera import Camera, PaperView
from buildplan.drawing.closeup import Panel
from buildplan.drawing.framing import view_of
from buildplan.drawing.labels import DARK
from buildplan.drawing.line_art import smooth
from buildplan.drawing.marks import Circle, Ink, Inset, Mark, MarkData, Picture, Point
from buildplan.drawing.scene import RING_MARGIN_PT
from buildplan.drawing.visibility import joints_m

EYE_PT = 15.0
# An eye stands so far from the joints, in link lengths, and no nearer than this on the page.
AWAY, LEAST_AWAY_PT = 1.6, 20.0
# Eyes nearer to one another than this are one.
APART_PT = 14.0


def eyes_on(picture: Picture, scene: Scene, camera: Camera, panels: Sequence[Panel]) -> Picture:
    """A whole piece's picture (`step_picture`) with an eye for each place that panels are seen
    from."""
    size = (picture.width, picture.height)
    view = view_of(scene, camera, *size, scene.shape.joints, margin=RING_MARGIN_PT)
    eyes: list[Mark] = []
    placed: list[Point] = []
    for panel in panels:
        at, turn = _place(scene, view, panel, size)
        if all(math.dist(at, other) > APART_PT for other in placed):
            placed.append(at)
            eyes.append(_eye(at, turn))
    return replace(picture, marks=(*picture.marks, *eyes))


def _place(
    scene: Scene, view: PaperView, panel: Panel, size: tuple[float, float]
) -> tuple[Point, float]:
    """Where a panel's eye stands on the page, within the picture, and which way it looks."""
    middle = np.mean(joints_m(scene, panel.joints), axis=0)
    toward = panel.camera.axes[2] * AWAY * link_length_m(scene.framework)
    places, _ = view.place(np.array([middle, middle + toward]))
    run = places[1] - places[0]
    length = max(float(np.hypot(*run)), 1e-9)
    if length < LEAST_AWAY_PT:
        run = run * LEAST_AWAY_PT / length
    half = EYE_PT / 2
    x, y = (
        min(max(float(a), half), side - half) for a, side in zip(places[0] + run, size, strict=True)
    )
    return (x, y), math.atan2(float(places[0][1]) - y, float(places[0][0]) - x)


def _eye(at: Point, turn: float) -> Inset:
    """An eye that looks along an angle, in radians."""
    c, s, half = math.cos(turn), math.sin(turn), EYE_PT / 2

    def point(x: float, y: float) -> Point:
        return (half + half * (x * c - y * s), half + half * (x * s + y * c))

    lids = [point(-0.7, 0.8), point(0.25, 0.5), point(0.75, 0.0), point(0.25, -0.5)]
    lids.append(point(-0.7, -0.8))
    marks: tuple[Mark, ...] = (
        Circle((half, half), half - 0.5, Ink(fill="#FFFFFF", stroke=DARK, width=0.7)),
        smooth(lids, Ink(stroke=DARK, width=1.1)),
        Circle(point(0.3, 0.0), 0.24 * half, Ink(fill=DARK)),
    )
    data: MarkData = (("eye", "builder"),)
    return Inset(Picture(EYE_PT, EYE_PT, marks, "", data), (at[0] - half, at[1] - half))
