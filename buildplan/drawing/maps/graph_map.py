"""The map of a piece that is listed joint by joint: joints as discs, balloons as lines.

When the discs would not stand clear of one another the chains are written out row by row.
"""

from __future__ import annotations

import math

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, PAPER, TYPE, between
from buildplan.drawing.map_style import (
    SINGLE,
    chain_style,
    joint_marks,
    joint_radius,
    link_marks,
)
from buildplan.drawing.maps.chain_rows import chain_rows
from buildplan.drawing.maps.graph_layout import Layout, fitted, has_room, is_clear, layouts
from buildplan.drawing.maps.legend import Item, Sign, chain_items, legend
from buildplan.drawing.maps.stacked_map import is_stacked, stacked_map
from buildplan.drawing.marks import Curve, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.framework.model import Framework, Link
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.courses import built_pieces, loose_chains

LETTER_ROOM = 22.0  # least bare line that a chain's letter is set on


def graph_map(
    framework: Framework, width: float, height: float, voice: Voice
) -> tuple[Picture, ...]:
    """Stacked rings unrolled; of others one sheet with the diagram, or, when that would be too
    crowded, the chains in rows."""
    alt = _alt(framework, voice)
    if is_stacked(framework) and (sheets := stacked_map(framework, width, height, voice, alt)):
        return sheets
    radius = joint_radius(framework)
    items = _legend_items(framework, voice)
    key_height, key = legend(items, width)
    room = (width - 2 * radius - 4, height - key_height - 2 * radius - 14)
    clear = has_room(len(framework.joints), room, radius)
    for layout in layouts(framework) if clear else ():
        placed = fitted(layout, room)
        if is_clear(framework, placed, radius):
            middle = radius + 2, key_height + radius + 10
            spots = {j: (x + middle[0], y + middle[1]) for j, (x, y) in placed.items()}
            tall = max(y for _, y in spots.values()) + radius + 4
            marks = (*key, *_diagram(framework, spots, radius))
            return (Picture(width, tall, marks, alt),)
    before = voice.say_in("legend", "joint shown before: chains meet here")
    rows_key = legend([*items, (Sign.SHOWN_BEFORE, before)], width)
    return chain_rows(framework, width, height, rows_key, alt)


def _legend_items(framework: Framework, voice: Voice) -> list[Item]:
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    named = [
        voice.say_count(
            "chain {letter} ({number} balloon)",
            "chain {letter} ({number} balloons)",
            len(chain.chain.links),
            letter=chain.letter,
        )
        for chain in framework.chains
    ]
    items += chain_items(framework, named, voice)
    if framework.singles:
        items.append((SINGLE, voice.say_in("legend", "single")))
    return items


def _diagram(framework: Framework, spots: Layout, radius: float) -> list[Mark]:
    chain_of = {id_: i for i, long in enumerate(framework.chains) for id_ in long.chain.links}
    beside: dict[frozenset[str], int] = {}
    marks: list[Mark] = []
    for link in framework.links:
        style = chain_style(chain_of[link.id]) if link.id in chain_of else SINGLE
        pair = frozenset((link.start, link.finish))
        copy = beside[pair] = beside.get(pair, -1) + 1
        a, b = (spots[joint] for joint in sorted(pair))
        if copy:
            marks.append(_bowed(a, b, copy, Ink(stroke=INK, width=style.width, dash=style.dash)))
        else:
            marks += link_marks(a, b, style)
    if len(framework.chains) > 1:
        for link in _lettered(framework):
            a, b = spots[link.start], spots[link.finish]
            if link.id in chain_of and math.dist(a, b) >= 2 * radius + LETTER_ROOM:
                letter = framework.chains[chain_of[link.id]].letter
                # in a grid, lines of the other layer cross in the middle
                share = (radius / math.dist(a, b) + 0.5) / 2 if framework.laid else 0.5
                marks += _letter(between(a, b, share), letter)
    for joint, at in spots.items():
        locked = joint in framework.lock_at
        marks += joint_marks(at, radius, joint, skipped=False, locked=locked, repeat=False)
    return marks


def _lettered(framework: Framework) -> list[Link]:
    """The links that bear their chain's letter: all; of a grid, whose chains go straight on, the
    first and the last of each, and none of a chain that is called by its joints."""
    if not framework.laid:
        return list(framework.links)
    alone = {letter for _, own in built_pieces(framework) for letter in loose_chains(own)}
    ids = (
        id_
        for long in framework.chains
        if long.letter not in alone
        for id_ in dict.fromkeys((long.chain.links[0], long.chain.links[-1]))
    )
    return [framework.link[id_] for id_ in ids]


def _letter(at: Point, letter: str) -> list[Mark]:
    """A chain's letter on one of its lines, paper left bare behind it."""
    half = text_width(letter, TYPE) / 2 + 1
    x, y = at
    box = ((x - half, y - 4.5), (x + half, y - 4.5), (x + half, y + 4.5), (x - half, y + 4.5))
    return [
        Polyline(box, Ink(fill=PAPER), closed=True),
        Label((x, y - TYPE * 0.36), letter, TYPE, INK),
    ]


def _bowed(a: Point, b: Point, copy: int, ink: Ink) -> Curve:
    """A line beside a straight one between the same two joints."""
    side = 0.22 * ((copy + 1) // 2) * (1 if copy % 2 else -1)
    nx_, ny_ = -(b[1] - a[1]) * side, (b[0] - a[0]) * side
    one = (a[0] + (b[0] - a[0]) / 3 + nx_, a[1] + (b[1] - a[1]) / 3 + ny_)
    two = (a[0] + (b[0] - a[0]) * 2 / 3 + nx_, a[1] + (b[1] - a[1]) * 2 / 3 + ny_)
    return Curve(a, ((one, two, b),), ink)


def _alt(framework: Framework, voice: Voice) -> str:
    parts = [
        voice.say(
            "Joint map: {joints} joints, {balloons} balloons.",
            joints=len(framework.joints),
            balloons=len(framework.links),
        )
    ]
    for long in framework.chains:
        joints = [*long.chain.joints, *(long.chain.joints[:1] if long.chain.closed else ())]
        parts.append(
            voice.say(
                "Chain {letter} ({place}): {joints}.",
                letter=long.letter,
                place=voice.tell(long.where),
                joints=", ".join(joints),
            )
        )
    if framework.singles:
        parts.append(voice.say("Singles: {singles}.", singles=", ".join(framework.singles)))
    return sentences(*parts)
