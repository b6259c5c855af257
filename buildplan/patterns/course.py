"""The course of a tube: its chains, and its cells with every repeat laid out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from buildplan.patterns.tube_keys import CourseItem, Repeat, Tube
from buildplan.source.values import ChainLetter

# the chains on the outer and on the inner side, by the number of chains
OUTER_CHAINS: Mapping[int, tuple[ChainLetter, ...]] = {2: ("A",), 3: ("A", "C"), 4: ("A", "D")}
INNER_CHAINS: Mapping[int, tuple[ChainLetter, ...]] = {2: ("B",), 3: ("B",), 4: ("B", "C")}

# advance of the outer and of the inner chains
CELLS: Mapping[str, tuple[int, int]] = {
    "straight": (1, 1),
    "fan": (1, 0),
    "fan_in": (0, 1),
    "tip": (2, 0),
    "dip": (0, 2),
}
NAMES: Mapping[tuple[int, int], str] = {advance: name for name, advance in CELLS.items()}


@dataclass(frozen=True)
class CourseCell:
    """One cell: its name (or `m,n`), and the advances of the outer and inner chains."""

    name: str
    outer: int
    inner: int


def cell_of(item: str | Sequence[int]) -> CourseCell:
    """The cell that an item of a course names, or gives as [outer, inner]."""
    outer, inner = CELLS[item] if isinstance(item, str) else (item[0], item[1])
    return CourseCell(NAMES.get((outer, inner), f"{outer},{inner}"), outer, inner)


def _walk(items: Sequence[CourseItem]) -> Iterator[CourseCell]:
    for item in items:
        if isinstance(item, Repeat):
            for _ in range(item.repeat):
                yield from _walk(item.cells)
        else:
            yield cell_of(item)


def expand_course(tube: Tube) -> list[CourseCell]:
    """The cells of `tube` in order, every repeat laid out."""
    return list(_walk(tube.course))


def cell_counts(items: Sequence[CourseItem]) -> dict[CourseCell, int]:
    """How many there are of each cell, repeats counted but not laid out.

    A few nested repeats can stand for more cells than any machine could hold.
    """
    counts: dict[CourseCell, int] = {}
    for item in items:
        if isinstance(item, Repeat):
            for cell, count in cell_counts(item.cells).items():
                counts[cell] = counts.get(cell, 0) + count * item.repeat
        else:
            cell = cell_of(item)
            counts[cell] = counts.get(cell, 0) + 1
    return counts
