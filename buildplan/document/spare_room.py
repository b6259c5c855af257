"""What stands on a page only where it has room left, and what leaves it most room."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.document.stacking import Blocks, draw_stack, stack_height


class InSpareRoom(Flowable):  # type: ignore[misc]
    """Blocks at the foot of what a page holds, left out where it has no room for them."""

    def __init__(self, blocks: Blocks) -> None:
        super().__init__()
        self._blocks = blocks

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width, self._room = width, room
        tall = stack_height(self._blocks, width, room, self.canv)
        self.height = tall if tall <= room else 0.0
        return width, self.height

    def draw(self) -> None:
        if self.height:
            draw_stack(self._blocks, self.canv, 0, self.height, self.width, self._room)


class Lowest(Flowable):  # type: ignore[misc]
    """Blocks that hold the same in different shapes: the one that takes least height is set, of
    equal ones the first."""

    def __init__(self, shapes: Sequence[Flowable]) -> None:
        super().__init__()
        self._shapes = list(shapes)
        self._chosen = self._shapes[0]
        self.spaceAfter = self._chosen.getSpaceAfter()

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        high = [float(one.wrapOn(self.canv, width, room)[1]) for one in self._shapes]
        self.width, self.height = width, min(high)
        self._chosen = self._shapes[high.index(self.height)]
        return width, self.height

    def split(self, width: float, room: float) -> list[Flowable]:
        return list(self._chosen.splitOn(self.canv, width, room))

    def draw(self) -> None:
        self._chosen.wrapOn(self.canv, self.width, self.height)
        self._chosen.drawOn(self.canv, 0, 0)
