"""Factors of symmetric sparse matrices."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from scipy import sparse
from scipy.linalg.lapack import dpbtrf, dpbtrs
from scipy.sparse.csgraph import reverse_cuthill_mckee
from scipy.sparse.linalg import SuperLU, splu

from buildplan.shape.fronts import Fronts, Solve, fronts_of
from buildplan.shape.model import FloatArray, IntArray

# A wider band is factored front by front. Up to walls of 10,000 balloons a band takes as long, of
# 30,000 twice as long (measured).
WIDEST_BAND = 400


def symmetric_factors(matrix: sparse.csr_array | sparse.csc_array) -> SuperLU:
    """Sparse factors of a symmetric matrix with pivots on its diagonal.

    The signs of the diagonal of U are those of the eigenvalues (Sylvester's law of inertia).
    Raises RuntimeError when the matrix is exactly singular.
    """
    return splu(
        sparse.csc_array(matrix),
        permc_spec="MMD_AT_PLUS_A",
        diag_pivot_thresh=0.0,
        options={"SymmetricMode": True},
    )


@dataclass(frozen=True)
class Band:
    """An order of rows and columns that brings the entries of a symmetric matrix near its
    diagonal: a piece is longer than it is thick.

    `order` are the rows as they come, `lower` the entries on the diagonal and below it once they
    do, `place` where these go in the lower half of the band, column by column.
    """

    order: IntArray
    lower: IntArray
    place: IntArray
    width: int

    @property
    def work(self) -> float:
        """Operations of one factoring, about: rows times the square of the width (Golub and
        Van Loan, Matrix Computations, 4th edition, 4.3.5)."""
        return len(self.order) * (self.width + 1.0) ** 2

    def factored(self, matrix: sparse.csc_array, damping: float) -> Solve | None:
        """What solves for a right side, given `matrix` with `damping` added to its diagonal;
        None when that is not positive definite (its Cholesky factors tell)."""
        size = len(self.order)
        band = np.zeros((size, self.width + 1))
        band.ravel()[self.place] = matrix.data[self.lower]
        band[:, 0] += damping
        # LAPACK itself: scipy's wrappers take as long again for pieces of usual size
        factor, indefinite = dpbtrf(band.T, lower=1, overwrite_ab=1)
        if indefinite:
            return None

        def solve(right: FloatArray) -> FloatArray:
            left = np.empty_like(right)
            left[self.order] = dpbtrs(factor, right[self.order], lower=1)[0]
            return left

        return solve


def band_of(matrix: sparse.csc_array) -> Band:
    """The band of a symmetric matrix with these places of entries (the order of Cuthill and
    McKee)."""
    order = reverse_cuthill_mckee(sparse.csr_array(matrix), symmetric_mode=True)
    size = len(order)
    rank = np.empty(size, int)
    rank[order] = np.arange(size)
    row = rank[matrix.indices]
    column = np.repeat(rank, np.diff(matrix.indptr))
    below = row - column
    width = int(below.max(initial=0))
    lower = np.flatnonzero(below >= 0)
    return Band(order, lower, (column * (width + 1) + below)[lower], width)


def factoring_of(matrix: sparse.csc_array) -> Band | Fronts:
    """How symmetric matrices with these places of entries are best factored."""
    places = (np.asarray(each, np.int32).tobytes() for each in (matrix.indptr, matrix.indices))
    return _factoring(*places)


@lru_cache(maxsize=4)  # a piece asks for the same of many matrices: each sag, each way it folds
def _factoring(pointers: bytes, indices: bytes) -> Band | Fronts:
    starts, rows = np.frombuffer(pointers, np.int32), np.frombuffer(indices, np.int32)
    size = len(starts) - 1
    matrix = sparse.csc_array((np.ones(len(rows)), rows, starts), shape=(size, size))
    band = band_of(matrix)
    return band if band.width <= WIDEST_BAND else fronts_of(matrix)
