"""Factors of symmetric sparse matrices."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from scipy import sparse
from scipy.linalg import LinAlgError, cho_solve_banded, cholesky_banded
from scipy.sparse.csgraph import reverse_cuthill_mckee
from scipy.sparse.linalg import SuperLU, splu

from buildplan.shape.model import FloatArray, IntArray

# Numbers in a band up to which it is factored, not the sparse matrix. Walls of 50,000 balloons
# stay below it: it takes a third of the time and less room (measured).
MOST_IN_BAND = 5e7

Solve = Callable[[FloatArray], FloatArray]


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
        """Multiplications of one factoring, about: rows times the square of the width (Golub and
        Van Loan, Matrix Computations, 4th edition, 4.3.5)."""
        return len(self.order) * (self.width + 1.0) ** 2

    def factored(self, matrix: sparse.csc_array, damping: float) -> Solve | None:
        """What solves for a right side, given `matrix` with `damping` added to its diagonal;
        None when that is not positive definite (its Cholesky factors tell)."""
        size = len(self.order)
        band = np.zeros((size, self.width + 1))
        band.ravel()[self.place] = matrix.data[self.lower]
        band[:, 0] += damping
        try:
            factor = cholesky_banded(band.T, overwrite_ab=True, lower=True, check_finite=False)
        except LinAlgError:
            return None

        def solve(right: FloatArray) -> FloatArray:
            left = np.empty_like(right)
            left[self.order] = cho_solve_banded(
                (factor, True), right[self.order], check_finite=False
            )
            return left

        return solve


def band_of(matrix: sparse.csc_array) -> Band | None:
    """The band of a symmetric matrix with these places of entries (the order of Cuthill and McKee);
    None where it is so wide that sparse factors cost less."""
    order = reverse_cuthill_mckee(sparse.csr_array(matrix), symmetric_mode=True)
    size = len(order)
    rank = np.empty(size, int)
    rank[order] = np.arange(size)
    row = rank[matrix.indices]
    column = np.repeat(rank, np.diff(matrix.indptr))
    below = row - column
    width = int(below.max(initial=0))
    if size * (width + 1.0) > MOST_IN_BAND:
        return None
    lower = np.flatnonzero(below >= 0)
    return Band(order, lower, (column * (width + 1) + below)[lower], width)


def positive_factors(matrix: sparse.csc_array, damping: float, band: Band | None) -> Solve | None:
    """What solves for a right side, given a symmetric matrix with `damping` added to its diagonal;
    None when that is not positive definite. `band` is that of the matrix."""
    if band is not None:
        return band.factored(matrix, damping)
    unit = sparse.eye_array(matrix.shape[0], format="csc")
    factors = symmetric_factors(matrix + damping * unit)
    positive = bool((factors.U.diagonal() > 0).all())
    solve: Solve = factors.solve
    return solve if positive else None
