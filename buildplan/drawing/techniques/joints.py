"""Work at the joints: braces, how nozzles settle, locks, singles."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from buildplan.drawing.colours import mix
from buildplan.drawing.line_art import INK, PAPER, between, rope
from buildplan.drawing.map_style import joint_marks, joint_radius
from buildplan.drawing.map_words import walk_words
from buildplan.drawing.marks import Mark, Picture, Point
from buildplan.drawing.techniques.props import (
    Strand,
    badge,
    knot,
    link,
    lip,
    move,
    neck_colour,
    palette,
    picture,
    round_,
    weave,
    words,
)
from buildplan.framework.model import Brace, Framework
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

ONE_CHAIN_HEIGHT = 62.0

# by the number of balloons
SHORT_CHAINS = {
    1: mark("A short chain of 1: one link balloon by itself."),
    2: mark("A short chain of 2: one pair, its necks tied together."),
    3: mark("A short chain of 3: a pair, and one more balloon tied to it tail to tail."),
    4: mark("A short chain of 4: two pairs tied tail to tail."),
}


def brace_chain(
    framework: Framework, voice: Voice, sizes: Sequence[int] = (), balloon: str | None = None
) -> Picture:
    """The short chains that braces are made of, of the given lengths, or of all (at most two)
    that the piece has; of the balloon of that key, or of the braces' own."""
    found = {len(chain.links) for brace in framework.braces for chain in brace.chains}
    wanted = sizes or sorted(found, reverse=True)[:2]
    colour = framework.balloons[balloon].colour if balloon else palette(framework).brace
    marks: list[Mark] = []
    for row, size in enumerate(wanted):
        y = (96.0, 34.0)[row] if len(wanted) > 1 else 24.0
        ends = [34.0 + 45 * i for i in range(size + 1)]
        for a, b in pairwise(ends):
            marks += link((a + 1, y), (b - 1, y), 37, colour)
        for i, x in enumerate(ends[1:-1], 1):
            marks += knot((x, y), 0, colour, 3.0)
            marks.append(words((x, y + 24), voice.say("necks") if i % 2 else voice.say("tails")))
        marks += badge((14, y), str(size))
    drawn = picture(marks, sentences(*(voice.say(SHORT_CHAINS[size]) for size in wanted)))
    return drawn if len(wanted) > 1 else replace(drawn, height=ONE_CHAIN_HEIGHT)


def _tube_corners(count: int) -> list[tuple[Point, float]]:
    """Joints of a section drawn in the round, each with how far back it lies."""
    corners = {
        2: [((96.0, 108.0), 0.0), ((96.0, 38.0), 0.0)],
        3: [((76.0, 102.0), 0.0), ((98.0, 30.0), 0.5), ((134.0, 114.0), 1.0)],
        4: [
            ((78.0, 92.0), 0.0),
            ((78.0, 26.0), 0.0),
            ((136.0, 50.0), 1.0),
            ((136.0, 116.0), 1.0),
        ],
    }
    return [((x, y), depth) for (x, y), depth in corners[count]]


def wrap_brace(framework: Framework, voice: Voice, number: int = 1) -> Picture:
    """A brace led round the long chains; its last end is about to be tied. A balloon that it
    shares with an earlier brace is pale."""
    colours = palette(framework)
    brace = framework.brace[number]
    own = framework.balloons[framework.link[brace.links[0]].balloon].colour
    spots = dict(zip(brace.section, _tube_corners(len(brace.section)), strict=True))
    layers: list[tuple[float, list[Mark]]] = []
    on_top: list[Mark] = []
    for (x, y), depth in spots.values():
        pale = [
            *link((x - 50, y), (x - 1, y), 25, colours.chain, "done"),
            *link((x + 1, y), (x + 50, y), 25, colours.chain, "done"),
        ]
        layers.append((depth + 0.01, pale))
    for link_id in brace.shared:
        old = framework.link[link_id]
        (a, da), (b, db) = spots[old.start], spots[old.finish]
        shared = framework.balloons[old.balloon].colour
        layers.append(((da + db) / 2, link(a, b, 23, shared, "done")))
    for chain in brace.chains:
        walk = [*chain.joints, *(chain.joints[:1] if chain.closed else ())]
        for i, (start, finish) in enumerate(pairwise(walk)):
            (a, da), (b, db) = spots[start], spots[finish]
            end = b
            if chain.closed and i == len(chain.links) - 1:
                end = (between(a, b, 0.86)[0] + 6, between(a, b, 0.86)[1] + 22)
                reach = (b[0] + 2, b[1] + 24), (b[0] - 2, b[1] + 14)
                on_top += move([(end[0] - 4, end[1] - 2), *reach])
            layers.append(((da + db) / 2, link(a, end, 23, own)))
            on_top += badge(between(a, end), str(i + 1))
    layers.sort(key=lambda layer: -layer[0])
    marks = [mark for _, layer in layers for mark in layer]
    radius = joint_radius(framework)
    for joint, (spot, _) in spots.items():
        marks += joint_marks(spot, radius, joint, skipped=False, locked=False, repeat=False)
    return picture([*marks, *on_top], _brace_words(brace, voice))


