"""What the data model refuses, in plain words: pydantic's errors as mistakes in the file."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, get_origin

from pydantic_core import ErrorDetails

from buildplan.design.source.mistake import (
    Mistake,
    Path,
    key_in_words,
    meant,
    nearest,
    one_of,
    shown,
)
from buildplan.design.source.schema_lookup import choices, described, form_in_words, types_at
from buildplan.design.values import FileModel
from buildplan.language.speaking import mark, say, say_count, say_whole

COLOUR_FORM = mark("write # and six hex digits, in quotes: {example}")
A_COLOUR = '"#1F5F8B"'
# keys whose text has a form of its own: what a wrong one is not, and what would be right, with
# an example
_TEXT_FORMS: Mapping[str, tuple[str, str, str]] = {
    "colour": (mark("{value} is not a colour"), COLOUR_FORM, A_COLOUR),
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
    "text": (
        mark("{value} holds signs that no letters are built for"),
        mark("write capitals from A to Z, digits, and a space between words: {example}"),
        "LEO 5",
    ),
}
# keys whose value is a share of a whole, and is easily given in hundredths
_SHARES = ("spare", "margin", "tax")

# a number that is almost one: with a unit or a per cent sign, or a decimal comma
_NUMBER_IN_TEXT = re.compile(r"\s*(-?[0-9]{1,9}([.,][0-9]{1,9})?)\s*(%|in|inch|inches|\"|cm)?\s*")
_TRUE_WORDS = ("yes", "on", "y", "true")
_FALSE_WORDS = ("no", "off", "n", "false")

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
    "course": mark("a cell"),
    "cells": mark("a cell"),
    "joints": mark("a joint's label"),
    "stand_on": mark("a joint's label"),
    "balloons": mark("a listed balloon"),
    "designs": mark("a piece of the event"),
}
_ANY_ITEM = mark("a balloon's key")
_RANGES: Mapping[str, str] = {
    "greater_than": mark("{what} must be more than {bound}, not {value}"),
    "greater_than_equal": mark("{what} must be at least {bound}, not {value}"),
    "less_than": mark("{what} must be less than {bound}, not {value}"),
    "less_than_equal": mark("{what} must be at most {bound}, not {value}"),
}
KNOWN_HERE = mark("known here: {names}")


Root = type[FileModel]
"""The form of a whole file: that of a design, or of an event."""


def mistakes_in(errors: Iterable[ErrorDetails], data: object, root: Root) -> Iterator[Mistake]:
    """What pydantic found wrong in `data`, a file of the form `root`, in our own words."""
    found = []
    for one in errors:
        at, is_key = _place(one["loc"], data)
        found.append((one, at, is_key))
    misspelt = set(_misspelt([(one["type"], at) for one, at, _ in found], root))
    for one, at, is_key in found:
        if one["type"] == "missing" and at in misspelt:
            continue
        if is_key:
            message, suggestion = _wrong_key(at, root)
        else:
            limits: Mapping[str, Any] = one.get("ctx", {})
            message, suggestion = _words(one["type"], at, _value_at(at, data), limits, root)
        yield Mistake(at, message, suggestion)


def _misspelt(found: Sequence[tuple[str, Path]], root: Root) -> Iterator[Path]:
    """Places of missing keys that an unknown key beside them must be a slip for."""
    missing: dict[Path, list[str]] = {}
    for kind, at in found:
        if kind == "missing":
            missing.setdefault(at[:-1], []).append(str(at[-1]))
    for kind, at in found:
        if kind == "extra_forbidden":
            guess = nearest(str(at[-1]), described(types_at(at[:-1], root)))
            if guess is not None and guess in missing.get(at[:-1], ()):
                yield (*at[:-1], guess)


def _place(loc: Sequence[str | int], data: object) -> tuple[Path, bool]:
    """pydantic's location without the marks of union forms, and whether a key is at fault."""
    at: list[str | int] = []
    for position, step in enumerate(loc):
        if step == "[key]":
            return tuple(at), True
        inside, value = _step(data, step)
        if inside:
            data = value
        elif position < len(loc) - 1 or str(step).startswith("<"):
            continue
        at.append(step)
    return tuple(at), False


