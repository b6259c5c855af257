"""Sentences of the courses in which a piece without braces is built."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from buildplan.language.grammar import sentences
from buildplan.language.speaking import say, say_count
from buildplan.sequence.words.assembling import find_knots
from buildplan.sequence.words.grammar import Wording, chain_letters


def with_chains(
    join: Wording, letters: Sequence[str], first: bool, closed: bool, odd: bool
) -> Wording:
    """The joining of a course for which chains come in."""
    told = {"letters": chain_letters(letters), "join": join.title[:1].lower() + join.title[1:]}
    if first:
        title = say_count(
            "Lay chain {letters}, and {join}",
            "Lay chains {letters}, and {join}",
            len(letters),
            **told,
        )
    else:
        title = say_count(
            "Set chain {letters} on, and {join}",
            "Set chains {letters} on, and {join}",
            len(letters),
            **told,
        )
    text = sentences(*_made_ready(closed, odd), _put_down(first), find_knots(), join.text)
    return replace(join, title=title, text=text)


def lay_alone(letters: Sequence[str], first: bool, closed: bool, odd: bool) -> Wording:
    """Chains that meet no other chain."""
    return Wording(
        title=say_count(
            "Lay chain {letters}",
            "Lay chains {letters}",
            len(letters),
            letters=chain_letters(letters),
        ),
        text=sentences(*_made_ready(closed, odd), _put_down(first)),
        check=say("Every tag is in sight, and no chain is twisted."),
    )


def _made_ready(closed: bool, odd: bool) -> list[str]:
    ring = ""
    if closed and odd:
        ring = say(
            "Close a chain whose row ends where it begins into a ring: tie its two free ends"
            " together there, without a twist."
        )
    elif closed:
        ring = say(
            "Close a chain whose row ends where it begins into a ring: tie its two free tails"
            " together there, without a twist."
        )
    return [
        say("Take one chain for each row of joints."),
        ring,
        say("Tag its knots and free ends with the names of its row, in their order."),
    ]


def _put_down(first: bool) -> str:
    if first:
        return say("Lay the chains on clear, swept floor, in their order.")
    return say("Set the chains in their place on what stands.")
