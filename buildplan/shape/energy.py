"""The energy of a piece as a function of its freedoms, and where one stands on it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import sparse

from buildplan.shape.freedoms import Stiffening
from buildplan.shape.model import FloatArray
from buildplan.shape.springs import energy_and_gradient


@dataclass(frozen=True)
class Rest:
    """Where a minimiser stands: freedoms, energy, gradient, iterations and factors so far."""

    freedom: FloatArray
    energy: float
    gradient: FloatArray
    iterations: int = 0
    factored: int = 0

    @property
    def pushed_n(self) -> float:
        """The largest force along a freedom."""
        return float(np.abs(self.gradient).max(initial=0.0))


class Energy:
    """Energy, gradient and second derivatives as functions of the freedoms, under a dead load
    (joints, 3) and with `held_m` (joints, 3) added to where the freedoms lead; none where it is not
    given."""

    def __init__(
        self,
        stiffening: Stiffening,
        held_m: FloatArray | None = None,
        load_n: FloatArray | None = None,
    ) -> None:
        nowhere = np.zeros((len(stiffening.freedoms.way) // 3, 3))
        self.stiffening, self.springs = stiffening, stiffening.springs
        self.freedoms = stiffening.freedoms
        self.held = nowhere if held_m is None else held_m
        self.load = nowhere if load_n is None else load_n

    def positions(self, freedom: FloatArray) -> FloatArray:
        return np.asarray(self.held + self.freedoms.coordinates(freedom))

    def value(self, freedom: FloatArray) -> tuple[float, FloatArray]:
        positions = self.positions(freedom)
        energy, gradient = energy_and_gradient(self.springs, positions)
        energy -= float((self.load * positions).sum())
        return energy, self.freedoms.felt(gradient - self.load)

    def standing_at(self, positions_m: FloatArray) -> Rest:
        """The freedoms nearest to some positions (joints, 3)."""
        freedom = self.freedoms.nearest(positions_m - self.held)
        return Rest(freedom, *self.value(freedom))

    def curvature(self, freedom: FloatArray) -> sparse.csc_array:
        return self.stiffening.at(self.positions(freedom))
