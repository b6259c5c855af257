"""Flowables made for the first of some sizes that suits the page."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Generic, TypeVar

from reportlab.platypus import Flowable

from buildplan.document.stacking import NEARLY, Blocks, draw_stack, split_stack, stack_height

Size = TypeVar("Size")  # what blocks are made for


class Fitting(Flowable, Generic[Size]):  # type: ignore[misc]
    """Blocks made for the first of some sizes with which they fit the rest of the page, and
    leave so much `free` at its foot."""

    def __init__(
        self, make: Callable[[Size], Blocks], sizes: Sequence[Size], free: float = 0.0
    ) -> None:
        super().__init__()
        self._make, self._sizes, self._free = make, tuple(sizes), free

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width, self._room = width, room
        for size in self._sizes:
            self._blocks = list(self._make(size))
            self.height = stack_height(self._blocks, width, room, self.canv)
            if self.height <= room - self._free:
                break
        return width, self.height

    def split(self, width: float, room: float) -> list[Flowable]:
        if room < self.canv.room - NEARLY:
            return []
        fits, rest = split_stack(self._make(self._sizes[-1]), width, room, self.canv)
        return [*fits, *rest]

    def draw(self) -> None:
        draw_stack(self._blocks, self.canv, 0, self.height, self.width, self._room)


class Sparing(Flowable, Generic[Size]):  # type: ignore[misc]
    """A block made for the first of some sizes that takes no more height than the last of them,
    or `more` points at most."""

    def __init__(
        self, make: Callable[[Size], Flowable], sizes: Sequence[Size], more: float = NEARLY
    ) -> None:
        super().__init__()
        self._more = more
        self._made = [make(size) for size in sizes]
        self._chosen = self._made[-1]
        self.spaceAfter = self._chosen.getSpaceAfter()

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        _, least = self._made[-1].wrapOn(self.canv, width, room)
        for block in self._made:
            _, self.height = block.wrapOn(self.canv, width, room)
            if self.height <= least + self._more:
                break
        self._chosen, self.width = block, width
        return width, self.height

    def split(self, width: float, room: float) -> list[Flowable]:
        return list(self._chosen.splitOn(self.canv, width, room))

    def draw(self) -> None:
        self._chosen.drawOn(self.canv, 0, 0)
