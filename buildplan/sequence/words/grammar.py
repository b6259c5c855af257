"""Numbers, lists and nouns in a sentence."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

_SMALL = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
ALONG = " – "


@dataclass(frozen=True)
class Wording:
    """What a step says: its heading, what to do, and what to count when it is done."""

    title: str
    text: str
    check: str


def count_word(number: int) -> str:
    """Small numbers as words: `chain of four`, `two pairs`."""
    return _SMALL[number] if 0 <= number < len(_SMALL) else str(number)


def noun(number: int, one: str, many: str = "") -> str:
    """The noun (or verb) in the number that is meant."""
    return one if number == 1 else many or one + "s"


def several(number: int, one: str, many: str = "") -> str:
    """A number and its noun: `1 pair`, `20 pairs`."""
    return f"{number} {noun(number, one, many)}"


def listed(items: Sequence[str], last: str = "and") -> str:
    """`A`, `A and B`, `A, B and C`."""
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


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
        parts += [f"{run[0]} to {run[-1]}"] if len(run) > 2 else [str(n) for n in run]
    return listed(parts)


def numbered(one: str, numbers: Sequence[int]) -> str:
    """`step 4`, `steps 4 to 6`, `braces 1 and 2`."""
    return f"{noun(len(numbers), one)} {number_ranges(numbers)}"


def sentences(*parts: str) -> str:
    """The parts that say something, one after another."""
    return " ".join(part for part in parts if part)


def capital(text: str) -> str:
    """`text` with a capital at its start."""
    return text[:1].upper() + text[1:]


def colours(runs: Sequence[tuple[int, str]], over_and_over: bool) -> str:
    """Balloons in their order: `all deep blue`, `3 deep blue, 1 ivory, over and over`."""
    if len(runs) == 1:
        return f"all {runs[0][1]}"
    order = ", ".join(f"{count} {name}" for count, name in runs)
    return f"{order}, over and over" if over_and_over else order
