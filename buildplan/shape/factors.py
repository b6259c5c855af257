"""Sparse factors of symmetric matrices."""

from __future__ import annotations

from scipy import sparse
from scipy.sparse.linalg import SuperLU, splu


def symmetric_factors(matrix: sparse.csr_array) -> SuperLU:
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
