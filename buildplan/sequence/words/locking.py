"""Sentences of the locks."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.grammar import listed
from buildplan.language.speaking import say, say_count


def lock(balloon: str) -> str:
    """Setting the locks of what has just been tied."""
    return say(
        "Take one lock, a pair of {colour} rounds, for each joint of the row. Lay its knot"
        " on the joint, one round to either side, and twist the two rounds round the joint"
        " and past each other until every knot there is held.",
        colour=balloon,
    )


def each_before_the_next() -> str:
    """Several turns of tying and locking."""
    return say("Lock each before you go on to the next.")


def pull() -> str:
    return say("Pull gently: no joint slips.")


def locks_so_far(standing: int, total: int) -> str:
    return say("Locks so far: {done} of {total}.", done=standing, total=total)


def roll() -> str:
    """Joints of the side that lies on the floor."""
    return say("Roll the bundle towards you to reach the joints at the back.")


def waits(joints: Sequence[str], brace: int) -> str:
    """Joints whose lock comes later."""
    return say_count(
        "{joints} waits for its lock until brace {brace} is tied in there.",
        "{joints} wait for their locks until brace {brace} is tied in there.",
        len(joints),
        joints=listed(joints),
        brace=brace,
    )


def waits_for_turning(joints: Sequence[str]) -> str:
    """Joints that are locked with the piece turned over."""
    if not joints:
        return ""
    return say_count(
        "{joints} waits for its lock until the piece is turned over.",
        "{joints} wait for their locks until the piece is turned over.",
        len(joints),
        joints=listed(joints),
    )
