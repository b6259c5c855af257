"""The picture of a fit: the finished piece from the front, and the outline over it."""

from __future__ import annotations

import numpy as np

from buildplan.drawing.bodies import finished
from buildplan.drawing.camera import CAMERAS, fit
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Polyline
from buildplan.drawing.scene import body_marks
from buildplan.fitting.fit import Fit
from buildplan.fitting.outline import ComplexArray, FloatArray
from buildplan.language.voice import Voice

MARGIN_PT, CAPTION_PT = 14.0, 30.0
UNDER = Ink(stroke="#FFFFFF", width=4.2)
OVER = Ink(stroke="#B00020", width=1.8, dash=(7.0, 4.0))


def fit_picture(result: Fit, voice: Voice, width: float = 720.0, height: float = 720.0) -> Picture:
    """The outline, broken line, over the piece that comes closest to it."""
    scene = finished(result.framework, result.shape, None)
    camera = CAMERAS["front"]
    target = _in_space(result.target)
    points = np.vstack([scene.bodies.centre, target])
    radii = np.concatenate([scene.bodies.radius, np.zeros(len(target))])
    view = fit(camera, points, radii, width, height - CAPTION_PT, MARGIN_PT)

    def line(curve: ComplexArray) -> tuple[tuple[float, float], ...]:
        flat, _ = view.place(_in_space(curve))
        return tuple((float(x), float(y)) for x, y in flat)

    marks: list[Mark] = list(body_marks(scene, view, width, height - CAPTION_PT))
    for curve in (*map(line, result.target_holes), line(result.target)):
        marks += [Polyline(curve, UNDER, closed=True), Polyline(curve, OVER, closed=True)]
    words = voice.say(
        "{name}, broken line, over the piece: overlap {share}, largest distance {distance} links, "
        "{count} balloons",
        name=result.outline.name,
        share=voice.percent(result.close.overlap),
        distance=voice.decimal(result.close.farthest, 2),
        count=result.balloons,
    )
    marks.append(Label((width / 2, height - CAPTION_PT + 8), words, 11.0))
    return Picture(width, height, tuple(marks), words)


def _in_space(curve: ComplexArray) -> FloatArray:
    return np.column_stack([curve.real, curve.imag, np.zeros(len(curve))])
