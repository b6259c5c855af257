"""The map of a piece that is listed joint by joint: joints as discs, balloons as lines.

When the discs would not stand clear of one another the chains are written out row by row.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.drawing.line_art import between
from buildplan.drawing.map_style import SINGLE, chain_style
from buildplan.drawing.map_words import all_chains_words
from buildplan.drawing.maps.blocks import (
    DrawnJoint,
    DrawnLink,
    MapBlock,
    MapNames,
    chain_numbers,
    letter_on_line,
)
from buildplan.drawing.maps.chain_rows import row_blocks
from buildplan.drawing.maps.graph_layout import Layout, fitted, has_room, is_clear, layouts
from buildplan.drawing.maps.legend import Item, Sign, chain_items, legend
from buildplan.drawing.maps.sheets import FlatPlan
from buildplan.drawing.marks import Mark, Point
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

LETTER_ROOM = 22.0  # least bare line that a chain's letter is set on
MARGIN = 5.0
BOW = 0.2  # of a line's length: how far a second one between its joints is bent aside


def graph_plan(
    framework: Framework, names: MapNames, width: float, height: float, voice: Voice
) -> FlatPlan:
    """The map of a piece that is listed joint by joint, on sheets of a width and height."""
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    counted = [
        voice.say_count(
            "chain {letter} ({number} balloon)",
            "chain {letter} ({number} balloons)",
            len(chain.chain.links),
            letter=names.short(chain.letter),
        )
        for chain in framework.chains
    ]
    items += chain_items(framework, counted, voice)
    if framework.singles:
        items.append((SINGLE, voice.say_in("legend", "single")))
    alt = all_chains_words(framework, voice)
    key_height, _ = legend(items, width)
    layout = _readable(framework, names, width, height - key_height)
    if layout is not None:
        blocks = Diagram(framework, names, layout).blocks
        return FlatPlan(framework, names, "", items, alt, blocks)
    before = voice.say_in("legend", "joint shown before: chains meet here")
    items.append((Sign.SHOWN_BEFORE, before))

    def rows(share: float, width: float, height: float) -> Sequence[MapBlock]:
        return row_blocks(framework, names, width)

    return FlatPlan(framework, names, "", items, alt, rows)


def _edge(framework: Framework, names: MapNames) -> float:
    """What a disc at the rim of a diagram takes beside it."""
    return names.radius(framework.joints) + MARGIN


def _readable(framework: Framework, names: MapNames, width: float, height: float) -> Layout | None:
    """The first way to lay the piece out that can be read on a sheet."""
    radius, edge = names.radius(framework.joints), _edge(framework, names)
    room = width - 2 * edge, height - 2 * edge
    if not has_room(len(framework.joints), room, radius):
        return None
    found = (
        layout for layout in layouts(framework) if is_clear(framework, fitted(layout, room), radius)
    )
    return next(found, None)


@dataclass(frozen=True)
class Diagram:
    """Joints as discs, balloons as lines, in a layout that can be drawn at any size."""

    framework: Framework
    names: MapNames
    layout: Layout

    def blocks(self, share: float, width: float, height: float) -> list[MapBlock]:
        """One block, at most so wide and so high, that share of it where that can be read."""
        edge = _edge(self.framework, self.names)
        for part in (share, (1 + share) / 2, 1.0):
            room = part * width - 2 * edge, part * height - 2 * edge
            if min(room) <= 0:
                continue
            placed = fitted(self.layout, room)
            if is_clear(self.framework, placed, self.names.radius(self.framework.joints)):
                break
        left = min(x for x, _ in placed.values())
        spots = {joint: (x - left + edge, y + edge) for joint, (x, y) in placed.items()}
        links = tuple(self._links(spots))
        joints = tuple(DrawnJoint(joint, at) for joint, at in spots.items())
        wide, tall = (max(at[axis] for at in spots.values()) + edge for axis in (0, 1))
        return [MapBlock(wide, tall, joints, links, tuple(self._letters(spots)))]

    def _links(self, spots: Layout) -> list[DrawnLink]:
        chain = chain_numbers(self.framework)
        beside: dict[frozenset[str], int] = {}
        found = []
        for link in self.framework.links:
            pair = frozenset((link.start, link.finish))
            copy = beside[pair] = beside.get(pair, -1) + 1
            a, b = spots[link.start], spots[link.finish]
            through = (_bowed(min(a, b), max(a, b), copy),) if copy else ()
            style = chain_style(chain[link.id]) if link.id in chain else SINGLE
            found.append(DrawnLink(link, a, b, style, through=through))
        return found

    def _letters(self, spots: Layout) -> list[Mark]:
        framework = self.framework
        chain, radius = chain_numbers(framework), self.names.radius(framework.joints)
        marks: list[Mark] = []
        for link in framework.links if len(framework.chains) > 1 else ():
            a, b = spots[link.start], spots[link.finish]
            if link.id in chain and math.dist(a, b) >= 2 * radius + LETTER_ROOM:
                letter = framework.chains[chain[link.id]].letter
                marks += letter_on_line(between(a, b), self.names.short(letter))
        return marks


def _bowed(a: Point, b: Point, copy: int) -> Point:
    """The middle of a line beside a straight one between the same two joints."""
    side = BOW * ((copy + 1) // 2) * (1 if copy % 2 else -1)
    x, y = between(a, b)
    return x - (b[1] - a[1]) * side, y + (b[0] - a[0]) * side
