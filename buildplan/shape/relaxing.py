"""Relaxing: from a start to the nearest shape in which all forces balance.

Damped Newton steps on the sparse second derivatives, with a quasi-Newton run (scipy's L-BFGS) where
they stall: a tube's long soft modes take hundreds of quasi-Newton steps but six or so of Newton's.
The choice of freedoms holds a piece symmetric, flat or on its feet (`freedoms.py`).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from scipy import sparse

from buildplan.shape.freedoms import Stiffening
from buildplan.shape.model import FloatArray
from buildplan.shape.settings import AT_REST
from buildplan.shape.springs import energy_and_gradient

NEWTON_STEPS, QUASI_NEWTON_STEPS, ROUNDS = 100, 500, 3
FEWEST_FACTORED = 30  # at whatever work: what fits together needs no more (measured: 4 to 20)
# steps past the tolerance: down to so much in N, with so much damping over the stiffest spring, and
# none so long that it would lead elsewhere
SHARP_N, SLIGHT, NEAR_M = 1e-11, 1e-10, 1e-3
YIELDING_STEPS = 12  # at most, with the factors of the start


@dataclass(frozen=True)
class Relaxed:
    """Where a run ended: (joints, 3) positions, energy in J, largest force left in N.

    `work` are the multiplications that its factors took; it is `cut` where it ended out of balance
    because they were all that it was given.
    """

    positions_m: FloatArray
    energy_j: float
    residual_n: float
    iterations: int
    work: float = 0.0
    cut: bool = False


@dataclass(frozen=True)
class _Rest:
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


class _Energy:
    """Energy, gradient and second derivatives as functions of the freedoms."""

    def __init__(
        self,
        stiffening: Stiffening,
        held_m: FloatArray,
        load_n: FloatArray,
        work: float,
    ) -> None:
        self.springs, self.freedoms = stiffening.springs, stiffening.freedoms
        self.held, self.load, self.work = held_m, load_n, work
        self.stiffening = stiffening

    @cached_property
    def most_factored(self) -> float:
        """How many factors the work is enough for."""
        return max(FEWEST_FACTORED, self.work / self.stiffening.work)

    def positions(self, freedom: FloatArray) -> FloatArray:
        return np.asarray(self.held + self.freedoms.coordinates(freedom))

    def value(self, freedom: FloatArray) -> tuple[float, FloatArray]:
        positions = self.positions(freedom)
        energy, gradient = energy_and_gradient(self.springs, positions)
        energy -= float((self.load * positions).sum())
        return energy, self.freedoms.felt(gradient - self.load)

    def standing_at(self, positions_m: FloatArray) -> _Rest:
        """The freedoms nearest to some positions (joints, 3)."""
        freedom = self.freedoms.nearest(positions_m - self.held)
        return _Rest(freedom, *self.value(freedom))

    def curvature(self, freedom: FloatArray) -> sparse.csc_array:
        return self.stiffening.at(self.positions(freedom))


def _goes_on(positions_m: FloatArray) -> bool:
    return False


def _newton(
    problem: _Energy,
    start: _Rest,
    tolerance_n: float,
    longest_m: float,
    steps: int,
    lost: Callable[[FloatArray], bool] = _goes_on,
) -> _Rest:
    """Newton's method, damped as Levenberg and Marquardt do, on the sparse second derivatives.

    Where the matrix is not positive definite by itself, the piece is on its way down a ridge: a
    step that the model foretold well is doubled there for as long as the energy falls.

    The damping grows until the damped matrix is positive definite (its factors tell) and the step
    brings the energy down; it shrinks where the quadratic model foretells the energy well.
    """
    now, damping = start, 1e-3 * float(problem.springs.stiffness_n_per_m.max(initial=1.0))
    ceiling, factored = 1e6 * damping, now.factored
    for _ in range(steps):
        if now.pushed_n <= tolerance_n:
            break
        if lost(problem.positions(now.freedom)):
            break
        curvature = problem.curvature(now.freedom)
        ridge = False
        while damping < ceiling and factored < problem.most_factored:
            factored += 1
            solve = problem.stiffening.solving(curvature, damping)
            if solve is None:
                ridge = True
                damping *= 4
                continue
            step = -solve(now.gradient)
            step *= min(1.0, longest_m / max(float(np.abs(step).max()), 1e-300))
            energy, gradient = problem.value(now.freedom + step)
            foretold = -float(now.gradient @ step) - 0.5 * float(step @ (curvature @ step))
            gain = (now.energy - energy) / foretold if foretold > 0 else -1.0
            calmer = np.linalg.norm(gradient) < np.linalg.norm(now.gradient)
            if energy <= now.energy + 1e-14 * abs(now.energy) and (gain > 1e-4 or calmer):
                break
            damping *= 4
        else:
            break
        if ridge and gain > 0.5:
            step, energy, gradient = _downhill(
                problem, now.freedom, step, (energy, gradient), longest_m
            )
        now = _Rest(now.freedom + step, energy, gradient, now.iterations + 1, factored)
        if gain > 0.5:
            damping = max(damping / 5, 1e-8)
    return replace(now, factored=factored)


def _downhill(
    problem: _Energy,
    freedom: FloatArray,
    step: FloatArray,
    there: tuple[float, FloatArray],
    longest_m: float,
) -> tuple[FloatArray, float, FloatArray]:
    """A step doubled for as long as the energy falls and no freedom moves more than `longest_m`,
    with the energy and the gradient where it leads; `there` are those where it led to."""
    energy, gradient = there
    while 2 * float(np.abs(step).max()) <= longest_m:
        further, slope = problem.value(freedom + 2 * step)
        if further >= energy:
            break
        step, energy, gradient = 2 * step, further, slope
    return step, energy, gradient


def _quasi_newton(problem: _Energy, start: _Rest, tolerance_n: float, steps: int) -> _Rest:
    """scipy's L-BFGS: slower to finish, but not put off by a start that is far away."""
    from scipy.optimize import minimize  # takes longer to import than most shapes to find

    found = minimize(
        problem.value,
        start.freedom,
        jac=True,
        method="L-BFGS-B",
        options={"maxiter": steps, "gtol": tolerance_n, "ftol": 1e-15, "maxcor": 20},
    )
    energy, gradient = problem.value(found.x)
    iterations = start.iterations + int(found.nit)
    return _Rest(found.x, energy, gradient, iterations, start.factored)


