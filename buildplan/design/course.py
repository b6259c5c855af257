"""The course of a tube: cells by name, repeats laid out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from buildplan.design.model import CourseItem, Repeat, Tube

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


def _walk(items: Sequence[CourseItem]) -> Iterator[CourseCell]:
    for item in items:
        if isinstance(item, Repeat):
            for _ in range(item.repeat):
                yield from _walk(item.cells)
        else:
            outer, inner = CELLS[item] if isinstance(item, str) else (item[0], item[1])
            yield CourseCell(NAMES.get((outer, inner), f"{outer},{inner}"), outer, inner)


def expand_course(tube: Tube) -> list[CourseCell]:
    """The cells of `tube` in order, every repeat laid out."""
    return list(_walk(tube.course))
