"""A figure grown cell by cell over an outline, then thinned and grown again.

It begins with one square. The cell that covers most of the outline and least besides is put on a
free side, as long as one is worth it; then some are taken away at random and others grow in their
place, which is kept when it is better, or a little worse while the search is young (simulated
annealing, Kirkpatrick, Gelatt and Vecchi 1983). An outline with an upright mirror axis is grown in
pairs of cells on both sides of it.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from shapely import LineString

from buildplan.fitting.figure_lattice import Group
from buildplan.fitting.figure_raster import Raster
from buildplan.fitting.figure_state import GrowingFigure, Root
from buildplan.fitting.outline import Outline, symmetry_of
from buildplan.fitting.tube_design import Gauges, gauges_for_height

NOISE, NOISE_LATER = 0.004, 0.006  # in the worth of a cell, in overlap, as it grows and later
CLEARED = 1.6  # links about a cell within which others are taken away with it, at most
TAKEN, DRAWN = 6.0, 6  # groups taken away at a time, about, and how often fewer are looked for
WARM = 0.01  # how much worse may be kept at first
LIKELY = 0.01  # how much worse than the best a figure may be and still be measured whole
# gauges that are tried, over the one that is asked for: finer ones are harder to size
ABOUT = (1.0, 1.04, 0.96, 1.08, 1.12)
UPRIGHT = 0.02  # of a turn in radians: a mirror axis that is upright
LATTICE = np.radians(30)  # squares and triangles look alike in every direction of these


@dataclass(frozen=True)
class Start:
    """What a figure is grown of: over which outline, with links of which gauges for those that were
    `asked` for, from which root, by which chances."""

    followed: Outline
    asked: Gauges
    gauges: Gauges
    root: Root
    seed: int


@dataclass(frozen=True)
class Grown:
    """A figure: its joints as the outline lies, in links; its cells by their corners clockwise; how
    well it covers, lower is better; and its overlap, on the raster."""

    start: Start
    at: tuple[complex, ...]
    cells: tuple[tuple[int, ...], ...]
    score: float
    overlap: float


def starts_of(outline: Outline, asked: Gauges, count: int) -> list[Start]:
    """So many ways to begin figures over an outline with links of about the gauges that are asked
    for, or as many as there are: where a lattice is a little finer or coarser its rows fall
    otherwise."""
    along = max(1, round(count / len(ABOUT)))
    beginnings = [
        (gauges, root)
        for gauges in dict.fromkeys(gauges_for_height(asked, factor) for factor in ABOUT)
        for root in _roots_of(outline, gauges, along)
    ]
    return [
        Start(outline, asked, gauges, root, seed)
        for seed, (gauges, root) in enumerate(beginnings[:count])
    ]


def _roots_of(outline: Outline, gauges: Gauges, count: int) -> list[Root]:
    link_m, radius_m = gauges.sizes.long_m, gauges.sizes.long_gauge_m / 2
    symmetry = symmetry_of(outline)
    if symmetry.mirrors and abs(np.cos(symmetry.mirrors[0])) < UPRIGHT:
        low = _lowest_on(outline, symmetry.centre.real) + radius_m
        return [
            Root(complex(symmetry.centre.real - axis * link_m, low + off * link_m), 1 + 0j, axis)
            for axis, off in ((0.5 + n % 2 / 2, n // 2 * 2 / count) for n in range(count))
        ]
    deep = Raster(outline, link_m, 2 * radius_m).widest(count)
    along = np.exp(1j * _usual_direction(outline))
    found = []
    for number, middle in enumerate(deep):
        side = (along, along * np.exp(0.5j * LATTICE), 1 + 0j)[number % 3]
        found.append(Root(complex(middle - side * (1 + 1j) * link_m / 2), complex(side), None))
    return found


def _lowest_on(outline: Outline, axis_m: float) -> float:
    """The lower end of the longest piece of an upright axis that lies within an outline, metres:
    between the legs of an M there is none of it."""
    _, low, _, high = outline.region.bounds
    common = LineString([(axis_m, low), (axis_m, high)]).intersection(outline.region)
    longest = max(getattr(common, "geoms", [common]), key=lambda piece: float(piece.length))
    return low if longest.is_empty else float(longest.bounds[1])


def _usual_direction(outline: Outline) -> float:
    """The direction, up to that of the lattice, that most of the outline runs along, radians."""
    edges = np.diff(np.append(outline.points, outline.points[0]))
    turns = 2 * np.pi / LATTICE
    mean = complex((np.abs(edges) * np.exp(1j * turns * np.angle(edges))).sum())
    return float(np.angle(mean) / turns)


def grow(start: Start, changes: int) -> Grown:
    """The best figure found from a start in so many changes; the same every time."""
    chance = np.random.default_rng(start.seed)
    growing = GrowingFigure(start.followed, start.gauges, start.root)
    growing.fill(chance, NOISE)
    kept, now = list(growing.groups), growing.worth
    best, best_groups, overlap = growing.measured(), list(kept), growing.overlap
    least = now
    for number in range(changes):
        if len(kept) < 2:
            break
        growing.become(_fewer(growing, chance))
        growing.fill(chance, NOISE_LATER * float(chance.random()))
        warm = WARM * (1 - number / changes) + 1e-6
        worth = growing.worth
        worse = worth - now
        if not growing.sound or (worse > 0 and chance.random() > np.exp(-worse / warm)):
            growing.become(kept)
            continue
        kept, now = list(growing.groups), worth
        if now < least + LIKELY:
            least, measured = min(least, now), growing.measured()
            if measured < best - 1e-9:
                best, best_groups, overlap = measured, list(kept), growing.overlap
    lattice = growing.lattice
    cells = tuple(lattice.corners[cell] for group in best_groups for cell in group)
    at = tuple(place * start.root.along for place in lattice.sheet.at)
    return Grown(start, at, cells, best, overlap)


def _fewer(growing: GrowingFigure, chance: np.random.Generator) -> list[Group]:
    """The groups without a few that lie together; seldom many, which take long to grow again."""
    most = 2 + float(chance.exponential(TAKEN))
    for _ in range(DRAWN):
        number = int(chance.integers(1, len(growing.groups)))
        fewer = growing.thinned(number, CLEARED * float(chance.random()) ** 2)
        if len(growing.groups) - len(fewer) <= most:
            break
    return fewer
