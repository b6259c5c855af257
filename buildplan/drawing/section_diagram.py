"""A brace as it is tied: the tube cut across, seen from the builder's seat at the open end."""

from __future__ import annotations

import math
from collections.abc import Collection

from buildplan.drawing.colours import mix
from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, PAPER, SOFT, TYPE, arrow, between, link_outline, toward
from buildplan.drawing.map_style import joint_marks, joint_radius
from buildplan.drawing.map_words import walk_words
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Point
from buildplan.drawing.order_discs import order_discs, rows_of
from buildplan.framework.model import Brace, Chain, Framework
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

# corners of a section by number of chains, in chain order: front up, outer side to the right, as
# the close-ups have them
CORNERS: dict[int, tuple[Point, ...]] = {
    2: ((1.0, 0.0), (0.0, 0.0)),
    3: ((0.9, 1.04), (0.0, 0.52), (0.9, 0.0)),
    4: ((1.0, 1.0), (0.0, 1.0), (0.0, 0.0), (1.0, 0.0)),
}
EDGE = 40.0  # room round the section for words and arrows, at joints of no more than
PLAIN_RADIUS = 15.0  # points; joints with longer labels are larger and need as much more


def section_diagram(
    framework: Framework,
    brace_number: int,
    locked: Collection[str],
    voice: Voice,
    size: float = 190.0,
) -> Picture:
    """The tube's cross-section at a brace, `size` points square.

    Joints carry their labels, those of `locked` (locked in the same step) the sign of a lock;
    they are numbered in the order of tying, with a thin arrow beside each balloon from the start
    to the closing knot; a balloon that an earlier brace brought is pale and marked "shared".
    Designed for 170 points or more.
    """
    brace = framework.brace[brace_number]
    unit = CORNERS[len(brace.section)]
    wide = max(x for x, _ in unit) or 0.0
    radius = joint_radius(framework)
    edge = EDGE + max(0.0, radius - PLAIN_RADIUS)
    scale = size - 2 * edge
    left = (size - scale * wide) / 2
    at = {
        joint: (left + x * scale, edge + y * scale)
        for joint, (x, y) in zip(brace.section, unit, strict=True)
    }
    middle = (
        math.fsum(x for x, _ in at.values()) / len(at),
        math.fsum(y for _, y in at.values()) / len(at),
    )
    marks: list[Mark] = []
    for link_id in brace.shared:
        marks += _shared(framework, link_id, at, middle, size, voice)
    for chain in brace.chains:
        marks += _chain(framework, chain, at, middle, radius, voice)
    for joint, spot in at.items():
        lock = joint in locked
        marks += joint_marks(spot, radius, joint, skipped=False, locked=lock, repeat=False)
    marks += order_discs(rows_of(brace), at, radius)
    marks += [
        Label(
            (2, size - 9),
            voice.say("Brace {number}", number=brace_number),
            9,
            INK,
            anchor="start",
            bold=True,
        ),
        Label((size - 2, size - 9), voice.say("front up"), TYPE, SOFT, anchor="end"),
        Label((2, 2), voice.say("inner side"), TYPE, SOFT, anchor="start"),
        Label((size - 2, 2), voice.say("outer side"), TYPE, SOFT, anchor="end"),
    ]
    return Picture(size, size, tuple(marks), _alt(framework, brace, locked, voice))


def _outward(start: Point, finish: Point, middle: Point) -> Point:
    """Unit vector square to a side, pointing away from the middle of the section."""
    dx, dy = finish[0] - start[0], finish[1] - start[1]
    length = math.hypot(dx, dy)
    nx, ny = dy / length, -dx / length
    half = between(start, finish)
    away = (half[0] - middle[0]) * nx + (half[1] - middle[1]) * ny
    return (nx, ny) if away >= 0 else (-nx, -ny)


def _thick(framework: Framework, size: float) -> float:
    return min(26.0, size * 0.24)


