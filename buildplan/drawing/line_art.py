"""Shapes that the diagrams are built of: balloons in outline, ropes, arrows, discs, locks.

Lengths are points. Every function returns marks from back to front.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from buildplan.drawing.marks import Circle, Curve, Ink, Label, Mark, Point, Polyline

INK = "#1F2A33"
SOFT = "#55616B"
PALE = "#B4BCC3"
WASH = "#E6EAED"
PAPER = "#FFFFFF"
TYPE = 8.0  # the smallest type in any diagram, at its printed size


def toward(start: Point, finish: Point, distance: float) -> Point:
    """The point `distance` from `start` on the way to `finish`."""
    dx, dy = finish[0] - start[0], finish[1] - start[1]
    length = math.hypot(dx, dy) or 1.0
    return (start[0] + dx * distance / length, start[1] + dy * distance / length)


def between(start: Point, finish: Point, share: float = 0.5) -> Point:
    """The point `share` of the way from `start` to `finish`."""
    return (
        start[0] + (finish[0] - start[0]) * share,
        start[1] + (finish[1] - start[1]) * share,
    )


def smooth(points: Sequence[Point], ink: Ink, closed: bool = False) -> Curve:
    """A curve through `points` (Catmull-Rom, written as cubic Bezier pieces)."""
    count = len(points)
    pieces = []
    for i in range(count if closed else count - 1):
        if closed:
            p0, p1, p2, p3 = (points[(i + k) % count] for k in (-1, 0, 1, 2))
        else:
            p0, p1, p2, p3 = (points[min(max(i + k, 0), count - 1)] for k in (-1, 0, 1, 2))
        pieces.append(
            (
                (p1[0] + (p2[0] - p0[0]) / 6, p1[1] + (p2[1] - p0[1]) / 6),
                (p2[0] - (p3[0] - p1[0]) / 6, p2[1] - (p3[1] - p1[1]) / 6),
                p2,
            )
        )
    return Curve(points[0], tuple(pieces), ink, closed)


def arc(
    centre: Point, radius: float, from_deg: float, to_deg: float, ink: Ink, flat: float = 1.0
) -> Curve:
    """An arc of a circle (of an ellipse, `flat` times as high as wide), by cubic Bezier
    pieces of at most 45 degrees: at that step the radius is true within 1 part in 200 000."""
    count = max(1, math.ceil(abs(to_deg - from_deg) / 45 - 1e-9))
    step = math.radians(to_deg - from_deg) / count
    handle = 4 / 3 * math.tan(step / 4)

    def at(angle: float, along: float = 0.0) -> Point:
        cos, sin = math.cos(angle), math.sin(angle)
        return (
            centre[0] + radius * (cos - along * sin),
            centre[1] + radius * flat * (sin + along * cos),
        )

    first = math.radians(from_deg)
    pieces = tuple(
        (
            at(first + i * step, handle),
            at(first + (i + 1) * step, -handle),
            at(first + (i + 1) * step),
        )
        for i in range(count)
    )
    return Curve(at(first), pieces, ink)


def arrow(points: Sequence[Point], ink: Ink, head: float = 5.0) -> tuple[Mark, ...]:
    """A plain thin arrow along a smooth curve through `points`, with an open head."""
    tip, back = points[-1], points[-2]
    angle = math.atan2(tip[1] - back[1], tip[0] - back[0])
    barbs = [
        (tip[0] - head * math.cos(angle + turn), tip[1] - head * math.sin(angle + turn))
        for turn in (0.45, -0.45)
    ]
    solid = Ink(stroke=ink.stroke, width=ink.width)
    return (smooth(points, ink), Polyline((barbs[0], tip, barbs[1]), solid))


def link_outline(start: Point, finish: Point, width: float, ink: Ink) -> Curve:
    """A link balloon from knot to knot: a rounded body drawn in to a nozzle at both ends."""
    dx, dy = finish[0] - start[0], finish[1] - start[1]
    length = math.hypot(dx, dy)
    ux, uy = dx / length, dy / length
    half, nozzle = width / 2, min(width * 0.09, 2.2)
    end = min(0.07 * length, width * 0.22)
    body = min(length / 2 - end, width * 0.9)

    def p(u: float, v: float) -> Point:
        return (start[0] + u * ux - v * uy, start[1] + u * uy + v * ux)

    # half of one side, as (along, across) from the knot; the rest mirrors it
    quarter = [
        ((0.0, nozzle), (end * 0.5, nozzle), (end * 0.8, nozzle), (end, nozzle * 1.3)),
        (
            (end, nozzle * 1.3),
            (end + body * 0.12, half * 0.62),
            (end + body * 0.45, half),
            (end + body, half),
        ),
    ]
    there = [piece[1:] for piece in quarter]
    back = [tuple((length - u, v) for u, v in reversed(piece[:-1])) for piece in reversed(quarter)]
    edge = (length - end - body, half)
    upper = [*there, ((end + body, half), edge, edge), *back]
    lower = [tuple((length - u, -v) for u, v in piece) for piece in upper]
    across = ((length, nozzle), (length, -nozzle), (length, -nozzle))
    outline = [*upper, across, *lower]
    pieces = tuple((p(*a), p(*b), p(*c)) for a, b, c in outline)
    return Curve(p(0, nozzle), pieces, ink, closed=True)


def rope(
    points: Sequence[Point],
    width: float,
    fill: str,
    edge: str = INK,
    gap: float = 0.0,
    ends: bool = False,
) -> tuple[Mark, ...]:
    """A neck or tail drawn as a thick band along `points`, its two edges inked.

    With `gap`, paper is left bare on both sides of the band, so that what was drawn before
    goes visibly under it. With `ends`, the band is closed off at both ends.
    """
    left: list[Point] = []
    right: list[Point] = []
    wide_left: list[Point] = []
    wide_right: list[Point] = []
    last = len(points) - 1
    for i, (x, y) in enumerate(points):
        (x0, y0), (x1, y1) = points[max(i - 1, 0)], points[min(i + 1, last)]
        length = math.hypot(x1 - x0, y1 - y0) or 1.0
        nx, ny = -(y1 - y0) / length, (x1 - x0) / length
        for side, half in ((left, width / 2), (wide_left, width / 2 + gap)):
            side.append((x + nx * half, y + ny * half))
        for side, half in ((right, width / 2), (wide_right, width / 2 + gap)):
            side.append((x - nx * half, y - ny * half))
    marks: list[Mark] = []
    if gap:
        # short of the ends, so that the band's own other stretches are not cut
        bare = (*wide_left[2:-2], *reversed(wide_right[2:-2]))
        marks.append(Polyline(bare, Ink(fill=PAPER), closed=True))
    marks.append(Polyline((*left, *reversed(right)), Ink(fill=fill), closed=True))
    line = Ink(stroke=edge, width=0.9)
    if ends:
        marks.append(Polyline((*left, *reversed(right)), line, closed=True))
    else:
        marks += [Polyline(tuple(left), line), Polyline(tuple(right), line)]
    return tuple(marks)


def disc(
    centre: Point, radius: float, text: str, fill: str, colour: str, rim: Ink
) -> tuple[Mark, ...]:
    """A joint's disc with its label inside."""
    return (
        Circle(centre, radius, Ink(fill=fill, stroke=rim.stroke, width=rim.width, dash=rim.dash)),
        Label((centre[0], centre[1] - TYPE * 0.35), text, TYPE, colour, bold=True),
    )


def lock_mark(at: Point, radius: float, turn_deg: float = 45.0) -> tuple[Mark, ...]:
    """The sign of a lock: two small rounds side by side, centred on `at`."""
    dx = radius * math.cos(math.radians(turn_deg))
    dy = radius * math.sin(math.radians(turn_deg))
    ink = Ink(fill=PAPER, stroke=INK, width=0.8)
    return (
        Circle((at[0] - dx, at[1] - dy), radius, ink),
        Circle((at[0] + dx, at[1] + dy), radius, ink),
    )
