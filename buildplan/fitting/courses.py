"""A course as kinds of cells: one part of it, mirrored and repeated."""

from __future__ import annotations

from dataclasses import dataclass

from buildplan.fitting.cells import KINDS


@dataclass(frozen=True)
class Course:
    """A course as kinds of cells: `first` lies on the first mirror axis and `last` on the second
    (None where a section does), `cells` between. Without mirror axes `cells` is one of `fold`
    equal parts."""

    first: int | None
    cells: tuple[int, ...]
    last: int | None
    mirrored: bool
    fold: int

    @property
    def part(self) -> tuple[int, ...]:
        """The cells of one of the `fold` equal parts."""
        if not self.mirrored:
            return self.cells
        first = () if self.first is None else (self.first,)
        last = () if self.last is None else (self.last,)
        return (*first, *self.cells, *last, *self.cells[::-1])

    @property
    def even(self) -> bool:
        """Whether every ring has an even number of balloons, so that all come from pairs."""
        outer = sum(len(KINDS[kind].outer) for kind in self.part) * self.fold
        inner = sum(len(KINDS[kind].inner) for kind in self.part) * self.fold
        return outer % 2 == 0 and inner % 2 == 0 and min(outer, inner) >= 3
