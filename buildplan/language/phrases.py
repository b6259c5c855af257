"""The short forms that sentences share in any trade: small numbers in words, runs of things."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import reduce

from buildplan.language.messages import mark
from buildplan.language.voice import Voice

FIRST_TO_LAST = mark("{first} to {last}")
CLAUSES = mark("{told}; {next}")


def sentences(*parts: str) -> str:
    """The parts that say something, one after another."""
    return " ".join(part for part in parts if part)


def clauses(voice: Voice, told: Iterable[str]) -> str:
    """What is told one thing after another: `knots of chain A; free end of chain B` (French sets
    a space before the sign)."""
    parts = list(told)
    return reduce(lambda so_far, part: voice.say(CLAUSES, told=so_far, next=part), parts or [""])


def capital(text: str) -> str:
    """`text` with a capital at its start."""
    return text[:1].upper() + text[1:]


def count_word(voice: Voice, number: int) -> str:
    """Small numbers as words: `chain of four`, `two pairs`."""
    say_in = voice.say_in
    small = (
        say_in("number", "no"),
        say_in("number", "one"),
        say_in("number", "two"),
        say_in("number", "three"),
        say_in("number", "four"),
        say_in("number", "five"),
        say_in("number", "six"),
        say_in("number", "seven"),
        say_in("number", "eight"),
        say_in("number", "nine"),
        say_in("number", "ten"),
    )
    return small[number] if 0 <= number < len(small) else voice.whole(number)


def first_to_last(voice: Voice, first: str, last: str) -> str:
    """A run of things in their order, named by its ends: `A24 to A32`."""
    return voice.say(FIRST_TO_LAST, first=first, last=last)


def runs_told(voice: Voice, names: Sequence[str], numbers: Sequence[int]) -> list[str]:
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
            told.append(first_to_last(voice, names[run[0]], names[run[-1]]))
        else:
            told += [names[place] for place in run]
    return told


def number_ranges(voice: Voice, numbers: Sequence[int]) -> str:
    """`1 to 4, 6 and 9`."""
    return voice.listed(runs_told(voice, [voice.whole(number) for number in numbers], numbers))


def short_ranges(numbers: Sequence[int]) -> str:
    """As an index has them: `1–4, 6, 9`."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join("–".join(dict.fromkeys(map(str, (run[0], run[-1])))) for run in runs)


def people_counted(voice: Voice, number: int) -> str:
    """How many people, within a sentence: `1 person`, `2 people`."""
    return voice.say_count("{number} person", "{number} people", number)
