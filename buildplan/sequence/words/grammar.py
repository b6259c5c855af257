"""The forms that the sentences of the sequence share."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.language.grammar import number_ranges
from buildplan.language.speaking import say

ALONG = " – "


@dataclass(frozen=True)
class Wording:
    """What a step says: its heading, what to do, and what to count when it is done."""

    title: str
    text: str
    check: str


def noun(number: int, one: str, many: str = "") -> str:
    """The noun (or verb) in the number that is meant."""
    return one if number == 1 else many or one + "s"


def several(number: int, one: str, many: str = "") -> str:
    """A number and its noun: `1 pair`, `20 pairs`."""
    return f"{number} {noun(number, one, many)}"


def numbered(one: str, numbers: Sequence[int]) -> str:
    """`step 4`, `steps 4 to 6`, `braces 1 and 2`."""
    return f"{noun(len(numbers), one)} {number_ranges(numbers)}"


def colours(runs: Sequence[tuple[int, str]], over_and_over: bool) -> str:
    """Balloons in their order: `all deep blue`, `3 deep blue, 1 ivory, over and over`."""
    if len(runs) == 1:
        return say("all {colour}", colour=runs[0][1])
    order = ", ".join(say("{count} {colour}", count=count, colour=name) for count, name in runs)
    return say("{colours}, over and over", colours=order) if over_and_over else order
