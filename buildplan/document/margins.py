"""Blocks on a whole sheet, within margins of their own."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.document.stacking import Blocks, draw_stack, split_stack, stack_height


class Margins(Flowable):  # type: ignore[misc]
    """Blocks within margins at the sides, with so much free above and below them. What a sheet has
    no room for goes on on the next, whose upper edge they are as far from as from the lower."""

    def __init__(self, blocks: Blocks, side: float, above: float, below: float) -> None:
        super().__init__()
        self._blocks = list(blocks)
        self._side, self._above, self._below = side, above, below

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        free = self._above + self._below
        self.width, self._room = width, room - free
        inner = width - 2 * self._side
        self.height = stack_height(self._blocks, inner, self._room, self.canv) + free
        return width, self.height

    def split(self, width: float, room: float) -> list[Flowable]:
        inner, left = width - 2 * self._side, room - self._above - self._below
        fits, rest = split_stack(self._blocks, inner, left, self.canv)
        if not fits or not rest:
            return []
        return [
            Margins(fits, self._side, self._above, self._below),
            Margins(rest, self._side, self._below, self._below),
        ]

    def draw(self) -> None:
        inner, top = self.width - 2 * self._side, self.height - self._above
        draw_stack(self._blocks, self.canv, self._side, top, inner, self._room)
