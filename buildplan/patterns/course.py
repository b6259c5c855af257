"""The course of a tube: its chains, and its cells with every repeat laid out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from buildplan.framework.cells import CELL_KINDS, CellKind, cell_kind
from buildplan.patterns.tube_keys import CourseItem, Repeat, Tube
from buildplan.source.values import ChainLetter

# the chains on the outer and on the inner side, by the number of chains
OUTER_CHAINS: Mapping[int, tuple[ChainLetter, ...]] = {2: ("A",), 3: ("A", "C"), 4: ("A", "D")}
INNER_CHAINS: Mapping[int, tuple[ChainLetter, ...]] = {2: ("B",), 3: ("B",), 4: ("B", "C")}


def cell_of(item: str | Sequence[int]) -> CellKind:
    """The cell that an item of a course names, or gives as [outer, inner]."""
    return CELL_KINDS[item] if isinstance(item, str) else cell_kind(item[0], item[1])


def _walk(items: Sequence[CourseItem]) -> Iterator[CellKind]:
    for item in items:
        if isinstance(item, Repeat):
            for _ in range(item.repeat):
                yield from _walk(item.cells)
        else:
            yield cell_of(item)


def expand_course(tube: Tube) -> list[CellKind]:
    """The cells of `tube` in order, every repeat laid out."""
    return list(_walk(tube.course))


def cell_counts(items: Sequence[CourseItem]) -> dict[CellKind, int]:
    """How many there are of each cell, repeats counted but not laid out.

    A few nested repeats can stand for more cells than any machine could hold.
    """
    counts: dict[CellKind, int] = {}
    for item in items:
        if isinstance(item, Repeat):
            for cell, count in cell_counts(item.cells).items():
                counts[cell] = counts.get(cell, 0) + count * item.repeat
        else:
            cell = cell_of(item)
            counts[cell] = counts.get(cell, 0) + 1
    return counts
