"""Sentences of the locks."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.grammar import listed, number_ranges, sentences
from buildplan.language.speaking import say, say_count
from buildplan.sequence.words.grammar import (
    Wording,
)


def lock_step(
    of: str,
    balloon: str,
    getting_at: Sequence[str],
    waiting: Sequence[str],
    standing: int,
    total: int,
) -> Wording:
    """Locks of the braces, singles or joints of the step before."""
    return Wording(
        title=say("Lock {what}", what=of),
        text=sentences(
            say(
                "Take one lock, a pair of {colour} rounds, for each joint of the row. Lay its knot"
                " on the joint, one round to either side, and twist the two rounds round the joint"
                " and past each other until every knot there is held.",
                colour=balloon,
            ),
            *getting_at,
            *waiting,
        ),
        check=say(
            "Pull gently: no joint slips. Locks so far: {done} of {total}.",
            done=standing,
            total=total,
        ),
    )


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


def braces_to_lock(numbers: Sequence[int]) -> str:
    """`braces 1 to 4`."""
    return say_count(
        "brace {braces}", "braces {braces}", len(numbers), braces=number_ranges(numbers)
    )


def singles_to_lock(names: Sequence[str]) -> str:
    """`both ends of single A5-D5`."""
    return say_count(
        "both ends of single {singles}",
        "both ends of singles {singles}",
        len(names),
        singles=listed(names),
    )


def joints_to_lock(names: Sequence[str]) -> str:
    """`joints v1 and v4`."""
    return say_count("joint {joints}", "joints {joints}", len(names), joints=listed(names))
