"""Closing a ring, and laying the long chains out to be braced."""

from __future__ import annotations

import math
from itertools import pairwise

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, PAPER, TYPE, smooth
from buildplan.drawing.map_layout import INNER, side_of
from buildplan.drawing.map_style import joint_marks, joint_radius
from buildplan.drawing.marks import Circle, Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.props import (
    FINE,
    HEIGHT,
    WIDTH,
    Strand,
    knot,
    link,
    move,
    palette,
    picture,
    tail_end,
    weave,
    words,
)
from buildplan.drawing.way_round import pointed
from buildplan.framework.counts import ring_lengths
from buildplan.framework.model import Framework, LongChain
from buildplan.language.messages import mark
from buildplan.language.phrases import first_to_last, sentences
from buildplan.language.voice import Voice

WITHIN = 130.0  # points: what fits within the ring that is being closed
LOOSE_CHAINS, LOOSE_ROW, LOOSE_LINK = 7, 20.0, 14.0  # chains on the floor, and points


def _round_points(
    centre: Point, across: float, high: float, count: int, first_deg: float, span_deg: float
) -> list[Point]:
    """Points along an ellipse, equally far apart along its edge."""
    dense = [math.radians(first_deg + span_deg * i / 400) for i in range(401)]
    line = [(centre[0] + across * math.cos(a), centre[1] + high * math.sin(a)) for a in dense]
    along = [0.0]
    for a, b in pairwise(line):
        along.append(along[-1] + math.dist(a, b))
    found, k = [], 0
    for i in range(count + 1):
        goal = along[-1] * i / count
        while k < 399 and along[k + 1] < goal:
            k += 1
        share = (goal - along[k]) / ((along[k + 1] - along[k]) or 1.0)
        (x0, y0), (x1, y1) = line[k], line[k + 1]
        found.append((x0 + (x1 - x0) * share, y0 + (y1 - y0) * share))
    return found


def close_ring(framework: Framework, voice: Voice) -> Picture:
    """The two free ends of a chain brought together, its balloons counted first."""
    colours = palette(framework)
    lengths = ring_lengths(framework)
    alike = len(set(lengths)) == 1
    counts = [
        f"{c.letter} {voice.whole(len(c.chain.links))}" for c in framework.chains if c.chain.closed
    ]
    centre = (110.0, 76.0)
    points = _round_points(centre, 92, 50, 16, -72, 324)
    marks: list[Mark] = []
    order = sorted(range(16), key=lambda i: -(points[i][1] + points[i + 1][1]))
    for i in order:
        if i not in (7, 8):
            marks += link(points[i], points[i + 1], 25, colours.chain)
    for i in range(3):
        marks.append(words((centre[0] - 8 + 8 * i, centre[1] + 48), "."))
    right, left = points[0], points[-1]
    ends = (
        Strand(((*left, 0), (left[0] + 8, left[1] - 6, 0), (106, 15, 0)), colours.chain, 4.5),
        Strand(((*right, 0), (right[0] - 8, right[1] - 6, 0), (114, 15, 0)), colours.chain, 4.5),
    )
    marks += weave(ends)
    for end in ends:
        marks += tail_end(end)
    marks += move([(72, 8), (84, 5), (98, 7)])
    marks += move([(148, 8), (136, 5), (122, 7)])
    marks += [
        words(
            (110, 64),
            voice.say("balloons in the ring:") if alike else voice.say("balloons in each ring:"),
        ),
        words((110, 53), voice.say("count before you tie")),
    ]
    rows = [voice.whole(lengths[0])] if alike else [", ".join(counts[i : i + 4]) for i in (0, 4)]
    if max(text_width(row, 10, bold=True) for row in rows) > WITHIN or len(counts) > 8:
        rows = [f"{voice.whole(min(lengths))} – {voice.whole(max(lengths))}"]
    size = 20.0 if alike else 10.0
    for i, row in enumerate(reversed([row for row in rows if row])):
        marks.append(Label((110, 78 + 12 * i), row, size, INK, bold=True))
    return picture(
        marks,
        voice.say(
            "A chain laid round, its two free ends brought together at the foot of the ring. Count"
            " its balloons before you tie the double knot: {counts}.",
            counts=", ".join(counts),
        ),
    )


