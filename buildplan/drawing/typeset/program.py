"""Shapes as a font program that a PDF embeds: a TrueType font with a glyph for each.

Outlines of any kind of font are had from HarfBuzz; curves of the third degree are made of the
second, within a thousandth of the em. The same shapes give the same bytes.
"""

from __future__ import annotations

import io
from collections.abc import Mapping
from dataclasses import dataclass

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.cu2quPen import Cu2QuPen
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib.tables._c_m_a_p import cmap_format_6

from buildplan.drawing.typeset.font_files import opened
from buildplan.drawing.typeset.setting import Letterform

CLOSENESS = 0.001  # of the em
NOT_DEFINED = ".notdef"


@dataclass(frozen=True)
class Program:
    """A font program, and what a document says of it, in thousandths of the em."""

    data: bytes
    box: tuple[int, int, int, int]


def font_program(shapes: Mapping[int, Letterform], name: str) -> Program:
    """A program of shapes of one font, by their codes (1 to 255)."""
    font = opened(next(iter(shapes.values())).font)
    upem = font.face.upem
    order = [NOT_DEFINED, *(f"c{code:02x}" for code in sorted(shapes))]
    builder = FontBuilder(upem, isTTF=True)
    builder.font.recalcTimestamp = False
    builder.setupGlyphOrder(order)
    builder.setupCharacterMap({})
    glyphs = {NOT_DEFINED: TTGlyphPen(None).glyph()}
    glyphs.update({f"c{code:02x}": _outline(shape) for code, shape in shapes.items()})
    builder.setupGlyf(glyphs)
    advances = {f"c{code:02x}": max(0, shape.advance) for code, shape in shapes.items()}
    table = builder.font["glyf"]
    builder.setupHorizontalMetrics(
        {one: (advances.get(one, 0), getattr(table[one], "xMin", 0)) for one in order}
    )
    builder.setupHorizontalHeader(ascent=upem, descent=-upem // 4)
    builder.setupNameTable({"familyName": name, "styleName": "Regular", "psName": name})
    builder.setupPost(keepGlyphNames=False)
    builder.setupHead(unitsPerEm=upem, created=0, modified=0)
    # a table of codes alone, as symbolic fonts have it (ISO 32000-1, 9.6.6.4)
    codes = cmap_format_6(6)
    codes.platformID, codes.platEncID, codes.language = 1, 0, 0
    codes.cmap = {code: f"c{code:02x}" for code in shapes}
    builder.font["cmap"].tables = [codes]
    out = io.BytesIO()
    builder.font.save(out)
    head = builder.font["head"]
    corners = (head.xMin, head.yMin, head.xMax, head.yMax)
    a, b, c, d = (round(1000 * corner / upem) for corner in corners)
    return Program(out.getvalue(), (a, b, c, d))


def _outline(shape: Letterform) -> object:
    font = opened(shape.font)
    pen = TTGlyphPen(None)
    smooth = Cu2QuPen(pen, CLOSENESS * font.face.upem)
    for glyph in shape.glyphs:
        font.draw_glyph_with_pen(glyph.number, TransformPen(smooth, (1, 0, 0, 1, glyph.x, glyph.y)))
    return pen.glyph()