def _step(data: object, step: str | int) -> tuple[bool, object]:
    """Whether `step` leads further into `data`, and where to."""
    if isinstance(data, dict) and step in data:
        return True, data[step]
    if isinstance(data, list) and isinstance(step, int) and step < len(data):
        return True, data[step]
    return False, None


def _value_at(at: Path, data: object) -> object:
    for step in at:
        _, data = _step(data, step)
    return data


def _words(
    kind: str, at: Path, value: object, limits: Mapping[str, Any], root: Root
) -> tuple[str, str]:
    """Message and suggestion for one kind of error."""
    name = key_in_words(str(at[-1])) if at else ""
    what = _what(at)
    match kind:
        case "missing":
            purpose = _purpose(at, root)[1]
            return (
                say("{name} is missing", name=name),
                say("add {name}: {purpose}", name=name, purpose=purpose),
            )
        case "extra_forbidden":
            return _unknown_key(str(at[-1]), at, root)
        case "string_pattern_mismatch" if name in _TEXT_FORMS:
            message, right, example = _TEXT_FORMS[name]
            return say(message, value=shown(value)), say(right, example=example)
        case "string_pattern_mismatch" if isinstance(value, str) and value.strip():
            message = say("{what} must stand on one line, without tabs", what=what)
            return message, _reminder(at, root)
        case "string_pattern_mismatch" | "string_too_short":
            return say("{what} is blank", what=what), _reminder(at, root)
        case "string_too_long":
            count = len(value) if isinstance(value, str) else 0
            return (
                say_count(
                    "{what} has {number} character",
                    "{what} has {number} characters",
                    count,
                    what=what,
                ),
                say("use at most {count}", count=limits["max_length"]),
            )
        case "too_short" | "too_long":
            return _wrong_count(at, limits)
        case "greater_than" | "greater_than_equal" | "less_than" | "less_than_equal":
            return _out_of_range(kind, at, value, limits, root)
        case "finite_number":
            message = say(
                "{what} must be an ordinary number, not {value}", what=what, value=shown(value)
            )
            return message, _reminder(at, root)
    if value is None and name == "colour":
        return (
            say("colour is empty: without quotes, # and what follows is a comment"),
            say(COLOUR_FORM, example=A_COLOUR),
        )
    if value is None:
        return say("{what} is empty", what=what), _reminder(at, root)
    return _wrong_type(at, value, root)


def _what(at: Path) -> str:
    """What stands at `at`, as a subject."""
    if not at:
        return say("the file")
    name = at[-1]
    if isinstance(name, str):
        key = key_in_words(name)
        return say(_ENTRIES[at[:-1]], key=key) if at[:-1] in _ENTRIES else key
    if _is_advance(at):
        return say("a cell's advance")
    return say(_ITEMS.get(str(at[-2]), _ANY_ITEM))


def _is_advance(at: Path) -> bool:
    """Whether `at` leads to m or n of a cell [m, n], the only list in a list."""
    return len(at) > 1 and isinstance(at[-1], int) and isinstance(at[-2], int)


def _purpose(at: Path, root: Root) -> tuple[str, str]:
    """The nearest key at or above `at` that the model describes, and what it is for."""
    for end in range(len(at), 0, -1):
        keys = described(types_at(at[: end - 1], root))
        if keys.get(str(at[end - 1])):
            key = str(at[end - 1])  # a key of the model's own
            return key, say_whole(keys[key])
    return say("the file"), say("a set of keys with their values")


def _reminder(at: Path, root: Root) -> str:
    if _is_advance(at):
        return say("write [outer, inner], whole numbers from 0 to 20")
    name, purpose = _purpose(at, root)
    return f"{name}: {purpose}"


def _unknown_key(name: str, at: Path, root: Root) -> tuple[str, str]:
    around = types_at(at[:-1], root)
    return say("unknown key {key}", key=shown(name)), one_of(name, described(around), KNOWN_HERE)


