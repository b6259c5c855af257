"""The map of a piece that its pattern draws flat, such as a letter: the front as it is seen, the
back behind it, up and to the side."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from buildplan.drawing.fonts import CAP_HEIGHT, text_width
from buildplan.drawing.line_art import TYPE, between
from buildplan.drawing.map_style import BRACE, SHARED, SINGLE, LinkStyle, brace_number, chain_style
from buildplan.drawing.map_words import chains_words, ties_words
from buildplan.drawing.maps.back_places import FlatGraph, larger_by, with_the_back_moved
from buildplan.drawing.maps.blocks import (
    DrawnJoint,
    DrawnLink,
    MapBlock,
    MapNames,
    chain_numbers,
)
from buildplan.drawing.maps.legend import Item, Sign, chain_items
from buildplan.drawing.maps.sheets import FlatPlan
from buildplan.drawing.marks import Point
from buildplan.framework.model import Brace, Framework, Link, Role
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

LEAST_LINK, LARGEST_LINK = 42.0, 66.0  # points
WISHED_LINK = 46.0  # the length in points for which the back is moved clear of the front
CLEAR = 2.0  # least bare paper round a disc, in points
NUMBER_SHARES = (0.5, 0.4, 0.6, 0.33, 0.67)  # where on a balloon a brace's number may stand
ENOUGH = 1.5  # points between a brace's number and labels


def is_face(framework: Framework) -> bool:
    """Whether a piece is drawn flat by its pattern, its back a mirror image of its front."""
    return bool(framework.laid and framework.mirror and not framework.cells)


def face_plan(framework: Framework, names: MapNames, voice: Voice) -> FlatPlan:
    """The map of a flat piece: every joint, link, brace number and lock."""
    return FlatPlan(
        framework,
        names,
        voice.say("The front as it is seen, the back behind it, up and to the side."),
        _legend_items(framework, names, voice),
        _alt(framework, voice),
        Face(framework, names).blocks,
    )


@dataclass(frozen=True)
class Face:
    """A flat piece in links, drawn at any size."""

    framework: Framework
    names: MapNames

    def blocks(self, share: float, width: float, height: float) -> list[MapBlock]:
        """One block, at most so wide and so high, a link as long as can be read at least."""
        edge = self._radius + 4
        spots, _ = self._best
        wide, tall = (float(np.ptp([at[axis] for at in spots.values()])) for axis in (0, 1))
        most = min((width - 2 * edge) / wide, (height - 2 * edge) / tall)
        least = self._least_link
        link = min(least + share * max(LARGEST_LINK - least, 0.0), most)
        left, low = (min(at[axis] for at in spots.values()) * link - edge for axis in (0, 1))
        placed = {joint: (x * link - left, y * link - low) for joint, (x, y) in spots.items()}
        size = wide * link + 2 * edge, tall * link + 2 * edge
        numbers = tuple(
            mark
            for number, at, _ in self._numbers(placed)
            for mark in brace_number(at, str(number))
        )
        return [MapBlock(*size, tuple(self._joints(placed)), self._links(placed), over=numbers)]

    @cached_property
    def _least_link(self) -> float:
        """How long a link is at least, in points, so that discs and numbers can be read."""
        spots, clear = self._best
        link = max(clear, LEAST_LINK)
        while link < LARGEST_LINK:
            placed = {joint: (x * link, y * link) for joint, (x, y) in spots.items()}
            if all(gap >= 0 for _, _, gap in self._numbers(placed)):
                break
            link += 2.0
        return link

    @property
    def _radius(self) -> float:
        return self.names.radius(self.framework.joints)

    @cached_property
    def _best(self) -> tuple[Mapping[str, Point], float]:
        """The places of the joints, in links, and how long a link is at least, in points, so that
        no disc lies on another or on a line that does not end at it."""
        framework, radius = self.framework, self._radius
        struts = (one for one in framework.balloons.values() if one.kind.is_strut)
        link_m = max(one.tie_to_tie_m for one in struts)
        laid = [framework.laid[joint] for joint in framework.joints]
        number = {joint: i for i, joint in enumerate(framework.joints)}
        lines = [(number[link.start], number[link.finish]) for link in framework.links]
        graph = FlatGraph(
            tuple((round(x / link_m, 6), round(y / link_m, 6)) for x, y, _ in laid),
            tuple(i for i, (_, _, z) in enumerate(laid) if z < 0),
            tuple(lines),
        )
        disc, line = 2 * radius + CLEAR, radius + CLEAR
        places = with_the_back_moved(graph, disc / WISHED_LINK, line / WISHED_LINK)
        least = larger_by(np.array(places), lines, disc, line)
        return dict(zip(framework.joints, places, strict=True)), least

    def _joints(self, spots: Mapping[str, Point]) -> Iterator[DrawnJoint]:
        """The joints from back to front."""
        framework = self.framework
        braced = {joint for brace in framework.braces for joint in brace.section}
        for joint in sorted(framework.joints, key=lambda joint: framework.laid[joint][2]):
            yield DrawnJoint(joint, spots[joint], skipped=joint not in braced)

    def _links(self, spots: Mapping[str, Point]) -> tuple[DrawnLink, ...]:
        laid = self.framework.laid
        deep = sorted(
            self.framework.links, key=lambda link: laid[link.start][2] + laid[link.finish][2]
        )
        return tuple(
            DrawnLink(link, spots[link.start], spots[link.finish], self._style(link))
            for link in deep
        )

    def _style(self, link: Link) -> LinkStyle:
        if link.role is Role.SINGLE:
            return SINGLE
        if link.role is Role.BRACE:
            shared = any(link.id in brace.shared for brace in self.framework.braces)
            return SHARED if shared else BRACE
        return chain_style(self._chain[link.id])

    @cached_property
    def _chain(self) -> Mapping[str, int]:
        return chain_numbers(self.framework)

    def _numbers(self, spots: Mapping[str, Point]) -> list[tuple[int, Point, float]]:
        """Each brace's number, where it stands, and how much paper is bare between it and the
        nearest label: on one of its balloons, or within them."""
        joints = self.framework.joints
        at = np.array([spots[joint] for joint in joints])
        labels = (text_width(self.names.short(joint), TYPE, bold=True) / 2 for joint in joints)
        half = np.array([(wide, TYPE * CAP_HEIGHT / 2) for wide in labels])
        found: list[tuple[int, Point, float]] = []
        for brace in self.framework.braces:
            own = np.array([text_width(str(brace.number), TYPE, bold=True) / 2 + 3, 6.0])
            best, bare = (0.0, 0.0), -math.inf
            for place in self._number_places(brace, spots):
                gap = float((np.abs(at - np.array(place)) - half - own).max(axis=1).min())
                if gap > bare + 0.01 and bare < ENOUGH:
                    best, bare = place, gap
            found.append((brace.number, best, bare))
            at, half = np.vstack([at, best]), np.vstack([half, own])
        return found

    def _number_places(self, brace: Brace, spots: Mapping[str, Point]) -> Iterator[Point]:
        for share in NUMBER_SHARES:
            for link in map(self.framework.link.__getitem__, (*brace.links, *brace.shared)):
                yield between(spots[link.start], spots[link.finish], share)
        corners = np.array([spots[joint] for joint in brace.section])
        x, y = corners.mean(axis=0)
        yield float(x), float(y)


def _legend_items(framework: Framework, names: MapNames, voice: Voice) -> Sequence[Item]:
    braced = {joint for brace in framework.braces for joint in brace.section}
    items: list[Item] = []
    if set(framework.joints) & braced:
        items.append((Sign.JOINT, voice.say_in("legend", "joint")))
    if set(framework.joints) - braced:
        items.append((Sign.SKIPPED, voice.say_in("legend", "joint that no brace reaches")))
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    named = [
        voice.say_in(
            "legend",
            "chain {letter}, {place}",
            letter=names.short(long.letter),
            place=voice.tell(long.where),
        )
        for long in framework.chains
    ]
    items += chain_items(framework, named, voice)
    if framework.braces:
        items.append((BRACE, voice.say_in("legend", "brace balloon")))
        items.append((Sign.NUMBER, voice.say_in("legend", "number of a brace")))
    if any(brace.shared for brace in framework.braces):
        items.append((SHARED, voice.say_in("legend", "one balloon, shared by two braces")))
    if framework.singles:
        items.append((SINGLE, voice.say_in("legend", "single")))
    return items


def _alt(framework: Framework, voice: Voice) -> str:
    shown = voice.say(
        "Joint map: the front as it is seen, the back behind it, up and to the side. Long chains:"
        " {chains}.",
        chains=chains_words(framework, voice),
    )
    singles = ""
    if framework.singles:
        singles = voice.say("Singles: {singles}.", singles=", ".join(framework.singles))
    return sentences(shown, *(ties_words(brace, voice) for brace in framework.braces), singles)
