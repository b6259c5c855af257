"""Courses so far, side by side: what each comes to when a cell is laid next, and which go on.

Lengths are in long links.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from buildplan.fitting.cells import KINDS, Laid
from buildplan.fitting.outline import ComplexArray, FloatArray
from buildplan.fitting.track import PER_LINK, Track

IntArray = npt.NDArray[np.int_]

# how many samples a cell may carry the course along the outline, and a spur
REACH, SPUR_REACH = round(2.8 * PER_LINK), round(8.5 * PER_LINK)
PEAK_ASTRAY = 0.7  # how far from the outline the peak of a spur may lie, in links
PER_BUCKET = 60  # states kept among those that have come equally far
BUCKET = 0.25  # how far apart along the outline states still count as equally far, in links
POSE_STEP = 0.12  # links and radians: nearer poses count as one
ASTRAY = 0.8  # how far from the outline the end of a cell's edge may lie, in links
PLAINNESS = 0.04  # worth of one plainer cell, in links cubed of squared distance along the edge


@dataclass
class States:
    """Courses so far, as columns: pose, samples passed, cost, and where each came from."""

    place: ComplexArray
    heading: FloatArray
    passed: IntArray
    cost: FloatArray
    parent: IntArray
    cell: IntArray

    def some(self, rows: IntArray) -> States:
        """Those of some rows."""
        return States(*(column[rows] for column in vars(self).values()))


def joined(parts: Sequence[States]) -> States:
    """All of several, in order."""
    columns = zip(*(vars(part).values() for part in parts), strict=True)
    return States(*(np.concatenate(column) for column in columns))


@dataclass(frozen=True)
class Ahead:
    """The outline ahead of every state, in the state's own frame: x and y, (states, reach)."""

    x: FloatArray
    y: FloatArray

    def some(self, rows: IntArray, reach: int) -> Ahead:
        """The same for some states and less far ahead."""
        return Ahead(self.x[rows, :reach], self.y[rows, :reach])

    def near(self, reach: int) -> Ahead:
        """The same for all states and less far ahead."""
        return Ahead(self.x[:, :reach], self.y[:, :reach])

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


def ahead_of(states: States, track: Track) -> Ahead:
    steps = states.passed[:, None] + np.arange(SPUR_REACH)[None]
    seen = track.samples[np.minimum(steps, len(track.samples) - 1)]
    local = (seen - states.place[:, None]) * np.exp(-1j * states.heading)[:, None]
    return Ahead(np.ascontiguousarray(local.real), np.ascontiguousarray(local.imag))


def laid_on(states: States, ahead: Ahead, cell: Laid, number: int) -> States:
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
    return States(
        place=states.place[on] + cell.move * np.exp(1j * states.heading[on]),
        heading=states.heading[on] - cell.turn,
        passed=states.passed[on] + come,
        cost=states.cost[on] + cost,
        parent=on,
        cell=np.full(len(on), number),
    )


class Best:
    """The costs of the best courses so far that have come equally far, whatever their number of
    cells: those that are not among the best there go no further."""

    def __init__(self, samples: int) -> None:
        self.cost = np.full((bucket_of(np.array(samples)) + 1, PER_BUCKET), np.inf)

    def of(self, states: States) -> States:
        """The states that are among the best, no two in the same pose."""
        order = np.lexsort((np.arange(len(states.cost)), states.cost))
        order = order[states.cost[order] <= self.cost[bucket_of(states.passed[order]), -1]]
        states = states.some(order)
        key = bucket = bucket_of(states.passed)
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


def bucket_of(passed: IntArray) -> IntArray:
    return np.asarray((passed / (BUCKET * PER_LINK)).astype(np.int64))
