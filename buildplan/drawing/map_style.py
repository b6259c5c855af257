"""What the signs of a joint map look like."""

from __future__ import annotations

import math
from dataclasses import dataclass

from buildplan.drawing.fonts import text_width
from buildplan.drawing.labels import rounded_box
from buildplan.drawing.line_art import INK, PALE, PAPER, SOFT, TYPE, disc, lock_mark
from buildplan.drawing.marks import Ink, Label, Mark, Point, Polyline
from buildplan.framework.model import Framework

JOINT_FILL = "#2E4756"
REPEAT_FILL = "#E3E7EA"
# long chains are told apart by their dashes as well as by their letter
CHAIN_DASHES: tuple[tuple[float, ...], ...] = ((), (6, 4), (2, 2), (9, 2, 2, 2))
HALF_HIGH = 6.6  # half the height of the plate of a joint's name
LOCK_RADIUS = 1.9
LOCK_HALF = 2.2 * LOCK_RADIUS  # of the two rounds of a lock together


@dataclass(frozen=True)
class LinkStyle:
    """How a link is drawn on a map; `double` is two thin lines side by side."""

    width: float
    dash: tuple[float, ...] = ()
    double: bool = False


BRACE = LinkStyle(1.1)
SHARED = LinkStyle(0.9, double=True)
SINGLE = LinkStyle(1.3, dash=(1.6, 2.2))


def chain_style(number: int) -> LinkStyle:
    """The style of long chain `number` (from 0)."""
    return LinkStyle(2.2, CHAIN_DASHES[number % len(CHAIN_DASHES)])


def link_marks(start: Point, finish: Point, style: LinkStyle, repeat: bool = False) -> list[Mark]:
    """The line of a link between two joints; pale when it is drawn again."""
    ink = Ink(stroke=PALE if repeat else INK, width=style.width, dash=style.dash)
    if not style.double:
        return [Polyline((start, finish), ink)]
    dx, dy = finish[0] - start[0], finish[1] - start[1]
    length = math.hypot(dx, dy) or 1.0
    nx, ny = -dy / length * 1.5, dx / length * 1.5
    return [
        Polyline(
            ((start[0] + s * nx, start[1] + s * ny), (finish[0] + s * nx, finish[1] + s * ny)), ink
        )
        for s in (1, -1)
    ]


def joint_radius(framework: Framework) -> float:
    """Radius of a disc that holds the longest joint label."""
    widest = max(text_width(joint, TYPE, bold=True) for joint in framework.joints)
    return max(8.5, widest / 2 + 1.8)


def joint_marks(
    at: Point, radius: float, label: str, *, skipped: bool, locked: bool, repeat: bool
) -> list[Mark]:
    """A joint with its label: dark; open when no brace reaches it; pale when drawn again."""
    if repeat:
        rim = Ink(stroke=PALE, width=0.8)
        return [*disc(at, radius, label, PAPER if skipped else REPEAT_FILL, SOFT, rim)]
    if skipped:
        marks = [*disc(at, radius, label, PAPER, INK, Ink(stroke=INK, width=1.3))]
    else:
        marks = [*disc(at, radius, label, JOINT_FILL, PAPER, Ink(stroke=JOINT_FILL, width=0.8))]
    if locked:
        marks += lock_mark(lock_place(at, radius), LOCK_RADIUS, -45)
    return marks


def half_wide(label: str) -> float:
    """Half the width of the plate that a joint's name has on the plan of a course."""
    return max(HALF_HIGH, text_width(label, TYPE, bold=True) / 2 + 2.6)


def to_edge(label: str, way: float) -> float:
    """How far it is from the middle of a joint's plate to its edge, some way (radians)."""
    across, up = abs(math.cos(way)), abs(math.sin(way))
    return min(half_wide(label) / max(across, 1e-9), HALF_HIGH / max(up, 1e-9))


def named_joint(at: Point, label: str, *, later: bool, before: bool) -> list[Mark]:
    """A joint's name on a plate, which leaves more to be seen of what is about it than a disc does:
    dark; open when it is tied later; pale when it was tied before."""
    (x, y), wide = at, half_wide(label)
    fill, ink = (PAPER, INK) if later else (REPEAT_FILL, SOFT) if before else (JOINT_FILL, PAPER)
    rim = PALE if before and not later else INK if later else JOINT_FILL
    edges = (x - wide, y - HALF_HIGH, x + wide, y + HALF_HIGH)
    plate = rounded_box(edges, HALF_HIGH, Ink(fill, rim, 1.1 if later else 0.8))
    return [plate, Label((x, y - TYPE * 0.36), label, TYPE, ink, bold=True)]


def lock_place(at: Point, radius: float) -> Point:
    """Where the lock of a joint at a point is marked, at the upper right of its disc."""
    reach = (radius + 0.6) * math.sqrt(0.5)
    return (at[0] + reach, at[1] + reach)


def brace_number(at: Point, number: str, *, again: bool = False) -> list[Mark]:
    """A brace's number in its box; pale when it is drawn again."""
    half = text_width(number, TYPE, bold=True) / 2 + 3
    at_foot = (at[0], at[1] - TYPE * 0.36)
    return [
        number_box(at, half, PALE if again else INK),
        Label(at_foot, number, TYPE, SOFT if again else INK, bold=True),
    ]


def number_box(at: Point, half_width: float, stroke: str = INK) -> Mark:
    """The box that a brace's number stands in."""
    (x, y), half = at, half_width
    box = ((x - half, y - 6), (x + half, y - 6), (x + half, y + 6), (x - half, y + 6))
    return Polyline(box, Ink(fill=PAPER, stroke=stroke, width=0.8), closed=True)
