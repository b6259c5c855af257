"""What a designer can begin with: from a size to the lines under `build` of a first file.

How large a piece comes out is told by lines fitted to solved shapes of the program's own, in
tie-to-tie lengths: good enough to choose a number of cells by. What the piece then measures,
`buildplan check` says.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from textwrap import wrap
from types import MappingProxyType

from buildplan.design.other_beginnings import column, entrance, globe, sign, wall
from buildplan.design.wishes import (
    GAUGE_STEP,
    USUAL_GAUGE,
    BuildLines,
    Wish,
    WishError,
    count_for,
    lock_line,
)
from buildplan.language.messages import message
from buildplan.language.voice import Voice

# Width of a star of so many points in tie-to-tie lengths, at no straight cell and for each
# straight cell on a side: fitted. Then the most straight cells with which it still held itself
# up when it was solved; the ranges below are of that kind too.
STAR_WIDTH: Mapping[int, tuple[float, float, int]] = {
    4: (3.58, 1.86, 5),
    5: (4.31, 2.92, 3),
    6: (5.12, 3.51, 2),
    7: (5.59, 3.85, 3),
    8: (5.84, 4.06, 2),
}
FRAME_STRAIGHTS = range(2, 14)
RING_SECTIONS = range(20, 51)
ARCH_LEGS = range(2, 19)
# Height of a drop, point up, in tie-to-tie lengths at no straight cell on its flanks and for each.
DROP_FLANKS = range(2, 7)
DROP_AT = (3.50, 0.965)
# Crescents, narrow to wide: width in tie-to-tie lengths, resting on its back with one horn up; how
# many balloons long its horns are, and the straight cells from a horn to its first bend, between
# the bends outside, and between those of the hollow.
CRESCENTS: Sequence[tuple[float, int, int, int, int]] = (
    (7.72, 2, 1, 2, 1),
    (9.57, 3, 1, 3, 2),
    (10.1, 3, 2, 3, 2),
    (11.63, 3, 1, 4, 3),
)
CRESCENT_BENDS, CRESCENT_BENDS_INSIDE = 5, 3
COMMENT_WIDTH = 84


def _tube(
    voice: Voice,
    closed: bool,
    course: tuple[str, ...],
    inner_gauge: float | None = None,
    stand_on: tuple[str, ...] = (),
    top: str = "",
    extra: tuple[str, ...] = (),
) -> BuildLines:
    """A tube of four chains along a course, with balloons more between pairs of joints."""
    closes = (
        f"true     # {voice.say('the chains are tied into rings')}"
        if closed
        else f"false    # {voice.say('the chains stay open')}"
    )
    chains = voice.say("A outer front, B inner front, C inner back, D outer back")
    cells = voice.say(
        "Cells between neighbouring braces: straight goes on, fan turns inward by about 60 "
        "degrees, fan_in outward, tip is a sharp corner on the outside, dip a sharp notch on the "
        "inside."
    )
    across = voice.say("balloons across the horns")
    long = "long" if inner_gauge is None else "{A: long, B: inner, C: inner, D: long}"
    return BuildLines(
        (
            "tube:",
            f"  closed: {closes}",
            f"  chains: 4       # {chains}",
            f"  long: {long}",
            f"  brace: cross    # {voice.say('tied across the long chains, holding them apart')}",
            f"  single: cross   # {voice.say('ties joints that no brace reaches, front to back')}",
            lock_line(voice),
            *(f"  # {line}" for line in wrap(cells, COMMENT_WIDTH)),
            "  course:",
            *(f"    {line}" for line in course),
            *((f"  extra: [{', '.join(extra)}]    # {across}",) if extra else ()),
        ),
        inner_gauge,
        stand_on=stand_on,
        top=top,
    )


def _straight(cells: int) -> str:
    """A run of straight cells, as a course has it."""
    return "straight" if cells == 1 else f"{{repeat: {cells}, cells: [straight]}}"


def _star(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    if wish.points not in STAR_WIDTH:
        raise WishError(message("a star has 4 to 8 points"), "points")
    at_none, for_each, most = STAR_WIDTH[wish.points]
    straight = count_for(
        wish, size, min(3, most), range(2, most + 1), lambda cells: at_none + for_each * cells
    )
    side = _straight(straight)
    return _tube(
        voice,
        True,
        (
            f"- repeat: {wish.points}        # {voice.say('once for each point')}",
            f"  cells: [{side}, tip, {side}, dip]",
        ),
    )


def _frame(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    straight = count_for(wish, size, 6, FRAME_STRAIGHTS, lambda cells: 2.87 + cells)
    return _tube(
        voice,
        True,
        (
            f"- repeat: 4        # {voice.say('once for each side, with the corner after it')}",
            f"  cells: [{_straight(straight)}, tip]",
        ),
    )


def _drop(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    flank = count_for(wish, size, 4, DROP_FLANKS, lambda cells: DROP_AT[0] + DROP_AT[1] * cells)
    up = f"- {_straight(flank)}"
    one_side, other_side = voice.say("up one flank"), voice.say("and down the other")
    return _tube(
        voice,
        True,
        (
            "- cells: [straight, fan, straight, fan]",
            f"{up}     # {one_side}",
            f"- tip                               # {voice.say('the point')}",
            f"{up}     # {other_side}",
            "- cells: [fan, straight, fan, straight]",
        ),
        top=f"cell {4 + flank + 1}",
    )


def _crescent(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    which = count_for(wish, size, 1, range(len(CRESCENTS)), lambda number: CRESCENTS[number][0])
    _, long, horn, outside, inside = CRESCENTS[which]
    outer = f"[fan, {_straight(outside)}]"
    inner = f"[fan_in, {_straight(inside)}]"
    back, hollow = voice.say("round its back"), voice.say("and back along the hollow")
    between = 2 * horn + CRESCENT_BENDS + (CRESCENT_BENDS - 1) * outside
    return _tube(
        voice,
        True,
        (
            f"- [{2 * long}, 0]                  # {voice.say('one horn')}",
            f"- {_straight(horn)}      # {back}",
            f"- {{repeat: {CRESCENT_BENDS - 1}, cells: {outer}}}",
            "- fan",
            f"- {_straight(horn)}",
            f"- [{2 * long}, 0]                  # {voice.say('the other horn')}",
            f"- straight                # {hollow}",
            f"- {{repeat: {CRESCENT_BENDS_INSIDE - 1}, cells: {inner}}}",
            "- fan_in",
            "- straight",
        ),
        top=f"cell {between + 2}",
        extra=tuple(
            f"[{chain}{start + i + 1}, {chain}{start + 2 * long - i + 1}]"
            for start in (0, 2 * long + between)
            for i in range(1, long)
            for chain in "AD"
        ),
    )


def _ring(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    gauge = USUAL_GAUGE[wish.units] if wish.gauge is None else wish.gauge
    step = GAUGE_STEP[wish.units]
    # Inner and outer chain are a brace apart, so their lengths differ by 2 pi times that. A
    # gauge has steps: a ring closes where a whole number of sections meets one of them.
    smaller = {
        round(2 * math.pi * gauge / (step * steps)): step * steps
        for steps in range(1, round(gauge / step))
    }
    sections = count_for(
        wish,
        size,
        25,
        [count for count in sorted(smaller) if count in RING_SECTIONS],
        lambda count: 0.86 + count / math.pi,
    )
    return _tube(voice, True, (f"- {_straight(sections)}",), gauge - smaller[sections])


def _arch(wish: Wish, size: float | None, voice: Voice) -> BuildLines:
    slope = 4 if size is None else min(8, max(2, round(size / 3)))
    leg = count_for(wish, size, 7, ARCH_LEGS, lambda cells: 1.74 + slope / 2 + cells)
    outer, inner = 2 * leg + 2 * slope + 3 + 1, 2 * leg + 2 * slope + 1
    up = f"- {_straight(leg)}"
    over = f"- {_straight(slope)}"
    one_leg, other_leg = voice.say("up one leg"), voice.say("and down")
    return _tube(
        voice,
        False,
        (
            f"{up}     # {one_leg}",
            "- fan",
            over,
            "- fan",
            over,
            "- fan",
            f"{up}     # {other_leg}",
        ),
        stand_on=("A1", "B1", "C1", "D1", f"A{outer}", f"B{inner}", f"C{inner}", f"D{outer}"),
    )


PIECES: Mapping[str, Callable[[Wish, float | None, Voice], BuildLines]] = MappingProxyType(
    {
        "star": _star,
        "ring": _ring,
        "frame": _frame,
        "drop": _drop,
        "crescent": _crescent,
        "arch": _arch,
        "wall": wall,
        "column": column,
        "globe": globe,
        "entrance": entrance,
        "sign": sign,
    }
)
