"""Ties that were worked out, as changes of the file that says what its parts are set on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from buildplan.evaluation.seating import Pairs, ties_with
from buildplan.patterns.assembly_keys import PLACES
from buildplan.source.suggestions import Change, Path, Put, TakeOut

Data = Mapping[str, Any]


def written_ties(data: Data, ties: Mapping[tuple[str, ...], Pairs]) -> tuple[Change, ...]:
    """The changes of a file, as plain data, that put `ties` in place of `on` and the like; they
    are given by the names of the part that they are of and of those that it is within."""
    return tuple(_of_build(data["build"], (), ("build",), ties))


def _of_build(
    build: Data, within: tuple[str, ...], at: Path, ties: Mapping[tuple[str, ...], Pairs]
) -> Iterator[Change]:
    assembly = build.get("assembly")
    if not isinstance(assembly, Mapping):
        return
    here: Path = (*at, "assembly")
    found: list[Any] = _given(assembly)
    for i, part in enumerate(assembly["parts"]):
        names = (*within, part["name"])
        place: Path = (*here, "parts", i)
        for key in (*PLACES, "lower"):
            if part.get(key) is not None and names in ties:
                yield TakeOut((*place, key))
        found = ties_with(found, ties.get(names, ()))
        if isinstance(part.get("build"), Mapping):
            yield from _of_build(part["build"], names, (*place, "build"), ties)
    if found != list(_given(assembly)):
        yield Put((*here, "ties"), found)


def _given(assembly: Data) -> list[Any]:
    return list(assembly.get("ties") or ())
