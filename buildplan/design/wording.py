"""What the data model refuses, in plain words: pydantic's errors as mistakes in the file."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import ValidationError

from buildplan.design.mistake import Mistake, Path, listed, one_of, shown
from buildplan.design.model import Build, Design, FileModel

PATTERNS_TO_COME = ("wall", "column", "globe", "arch", "assembly", "letters")
"""Patterns that the trade knows and this program does not build yet."""

_NUMBER_IN_TEXT = re.compile(r"\s*(-?[0-9]+([.,][0-9]+)?)\s*(%|in|inch|inches|\"|cm|mm)?\s*")
_TRUE_WORDS = ("yes", "on", "y", "true")
_FALSE_WORDS = ("no", "off", "n", "false")


def mistakes_in(error: ValidationError, data: object) -> Iterator[Mistake]:
    """Every mistake that `error` found in `data`, in our own words."""
    for one in error.errors(include_url=False):
        at, is_key = _place(one["loc"], data)
        message, suggestion = _words(one, at, is_key)
        yield Mistake(at, message, suggestion)


def _place(loc: Sequence[str | int], data: object) -> tuple[Path, bool]:
    """pydantic's location without the marks of union forms, and whether a key is at fault."""
    at: list[str | int] = []
    for position, step in enumerate(loc):
        if step == "[key]":
            return tuple(at), True
        last = position == len(loc) - 1
        in_mapping = isinstance(data, dict) and step in data
        in_list = isinstance(data, list) and isinstance(step, int) and step < len(data)
        if in_mapping or in_list:
            data = data[step]  # type: ignore[index]
        elif not last or str(step).startswith("<"):
            continue
        at.append(step)
    return tuple(at), False


def types_at(path: Path) -> list[Any]:
    """The types that the model has for the value at `path`, unions taken apart."""
    found: list[Any] = [Design]
    for step in path:
        inside: list[Any] = []
        for kind in found:
            arguments = get_args(kind)
            if isinstance(kind, type) and issubclass(kind, FileModel):
                for name, about in kind.model_fields.items():
                    if step == (about.alias or name):
                        inside += _apart(about.annotation)
            elif get_origin(kind) is dict and isinstance(step, str):
                inside += _apart(arguments[1])
            elif get_origin(kind) is list and isinstance(step, int):
                inside += _apart(arguments[0])
        found = inside
    return found


def _apart(kind: Any) -> list[Any]:
    origin = get_origin(kind)
    if origin is Annotated:
        return _apart(get_args(kind)[0])
    if origin in (Union, UnionType):
        return [part for member in get_args(kind) for part in _apart(member)]
    return [kind]


def _keys_of(kinds: Sequence[Any]) -> dict[str, str]:
    """The keys that a mapping of one of `kinds` knows, each with what it is for."""
    keys: dict[str, str] = {}
    for kind in kinds:
        if isinstance(kind, type) and issubclass(kind, FileModel):
            for name, about in kind.model_fields.items():
                keys[about.alias or name] = about.description or ""
        elif get_origin(kind) is dict:
            keys |= dict.fromkeys(_choices([get_args(kind)[0]]), "")
    return keys


def _choices(kinds: Sequence[Any]) -> list[str]:
    """The values that a Literal among `kinds` allows, as they are written."""
    values = [
        value
        for kind in kinds
        for part in _apart(kind)
        if get_origin(part) is Literal
        for value in get_args(part)
    ]
    return [str(value) for value in values]


def _words(one: Mapping[str, Any], at: Path, is_key: bool) -> tuple[str, str]:
    """Message and suggestion for one error of pydantic."""
    kind, value, limits = one["type"], one["input"], one.get("ctx", {})
    name = str(at[-1]) if at else "the design"
    here = types_at(at)
    if is_key:
        return _wrong_key(name, at)
    match kind:
        case "missing":
            return f"`{name}` is missing", f"add {name}: {_purpose(at)}"
        case "extra_forbidden":
            return _unknown_key(name, at)
        case "string_pattern_mismatch" if name == "colour":
            return f"{shown(value)} is not a colour", _COLOUR
        case "string_pattern_mismatch":
            return f"{name} is blank", f"give it: {_purpose(at)}"
        case "string_too_short":
            return f"{_what(at)} is empty", f"give it: {_purpose(at)}"
        case "string_too_long":
            most = limits["max_length"]
            return f"{_what(at)} has {len(value)} characters", f"use at most {most}"
        case "too_short" | "too_long":
            return _wrong_count(at, limits)
        case "greater_than" | "greater_than_equal" | "less_than" | "less_than_equal":
            return _out_of_range(kind, at, value, limits)
        case "finite_number":
            return f"{_what(at)} must be an ordinary number, not {shown(value)}", _purpose_of(at)
    if value is None and name == "colour":
        return "colour is empty: without quotes, # and what follows is a comment", _COLOUR
    if value is None:
        return f"{_what(at)} is empty", f"give it: {_purpose(at)}"
    return _wrong_type(at, here, value)


_COLOUR = 'write # and six hex digits, in quotes: "#1F5F8B"'


def _what(at: Path) -> str:
    """What stands at `at`, as a subject."""
    if not at:
        return "the design"
    if isinstance(at[-1], str):
        return at[-1]
    if len(at) > 2 and isinstance(at[-2], int):
        return "a cell's advance"
    return {
        "course": "a cell",
        "cells": "a cell",
        "joints": "a joint's label",
        "stand_on": "a joint's label",
        "balloons": "a balloon of the list",
    }.get(str(at[-2]), "a balloon's key" if at[0] == "colour_pattern" else "an item")


