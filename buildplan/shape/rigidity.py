"""Rigidity of the pin-jointed framework: mechanisms and states of self stress.

Maxwell (1864) counted; Calladine (1978) and Pellegrino took the rank of the equilibrium matrix:
mechanisms = 3 j - 6 - rank, states of self stress = b - rank, for a free framework whose joints
do not all lie on a line.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import sparse

from buildplan.shape.factors import symmetric_factors
from buildplan.shape.model import FloatArray, IntArray

RANK_TOLERANCE = 1e-9  # of the largest singular value
COARSE_TOLERANCE = 1e-6  # the same for large pieces, whose rank is told from squares
SURE_SQUARE = 1e-6  # of the largest square of a singular value: far over both
DENSE_LIMIT = 900  # coordinates up to which all singular values are worked out


@dataclass(frozen=True)
class Rigidity:
    """Rank of the rigidity matrix, internal mechanisms, independent states of self stress."""

    rank: int
    mechanisms: int
    self_stresses: int


def rigidity_matrix(ends: IntArray, positions_m: FloatArray) -> sparse.csr_array:
    """Rate of each bar's length for each joint's velocity, (bars, 3 joints).

    Bar (i, j) has its unit vector from j to i under joint i and the opposite under joint j.
    """
    vector = positions_m[ends[:, 0]] - positions_m[ends[:, 1]]
    unit = vector / np.maximum(np.linalg.norm(vector, axis=1, keepdims=True), 1e-12)
    bars = len(ends)
    rows = np.repeat(np.arange(bars), 6)
    columns = (3 * ends[:, :, None] + np.arange(3)).reshape(bars, 6)
    values = np.hstack([unit, -unit])
    return sparse.csr_array(
        (values.ravel(), (rows, columns.ravel())), shape=(bars, positions_m.size)
    )


def rigid_motions(positions_m: FloatArray) -> int:
    """Independent rigid motions: 6, or 5 for joints on a line, 3 for a single place."""
    values = np.linalg.svd(positions_m - positions_m.mean(axis=0), compute_uv=False)
    spans = int((values > RANK_TOLERANCE * max(float(values[0]), 1e-300)).sum())
    return {0: 3, 1: 5}.get(spans, 6)


def independent(matrix: sparse.csr_array) -> bool:
    """Whether the rows are so by far: no square of a singular value is under a millionth of the
    largest (Cholesky factors of R R' less that much tell), which is quicker seen than their rank.
    False where they may yet be."""
    squares = (matrix @ matrix.T).toarray()
    most = float(np.abs(squares).sum(axis=1).max(initial=0.0))  # Gershgorin (1931)
    squares[np.diag_indices_from(squares)] -= SURE_SQUARE * most
    try:
        np.linalg.cholesky(squares)
    except np.linalg.LinAlgError:
        return False
    return True


def rank_dense(matrix: sparse.csr_array, tolerance: float = RANK_TOLERANCE) -> int:
    """Rank by singular values."""
    if independent(matrix):
        return int(matrix.shape[0])
    values = np.linalg.svd(matrix.toarray(), compute_uv=False)
    return int((values > tolerance * values.max(initial=0.0)).sum())


def rank_sparse(matrix: sparse.csr_array, tolerance: float = COARSE_TOLERANCE) -> int:
    """Rank of a large matrix by the law of inertia.

    The squares of its singular values are the eigenvalues of R R'; those below the square of the
    tolerance are the negative pivots of R R' less that square (Sylvester).
    """
    squares = sparse.csr_array(matrix @ matrix.T)
    floor = tolerance**2 * float(squares.diagonal().max())
    unit = sparse.eye_array(squares.shape[0], format="csr")
    pivots = symmetric_factors(squares - floor * unit).U.diagonal()
    return int((pivots > 0).sum())


def rigidity(ends: IntArray, positions_m: FloatArray) -> Rigidity:
    """Rank, mechanisms and self stresses of bars `ends` (b, 2) between joints (j, 3)."""
    matrix = rigidity_matrix(ends, positions_m)
    small = matrix.shape[1] <= DENSE_LIMIT
    rank = 0 if not len(ends) else rank_dense(matrix) if small else rank_sparse(matrix)
    free = positions_m.size - rigid_motions(positions_m)
    return Rigidity(rank, free - rank, len(ends) - rank)
