"""The map of rings stacked on one another with zigzags between: unrolled, as seen from outside.

Each ring is a level row, the lowest at the foot. Where the rings are slit, the first joints of a
row are drawn again, pale, at its other end.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from buildplan.drawing.line_art import INK, SOFT, toward
from buildplan.drawing.map_style import chain_style, joint_marks, joint_radius, link_marks
from buildplan.drawing.maps.graph_layout import CLEAR
from buildplan.drawing.maps.legend import Item, Sign, chain_items, legend
from buildplan.drawing.marks import Label, Mark, Picture, Point
from buildplan.drawing.way_round import pointed
from buildplan.framework.chain_roles import RING, ZIGZAG
from buildplan.framework.model import Framework, Link, LongChain
from buildplan.language.voice import Voice

LARGEST_STEP, LARGEST_RISE, LEAST_RISE_GAP = 70.0, 50.0, 10.0
LETTERS = 28.0  # room at the left for the chains' letters
EDGE, HALF = 4.0, 0.5


def is_stacked(framework: Framework) -> bool:
    """Whether a piece is rings of so many balloons each, and a zigzag between every two."""
    rings = _chains(framework, ZIGZAG.name, without=True)
    zigzags = _chains(framework, ZIGZAG.name)
    around = {len(long.chain.links) for long in rings}
    return (
        all(long.role == RING and long.chain.closed for long in rings)
        and len(zigzags) == len(rings) - 1
        and len(around) == 1
        and {2 * count for count in around} == {len(long.chain.links) for long in zigzags}
    )


def _chains(framework: Framework, role: str, *, without: bool = False) -> list[LongChain]:
    return [long for long in framework.chains if (long.role.name == role) is not without]


@dataclass(frozen=True)
class _Sheet:
    """One sheet: rings from number `first` (from 0) to `last`, and its measures in points."""

    framework: Framework
    first: int
    last: int
    radius: float
    step: float
    rise: float
    right: float
    low: float

    @cached_property
    def rings(self) -> list[LongChain]:
        """The rings from the foot up."""
        return _chains(self.framework, RING.name)

    @cached_property
    def ring_of(self) -> dict[str, int]:
        """The number of each joint's ring."""
        return {joint: n for n, ring in enumerate(self.rings) for joint in ring.chain.joints}

    @cached_property
    def around(self) -> int:
        """How many balloons go round."""
        return len(self.rings[0].chain.links)

    @cached_property
    def round_by(self) -> dict[str, float]:
        """How far round from the slit each joint is, in balloons: a zigzag goes on by half a
        balloon with each of its own."""
        found = {joint: float(n) for n, joint in enumerate(self.rings[0].chain.joints)}
        for ring, zigzag in zip(self.rings[1:], _chains(self.framework, ZIGZAG.name), strict=True):
            below, above = zigzag.chain.joints[:2]
            joints = ring.chain.joints
            from_first = found[below] + HALF - joints.index(above)
            found |= {joint: (from_first + n) % self.around for n, joint in enumerate(joints)}
        return found

    def spot(self, joint: str, again: bool = False) -> Point:
        """Where a joint is drawn. Seen from outside, numbers that run clockwise from above run from
        right to left."""
        turned = self.round_by[joint] + self.around * again
        return (
            self.right - self.step * turned,
            self.low + self.rise * (self.ring_of[joint] - self.first),
        )

    def marks(self) -> Iterator[Mark]:
        """Lines, then discs, then the letters of the chains."""
        repeated: set[str] = set()
        way = []
        for number, long in enumerate(self.framework.chains):
            rows = {self.ring_of[joint] for joint in long.chain.joints}
            if not (self.first <= min(rows) and max(rows) <= self.last):
                continue
            begun_before = self.first > 0 and max(rows) == self.first
            for id_ in long.chain.links:
                link = self.framework.link[id_]
                a, b = self._ends(link, repeated)
                yield from link_marks(a, b, chain_style(number), repeat=begun_before)
            if long.role == RING and not begun_before:
                one, two = (self.spot(joint) for joint in long.chain.joints[:2])
                if one[0] > two[0]:  # not where the slit parts them
                    way.append((toward(one, two, self.radius), toward(two, one, self.radius)))
            height = self.low + self.rise * (sum(rows) / len(rows) - self.first)
            size, ink = (11.0, INK) if long.role == RING else (9.0, SOFT)
            bold = long.role == RING
            yield Label((0.0, height - size * 0.36), long.letter, size, ink, "start", bold=bold)
        for ends in way:
            yield from pointed(ends)
        yield from self._discs(repeated)

    def _ends(self, link: Link, repeated: set[str]) -> tuple[Point, Point]:
        """Where a link is drawn: over the slit to a joint drawn again, which is added to those."""
        there = {joint: self.round_by[joint] for joint in (link.start, link.finish)}
        if abs(there[link.start] - there[link.finish]) <= 1.0:
            return self.spot(link.start), self.spot(link.finish)
        low = min(there, key=lambda joint: there[joint])
        repeated.add(low)
        return self.spot(link.start, link.start == low), self.spot(link.finish, link.finish == low)

    def _discs(self, repeated: set[str]) -> Iterator[Mark]:
        for joint, ring in self.ring_of.items():
            if not self.first <= ring <= self.last:
                continue
            before = self.first > 0 and ring == self.first
            locked = joint in self.framework.lock_at and not before
            yield from joint_marks(
                self.spot(joint), self.radius, joint, skipped=False, locked=locked, repeat=before
            )
            if joint in repeated:
                at = self.spot(joint, again=True)
                yield from joint_marks(
                    at, self.radius, joint, skipped=False, locked=False, repeat=True
                )


def stacked_map(
    framework: Framework, width: float, height: float, voice: Voice, alt: str
) -> tuple[Picture, ...]:
    """The map on as many sheets as it takes, the ring that a sheet begins with drawn again; none
    where the discs of a ring would not stand clear of one another. `alt` is said of each."""
    radius, rings = joint_radius(framework), _chains(framework, RING.name)
    around = len(rings[0].chain.links)
    step = min(LARGEST_STEP, (width - LETTERS - 2 * (radius + EDGE)) / (around + HALF))
    if step < 2 * radius + CLEAR:
        return ()
    key_height, key = legend(_legend_items(framework, voice), width)
    room = height - key_height - 2 * (radius + EDGE)
    rises = len(rings) - 1
    fit = max(1, int(room // (2 * radius + LEAST_RISE_GAP)))
    on_each = -(-rises // -(-rises // fit))
    rise = min(LARGEST_RISE, room / on_each)
    low, right = key_height + radius + EDGE, LETTERS + radius + EDGE + step * (around + HALF)
    sheet = _Sheet(framework, 0, 0, radius, step, rise, right, low)
    pictures = []
    for first in range(0, rises, on_each):
        here = replace(sheet, first=first, last=min(first + on_each, rises))
        tall = low + rise * (here.last - first) + radius + EDGE
        pictures.append(Picture(width, tall, (*key, *here.marks()), alt))
    return tuple(pictures)


def _legend_items(framework: Framework, voice: Voice) -> list[Item]:
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    items.append((Sign.AGAIN, voice.say_in("legend", "drawn again")))
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    items.append((Sign.WAY, voice.say_in("legend", "from joint 1 to joint 2")))
    named = [
        voice.say_in("legend", "chain {letter}", letter=long.letter) for long in framework.chains
    ]
    return [*items, *chain_items(framework, named, voice)]
