"""Short chains, of which braces are made, with the ends that they are tied in by."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from buildplan.drawing.marks import Mark, Picture
from buildplan.drawing.techniques.props import (
    Strand,
    badge,
    knot,
    link,
    lip,
    palette,
    picture,
    signs,
    tail_end,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

ONE_CHAIN_HEIGHT = 72.0
FIRST_END, PITCH, FAT = 46.0, 40.0, 34.0  # of short chains: where they begin, and their balloons

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
    own = palette(framework)
    colour = framework.balloons[balloon].colour if balloon else own.brace
    sign = signs(framework).get(balloon, 0) if balloon else own.brace_sign
    marks: list[Mark] = []
    for row, size in enumerate(wanted):
        y = (100.0, 34.0)[row] if len(wanted) > 1 else 34.0
        ends = [FIRST_END + PITCH * i for i in range(size + 1)]
        marks += _free_ends(ends[0], ends[-1], y, colour, closed=size % 2 == 1)
        for a, b in pairwise(ends):
            marks += link((a + 1, y), (b - 1, y), FAT, colour, sign=sign)
        for i, x in enumerate(ends[1:-1], 1):
            marks += knot((x, y), 0, colour, 3.0)
            marks.append(words((x, y + 22), voice.say("necks") if i % 2 else voice.say("tails")))
        if size % 2:
            marks.append(words((ends[-1] + 12, y - 29), voice.say("closed neck"), "end"))
        marks += badge((14, y), str(size))
    drawn = picture(marks, sentences(*(voice.say(SHORT_CHAINS[size]) for size in wanted)))
    return drawn if len(wanted) > 1 else replace(drawn, height=ONE_CHAIN_HEIGHT)


def _free_ends(left: float, right: float, y: float, colour: str, closed: bool) -> list[Mark]:
    """The free ends of a short chain: a tail, and another or a neck `closed` by its own knot."""
    tail = Strand(((left, y, 0), (left - 6, y, 0), (left - 11, y, 0)), colour, 4.5)
    marks = [*weave([tail]), *tail_end(tail)]
    reach = 16 if closed else 11
    end = Strand(((right, y, 0), (right + reach / 2, y, 0), (right + reach, y, 0)), colour, 4.5)
    marks += weave([end])
    if not closed:
        return [*marks, *tail_end(end)]
    return [*marks, *knot((right + 4, y), 0, colour, 3.0), *lip(end)]
