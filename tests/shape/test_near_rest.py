"""How far what is at rest gives under a little load: few factors lead as far as many."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from scipy.optimize import minimize
from shape_pieces import arch, frame

from buildplan.framework.model import Framework
from buildplan.shape.bodies import bodies_of
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.energy import Energy
from buildplan.shape.finding import find_shape
from buildplan.shape.freedoms import Stiffening, pinned
from buildplan.shape.model import FloatArray
from buildplan.shape.near_rest import yielded
from buildplan.shape.relaxing import relax
from buildplan.shape.stiffness import joint_masses_kg, locked

TOLERANCE_N, LONGEST_M = 1e-6, 0.1


def stood(piece: Framework) -> tuple[Stiffening, FloatArray, FloatArray, FloatArray]:
    """A piece that stands with its feet held: what resists, where it was built, its weight, and
    where it is held."""
    shape, bodies = find_shape(piece), bodies_of(piece)
    positions = shape.positions_m
    held = np.zeros(positions.shape, bool)
    held[[piece.place_number[joint] for joint in shape.standing.feet]] = True
    mass = joint_masses_kg(piece, bodies, positions, CONSTANTS)
    springs = locked(piece, bodies, positions, CONSTANTS, CONSTANTS)
    load = np.outer(-9.81 * mass, [0.0, 1.0, 0.0])
    return Stiffening(springs, pinned(held)), positions, load, np.where(held, positions, 0.0)


@pytest.mark.parametrize("made", [arch, frame])
def test_it_comes_to_rest_where_a_general_minimiser_does(made: Callable[[], Framework]) -> None:
    """L-BFGS of scipy (Liu and Nocedal, Mathematical Programming 45, 1989) knows no factors."""
    stiffening, built, load, kept = stood(made())
    found = yielded(stiffening, built, TOLERANCE_N, LONGEST_M, load, kept)
    assert found.residual_n <= TOLERANCE_N
    energy = Energy(stiffening, kept, load)
    start = stiffening.freedoms.nearest(built - kept)
    limits = {"maxiter": 20000, "maxfun": 40000, "gtol": 1e-7, "ftol": 1e-16}
    other = minimize(energy.value, start, jac=True, method="L-BFGS-B", options=limits)
    assert found.energy_j <= other.fun + 1e-9
    sunk = np.abs(found.positions_m - built).max()
    assert np.abs(found.positions_m - energy.positions(other.x)).max() < 0.02 * sunk


def test_where_few_factors_lead_nowhere_it_is_left_as_near_as_they_lead() -> None:
    """Loaded with some hundred times its weight an arch gives way: that is for `relax`."""
    stiffening, built, load, kept = stood(arch())
    heavy = 300 * load
    found = yielded(stiffening, built, TOLERANCE_N, LONGEST_M, heavy, kept)
    assert found.residual_n > TOLERANCE_N
    begun = Energy(stiffening, kept, heavy).standing_at(built)
    assert found.energy_j <= begun.energy
    ended = relax(stiffening, found.positions_m, TOLERANCE_N, LONGEST_M, heavy, kept)
    assert ended.energy_j < found.energy_j
