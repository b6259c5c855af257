"""What is wrong with one value that the data model refuses: its code, the words, and what would be
right."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from buildplan.language.messages import Message, Value, mark, message, message_count
from buildplan.source.colour_names import known_names
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Path, key_in_words, key_of, meant, nearest, shown
from buildplan.source.right_forms import (
    LISTS_OF_CELLS,
    Root,
    is_advance,
    purpose,
    reminder,
    right_form,
    right_words,
)
from buildplan.source.schema_lookup import described, form_in_words, types_at
from buildplan.source.suggestions import Put, Remedy, Suggestion, by_hand, change
from buildplan.source.values import PART_NAME

COLOUR_FORM = mark("write # and six hex digits, in quotes ({example}), or a name of CSS")
A_COLOUR = '"#1F5F8B"'

# keys whose text has a form of its own: what a wrong one is not, and what would be right, with
# an example
_TEXT_FORMS: Mapping[str, tuple[str, str, str]] = {
    "currency": (
        mark("{value} is not the code of a currency"),
        mark("write its three capital letters: {example} ..."),
        "GBP, EUR, USD",
    ),
    "opening": (
        mark("{value} is not a time of day"),
        mark("write hours and minutes, in quotes: {example}"),
        '"10:00"',
    ),
    "closing": (
        mark("{value} is not a time of day"),
        mark("write hours and minutes, in quotes: {example}"),
        '"17:00"',
    ),
    "text": (
        mark("{value} holds signs that no letters are built for"),
        mark("write capitals from A to Z, digits, and a space between words: {example}"),
        "LEO 5",
    ),
    "link": (
        mark("{value} is not the address of a page"),
        mark("write it whole, as a browser shows it: {example}"),
        "https://lantern-street.example/star",
    ),
}

# keys whose value is a share of a whole, and is easily given in hundredths
_SHARES = ("spare", "margin", "tax")

# what an entry of a mapping with free keys is, by the mapping
_ENTRIES: Mapping[Path, str] = {
    ("balloons",): mark("the balloon {key}"),
    ("build", "tube", "long"): mark("the balloon of chain {key}"),
    ("colour_pattern",): mark("the colour pattern of {key}"),
    ("prices",): mark("the price of {key}"),
    ("pack_sizes",): mark("the pack size of {key}"),
    ("pack_prices",): mark("the price of a pack of {key}"),
    ("labour",): mark("the time of {key}"),
    ("text",): mark("the note of {key}"),
    ("constants",): mark("the constant {key}"),
}

# what an item of a list is, by the list
_ITEMS = {
    **dict.fromkeys(("course", "cells"), mark("a cell")),
    **dict.fromkeys(("joints", "stand_on"), mark("a joint's label")),
    "balloons": mark("a listed balloon"),
    "designs": mark("a piece of the event"),
    **dict.fromkeys(("ties", "to_next"), mark("a tie")),
    "vehicles": mark("a vehicle"),
    "doors": mark("a door"),
    "extra": mark("a balloon more"),
}
# lists whose items are lists of joints
_TIED = ("ties", "to_next", "extra")
_BALLOON, _ANY_ITEM = mark("a balloon's key"), mark("an item of {key}")

_RANGES: Mapping[str, str] = {
    "greater_than": mark("{what} must be more than {bound}, not {value}"),
    "greater_than_equal": mark("{what} must be at least {bound}, not {value}"),
    "less_than": mark("{what} must be less than {bound}, not {value}"),
    "less_than_equal": mark("{what} must be at most {bound}, not {value}"),
}

KNOWN_HERE = mark("known here: {names}")

Wrong = tuple[FileKind, Message, Suggestion]


def wrong_value(kind: str, at: Path, value: object, limits: Mapping[str, Any], root: Root) -> Wrong:
    """What is wrong at `at`, for one kind of pydantic's errors."""
    name = key_in_words(str(at[-1])) if at else ""
    what = _what(at)
    match kind:
        case "missing":
            return (
                FileKind.KEY_MISSING,
                message("{name} is missing", name=name),
                by_hand(message("add {name}: {purpose}", name=name, purpose=purpose(at, root)[1])),
            )
        case "extra_forbidden":
            return _unknown_key(at, root)
        case "string_pattern_mismatch" | "string_too_short" | "string_too_long":
            return _wrong_text(kind, at, value, limits, root)
        case "too_short" | "too_long":
            return _wrong_count(at, limits)
        case "greater_than" | "greater_than_equal" | "less_than" | "less_than_equal":
            return _out_of_range(kind, at, value, limits, root)
        case "finite_number":
            return (
                FileKind.NOT_FINITE,
                message(
                    "{what} must be an ordinary number, not {value}", what=what, value=shown(value)
                ),
                by_hand(reminder(at, root)),
            )
    if value is None and name == "colour":
        return (
            FileKind.EMPTY,
            message("colour is empty: without quotes, # and what follows is a comment"),
            by_hand(message(COLOUR_FORM, example=A_COLOUR)),
        )
    if value is None:
        return FileKind.EMPTY, message("{what} is empty", what=what), by_hand(reminder(at, root))
    return _wrong_type(at, value, root)


