"""Numbers, lists and short forms in the language that is spoken at the moment.

On its way out: a `Voice` (`language/voice.py`) has its numbers and lists, `language/phrases.py`
the rest.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from buildplan.language import phrases
from buildplan.language.phrases import capital, sentences
from buildplan.language.speaking import spoken_voice

__all__ = [
    "capital",
    "count_word",
    "decimal",
    "first_to_last",
    "listed",
    "number_ranges",
    "percent",
    "sentences",
    "written",
]


def decimal(value: float, places: int) -> str:
    """A number with so many decimal places, always all of them: `3.06` (Spanish `3,06`)."""
    return spoken_voice().decimal(value, places)


def written(digits: str) -> str:
    """A number in Python's digits, with as many places as they have: `0.25` (Spanish `0,25`)."""
    return spoken_voice().written(digits)


def percent(share: float) -> str:
    """A share of one in whole per cent: `12%` (Spanish `12 %`)."""
    return spoken_voice().percent(share)


def count_word(number: int) -> str:
    """Small numbers as words: `chain of four`, `two pairs`."""
    return phrases.count_word(spoken_voice(), number)


def listed(items: Sequence[str], style: Literal["standard", "or"] = "standard") -> str:
    """`A`, `A and B`, `A, B and C`, by the locale's list pattern (Unicode CLDR)."""
    return spoken_voice().listed(items, style)


def first_to_last(first: str, last: str) -> str:
    """A run of things in their order, named by its ends: `A24 to A32`."""
    return phrases.first_to_last(spoken_voice(), first, last)


def number_ranges(numbers: Sequence[int]) -> str:
    """`1 to 4, 6 and 9`: runs of three or more are joined up."""
    return phrases.number_ranges(spoken_voice(), numbers)
