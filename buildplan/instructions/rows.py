"""Rows: what is particular to one turn of a step. Each names what it is about, so that it can be
read alone; together with the texts they say enough to rebuild the piece, and `reading` does.

A row is its name, a colon, and the words that go with it.
"""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.instructions.grammar import ALONG
from buildplan.instructions.model import RowWords
from buildplan.instructions.read_back import (
    AND_ANOTHER,
    AND_BACK,
    AS_BELOW,
    AS_CHAIN,
    BALLOON_END,
    CHAIN,
    CHAINS_IN_ORDER,
    COLOURED_ROW,
    FREE_ENDS,
    KNOTS,
    LINK_PAIRS,
    LOCK_PAIRS,
    PASSES,
    PASSES_OFTEN,
    RING,
    ROW,
    SECTION,
    SECTION_OF_ONE,
    SHARES,
    SHORT_CHAINS,
    THEN_LOCKED,
    TIED_BY_LOCK,
    TIED_OFF,
)
from buildplan.language.phrases import clauses, count_word, first_to_last
from buildplan.language.voice import Voice


def row(voice: Voice, name: str, words: str, colour: str = "") -> RowWords:
    """A row of a name and what is said of it; `Brace 5 (ivory): ...` where a colour is told."""
    if colour:
        return RowWords(name, words, voice.say(COLOURED_ROW, name=name, colour=colour, words=words))
    return RowWords(name, words, voice.say(ROW, name=name, words=words))


def alone(words: str) -> RowWords:
    """A row of work without a name."""
    return RowWords("", words, words)


def link_pairs(voice: Voice, count: int, first: str, second: str) -> RowWords:
    """`80 pairs, deep blue with deep blue`."""
    return alone(
        voice.say_count(
            *LINK_PAIRS,
            count,
            first=first,
            second=second,
        )
    )


def lock_pairs(voice: Voice, count: int, colour: str) -> RowWords:
    """`160 locks, ivory rounds`."""
    return alone(
        voice.say_count(
            *LOCK_PAIRS,
            count,
            colour=colour,
        )
    )


def tied_off(voice: Voice, count: int, colour: str) -> RowWords:
    """`20 ivory balloons tied off alone`."""
    return alone(
        voice.say_count(
            *TIED_OFF,
            count,
            colour=colour,
        )
    )


def short_chains(voice: Voice, count: int, length: int, colour: str) -> RowWords:
    """`30 chains of four ivory balloons`."""
    return alone(
        voice.say_count(
            *SHORT_CHAINS,
            count,
            length=count_word(voice, length),
            colour=colour,
        )
    )


def chains_in_order(voice: Voice, count: int, length: int, order: str) -> RowWords:
    """`10 chains of 4 (all leaf green)`."""
    return alone(
        voice.say_count(
            *CHAINS_IN_ORDER,
            count,
            length=length,
            order=order,
        )
    )


def then_locked(voice: Voice, joint: RowWords) -> RowWords:
    """`Joint v4: knots of chain A and chain B; then lock it`."""
    line = voice.say(THEN_LOCKED, joint=joint.line)
    return RowWords(joint.name, voice.say(THEN_LOCKED, joint=joint.said), line)


def tied(voice: Voice, name: str) -> RowWords:
    """`Tie L.E1+T.A1: one lock round all`."""
    return row(voice, name, voice.say(TIED_BY_LOCK))


def balloon(voice: Voice, link: str, colour: str, joints: Sequence[str]) -> RowWords:
    """`Balloon A3-M3 (ivory): A3 – M3`, tail first."""
    return row(voice, voice.say("Balloon {link}", link=link), along(joints), colour)


def chain(voice: Voice, name: str, length: int, order: str, way: str) -> RowWords:
    """`Chain A: 40 balloons (all deep blue), joints A1 to A40 and back to A1`."""
    return row(voice, name, voice.say_count(*CHAIN, length, order=order, joints=way))


def by_sections(voice: Voice) -> str:
    """An order of colours that the lines below tell."""
    return voice.say(AS_BELOW)


def as_chain(voice: Voice, letter: str) -> str:
    """An order of colours told of another chain."""
    return voice.say(AS_CHAIN, letter=letter)


def section(voice: Voice, name: str, first: int, last: int, order: str) -> RowWords:
    """`Chain A, balloons 9 to 16 (7 deep blue, 1 ivory)`."""
    line = voice.say(SECTION, name=name, first=first, last=last, order=order)
    if first == last:
        line = voice.say(SECTION_OF_ONE, name=name, number=first, order=order)
    return RowWords(name, order, line)


def counted(voice: Voice, first: str, last: str, back_to: str) -> str:
    """Joints that count along a chain: `A1 to A40 and back to A1`."""
    if back_to:
        return voice.say(AND_BACK, first=first, last=last, back_to=back_to)
    return first_to_last(voice, first, last)


def along(joints: Sequence[str]) -> str:
    """Joints one by one: `v1 – v3 – v2`."""
    return ALONG.join(joints)


def ring(voice: Voice, name: str, joint: str, length: int) -> RowWords:
    """`Ring A: closed at A1, 40 balloons`."""
    words = voice.say_count(
        *RING,
        length,
        joint=joint,
    )
    return row(voice, name, words)


def at_joints(voice: Voice, name: str, joints: Sequence[str]) -> RowWords:
    """`Locks: A4, D4`."""
    return row(voice, name, ", ".join(joints))


def brace(
    voice: Voice,
    name: str,
    colour: str,
    ways: Sequence[tuple[Sequence[str], bool]],
    shared: Sequence[str],
) -> RowWords:
    """`Brace 3: A3 – B3 – C3 – D3 – A3`, or
    `Brace 5 (ivory): C4 – D6 – A6 – B4, shares B4-C4`."""
    said = ""
    for joints, closed in ways:
        way = along([*joints, *(joints[:1] if closed else ())])
        said = voice.say(AND_ANOTHER, way=said, other=way) if said else way
    if shared:
        said = voice.say(SHARES, way=said, links=voice.listed(shared))
    return row(voice, name, said, colour)


def join(
    voice: Voice,
    name: str,
    passing: Sequence[tuple[str, int]],
    ends: Sequence[tuple[str, int]],
    balloons: Sequence[str] = (),
) -> RowWords:
    """`Joint v4: knots of chain A (2 times) and chain B; free end of chain C`. `balloons` are links
    that are chains by themselves, and end there."""
    parts = []
    if passing:
        parts.append(
            voice.say_count(
                *KNOTS,
                len(passing),
                chains=voice.listed([passes(voice, *one) for one in passing]),
            )
        )
    free = [passes(voice, *one) for one in ends]
    free += [voice.say(BALLOON_END, link=link) for link in balloons]
    if free:
        parts.append(
            voice.say_count(
                *FREE_ENDS,
                len(free),
                chains=voice.listed(free),
            )
        )
    return row(voice, name, clauses(voice, parts))


def passes(voice: Voice, letter: str, times: int) -> str:
    """One chain, and how often it passes."""
    if times == 1:
        return voice.say(PASSES, letter=letter)
    return voice.say_count(*PASSES_OFTEN, times, letter=letter)
