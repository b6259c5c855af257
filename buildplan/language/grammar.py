"""Numbers, lists and short forms in a sentence, for any language that has a catalogue."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from babel.lists import format_list
from babel.numbers import format_decimal, format_percent

from buildplan.language.speaking import locale, say, say_in, whole


def decimal(value: float, places: int) -> str:
    """A number with so many decimal places, always all of them: `3.06` (Spanish `3,06`)."""
    digits = "0" * places
    pattern = f"#,##0.{digits}" if places else "#,##0"
    # Python rounds halves of binary fractions as they are; a pattern alone would round again
    return format_decimal(float(f"{value:.{places}f}"), pattern, locale=locale())


def written(digits: str) -> str:
    """A number in Python's digits, with as many places as they have: `0.25` (Spanish `0,25`)."""
    return decimal(float(digits), len(digits.partition(".")[2]))


def percent(share: float) -> str:
    """A share of one in whole per cent: `12%` (Spanish `12 %`)."""
    return format_percent(round(share, 2), locale=locale())


def count_word(number: int) -> str:
    """Small numbers as words: `chain of four`, `two pairs`."""
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
    return small[number] if 0 <= number < len(small) else whole(number)


def listed(items: Sequence[str], style: Literal["standard", "or"] = "standard") -> str:
    """`A`, `A and B`, `A, B and C`, by the locale's list pattern (Unicode CLDR)."""
    return format_list(items, style, locale=locale())


def first_to_last(first: str, last: str) -> str:
    """A run of things in their order, named by its ends: `A24 to A32`."""
    return say("{first} to {last}", first=first, last=last)


def number_ranges(numbers: Sequence[int]) -> str:
    """`1 to 4, 6 and 9`: runs of three or more are joined up."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    parts: list[str] = []
    for run in runs:
        if len(run) > 2:
            parts.append(first_to_last(whole(run[0]), whole(run[-1])))
        else:
            parts += [whole(number) for number in run]
    return listed(parts)


def sentences(*parts: str) -> str:
    """The parts that say something, one after another."""
    return " ".join(part for part in parts if part)


def capital(text: str) -> str:
    """`text` with a capital at its start."""
    return text[:1].upper() + text[1:]
