"""Cholesky factors of a large symmetric sparse matrix, front by front.

A band as wide as a wall is high holds mostly entries that no row needs. Nested dissection parts the
rows in two that share no entry by a few that lie between, and each part again (George, SIAM Journal
on Numerical Analysis 10, 1973, 345-363): what lies between is worked out last. Each such group of
rows is a front, a dense matrix of its own rows and those beyond that they share entries with
(Duff and Reid, ACM Transactions on Mathematical Software 9, 1983, 302-325), so that all of the work
is that of dense matrices.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from scipy import sparse
from scipy.linalg.blas import dsyrk, dtrsm, dtrsv
from scipy.linalg.lapack import dpotrf
from scipy.sparse.csgraph import reverse_cuthill_mckee

from buildplan.shape.model import FloatArray, IntArray

Solve = Callable[[FloatArray], FloatArray]

FEWEST_ROWS = 120  # in a front that is not parted further (measured)
MIDDLE = (0.4, 0.6)  # of the rows, between which they are parted


@dataclass(frozen=True)
class Move:
    """What of a front goes into that which it is a part of: rows and columns `of` the one, `to` the
    other, into the columns of its `own` rows or those beyond."""

    own: bool
    of: tuple[slice, slice]
    to: tuple[slice, slice]


@dataclass(frozen=True)
class Front:
    """`first` is the first of its own rows, of which there are `own`, `beyond` are the others, by
    their places in the order of all. `entries` are those of the matrix in the columns of its own
    rows, on the diagonal and below it, `place` where they go, column by column. `parts` are the
    fronts before it that it takes up."""

    first: int
    own: int
    beyond: IntArray
    entries: IntArray
    place: IntArray
    parts: tuple[tuple[int, tuple[Move, ...]], ...]

    @property
    def work(self) -> float:
        """Operations of one factoring."""
        own, beyond = float(self.own), float(len(self.beyond))
        return own**3 / 3 + own**2 * beyond + own * beyond**2


@dataclass(frozen=True)
class Fronts:
    """An order of the rows, and the fronts in the order in which they are worked out."""

    order: IntArray
    fronts: tuple[Front, ...]

    @property
    def work(self) -> float:
        """Operations of one factoring."""
        return sum(front.work for front in self.fronts)

    def factored(self, matrix: sparse.csc_array, damping: float) -> Solve | None:
        """What solves for a right side, given `matrix` with `damping` added to its diagonal;
        None when that is not positive definite."""
        left: dict[int, FloatArray] = {}
        factors: list[tuple[FloatArray, FloatArray]] = []
        for number, front in enumerate(self.fronts):
            columns, rest = _assembled(front, matrix.data, damping, left)
            corner, failed = dpotrf(columns[: front.own], lower=True, clean=False)
            if failed:
                return None
            below = columns[front.own :]
            if len(rest):
                below = dtrsm(1.0, corner, below, side=True, lower=True, trans_a=True)
                left[number] = dsyrk(-1.0, below, beta=1.0, c=rest, lower=True, overwrite_c=True)
            factors.append((corner, below))
        return lambda right: self._solved(factors, right)

    def _solved(
        self, factors: Sequence[tuple[FloatArray, FloatArray]], right: FloatArray
    ) -> FloatArray:
        found = right[self.order]
        steps = list(zip(self.fronts, factors, strict=True))
        for front, (corner, below) in steps:
            own = slice(front.first, front.first + front.own)
            found[own] = dtrsv(corner, found[own], lower=True)
            found[front.beyond] -= below @ found[own]
        for front, (corner, below) in reversed(steps):
            own = slice(front.first, front.first + front.own)
            known = found[own] - below.T @ found[front.beyond]
            found[own] = dtrsv(corner, known, lower=True, trans=True)
        left = np.empty_like(right)
        left[self.order] = found
        return left


def _assembled(
    front: Front, data: FloatArray, damping: float, left: dict[int, FloatArray]
) -> tuple[FloatArray, FloatArray]:
    """A front's own columns, and what lies beyond, with all that its parts have `left`: their lower
    halves."""
    beyond = len(front.beyond)
    size = front.own + beyond
    columns = np.zeros((front.own, size))
    columns.ravel()[front.place] = data[front.entries]
    columns.ravel()[:: size + 1] += damping
    columns, rest = columns.T, np.zeros((beyond, beyond), order="F")
    for number, moves in front.parts:
        part = left.pop(number)
        for move in moves:
            (columns if move.own else rest)[move.to] += part[move.of]
    return columns, rest


def fronts_of(matrix: sparse.csc_array) -> Fronts:
    """The fronts of a symmetric matrix with these places of entries."""
    order, groups = _dissected(matrix)
    rank = np.empty(len(order), int)
    rank[order] = np.arange(len(order))
    row, column = rank[matrix.indices], np.repeat(rank, np.diff(matrix.indptr))
    lower = np.flatnonzero(row >= column)
    lower = lower[np.argsort(column[lower], kind="stable")]
    starts = np.searchsorted(column[lower], np.arange(len(order) + 1))
    fronts, first = list[Front](), 0
    for own, parts in groups:
        last = first + own
        entries = lower[starts[first] : starts[last]]
        met = np.unique(np.concatenate([row[entries], *(fronts[one].beyond for one in parts)]))
        beyond = met[met >= last]
        rows = np.concatenate([np.arange(first, last), beyond])
        place = np.searchsorted(rows, row[entries]) + (column[entries] - first) * len(rows)
        moves = ((one, np.searchsorted(rows, fronts[one].beyond)) for one in parts)
        taken = tuple((one, _moves(at, own)) for one, at in moves if len(at))
        fronts.append(Front(first, own, beyond, entries, place, taken))
        first = last
    return Fronts(order, tuple(fronts))


Groups = list[tuple[int, tuple[int, ...]]]  # of rows: how many, and which groups it is parted in


def _dissected(matrix: sparse.csc_array) -> tuple[IntArray, Groups]:
    """The order of the rows, and the groups of them that it comes in.

    Rows that follow one another with the same entries, as the three of a joint have, are parted as
    one.
    """
    first = _first_of_alike(matrix)
    rows_of = np.diff(np.append(first, matrix.shape[0]))
    ones = np.ones(len(matrix.indices), np.int8)
    pattern = sparse.csr_array((ones, matrix.indices, matrix.indptr), shape=matrix.shape)
    parted = _Parting(pattern[first][:, first], rows_of)
    parted.part(np.arange(len(first)))
    joined = np.concatenate(parted.groups)
    count = rows_of[joined]
    # each one's first row, and those that follow it
    order = np.repeat(first[joined] - np.cumsum(count) + count, count) + np.arange(count.sum())
    sizes = (int(rows_of[group].sum()) for group in parted.groups)
    return order, list(zip(sizes, parted.parts, strict=True))


def _first_of_alike(matrix: sparse.csc_array) -> IntArray:
    """The first of each run of rows with entries at the same places."""
    pointers, count = matrix.indptr, np.diff(matrix.indptr)
    before = np.arange(len(matrix.indices)) - np.repeat(count, count)
    unlike = matrix.indices != matrix.indices[np.maximum(before, 0)]
    differ = np.add.reduceat(unlike, pointers[:-1], dtype=int) > 0
    differ[1:] |= count[1:] != count[:-1]
    differ[0] = True
    return np.flatnonzero(differ)


class _Parting:
    """The groups that rows are parted in: each group's rows, and the numbers of its parts."""

    def __init__(self, pattern: sparse.csr_array, rows_of: IntArray) -> None:
        self.pattern, self.rows_of = pattern, rows_of
        self.groups, self.parts = list[IntArray](), list[tuple[int, ...]]()
        self.number = np.full(len(rows_of), len(rows_of))  # of its group; of none yet, the last

    def part(self, rows: IntArray) -> tuple[int, ...]:
        """Add the groups of some rows, those between two parts after them; the numbers of those
        that are part of no other."""
        size = len(rows)
        inner = self.pattern[rows][:, rows]
        order = reverse_cuthill_mckee(inner, symmetric_mode=True)
        rank = np.empty(size, int)
        rank[order] = np.arange(size)
        row, column = rank[inner.indices], np.repeat(rank, np.diff(inner.indptr))
        reach = np.arange(size)
        np.maximum.at(reach, column, row)
        reach = np.maximum.accumulate(reach)
        low, high = (int(share * size) for share in MIDDLE)
        cut = low + int(np.argmin(reach[low - 1 : high] - np.arange(low, high + 1))) if low else 0
        between = np.zeros(size, bool)
        between[row[(column < cut) & (row >= cut)]] = True
        after = np.flatnonzero(~between[cut:]) + cut
        if self.rows_of[rows].sum() <= FEWEST_ROWS or not cut or not len(after):
            return (self._added(rows[order], ()),)
        parts = self.part(rows[order[:cut]]) + self.part(rows[order[after]])
        if not between.any():
            return parts
        return (self._added(self._side_by_side(rows[order[between]]), parts),)

    def _added(self, rows: IntArray, parts: tuple[int, ...]) -> int:
        self.number[rows] = len(self.groups)
        self.groups.append(rows)
        self.parts.append(parts)
        return len(self.groups) - 1

    def _side_by_side(self, rows: IntArray) -> IntArray:
        """Rows between two parts, those beside the same of their groups together: then what goes
        from a group into theirs goes there in few blocks."""
        met = self.pattern[rows]
        first = np.minimum.reduceat(self.number[met.indices], met.indptr[:-1])
        return rows[np.argsort(first, kind="stable")]


def _moves(at: IntArray, own: int) -> tuple[Move, ...]:
    """How the lower half of a part goes into a front in which its rows lie at `at`, in order: as
    runs of rows that stay side by side, none of them both of the front's own and beyond."""
    cuts = np.flatnonzero((np.diff(at) != 1) | (at[1:] == own)) + 1
    bounds = [0, *cuts.tolist(), len(at)]
    runs = [(slice(a, b), int(at[a]), int(at[b - 1]) + 1) for a, b in pairwise(bounds)]
    moves = []
    for number, (columns, left, right) in enumerate(runs):
        off = 0 if left < own else own
        for rows, top, bottom in runs[number:]:
            to = slice(top - off, bottom - off), slice(left - off, right - off)
            moves.append(Move(left < own, (rows, columns), to))
    return tuple(moves)
