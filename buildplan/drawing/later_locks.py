"""The sign of a joint whose lock waits: a lock in broken lines, and the brace that it comes with in
a box, as the joint map has braces."""

from __future__ import annotations

from buildplan.drawing.fonts import text_width
from buildplan.drawing.labels import DARK
from buildplan.drawing.line_art import TYPE
from buildplan.drawing.marks import Circle, Ink, Label, MarkData, Picture, Polyline

HIGH_PT, ROUND_PT, PAD_PT = 9.6, 2.7, 2.0
BROKEN, LINE = (1.3, 1.1), 0.7


def later_width(brace: int) -> float:
    """How wide the sign is of a lock that comes with a brace, points."""
    return 4 * ROUND_PT + 3 * PAD_PT + text_width(str(brace), TYPE, bold=True)


def later_sign(joint: str, brace: int) -> Picture:
    """The sign at a joint whose lock comes with a brace."""
    wide, middle, half = later_width(brace), HIGH_PT / 2, LINE / 2
    ink = Ink(fill="#FFFFFF", stroke=DARK, width=LINE, dash=BROKEN)
    left = 4 * ROUND_PT + PAD_PT
    box = (
        (left, half),
        (wide - half, half),
        (wide - half, HIGH_PT - half),
        (left, HIGH_PT - half),
    )
    data: MarkData = (("waits", str(brace)), ("at", joint))
    return Picture(
        wide,
        HIGH_PT,
        (
            Circle((ROUND_PT + half, middle - 1.4), ROUND_PT, ink),
            Circle((3 * ROUND_PT - half, middle + 1.4), ROUND_PT, ink),
            Polyline(box, Ink(fill="#FFFFFF", stroke=DARK, width=LINE), closed=True),
            Label(
                ((left + wide - half) / 2, middle - 0.36 * TYPE), str(brace), TYPE, DARK, bold=True
            ),
        ),
        "",
        data,
    )
