"""What stands on a page only where it has room left."""

from __future__ import annotations

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