def _wrong_text(kind: str, at: Path, value: object, limits: Mapping[str, Any], root: Root) -> Wrong:
    name, what = key_in_words(str(at[-1])) if at else "", _what(at)
    if kind == "string_too_long":
        count = len(value) if isinstance(value, str) else 0
        return (
            FileKind.TOO_LONG,
            message_count(
                "{what} has {number} character",
                "{what} has {number} characters",
                count,
                what=what,
            ),
            by_hand(message("use at most {count}", count=limits["max_length"])),
        )
    if kind == "string_pattern_mismatch" and name in ("colour", "accent"):
        guess = nearest(str(value), known_names())
        return (
            FileKind.WRONG_FORM,
            message("{value} is not a colour", value=shown(value)),
            Suggestion(
                (message(COLOUR_FORM, example=A_COLOUR),),
                (Remedy(meant(guess), (Put(at, guess),)),) if guess else (),
            ),
        )
    if kind == "string_pattern_mismatch" and name in _TEXT_FORMS:
        is_none, right, example = _TEXT_FORMS[name]
        return (
            FileKind.WRONG_FORM,
            message(is_none, value=shown(value)),
            right_words(at, str(value)) or by_hand(message(right, example=example)),
        )
    if kind == "string_pattern_mismatch" and limits.get("pattern") == PART_NAME:
        return FileKind.WRONG_FORM, *_no_name_of_part(at, str(value))
    if kind == "string_pattern_mismatch" and isinstance(value, str) and value.strip():
        one_line = message("{what} must stand on one line, without tabs", what=what)
        return FileKind.WRONG_FORM, one_line, by_hand(reminder(at, root))
    return FileKind.BLANK, message("{what} is blank", what=what), by_hand(reminder(at, root))


def _no_name_of_part(at: Path, value: str) -> tuple[Message, Suggestion]:
    said = message("{value} cannot be the name of a part", value=shown(value))
    form = message(
        "names are one to four capitals and digits, a capital first: {example}", example="L2"
    )
    right = value.strip().upper()
    if not re.fullmatch(PART_NAME, right):
        return said, by_hand(form)
    return said, Suggestion((form,), (Remedy(meant(right), (Put(at, right),)),))


def _what(at: Path) -> Value:
    """What stands at `at`, as a subject."""
    if not at:
        return message("the file")
    name = at[-1]
    if isinstance(name, str):
        key = key_in_words(name)
        return message(_ENTRIES[at[:-1]], key=key) if at[:-1] in _ENTRIES else key
    if is_advance(at):
        return message("a cell's advance")
    if isinstance(at[-2], int) and str(at[-3]) in _TIED:
        return message(_ITEMS["joints"])
    known = _BALLOON if "colour_pattern" in at else _ANY_ITEM
    return message(_ITEMS.get(str(at[-2]), known), key=str(at[-2]))


