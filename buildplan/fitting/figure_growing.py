"""A figure grown cell by cell over an outline, then thinned and grown again.

It begins with one square. The cell that covers most of the outline and least besides is put on a
free side, as long as one is worth it; then some are taken away at random and others grow in their
place, which is kept when it is better, or a little worse while the search is young (simulated
annealing, Kirkpatrick, Gelatt and Vecchi 1983). An outline with an upright mirror axis is grown in
pairs of cells on both sides of it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.fitting.figure_raster import PER_CELL, Footprint, Raster
from buildplan.fitting.outline import ComplexArray, Outline, symmetry_of
from buildplan.fitting.tube_design import Gauges
from buildplan.patterns.figure_cells import Ends, FigureSheet, corners_on, sides_of

MOST_CELLS = 160  # of a figure that is grown
BODIES_APART, JOINTS_APART = 0.97, 0.9  # at least, of what shares no joint, in links
NOISE, NOISE_LATER = 0.004, 0.006  # in the worth of a cell, in overlap, as it grows and later
CLEARED = 0.5  # links about a cell within which others are taken away with it, at most
WARM = 0.01  # how much worse may be kept at first
LIKELY = 0.01  # how much worse than the best a figure may be and still be measured whole
FORGET = 3.2  # links within which a change of cells changes what another is worth
UPRIGHT = 0.02  # of a turn in radians: a mirror axis that is upright
LATTICE = np.radians(30)  # squares and triangles look alike in every direction of these

Corners = tuple[int, ...]
Group = tuple[Corners, ...]
"""Cells that grow together: one, or one and its mirror image."""


@dataclass(frozen=True)
class Root:
    """The first square: the left end of the side that it stands on, the direction of that side (a
    unit complex number), and where the mirror axis cuts it, in links from there; None without."""

    at: complex
    along: complex
    axis: float | None


@dataclass(frozen=True)
class Grown:
    """A figure: its joints in links, its cells by their corners clockwise, the first of them on the
    side from joint 0 to joint 1; its root; and how well it covers, lower is better."""

    at: tuple[complex, ...]
    cells: tuple[Corners, ...]
    root: Root
    score: float


def roots_of(outline: Outline, gauges: Gauges, count: int) -> list[Root]:
    """Where figures over an outline may begin."""
    link_m, radius_m = gauges.sizes.long_m, gauges.sizes.long_gauge_m / 2
    symmetry = symmetry_of(outline)
    if symmetry.mirrors and abs(np.cos(symmetry.mirrors[0])) < UPRIGHT:
        low = outline.points.imag.min() + radius_m
        return [
            Root(complex(symmetry.centre.real - axis * link_m, low + off * link_m), 1 + 0j, axis)
            for axis, off in ((0.5 + n % 2 / 2, n / max(1, count)) for n in range(count))
        ]
    deep = Raster(outline, link_m, 2 * radius_m).widest(count)
    along = np.exp(1j * _usual_direction(outline))
    found = []
    for number, middle in enumerate(deep):
        side = (along, along * np.exp(0.5j * LATTICE), 1 + 0j)[number % 3]
        found.append(Root(complex(middle - side * (1 + 1j) * link_m / 2), complex(side), None))
    return found


def _usual_direction(outline: Outline) -> float:
    """The direction, up to that of the lattice, that most of the outline runs along, radians."""
    edges = np.diff(np.append(outline.points, outline.points[0]))
    turns = 2 * np.pi / LATTICE
    mean = complex((np.abs(edges) * np.exp(1j * turns * np.angle(edges))).sum())
    return float(np.angle(mean) / turns)


def grow(outline: Outline, gauges: Gauges, root: Root, changes: int, seed: int) -> Grown:
    """The best figure found from a root in so many changes; the same every time for a seed."""
    chance = np.random.default_rng(seed)
    growing = _Growing(outline, gauges, root)
    growing.fill(chance, NOISE)
    kept, now = list(growing.groups), growing.worth
    best, best_groups = growing.measured(), list(kept)
    least = now
    for number in range(changes):
        if len(kept) < 2:
            break
        growing.thin(int(chance.integers(1, len(kept))), CLEARED * float(chance.random()) ** 2)
        growing.fill(chance, NOISE_LATER * float(chance.random()))
        warm = WARM * (1 - number / changes) + 1e-6
        if growing.worth > now and chance.random() > np.exp((now - growing.worth) / warm):
            growing.become(kept)
            continue
        kept, now = list(growing.groups), growing.worth
        if now < least + LIKELY:
            least, measured = min(least, now), growing.measured()
            if measured < best - 1e-9:
                best, best_groups = measured, list(kept)
    cells = tuple(cell for group in best_groups for cell in group)
    return Grown(tuple(growing.sheet.at), cells, root, best)


class _Growing:
    """The cells so far, and what further ones would bring."""

    def __init__(self, outline: Outline, gauges: Gauges, root: Root) -> None:
        sizes = gauges.sizes
        self.sheet, self._root, self._link_m = FigureSheet(), root, sizes.long_m
        self._raster = Raster(outline, sizes.long_m, sizes.long_gauge_m)
        self._footprints: dict[frozenset[int], Footprint | None] = {}
        self._brought: dict[Group, tuple[int, int]] = {}
        self._grown_on: dict[Ends, tuple[Group, ...]] = {}
        start = self.sheet.joint(0j), self.sheet.joint(1 + 0j)
        first = self._with_image(corners_on(self.sheet, start, square=True))
        self.groups: list[Group] = []
        self._sides: set[Ends] = set()
        self._middles: dict[Ends, complex] = {}
        if self._fits(first):
            self._put(first)

    @property
    def worth(self) -> float:
        """Lower is better: what is not covered, and a little for each cell."""
        return 1 - self._raster.overlap() + PER_CELL * self._count

    def measured(self) -> float:
        """The same with the largest distance and the height."""
        return self._raster.score(self._count)

    @property
    def _count(self) -> int:
        return sum(map(len, self.groups))

    def fill(self, chance: np.random.Generator, noise: float) -> None:
        """Put cells on free sides, the best first, as long as one is worth it."""
        while self._count < MOST_CELLS:
            options = []
            for group in self._options():
                brought = self._brings(group)
                if brought is not None:
                    worth = 1 - self._raster.overlap(*brought) + PER_CELL * len(group)
                    options.append((worth + noise * chance.standard_normal(), group))
            limit = 1 - self._raster.overlap()
            better = sorted((worth, group) for worth, group in options if worth < limit)
            best = next((group for _, group in better if self._fits(group)), None)
            if best is None:
                return
            self._put(best)

    def thin(self, number: int, within: float) -> None:
        """Take a group away, those within so many links of it, and what then hangs on the first no
        more; the first stays."""
        gone = self.sheet.at[self.groups[number][0][0]]
        left = [
            group
            for n, group in enumerate(self.groups)
            if n == 0
            or (n != number and abs(self.sheet.at[group[0][0]] - gone) >= within)
        ]
        self.become(list(_hanging_on(left)))

    def become(self, groups: Sequence[Group]) -> None:
        """Take away and put back so that these are there."""
        there, wanted = set(self.groups), set(groups)
        for group in self.groups:
            if group not in wanted:
                self._cover(group, put=False)
        for group in groups:
            if group not in there:
                self._cover(group, put=True)
        self.groups = list(groups)
        cells = [cell for group in groups for cell in group]
        self._sides = {side for cell in cells for side in sides_of(cell)}
        self._middles = {side: self._middle(side) for side in self._sides}

    def _put(self, group: Group) -> None:
        self._cover(group, put=True)
        self.groups.append(group)
        for side in (side for cell in group for side in sides_of(cell)):
            self._sides.add(side)
            self._middles[side] = self._middle(side)

    def _middle(self, side: Ends) -> complex:
        return (self.sheet.at[side[0]] + self.sheet.at[side[1]]) / 2

    def _options(self) -> Iterator[Group]:
        seen: set[Group] = set()
        for side in sorted(self._sides):
            if side[::-1] in self._sides:
                continue
            if side not in self._grown_on:
                cells = [corners_on(self.sheet, side, square) for square in (True, False)]
                self._grown_on[side] = tuple(map(self._with_image, cells))
            for group in self._grown_on[side]:
                if group not in seen:
                    seen.add(group)
                    yield group

    def _with_image(self, corners: Corners) -> Group:
        """A cell with its image in the mirror axis, or alone where it lies on that; the same of
        either."""
        axis = self._root.axis
        if axis is None:
            return (corners,)
        at = self.sheet.at
        image = tuple(self.sheet.joint(2 * axis - at[joint].conjugate()) for joint in corners)
        if set(image) == set(corners):
            return (corners,)
        if sum(at[joint].real for joint in corners) > len(corners) * axis:
            return self._with_image(image[::-1])
        return corners, image[::-1]

    def _footprint(self, corners: Corners) -> Footprint | None:
        key = frozenset(corners)
        if key not in self._footprints:
            places: ComplexArray = np.array([self.sheet.at[joint] for joint in corners])
            places = self._root.at + self._root.along * self._link_m * places
            self._footprints[key] = self._raster.footprint(places)
        return self._footprints[key]

    def _brings(self, group: Group) -> tuple[int, int] | None:
        """Pixels that a group would cover anew, of the outline and besides; None where it cannot
        be."""
        if group not in self._brought:
            footprints = [self._footprint(cell) for cell in group]
            if None in footprints:
                return None
            found = [self._raster.brings(one) for one in footprints if one is not None]
            self._brought[group] = sum(w for w, _ in found), sum(b for _, b in found)
        return self._brought[group]

    def _cover(self, group: Group, put: bool) -> None:
        for cell in group:
            footprint = self._footprint(cell)
            assert footprint is not None, "only cells within the raster are put"
            (self._raster.put if put else self._raster.take)(footprint)
        at = self.sheet.at
        near = [at[cell[0]] for cell in group]
        for other in list(self._brought):
            if any(abs(at[cell[0]] - place) < FORGET for cell in other for place in near):
                del self._brought[other]

    def _fits(self, group: Group) -> bool:
        """Whether a group lies on no other cell, keeps clear of all and shuts no joint in."""
        new = [side for cell in group for side in sides_of(cell)]
        if len(set(new)) < len(new) or not self._sides.isdisjoint(new):
            return False
        if any(self._footprint(cell) is None for cell in group):
            return False
        joints = sorted({joint for side in new for joint in side})
        free = [0] * len(joints)
        place = {joint: n for n, joint in enumerate(joints)}
        there = self._sides.union(new)
        for a, b in there:
            if a in place and (b, a) not in there:
                free[place[a]] += 1
        return all(count == 1 for count in free) and self._clear(new, joints)

    def _clear(self, new: Sequence[Ends], joints: Sequence[int]) -> bool:
        middles = self._middles | {side: self._middle(side) for side in new}
        ends = np.array(list(middles))
        at = np.array(list(middles.values()))
        added = np.array([self._middle(side) for side in new])
        rows, columns = np.nonzero(np.abs(added[:, None] - at) < BODIES_APART)
        for row, column in zip(rows, columns, strict=True):
            if not set(new[row]) & set(ends[column].tolist()):
                return False
        every = np.unique(ends)
        places = np.array([self.sheet.at[joint] for joint in every])
        for joint in joints:
            apart = np.abs(places - self.sheet.at[joint])
            if (apart[every != joint] < JOINTS_APART).any():
                return False
        return True


def _hanging_on(groups: Sequence[Group]) -> Iterator[Group]:
    """The first group and those that are joined to it side by side, in order."""
    of_side = {side: n for n, group in enumerate(groups) for c in group for side in sides_of(c)}
    reached, waiting = {0}, [0]
    while waiting:
        for cell in groups[waiting.pop()]:
            for side in sides_of(cell):
                other = of_side.get(side[::-1])
                if other is not None and other not in reached:
                    reached.add(other)
                    waiting.append(other)
    return (group for n, group in enumerate(groups) if n in reached)
