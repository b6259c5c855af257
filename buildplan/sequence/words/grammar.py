"""The forms that the sentences of the sequence share."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.language.grammar import first_to_last, listed
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


def runs_told(names: Sequence[str], numbers: Sequence[int]) -> list[str]:
    """Names with their numbers: `A1 to A8`, `A12`; runs of three or more are joined up."""
    runs: list[list[int]] = []
    for place, number in enumerate(numbers):
        if runs and number == numbers[runs[-1][-1]] + 1:
            runs[-1].append(place)
        else:
            runs.append([place])
    told: list[str] = []
    for run in runs:
        if len(run) > 2:
            told.append(first_to_last(names[run[0]], names[run[-1]]))
        else:
            told += [names[place] for place in run]
    return told


def chain_letters(letters: Sequence[str]) -> str:
    """`A to D and G`: the letters of chains."""
    return listed(runs_told(letters, [_number(letter) for letter in letters]))


def _number(letters: str) -> int:
    """A is 1, Z 26, AA 27; letters of another kind follow nothing."""
    number = 0
    for letter in letters:
        number = 26 * number + ord(letter) - ord("A") + 1
    return number if letters.isascii() and letters.isupper() else -1


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
