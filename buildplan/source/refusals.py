"""What the data model refuses: where pydantic's errors are in the file, and which of them are one
mistake."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from typing import Any

from pydantic_core import ErrorDetails

from buildplan.source.misplaced_keys import rightly_placed
from buildplan.source.mistake import (
    Mistake,
    Path,
    most_likely,
)
from buildplan.source.other_units import units_meant
from buildplan.source.refused_values import wrong_key, wrong_value
from buildplan.source.right_forms import Root
from buildplan.source.schema_lookup import described, types_at

"""What is wrong with a value: its code, the words, and what would be right."""


def mistakes_in(errors: Iterable[ErrorDetails], data: object, root: Root) -> Iterator[Mistake]:
    """What pydantic found wrong in `data`, a file of the form `root`, in our own words."""
    found = []
    for one in errors:
        at, is_key = _place(one["loc"], data)
        found.append((one, at, is_key))
    misspelt = set(_misspelt([(one["type"], at) for one, at, _ in found], root))
    for one, at, is_key in found:
        if one["type"] == "missing" and (at in misspelt or _follows(at, misspelt)):
            continue
        if is_key:
            kind, said, suggestion = wrong_key(at, root)
        else:
            limits: Mapping[str, Any] = one.get("ctx", {})
            value = _value_at(at, data)
            kind, said, suggestion = wrong_value(one["type"], at, value, limits, root)
            if at == ("units",) and isinstance(value, str):
                suggestion = units_meant(value, data) or suggestion
            if one["type"] == "extra_forbidden":
                suggestion = rightly_placed(at, value, data, root) or suggestion
        yield Mistake(kind, at, said, suggestion)


def _follows(at: Path, misspelt: Collection[Path]) -> bool:
    """Whether a missing key may be left out once its neighbour is spelt rightly: what a balloon is
    called is known by its colour, where that is a name."""
    return at[-1] == "label" and (*at[:-1], "colour") in misspelt


def _misspelt(found: Sequence[tuple[str, Path]], root: Root) -> Iterator[Path]:
    """Places of missing keys that an unknown key beside them must be a slip for."""
    missing: dict[Path, list[str]] = {}
    for kind, at in found:
        if kind == "missing":
            missing.setdefault(at[:-1], []).append(str(at[-1]))
    for kind, at in found:
        if kind == "extra_forbidden":
            guess = most_likely(str(at[-1]), described(types_at(at[:-1], root)))
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
