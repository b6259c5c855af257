"""Laying out chains that are brought together later; those that are braced are `laid_out.py`'s."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, TYPE
from buildplan.drawing.marks import Label, Mark, Picture
from buildplan.drawing.techniques.props import (
    HEIGHT,
    WIDTH,
    link,
    picture,
    words,
)
from buildplan.framework.model import Framework, LongChain
from buildplan.language.phrases import first_to_last
from buildplan.language.voice import Voice

LOOSE_CHAINS, LOOSE_ROW, LOOSE_LINK = 7, 20.0, 14.0  # chains on the floor, and points


def lay_course(framework: Framework, voice: Voice, chains: Sequence[LongChain] = ()) -> Picture:
    """Chains that are brought together only later, all if none are given: one below the other in
    the order of their letters, each with the tag of its first knot and of its last."""
    marks: list[Mark] = []
    chains = chains or framework.chains
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
