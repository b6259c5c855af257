"""How a value of another form than the model's would be written rightly, where that can be told."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from decimal import Decimal
from itertools import groupby
from typing import Any, get_origin

from buildplan.language.messages import Message, Value, message, message_whole
from buildplan.source.almost_numbers import length_in, number_in
from buildplan.source.mistake import Path, key_in_words, meant, nearest, shown
from buildplan.source.schema_lookup import choices, described, item_types, types_at
from buildplan.source.suggestions import Put, Suggestion, by_hand, change
from buildplan.source.values import FileModel

Root = type[FileModel]
"""The form of a whole file: that of a design, or of an event."""

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
DESIGNS = "designs"
LISTS_OF_CELLS = ("course", "cells")
# keys that are true of a piece which something holds: whatever is said of that, it is there
HOLDERS = ("pole", "hung", "tied_to_wall")
COUNTED = ("stripes", "spiral")
_GROUP = re.compile(r"(?:([0-9]{1,3}) *[x×*]? *)?([a-z_]+)(?: *[x×*] *([0-9]{1,3}))?")
_TRUE_WORDS = ("yes", "on", "y", "true")
# the first of ISO 4217 that is meant by a word or a sign; from memory
_CURRENCIES = {
    **dict.fromkeys(("euro", "euros", "€"), "EUR"),
    **dict.fromkeys(("pound", "pounds", "£", "sterling"), "GBP"),
    **dict.fromkeys(("dollar", "dollars", "$", "us$"), "USD"),
}
_FALSE_WORDS = ("no", "off", "n", "false")


def right_form(at: Path, kinds: Sequence[Any], value: object, root: Root) -> Suggestion:
    """How `value` would be written rightly, if that can be told; else what it is for.

    `kinds` are the types that the model has at `at`.
    """
    name = f"{key_in_words(at[-1])}: " if at and isinstance(at[-1], str) else ""
    found: Suggestion | None = None
    if bool in kinds and at[-1] in HOLDERS and not isinstance(value, list | dict):
        found = _right_truth(at, value)
    elif isinstance(value, str):
        found = _right_text(at, kinds, value, name)
    elif isinstance(value, int | float):
        found = _right_number(at, kinds, value, name)
        if found is None and len(at) > 1 and at[-2] in LISTS_OF_CELLS:
            advances = message("write [outer, inner], such as [2, 1]")
            found = Suggestion((reminder(at, root), advances))
    elif isinstance(value, list) and at[-1] in COUNTED:
        found = _right_counts(at, value, name)
    return by_hand(reminder(at, root)) if found is None else found


def _right_truth(at: Path, value: object) -> Suggestion:
    """That a piece is held, or that it is not."""
    truth = value not in (0, 0.0) and str(value).strip().lower() not in _FALSE_WORDS
    right = message("write {right}, without quotes", right=f"{at[-1]}: {shown(truth)}")
    return change(right, Put(at, truth))


def _right_counts(at: Path, value: Sequence[object], name: str) -> Suggestion | None:
    """Balloons one after another, as how many of each."""
    runs = [(key, len(list(same))) for key, same in groupby(value)]
    counts = {key: number for key, number in runs if isinstance(key, str)}
    if not counts or len(counts) < len(runs):
        return None
    said = ", ".join(f"{key_in_words(key)}: {number}" for key, number in counts.items())
    right = message("say how many of each in turn: {right}", right=f"{name}{{{said}}}")
    return change(right, Put(at, counts))


def _right_text(at: Path, kinds: Sequence[Any], value: str, name: str) -> Suggestion | None:
    known, key = choices(kinds), str(at[-1]) if at else ""
    plain = number_in(value, key)
    if (plain in known) if known else (plain and _NUMBERS.intersection(kinds)):
        right = message("write the number alone, without quotes: {right}", right=f"{name}{plain}")
        return change(right, Put(at, float(plain) if "." in plain else int(plain)))
    length = length_in(value, key) if _NUMBERS.intersection(kinds) else ""
    if length:
        return change(message("write {right}", right=f"{name}{length}"), Put(at, length))
    word = nearest(value.lower(), (*_TRUE_WORDS, *_FALSE_WORDS)) if bool in kinds else None
    if word is not None:
        truth = word in _TRUE_WORDS
        right = message("write {right}, without quotes", right=f"{name}{shown(truth)}")
        return change(right, Put(at, truth))
    group = _right_group(at, known, value) or _right_cells(at, known, value)
    if group is not None:
        return group
    guess = nearest(value, known) or OTHER_NAMES.get(value.strip().lower())
    if guess in known:
        return change(meant(guess), Put(at, guess))
    return _right_list(at, kinds, value, name)


def _right_group(at: Path, known: Sequence[str], value: str) -> Suggestion | None:
    """A cell that is said to be laid several times: `straight x2`."""
    found = _GROUP.fullmatch(value.strip().lower())
    if len(at) < 2 or at[-2] not in LISTS_OF_CELLS or found is None or found[2] not in known:
        return None
    if bool(found[1]) == bool(found[3]):
        return None
    times = int(found[1] or found[3])
    right = message("write {right}", right=f"{{repeat: {times}, cells: [{found[2]}]}}")
    return change(right, Put(at, {"repeat": times, "cells": [found[2]]}))


def _right_cells(at: Path, known: Sequence[str], value: str) -> Suggestion | None:
    """Several cells without commas between: `straight fan`."""
    cells = value.lower().split()
    if len(at) < 2 or at[-2] not in LISTS_OF_CELLS or len(cells) < 2 or not {*cells} <= {*known}:
        return None
    return by_hand(message("write {right}", right=", ".join(cells)))


def _right_list(at: Path, kinds: Sequence[Any], value: str, name: str) -> Suggestion | None:
    """A text in place of a list, or of an item of one."""
    list_of = next((str(step) for step in reversed(at[-2:]) if step in PAIRS), None)
    if list_of is not None:
        return by_hand(message("give each pair a list of its own: {right}", right=PAIRS[list_of]))
    if len(at) > 1 and at[-2] == DESIGNS:
        right = message("write {right}", right=f"{{design: {key_in_words(value)}}}")
        return change(right, Put(at, {"design": value}))
    inner = [one for kind in kinds if get_origin(kind) is list for one in item_types(kind)]
    if not inner or choices(kinds) or not (str in inner or choices(inner)):
        return None
    items = [one for one in re.split(r"\s*,\s*", value.strip()) if one]
    said = ", ".join(map(key_in_words, items))
    return change(message("write it as a list: {right}", right=f"{name}[{said}]"), Put(at, items))


def right_words(at: Path, value: str) -> Suggestion | None:
    """A text that has a form of its own and is written otherwise: a currency, a time of day."""
    return _right_code(at, value) or right_time(at, value)


def _right_code(at: Path, value: str) -> Suggestion | None:
    """The code of a currency that a word or a sign stands for, if that can be told."""
    given = value.strip().lower()
    code = _CURRENCIES.get(given, given.upper() if re.fullmatch("[a-z]{3}", given) else "")
    if at[-1] != "currency" or not code:
        return None
    return change(meant(code), Put(at, code))


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
    if at and at[-1] in TIMES_OF_DAY:
        return right_time(at, value)
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
