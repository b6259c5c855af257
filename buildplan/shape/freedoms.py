"""Freedoms: what a piece may do while it comes to rest, and its stiffness against each.

A coordinate follows one freedom, the same way or the opposite way, or is held. So a piece is kept
symmetric, flat or on its feet, and the matrix of second derivatives stays as sparse as it is.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
import numpy.typing as npt
from scipy import sparse

from buildplan.shape.factors import Band, factoring_of
from buildplan.shape.fronts import Fronts, Solve
from buildplan.shape.model import FloatArray, IntArray
from buildplan.shape.springs import Springs, stiffness_blocks


@dataclass(frozen=True)
class Freedoms:
    """Coordinate i (of 3 joints) is `way[i]` times freedom `number[i]`; where `way` is 0 it is
    held. `count` is how many freedoms there are."""

    number: IntArray
    way: FloatArray
    count: int

    def coordinates(self, freedom: FloatArray) -> FloatArray:
        """The positions (joints, 3) of freedoms (count,); 0 where they are held."""
        return np.asarray(self.way * freedom[self.number]).reshape(-1, 3)

    def felt(self, force: FloatArray) -> FloatArray:
        """What a force (joints, 3) comes to along each freedom, (count,)."""
        return np.asarray(
            np.bincount(self.number, self.way * force.ravel(), minlength=self.count), float
        )

    def nearest(self, positions_m: FloatArray) -> FloatArray:
        """The freedoms (count,) whose positions are nearest to some (joints, 3)."""
        weight = np.bincount(self.number, self.way**2, minlength=self.count)
        return self.felt(positions_m) / weight

    def held_at(self, coordinates: IntArray) -> Freedoms:
        """These freedoms without those that the given coordinates follow."""
        gone = np.zeros(self.count, bool)
        gone[self.number[coordinates[self.way[coordinates] != 0]]] = True
        renumbered = np.cumsum(~gone) - 1
        kept = ~gone[self.number]
        return replace(
            self,
            number=np.where(kept, renumbered[self.number], 0),
            way=np.where(kept, self.way, 0.0),
            count=int((~gone).sum()),
        )


def all_free(joints: int) -> Freedoms:
    """Every joint free in x, y and z."""
    return Freedoms(np.arange(3 * joints), np.ones(3 * joints), 3 * joints)


def pinned(held: npt.NDArray[np.bool_]) -> Freedoms:
    """Every coordinate free but those that `held` (joints, 3) marks."""
    return all_free(len(held)).held_at(np.flatnonzero(held.ravel()))


def mirrored(twin: IntArray) -> Freedoms:
    """Positions that mirror each other in the plane z = 0.

    `twin` (joints,) numbers each joint's image; a joint that is its own lies in the plane.
    """
    joints = np.arange(len(twin))
    first = np.minimum(joints, twin)
    way = np.ones((len(twin), 3))
    way[:, 2] = np.sign(twin - joints)
    followed = (3 * first[:, None] + np.arange(3)).ravel()
    own, number = np.unique(followed[way.ravel() != 0], return_inverse=True)
    all_numbers = np.zeros(len(followed), int)
    all_numbers[way.ravel() != 0] = number
    return Freedoms(all_numbers, way.ravel(), len(own))


@dataclass(frozen=True)
class Stiffening:
    """The second derivatives of the energy of springs by some freedoms, wherever the piece is: a
    symmetric sparse matrix whose entries lie at the same places each time."""

    springs: Springs
    freedoms: Freedoms

    @cached_property
    def _layout(self) -> tuple[sparse.csr_array, IntArray, IntArray]:
        """A matrix that sums the coordinates' entries into those of the freedoms, and the indices
        and pointers of these; the diagonal is among them, with springs or without."""
        _, column, pointers = self.springs.pattern
        row = np.repeat(np.arange(len(pointers) - 1), np.diff(pointers))
        three, count = np.arange(3), self.freedoms.count
        rows = np.repeat(3 * row[:, None] + three, 3, axis=1).ravel()
        columns = np.tile(3 * column[:, None] + three, (1, 3)).ravel()
        number, way = self.freedoms.number, self.freedoms.way
        weight = way[rows] * way[columns]
        used = np.flatnonzero(weight)
        key = number[rows[used]].astype(np.int64) * count + number[columns[used]]
        diagonal = np.arange(count, dtype=np.int64) * (count + 1)
        entries, entry = np.unique(np.concatenate([key, diagonal]), return_inverse=True)
        summing = sparse.csr_array(
            (weight[used], (entry[: len(used)], used)), shape=(len(entries), len(rows))
        )
        starts = np.searchsorted(entries, np.arange(count + 1, dtype=np.int64) * count)
        return summing, entries % count, starts

    def at(self, positions_m: FloatArray) -> sparse.csc_array:
        """The matrix (count, count), in N/m, at `positions_m` (joints, 3)."""
        summing, _, _ = self._layout
        return self._matrix(summing @ stiffness_blocks(self.springs, positions_m).ravel())

    def solving(self, matrix: sparse.csc_array, damping: float) -> Solve | None:
        """What solves for a right side with `damping` on the diagonal of such a matrix; None where
        that is not positive definite."""
        return self._factoring.factored(matrix, damping)

    @property
    def work(self) -> float:
        """Operations that it takes to factor such a matrix, about."""
        return self._factoring.work

    @cached_property
    def _factoring(self) -> Band | Fronts:
        summing, _, _ = self._layout
        return factoring_of(self._matrix(np.ones(summing.shape[0])))

    def _matrix(self, data: FloatArray) -> sparse.csc_array:
        _, indices, pointers = self._layout
        size = self.freedoms.count
        return sparse.csc_array((data, indices, pointers), shape=(size, size))
