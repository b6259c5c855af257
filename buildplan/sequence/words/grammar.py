"""The forms that the sentences of the sequence share."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.language.speaking import say, say_count

ALONG = " – "


@dataclass(frozen=True)
class Wording:
    """What a step says: its heading, what to do, and what to count when it is done."""

    title: str
    text: str
    check: str


def colours(runs: Sequence[tuple[int, str]], over_and_over: bool) -> str:
    """Balloons in their order: `all deep blue`, `3 deep blue, 1 ivory, over and over`."""
    if len(runs) == 1:
        return say("all {colour}", colour=runs[0][1])
    order = ", ".join(say("{count} {colour}", count=count, colour=name) for count, name in runs)
    return say("{colours}, over and over", colours=order) if over_and_over else order


def balloons(number: int) -> str:
    """`1 balloon`, `20 balloons`."""
    return say_count("{number} balloon", "{number} balloons", number)


def pairs(number: int) -> str:
    """`1 pair`, `20 pairs`."""
    return say_count("{number} pair", "{number} pairs", number)


def locks(number: int) -> str:
    """`1 lock`, `20 locks`."""
    return say_count("{number} lock", "{number} locks", number)


def neck_knots(number: int) -> str:
    """`1 neck knot`, `20 neck knots`."""
    return say_count("{number} neck knot", "{number} neck knots", number)


def tail_knots(number: int) -> str:
    """`1 tail knot`, `20 tail knots`."""
    return say_count("{number} tail knot", "{number} tail knots", number)
