"""Braces: their short chains, how one is led round, how its knots settle, and the singles."""

from __future__ import annotations

from itertools import pairwise

from buildplan.drawing.line_art import INK, between, rope
from buildplan.drawing.map_style import joint_marks, joint_radius
from buildplan.drawing.map_words import walk_words
from buildplan.drawing.marks import Mark, Picture, Point
from buildplan.drawing.techniques.mistakes import mistaken, with_mistake
from buildplan.drawing.techniques.props import (
    Palette,
    Strand,
    badge,
    knot,
    link,
    lip,
    move,
    neck_colour,
    palette,
    picture,
    tail_end,
    tick,
    weave,
    words,
)
from buildplan.framework.model import Brace, Framework
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice


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
            layers.append(((da + db) / 2, link(a, end, 23, own, sign=colours.brace_sign)))
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
    marks = [
        *_brace_over_chain((170, 76), (0, 0), colours),
        words((49, 6), voice.say("beside: push")),
        words((170, 6), voice.say("nozzles cross")),
        *tick((143, 46), 4),
        *move([(96, 122), (86, 112), (74, 97)]),
        *move([(100, 76), (109, 76), (118, 76)]),
    ]
    drawn = picture(
        marks,
        voice.say(
            "Right, the brace pushed on to the joint, so that its nozzles cross the chain's"
            " nozzles, brace over chain."
        ),
    )
    beside = mistaken(
        (102, 104),
        "brace",
        _brace_over_chain((49, 41), (14, 10), colours),
        voice.say("Left, crossed out: the brace's knot lies beside the chain's knot."),
    )
    return with_mistake(drawn, beside, (0, 35), (22, 46))


def _brace_over_chain(joint: Point, off: Point, colours: Palette) -> list[Mark]:
    """A chain that lies level, its knot at `joint`, and over it a brace, its knot `off` from it."""
    (x, y), reach, long, fat = joint, 9.0, 36.0, 30.0
    (bx, by) = x + off[0], y + off[1]
    nozzle = [(bx, by + reach + 1), (bx, by + 4), (bx, by - 4), (bx, by - reach - 1)]
    return [
        *link((x - reach - long, y), (x - reach, y), fat, colours.chain, sign=colours.chain_sign),
        *link((x + reach, y), (x + reach + long, y), fat, colours.chain, sign=colours.chain_sign),
        *weave(
            [Strand(((x - reach - 1, y, 0), (x, y, 0), (x + reach + 1, y, 0)), colours.chain, 5)]
        ),
        *knot((x, y), 0, colours.chain, 3.6),
        *link(
            (bx, by + reach + long), (bx, by + reach), fat, colours.brace, sign=colours.brace_sign
        ),
        *link(
            (bx, by - reach), (bx, by - reach - long), fat, colours.brace, sign=colours.brace_sign
        ),
        *rope(nozzle, 5, neck_colour(colours.brace), INK),
        *knot((bx, by), 90, colours.brace, 3.6),
    ]


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
    near, far = between(front, back, 0.06), (120.0, 61.0)
    marks += link(near, far, 40, colours.brace, sign=colours.brace_sign)
    neck = Strand(((*far, 0), (127, 66, 0), (136, 74, 0)), colours.brace, 4.5)
    marks += weave([neck])
    marks += knot((125, 65), 42, colours.brace, 3.0)
    marks += lip(neck)
    marks += move([(139, 79), (141, 84), (143, 90)])  # from the neck to its joint
    marks += joint_marks(front, radius, single.tail, skipped=True, locked=False, repeat=False)
    marks += [
        words((150, 72 - 10 * line), text, "start")
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


def tie_end(framework: Framework, voice: Voice) -> Picture:
    """A free end tied into a joint: once round between the balloons, then knotted on itself."""
    colours = palette(framework)
    marks: list[Mark] = []
    y, reach, long, fat = 88.0, 13.0, 34.0, 30.0
    for x in (54.0, 166.0):
        marks += link((x - reach - long, y), (x - reach, y), fat, colours.chain, "done")
        marks += link((x + reach, y), (x + reach + long, y), fat, colours.chain, "done")
    loose, tied = (54.0, y), (166.0, y)
    marks += _round_a_joint(loose, colours.chain, colours.brace)
    x, _ = tied
    nozzles = [(x - reach - 1, y), (x - 4, y), (x + 4, y), (x + reach + 1, y)]
    marks += rope(nozzles, 5, neck_colour(colours.chain), INK)
    marks += knot(tied, 0, colours.chain, 3.6)
    marks += link((x, 24), (x, 62), 34, colours.brace, sign=colours.brace_sign)
    marks += rope([(x, 62), (x, 68), (x, 76), (x, y - 3)], 5, neck_colour(colours.brace), INK)
    marks += knot((x, y - 3), 90, colours.brace, 3.6)
    marks += move([(102, y), (110, y), (118, y)])
    marks += [
        words((54, 6), voice.say("once round the joint")),
        words((166, 6), voice.say("knot it twice")),
    ]
    return picture(
        marks,
        voice.say(
            "A free end, tail or closed neck, is tied into a joint: it goes once round the knot"
            " that is there, between the balloons, and is knotted twice on itself, so that it"
            " cannot slide off."
        ),
    )


def _round_a_joint(at: Point, chain: str, brace: str) -> list[Mark]:
    """A balloon below a joint, its free end led once round the chain's knot and under itself."""
    x, y = at
    line = Strand(((x - 16, y, 1), (x, y, 1), (x + 16, y, 1)), chain, 5)
    end = Strand(
        (
            (x, 62, 2),
            (x - 3, y - 14, 2),
            (x - 9, y - 3, 2),
            (x - 8, y + 11, 2),
            (x + 2, y + 14, 2),
            (x + 9, y + 8, 0),
            (x + 8, y - 6, 0),
            (x - 1, y - 13, 0),
            (x - 14, y - 16, 0),
            (x - 22, y - 24, 0),
        ),
        brace,
        5,
    )
    marks = link((x, 24), (x, 62), 34, brace)
    return [*marks, *weave([line, end]), *knot(at, 0, chain, 3.6), *tail_end(end)]
