"""Telling which way the numbers of chains run."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from buildplan.framework.model import LongChain
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters
from buildplan.language.messages import mark
from buildplan.sequence.chains import numbered_round
from buildplan.sequence.directions import Direction

_ALL: Mapping[Direction, str] = {
    Direction.CLOCKWISE: mark("Seen from above, the numbers run clockwise."),
    Direction.ANTICLOCKWISE: mark("Seen from above, the numbers run anticlockwise."),
    Direction.RIGHT: mark("The numbers run from left to right."),
    Direction.LEFT: mark("The numbers run from right to left."),
    Direction.UP: mark("The numbers run from the foot to the top."),
    Direction.DOWN: mark("The numbers run from the top to the foot."),
    Direction.BACK: mark("The numbers run from the front to the back."),
    Direction.FRONT: mark("The numbers run from the back to the front."),
}

_OF: Mapping[Direction, str] = {
    Direction.CLOCKWISE: mark("on {letters} clockwise, seen from above"),
    Direction.ANTICLOCKWISE: mark("on {letters} anticlockwise, seen from above"),
    Direction.RIGHT: mark("on {letters} from left to right"),
    Direction.LEFT: mark("on {letters} from right to left"),
    Direction.UP: mark("on {letters} from the foot to the top"),
    Direction.DOWN: mark("on {letters} from the top to the foot"),
    Direction.BACK: mark("on {letters} from the front to the back"),
    Direction.FRONT: mark("on {letters} from the back to the front"),
}


def ways_told(context: Context, chains: Sequence[LongChain]) -> str:
    """Which way the numbers of chains run: once where all run one way. Nothing of chains whose
    joints are not counted along them, and of those that go neither round nor along."""
    voice, found = context.voice, dict[Direction, list[str]]()
    for long in chains:
        way = context.figures.ways.get(long.letter, Direction.NEITHER)
        counted = context.piece.counts_along(long) or numbered_round(long)
        if way is not Direction.NEITHER and counted:
            found.setdefault(way, []).append(long.letter)
    if not found:
        return ""
    if len(found) == 1:
        return voice.say(_ALL[next(iter(found))])
    ways = [
        voice.say(_OF[way], letters=chain_letters(voice, letters)) for way, letters in found.items()
    ]
    return voice.say("The numbers run {ways}.", ways=voice.listed(ways))
