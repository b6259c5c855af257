"""Relaxing: from a start to the nearest shape in which all forces balance.

Damped Newton steps on the sparse second derivatives, with a quasi-Newton run (scipy's L-BFGS) where
they stall: a tube's long soft modes take hundreds of quasi-Newton steps but six or so of Newton's.
The choice of freedoms holds a piece symmetric, flat or on its feet (`freedoms.py`).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from buildplan.shape.energy import Energy, Rest
from buildplan.shape.freedoms import Stiffening
from buildplan.shape.model import FloatArray
from buildplan.shape.settings import AT_REST

NEWTON_STEPS, QUASI_NEWTON_STEPS, ROUNDS = 100, 500, 3
FEWEST_FACTORED = 30  # at whatever work: what fits together needs no more (measured: 4 to 20)


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


def _goes_on(positions_m: FloatArray) -> bool:
    return False


def _most_factored(problem: Energy, work: float) -> float:
    """How many factors some work is enough for."""
    return max(FEWEST_FACTORED, work / problem.stiffening.work)


def _newton(
    problem: Energy,
    start: Rest,
    tolerance_n: float,
    longest_m: float,
    steps: int,
    lost: Callable[[FloatArray], bool],
    work: float,
) -> Rest:
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
        while damping < ceiling and factored < _most_factored(problem, work):
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
        now = Rest(now.freedom + step, energy, gradient, now.iterations + 1, factored)
        if gain > 0.5:
            damping = max(damping / 5, 1e-8)
    return replace(now, factored=factored)


def _downhill(
    problem: Energy,
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


def _quasi_newton(problem: Energy, start: Rest, tolerance_n: float, steps: int) -> Rest:
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
    return Rest(found.x, energy, gradient, iterations, start.factored)


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
    problem = Energy(stiffening, held_m, load_n)
    now = problem.standing_at(start_m)
    now = _newton(problem, now, tolerance_n, longest_m, newton_steps, lost, work)
    for _ in range(rounds - 1):
        if now.pushed_n <= tolerance_n or now.factored >= _most_factored(problem, work):
            break
        now = _quasi_newton(problem, now, tolerance_n, QUASI_NEWTON_STEPS)
        now = _newton(problem, now, tolerance_n, longest_m, newton_steps, lost, work)
    return Relaxed(
        positions_m=problem.positions(now.freedom),
        energy_j=now.energy,
        residual_n=now.pushed_n,
        iterations=now.iterations,
        work=now.factored * problem.stiffening.work if now.factored else 0.0,
        cut=now.pushed_n > AT_REST * tolerance_n and now.factored >= _most_factored(problem, work),
    )


def holds(stiffening: Stiffening, positions_m: FloatArray) -> bool:
    """Whether a piece at rest stays there when it is nudged: its second derivatives are positive
    definite. A start that is as even as the piece itself may come to rest on a ridge."""
    return stiffening.solving(stiffening.at(positions_m), 0.0) is not None
