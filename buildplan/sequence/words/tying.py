"""Sentences of the parts of an assembly: laying each, and tying them to one another."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from buildplan.language.grammar import listed, sentences
from buildplan.language.speaking import say, say_count
from buildplan.sequence.words.grammar import ALONG, Wording


def of_part(lay: Wording, part: str, first: bool) -> Wording:
    """The laying of the chains of one part; the parts before it are built and put aside."""
    aside = "" if first else say("Put the parts that are built where nobody needs the floor.")
    return replace(
        lay,
        title=say("Part {part}: {lay}", part=part, lay=lay.title[:1].lower() + lay.title[1:]),
        text=sentences(aside, lay.text),
    )


def tie_step(
    parts: Sequence[str],
    ties: int,
    people: int,
    locking: Sequence[str],
    done: str,
) -> Wording:
    """Bringing together the joints at which parts are tied."""
    fast = [say("Bind the joints fast to one another with a strip of latex.")]
    if locking:
        beside = say("The lock goes round all the joints that meet, beside their own locks.")
        fast = [*locking, beside]
    return Wording(
        title=say("Tie parts {parts} together", parts=listed(parts)),
        text=sentences(
            say(
                "Bring parts {parts} to where the finished view has them, {people} people or more"
                " to a part, and hold them there; never carry a part by one balloon.",
                parts=listed(parts),
                people=people,
            ),
            say_count(
                "Lay the joints of the row on one another, knot on knot.",
                "Lay the joints of each row on one another, knot on knot; there are {number} rows.",
                ties,
            ),
            *fast,
        ),
        check=done,
    )


def tie_row(name: str, joints: Sequence[str]) -> str:
    """`Tie L.A1+T.A1: L.A1 – T.A1`."""
    return f"{name}: {ALONG.join(joints)}"


def between_parts(single: Wording, parts: Sequence[str]) -> Wording:
    """Balloons between two parts, whose joints have their locks."""
    return replace(
        single,
        title=say("Tie parts {parts} together", parts=listed(parts)),
        text=sentences(
            say("Lay parts {parts} side by side as in the finished view.", parts=listed(parts)),
            single.text,
            say("The joints are locked already: tie in close beside the locks."),
        ),
    )