def relax(
    stiffening: Stiffening,
    start_m: FloatArray,
    tolerance_n: float,
    longest_m: float = 0.1,
    load_n: FloatArray | None = None,
    held_m: FloatArray | None = None,
    newton_steps: int = NEWTON_STEPS,
    rounds: int = ROUNDS,
    lost: Callable[[FloatArray], bool] = _goes_on,
    work: float = np.inf,
) -> Relaxed:
    """Bring `start_m` (joints, 3) to rest under the springs of `stiffening`, by its freedoms, and a
    dead load (joints, 3).

    Ends when no freedom is pushed with more than `tolerance_n`. No freedom moves more than
    `longest_m` in one Newton step. `held_m` (joints, 3) is added to what the freedoms
    tell: where joints are that they leave out. Between `rounds` of Newton steps comes a
    quasi-Newton run. It ends early, out of balance, once positions are `lost`: where nobody asks
    any more how it goes on; and, past its first FEWEST_FACTORED factors, once these have taken
    `work` multiplications.
    """
    nowhere = np.zeros_like(start_m)
    held = nowhere if held_m is None else held_m
    problem = _Energy(stiffening, held, nowhere if load_n is None else load_n, work)
    now = problem.standing_at(start_m)
    now = _newton(problem, now, tolerance_n, longest_m, newton_steps, lost)
    for _ in range(rounds - 1):
        if now.pushed_n <= tolerance_n or now.factored >= problem.most_factored:
            break
        now = _quasi_newton(problem, now, tolerance_n, QUASI_NEWTON_STEPS)
        now = _newton(problem, now, tolerance_n, longest_m, newton_steps, lost)
    return Relaxed(
        positions_m=problem.positions(now.freedom),
        energy_j=now.energy,
        residual_n=now.pushed_n,
        iterations=now.iterations,
        work=now.factored * problem.stiffening.work if now.factored else 0.0,
        cut=now.pushed_n > AT_REST * tolerance_n and now.factored >= problem.most_factored,
    )


def sharpened(
    stiffening: Stiffening, rested: Relaxed, held_m: FloatArray | None, steps: int
) -> Relaxed:
    """What has come to rest, brought there to the last digits: by Newton's steps with next to no
    damping and, as near as this, the same factors for all, each as long as it takes off half of the
    force left.

    What a tolerance leaves moves a soft piece by a hundredth of a millimetre, on every processor
    another way: what is told of a symmetric one, as soft this way as that, would go by it.
    """
    nowhere = np.zeros_like(rested.positions_m)
    problem = _Energy(stiffening, nowhere if held_m is None else held_m, nowhere, np.inf)
    now = problem.standing_at(rested.positions_m)
    if steps and now.pushed_n > SHARP_N:
        now = _by_the_same_factors(problem, now, SHARP_N, NEAR_M, steps)
    return replace(
        rested,
        positions_m=problem.positions(now.freedom),
        energy_j=now.energy,
        residual_n=now.pushed_n,
    )


def yielded(
    stiffening: Stiffening,
    start_m: FloatArray,
    tolerance_n: float,
    longest_m: float,
    load_n: FloatArray,
    held_m: FloatArray,
) -> Relaxed:
    """How far what is at rest gives under a load that moves it little (arguments as those of
    `relax`): as far as the factors of its start lead."""
    problem = _Energy(stiffening, held_m, load_n, np.inf)
    now = problem.standing_at(start_m)
    now = _by_the_same_factors(problem, now, tolerance_n, longest_m, YIELDING_STEPS)
    positions = problem.positions(now.freedom)
    return Relaxed(positions, now.energy, now.pushed_n, now.iterations, stiffening.work)


def _by_the_same_factors(
    problem: _Energy, start: _Rest, tolerance_n: float, longest_m: float, steps: int
) -> _Rest:
    """Newton's steps with next to no damping and the factors of the start for all, each as long as
    it takes off half of the force left and moves no freedom by more than `longest_m`."""
    stiffening, now = problem.stiffening, start
    slight = SLIGHT * float(stiffening.springs.stiffness_n_per_m.max(initial=1.0))
    solve = stiffening.solving(problem.curvature(now.freedom), slight)
    for _ in range(steps):
        if solve is None or now.pushed_n <= tolerance_n:
            break
        step = -solve(now.gradient)
        freedom = now.freedom + step
        nearer = _Rest(freedom, *problem.value(freedom), now.iterations + 1)
        if float(np.abs(step).max()) > longest_m or nearer.pushed_n > 0.5 * now.pushed_n:
            break
        now = nearer
    return now


def holds(stiffening: Stiffening, positions_m: FloatArray) -> bool:
    """Whether a piece at rest stays there when it is nudged: its second derivatives are positive
    definite. A start that is as even as the piece itself may come to rest on a ridge."""
    return stiffening.solving(stiffening.at(positions_m), 0.0) is not None
