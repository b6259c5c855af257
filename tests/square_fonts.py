"""Fonts whose signs are squares, invented for tests."""

from __future__ import annotations

from pathlib import Path

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.pens.ttGlyphPen import TTGlyphPen


def square_font(file: Path, signs: str, *, curves: str = "glyf", licence: int = 0) -> Path:
    """A font whose signs are squares, invented for these tests, with outlines of either kind."""
    names = [".notdef", *(f"s{number}" for number in range(len(signs)))]
    builder = FontBuilder(1000, isTTF=curves == "glyf")
    builder.setupGlyphOrder(names)
    builder.setupCharacterMap({ord(s): f"s{n}" for n, s in enumerate(signs)})
    drawn = {}
    for number, name in enumerate(names):
        pen = TTGlyphPen(None) if curves == "glyf" else T2CharStringPen(900, None)
        side = 100 + 10 * number
        pen.moveTo((0, 0))
        for corner in ((0, side), (side, side), (side, 0)):
            pen.lineTo(corner)
        pen.closePath()
        drawn[name] = pen.glyph() if curves == "glyf" else pen.getCharString()
    if curves == "glyf":
        builder.setupGlyf(drawn)
    else:
        builder.setupCFF("Squares", {"FullName": "Squares"}, drawn, {})
    builder.setupHorizontalMetrics(dict.fromkeys(names, (900, 0)))
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Squares", "styleName": "Regular"})
    builder.setupOS2(fsType=licence)
    builder.setupPost()
    builder.save(str(file))
    return file
