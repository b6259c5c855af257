"""The search for courses that follow an outline: dynamic programming along it, with a beam.

A state is a course so far: the pose of its last section and how far along the outline it has
come. Of the states that have come equally far, the best few that differ in pose go on. Where the
outline has a mirror axis only the stretch from one axis to the next is searched, from a section or
the middle of a cell on the first to a section or the middle of a cell on the second: mirrored and
repeated it closes exactly and is as symmetric as the outline. Lengths here are in long links.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

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

IntArray = npt.NDArray[np.int_]

# how many samples a cell may carry the course along the outline, and a spur
REACH, SPUR_REACH = round(2.8 * PER_LINK), round(8.5 * PER_LINK)
PEAK_ASTRAY = 0.7  # how far from the outline the peak of a spur may lie, in links
PER_BUCKET = 60  # states kept among those that have come equally far
BUCKET = 0.25  # how far apart along the outline states still count as equally far, in links
POSE_STEP = 0.12  # links and radians: nearer poses count as one
START_OFFSETS = (-0.45, -0.3, -0.15, 0.0, 0.15, 0.3)
ASTRAY = 0.8  # how far from the outline the end of a cell's edge may lie, in links
PLAINNESS = 0.04  # worth of one plainer cell, in links cubed of squared distance along the edge
CLOSING = 2.5  # the same for a gap of one link where the course should meet itself


@dataclass
class _States:
    """Courses so far, as columns: pose, samples passed, cost, and where each came from."""

    place: ComplexArray
    heading: FloatArray
    passed: IntArray
    cost: FloatArray
    parent: IntArray
    cell: IntArray

    def some(self, rows: IntArray) -> _States:
        return _States(*(column[rows] for column in vars(self).values()))


def _joined(parts: Sequence[_States]) -> _States:
    columns = zip(*(vars(part).values() for part in parts), strict=True)
    return _States(*(np.concatenate(column) for column in columns))


def _starts(track: Track, cells: Sequence[Laid], sizes: Sizes, mirrored: bool) -> _States:
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
    states = _States(*(np.array(c, t) for c, t in zip(columns, types, strict=True)))
    # half a cell has passed what lies up to its own end
    edge = states.place + (0.5 + EDGE_AT_KNOT * radius) * 1j * np.exp(1j * states.heading)
    ahead = track.samples[MARGIN : MARGIN + 2 * PER_LINK]
    nearest = np.abs(edge[:, None] - ahead[None]).argmin(axis=1)
    states.passed = MARGIN + np.where(states.cell >= 0, nearest, 0)
    return states


@dataclass(frozen=True)
class _Ahead:
    """The outline ahead of every state, in the state's own frame: x and y, (states, reach)."""

    x: FloatArray
    y: FloatArray

    def some(self, rows: IntArray, reach: int) -> _Ahead:
        """The same for some states and less far ahead."""
        return _Ahead(self.x[rows, :reach], self.y[rows, :reach])

    def near(self, reach: int) -> _Ahead:
        """The same for all states and less far ahead."""
        return _Ahead(self.x[:, :reach], self.y[:, :reach])

    def squared(self, point: complex) -> FloatArray:
        """Squared distances to a point."""
        return np.asarray((self.x - point.real) ** 2 + (self.y - point.imag) ** 2)

    def squared_to_line(self, a: complex, b: complex) -> FloatArray:
        """Squared distances to the straight line from a to b."""
        length = max(abs(b - a), 1e-9)
        along = (b - a) / length
        x, y = self.x - a.real, self.y - a.imag
        t = np.clip(x * along.real + y * along.imag, 0.0, length)
        return np.asarray((x - t * along.real) ** 2 + (y - t * along.imag) ** 2)


def _ahead(states: _States, track: Track) -> _Ahead:
    steps = states.passed[:, None] + np.arange(SPUR_REACH)[None]
    seen = track.samples[np.minimum(steps, len(track.samples) - 1)]
    local = (seen - states.place[:, None]) * np.exp(-1j * states.heading)[:, None]
    return _Ahead(np.ascontiguousarray(local.real), np.ascontiguousarray(local.imag))


