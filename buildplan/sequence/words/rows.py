"""Rows: what is particular to one turn of a step. Each names what it is about, so that it
can be read alone; together with the texts they say enough to rebuild the piece."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.grammar import first_to_last, listed
from buildplan.language.speaking import say, say_count
from buildplan.sequence.words.chaining import chains_of
from buildplan.sequence.words.grammar import ALONG


def link_pairs(count: int, first: str, second: str) -> str:
    """`80 pairs, deep blue with deep blue`."""
    return say_count(
        "{number} pair, {first} with {second}",
        "{number} pairs, {first} with {second}",
        count,
        first=first,
        second=second,
    )


def lock_pairs(count: int, colour: str) -> str:
    """`160 locks, ivory rounds`."""
    return say_count(
        "{number} lock, {colour} rounds", "{number} locks, {colour} rounds", count, colour=colour
    )


def tied_off(count: int, colour: str) -> str:
    """`20 ivory balloons tied off alone`."""
    return say_count(
        "{number} {colour} balloon tied off alone",
        "{number} {colour} balloons tied off alone",
        count,
        colour=colour,
    )


short_chains = chains_of


def chain(name: str, length: int, order: str, way: str) -> str:
    """`Chain A: 40 balloons (all deep blue), joints A1 to A40 and back to A1`."""
    words = say_count(
        "{number} balloon ({order}), joints {joints}",
        "{number} balloons ({order}), joints {joints}",
        length,
        order=order,
        joints=way,
    )
    return f"{name}: {words}"


def by_sections() -> str:
    """An order of colours that the lines below tell."""
    return say("in sections as below")


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
    if back_to:
        return say(
            "{first} to {last} and back to {back_to}", first=first, last=last, back_to=back_to
        )
    return first_to_last(first, last)


def along(joints: Sequence[str]) -> str:
    """Joints one by one: `v1 – v3 – v2`."""
    return ALONG.join(joints)


def ring(name: str, joint: str, length: int) -> str:
    """`Ring A: closed at A1, 40 balloons`."""
    words = say_count(
        "closed at {joint}, {number} balloon",
        "closed at {joint}, {number} balloons",
        length,
        joint=joint,
    )
    return f"{name}: {words}"


def at_joints(name: str, joints: Sequence[str]) -> str:
    """`Locks of brace 4: A4, D4`."""
    return f"{name}: {', '.join(joints)}"


def brace(
    name: str, ways: Sequence[tuple[Sequence[str], bool]], shared: Sequence[tuple[str, int]]
) -> str:
    """`Brace 3: A3 – B3 – C3 – D3, closed at A3`, or
    `Brace 5: C4 – D6 – A6 – B4, shares B4-C4 with brace 4`."""
    said = ""
    for joints, closed in ways:
        way = along(joints)
        if closed:
            way = say("{way}, closed at {joint}", way=way, joint=joints[0])
        said = say("{way}; and {other}", way=said, other=way) if said else way
    if shared:
        links = [say("{link} with brace {brace}", link=link, brace=of) for link, of in shared]
        said = say("{way}, shares {links}", way=said, links=listed(links))
    return f"{name}: {said}"


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
        parts.append(
            say_count("knot of {chains}", "knots of {chains}", len(passing), chains=listed(passing))
        )
    if ends:
        parts.append(
            say_count(
                "free end of {chains}", "free ends of {chains}", len(ends), chains=listed(ends)
            )
        )
    return f"{name}: {'; '.join(parts)}"


def of_balloon(link: str) -> str:
    """An end of a single balloon: `balloon A3-M3`."""
    return say("balloon {link}", link=link)


def balloon(name: str, colour: str, joints: Sequence[str]) -> str:
    """`Balloon A3-M3 (ivory): A3 – M3`, tail first."""
    return say("Balloon {link} ({colour}): {way}", link=name, colour=colour, way=along(joints))


def then_locked(joint: str) -> str:
    """`Joint v4: knots of chain A and chain B; then lock it`."""
    return say("{joint}; then lock it", joint=joint)


def passes(letter: str, times: int) -> str:
    """One chain, and how often it passes."""
    if times == 1:
        return say("chain {letter}", letter=letter)
    return say_count(
        "chain {letter} ({number} time)", "chain {letter} ({number} times)", times, letter=letter
    )
