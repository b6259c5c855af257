"""Finished views with their dimensions and, for scale, a person standing beside the piece.

Dimension lines follow the usual manner of technical drawing (ISO 129-1, from memory):
projection lines a little off the outline, closed arrowheads, the figure in the line.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import finished
from buildplan.drawing.camera import Camera, PaperView, project
from buildplan.drawing.curves import smooth
from buildplan.drawing.fonts import text_width
from buildplan.drawing.ground import ground_shadow
from buildplan.drawing.marks import Circle, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.scene import body_marks
from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

PERSON_M = 1.70
_PERSON_TONE = "#C3CAD1"
_LINE = Ink(stroke="#3A4652", width=0.6)
_ARROW = Ink(fill="#3A4652")
_TEXT = "#1A1A1A"
_ARROW_PT, _OFF_PT = 6.0, 4.0

# Half of a standing figure seen from the front, over its height: down the outside, up the
# inside. Own drawing.
_HALF_FIGURE = (
    (0.0, 0.885),
    (0.027, 0.880),
    (0.031, 0.852),
    (0.055, 0.836),
    (0.098, 0.820),
    (0.124, 0.790),
    (0.138, 0.700),
    (0.148, 0.600),
    (0.160, 0.500),
    (0.158, 0.440),
    (0.138, 0.438),
    (0.128, 0.500),
    (0.112, 0.610),
    (0.098, 0.715),
    (0.090, 0.640),
    (0.088, 0.590),
    (0.100, 0.510),
    (0.100, 0.400),
    (0.084, 0.270),
    (0.074, 0.150),
    (0.062, 0.045),
    (0.084, 0.006),
    (0.026, 0.004),
    (0.024, 0.060),
    (0.026, 0.160),
    (0.020, 0.290),
    (0.010, 0.440),
    (0.0, 0.462),
)


def person_marks(foot: Point, height: float) -> list[Mark]:
    """A standing figure, `foot` between its feet, `height` in points."""
    half = np.array(_HALF_FIGURE)
    other = half[-2:0:-1] * np.array([-1.0, 1.0])
    outline = np.vstack([half, other]) * height + np.asarray(foot)
    ink = Ink(fill=_PERSON_TONE)
    head = (foot[0], foot[1] + 0.934 * height)
    return [smooth(outline, ink), Circle(head, 0.066 * height, ink)]


def dimension_marks(start: Point, end: Point, text: str, size: float) -> list[Mark]:
    """A dimension line between two points, level or upright, its figure in the middle."""
    first, second = np.asarray(start), np.asarray(end)
    along = (second - first) / max(float(np.linalg.norm(second - first)), 1e-9)
    across = np.array([-along[1], along[0]])
    marks: list[Mark] = []
    middle = (first + second) / 2
    # room for the figure: its width in a level line, its height in an upright one
    gap = abs(along[0]) * (text_width(text, size) / 2 + 4) + abs(along[1]) * (size * 0.62 + 3)
    for tip, way in ((first, 1.0), (second, -1.0)):
        base = tip + way * _ARROW_PT * along
        corners = (tip, base + across * _ARROW_PT / 6, base - across * _ARROW_PT / 6)
        marks.append(Polyline((_point(base), _point(middle - way * gap * along)), _LINE))
        marks.append(Polyline(tuple(_point(c) for c in corners), _ARROW, closed=True))
    at = (float(middle[0]), float(middle[1]) - size * 0.36)
    marks.append(Label(at, text, size, colour=_TEXT))
    return marks


def _point(value: FloatArray) -> Point:
    return (round(float(value[0]), 3), round(float(value[1]), 3))


def dimensioned_view(
    framework: Framework,
    shape: Shape,
    camera: Camera,
    width: float,
    height: float,
    *,
    across: str,
    upright: str,
    person: str | None = None,
    patterns: Mapping[str, int] | None = None,
    size: float = 9.0,
    alt: str = "",
) -> Picture:
    """The finished piece with dimension lines below and at its left.

    `across` and `upright` are the figures, in words. With `person` (words under the
    figure), someone 1.70 m tall stands at the right; the camera must then be level. The
    picture is no higher than it needs to be.
    """
    bodies = finished(framework, shape).bodies
    flat, _ = project(camera, bodies.centre)
    radius = bodies.radius[:, None]
    low, high = np.min(flat - radius, axis=0), np.max(flat + radius, axis=0)
    reach = high.copy()
    if person is not None:
        reach = np.array([high[0] + 0.85, max(high[1], low[1] + PERSON_M)])
    below = size + 2 * _OFF_PT + (size + 3 if person else 0) + 6
    left = text_width(upright, size) + 2 * _OFF_PT + 6
    room = np.array([width - left - 8, height - below - 8])
    scale = float(np.min(room / (reach - low)))
    spare = room - scale * (reach - low)
    corner = np.array([left, below]) + spare * np.array([0.5, 0.0])
    origin = corner - scale * low
    view = PaperView(camera, scale, (float(origin[0]), float(origin[1])))

    (x0, y0), (x1, y1) = corner, corner + scale * (high - low)
    marks: list[Mark] = []
    if abs(camera.axes[2][1]) < 0.5:
        marks += ground_shadow(shape, view)
    if person is not None:
        foot = (float(x1 + 0.5 * scale), float(y0))
        marks += person_marks(foot, PERSON_M * scale)
        marks.append(Label((foot[0], foot[1] - size - 2), person, size, colour=_TEXT))
    scene = finished(framework, shape, patterns)
    marks += body_marks(scene, view, width, height)
    line_y, line_x = y0 - below + size * 0.5 + 2, x0 - left + text_width(upright, size) / 2 + 2
    for x in (x0, x1):
        marks.append(Polyline((_at(x, y0 - _OFF_PT), _at(x, line_y - _OFF_PT)), _LINE))
    for y in (y0, y1):
        marks.append(Polyline((_at(x0 - _OFF_PT, y), _at(line_x - _OFF_PT, y)), _LINE))
    marks += dimension_marks(_at(x0, line_y), _at(x1, line_y), across, size)
    marks += dimension_marks(_at(line_x, y0), _at(line_x, y1), upright, size)
    used = below + 8 + float(scale * (reach - low)[1])
    return Picture(width, used, tuple(marks), alt)


def _at(x: float, y: float) -> Point:
    return (round(float(x), 3), round(float(y), 3))
