"""What the definitions of the file say of a value, for a control: of which kind it is, its limits.

Types are taken apart here and nowhere else. A type of the file that has a name of its own (a
balloon's key, a joint's label) is known again by what was written into its definition.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

from buildplan.patterns.assembly_keys import PartJoint, PartName
from buildplan.patterns.build import Build
from buildplan.patterns.registry import PATTERNS
from buildplan.patterns.tube_keys import Repeat
from buildplan.source.values import (
    FileModel,
    HexColour,
    JointLabel,
    Key,
    Length,
    OneOf,
)


@dataclass(frozen=True)
class ValueKind:
    """One form of a value: the kind of control it has, its bare type, what was written beside."""

    control: str
    bare: Any
    beside: tuple[Any, ...]

    @property
    def choices(self) -> tuple[str | int, ...]:
        """What it can be, where that is a choice of a few."""
        names = [one.names for one in self.beside if isinstance(one, OneOf)]
        if names:
            return tuple(names[0])
        return get_args(self.bare) if get_origin(self.bare) is Literal else ()

    @property
    def limits(self) -> tuple[float | None, float | None]:
        """The least and the most that a number may be, or that a list may hold."""
        low = high = None
        for limit in _limits(self.beside):
            for name in ("ge", "gt", "min_length"):
                low = getattr(limit, name, low)
            for name in ("le", "lt", "max_length"):
                high = getattr(limit, name, high)
        return low, high

    def names(self, named: object) -> bool:
        """Whether it is the type of that name."""
        return any(one is mine for mine in self.beside for one in get_args(named)[1:2])


def _limits(beside: tuple[Any, ...]) -> Iterator[Any]:
    for one in beside:
        yield from getattr(one, "metadata", ())
        yield one


@dataclass(frozen=True)
class FileKey:
    """A key of a mapping of the file: its types, whether it can be left out, what it is then."""

    name: str
    kinds: tuple[ValueKind, ...]
    optional: bool
    default: object
    about: str


@cache
def keys_of(model: type[FileModel]) -> tuple[FileKey, ...]:
    """The keys of a part of the file, in order. Of `build` each pattern is one."""
    if model is Build:
        return tuple(
            FileKey(name, kinds_of(one.keys), True, None, one.about)
            for name, one in PATTERNS.items()
        )
    hints = get_type_hints(model, include_extras=True)
    return tuple(_key(about.alias or name, hints[name], about) for name, about in _fields(model))


def _fields(model: type[FileModel]) -> Iterator[tuple[str, Any]]:
    yield from model.model_fields.items()


def _key(name: str, hint: Any, about: Any) -> FileKey:
    optional = not about.is_required()
    default = about.default if optional and about.default_factory is None else None
    return FileKey(name, kinds_of(hint), optional, default, about.description or "")


def kinds_of(hint: Any) -> tuple[ValueKind, ...]:
    """The forms that a value of a type can have, in the order in which they are written."""
    return tuple(_apart(hint, ()))


def _apart(hint: Any, beside: tuple[Any, ...]) -> Iterator[ValueKind]:
    if get_origin(hint) is Annotated:
        bare, *more = get_args(hint)
        yield from _apart(bare, (*more, *beside))
    elif get_origin(hint) in (Union, UnionType):
        for member in get_args(hint):
            yield from _apart(member, ())
    elif hint is not NoneType:
        yield ValueKind(_control(hint, beside), hint, beside)


NAMED: Mapping[str, object] = {"size": Length, "colour": HexColour}
PLAIN: Mapping[Any, str] = {
    bool: "flag",
    int: "whole",
    float: "number",
    Decimal: "number",
    str: "text",
}


def _control(bare: Any, beside: tuple[Any, ...]) -> str:
    kind = ValueKind("", bare, beside)
    for control, named in NAMED.items():
        if kind.names(named):
            return control
    if kind.choices or kind.names(Key):
        return "choice"
    if any(map(kind.names, JOINTS)):
        return "joints"
    if get_origin(bare) is list:
        inner = kinds_of(get_args(bare)[0])
        if any(one.bare is Repeat for one in inner):
            return "cells"
        return "joints" if any(map(_is_joint, inner)) else "list"
    if get_origin(bare) is dict:
        return "map"
    return PLAIN.get(bare, "group")


def _is_joint(kind: ValueKind) -> bool:
    return kind.control == "joints" and get_origin(kind.bare) is not list


JOINTS = (JointLabel, PartJoint, PartName)


def is_balloon(kind: ValueKind) -> bool:
    """Whether a value names a balloon of the file, by its key."""
    return kind.names(Key)


def of_form(kinds: tuple[ValueKind, ...], value: object) -> ValueKind:
    """The form that a value has, or is nearest to; the first where there is none."""
    for kind in kinds:
        if _has_form(kind, value):
            return kind
    return kinds[0]


def _has_form(kind: ValueKind, value: object) -> bool:
    if isinstance(value, dict):
        return kind.control in ("group", "map")
    if isinstance(value, list):
        return get_origin(kind.bare) is list
    return (
        value is not None
        and kind.control not in ("group", "map")
        and get_origin(kind.bare) is not list
    )