def _shared(
    framework: Framework,
    link_id: str,
    at: dict[str, Point],
    middle: Point,
    size: float,
    voice: Voice,
) -> list[Mark]:
    radius = joint_radius(framework)
    link = framework.link[link_id]
    a, b = at[link.start], at[link.finish]
    thick = _thick(framework, math.dist(a, b))
    fill = mix(framework.balloons[link.balloon].colour, PAPER, 0.7)
    ends = toward(a, b, radius - 1), toward(b, a, radius - 1)
    x, y = between(a, b)
    word = voice.say_in("balloon of a brace", "shared")
    word_wide = text_width(word, TYPE) + 4
    marks: list[Mark] = [link_outline(*ends, thick, Ink(fill, INK, 0.8, (4, 2)))]
    nx, ny = _outward(a, b, middle)
    reach = thick / 2 + 5 + abs(nx) * word_wide / 2 + abs(ny) * 3
    half = word_wide / 2  # kept within the picture
    spot = (min(max(x + nx * reach, half), size - half), y + ny * reach - TYPE * 0.35)
    marks.append(Label(spot, word, TYPE, INK))
    return marks


def _chain(
    framework: Framework,
    chain: Chain,
    at: dict[str, Point],
    middle: Point,
    radius: float,
    voice: Voice,
) -> list[Mark]:
    marks: list[Mark] = []
    walk = [*chain.joints, *(chain.joints[:1] if chain.closed else ())]
    for number, link_id in enumerate(chain.links, 1):
        link = framework.link[link_id]
        a, b = at[walk[number - 1]], at[walk[number]]
        thick = _thick(framework, math.dist(a, b))
        fill = mix(framework.balloons[link.balloon].colour, PAPER, 0.15)
        ends = toward(a, b, radius - 1), toward(b, a, radius - 1)
        marks.append(link_outline(*ends, thick, Ink(fill, INK, 1.8)))
        nx, ny = _outward(a, b, middle)
        inside = thick / 2 + 5
        line = [
            (p[0] - nx * inside, p[1] - ny * inside)
            for p in (between(a, b, 0.34), between(a, b, 0.66))
        ]
        marks += arrow(line, Ink(stroke=INK, width=0.7), 5)
    marks += _end_words(chain, at, middle, radius, voice)
    return marks


def _end_words(
    chain: Chain, at: dict[str, Point], middle: Point, radius: float, voice: Voice
) -> list[Mark]:
    """What happens at the joints where the chain begins and ends."""
    if chain.closed:
        words = {chain.joints[0]: voice.say("start and closing knot")}
    else:
        words = {
            chain.joints[0]: voice.say_in("of a chain", "start"),
            chain.joints[-1]: voice.say_in("of a chain", "end"),
        }
    marks: list[Mark] = []
    for joint, word in words.items():
        x, y = at[joint]
        right, up = x > middle[0] + 1, y >= middle[1]
        anchor = "end" if right else "start"
        edge = x + (radius + 2 if right else -radius - 2)
        rise = radius + 8 if up else -radius - 13
        marks.append(Label((edge, y + rise), word, TYPE, INK, anchor=anchor))
    return marks


def _alt(framework: Framework, brace: Brace, locked: Collection[str], voice: Voice) -> str:
    parts = [
        voice.say(
            "Brace {brace}, the tube cut across: joints {joints}.",
            brace=brace.number,
            joints=", ".join(brace.section),
        )
    ]
    for chain in brace.chains:
        walk = [*chain.joints, *(chain.joints[:1] if chain.closed else ())]
        parts.append(_chain_words(len(chain.links), chain.closed, walk_words(walk, voice), voice))
    if brace.shared:
        shared = ", ".join(brace.shared)
        parts.append(voice.say("Shared with another brace: {balloons}.", balloons=shared))
    locks = [joint for joint in brace.section if joint in locked]
    if locks:
        parts.append(voice.say("A lock at each of {joints}.", joints=", ".join(locks)))
    return sentences(*parts)


def _chain_words(count: int, closed: bool, way: str, voice: Voice) -> str:
    if closed:
        return voice.say(
            "A chain of {count}, closed by a knot to its start, is tied {way}.",
            count=count,
            way=way,
        )
    return voice.say("A chain of {count}, open at both ends, is tied {way}.", count=count, way=way)
