"""The map of what is rings stacked on one another with zigzags between them: unrolled, as it is
seen from outside, a ring a row.

Each ring is turned by half a step against the one below, so that a joint lies between the two
below it: on where the zigzag's second joint has the number of its first, back where it has the
next. Rings that all turn on make a plan that leans. What is too wide or too high is cut into tiles,
each of which begins with the ring or the joints with which the tile before it ends.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from buildplan.drawing.line_art import between
from buildplan.drawing.map_style import SINGLE, LinkStyle
from buildplan.drawing.map_words import all_chains_words
from buildplan.drawing.maps.blocks import DrawnJoint, DrawnLink, MapBlock, MapNames, end_letter
from buildplan.drawing.maps.cutting import cut_evenly
from buildplan.drawing.maps.legend import Item, Sign, role_items
from buildplan.drawing.maps.sheets import FlatPlan
from buildplan.drawing.maps.tie_map import singles_blocks
from buildplan.drawing.marks import Label, Mark, Point
from buildplan.drawing.way_round import pointed
from buildplan.framework.chain_roles import RING, ZIGZAG
from buildplan.framework.model import Framework, LongChain
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.shape.model import FloatArray

RING_LINE, ZIGZAG_LINE = LinkStyle(2.2), LinkStyle(1.6, (8, 2.5))
SIDE = 20.0  # room for a letter at each side
PITCHES = (8.0, 36.0)  # least and most bare line between two joints of a ring
ROW_GAPS = (29.5, 48.0)
FEWEST_RINGS = 3  # of a tile that leans no further than it must


@dataclass(frozen=True)
class StackedRings:
    """Rings from the lowest, and the zigzag between each two of them. `turned` says of each ring by
    how many half steps it is turned against the first; `leftwards` that the numbers run to the
    left, seen from outside; `upside_down` that the last ring is the lowest."""

    rings: tuple[LongChain, ...]
    zigzags: tuple[LongChain, ...]
    turned: tuple[int, ...]
    leftwards: bool = True
    upside_down: bool = False

    @property
    def around(self) -> int:
        """Joints of a ring."""
        return len(self.rings[0].chain.joints)

    def joint(self, ring: int, place: int) -> str:
        """The joint at a place round a ring, both from 0; after the last comes the first."""
        return self.rings[ring].chain.joints[place % self.around]

    def on(self, ring: int) -> int:
        """The half step on (1) or back (-1) from a ring to the one above it."""
        return self.turned[ring + 1] - self.turned[ring]

    def lean(self, low: int, high: int) -> float:
        """Steps between the joints 1 of two rings, or of any two between them, that are furthest
        apart."""
        turned = self.turned[low : high + 1]
        return (max(turned) - min(turned)) / 2


def stacked_rings(
    framework: Framework, at: Mapping[str, FloatArray] | None = None
) -> StackedRings | None:
    """The rings of a piece that is stacked rings; None for any other. `at` says where its joints
    are as it stands, with y up."""
    rings = tuple(long for long in framework.chains if long.role == RING)
    zigzags = tuple(long for long in framework.chains if long.role == ZIGZAG)
    if framework.braces or len(rings) < 2 or len(rings) + len(zigzags) != len(framework.chains):
        return None
    if len(zigzags) != len(rings) - 1:
        return None
    turned = [0]
    for (low, high), zigzag in zip(pairwise(rings), zigzags, strict=True):
        own, above, joints = low.chain.joints, high.chain.joints, zigzag.chain.joints
        if joints[0::2] != own or joints[1::2] not in (above, (*above[1:], above[0])):
            return None
        turned.append(turned[-1] + (1 if joints[1::2] == above else -1))
    if not all(long.chain.closed for long in framework.chains):
        return None
    if at is None:
        return StackedRings(rings, zigzags, tuple(turned))
    first, last = (np.array([at[j] for j in one.chain.joints]) for one in (rings[0], rings[-1]))
    off = first - first.mean(axis=0)
    clockwise = float(np.cross(off, np.roll(off, -1, axis=0))[:, 1].sum()) < 0
    lower = bool(first[:, 1].mean() <= last[:, 1].mean())
    return StackedRings(rings, zigzags, tuple(turned), clockwise, not lower)


def rings_plan(
    framework: Framework, stacked: StackedRings, names: MapNames, voice: Voice
) -> FlatPlan:
    """The map of stacked rings."""
    told = (
        voice.say(
            "Unrolled, as seen from outside. Each ring is a row; its numbers run to the left, and "
            "at the left edge joint 1 comes again."
        )
        if stacked.leftwards
        else voice.say(
            "Unrolled, as seen from outside. Each ring is a row; its numbers run to the right, and "
            "at the right edge joint 1 comes again."
        )
    )
    if stacked.turned[:3] == (0, 1, 0):
        lower, between, upper = (names.short(stacked.joint(ring, 0)) for ring in range(3))
        over = voice.say(
            "{upper} lies straight above {lower}, and so on in every second ring; {between} lies "
            "above the balloon from {lower} to {next}.",
            upper=upper,
            lower=lower,
            between=between,
            next=names.short(stacked.joint(0, 1)),
        )
        told = sentences(told, over)
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    items.append((Sign.AGAIN, voice.say_in("legend", "drawn again")))
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    items += role_items(framework.chains, {RING: RING_LINE, ZIGZAG: ZIGZAG_LINE}, names, voice)
    items.append((Sign.WAY, voice.say_in("legend", "numbers run")))
    if framework.singles:
        items.append((SINGLE, voice.say_in("legend", "single")))
    alt = all_chains_words(framework, voice)
    return FlatPlan(framework, names, told, items, alt, Unrolled(framework, stacked, names).blocks)


@dataclass(frozen=True)
class Unrolled:
    """The plan of stacked rings in lattice steps: a joint lies at its place round its ring, turned
    as that is."""

    framework: Framework
    stacked: StackedRings
    names: MapNames

    def blocks(self, share: float, width: float, height: float) -> list[MapBlock]:
        """Its tiles, at most so wide and so high."""
        radius = self.names.radius(self.framework.joints)
        room = width - 2 * (radius + SIDE)
        most = room / (2 * radius + PITCHES[0])
        rows = max(2, int((height - 2 * radius) / ROW_GAPS[0]) + 1)
        around, rings = self.stacked.around, len(self.stacked.rings)
        leaning = self.stacked.lean(0, min(FEWEST_RINGS, rings) - 1)
        places = min(around, max(2, int(most - leaning)))
        lean = max(most - places, 0.5)
        level = self.stacked.lean(0, rings - 1) <= lean
        rings_cut = cut_evenly(rings - 1, rows - 1 if level else min(rows - 1, int(2 * lean)))
        places_cut = cut_evenly(around, places)
        widest = max(b - a for a, b in places_cut) + max(
            self.stacked.lean(a, b) for a, b in rings_cut
        )
        tallest = max(b - a for a, b in rings_cut)
        pitch = min(2 * radius + PITCHES[0] + share * (PITCHES[1] - PITCHES[0]), room / widest)
        gap = ROW_GAPS[0] + share * (ROW_GAPS[1] - ROW_GAPS[0])
        gap = min(gap, (height - 2 * radius) / tallest)
        seen: set[str] = set()
        tiles = [
            RingTile(self, low, places, radius, pitch, gap).block(seen)
            for low in rings_cut
            for places in places_cut
        ]
        return [*tiles, *singles_blocks(self.framework, self.names, width, height)]


@dataclass(frozen=True)
class RingTile:
    plan: Unrolled
    ends: tuple[int, int]  # its lowest and highest ring
    places: tuple[int, int]  # the first and last joint of each, counted on from 0
    radius: float
    pitch: float
    gap: float

    @property
    def _width(self) -> float:
        steps = self.places[1] - self.places[0] + self.plan.stacked.lean(*self.ends)
        return steps * self.pitch + 2 * (self.radius + SIDE)

    @property
    def _height(self) -> float:
        return 2 * self.radius + 4 + (self.ends[1] - self.ends[0]) * self.gap

    def _at(self, ring: int, place: float) -> Point:
        turned = self.plan.stacked.turned
        furthest_back = min(turned[self.ends[0] : self.ends[1] + 1])
        steps = place - self.places[0] + (turned[ring] - furthest_back) / 2
        x = self.radius + SIDE + steps * self.pitch
        if self.plan.stacked.leftwards:
            x = self._width - x
        level = self.ends[1] - ring if self.plan.stacked.upside_down else ring - self.ends[0]
        return x, self.radius + 1 + level * self.gap

    def block(self, seen: set[str]) -> MapBlock:
        """The tile. `seen` names the joints and links that other tiles have drawn, and takes in
        those that this one draws."""
        links = tuple(self._links(seen))
        joints = tuple(self._joints(seen))
        return MapBlock(
            self._width, self._height, joints, links, tuple(self._letters()), tuple(self._way())
        )

    def _joints(self, seen: set[str]) -> Iterator[DrawnJoint]:
        for ring in range(self.ends[0], self.ends[1] + 1):
            for place in range(self.places[0], self.places[1] + 1):
                joint = self.plan.stacked.joint(ring, place)
                yield DrawnJoint(joint, self._at(ring, place), joint in seen)
                seen.add(joint)

    def _links(self, seen: set[str]) -> Iterator[DrawnLink]:
        stacked, around = self.plan.stacked, self.plan.stacked.around
        (low, high), (first, last) = self.ends, self.places
        for ring in range(low, high + 1):
            for place in range(first, last):
                ends = (ring, place), (ring, place + 1)
                yield self._link(stacked.rings[ring], place, ends, RING_LINE, seen)
        for ring in range(low, high):
            zigzag, back = stacked.zigzags[ring], int(stacked.on(ring) < 0)
            for place in range(first, last + 1):
                # balloon 2n of a zigzag goes up from joint n of the ring, the next one down again
                same = 2 * place - back
                level = [(ring, place), (ring + 1, place)][:: -1 if back else 1]
                yield self._link(zigzag, same % (2 * around), level, ZIGZAG_LINE, seen)
                if place < last:
                    over = (ring + 1 - back, place), (ring + back, place + 1)
                    yield self._link(zigzag, same + 1, over, ZIGZAG_LINE, seen)

    def _link(
        self,
        long: LongChain,
        number: int,
        ends: Sequence[tuple[int, int]],
        style: LinkStyle,
        seen: set[str],
    ) -> DrawnLink:
        link = self.plan.framework.link[long.chain.links[number]]
        again = link.id in seen
        seen.add(link.id)
        return DrawnLink(link, self._at(*ends[0]), self._at(*ends[1]), style, again)

    def _letters(self) -> Iterator[Label]:
        """Each chain's letter at both ends of its row."""
        stacked, short = self.plan.stacked, self.plan.names.short
        first, last = self.places
        reach = self.radius + 4
        for ring in range(self.ends[0], self.ends[1] + 1):
            ends = sorted((self._at(ring, first), self._at(ring, last)))
            letter = short(stacked.rings[ring].letter)
            yield end_letter((ends[0][0] - reach, ends[0][1]), letter, "end")
            yield end_letter((ends[1][0] + reach, ends[1][1]), letter, "start")
        for ring in range(self.ends[0], self.ends[1]):
            letter = short(stacked.zigzags[ring].letter)
            sides = [
                between(self._at(ring, place), self._at(ring + 1, place)) for place in (first, last)
            ]
            (left, low), (right, high) = sorted(sides)
            yield end_letter((left - 8, low), letter, "end")
            yield end_letter((right + 8, high), letter, "start")

    def _way(self) -> Iterator[Mark]:
        """In the lowest row of the first tile, the way the numbers run: from joint 1 to joint 2."""
        if self.places[0] or self.ends[0]:
            return
        (x, y), (to, _) = self._at(0, 0), self._at(0, 1)
        reach = math.copysign(self.radius + 1.5, to - x)
        yield from pointed([(x + reach, y), (to - reach, y)])
