"""What the data model refuses, in plain words: pydantic's errors as mistakes in the file."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, get_origin

from pydantic_core import ErrorDetails

from buildplan.design.known import choices, described, form_in_words, types_at
from buildplan.design.mistake import Mistake, Path, key_in_words, nearest, one_of, shown
from buildplan.design.model import Build, FileModel
from buildplan.design.pattern_checks import pattern_words

PATTERNS_TO_COME: tuple[str, ...] = ()
"""Patterns that the trade knows and this program does not build yet."""

COLOUR_FORM = 'write # and six hex digits, in quotes: "#1F5F8B"'
# keys whose text has a form of its own: what a wrong one is not, and what would be right
_TEXT_FORMS: Mapping[str, tuple[str, str]] = {
    "colour": ("a colour", COLOUR_FORM),
    "currency": ("the code of a currency", "write its three capital letters: GBP, EUR, USD ..."),
    "opening": ("a time of day", 'write hours and minutes, in quotes: "10:00"'),
}
# keys whose value is a share of a whole, and is easily given in hundredths
_SHARES = ("spare", "margin", "tax")

# a number that is almost one: with a unit or a per cent sign, or a decimal comma
_NUMBER_IN_TEXT = re.compile(r"\s*(-?[0-9]{1,9}([.,][0-9]{1,9})?)\s*(%|in|inch|inches|\"|cm)?\s*")
_TRUE_WORDS = ("yes", "on", "y", "true")
_FALSE_WORDS = ("no", "off", "n", "false")

# what an entry of a mapping with free keys is, by the mapping
_ENTRIES: Mapping[Path, str] = {
    ("balloons",): "the balloon {}",
    ("build", "tube", "long"): "the balloon of chain {}",
    ("colour_pattern",): "the colour pattern of {}",
    ("prices",): "the price of {}",
    ("pack_sizes",): "the pack size of {}",
    ("pack_prices",): "the price of a pack of {}",
    ("labour",): "the time of {}",
    ("text",): "the note of {}",
    ("constants",): "the constant {}",
}
# what an item of a list is, by the list
_ITEMS = {
    "course": "a cell",
    "cells": "a cell",
    "joints": "a joint's label",
    "stand_on": "a joint's label",
    "balloons": "a listed balloon",
    "designs": "a piece of the event",
}


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
            return f"{name} is missing", f"add {name}: {_purpose(at, root)[1]}"
        case "extra_forbidden":
            return _unknown_key(str(at[-1]), at, root)
        case "string_pattern_mismatch" if name in _TEXT_FORMS:
            form, right = _TEXT_FORMS[name]
            return f"{shown(value)} is not {form}", right
        case "string_pattern_mismatch" if isinstance(value, str) and value.strip():
            return f"{what} must stand on one line, without tabs", _reminder(at, root)
        case "string_pattern_mismatch" | "string_too_short":
            return f"{what} is blank", _reminder(at, root)
        case "string_too_long":
            count = len(value) if isinstance(value, str) else 0
            return f"{what} has {count} characters", f"use at most {limits['max_length']}"
        case "too_short" | "too_long":
            return _wrong_count(at, limits)
        case "greater_than" | "greater_than_equal" | "less_than" | "less_than_equal":
            return _out_of_range(kind, at, value, limits, root)
        case "finite_number":
            return f"{what} must be an ordinary number, not {shown(value)}", _reminder(at, root)
    if value is None and name == "colour":
        return "colour is empty: without quotes, # and what follows is a comment", COLOUR_FORM
    if value is None:
        return f"{what} is empty", _reminder(at, root)
    return _wrong_type(at, value, root)


def _what(at: Path) -> str:
    """What stands at `at`, as a subject."""
    if not at:
        return "the file"
    name = at[-1]
    if isinstance(name, str):
        return _ENTRIES.get(at[:-1], "{}").format(key_in_words(name))
    if _is_advance(at):
        return "a cell's advance"
    return _ITEMS.get(str(at[-2]), "a balloon's key")


def _is_advance(at: Path) -> bool:
    """Whether `at` leads to m or n of a cell [m, n], the only list in a list."""
    return len(at) > 1 and isinstance(at[-1], int) and isinstance(at[-2], int)


def _purpose(at: Path, root: Root) -> tuple[str, str]:
    """The nearest key at or above `at` that the model describes, and what it is for."""
    for end in range(len(at), 0, -1):
        keys = described(types_at(at[: end - 1], root))
        if keys.get(str(at[end - 1])):
            return str(at[end - 1]), keys[str(at[end - 1])]  # a key of the model's own
    return "the file", "a set of keys with their values"


def _reminder(at: Path, root: Root) -> str:
    if _is_advance(at):
        return "write [outer, inner], whole numbers from 0 to 20"
    name, purpose = _purpose(at, root)
    return f"{name}: {purpose}"


def _unknown_key(name: str, at: Path, root: Root) -> tuple[str, str]:
    around = types_at(at[:-1], root)
    if around == [Build] and name in PATTERNS_TO_COME:
        return f"the pattern {name} is not built yet", f"use {pattern_words()}"
    return f"unknown key {shown(name)}", one_of(name, described(around), "known here")


def _wrong_key(at: Path, root: Root) -> tuple[str, str]:
    """A key of a mapping whose keys are free, or are chosen from a list."""
    name = str(at[-1])
    allowed = described(types_at(at[:-1], root))
    if allowed:
        return f"unknown key {shown(name)}", one_of(name, allowed, "known here")
    if at[0] == "constants":
        return (
            f"{shown(name)} cannot be the name of a constant",
            "names are small letters and digits with _ between words",
        )
    return f"the key {shown(name)} cannot be used", "use a word of 1 to 40 characters"


def _wrong_count(at: Path, limits: Mapping[str, Any]) -> tuple[str, str]:
    found = limits["actual_length"]
    if at and isinstance(at[-1], int):
        return (
            f"a cell in brackets has two advances, not {found}",
            "write [outer, inner], such as [2, 1]",
        )
    if "min_length" in limits:
        least = limits["min_length"]
        many = "is empty" if found == 0 else f"has only {found}"
        return f"{_what(at)} {many}", f"give at least {least}"
    return f"{_what(at)} has {found:,} entries", f"use at most {limits['max_length']:,}"


def _out_of_range(
    kind: str, at: Path, value: object, limits: Mapping[str, Any], root: Root
) -> tuple[str, str]:
    relation = {
        "greater_than": "more than",
        "greater_than_equal": "at least",
        "less_than": "less than",
        "less_than_equal": "at most",
    }[kind]
    bound = next(limits[key] for key in ("gt", "ge", "lt", "le") if key in limits)
    message = f"{_what(at)} must be {relation} {shown(bound)}, not {shown(value)}"
    if at[-1] in _SHARES and isinstance(value, int | float) and 1 < value <= 100:
        return message, f"write a fraction: {value:g} in a hundred is {at[-1]}: {value / 100:g}"
    return message, _reminder(at, root)


def _wrong_type(at: Path, value: object, root: Root) -> tuple[str, str]:
    """A value of another form than any that the model has at `at`."""
    kinds = types_at(at, root)
    named = {
        bool: f"the truth value {shown(value)}",
        str: f"the text {shown(value)}",
        int: f"the number {shown(value)}",
        float: f"the number {shown(value)}",
    }.get(type(value), shown(value))
    message = f"{_what(at)} must be {form_in_words(kinds)}, not {named}"
    return message, _right_form(at, kinds, value, root)


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
            return f"write the number alone, without quotes: {name}{plain}"
        if bool in kinds and value.lower() in _TRUE_WORDS:
            return f"write {name}true, without quotes"
        if bool in kinds and value.lower() in _FALSE_WORDS:
            return f"write {name}false, without quotes"
        guess = nearest(value, known)
        if guess:
            return f"did you mean {guess}?"
    elif isinstance(value, int | float):
        if str in kinds and not known:
            return f'put it in quotes if that is meant: {name}"{shown(value)}"'
        if int in kinds and isinstance(value, float) and abs(value) < 1e9:
            return f"write a whole number: {name}{round(value)}"
    if isinstance(value, str) and any(get_origin(kind) is list for kind in kinds) and not known:
        return f"write it as a list: {name}[{key_in_words(value)}]"
    return _reminder(at, root)
