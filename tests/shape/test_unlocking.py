"""What only its locks keep in shape is said so, and only of what does fold without them."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import minimize
from shape_pieces import arch, frame, star

from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.shape.bodies import bodies_of, contacts, neighbours
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.finding import find_shape
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import FloatArray, Shape
from buildplan.shape.springs import energy_and_gradient, together
from buildplan.shape.stiffness import stiffness_of, unlocked
from buildplan.shape.unlocking import folds_unlocked_m, kept_by_locks


def kicked(framework: Framework, shape: Shape, seed: int) -> FloatArray:
    """Where a piece without locks comes to rest after a small kick in any direction, by scipy's
    L-BFGS-B on the bare energy: none of our own solver."""
    bodies, at = bodies_of(framework), shape.positions_m
    pairs = neighbours(bodies, at, 0.2, CONSTANTS)
    springs = together([unlocked(bodies, at, CONSTANTS), contacts(bodies, pairs, CONSTANTS)])

    def energy(flat: FloatArray) -> tuple[float, FloatArray]:
        value, gradient = energy_and_gradient(springs, flat.reshape(-1, 3))
        return value, gradient.ravel()

    start = at + 0.002 * np.random.default_rng(seed).standard_normal(at.shape)
    options = {"maxiter": 5000, "gtol": 1e-3, "ftol": 1e-15}
    found = minimize(energy, start.ravel(), jac=True, method="L-BFGS-B", options=options)
    return np.asarray(found.x.reshape(-1, 3))


def changed(shape: Shape, now_m: FloatArray) -> float:
    """By how much the distances between joints, which know nothing of where a piece lies, have
    changed at most, as a share of its size."""
    joints = [0, *range(7, len(now_m), 13)]

    def apart(at: FloatArray) -> FloatArray:
        return np.asarray(np.linalg.norm(at[joints][:, None] - at[joints], axis=2))

    return float(np.abs(apart(now_m) - apart(shape.positions_m)).max()) / shape.width_m


def folding(framework: Framework) -> tuple[Shape, float]:
    shape = find_shape(framework)
    found = stiffness_of(framework, bodies_of(framework), shape, CONSTANTS)
    return shape, folds_unlocked_m(framework, shape, found, CONSTANTS)


def test_a_star_folds_until_it_is_locked_whatever_pushes_it() -> None:
    piece = star(straights=2)
    shape, folds_m = folding(piece)
    assert folds_m > 0.02 * shape.width_m
    for seed in range(3):
        assert changed(shape, kicked(piece, shape, seed)) > 0.02


@pytest.mark.parametrize("piece", [frame(), arch()], ids=["frame", "arch"])
def test_what_keeps_its_shape_without_locks_says_nothing(piece: Framework) -> None:
    shape, folds_m = folding(piece)
    assert folds_m == 0
    assert not kept_by_locks(folds_m, "in", remembered=True)
    assert changed(shape, kicked(piece, shape, 1)) < 0.005


def test_the_caution_says_what_to_do_and_what_is_from_memory() -> None:
    (told,) = kept_by_locks(0.78, "in", remembered=True)
    (measured,) = kept_by_locks(0.78, "in", remembered=False)
    assert told.kind is measured.kind is ShapeKind.KEPT_BY_ITS_LOCKS
    assert told.message != measured.message
    assert "31 in or more" in Voice().tell(told.message)
    assert told.suggestion.by_hand
