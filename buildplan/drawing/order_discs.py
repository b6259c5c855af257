"""The order in which a brace is tied, on a diagram: a number beside each joint's disc."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import PAPER, TYPE
from buildplan.drawing.marks import Circle, Ink, Label, Mark, Point
from buildplan.drawing.way_round import WAY, TiedRow, order_of
from buildplan.framework.model import Brace

NUMBER_RADIUS = 4.9
AROUND = 1.2  # free about a number of two digits
CLEAR = 6.0  # from the edge of a small disc to the middle of its number


def rows_of(brace: Brace) -> list[TiedRow]:
    """The rows of joints at which a brace is tied."""
    return [TiedRow(chain.joints, chain.closed) for chain in brace.chains]


def order_discs(rows: Sequence[TiedRow], spots: Mapping[str, Point], radius: float) -> list[Mark]:
    """Each joint's place in the order of the work, as close-ups number it, at the upper left of
    its disc of `radius` points; joints without a spot are not shown."""
    marks: list[Mark] = []
    apart = max(radius * 0.95, (radius + CLEAR) / math.sqrt(2))
    for joint, place in order_of(rows).place.items():
        if joint not in spots:
            continue
        x, y = spots[joint]
        marks += order_disc(joint, place, (x - apart, y + apart))
    return marks


def order_disc(joint: str, place: int, at: Point) -> list[Mark]:
    """A joint's place in the order of the work, in a disc about a point."""
    data = (("joint", joint), ("order", str(place)))
    foot = (at[0], at[1] - TYPE * 0.36)
    radius = max(NUMBER_RADIUS, text_width(str(place), TYPE, bold=True) / 2 + AROUND)
    return [
        Circle(at, radius, Ink(fill=WAY, stroke=PAPER, width=0.8)),
        Label(foot, str(place), TYPE, PAPER, bold=True, data=data),
    ]
