"""The energy's derivatives against finite differences."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import approx_fprime, check_grad
from shape_pieces import tube

from buildplan.shape.bodies import bodies_of, contacts, crowding, neighbours, struts
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.plan import close_plan, plan_of, plan_positions
from buildplan.shape.springs import Springs, energy_and_gradient, stiffness_matrix, together


@pytest.fixture(scope="module")
def crowded() -> tuple[Springs, np.ndarray]:
    """A small closed tube shaken until bodies of every kind press on one another."""
    piece = tube([{"repeat": 3, "cells": ["straight", "tip"]}])
    bodies = bodies_of(piece)
    plan = plan_of(piece)
    start = plan_positions(piece, *close_plan(plan, plan.turn, np.zeros(len(plan.turn))))
    places = start + 0.02 * np.random.default_rng(3).standard_normal(start.shape)
    pairs = neighbours(bodies, places, 0.05, CONSTANTS)
    assert len(pairs)
    springs = together(
        [struts(bodies, CONSTANTS), crowding(bodies, CONSTANTS), contacts(bodies, pairs, CONSTANTS)]
    )
    return springs, places


def test_gradient_against_finite_differences(crowded: tuple[Springs, np.ndarray]) -> None:
    springs, places = crowded

    def energy(x: np.ndarray) -> float:
        return energy_and_gradient(springs, x.reshape(-1, 3))[0]

    def gradient(x: np.ndarray) -> np.ndarray:
        return energy_and_gradient(springs, x.reshape(-1, 3))[1].ravel()

    size = np.linalg.norm(gradient(places.ravel()))
    assert check_grad(energy, gradient, places.ravel(), epsilon=1e-7) < 1e-5 * size


def test_stiffness_against_finite_differences(crowded: tuple[Springs, np.ndarray]) -> None:
    springs, places = crowded

    def gradient(x: np.ndarray) -> np.ndarray:
        return energy_and_gradient(springs, x.reshape(-1, 3))[1].ravel()

    by_hand = approx_fprime(places.ravel(), gradient, 1e-7)
    matrix = stiffness_matrix(springs, places).toarray()
    assert np.abs(matrix - matrix.T).max() < 1e-9
    assert matrix == pytest.approx(by_hand, abs=1e-3 * np.abs(matrix).max())


def test_forces_balance_and_turn_nothing(crowded: tuple[Springs, np.ndarray]) -> None:
    # Newton's third law: springs within the piece push it nowhere and turn it nowhere
    springs, places = crowded
    _, gradient = energy_and_gradient(springs, places)
    assert gradient.sum(axis=0) == pytest.approx(0, abs=1e-9)
    assert np.cross(places, gradient).sum(axis=0) == pytest.approx(0, abs=1e-9)
