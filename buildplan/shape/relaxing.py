"""Relaxing: from a start to the nearest shape in which all forces balance.

A quasi-Newton run (scipy's L-BFGS, analytic gradients) brings a rough start near, a damped
Newton run on the sparse second derivatives finishes it. Positions are `basis @ freedom`, so that
a piece may be held symmetric, flat or free by the choice of the basis.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from scipy import sparse
from scipy.optimize import minimize
from scipy.sparse.linalg import splu

from buildplan.shape.bodies import Bodies, IntArray
from buildplan.shape.model import FloatArray
from buildplan.shape.springs import Springs, energy_and_gradient, stiffness_matrix, together

ContactsOf = Callable[[IntArray], Springs]
NeighboursOf = Callable[[FloatArray, float], IntArray]


@dataclass(frozen=True)
class Relaxed:
    """Where a run ended: (joints, 3) positions, energy in J, largest force left in N."""

    positions_m: FloatArray
    energy_j: float
    residual_n: float
    iterations: int
    springs: Springs


def free_basis(joints: int) -> sparse.csr_array:
    """Every joint free in x, y and z: the unit matrix, (3 joints, 3 joints)."""
    return sparse.csr_array(sparse.eye_array(3 * joints, format="csr"))


def mirrored_basis(twin: IntArray) -> sparse.csr_array:
    """Positions that mirror each other in the plane z = 0, (3 joints, freedoms).

    `twin` (joints,) numbers each joint's image; a joint that is its own lies in the plane.
    """
    rows, columns, values = [], [], []
    freedoms = 0
    for joint, other in enumerate(twin):
        if joint > other:
            continue
        for axis in (0, 1) if joint == other else (0, 1, 2):
            rows.append(3 * joint + axis)
            columns.append(freedoms)
            values.append(1.0)
            if joint != other:
                rows.append(3 * int(other) + axis)
                columns.append(freedoms)
                values.append(-1.0 if axis == 2 else 1.0)
            freedoms += 1
    return sparse.csr_array((values, (rows, columns)), shape=(3 * len(twin), freedoms))


def relax(
    springs: Springs,
    basis: sparse.csr_array,
    start_m: FloatArray,
    tolerance_n: float,
    steps: int = 3000,
    load_n: FloatArray | None = None,
) -> Relaxed:
    """Bring `start_m` (joints, 3) to rest under `springs` and a dead load (joints, 3).

    Ends when no freedom is pushed with more than `tolerance_n`, or after `steps`.
    """
    turned = sparse.csr_array(basis.T)
    freedom = _freedoms(basis, start_m)
    load = np.zeros_like(start_m) if load_n is None else load_n

    def value(q: FloatArray) -> tuple[float, FloatArray]:
        positions = (basis @ q).reshape(-1, 3)
        energy, gradient = energy_and_gradient(springs, positions)
        return (
            energy - float((load * positions).sum()),
            np.asarray(turned @ (gradient - load).ravel()),
        )

    rough = minimize(
        value,
        freedom,
        jac=True,
        method="L-BFGS-B",
        options={
            "maxiter": steps,
            "maxfun": 2 * steps,
            "gtol": tolerance_n,
            "ftol": 1e-15,
            "maxcor": 20,
        },
    )
    freedom, iterations = rough.x, int(rough.nit)
    energy, gradient = value(freedom)
    damping = 1e-3 * float(springs.stiffness_n_per_m.max())
    for _ in range(60):
        if np.abs(gradient).max(initial=0.0) <= tolerance_n:
            break
        positions = (basis @ freedom).reshape(-1, 3)
        curvature = turned @ stiffness_matrix(springs, positions) @ basis
        accepted = False
        for _ in range(12):
            shifted = sparse.csc_array(curvature + damping * sparse.eye_array(len(freedom)))
            step = -splu(shifted).solve(gradient)
            trial_energy, trial_gradient = value(freedom + step)
            better = np.linalg.norm(trial_gradient) < np.linalg.norm(gradient)
            if trial_energy < energy or (better and trial_energy < energy + 1e-12 * abs(energy)):
                accepted = True
                break
            damping *= 8
        if not accepted:
            break
        freedom, energy, gradient = freedom + step, trial_energy, trial_gradient
        damping = max(damping / 8, 1e-9)
        iterations += 1
    return Relaxed(
        positions_m=np.asarray(basis @ freedom).reshape(-1, 3),
        energy_j=float(energy),
        residual_n=float(np.abs(gradient).max(initial=0.0)),
        iterations=iterations,
        springs=springs,
    )


def _freedoms(basis: sparse.csr_array, positions_m: FloatArray) -> FloatArray:
    """The freedoms whose positions are nearest; the basis has orthogonal columns."""
    weight: FloatArray = np.asarray(basis.power(2).sum(axis=0)).ravel()
    return np.asarray(basis.T @ positions_m.ravel()) / weight


def relax_apart(
    bodies: Bodies,
    springs: Springs,
    basis: sparse.csr_array,
    start_m: FloatArray,
    tolerance_n: float,
    *,
    neighbours_of: NeighboursOf,
    contacts_of: ContactsOf,
    load_n: FloatArray | None = None,
) -> Relaxed:
    """Relax with the bodies that share no joint kept apart.

    Neighbours are sought within a skin; the run is repeated while the piece has moved farther than
    the skin and so may have met bodies that were not looked at.
    """
    skin = 0.5 * float(bodies.length_m.mean())
    positions, iterations = start_m, 0
    for _ in range(12):
        pairs = neighbours_of(positions, skin)
        active = together([springs, contacts_of(pairs)]) if len(pairs) else springs
        result = relax(active, basis, positions, tolerance_n, load_n=load_n)
        iterations += result.iterations
        positions = result.positions_m
        met = neighbours_of(positions, 0.0)
        known = np.isin(_keys(met, bodies), _keys(pairs, bodies))
        if known.all():
            break
    return Relaxed(
        result.positions_m, result.energy_j, result.residual_n, iterations, result.springs
    )


def _keys(pairs: IntArray, bodies: Bodies) -> IntArray:
    return np.asarray(pairs[:, 0] * len(bodies.ends) + pairs[:, 1])
