"""How the work goes, drawn into a close-up: where it begins, the way round, the order of the
joints, the knot that closes it, the hand from below, the twist of a lock."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from buildplan.drawing.fonts import text_width
from buildplan.drawing.labels import DARK, PAD_X, PAD_Y, TIE_RADIUS, Tag, rounded_box
from buildplan.drawing.later_locks import HIGH_PT, later_sign, later_width
from buildplan.drawing.line_art import between, smooth
from buildplan.drawing.marks import (
    Box,
    Circle,
    Curve,
    Ink,
    Inset,
    Label,
    Mark,
    MarkData,
    Picture,
    Point,
    Polyline,
)
from buildplan.framework.model import Framework

PAPER = "#FFFFFF"
WAY = "#B3261E"  # the way of the hands; no balloon's outline has this colour
HEAD_PT, TWIST_HEAD_PT = 5.5, 3.8
START_RING_PT = 6.2
LOCK_PT = 28.0  # what a lock takes, between joints that are apart
# A way keeps so far to the inside of the balloons it runs along, of their length.
INWARD = 0.17
KNOT_PT, HAND_PT = 9.0, 13.0


@dataclass(frozen=True)
class TiedRow:
    """The joints at which one short chain is tied, in the order of the work; closed, its end
    is tied to its start."""

    joints: tuple[str, ...]
    closed: bool

    @property
    def runs(self) -> tuple[tuple[str, str], ...]:
        """From which joint to which each of its balloons goes."""
        ends = (*self.joints[1:], *self.joints[:1]) if self.closed else self.joints[1:]
        return tuple(zip(self.joints, ends, strict=False))


def way_marks(rows: Sequence[TiedRow], spots: Mapping[str, Point]) -> list[Mark]:
    """An arrow along every balloon of the rows, inside them, and a ring where each begins."""
    marks: list[Mark] = []
    for row in rows:
        places = [spots[joint] for joint in row.joints]
        middle = (
            math.fsum(x for x, _ in places) / len(places),
            math.fsum(y for _, y in places) / len(places),
        )
        for start, finish in row.runs:
            marks += _along(spots[start], spots[finish], middle)
        marks.append(Circle(places[0], START_RING_PT, Ink(stroke=PAPER, width=3.2)))
        marks.append(Circle(places[0], START_RING_PT, Ink(stroke=WAY, width=1.6)))
    return marks


def _along(start: Point, finish: Point, middle: Point) -> list[Mark]:
    """An arrow along a balloon from joint to joint, bent to the side of `middle`."""
    dx, dy = finish[0] - start[0], finish[1] - start[1]
    length = math.hypot(dx, dy)
    if length < 3 * TIE_RADIUS:
        return []
    nx, ny = -dy / length, dx / length
    half = between(start, finish)
    if (middle[0] - half[0]) * nx + (middle[1] - half[1]) * ny < 0:
        nx, ny = -nx, -ny

    def at(share: float, bend: float) -> Point:
        x, y = between(start, finish, share)
        return (x + nx * bend * length, y + ny * bend * length)

    least = min(0.3, (TIE_RADIUS + 3.0) / length)
    return pointed([at(least, 0.06), at(0.5, INWARD), at(1 - least - 0.06, 0.08)])


def pointed(
    points: Sequence[Point], colour: str = WAY, width: float = 1.5, head_pt: float = HEAD_PT
) -> list[Mark]:
    """A smooth arrow through points, with bare paper beside it and a filled head."""
    (bx, by), tip = points[-2], points[-1]
    angle = math.atan2(tip[1] - by, tip[0] - bx)
    barbs = [
        (tip[0] - head_pt * math.cos(angle + turn), tip[1] - head_pt * math.sin(angle + turn))
        for turn in (0.42, -0.42)
    ]
    head = (barbs[0], tip, barbs[1])
    neck = (tip[0] - 0.7 * head_pt * math.cos(angle), tip[1] - 0.7 * head_pt * math.sin(angle))
    line = [*points[:-1], neck]
    return [
        smooth(line, Ink(stroke=PAPER, width=width + 2.0)),
        Polyline(head, Ink(fill=PAPER, stroke=PAPER, width=2.0), closed=True),
        smooth(line, Ink(stroke=colour, width=width)),
        Polyline(head, Ink(fill=colour, stroke=colour, width=0.5), closed=True),
    ]


def meetings(framework: Framework, joints: Collection[str]) -> list[tuple[str, ...]]:
    """Those of some joints that ties bring together with one another, a tie after the other."""
    ties = dict.fromkeys(framework.tie_of[one] for one in joints if one in framework.tie_of)
    met = (tuple(joint for joint in tie.joints if joint in joints) for tie in ties)
    return [together for together in met if len(together) > 1]


def brought_together(framework: Framework, spots: Mapping[str, Point]) -> list[Mark]:
    """Lines between the joints, at `spots`, that a tie brings together, where they are apart."""
    marks: list[Mark] = []
    for line in _lines_between(framework, spots):
        marks.append(Polyline(line, Ink(stroke=PAPER, width=2.6)))
        marks.append(Polyline(line, Ink(stroke=WAY, width=1.2, dash=(3.0, 2.2))))
    return marks


def boxes_between(framework: Framework, spots: Mapping[str, Point]) -> list[Box]:
    """The boxes of those lines, with the lock that stands on each."""
    found = []
    for line in _lines_between(framework, spots):
        xs, ys = zip(*line, strict=True)
        middle = (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2
        wide, high = max(LOCK_PT, max(xs) - min(xs) - 12), max(LOCK_PT, max(ys) - min(ys) - 12)
        found.append(
            (
                middle[0] - wide / 2,
                middle[1] - high / 2,
                middle[0] + wide / 2,
                middle[1] + high / 2,
            )
        )
    return found


def _lines_between(framework: Framework, spots: Mapping[str, Point]) -> Iterator[tuple[Point, ...]]:
    for joints in meetings(framework, spots):
        line = tuple(spots[joint] for joint in joints)
        if math.dist(line[0], line[-1]) > 1:
            yield line


def twist(joint: str, spot: Point, radius: float) -> Inset:
    """The way in which the two rounds of a lock are twisted round their joint: half a turn and
    more, the one over the other."""
    size = 2 * radius + 2 * HEAD_PT
    middle = size / 2
    points = [
        (
            middle + radius * math.cos(math.radians(angle)),
            middle + radius * math.sin(math.radians(angle)),
        )
        for angle in range(200, -66, -19)
    ]
    data: MarkData = (("lock", joint),)
    return Inset(
        Picture(size, size, tuple(pointed(points, DARK, 1.1, TWIST_HEAD_PT)), "", data),
        (spot[0] - middle, spot[1] - middle),
    )


def hand_below(joint: str, spot: Point, clear_pt: float = 3.0) -> Inset:
    """A hand that comes up from below to a joint that lies on the floor, so far from it."""
    u = HAND_PT / 10
    wide, high = 10 * u, 14 * u
    # palm and wrist, and four fingers that close on the joint
    outline = [(3, 0), (3, 4), (0.9, 6.4), (1.4, 7.6), (3, 6.8), (2.9, 11.3), (4.2, 11.4)]
    outline += [(4.5, 8.2), (4.7, 12.4), (6.0, 12.4), (6.1, 8.2), (6.5, 11.6), (7.7, 11.3)]
    outline += [(7.7, 5), (7, 3.6), (7, 0)]
    shape = smooth(
        [(x * u, y * u) for x, y in outline], Ink(fill="#FFFFFF", stroke=DARK, width=0.9)
    )
    data: MarkData = (("hand", "from below"), ("at", joint))
    hand = Picture(wide, high, (shape,), "", data)
    return Inset(hand, (spot[0] - wide / 2, spot[1] - high - clear_pt))


def knot_sign(joint: str, closes: bool) -> Picture:
    """The sign of the knot that ends a row: a loop with its two ends crossed."""
    r, half = KNOT_PT / 2, 0.5
    loop: list[Point] = [(1.6, 1.6), (6.4, 5.2), (5.6, 7.8), (3.4, 7.8), (2.6, 5.2), (7.4, 1.6)]
    data: MarkData = (("knot", "closing" if closes else "end"), ("at", joint))
    return Picture(
        KNOT_PT,
        KNOT_PT,
        (
            Circle((r, r), r - half, Ink(fill=PAPER, stroke=WAY, width=0.8)),
            smooth(loop, Ink(stroke=WAY, width=1.1)),
        ),
        "",
        data,
    )


@dataclass(frozen=True)
class Order:
    """What the rows say of each joint: its place in the order, and the knot that ends a row; and
    the brace that its lock comes with, if it waits (`later`)."""

    place: Mapping[str, int]
    knot: Mapping[str, bool]
    row: Mapping[str, int]
    later: Mapping[str, int] = field(default_factory=dict)

    def wider(self, joint: str, size: float) -> float:
        """How much wider the joint's tag is for it."""
        wide = badge_width(self.place[joint], size) if joint in self.place else 0.0
        waits = later_width(self.later[joint]) + 1.5 if joint in self.later else 0.0
        return wide + waits + (KNOT_PT + 1.5 if joint in self.knot else 0.0)


