"""Lengths on a plan of the floor: a broken line from joint to joint for each, with its length where
it covers least."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from buildplan.drawing.fonts import text_width
from buildplan.drawing.labels import DARK, rounded_box
from buildplan.drawing.marks import Box, Ink, Label, Mark, Point, Polyline

FIGURE_PT = 9.0
# A figure stands so far along its line, the first place at which it covers nothing.
ALONG = (0.5, 0.4, 0.6, 0.32, 0.68, 0.25, 0.75)
TAPED = Ink(stroke="#B3261E", width=0.9, dash=(5.0, 2.5))
UNDER = Ink(stroke="#FFFFFF", width=2.6)
FROM_JOINT = Ink(stroke="#B3261E", width=0.5)
PARTED_PT = 14.0  # between lines of lengths that would lie on one another


def taped_lines(
    figures: Mapping[tuple[str, str], str],
    spots: Mapping[str, Point],
    blocked: list[Box],
    middle: Point,
) -> list[Mark]:
    """Broken lines with their lengths, the longest first; their boxes come to what is
    `blocked`. Lengths by the joints that they are between, all at `spots` of the page."""
    lines: list[Mark] = []
    lengths: list[Mark] = []
    drawn_so: list[tuple[Point, Point]] = []
    longest_first = sorted(figures, key=lambda ends: -math.dist(*(spots[one] for one in ends)))
    for start, finish in longest_first:
        words = figures[start, finish]
        ends = _parted((spots[start], spots[finish]), drawn_so, middle)
        drawn_so.append(ends)
        lines += [Polyline(ends, ink) for ink in (UNDER, TAPED)]
        for spot, end in zip((spots[start], spots[finish]), ends, strict=True):
            lines += [Polyline((spot, end), FROM_JOINT)] if spot != end else []
        box = _length_box(*ends, words, [*spots.values()], blocked)
        lengths += _length(box, words)
        blocked.append(box)
    return [*lines, *lengths]


def _parted(
    ends: tuple[Point, Point], others: Sequence[tuple[Point, Point]], middle: Point
) -> tuple[Point, Point]:
    """A line moved towards the middle of the picture, as often as it takes, until it lies on none
    of the others."""
    (x0, y0), (x1, y1) = ends
    length = math.dist(*ends)
    across = (-(y1 - y0) / length, (x1 - x0) / length)
    inward = (middle[0] - (x0 + x1) / 2) * across[0] + (middle[1] - (y0 + y1) / 2) * across[1]
    by = math.copysign(PARTED_PT, inward)
    moved = ends
    while any(_lies_along(moved, other) for other in others):
        a, b = ((x + by * across[0], y + by * across[1]) for x, y in moved)
        moved = (a, b)
    return moved


def _lies_along(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    """Whether a line lies on a longer one, as far as can be seen."""
    (x0, y0), (x1, y1) = other
    length = math.dist(*other)
    along, across = ((x1 - x0) / length, (y1 - y0) / length), (-(y1 - y0), x1 - x0)
    off = [((x - x0) * across[0] + (y - y0) * across[1]) / length for x, y in one]
    run = [(x - x0) * along[0] + (y - y0) * along[1] for x, y in one]
    apart = max(run) <= PARTED_PT or min(run) >= length - PARTED_PT
    return max(map(abs, off)) < PARTED_PT / 2 and not apart


def _length_box(
    start: Point, finish: Point, words: str, spots: Sequence[Point], taken: Sequence[Box]
) -> Box:
    """The box of the length of a line, where it covers least."""
    half, tall = text_width(words, FIGURE_PT, bold=True) / 2 + 2, FIGURE_PT
    boxes = []
    for share in ALONG:
        x, y = (a + (b - a) * share for a, b in zip(start, finish, strict=True))
        boxes.append((x - half, y - tall / 2 - 1, x + half, y + tall / 2 + 1))
    held = [*taken, *((x - 6, y - 6, x + 6, y + 6) for x, y in spots)]
    return min(boxes, key=lambda one: sum(boxes_meet(one, other) for other in held))


def _length(box: Box, words: str) -> list[Mark]:
    at = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2 - FIGURE_PT * 0.36)
    plate = rounded_box(box, 2.0, Ink(fill="#FFFFFF"))
    return [plate, Label(at, words, FIGURE_PT, DARK, bold=True)]


def boxes_meet(one: Box, other: Box) -> bool:
    """Whether two boxes have paper in common."""
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
