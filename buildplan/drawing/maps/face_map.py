"""The map of a piece that its pattern draws flat, such as a letter: the front as it is seen, the
back behind it, up and to the right."""

from __future__ import annotations

import math
from itertools import combinations

from buildplan.drawing.line_art import between
from buildplan.drawing.map_style import (
    BRACE,
    SHARED,
    SINGLE,
    LinkStyle,
    brace_number,
    chain_style,
    joint_marks,
    joint_radius,
    link_marks,
)
from buildplan.drawing.map_words import chains_words, ties_words
from buildplan.drawing.maps.graph_layout import CLEAR, Layout, laid_flat
from buildplan.drawing.maps.legend import Item, Sign, chain_items, legend
from buildplan.drawing.marks import Mark, Picture, Point
from buildplan.framework.model import Brace, Framework, Link, Role
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

LARGEST_LINK = 66.0  # points
NEARLY = 0.01
# how far the back may be drawn from the front, in links to the right and up: slanting strokes are
# clear of one another in one way or another
BACKS = ((0.5, 0.5), (0.5, 0.35), (0.4, 0.5), (0.6, 0.25), (0.3, 0.6), (0.65, 0.5), (0.5, 0.65))
NUMBER_SHARES = (0.5, 0.4, 0.6, 0.33, 0.67, 0.27, 0.73)
FREE_OF_NUMBER = 22.0  # points from the middle of a number to that of a joint
WIDEST = 1.9  # times as wide as high: how far the map is drawn out so that discs stand clear


def face_map(framework: Framework, width: float, height: float, voice: Voice) -> Picture:
    """Every joint, link, brace number and lock of `framework`, which has a mirror and says where
    it is laid; at most `width` by `height` points."""
    radius = joint_radius(framework)
    key_height, key = legend(_legend_items(framework, voice), width)
    margin = radius + 4
    room = width - 2 * margin, height - key_height - 2 * margin - 8
    tries = [_fitted(laid_flat(framework, back), room, radius) for back in BACKS]
    placed = max(tries, key=lambda layout: min(_apart(layout), 2 * radius + CLEAR))
    wide = max(x for x, _ in placed.values())
    left, low = (width - wide) / 2, key_height + margin + 4
    spots = {joint: (x + left, y + low) for joint, (x, y) in placed.items()}
    marks: list[Mark] = [*key]
    for link in sorted(framework.links, key=lambda link: _depth(framework, link)):
        marks += link_marks(spots[link.start], spots[link.finish], _style(framework, link))
    for joint in sorted(framework.joints, key=lambda joint: framework.laid[joint][2]):
        braced = any(joint in brace.section for brace in framework.braces)
        locked = joint in framework.lock_at
        marks += joint_marks(
            spots[joint], radius, joint, skipped=not braced, locked=locked, repeat=False
        )
    for brace in framework.braces:
        marks += brace_number(_number_spot(spots, brace), str(brace.number))
    top = max(y for _, y in spots.values()) + margin
    return Picture(width, top, tuple(marks), _alt(framework, voice))


def _fitted(flat: Layout, room: tuple[float, float], radius: float) -> Layout:
    """A layout in links, in points from its lower left corner: as high as there is room, and drawn
    out across no further than it takes for discs and numbers to stand clear of one another."""
    xs, ys = [x for x, _ in flat.values()], [y for _, y in flat.values()]
    most = room[0] / (max(xs) - min(xs))
    high = min(LARGEST_LINK, most, room[1] / (max(ys) - min(ys)))
    across, need = high, 2 * radius + 2 * CLEAR
    for (x, y), (other_x, other_y) in combinations(flat.values(), 2):
        dx, dy = abs(x - other_x), abs(y - other_y) * high
        if dx > NEARLY and dy < need:
            across = max(across, math.sqrt(need**2 - dy**2) / dx)
    across = min(across, WIDEST * high, most)
    return {joint: ((x - min(xs)) * across, (y - min(ys)) * high) for joint, (x, y) in flat.items()}


def _apart(layout: Layout) -> float:
    """How far the two nearest joints lie from one another."""
    return min(math.dist(one, other) for one, other in combinations(layout.values(), 2))


def _number_spot(spots: Layout, brace: Brace) -> Point:
    """Where a brace's number stands on its front balloon: as near its middle as leaves every joint
    bare, or as bare as can be."""
    ends = spots[brace.section[0]], spots[brace.section[1]]

    def bare(share: float) -> tuple[float, float]:
        at = between(*ends, share)
        free = min(math.dist(at, joint) for joint in spots.values())
        return min(round(free, 3), FREE_OF_NUMBER), -abs(share - 0.5)

    return between(*ends, max(NUMBER_SHARES, key=bare))


def _depth(framework: Framework, link: Link) -> float:
    return framework.laid[link.start][2] + framework.laid[link.finish][2]


def _style(framework: Framework, link: Link) -> LinkStyle:
    if link.role is Role.SINGLE:
        return SINGLE
    if link.role is Role.BRACE:
        return SHARED if any(link.id in brace.shared for brace in framework.braces) else BRACE
    ids = (long.chain.links for long in framework.chains)
    return chain_style(next(i for i, links in enumerate(ids) if link.id in links))


def _legend_items(framework: Framework, voice: Voice) -> list[Item]:
    braced = {joint for brace in framework.braces for joint in brace.section}
    items: list[Item] = [(Sign.JOINT, voice.say_in("legend", "joint"))]
    if set(framework.joints) - braced:
        items.append((Sign.SKIPPED, voice.say_in("legend", "joint that no brace reaches")))
    if framework.locks:
        items.append((Sign.LOCK, voice.say_in("legend", "lock")))
    named = [
        voice.say_in(
            "legend",
            "chain {letter}, {place}",
            letter=long.letter,
            place=voice.tell(long.where),
        )
        for long in framework.chains
    ]
    items += chain_items(framework, named, voice)
    if framework.braces:
        items.append((BRACE, voice.say_in("legend", "brace balloon")))
        items.append((Sign.NUMBER, voice.say_in("legend", "number of a brace")))
    if any(brace.shared for brace in framework.braces):
        items.append((SHARED, voice.say_in("legend", "brace balloon that two braces share")))
    if framework.singles:
        items.append((SINGLE, voice.say_in("legend", "single")))
    return items


def _alt(framework: Framework, voice: Voice) -> str:
    shown = voice.say(
        "Joint map: the front as it is seen, the back behind it, up and to the right. Long chains:"
        " {chains}.",
        chains=chains_words(framework, voice),
    )
    singles = ""
    if framework.singles:
        singles = voice.say("Singles: {singles}.", singles=", ".join(framework.singles))
    return sentences(shown, *(ties_words(brace, voice) for brace in framework.braces), singles)
