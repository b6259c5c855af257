"""How a value of another form than the model's would be written rightly, where that can be told."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Any, get_origin

from buildplan.language.messages import Message, Value, message, message_whole
from buildplan.source.mistake import Path, key_in_words, meant, nearest, shown
from buildplan.source.schema_lookup import choices, described, types_at
from buildplan.source.suggestions import Put, Suggestion, by_hand, change
from buildplan.source.values import FileModel

Root = type[FileModel]
"""The form of a whole file: that of a design, or of an event."""

# a number that is almost one: with a unit or a per cent sign, or a decimal comma
_NUMBER_IN_TEXT = re.compile(
    r"\s*[£$€]?\s*(-?[0-9]{1,9}([.,][0-9]{1,9})?)\s*(%|in|inch|inches|\"|cm|kg|min|minutes|[£$€])?\s*"
)
_TIME = re.compile(r"([0-9]{1,2})(?:[:.,h ]([0-9]{1,2}))? *(am|pm|h)?")
_NUMBERS = frozenset({int, float, Decimal})
# choices by other names
OTHER_NAMES: Mapping[str, str] = {
    **dict.fromkeys(("inch", "inches", '"', "zoll", "pulgada", "pulgadas"), "in"),
    **dict.fromkeys(("centimetre", "centimetres", "centimeter", "centimeters", "cms"), "cm"),
}
# lists of pairs of joints, each with an example
PAIRS: Mapping[str | int, str] = {
    "extra": "extra: [[A2, D20], [A3, D19]]",
    "ties": "ties: [[L.A1, B.A1], [L.A2, B.A2]]",
    "to_next": "to_next: [[A1, A1], [A2, A2]]",
}
TIMES_OF_DAY = ("opening", "closing")
LISTS_OF_CELLS = ("course", "cells")
_TRUE_WORDS = ("yes", "on", "y", "true")
_FALSE_WORDS = ("no", "off", "n", "false")


def right_form(at: Path, kinds: Sequence[Any], value: object, root: Root) -> Suggestion:
    """How `value` would be written rightly, if that can be told; else what it is for.

    `kinds` are the types that the model has at `at`.
    """
    name = f"{key_in_words(at[-1])}: " if at and isinstance(at[-1], str) else ""
    found: Suggestion | None = None
    if isinstance(value, str):
        found = _right_text(at, kinds, value, name)
    elif isinstance(value, int | float):
        found = _right_number(at, kinds, value, name)
    return by_hand(reminder(at, root)) if found is None else found


def _right_text(at: Path, kinds: Sequence[Any], value: str, name: str) -> Suggestion | None:
    known = choices(kinds)
    plain = _number_in(value)
    if (plain in known) if known else (plain and _NUMBERS.intersection(kinds)):
        right = message("write the number alone, without quotes: {right}", right=f"{name}{plain}")
        return change(right, Put(at, float(plain) if "." in plain else int(plain)))
    if bool in kinds and value.lower() in (*_TRUE_WORDS, *_FALSE_WORDS):
        truth = value.lower() in _TRUE_WORDS
        right = message("write {right}, without quotes", right=f"{name}{shown(truth)}")
        return change(right, Put(at, truth))
    guess = nearest(value, known) or OTHER_NAMES.get(value.strip().lower())
    if guess in known:
        return change(meant(guess), Put(at, guess))
    if len(at) > 1 and at[-2] in PAIRS:
        return by_hand(message("give each pair a list of its own: {right}", right=PAIRS[at[-2]]))
    if any(get_origin(kind) is list for kind in kinds) and not known:
        right = message("write it as a list: {right}", right=f"{name}[{key_in_words(value)}]")
        return change(right, Put(at, [value]))
    return None


def _number_in(text: str) -> str:
    """The number that a text almost is, as the file has to write it; else nothing."""
    found = _NUMBER_IN_TEXT.fullmatch(text)
    if found is None:
        return ""
    plain = found[1].replace(",", ".")
    return f"{float(plain) / 100:g}" if found[3] == "%" else plain


def right_time(at: Path, value: float | str) -> Suggestion | None:
    """A time of day that is written otherwise: 10, 10.30, 10h, 9 am, 5:30 pm."""
    found = _TIME.fullmatch(str(value).strip().lower())
    if not at or at[-1] not in TIMES_OF_DAY or found is None:
        return None
    hour, minutes = int(found[1]), (found[2] or "0").ljust(2, "0")
    hour = hour % 12 + 12 * (found[3] == "pm") if found[3] in ("am", "pm") else hour
    if hour > 23 or int(minutes) > 59:
        return None
    time = f"{hour:02}:{minutes}"
    right = message("write hours and minutes, in quotes: {example}", example=f'"{time}"')
    return change(right, Put(at, time))


def _right_number(at: Path, kinds: Sequence[Any], value: float, name: str) -> Suggestion | None:
    time = right_time(at, value)
    if time is not None:
        return time
    if str in kinds and not choices(kinds):
        written = str(shown(value))
        right = message("put it in quotes if that is meant: {right}", right=f'{name}"{written}"')
        return change(right, Put(at, written))
    if int in kinds and isinstance(value, float) and abs(value) < 1e9:
        right = message("write a whole number: {right}", right=f"{name}{round(value)}")
        return change(right, Put(at, round(value)))
    return None


def reminder(at: Path, root: Root) -> Message:
    """What the value at `at` is for."""
    if is_advance(at):
        return message("write [outer, inner], whole numbers from 0 to 20")
    name, what_for = purpose(at, root)
    return message("{name}: {purpose}", name=name, purpose=what_for)


def is_advance(at: Path) -> bool:
    """Whether `at` leads to m or n of a cell [m, n], a list in the list of a course."""
    inner = len(at) > 2 and isinstance(at[-1], int) and isinstance(at[-2], int)
    return inner and at[-3] in LISTS_OF_CELLS


def purpose(at: Path, root: Root) -> tuple[Value, Message]:
    """The nearest key at or above `at` that the model describes, and what it is for."""
    for end in range(len(at), 0, -1):
        keys = described(types_at(at[: end - 1], root))
        if keys.get(str(at[end - 1])):
            key = str(at[end - 1])  # a key of the model's own
            return key, message_whole(keys[key])
    return message("the file"), message("a set of keys with their values")