def order_of(
    rows: Sequence[TiedRow],
    numbered: Mapping[str, int] | None = None,
    later: Mapping[str, int] | None = None,
) -> Order:
    """The order of the joints of rows that are tied one after the other; a joint that comes
    again, or is `numbered`, keeps the place that it has."""
    place: dict[str, int] = dict(numbered or {})
    for row in rows:
        for joint in row.joints:
            place.setdefault(joint, len(place) + 1)
    ends = [(row.joints[0], True) if row.closed else (row.joints[-1], False) for row in rows]
    tied = any(len(row.joints) > 1 for row in rows)
    row_of = {joint: i for i, row in reversed(list(enumerate(rows, 1))) for joint in row.joints}
    return Order(place, dict(ends) if tied else {}, row_of if tied else {}, later or {})


def badge_width(number: int, size: float) -> float:
    """Width of a joint's number in the order, on its dark ground."""
    return text_width(str(number), size, bold=True) + 2 * PAD_X


def ordered_tags(tags: Sequence[Tag], order: Order) -> list[Mark]:
    """Joints' tags, each with its number in the order before it and its knot after it."""
    marks: list[Mark] = []
    for tag in tags:
        left, low, right, high = tag.box
        place = order.place.get(tag.text)
        data: MarkData = (("joint", tag.text),)
        marks.append(rounded_box(tag.box, 2.6, Ink(fill=PAPER, stroke=DARK, width=0.6)))
        if place is not None:
            data = (*data, ("order", str(place)))
            if tag.text in order.row:
                data = (*data, ("row", str(order.row[tag.text])))
            edge = left + badge_width(place, tag.size)
            marks.append(rounded_box((left, low, edge, high), 2.6, Ink(fill=WAY)))
            middle = (left + edge) / 2
            marks.append(
                Label((middle, low + PAD_Y), str(place), tag.size, colour=PAPER, bold=True)
            )
            left = edge
        if tag.text in order.knot:
            right -= KNOT_PT + 1.5
            sign = knot_sign(tag.text, order.knot[tag.text])
            marks.append(Inset(sign, (right, (low + high - KNOT_PT) / 2)))
        if tag.text in order.later:
            waits = later_sign(tag.text, order.later[tag.text])
            right -= waits.width + 1.5
            marks.append(Inset(waits, (right, (low + high - HIGH_PT) / 2)))
        at = ((left + right) / 2, low + PAD_Y)
        marks.append(Label(at, tag.text, tag.size, colour=DARK, bold=True, data=data))
    return marks


def stub(spot: Point, away: Point, length: float, width: float, ink: Ink) -> Curve:
    """A chain's balloon that goes on from a joint, its body not drawn: what of it comes out
    of the knot, in outline, `length` long and `width` wide where it breaks off."""
    (x, y), (ux, uy) = spot, away

    def at(along: float, across: float) -> Point:
        return (x + ux * along - uy * across, y + uy * along + ux * across)

    half = width / 2
    side = [(0.0, 1.2), (0.12 * length, 1.4), (0.4 * length, 0.45 * half), (length, half)]
    back = [(length * 1.1, 0.6 * half), (length * 0.97, 0.2 * half), (length * 1.08, -0.3 * half)]
    points = [at(a, b) for a, b in (*side, *back)] + [at(a, -b) for a, b in reversed(side)]
    return smooth(points, ink)
