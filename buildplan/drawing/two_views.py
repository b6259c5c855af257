"""The finished piece from the front and, beside it on one scale, from the side, with how wide, high
and deep it is."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Scene, finished
from buildplan.drawing.camera import CAMERAS, PaperView, project
from buildplan.drawing.dimensions import dimension_marks
from buildplan.drawing.fonts import text_width
from buildplan.drawing.ground import ground_shadow
from buildplan.drawing.line_art import INK
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.scene import body_marks
from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

SIZE_PT = 9.0  # of the figures
OFF_PT, GAP_PT = 4.0, 16.0  # from a view to its dimension lines; between the views
ARROWS_PT = 20.0  # what the arrows of a line take beside its figure
LINE = Ink(stroke="#3A4652", width=0.6)


def front_and_side(
    framework: Framework,
    shape: Shape,
    width: float,
    height: float,
    figures: tuple[str, str, str],
    alt: str,
    patterns: Mapping[str, int] | None = None,
) -> Picture:
    """Both views, no larger than `width` by `height` points; `figures` are how wide, high and deep
    the piece is, in words. The picture is no higher than it needs to be."""
    across, upright, deep = figures
    scene = finished(framework, shape, patterns)
    front, side = (_extent(scene, name) for name in ("front", "side"))
    left, foot = text_width(upright, SIZE_PT) + 2 * OFF_PT, 2 * SIZE_PT + 2 * OFF_PT
    beyond = max(0.0, text_width(deep, SIZE_PT) / 2)  # a figure may be wider than its view
    wide, tall = float(np.ptp(front[:, 0]) + np.ptp(side[:, 0])), float(np.ptp(front[:, 1]))
    scale = min((width - left - GAP_PT - beyond) / wide, (height - foot - OFF_PT) / tall)
    used = foot + scale * tall + OFF_PT
    marks: list[Mark] = []
    x = left
    for name, extent, told in (("front", front, across), ("side", side, deep)):
        (x0, y0), (x1, _) = extent
        view = PaperView(CAMERAS[name], scale, (x - scale * x0, foot - scale * y0))
        marks += ground_shadow(shape, view) + body_marks(scene, view, width, used)
        ends = (x, foot - OFF_PT - SIZE_PT), (x + scale * float(x1 - x0), foot - OFF_PT - SIZE_PT)
        marks += _across(*ends, told)
        x = ends[1][0] + GAP_PT
    middle = left - OFF_PT - text_width(upright, SIZE_PT) / 2
    marks += dimension_marks((middle, foot), (middle, foot + scale * tall), upright, SIZE_PT)
    return Picture(width, used, tuple(marks), alt, (("picture", "finished piece"),))


def _across(start: Point, end: Point, told: str) -> list[Mark]:
    """A level dimension line, with its figure under it where it has no room for that."""
    if end[0] - start[0] >= text_width(told, SIZE_PT) + ARROWS_PT:
        return dimension_marks(start, end, told, SIZE_PT)
    ends = [Polyline(((x, y - OFF_PT), (x, y + OFF_PT)), LINE) for x, y in (start, end)]
    at = ((start[0] + end[0]) / 2, start[1] - SIZE_PT - OFF_PT / 2)
    return [*ends, Polyline((start, end), LINE), Label(at, told, SIZE_PT, INK)]


def _extent(scene: Scene, name: str) -> FloatArray:
    """The lowest and the highest corner (2, 2) of a view, in metres."""
    flat, _ = project(CAMERAS[name], scene.bodies.centre)
    radius = scene.bodies.radius[:, None]
    return np.array([np.min(flat - radius, axis=0), np.max(flat + radius, axis=0)])