def _unknown_key(at: Path, root: Root) -> Wrong:
    name = str(at[-1])
    around = described(types_at(at[:-1], root))
    unknown = message("unknown key {key}", key=shown(name))
    return FileKind.UNKNOWN_KEY, unknown, key_of(at, around, KNOWN_HERE)


def wrong_key(at: Path, root: Root) -> Wrong:
    """A key of a mapping whose keys are free, or are chosen from a list."""
    name = str(at[-1])
    if described(types_at(at[:-1], root)):
        return _unknown_key(at, root)
    if at[0] == "constants":
        return (
            FileKind.WRONG_FORM,
            message("{key} cannot be the name of a constant", key=shown(name)),
            by_hand(message("names are small letters and digits with _ between words")),
        )
    return (
        FileKind.WRONG_FORM,
        message("the key {key} cannot be used", key=shown(name)),
        by_hand(message("use a word of 1 to 40 characters")),
    )


def _wrong_count(at: Path, limits: Mapping[str, Any]) -> Wrong:
    found, kind = limits["actual_length"], FileKind.WRONG_COUNT
    if len(at) > 1 and isinstance(at[-1], int) and at[-2] in LISTS_OF_CELLS:
        return (
            kind,
            message("a cell in brackets has two advances, not {count}", count=found),
            by_hand(message("write [outer, inner], such as [2, 1]")),
        )
    if "min_length" in limits:
        too_few = (
            message("{what} is empty", what=_what(at))
            if found == 0
            else message("{what} has only {count}", what=_what(at), count=found)
        )
        return kind, too_few, by_hand(message("give at least {count}", count=limits["min_length"]))
    return (
        kind,
        message_count(
            "{what} has {number} entry", "{what} has {number} entries", found, what=_what(at)
        ),
        by_hand(message("use at most {count}", count=limits["max_length"])),
    )


def _out_of_range(
    kind: str, at: Path, value: object, limits: Mapping[str, Any], root: Root
) -> Wrong:
    bound = next(limits[key] for key in ("gt", "ge", "lt", "le") if key in limits)
    said = message(_RANGES[kind], what=_what(at), bound=shown(bound), value=shown(value))
    if at[-1] in _SHARES and isinstance(value, int | float) and 1 < value <= 100:
        share = value / 100
        right = message(
            "write a fraction: {value} in a hundred is {right}",
            value=f"{value:g}",
            right=f"{at[-1]}: {share:g}",
        )
        return FileKind.OUT_OF_RANGE, said, change(right, Put(at, share))
    words = reminder(at, root)
    if kind.endswith("_equal"):  # the bound itself is allowed, and the nearest that is
        right = message("write {right}", right=f"{at[-1]}: {bound:g}")
        ways = (Remedy(right, (Put(at, bound),)),)
        return FileKind.OUT_OF_RANGE, said, Suggestion((words,), ways)
    return FileKind.OUT_OF_RANGE, said, by_hand(words)


def _wrong_type(at: Path, value: object, root: Root) -> Wrong:
    """A value of another form than any that the model has at `at`."""
    kinds = types_at(at, root)
    said = message(
        "{what} must be {form}, not {value}",
        what=_what(at),
        form=form_in_words(kinds),
        value=_named(value),
    )
    return FileKind.WRONG_TYPE, said, right_form(at, kinds, value, root)


def _named(value: object) -> Value:
    """A value, with what it is."""
    match value:
        case bool():
            return message("the truth value {value}", value=shown(value))
        case str():
            return message("the text {value}", value=shown(value))
        case int() | float():
            return message("the number {value}", value=shown(value))
    return shown(value)