def _laid_on(states: _States, ahead: _Ahead, cell: Laid, number: int) -> _States:
    """Every state with `cell` laid next, but for those that it would lead off the outline."""
    spur = bool(KINDS[cell.kind].rungs)
    reach = SPUR_REACH if spur else REACH
    ahead = ahead.near(reach)
    last = ahead.squared(complex(cell.edge[-1]))
    if spur:
        # where it comes back lies beyond its peak
        crown = ahead.squared(cell.crown)
        peak = crown.argmin(axis=1)
        last[np.arange(reach)[None] < peak[:, None]] = np.inf
        last[crown[np.arange(len(peak)), peak] > PEAK_ASTRAY**2] = np.inf
    # the edge may end near a later fold of the outline: nearer ones win
    come = (last + 0.01 * np.arange(reach) / PER_LINK).argmin(axis=1)
    ends = np.take_along_axis(last, come[:, None], axis=1)[:, 0]
    on = np.flatnonzero(ends <= ASTRAY**2)
    come, ends = come[on], ends[on]
    near = ahead.some(on, 1 + int(come.max(initial=0)))
    away = near.squared_to_line(cell.edge[0], cell.edge[1])
    for a, b in zip(cell.edge[1:-1], cell.edge[2:], strict=True):
        np.minimum(away, near.squared_to_line(a, b), out=away)
    away[:, 0] = 0.0
    away[np.arange(away.shape[1])[None] > come[:, None]] = 0.0
    crowns = ahead.some(on, reach).squared(cell.crown).min(axis=1)
    cost = away.sum(axis=1) / PER_LINK + 0.15 * ends + 0.25 * crowns + PLAINNESS * cell.cost
    return _States(
        place=states.place[on] + cell.move * np.exp(1j * states.heading[on]),
        heading=states.heading[on] - cell.turn,
        passed=states.passed[on] + come,
        cost=states.cost[on] + cost,
        parent=on,
        cell=np.full(len(on), number),
    )


class _Best:
    """The costs of the best courses so far that have come equally far, whatever their number of
    cells: those that are not among the best there go no further."""

    def __init__(self, samples: int) -> None:
        self.cost = np.full((_bucket(np.array(samples)) + 1, PER_BUCKET), np.inf)

    def of(self, states: _States) -> _States:
        """The states that are among the best, no two in the same pose."""
        order = np.lexsort((np.arange(len(states.cost)), states.cost))
        order = order[states.cost[order] <= self.cost[_bucket(states.passed[order]), -1]]
        states = states.some(order)
        key = bucket = _bucket(states.passed)
        for column in (states.place.real, states.place.imag, states.heading):
            # poses as whole numbers below 4096, so that one number holds the whole state
            key = key * 4096 + (np.round(column / POSE_STEP).astype(np.int64) & 4095)
        _, first = np.unique(key, return_index=True)
        states, bucket = states.some(first), bucket[first]
        order = np.lexsort((states.cost, bucket))
        _, begins, sizes = np.unique(bucket[order], return_index=True, return_counts=True)
        rank = np.arange(len(order)) - np.repeat(begins, sizes)
        order, rank = order[rank < PER_BUCKET], rank[rank < PER_BUCKET]
        states, bucket = states.some(order), bucket[order]
        new = np.full_like(self.cost, np.inf)
        new[bucket, rank] = states.cost
        self.cost = np.sort(np.hstack([self.cost, new]), axis=1)[:, :PER_BUCKET]
        return states.some(np.flatnonzero(states.cost <= self.cost[bucket, -1]))


def _bucket(passed: IntArray) -> IntArray:
    return np.asarray((passed / (BUCKET * PER_LINK)).astype(np.int64))


def _closings(states: _States, track: Track, cells: Sequence[Laid]) -> list[tuple[float, int, int]]:
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
    near = np.abs(left) < 2.2
    for number, cell in enumerate(cells):
        middle = states.heading - cell.turn / 2
        crown = states.place + cell.crown * np.exp(1j * states.heading)
        aside = ((crown - track.centre) * np.conj(unit)).imag
        miss = ((crown - target) * np.conj(unit)).real
        short = left - abs(cell.edge[-1] - cell.edge[0]) / 2 if len(cell.edge) > 2 else left
        cost = gap(aside, middle - heading) + 0.5 * miss**2 + 0.5 * short**2
        add(np.where(near, states.cost + cost + PLAINNESS * cell.cost, np.inf), number)
    return found


def _rounds(
    states: _States, track: Track, starts: _States, origin: IntArray, fold: int
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
    history: list[_States] = [starts]
    best_so_far = _Best(len(track.samples))
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
        ahead = _ahead(states, track)
        new = _joined([_laid_on(states, ahead, cell, n) for n, cell in enumerate(cells)])
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
