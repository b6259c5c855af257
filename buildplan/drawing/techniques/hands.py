"""A hand that pinches the end of a balloon."""

from __future__ import annotations

import math

from buildplan.drawing.line_art import INK, smooth
from buildplan.drawing.marks import Ink, Mark, Point

SKIN = "#E4E7EA"  # of nobody in particular
RIM = 1.5
# Along the hand and to its side, with its fingertips at the start, and how thick each part is.
WRIST: tuple[tuple[float, float], ...] = ((27.0, 0.0), (34.0, 0.0), (42.0, 0.0))
PALM: tuple[tuple[float, float], ...] = ((17.0, 1.0), (22.0, 0.5), (27.0, 0.0))
MIDDLE: tuple[tuple[float, float], ...] = ((20.0, 6.5), (12.0, 8.5), (6.0, 5.5))
FOREFINGER: tuple[tuple[float, float], ...] = ((19.0, 3.5), (10.0, 5.5), (1.0, 1.8))
THUMB: tuple[tuple[float, float], ...] = ((19.0, -3.5), (10.0, -5.0), (1.0, -1.8))
PARTS = ((WRIST, 10.0), (PALM, 12.5), (MIDDLE, 4.2), (FOREFINGER, 4.4), (THUMB, 4.6))


def pinching_hand(
    at: Point, away_deg: float, size: float = 0.8, *, thumb_left: bool = False
) -> list[Mark]:
    """A hand whose thumb and forefinger meet at a point, its arm leading `away_deg` from there;
    `thumb_left` of the arm as one looks along it to the fingers, or right of it."""
    c, s = math.cos(math.radians(away_deg)), math.sin(math.radians(away_deg))
    side = 1.0 if thumb_left else -1.0

    def placed(spot: Point) -> Point:
        along, aside = spot[0] * size, spot[1] * size * side
        return (at[0] + along * c - aside * s, at[1] + along * s + aside * c)

    lines = [([placed(spot) for spot in part], thick * size) for part, thick in PARTS]
    under: list[Mark] = [smooth(line, Ink(None, INK, thick + RIM)) for line, thick in lines[:3]]
    over: list[Mark] = [smooth(line, Ink(None, SKIN, thick)) for line, thick in lines[:3]]
    for line, thick in lines[3:]:
        over += [smooth(line, Ink(None, INK, thick + RIM)), smooth(line, Ink(None, SKIN, thick))]
    return [*under, *over]
