"""The map of what closes round its middle, a solid or a globe: azimuthal equidistant projections
(Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395, 1987, chapter 25), centred
over it and, where a joint lies near the point below it, also under it. Both are drawn as one looks
down on the piece, for whoever builds it does: what is under it is opened out like a flower.

A joint's distance from the centre of a map is its angle from the line through the middle, and its
bearing is true; a level of joints is a circle. Balloons are great circles between their joints:
two that do not cross on the piece do not cross on the map.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, between
from buildplan.drawing.map_style import SINGLE, LinkStyle
from buildplan.drawing.map_words import all_chains_words
from buildplan.drawing.maps.blocks import (
    ON_LINE,
    DrawnJoint,
    DrawnLink,
    MapBlock,
    MapNames,
    chain_numbers,
    letter_on_line,
    moved,
)
from buildplan.drawing.maps.clearance import from_line, is_clear
from buildplan.drawing.maps.legend import Item, Sign, role_items
from buildplan.drawing.maps.round_piece import SAMPLES, Half, RoundPiece
from buildplan.drawing.maps.sheets import FlatPlan
from buildplan.drawing.marks import Label, Mark, Point
from buildplan.framework.chain_roles import OPEN_CHAIN, RING, ZIGZAG, ChainRole
from buildplan.framework.model import Link
from buildplan.language.voice import Voice
from buildplan.sequence.courses import loose_chains
from buildplan.shape.model import FloatArray

RING_LINE, ZIGZAG_LINE = LinkStyle(2.2), LinkStyle(1.6, (8, 2.5))
OPEN_LINE, LOOSE_LINE = LinkStyle(2.2, (8, 2.5, 2, 2.5)), LinkStyle(1.3, (1.6, 2.2))
STYLES: Mapping[ChainRole, LinkStyle] = {
    RING: RING_LINE,
    ZIGZAG: ZIGZAG_LINE,
    OPEN_CHAIN: OPEN_LINE,
}
SIZES = (90.0, 240.0)  # least and most radius of a map, in points
HEAD = 17.0  # what a map is called, over it
STRAIGHT = 0.6  # points by which a line may be off a great circle that is drawn straight
GROWING = 12.0  # points by which a map is drawn larger until it can be read


def round_plan(piece: RoundPiece, names: MapNames, voice: Voice) -> FlatPlan | None:
    """The map of a round piece; None where it cannot be read: two lines cross or lie in a disc, or
    a chain has no line long enough for its letter."""
    framework = piece.framework
    maps = RoundMaps(piece, names, voice)
    if not maps.can_be_read:
        return None
    loose = loose_chains(framework)
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    if len(piece.halves) > 1:
        items.append((Sign.AGAIN, voice.say_in("legend", "drawn again")))
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    named = [long for long in framework.chains if long.letter not in loose]
    items += role_items(named, STYLES, names, voice)
    if loose:
        told = voice.say_in("legend", "single balloon, called by its two joints")
        items.append((LOOSE_LINE, told))
    if framework.singles:
        items.append((SINGLE, voice.say_in("legend", "single")))
    told = (
        voice.say(
            "Its top is in the middle, as it is seen from above; the further out a joint is, the "
            "lower it lies."
        )
        if len(piece.halves) == 1
        else voice.say(
            "Both halves as you look down on them, opened out: the lower half with its foot in the "
            "middle, the upper half with its top in the middle. The outermost joints of both are "
            "the same."
        )
    )
    return FlatPlan(framework, names, told, items, all_chains_words(framework, voice), maps.blocks)


@dataclass(frozen=True)
class RoundMaps:
    """The maps of a round piece, drawn at any size."""

    piece: RoundPiece
    names: MapNames
    voice: Voice

    @property
    def radius(self) -> float:
        """Radius of a joint's disc."""
        return self.names.radius(self.piece.framework.joints)

    @property
    def can_be_read(self) -> bool:
        """Whether the maps, as large as they are drawn, can be read."""
        return self._is_clear(SIZES[1])

    def blocks(self, share: float, width: float, height: float) -> list[MapBlock]:
        """The maps, at most so wide and so high, but no smaller than they can be read."""
        most = min(width / 2, (height - HEAD) / 2) - self.radius - 4
        size = SIZES[0] + share * (SIZES[1] - SIZES[0])
        if size <= most or not self._is_clear(most):
            while size < SIZES[1] and not self._is_clear(size):
                size += GROWING
        if size > most > 0 and self._is_clear(most):
            size = most
        return [self._half(half, size) for half in self.piece.halves]

    def _is_clear(self, size: float) -> bool:
        """Whether the maps can be read at a radius, and every chain has its letter on a line."""
        if size <= 0:
            return False
        halves = [self._half(half, size) for half in self.piece.halves]
        lettered = {mark.text for one in halves for mark in one.notes if isinstance(mark, Label)}
        loose = loose_chains(self.piece.framework)
        wanted = {long.letter for long in self.piece.framework.chains} - loose
        named = lettered >= set(map(self.names.short, wanted))
        return named and all(is_clear(one, self.radius) for one in halves)

    @cached_property
    def _farthest_deg(self) -> float:
        """How far from the middle of its map anything lies."""
        piece = self.piece
        return max(
            math.degrees(math.acos(np.clip(-one[1] if half.from_below else one[1], -1, 1)))
            for half in piece.halves
            for link in (*half.links, *half.links_again)
            for one in piece.way(link)
        )

    def _half(self, half: Half, size: float) -> MapBlock:
        """One map of the given radius, cut off where nothing is drawn."""
        piece, scale = self.piece, size / self._farthest_deg

        def spot(seen: FloatArray) -> Point:
            x, y, z = (float(value) for value in seen)
            level = math.hypot(x, z)
            if level < 1e-9:
                return (0.0, 0.0)
            angle = math.degrees(math.acos(np.clip(-y if half.from_below else y, -1, 1)))
            out = angle * scale / level
            return x * out, -z * out

        lines = [(link, False) for link in half.links] + [(x, True) for x in half.links_again]
        drawn = [self._line(link, again, spot) for link, again in lines]
        joints = [DrawnJoint(joint, spot(piece.seen[joint])) for joint in half.joints]
        joints += [DrawnJoint(joint, spot(piece.seen[joint]), True) for joint in half.joints_again]
        return self._cropped(half, drawn, joints)

    def _line(self, link: Link, again: bool, spot: Callable[[FloatArray], Point]) -> DrawnLink:
        start, *through, finish = (spot(one) for one in self.piece.way(link))
        bow = from_line(np.array(through), np.array([start, finish])).max()
        bent = tuple(through) if bow > STRAIGHT else ()
        return DrawnLink(link, start, finish, self._style[link.id], again, bent)

    @cached_property
    def _style(self) -> Mapping[str, LinkStyle]:
        loose = loose_chains(self.piece.framework)
        singles = dict.fromkeys(self.piece.framework.singles, SINGLE)
        return singles | {
            id_: LOOSE_LINE if long.letter in loose else STYLES[long.role]
            for long in self.piece.framework.chains
            for id_ in long.chain.links
        }

    def _letters(self, drawn: Sequence[DrawnLink]) -> Iterator[Mark]:
        """The letter of its chain on every line that has room for it."""
        framework = self.piece.framework
        chain, loose = chain_numbers(framework), loose_chains(framework)
        for line in drawn:
            if line.link.id not in chain:
                continue
            letter = framework.chains[chain[line.link.id]].letter
            short = self.names.short(letter)
            bare = math.dist(line.start, line.finish) - 2 * self.radius
            if (
                letter not in loose
                and not line.again
                and bare > text_width(short, ON_LINE, bold=True) + 4
            ):
                middle = line.through[SAMPLES // 2] if line.through else None
                yield from letter_on_line(middle or between(line.start, line.finish), short)

    def _cropped(
        self,
        half: Half,
        lines: Sequence[DrawnLink],
        joints: Sequence[DrawnJoint],
    ) -> MapBlock:
        piece = self.piece
        points = [*(joint.at for joint in joints), *(p for line in lines for p in line.points)]
        edge = self.radius + 4
        left, low = (min(p[axis] for p in points) - edge for axis in (0, 1))
        right, high = (max(p[axis] for p in points) + edge for axis in (0, 1))
        by = (-left, -low)

        def put(point: Point) -> Point:
            return point[0] + by[0], point[1] + by[1]

        title = (
            self.voice.say_in("view of the map", "Lower half, from above")
            if half.from_below
            else self.voice.say_in("view of the map", "Upper half, from above")
            if len(piece.halves) > 1
            else self.voice.say_in("view of the map", "From above")
        )
        head = Label((0, high - low + HEAD - 10), title, 10, INK, anchor="start", bold=True)
        return MapBlock(
            max(right - left, text_width(title, 10, bold=True)),
            high - low + HEAD,
            tuple(replace(joint, at=put(joint.at)) for joint in joints),
            tuple(line.moved(by) for line in lines),
            (*moved(self._letters(lines), by), head),
        )