def _brace_words(brace: Brace, voice: Voice) -> str:
    parts = []
    for chain in brace.chains:
        if chain.closed:
            parts.append(
                voice.say(
                    "Brace {brace} is led from joint to joint, {way}, its knots on those of the"
                    " long chains; its two ends are tied together at {joint}.",
                    brace=brace.number,
                    way=walk_words([*chain.joints, chain.joints[0]], voice),
                    joint=chain.joints[0],
                )
            )
        else:
            parts.append(
                voice.say(
                    "Brace {brace} is led from joint to joint, {way}, its knots on those of the"
                    " long chains; its ends are tied into the first and the last.",
                    brace=brace.number,
                    way=walk_words(chain.joints, voice),
                )
            )
    if brace.shared:
        shared = ", ".join(brace.shared)
        parts.append(voice.say("It shares {balloons} with another brace.", balloons=shared))
    if not parts:
        parts.append(voice.say("Brace {brace} brings no balloon of its own.", brace=brace.number))
    return sentences(*parts)


def settle_joint(framework: Framework, voice: Voice) -> Picture:
    """A brace's knot beside the chain's knot, then settled on it so that nozzles cross."""
    colours = palette(framework)
    marks: list[Mark] = []
    y, reach, long, fat = 76.0, 9.0, 36.0, 30.0
    for x, off, word in (
        (49.0, (14.0, 10.0), voice.say("beside: push")),
        (170.0, (0.0, 0.0), voice.say("nozzles cross")),
    ):
        # the chain lies level, below; the brace stands across it, above
        marks += link((x - reach - long, y), (x - reach, y), fat, colours.chain)
        marks += link((x + reach, y), (x + reach + long, y), fat, colours.chain)
        marks += weave(
            [Strand(((x - reach - 1, y, 0), (x, y, 0), (x + reach + 1, y, 0)), colours.chain, 5)]
        )
        marks += knot((x, y), 0, colours.chain, 3.6)
        bx, by = x + off[0], y + off[1]
        marks += link((bx, by + reach + long), (bx, by + reach), fat, colours.brace)
        marks += link((bx, by - reach), (bx, by - reach - long), fat, colours.brace)
        nozzle = [(bx, by + reach + 1), (bx, by + 4), (bx, by - 4), (bx, by - reach - 1)]
        marks += rope(nozzle, 5, neck_colour(colours.brace), INK)
        marks += knot((bx, by), 90, colours.brace, 3.6)
        marks.append(words((x, 6), word))
    marks += move([(96, 122), (86, 112), (74, 97)])
    marks += move([(100, 76), (109, 76), (118, 76)])
    return picture(
        marks,
        voice.say(
            "Left, the brace's knot beside the chain's knot. Right, the brace pushed on to the"
            " joint, so that its nozzles cross the chain's nozzles, brace over chain."
        ),
    )


def _joint_from_front(x: float, y: float, chain: str, brace: str) -> list[Mark]:
    reach, long, fat = 3.5, 29.0, 22.0
    return [
        *link((x - reach - long, y), (x - reach, y), fat, chain, "done"),
        *link((x + reach, y), (x + reach + long, y), fat, chain, "done"),
        *link((x, y + reach + long), (x, y + reach), fat, brace, "done"),
        *link((x, y - reach), (x, y - reach - long), fat, brace, "done"),
        *knot((x, y), 20, mix(chain, PAPER, 0.5), 3.2),
    ]


