"""A line of type as outlines, for pictures that somebody else's library draws: any script, in its
order and shapes, or refused by the name of the sign."""

from __future__ import annotations

from typing import Any, cast

from fontTools.pens.basePen import BasePen
from fontTools.pens.transformPen import TransformPen
from matplotlib.path import Path
from reportlab.pdfbase import pdfmetrics

from buildplan.drawing.fonts import REGULAR, register_fonts
from buildplan.drawing.typeset.face import Typeface
from buildplan.drawing.typeset.font_files import named_fonts, opened
from buildplan.drawing.typeset.setting import set_shapes


class _PathPen(BasePen):  # type: ignore[misc]
    """Gathers what a font draws as the vertices and codes of a path."""

    def __init__(self) -> None:
        super().__init__(None)
        self.vertices: list[tuple[float, float]] = []
        self.codes: list[Any] = []

    def _add(self, code: Any, *points: tuple[float, float]) -> None:
        self.vertices += points
        self.codes += [code] * len(points)

    def _moveTo(self, pt: tuple[float, float]) -> None:  # noqa: N802 (names of fontTools')
        self._add(Path.MOVETO, pt)

    def _lineTo(self, pt: tuple[float, float]) -> None:  # noqa: N802
        self._add(Path.LINETO, pt)

    def _qCurveToOne(self, pt1: tuple[float, float], pt2: tuple[float, float]) -> None:  # noqa: N802
        self._add(Path.CURVE3, pt1, pt2)

    def _curveToOne(  # noqa: N802
        self, pt1: tuple[float, float], pt2: tuple[float, float], pt3: tuple[float, float]
    ) -> None:
        self._add(Path.CURVE4, pt1, pt2, pt3)

    def _closePath(self) -> None:  # noqa: N802
        self._add(Path.CLOSEPOLY, (0.0, 0.0))


def line_outline(text: str, size: float) -> tuple[Path, float]:
    """The outline of a line, in points from the left end of its baseline, and its width.

    Raises NoSignError.
    """
    register_fonts()
    own = cast("Typeface", pdfmetrics.getFont(REGULAR)).own
    pen, x = _PathPen(), 0.0
    for shape in set_shapes(text, own, named_fonts()):
        font = opened(shape.font)
        scale = size / font.face.upem
        for glyph in shape.glyphs:
            place = (scale, 0.0, 0.0, scale, x + glyph.x * scale, glyph.y * scale)
            font.draw_glyph_with_pen(glyph.number, TransformPen(pen, place))
        x += shape.advance * scale
    return Path(pen.vertices or [(0.0, 0.0)], pen.codes or [Path.MOVETO]), x