def _wrong_key(at: Path, root: Root) -> tuple[str, str]:
    """A key of a mapping whose keys are free, or are chosen from a list."""
    name = str(at[-1])
    allowed = described(types_at(at[:-1], root))
    if allowed:
        return say("unknown key {key}", key=shown(name)), one_of(name, allowed, KNOWN_HERE)
    if at[0] == "constants":
        return (
            say("{key} cannot be the name of a constant", key=shown(name)),
            say("names are small letters and digits with _ between words"),
        )
    return (
        say("the key {key} cannot be used", key=shown(name)),
        say("use a word of 1 to 40 characters"),
    )


def _wrong_count(at: Path, limits: Mapping[str, Any]) -> tuple[str, str]:
    found = limits["actual_length"]
    if at and isinstance(at[-1], int):
        return (
            say("a cell in brackets has two advances, not {count}", count=found),
            say("write [outer, inner], such as [2, 1]"),
        )
    if "min_length" in limits:
        message = (
            say("{what} is empty", what=_what(at))
            if found == 0
            else say("{what} has only {count}", what=_what(at), count=found)
        )
        return message, say("give at least {count}", count=limits["min_length"])
    return (
        say_count(
            "{what} has {number} entry", "{what} has {number} entries", found, what=_what(at)
        ),
        say("use at most {count}", count=limits["max_length"]),
    )


def _out_of_range(
    kind: str, at: Path, value: object, limits: Mapping[str, Any], root: Root
) -> tuple[str, str]:
    bound = next(limits[key] for key in ("gt", "ge", "lt", "le") if key in limits)
    message = say(_RANGES[kind], what=_what(at), bound=shown(bound), value=shown(value))
    if at[-1] in _SHARES and isinstance(value, int | float) and 1 < value <= 100:
        right = f"{at[-1]}: {value / 100:g}"
        return message, say(
            "write a fraction: {value} in a hundred is {right}", value=f"{value:g}", right=right
        )
    return message, _reminder(at, root)


def _wrong_type(at: Path, value: object, root: Root) -> tuple[str, str]:
    """A value of another form than any that the model has at `at`."""
    kinds = types_at(at, root)
    message = say(
        "{what} must be {form}, not {value}",
        what=_what(at),
        form=form_in_words(kinds),
        value=_named(value),
    )
    return message, _right_form(at, kinds, value, root)


def _named(value: object) -> str:
    """A value, with what it is."""
    match value:
        case bool():
            return say("the truth value {value}", value=shown(value))
        case str():
            return say("the text {value}", value=shown(value))
        case int() | float():
            return say("the number {value}", value=shown(value))
    return shown(value)


def _right_form(at: Path, kinds: Sequence[Any], value: object, root: Root) -> str:
    """How `value` would be written rightly, if that can be told; else what it is for."""
    name = f"{key_in_words(at[-1])}: " if at and isinstance(at[-1], str) else ""
    known = choices(kinds)
    if isinstance(value, str):
        number = _NUMBER_IN_TEXT.fullmatch(value)
        plain = number[1].replace(",", ".") if number else ""
        if number and number[3] == "%":
            plain = f"{float(plain) / 100:g}"
        if (plain in known) if known else (plain and str not in kinds and bool not in kinds):
            return say("write the number alone, without quotes: {right}", right=f"{name}{plain}")
        if bool in kinds and value.lower() in _TRUE_WORDS:
            return say("write {right}, without quotes", right=f"{name}true")
        if bool in kinds and value.lower() in _FALSE_WORDS:
            return say("write {right}, without quotes", right=f"{name}false")
        guess = nearest(value, known)
        if guess:
            return meant(guess)
    elif isinstance(value, int | float):
        if str in kinds and not known:
            right = f'{name}"{shown(value)}"'
            return say("put it in quotes if that is meant: {right}", right=right)
        if int in kinds and isinstance(value, float) and abs(value) < 1e9:
            return say("write a whole number: {right}", right=f"{name}{round(value)}")
    if isinstance(value, str) and any(get_origin(kind) is list for kind in kinds) and not known:
        return say("write it as a list: {right}", right=f"{name}[{key_in_words(value)}]")
    return _reminder(at, root)