def lay_chains(framework: Framework, voice: Voice) -> Picture:
    """The long chains laid out: back below, front above, number-1 joints together; chains that
    no braces hold, one below the other."""
    if not framework.braces:
        return _lay_loosely(framework, voice)
    if framework.closed:
        return _lay_rings(framework, voice)
    return _lay_rows(framework, voice)


def _layers(framework: Framework) -> list[tuple[str, list[LongChain]]]:
    """Chains from the floor up, each layer named."""
    found: dict[str, list[LongChain]] = {"back": [], "between": [], "front": []}
    for chain in framework.chains:
        found[chain.layer or "between"].append(chain)
    layers = [
        (name, sorted(chains, key=lambda chain: side_of(chain) == INNER))
        for name, chains in found.items()
        if chains
    ]
    return layers if len(layers) > 1 else [("flat", layers[0][1])]


def _colours_along(framework: Framework, chain: LongChain, count: int) -> list[str]:
    """Colours of the first `count` balloons of a chain, over again where it is shorter."""
    links = chain.chain.links
    kinds = [framework.link[links[i % len(links)]].balloon for i in range(count)]
    return [framework.balloons[kind].colour for kind in kinds]


def _tag(framework: Framework, at: Point, joint: str) -> list[Mark]:
    return joint_marks(
        at, joint_radius(framework), joint, skipped=False, locked=False, repeat=False
    )


def _lay_rings(framework: Framework, voice: Voice) -> Picture:
    layers = _layers(framework)
    marks: list[Mark] = []
    named = [f"{chain.letter} {_short(chain, voice)}" for _, chains in layers for chain in chains]
    # as far to the left as the words leave room for
    x = min(max(124.0, 88 + max(text_width(words, TYPE) for words in named)), 130.0)
    gap = {1: 0.0, 2: 64.0, 3: 45.0}[len(layers)]
    foot = {1: 70.0, 2: 36.0, 3: 24.0}[len(layers)]
    squeeze = 1.0 if len(layers) < 3 else 0.68
    first: dict[int, list[tuple[Point, str]]] = {}
    for level, (name, chains) in enumerate(layers):
        y = foot + gap * level
        for chain in chains:
            side = side_of(chain)
            across, high, count = (52.0, 14.0, 20) if side == INNER else (80.0, 27.0, 30)
            ring = _round_points((x, y), across, high * squeeze, count, 0, 360)
            colours = _colours_along(framework, chain, count)
            for i in sorted(range(count), key=lambda k: -(ring[k][1] + ring[k + 1][1])):
                marks += link(ring[i], ring[i + 1], 11, colours[i])
            first.setdefault(side, []).append(((x + across, y), chain.chain.joints[0]))
            if side != INNER and not level:
                # outside lies to the left of one who goes along the numbers, front up
                way = _round_points((x, y), across + 9, high * squeeze + 6, 8, -8, -38)
                marks += pointed(way)
                marks.append(_next_tag(way[-1], chain.chain.joints[1]))
        marks.append(
            Label((2, y + 8), _layer_name(name, voice), TYPE, INK, anchor="start", bold=True)
        )
        for i, chain in enumerate(chains):
            row = f"{chain.letter} {_short(chain, voice)}"
            marks.append(Label((2, y - 3 - 10 * i), row, TYPE, INK, anchor="start"))
    line = Ink(stroke=INK, width=0.9, dash=(3, 2))
    for tags in first.values():
        if len(tags) > 1:
            marks.append(Polyline((tags[0][0], tags[-1][0]), line))
    for tags in first.values():
        for spot, joint in tags:
            marks += _tag(framework, spot, joint)
    if gap:
        top = foot + gap * (len(layers) - 1)
        marks += move([(x, top - 6), (x, top - 20), (x, foot + 14)])
    return picture(marks, _lay_words(framework, RINGS_LAID, voice))


def _next_tag(at: Point, joint: str) -> Label:
    """The label of joint 2, where the arrow from joint 1 ends."""
    return Label((at[0] + 5, at[1] - 0.8 * TYPE), joint, TYPE, INK, anchor="start", bold=True)