def _twist_from_side(x: float, y: float, chain: str, lock: str) -> list[Mark]:
    """The joint seen along the brace, front up: the lock's knot lies on it, its two necks
    straddle it and twist behind it."""
    one = Strand(
        (
            (x, y + 10, 1),
            (x - 7, y + 6, 1),
            (x - 8, y - 3, 1),
            (x - 4, y - 9, 2),
            (x + 4, y - 14, 2),
            (x + 5, y - 18, -1),
            (x, y - 23, -1),
            (x - 7, y - 28, -1),
        ),
        lock,
        4.0,
    )
    two = Strand(
        (
            (x, y + 10, -1),
            (x + 7, y + 6, -1),
            (x + 8, y - 3, -1),
            (x + 4, y - 9, 0),
            (x - 4, y - 14, 0),
            (x - 5, y - 18, 0),
            (x, y - 23, 0),
            (x + 7, y - 28, 0),
        ),
        lock,
        4.0,
    )
    nozzle = Strand(((x - 8, y, 0), (x, y, 0), (x + 8, y, 0)), mix(chain, PAPER, 0.5), 5.0)
    return [
        *link((x - 35, y), (x - 6, y), 22, chain, "done"),
        *link((x + 6, y), (x + 35, y), 22, chain, "done"),
        *weave([nozzle, two, one]),
        *knot((x, y + 11), 0, lock, 2.8),
        *round_((x - 13, y - 35), (x - 5, y - 27), 18, lock),
        *round_((x + 13, y - 35), (x + 5, y - 27), 18, lock),
        *move([(x - 22, y - 48), (x, y - 53), (x + 22, y - 48)]),
    ]


def twist_lock(framework: Framework, voice: Voice) -> Picture:
    """A lock's knot laid on the joint, its rounds led round it and twisted past each other."""
    colours = palette(framework)
    marks: list[Mark] = []
    y, lock = 72.0, colours.lock
    for number, (x, word) in enumerate(
        (
            (37.0, voice.say("knot on joint")),
            (110.0, voice.say("from the side")),
            (183.0, voice.say("tight")),
        ),
        1,
    ):
        marks.append(words((x, 4), word))
        marks += badge((x, 129), str(number))
        if number == 2:
            marks += _twist_from_side(x, 82.0, colours.chain, lock)
            continue
        out = 21.0 if number == 1 else 12.5
        marks += _joint_from_front(x, y, colours.chain, colours.brace)
        if number == 1:
            neck = ((x - out, y + out, 0), (x, y, 0), (x + out, y - out, 0))
            marks += weave([Strand(neck, lock, 4.0)])
            marks += knot((x, y), -45, lock, 2.8)
        marks += round_((x - out, y + out), (x, y), 18, lock)
        marks += round_((x + out, y - out), (x, y), 18, lock)
        if number == 1:
            marks += move([(x - 33, y + 12), (x - 36, y - 6), (x - 27, y - 18)])
            marks += move([(x + 33, y - 12), (x + 36, y + 6), (x + 27, y + 18)])
    return picture(
        marks,
        voice.say(
            "A lock. One: the pair's knot is laid on the joint, a round to either side, in opposite"
            " corners. Two, seen from the side: its necks straddle the joint and the two rounds are"
            " twisted past each other behind it. Three: a round sits tight on either side."
        ),
    )


def tie_single(framework: Framework, voice: Voice) -> Picture:
    """A single from one skipped joint to its twin on the other side: the tail first."""
    colours = palette(framework)
    single = framework.link[framework.singles[0]] if framework.singles else framework.links[0]
    marks: list[Mark] = []
    front, back = (62.0, 40.0), (146.0, 102.0)
    for x, y in (back, front):
        marks += link((x - 54, y), (x - 1, y), 32, colours.chain, "done")
        marks += link((x + 1, y), (x + 54, y), 32, colours.chain, "done")
    radius = joint_radius(framework)
    marks += joint_marks(back, radius, single.neck, skipped=True, locked=False, repeat=False)
    near, far = between(front, back, 0.06), (128.0, 70.0)
    marks += link(near, far, 40, colours.brace)
    neck = Strand(((*far, 0), (133, 74, 0), (137, 81, 0)), colours.brace, 4.5)
    marks += weave([neck])
    marks += knot((134, 76), 55, colours.brace, 3.0)
    marks += lip(neck)
    marks += move([(152, 70), (158, 79), (155, 88)])
    marks += joint_marks(front, radius, single.tail, skipped=True, locked=False, repeat=False)
    marks += [
        words((160, 70 - 10 * line), text, "start")
        for line, text in enumerate(voice.say("2: closed\nneck").splitlines())
    ]
    marks.append(words((62, 10), voice.say("1: tail, tied in")))
    return picture(
        marks,
        voice.say(
            "A single, one link balloon that was tied off alone: its tail is tied into joint"
            " {first}, its closed neck into joint {second}. No brace reaches them. A lock goes on"
            " each end.",
            first=single.tail,
            second=single.neck,
        ),
    )


