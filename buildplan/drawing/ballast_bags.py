"""Bags of ballast in pictures of the whole piece."""

from __future__ import annotations

from buildplan.drawing.labels import DARK
from buildplan.drawing.line_art import smooth
from buildplan.drawing.marks import Ink, Mark, Point

BAG_PT = 5.0
SAND = Ink(fill="#D8CDB4", stroke=DARK, width=0.8)


def bag_marks(at: Point) -> list[Mark]:
    """A bag of ballast on the floor."""
    x, y = at
    r = BAG_PT
    outline = [(x - r, y - r * 0.6), (x + r, y - r * 0.6), (x + r * 0.9, y + r * 0.2)]
    outline += [(x + r * 0.25, y + r * 0.5), (x, y + r), (x - r * 0.25, y + r * 0.5)]
    outline.append((x - r * 0.9, y + r * 0.2))
    return [smooth(outline, SAND, closed=True)]
