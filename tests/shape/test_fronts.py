"""Factors front by front, against what is known of the five-point Laplacian of a square grid: its
eigenvalues are 4 - 2 cos(i h) - 2 cos(j h), h = pi / (n + 1), for i and j from 1 to n (LeVeque,
Finite Difference Methods for Ordinary and Partial Differential Equations, 3.4; from memory); and
against scipy's SuperLU."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import sparse
from scipy.sparse.linalg import splu

from buildplan.shape.fronts import FEWEST_ROWS, fronts_of

SIDE = 24


def grid(side: int) -> sparse.csc_array:
    line = sparse.diags_array([-1.0, 2.0, -1.0], offsets=[-1, 0, 1], shape=(side, side))
    return sparse.csc_array(sparse.kronsum(line, line, format="csc"))


def thick(side: int) -> sparse.csc_array:
    """Three coordinates a place, each joined to those of all places near."""
    near = grid(side) != 0
    joined = sparse.kron(near @ near, np.ones((3, 3)), format="csc")
    weight = 0.5 + 0.4 * np.cos(np.arange(joined.shape[0]))
    scaled = sparse.diags_array(weight) @ joined @ sparse.diags_array(weight)
    return sparse.csc_array(scaled + 40 * sparse.eye_array(joined.shape[0]))


PIECES = {
    "grid": grid(SIDE),
    "thick": thick(SIDE),
    "in two": sparse.csc_array(sparse.block_diag([grid(SIDE), grid(SIDE)], format="csc")),
    "all joined": sparse.csc_array(np.ones((300, 300)) + 2 * np.eye(300)),
    "one": sparse.csc_array([[2.0]]),
}


@pytest.mark.parametrize("name", PIECES)
def test_what_is_solved_is_what_the_library_solves(name: str) -> None:
    matrix, damping = PIECES[name], 0.3
    size = matrix.shape[0]
    right = np.cos(1.7 * np.arange(size))
    solve = fronts_of(matrix).factored(matrix, damping)
    assert solve is not None
    known = splu(sparse.csc_array(matrix + damping * sparse.eye_array(size))).solve(right)
    np.testing.assert_allclose(solve(right), known, rtol=1e-9, atol=1e-12)


def test_factors_are_had_just_where_no_eigenvalue_is_below_zero() -> None:
    matrix = grid(SIDE)
    fronts = fronts_of(matrix)
    least = 4 - 4 * np.cos(np.pi / (SIDE + 1))
    assert fronts.factored(matrix, -0.999 * least) is not None
    assert fronts.factored(matrix, -1.001 * least) is None


def test_fronts_take_each_row_once_and_less_work_than_the_whole() -> None:
    matrix = thick(SIDE)
    fronts = fronts_of(matrix)
    assert sorted(fronts.order) == list(range(matrix.shape[0]))
    assert len(fronts.fronts) > matrix.shape[0] / FEWEST_ROWS / 4
    assert fronts.work < matrix.shape[0] ** 3 / 3 / 4