def _short(chain: LongChain, voice: Voice) -> str:
    """Its place without the layer, which is named beside it."""
    return voice.tell(chain.role.words[None])


def _layer_name(layer: str, voice: Voice) -> str:
    names = {
        "back": voice.say_in("layer of chains", "back"),
        "between": voice.say_in("layer of chains", "between"),
        "front": voice.say_in("layer of chains", "front"),
        "flat": voice.say_in("layer of chains", "flat"),
    }
    return names[layer]


def _lay_rows(framework: Framework, voice: Voice) -> Picture:
    """Open chains: rows beside one another on the floor, the front ones above the back."""
    layers = _layers(framework)
    marks: list[Mark] = []
    gap = {1: 0.0, 2: 68.0, 3: 46.0}[len(layers)]
    foot = {1: 48.0, 2: 20.0, 3: 14.0}[len(layers)]
    slant, deep = 18.0, {1: 40.0, 2: 28.0, 3: 14.0}[len(layers)]
    first: dict[int, list[tuple[Point, str]]] = {}
    for level, (name, chains) in enumerate(layers):
        y = foot + gap * level
        for chain in sorted(chains, key=lambda c: side_of(c) == INNER):
            outer = side_of(chain) != INNER
            dx, dy = (slant, deep) if outer else (0.0, 0.0)
            ends = [(64 + 22 * i + dx, y + dy) for i in range(7)]
            colours = _colours_along(framework, chain, len(ends) - 1)
            for (a, b), colour in zip(pairwise(ends), colours, strict=True):
                marks += link(a, b, 18, colour)
            first.setdefault(side_of(chain), []).append((ends[0], chain.chain.joints[0]))
            row = f"{chain.letter} {_short(chain, voice)}"
            marks.append(Label((2, y + dy - 3), row, TYPE, INK, anchor="start"))
            if chain is max(chains, key=lambda c: side_of(c) != INNER):
                at = (2, y + dy + 8)
                marks.append(
                    Label(at, _layer_name(name, voice), TYPE, INK, anchor="start", bold=True)
                )
    line = Ink(stroke=INK, width=0.9, dash=(3, 2))
    for tags in first.values():
        if len(tags) > 1:
            marks.append(Polyline((tags[0][0], tags[-1][0]), line))
        for spot, joint in tags:
            marks += _tag(framework, spot, joint)
    if gap:
        top = foot + gap * (len(layers) - 1)
        marks += move([(190, top - 10), (190, top - 18), (190, foot + deep + 12)])
    return picture(marks, _lay_words(framework, CHAINS_LAID, voice))


def _lay_loosely(framework: Framework, voice: Voice) -> Picture:
    """Chains that are brought together only later: one below the other in the order of their
    letters, each with the tag of its first knot and of its last."""
    marks: list[Mark] = []
    more = len(framework.chains) > LOOSE_CHAINS
    shown = framework.chains[: LOOSE_CHAINS - 1 if more else LOOSE_CHAINS]
    for row, long in enumerate(shown):
        y = HEIGHT - 14 - LOOSE_ROW * row
        name = Label((2, y - 3), long.letter, TYPE + 1, INK, anchor="start", bold=True)
        marks += [name, *_loose_chain(framework, long, y)]
    if more:
        y = HEIGHT - 14 - LOOSE_ROW * len(shown)
        marks += [words((46 + 12 * i, y), ".") for i in range(3)]
        last = framework.chains[-1].letter
        marks.append(Label((2, y - 3), last, TYPE + 1, INK, anchor="start", bold=True))
    return picture(
        marks,
        voice.say(
            "The chains on the floor, one below the other in the order of their letters:"
            " {chains}. A tag shows at each end.",
            chains=first_to_last(voice, framework.chains[0].letter, framework.chains[-1].letter),
        ),
    )


