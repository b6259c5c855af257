"""Changes of a course: cells put in, taken out or made others, spread evenly along it.

A course is here its cells in order, every repeat laid out. Closed, its end is its beginning.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from buildplan.framework.cells import CELL_KINDS, CellKind
from buildplan.language.messages import Message, listing, message, message_count
from buildplan.patterns.course import cell_of

Cells = tuple[CellKind, ...]

FEW_ALIKE = 3  # so many cells alike are written as a repeat


@dataclass(frozen=True)
class Edit:
    """Another course: in words how to come to it, and how many cells that moves."""

    cells: Cells
    words: Message
    moved: int


def added(cells: Cells, name: str, number: int) -> Edit:
    """So many cells of a kind put in, each where those that bend like it are farthest apart."""
    cell = cell_of(name)
    bend = cell.outer - cell.inner
    alike = [i for i, one in enumerate(cells) if (one.outer - one.inner) * bend > 0]
    places = _between(alike, len(cells), number)
    made = list(cells)
    for place in reversed(places):
        made.insert(place, cell)
    words = message_count(
        "add {number} {cell} cell, after cell {places}",
        "add {number} {cell} cells, spread evenly: after cells {places}",
        number,
        cell=name,
        places=listing(places),
    )
    return Edit(tuple(made), words, number)


def _between(there: Sequence[int], length: int, number: int) -> list[int]:
    """Gaps of a ring of `length` cells, sorted, for `number` more of those that are `there`: each
    in the middle of the longest way between two of them. Gap g lies behind cell number g."""
    if not there:
        places = [(2 * i + 1) * length // (2 * number) for i in range(number)]
        return sorted(place or length for place in places)
    ways = [
        (there[(i + 1) % len(there)] - one - 1) % length if len(there) > 1 else length - 1
        for i, one in enumerate(there)
    ]
    shares = [0] * len(ways)
    for _ in range(number):
        widest = max(range(len(ways)), key=lambda i: (ways[i] / (shares[i] + 1), -i))
        shares[widest] += 1
    places = [
        one + 1 + way * (part + 1) // (share + 1)
        for one, way, share in zip(there, ways, shares, strict=True)
        for part in range(share)
    ]
    return sorted((place - 1) % length + 1 for place in places)


def taken_out(cells: Cells, name: str, number: int) -> Edit:
    """So many cells of a kind taken out, spread evenly among them."""
    there = [i for i, one in enumerate(cells) if one.name == name]
    gone = _evenly(there, number)
    words = message_count(
        "take out {number} {cell} cell: cell {places}",
        "take out {number} {cell} cells: cells {places}",
        number,
        cell=name,
        places=listing([place + 1 for place in gone]),
    )
    left = tuple(one for i, one in enumerate(cells) if i not in set(gone))
    return Edit(left, words, number)


def made(cells: Cells, name: str, other: str, number: int) -> Edit:
    """So many cells of a kind made another kind, spread evenly among them."""
    there = [i for i, one in enumerate(cells) if one.name == name]
    places = _evenly(there, number)
    words = message_count(
        "make {number} {cell} cell a {other}: cell {places}",
        "make {number} {cell} cells {other}: cells {places}",
        number,
        cell=name,
        other=other,
        places=listing([place + 1 for place in places]),
    )
    chosen, new = set(places), cell_of(other)
    return Edit(tuple(new if i in chosen else one for i, one in enumerate(cells)), words, number)


def _evenly(there: Sequence[int], number: int) -> list[int]:
    return [there[(2 * i + 1) * len(there) // (2 * number)] for i in range(number)]


def mirrored(cells: Cells) -> Edit:
    """Every bend the other way."""
    return Edit(
        tuple(cell_of([one.inner, one.outer]) for one in cells),
        message("it bends the wrong way: swap fan with fan_in, and tip with dip"),
        1,
    )


def spread(cells: Cells) -> Edit:
    """The same cells with those that bend spread evenly among those that do not."""
    bends = [one for one in cells if one.outer != one.inner]
    others = [one for one in cells if one.outer == one.inner]
    made: list[CellKind] = []
    for i, bend in enumerate(bends):
        made += others[i * len(others) // len(bends) : (i + 1) * len(others) // len(bends)]
        made.append(bend)
    moved = sum(one != other for one, other in zip(cells, made, strict=True)) if bends else 0
    return Edit(tuple(made) if bends else cells, message("spread its bends evenly"), moved)


def as_items(cells: Cells) -> list[object]:
    """The course as a file gives it: what comes again and again is a repeat."""
    length = len(cells)
    for period in range(1, length // 2 + 1):
        if length % period == 0 and cells == cells[:period] * (length // period):
            group = list(_runs(cells[:period], FEW_ALIKE + 1))
            return [{"repeat": length // period, "cells": group}]
    return list(_runs(cells, FEW_ALIKE))


def _runs(cells: Cells, few: int) -> Iterator[object]:
    start = 0
    while start < len(cells):
        end = start
        while end < len(cells) and cells[end] == cells[start]:
            end += 1
        one = cells[start]
        item: object = one.name if one.name in CELL_KINDS else [one.outer, one.inner]
        if end - start >= few:
            yield {"repeat": end - start, "cells": [item]}
        else:
            yield from [item] * (end - start)
        start = end
