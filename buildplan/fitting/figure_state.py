"""A figure as it grows: the cells so far, what further ones would bring, and where they can be."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.fitting.figure_lattice import MOST_CORNERS, Group, Lattice
from buildplan.fitting.figure_raster import PER_CELL, Raster
from buildplan.fitting.outline import ComplexArray, Outline
from buildplan.fitting.solving import HEIGHT_NEAR, OFF_HEIGHT
from buildplan.fitting.tube_design import Gauges
from buildplan.patterns.figure_cells import Ends
from buildplan.patterns.flat_frames import LOW

MOST_CELLS = 160  # of a figure that is grown
HEIGHT_FAR, FAR_OFF = 0.02, 3.0  # of a height that will hardly do; and what more of it weighs
SURE_FOOT, FALLING = 0.3, 0.2  # of a link within its foot; and what falling weighs
SQUARE_DEG, TRIANGLE_DEG, MOST_DEG = 90, 60, 270  # about a joint; the outline has the rest


def few_enough(outline: Outline, gauges: Gauges) -> bool:
    """Whether the squares that are as large as an outline are no more than a figure may have."""
    return bool(outline.region.area <= MOST_CELLS * gauges.sizes.long_m**2)


@dataclass(frozen=True)
class Root:
    """The first square: the left end of the side that it stands on, the direction of that side (a
    unit complex number), and where the mirror axis cuts it, in links from there; None without."""

    at: complex
    along: complex
    axis: float | None


class GrowingFigure:
    """The cells so far, and what further ones would bring."""

    def __init__(self, outline: Outline, gauges: Gauges, root: Root) -> None:
        sizes = gauges.sizes
        self.lattice, self._root, self._link_m = Lattice(root.axis), root, sizes.long_m
        self._raster = Raster(outline, sizes.long_m, sizes.long_gauge_m)
        self._footprints: dict[int, int | None] = {}
        self._on: dict[Ends, tuple[Group, ...]] = {}  # what can be put on a side, if it is free
        self._cells: set[int] = set()
        self._there: set[Ends] = set()
        self._free: dict[Ends, None] = {}  # sides of one cell
        self._leaving: Counter[int] = Counter()  # free sides that set out from a joint
        self._filled: Counter[int] = Counter()  # degrees about a joint that cells take
        self.groups: list[Group] = []
        first = self.lattice.first_group()
        if self._has_room(first) and self._on_raster(first):
            self._put(first)

    @property
    def worth(self) -> float:
        """Lower is better: what is not covered, how far it is from standing and from the height
        asked for, and a little for each cell."""
        off = OFF_HEIGHT * max(0.0, self._raster.off_height() - HEIGHT_NEAR)
        return 1 - self.overlap + PER_CELL * self._count + off + self._falling()

    @property
    def overlap(self) -> float:
        """Area of the intersection over that of the union, on the raster."""
        return self._raster.overlap()

    def measured(self) -> float:
        """The same with the largest distance, and much for a height that will hardly do."""
        far_off = FAR_OFF * max(0.0, self._raster.off_height() - HEIGHT_FAR)
        return self.worth + self._raster.far() + far_off

    def _falling(self) -> float:
        """What it is marked down by for weight that is not surely above its lowest joints."""
        cells = [cell for group in self.groups for cell in group]
        if not cells:
            return 0.0
        used = sorted({joint for cell in cells for joint in self.lattice.corners[cell]})
        along = self._root.along
        joints = along * np.array([self.lattice.sheet.at[joint] for joint in used])
        weight = float(np.mean([(along * self.lattice.middle(cell)).real for cell in cells]))
        foot = joints.real[joints.imag <= joints.imag.min() + LOW]
        margin = min(weight - foot.min(), foot.max() - weight)
        return FALLING * float(np.clip(SURE_FOOT - margin, 0.0, 1.0))

    @property
    def sound(self) -> bool:
        """Whether cells meet side to side everywhere: where one was taken away from between two
        others they may be left meeting at a joint alone."""
        return max(self._leaving.values(), default=0) <= 1

    @property
    def _count(self) -> int:
        return sum(map(len, self.groups))

    def fill(self, chance: np.random.Generator, noise: float) -> None:
        """Put cells on free sides, the best first, as long as one is worth it."""
        options = self._brought_by(list(self._options(self._free)))
        while options and self._count < MOST_CELLS:
            groups, brought = list(options), np.array(list(options.values()))
            cells = np.fromiter(map(len, groups), int)
            gained = self._raster.overlaps(brought[:, 0], brought[:, 1]) - self.overlap
            worth = gained - PER_CELL * cells + noise * chance.standard_normal(len(groups))
            order = np.argsort(-worth, kind="stable")
            best = next(
                (groups[n] for n in order if worth[n] > 0 and self._has_room(groups[n])),
                None,
            )
            if best is None:
                return
            self._put(best)
            options = self._options_beside(best, options)

    def _options_beside(
        self, put: Group, before: Mapping[Group, tuple[int, int]]
    ) -> dict[Group, tuple[int, int]]:
        """What is left of the options, and what they bring, once one of them has been put; and
        those on its own sides."""
        near = set[int]().union(*(self.lattice.near[cell] for cell in put))
        options = {group: brought for group, brought in before.items() if near.isdisjoint(group)}
        others = (group for group in before if group not in options)
        sides = [side for cell in put for side in self.lattice.sides[cell] if side in self._free]
        new = dict.fromkeys((*filter(self._possible, others), *self._options(sides)))
        return options | self._brought_by([group for group in new if group not in options])

    def thinned(self, number: int, within: float) -> list[Group]:
        """The groups without one, those within so many links of it, and what then hangs on the
        first no more; the first stays."""
        middle = self.lattice.middle
        gone = middle(self.groups[number][0])
        left = [
            group
            for n, group in enumerate(self.groups)
            if n == 0 or (n != number and abs(middle(group[0]) - gone) >= within)
        ]
        return list(self._hanging_on(left))

    def _hanging_on(self, groups: Sequence[Group]) -> Iterator[Group]:
        """The first group and those that are joined to it side by side, in order."""
        sides = self.lattice.sides
        of_side = {side: n for n, group in enumerate(groups) for c in group for side in sides[c]}
        reached, waiting = {0}, [0]
        while waiting:
            for cell in groups[waiting.pop()]:
                for a, b in sides[cell]:
                    other = of_side.get((b, a))
                    if other is not None and other not in reached:
                        reached.add(other)
                        waiting.append(other)
        return (group for n, group in enumerate(groups) if n in reached)

    def become(self, groups: Sequence[Group]) -> None:
        """Take away and put back so that these are there."""
        there, wanted = set(self.groups), set(groups)
        for group in self.groups:
            if group not in wanted:
                self._take(group)
        for group in groups:
            if group not in there:
                self._put(group)
        self.groups = list(groups)

    def _put(self, group: Group) -> None:
        for cell in group:
            footprint = self._footprint(cell)
            assert footprint is not None, "only cells within the raster are put"
            self._raster.put(footprint)
            self._cells.add(cell)
            self._filled.update(self._angles(cell))
            for a, b in self.lattice.sides[cell]:
                self._there.add((a, b))
                if (b, a) in self._free:
                    del self._free[b, a]
                    self._leaving[b] -= 1
                else:
                    self._free[a, b] = None
                    self._leaving[a] += 1
        self.groups.append(group)

    def _take(self, group: Group) -> None:
        for cell in group:
            footprint = self._footprint(cell)
            assert footprint is not None, "only cells within the raster were put"
            self._raster.take(footprint)
            self._cells.remove(cell)
            self._filled.subtract(self._angles(cell))
            for a, b in self.lattice.sides[cell]:
                self._there.remove((a, b))
                if (b, a) in self._there:
                    self._free[b, a] = None
                    self._leaving[b] += 1
                else:
                    del self._free[a, b]
                    self._leaving[a] -= 1

    def _options(self, sides: Iterable[Ends]) -> Iterator[Group]:
        """Groups on free sides that lie on the raster and on nothing else."""
        seen: set[Group] = set()
        for side in sides:
            for group in self._groups_on(side):
                if group in seen:
                    continue
                seen.add(group)
                if self._possible(group):
                    yield group

    def _groups_on(self, side: Ends) -> tuple[Group, ...]:
        if side not in self._on:
            self._on[side] = tuple(filter(self._on_raster, self.lattice.groups_on(side)))
        return self._on[side]

    def _possible(self, group: Group) -> bool:
        """Whether nothing of a group lies on what is there, or is there itself."""
        there, against = self._cells, self.lattice.against
        return all(cell not in there and there.isdisjoint(against[cell]) for cell in group)

    def _on_raster(self, group: Group) -> bool:
        return all(self._footprint(cell) is not None for cell in group)

    def _footprint(self, cell: int) -> int | None:
        if cell not in self._footprints:
            corners = self.lattice.corners[cell]
            places: ComplexArray = np.array([self.lattice.sheet.at[joint] for joint in corners])
            places = self._root.at + self._root.along * self._link_m * places
            self._footprints[cell] = self._raster.footprint(places)
        return self._footprints[cell]

    def _brought_by(self, groups: Sequence[Group]) -> dict[Group, tuple[int, int]]:
        """Pixels that each group would cover anew, of the outline and besides."""
        if not groups:
            return {}
        footprints = [self._footprints[cell] for group in groups for cell in group]
        brought = self._raster.brings([one for one in footprints if one is not None])
        begins = np.cumsum([0, *map(len, groups[:-1])])
        return dict(zip(groups, np.add.reduceat(brought, begins).tolist(), strict=True))

    def _angles(self, cell: int) -> dict[int, int]:
        """Degrees that a cell takes about each of its joints."""
        corners = self.lattice.corners[cell]
        return dict.fromkeys(corners, SQUARE_DEG if len(corners) == MOST_CORNERS else TRIANGLE_DEG)

    def _has_room(self, group: Group) -> bool:
        """Whether with a group one outline at a time passes each of its joints, and nowhere turns
        back so sharply that its balloons push it open."""
        new = {side for cell in group for side in self.lattice.sides[cell]}
        leaving = {joint: self._leaving[joint] for side in new for joint in side}
        for a, b in new:
            if (b, a) in self._there:
                leaving[b] -= 1
            elif (b, a) not in new:
                leaving[a] += 1
        filled = {joint: self._filled[joint] for joint in leaving}
        for cell in group:
            for joint, angle in self._angles(cell).items():
                filled[joint] += angle
        return all(count == 1 for count in leaving.values()) and max(filled.values()) <= MOST_DEG