def _loose_chain(framework: Framework, long: LongChain, y: float) -> list[Mark]:
    """A chain in a row, as many of its balloons as there is room for at either end."""
    marks: list[Mark] = []
    kinds = [framework.link[id_].balloon for id_ in long.chain.links]
    colours = [framework.balloons[kind].colour for kind in kinds]
    joints = (*long.chain.joints, *(long.chain.joints[:1] if long.chain.closed else ()))
    tagged = max(text_width(joint, TYPE, bold=True) for joint in (joints[0], joints[-1])) + 8
    x = 24.0 + max(text_width(long.letter, TYPE + 1, bold=True) - 10, 0.0)
    first = x + tagged
    room = int((WIDTH - first - tagged) // LOOSE_LINK)
    cut = len(colours) > room
    kept = colours if not cut else [*colours[: room // 2], "", *colours[-((room - 1) // 2) :]]
    for i, colour in enumerate(kept):
        a, b = first + LOOSE_LINK * i, first + LOOSE_LINK * (i + 1)
        if colour:
            marks += link((a, y), (b, y), 12, colour)
        else:
            marks += [words((a + LOOSE_LINK * share, y - 2), ".") for share in (0.25, 0.5, 0.75)]
    last = first + LOOSE_LINK * len(kept)
    marks.append(Label((first - 4, y - 3), joints[0], TYPE, INK, anchor="end", bold=True))
    marks.append(Label((last + 4, y - 3), joints[-1], TYPE, INK, anchor="start", bold=True))
    return marks


RINGS_LAID = mark(
    "The long rings laid out flat, from the floor up: {layers}; inner chains within the outer ones;"
    " joints {joints} lie together."
)
CHAINS_LAID = mark(
    "The long chains laid out flat, from the floor up: {layers}; inner chains within the outer"
    " ones; joints {joints} lie together."
)


def _lay_words(framework: Framework, message: str, voice: Voice) -> str:
    layers = []
    for name, chains in _layers(framework):
        names = voice.listed([f"{chain.letter} ({voice.tell(chain.where)})" for chain in chains])
        layers.append(f"{_layer_name(name, voice)}: {names}")
    firsts = ", ".join(chain.chain.joints[0] for chain in framework.chains)
    return voice.say(message, layers="; ".join(layers), joints=firsts)


def tag_joints(framework: Framework, voice: Voice) -> Picture:
    """Paper tags fastened to the knots along a chain."""
    colours = palette(framework)
    long = framework.chains[0]
    back = long.chain.joints[:1] if long.chain.closed else ()
    joints = (*long.chain.joints, *back)[:6]
    counted = all(j == f"{long.letter}{i}" for i, j in enumerate(long.chain.joints, 1))
    tagged = [i for i in range(len(joints)) if not counted or i in (0, 4)]
    marks: list[Mark] = []
    knots = [(14 + 38.0 * i, 92 + 6 * math.sin(i)) for i in range(len(joints))]
    for a, b in pairwise(knots):
        marks += link((a[0] + 1, a[1]), (b[0] - 1, b[1]), 31, colours.chain)
    for i, (x, y) in enumerate(knots):
        marks += knot((x, y), 0, colours.chain, 2.8)
        if i in tagged:
            marks += _tag_on((x, y), joints[i])
        else:
            marks.append(words((x, y - 34), str(i + 1)))
    told = voice.say(
        "Part of chain {letter}: paper tags hang from its knots: {joints}.",
        letter=long.letter,
        joints=", ".join(joints[i] for i in tagged),
    )
    rest = voice.say("The knots between are counted on from the tag before.") if counted else ""
    return picture(marks, sentences(told, rest))


def _tag_on(at: Point, joint: str) -> list[Mark]:
    """A paper tag on a string."""
    wide = text_width(joint, 10, bold=True) / 2 + 5
    x, y = max(at[0] + 2, wide + 1), at[1] - 36
    tag = (
        (x - wide, y - 18),
        (x + wide, y - 18),
        (x + wide, y - 4),
        (x + 5, y + 4),
        (x - 5, y + 4),
        (x - wide, y - 4),
    )
    return [
        smooth([(at[0], at[1] - 3), (at[0] + 3, at[1] - 18), (x, y - 1)], FINE),
        Polyline(tag, Ink(PAPER, INK, 0.9), closed=True),
        Circle((x, y - 1), 1.5, Ink(PAPER, INK, 0.6)),
        Label((x, y - 14), joint, 10, INK, bold=True),
    ]