def _purpose(at: Path) -> str:
    """What the key at `at` is for, from the model's own description."""
    around = [kind for kind in types_at(at[:-1]) if isinstance(kind, type)]
    keys = _keys_of(around)
    if at and str(at[-1]) in keys:
        return keys[str(at[-1])]
    return _form(types_at(at))


def _purpose_of(at: Path) -> str:
    return f"give it: {_purpose(at)}"


def _form(kinds: Sequence[Any]) -> str:
    """The form of a value of one of `kinds`, in words."""
    forms: list[str] = []
    for kind in kinds:
        if get_origin(kind) is Literal:
            forms.append(f"one of {listed(_choices([kind]), 'or')}")
        elif isinstance(kind, type) and issubclass(kind, FileModel):
            forms.append(f"keys ({listed(_keys_of([kind]))})")
        elif get_origin(kind) is dict:
            forms.append("keys with a value each")
        elif get_origin(kind) is list:
            forms.append("a list")
        elif kind is bool:
            forms.append("true or false")
        elif kind is int:
            forms.append("a whole number")
        elif kind is str:
            forms.append("text")
        elif kind is not type(None):
            forms.append("a number")
    return listed(forms, "or")


def _unknown_key(name: str, at: Path) -> tuple[str, str]:
    around = types_at(at[:-1])
    if around == [Build] and name in PATTERNS_TO_COME:
        return f"the pattern {name} is not built yet", "use tube or graph"
    return f"unknown key {shown(name)}", one_of(name, _keys_of(around), "known here")


def _wrong_key(name: str, at: Path) -> tuple[str, str]:
    """A key of a mapping whose keys are free, or are chosen from a list."""
    allowed = list(_keys_of(types_at(at[:-1])))
    if allowed:
        return f"unknown key {shown(name)}", one_of(name, allowed, "known here")
    if at[0] == "constants":
        return (
            f"{shown(name)} is not the name of a constant",
            "names are small letters with _ between words",
        )
    return f"the key {shown(name)} cannot be used", "use a short word of at most 40 characters"


def _wrong_count(at: Path, limits: Mapping[str, Any]) -> tuple[str, str]:
    found = limits["actual_length"]
    if at and isinstance(at[-1], int) and limits.get("min_length", limits.get("max_length")) == 2:
        return (
            f"a cell in brackets has two advances, not {found}",
            "write [outer, inner], such as [2, 1]",
        )
    if "min_length" in limits:
        least = limits["min_length"]
        many = "is empty" if found == 0 else f"has only {found}"
        return f"{_what(at)} {many}", f"give at least {least}: {_purpose(at)}"
    return f"{_what(at)} has {found} entries", f"use at most {limits['max_length']:,}"


def _out_of_range(kind: str, at: Path, value: object, limits: Mapping[str, Any]) -> tuple[str, str]:
    bound = next(iter(limits[key] for key in ("gt", "ge", "lt", "le") if key in limits))
    relation = {
        "greater_than": "more than",
        "greater_than_equal": "at least",
        "less_than": "less than",
        "less_than_equal": "at most",
    }[kind]
    message = f"{_what(at)} must be {relation} {shown(bound)}, not {shown(value)}"
    if at == ("spare",) and isinstance(value, int | float) and 1 < value <= 100:
        return message, f"a fraction: {value} in a hundred is spare: {value / 100:g}"
    return message, _purpose_of(at)


def _wrong_type(at: Path, kinds: Sequence[Any], value: object) -> tuple[str, str]:
    """A value of another form than any that the model has at `at`."""
    choices = _choices(kinds)
    subject = _what(at)
    if choices and isinstance(value, str | int | float):
        return f"{subject} cannot be {shown(value)}", one_of(str(value), choices, "the choices are")
    form = _form(kinds)
    named = {
        bool: f"the truth value {shown(value)}",
        str: f"the text {shown(value)}",
        int: f"the number {shown(value)}",
        float: f"the number {shown(value)}",
    }.get(type(value), shown(value))
    message = f"{subject} must be {form}, not {named}"
    return message, _right_form(at, kinds, value)


def _right_form(at: Path, kinds: Sequence[Any], value: object) -> str:
    """How `value` would be written rightly, if it can be told; else what it is for."""
    name = f"{at[-1]}: " if at and isinstance(at[-1], str) else ""
    if str in kinds and isinstance(value, int | float):
        return f'put it in quotes if that is meant: {name}"{shown(value)}"'
    if isinstance(value, str):
        if bool in kinds and value.lower() in _TRUE_WORDS:
            return f"write {name}true, without quotes"
        if bool in kinds and value.lower() in _FALSE_WORDS:
            return f"write {name}false, without quotes"
        number = _NUMBER_IN_TEXT.fullmatch(value)
        if number and str not in kinds:
            plain = number[1].replace(",", ".")
            if number[3] == "%":
                plain = f"{float(plain) / 100:g}"
            return f"write the number alone, without quotes: {name}{plain}"
    if int in kinds and isinstance(value, float):
        return f"write a whole number: {name}{round(value)}" if abs(value) < 1e9 else ""
    return _purpose_of(at)