def tie_parts(framework: Framework, joints: Sequence[str], voice: Voice) -> Picture:
    """Joints of two parts, each locked already, laid on one another and locked together."""
    colours = palette(framework)
    radius = joint_radius(framework)
    marks: list[Mark] = []
    y = 78.0
    for side, joint in zip((1, -1), joints, strict=False):
        at = (60.0, y + side * 24)
        for way in (1, -1):
            marks += link(
                (at[0] + way * 8, at[1]), (at[0] + way * 46, at[1] + side * 16), 25, colours.chain
            )
        marks += joint_marks(at, radius, joint, skipped=False, locked=True, repeat=False)
    marks += move([(60, y + 12), (60, y + 3)])
    marks += move([(60, y - 12), (60, y - 3)])
    x = 168.0
    for dx, dy in ((0.82, 0.5), (0.82, -0.5)):
        for way in (1, -1):
            near, far = 10 * way, 52 * way
            start, finish = (x + near * dx, y + near * dy), (x + far * dx, y + far * dy)
            marks += link(start, finish, 25, colours.chain)
    marks += knot((x, y), 35, colours.chain, 3.6)
    for step in (-1, 1):
        marks += round_((x, y + step * 15.0), (x, y + step * 3.0), 22, colours.lock)
    marks += [
        words((60, 6), voice.say("two joints of two parts")),
        words((x, 6), voice.say("one lock round both")),
    ]
    return picture(
        marks,
        voice.say(
            "Left, {joints}, joints of different parts, each with its own lock, brought together."
            " Right, laid knot on knot: one more lock is twisted round both.",
            joints=voice.listed(joints),
        ),
    )


def join_chains(framework: Framework, voice: Voice) -> Picture:
    """Knots of two chains with the same tag, brought together at one joint."""
    colours = palette(framework)
    meeting = (j for j, links in framework.links_at.items() if len(links) > 2)
    joint = next(meeting, framework.joints[0])
    marks: list[Mark] = []
    y = 72.0
    # apart: two chains that bend towards one another
    for side in (1, -1):
        at = (52.0, y + side * 13)
        for way in (1, -1):
            marks += link(
                (at[0] + way * 7, at[1]), (at[0] + way * 43, at[1] + side * 20), 27, colours.chain
            )
        nozzle = [(at[0] - 9, at[1] + side), at, (at[0] + 9, at[1] + side)]
        marks += rope(nozzle, 4.5, neck_colour(colours.chain), INK)
        marks += knot(at, 0 if side > 0 else 180, colours.chain, 3.2)
    # together: the two chains cross at the joint
    x = 168.0
    for dx, dy in ((0.82, -0.57), (0.82, 0.57)):
        for way in (1, -1):
            near, far = 8 * way, 46 * way
            ends = (x + near * dx, y + near * dy), (x + far * dx, y + far * dy)
            marks += link(*ends, 27, colours.chain)
        nozzle = [(x + r * dx, y + r * dy) for r in (-9, -3, 3, 9)]
        marks += rope(nozzle, 4.5, neck_colour(colours.chain), INK)
    marks += knot((x, y), 35, colours.chain, 3.6)
    marks += move([(99, 72), (109, 72), (119, 72)])
    marks += [
        words((52, 6), voice.say("two knots tagged {joint}", joint=joint)),
        words((x, 6), voice.say("one joint")),
    ]
    return picture(
        marks,
        voice.say(
            "Left, the knots of two chains, both tagged {joint}. Right, brought together, knot on"
            " knot, with the four nozzles crossing: one joint, to be locked.",
            joint=joint,
        ),
    )
