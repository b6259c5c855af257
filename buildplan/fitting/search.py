"""The search for courses that follow an outline: dynamic programming along it, with a beam.

A state is a course so far: the pose of its last section and how far along the outline it has
come. Of the states that have come equally far, the best few that differ in pose go on. Where the
outline has a mirror axis only the stretch from one axis to the next is searched, from a section or
the middle of a cell on the first to a section or the middle of a cell on the second: mirrored and
repeated it closes exactly and is as symmetric as the outline. Lengths here are in long links.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from buildplan.fitting.beam import (
    PLAINNESS,
    Best,
    IntArray,
    States,
    ahead_of,
    joined,
    laid_on,
)
from buildplan.fitting.cells import (
    AXIS_TURNS_DEG,
    BENT_COST,
    EDGE_AT_KNOT,
    KINDS,
    Laid,
    Sizes,
    laid_cells,
)
from buildplan.fitting.courses import Course
from buildplan.fitting.outline import ComplexArray, FloatArray, Outline, Symmetry
from buildplan.fitting.track import MARGIN, PER_LINK, Track, track_along

START_OFFSETS = (-0.45, -0.3, -0.15, 0.0, 0.15, 0.3)
HALF_CELL, HALF_SPUR = 2.0, 4.6  # how much of the outline half of one brings at most, in links
CLOSING = 2.5  # as PLAINNESS, for a gap of one link where the course should meet itself


def _starts(track: Track, cells: Sequence[Laid], sizes: Sizes, mirrored: bool) -> States:
    """Sections on the first axis, and sections after the half of a cell on it."""
    unit = np.exp(1j * track.start_direction)
    target = track.samples[MARGIN]
    radius = 0.5 * sizes.long_gauge_m / sizes.long_m
    rows: list[tuple[complex, float, int, float, int, int]] = []
    heading = track.start_direction - np.pi / 2
    for offset in START_OFFSETS:
        middle = target + (offset - 0.5 - EDGE_AT_KNOT * radius) * unit
        rows.append((middle, heading, MARGIN, offset**2 * 0.2, -1, -1))
        if not mirrored:
            continue
        for number, cell in enumerate(cells):
            before = heading + cell.turn / 2
            place = target + offset * unit - cell.crown * np.exp(1j * before)
            after = place + cell.move * np.exp(1j * before)
            cost = offset**2 * 0.5 + PLAINNESS * cell.cost
            rows.append((complex(after), before - cell.turn, MARGIN, cost, -1, number))
    columns = list(zip(*rows, strict=True))
    types = (complex, float, int, float, int, int)
    states = States(*(np.array(c, t) for c, t in zip(columns, types, strict=True)))
    # half a cell has passed what lies up to its own end
    edge = states.place + (0.5 + EDGE_AT_KNOT * radius) * 1j * np.exp(1j * states.heading)
    spur = np.array([n >= 0 and bool(KINDS[cells[n].kind].rungs) for n in states.cell])
    passed = np.where(states.cell >= 0, _nearest(edge, track, HALF_CELL), 0)
    states.passed = MARGIN + np.where(spur, _nearest(edge, track, HALF_SPUR), passed)
    return states


def _nearest(points: ComplexArray, track: Track, links: float) -> IntArray:
    """Which of the samples within so many links of the beginning lies nearest to each point."""
    ahead = track.samples[MARGIN : MARGIN + round(links * PER_LINK)]
    return np.asarray(np.abs(points[:, None] - ahead[None]).argmin(axis=1))


def _half_passed(cell: Laid) -> float:
    """How much of the outline half a cell brings, in links."""
    if KINDS[cell.kind].rungs:
        return float(np.abs(np.diff(cell.edge)).sum()) / 2
    return abs(cell.edge[-1] - cell.edge[0]) / 2 if len(cell.edge) > 2 else 0.0


def _closings(states: States, track: Track, cells: Sequence[Laid]) -> list[tuple[float, int, int]]:
    """(cost, state, last cell or -1) of the states that can end where they are."""
    left = (track.length + MARGIN - states.passed) / PER_LINK
    heading = track.end_direction - np.pi / 2
    unit = np.exp(1j * track.end_direction)
    target = track.samples[MARGIN + track.length]
    found: list[tuple[float, int, int]] = []

    def add(cost: FloatArray, last: int) -> None:
        for row in np.argsort(cost, kind="stable")[:12]:
            if cost[row] < np.inf:
                found.append((float(cost[row]), int(row), last))

    def gap(aside: FloatArray, turned: FloatArray) -> FloatArray:
        lean = (turned + np.pi) % (2 * np.pi) - np.pi
        whole = np.abs(turned) < np.pi  # a course that has gone round once more is no end
        cost = CLOSING * (aside**2 + (1.5 * lean) ** 2)
        return np.asarray(np.where(whole, cost, np.inf))

    near = np.abs(left) < 0.7
    aside = ((states.place - track.centre) * np.conj(unit)).imag
    add(
        np.where(near, states.cost + left**2 * 0.5 + gap(aside, states.heading - heading), np.inf),
        -1,
    )
    for number, cell in enumerate(cells):
        middle = states.heading - cell.turn / 2
        crown = states.place + cell.crown * np.exp(1j * states.heading)
        aside = ((crown - track.centre) * np.conj(unit)).imag
        miss = ((crown - target) * np.conj(unit)).real
        short = left - _half_passed(cell)
        near = np.abs(left) < (HALF_SPUR if KINDS[cell.kind].rungs else HALF_CELL + 0.2)
        cost = gap(aside, middle - heading) + 0.5 * miss**2 + 0.5 * short**2
        add(np.where(near, states.cost + cost + PLAINNESS * cell.cost, np.inf), number)
    return found


def _rounds(
    states: States, track: Track, starts: States, origin: IntArray, fold: int
) -> list[tuple[float, int, int]]:
    """The same for a part that must end as it began, turned by a part of a full turn."""
    left = (track.length + MARGIN - states.passed) / PER_LINK
    turn = np.exp(-2j * np.pi / fold)
    wanted = track.centre + (starts.place[origin] - track.centre) * turn
    lean = states.heading - starts.heading[origin] + 2 * np.pi / fold
    cost = CLOSING * (np.abs(states.place - wanted) ** 2 + (1.5 * lean) ** 2)
    cost = np.where(np.abs(left) < 0.7, states.cost + cost, np.inf)
    return [
        (float(cost[r]), int(r), -1)
        for r in np.argsort(cost, kind="stable")[:30]
        if cost[r] < np.inf
    ]


def search_courses(outline: Outline, symmetry: Symmetry, sizes: Sizes, count: int) -> list[Course]:
    """The `count` likeliest courses along `outline`, best first, all with even rings."""
    unit = Sizes(
        sizes.long_gauge_m / sizes.long_m, sizes.short_gauge_m / sizes.long_m,
        1.0, sizes.short_m / sizes.long_m,
    )  # fmt: skip
    cells = laid_cells(unit)
    mirrored = bool(symmetry.mirrors)
    track = track_along(outline, symmetry, sizes.long_m)
    on_axis = laid_cells(unit, AXIS_TURNS_DEG, BENT_COST / 4)
    starts = _starts(track, on_axis, unit, mirrored)
    states, origin = starts, np.arange(len(starts.cost))
    history: list[States] = [starts]
    best_so_far = Best(len(track.samples))
    best: dict[Course, float] = {}
    steps = int(track.length / PER_LINK * 1.8) + 6

    def traced(level: int, row: int) -> tuple[int, list[int]]:
        walked: list[int] = []
        for states_then in history[level:0:-1]:
            walked.append(cells[states_then.cell[row]].kind)
            row = int(states_then.parent[row])
        return row, walked[::-1]

    for level in range(steps):
        ends = (
            _closings(states, track, on_axis)
            if mirrored
            else _rounds(states, track, starts, origin, symmetry.fold)
        )
        for cost, row, last in ends:
            begun, walked = traced(level, row)
            first = None
            if mirrored and starts.cell[begun] >= 0:
                first = on_axis[starts.cell[begun]].kind
            end = None if last < 0 else on_axis[last].kind
            course = Course(first, tuple(walked), end, mirrored, symmetry.fold)
            if course.even and cost < best.get(course, np.inf):
                best[course] = cost
        ahead = ahead_of(states, track)
        new = joined([laid_on(states, ahead, cell, n) for n, cell in enumerate(cells)])
        going = new.passed <= MARGIN + track.length + PER_LINK
        new = new.some(np.flatnonzero(going))
        if not len(new.cost):
            break
        new = best_so_far.of(new)
        if not len(new.cost):
            break
        origin = origin[new.parent]
        states = new
        history.append(states)
    return _varied(sorted(best, key=lambda course: best[course]), count)


def _varied(courses: Sequence[Course], count: int) -> list[Course]:
    """The first `count` courses of which no two have the same kinds of bends in the same number,
    or fewer when there are not as many."""
    found: dict[tuple[int, ...], Course] = {}
    for course in courses:
        bends = (kind for kind in course.part if KINDS[kind].item != "straight")
        found.setdefault(tuple(sorted(bends)), course)
    return list(found.values())[:count]
