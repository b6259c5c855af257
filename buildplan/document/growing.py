"""Pictures that grow into the room that a page has left.

A document is set more than once. What a page has left in one setting goes in the next to the blocks
on it that can grow, as much to each as it can take; what stands on which page stays as it was.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from reportlab.platypus import Flowable

from buildplan.document.blocks import Stack
from buildplan.document.stacking import Blocks

LEAST_PT = 8.0  # of room that is worth being used
SPARED_PT = 2.0  # left for what is rounded


class Growing(Stack):
    """Blocks made as high as there is room for: `make` gets how much higher they may be than at
    first, no more than `most` points. `name` tells them from all others of the document."""

    def __init__(self, name: str, make: Callable[[float], Blocks], most: float) -> None:
        self._name, self._make, self._most = name, make, most
        self._more = 0.0
        super().__init__(make(self._more))

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        more = self.canv.pages.grown.get(self._name, 0.0)
        if more != self._more:
            self.blocks, self._more = list(self._make(more)), more
        return super().wrap(width, room)

    def split(self, width: float, room: float) -> list[Flowable]:
        self.wrap(width, room)
        return super().split(width, room)

    def draw(self) -> None:
        self.canv.growing.append(Grower(self._name, self._most))
        super().draw()


@dataclass(frozen=True)
class Grower:
    """What can grow on a page, and by how many points at most."""

    name: str
    most: float


def shares(growers: Sequence[Grower], room: float) -> Mapping[str, float]:
    """How much each of the growers on a page grows: as much as every other, none more than it
    can, all together no more than the room."""
    left, found = room - SPARED_PT, dict[str, float]()
    if left < LEAST_PT:
        return found
    waiting = sorted(growers, key=lambda one: one.most)
    for number, one in enumerate(waiting):
        found[one.name] = min(one.most, left / (len(waiting) - number))
        left -= found[one.name]
    return found
