"""A pin-jointed framework under load: displacements, bar forces and reactions, to first order; by
the rigidity matrix and the factors that the shape stage works with, which are tested by it.

The direct stiffness method: K = R' diag(EA / L) R with the rigidity matrix R, solved sparsely for
the coordinates that are not held.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from scipy import sparse

from buildplan.shape.factors import symmetric_factors
from buildplan.shape.model import FloatArray, IntArray
from buildplan.shape.rigidity import rigidity_matrix

SINGULAR = 1e-12  # least pivot over the largest


class MechanismError(ValueError):
    """The framework moves without resistance under the given supports: it has no answer."""


@dataclass(frozen=True)
class Loaded:
    """`displacements_m` (joints, 3), `tension_n` (bars,), positive when pulled, `reactions_n`
    (joints, 3), zero where nothing is held."""

    displacements_m: FloatArray
    tension_n: FloatArray
    reactions_n: FloatArray


def solve_truss(
    ends: IntArray,
    positions_m: FloatArray,
    axial_n_per_m: FloatArray,
    held: npt.NDArray[np.bool_],
    load_n: FloatArray,
) -> Loaded:
    """Solve bars `ends` (b, 2) of stiffness EA / L `axial_n_per_m` (b,) under `load_n` (j, 3).

    `held` (j, 3) marks the coordinates that supports hold. Raises MechanismError when the rest is
    not held by bars.
    """
    matrix = rigidity_matrix(ends, positions_m)
    free = np.flatnonzero(~held.ravel())
    active = sparse.csr_array(matrix[:, free])
    stiffness = sparse.csr_array(active.T @ sparse.diags_array(axial_n_per_m) @ active)
    move = np.zeros(held.size)
    if len(free):
        try:
            factors = symmetric_factors(stiffness)
        except RuntimeError as error:  # SuperLU: exactly singular
            raise MechanismError("the framework is a mechanism under these supports") from error
        pivots = np.abs(factors.U.diagonal())
        if pivots.min() <= SINGULAR * pivots.max():
            raise MechanismError("the framework is a mechanism under these supports")
        move[free] = factors.solve(load_n.ravel()[free])
    tension = axial_n_per_m * (matrix @ move)
    reactions = np.where(held, (matrix.T @ tension).reshape(-1, 3) - load_n, 0.0)
    return Loaded(move.reshape(-1, 3), np.asarray(tension), reactions)
