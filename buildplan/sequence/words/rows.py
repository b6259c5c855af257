"""Rows: what is particular to one turn of a step. Each names what it is about, so that it
can be read alone; together with the texts they say enough to rebuild the piece."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.grammar import listed
from buildplan.language.speaking import say
from buildplan.sequence.words.grammar import ALONG, noun, several


def in_bulk(count: int, what: str) -> str:
    """`80 pairs of deep blue`."""
    return f"{count} {what}"


def chain(name: str, length: int, order: str, way: str) -> str:
    """`Chain A: 40 balloons (all deep blue), joints A1 to A40 and back to A1`."""
    return f"{name}: {several(length, 'balloon')} ({order}), joints {way}"


BY_SECTIONS = "in sections as below"


def as_chain(letter: str) -> str:
    """An order of colours told of another chain."""
    return say("in sections as chain {letter}", letter=letter)


def section(name: str, first: int, last: int, order: str) -> str:
    """`Chain A, balloons 9 to 16 (7 deep blue, 1 ivory)`."""
    if first == last:
        return say("{name}, balloon {number} ({order})", name=name, number=first, order=order)
    return say(
        "{name}, balloons {first} to {last} ({order})",
        name=name,
        first=first,
        last=last,
        order=order,
    )


def counted(first: str, last: str, back_to: str) -> str:
    """Joints that count along a chain: `A1 to A40 and back to A1`."""
    return f"{first} to {last}{f' and back to {back_to}' if back_to else ''}"


def along(joints: Sequence[str]) -> str:
    """Joints one by one: `v1 – v3 – v2`."""
    return ALONG.join(joints)


def ring(name: str, joint: str, length: int) -> str:
    """`Ring A: closed at A1, 40 balloons`."""
    return f"{name}: closed at {joint}, {several(length, 'balloon')}"


def at_joints(name: str, joints: Sequence[str]) -> str:
    """`Locks of brace 4: A4, D4`."""
    return f"{name}: {', '.join(joints)}"


def brace(
    name: str, ways: Sequence[tuple[Sequence[str], bool]], shared: Sequence[tuple[str, int]]
) -> str:
    """`Brace 3: A3 – B3 – C3 – D3, closed at A3`, or
    `Brace 5: C4 – D6 – A6 – B4, shares B4-C4 with brace 4`."""
    parts = [
        along(joints) + (f", closed at {joints[0]}" if closed else "") for joints, closed in ways
    ]
    sharing = listed([f"{link} with brace {number}" for link, number in shared])
    return f"{name}: {'; and '.join(parts)}{f', shares {sharing}' if sharing else ''}"


def of_colour(name: str, colour: str) -> str:
    """`Brace 5 (ivory)`, or the name alone."""
    return f"{name} ({colour})" if colour else name


def single(name: str, joints: Sequence[str]) -> str:
    """`Single A5-D5: A5 – D5`."""
    return f"{name}: {along(joints)}"


def join(name: str, passing: Sequence[str], ends: Sequence[str]) -> str:
    """`Joint v4: knots of chain A (2 times) and chain B; free end of chain C`."""
    parts = []
    if passing:
        parts.append(f"{noun(len(passing), 'knot')} of {listed(passing)}")
    if ends:
        parts.append(f"free {noun(len(ends), 'end')} of {listed(ends)}")
    return f"{name}: {'; '.join(parts)}"


def passes(letter: str, times: int) -> str:
    """One chain, and how often it passes."""
    return f"chain {letter}" if times == 1 else f"chain {letter} ({times} times)"
