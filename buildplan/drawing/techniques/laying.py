"""Laying the long chains out to be braced, and chains that are brought together later."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, TYPE
from buildplan.drawing.map_layout import INNER, side_of
from buildplan.drawing.map_style import joint_marks, joint_radius
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.props import (
    HEIGHT,
    WIDTH,
    link,
    move,
    picture,
    words,
)
from buildplan.drawing.techniques.rings import round_points
from buildplan.drawing.way_round import pointed
from buildplan.framework.chain_roles import Layer
from buildplan.framework.model import Framework, LongChain
from buildplan.language.messages import Message, mark, message_in
from buildplan.language.phrases import first_to_last
from buildplan.language.voice import Voice

LOOSE_CHAINS, LOOSE_ROW, LOOSE_LINK = 7, 20.0, 14.0  # chains on the floor, and points


def lay_chains(framework: Framework, voice: Voice, *, mirrored: bool = False) -> Picture:
    """The long chains laid out: back below, front above, number-1 joints together, an arrow from
    joint 1 to joint 2; chains that no braces hold, one below the other. What is `mirrored` runs the
    other way round, or from the right."""
    if not framework.braces:
        return lay_course(framework, voice, framework.chains)
    if framework.closed:
        return _lay_rings(framework, -1.0 if mirrored else 1.0, voice)
    return _lay_rows(framework, -1.0 if mirrored else 1.0, voice)


# from the floor up
LAYERS = {
    Layer.BACK: message_in("layer of chains", "back"),
    None: message_in("layer of chains", "between"),
    Layer.FRONT: message_in("layer of chains", "front"),
}
FLAT = message_in("layer of chains", "flat")


def _layers(framework: Framework) -> list[tuple[Message, list[LongChain]]]:
    """Chains from the floor up, each layer named."""
    layers = []
    for layer, name in LAYERS.items():
        chains = [chain for chain in framework.chains if chain.layer is layer]
        if chains:
            layers.append((name, sorted(chains, key=lambda chain: side_of(chain) == INNER)))
    return layers if len(layers) > 1 else [(FLAT, layers[0][1])]


def _colours_along(framework: Framework, chain: LongChain, count: int) -> list[str]:
    """Colours of the first `count` balloons of a chain, over again where it is shorter."""
    links = chain.chain.links
    kinds = [framework.link[links[i % len(links)]].balloon for i in range(count)]
    return [framework.balloons[kind].colour for kind in kinds]


def _tag(framework: Framework, at: Point, joint: str) -> list[Mark]:
    return joint_marks(
        at, joint_radius(framework), joint, skipped=False, locked=False, repeat=False
    )


def _lay_rings(framework: Framework, way: float, voice: Voice) -> Picture:
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
            ring = round_points((x, y), across, high * squeeze, count, 0, 360)
            colours = _colours_along(framework, chain, count)
            for i in sorted(range(count), key=lambda k: -(ring[k][1] + ring[k + 1][1])):
                marks += link(ring[i], ring[i + 1], 11, colours[i])
            first.setdefault(side, []).append(((x + across, y), chain.chain.joints[0]))
            if side != INNER and not level:
                # outside lies to the left of one who goes along the numbers, front up
                size = (across + 9, high * squeeze + 6)
                run = round_points((x, y), *size, 8, -8 * way, -38 * way)
                marks += pointed(run)
                marks.append(_next_tag(run[-1], chain.chain.joints[1]))
        marks.append(Label((2, y + 8), voice.tell(name), TYPE, INK, anchor="start", bold=True))
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


def _lay_rows(framework: Framework, way: float, voice: Voice) -> Picture:
    """Open chains: rows beside one another on the floor, the front ones above the back."""
    begin = 64.0 if way > 0 else 58.0 + 22 * 6
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
            ends = [(begin + 22 * way * i + dx, y + dy) for i in range(7)]
            colours = _colours_along(framework, chain, len(ends) - 1)
            for (a, b), colour in zip(pairwise(ends), colours, strict=True):
                marks += link(a, b, 18, colour)
            first.setdefault(side_of(chain), []).append((ends[0], chain.chain.joints[0]))
            if outer and level == len(layers) - 1 and len(chain.chain.joints) > 1:
                marks += _to_the_next(ends[0], ends[1], chain.chain.joints[1])
            row = f"{chain.letter} {_short(chain, voice)}"
            marks.append(Label((2, y + dy - 3), row, TYPE, INK, anchor="start"))
            if chain is max(chains, key=lambda c: side_of(c) != INNER):
                at = (2, y + dy + 8)
                marks.append(Label(at, voice.tell(name), TYPE, INK, anchor="start", bold=True))
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


def _to_the_next(one: Point, two: Point, joint: str) -> list[Mark]:
    """The arrow over a row from joint 1 to joint 2, and the latter's name."""
    (x0, y), (x1, _) = one, two
    way = 1.0 if x1 > x0 else -1.0
    run = [(x0, y + 15), ((x0 + x1) / 2, y + 19), (x1 + 8 * way, y + 15)]
    anchor = "start" if way > 0 else "end"
    return [
        *pointed(run),
        Label((x1 + 12 * way, y + 12), joint, TYPE, INK, anchor=anchor, bold=True),
    ]


def lay_course(framework: Framework, voice: Voice, chains: Sequence[LongChain]) -> Picture:
    """Chains that are brought together only later: one below the other in the order of their
    letters, each with the tag of its first knot and of its last."""
    marks: list[Mark] = []
    more = len(chains) > LOOSE_CHAINS
    shown = chains[: LOOSE_CHAINS - 1 if more else LOOSE_CHAINS]
    for row, long in enumerate(shown):
        y = HEIGHT - 14 - LOOSE_ROW * row
        name = Label((2, y - 3), long.letter, TYPE + 1, INK, anchor="start", bold=True)
        marks += [name, *_loose_chain(framework, long, y)]
    if more:
        y = HEIGHT - 14 - LOOSE_ROW * len(shown)
        marks += [words((46 + 12 * i, y), ".") for i in range(3)]
        last = chains[-1].letter
        marks.append(Label((2, y - 3), last, TYPE + 1, INK, anchor="start", bold=True))
    return picture(
        marks,
        voice.say(
            "The chains on the floor, one below the other in the order of their letters:"
            " {chains}. A tag shows at each end.",
            chains=first_to_last(voice, chains[0].letter, chains[-1].letter),
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
        layers.append(f"{voice.tell(name)}: {names}")
    firsts = ", ".join(chain.chain.joints[0] for chain in framework.chains)
    return voice.say(message, layers="; ".join(layers), joints=firsts)
