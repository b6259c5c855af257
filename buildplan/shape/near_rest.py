"""Near rest: what is at rest, or as good as, needs few factors for many of Newton's steps."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from buildplan.shape.energy import Energy, Rest
from buildplan.shape.freedoms import Stiffening
from buildplan.shape.model import FloatArray
from buildplan.shape.relaxing import Relaxed

# steps past the tolerance: down to so much in N, with so much damping over the stiffest spring, and
# none so long that it would lead elsewhere
SHARP_N, SLIGHT, NEAR_M = 1e-11, 1e-10, 1e-3
YIELDING_FACTORS, YIELDING_STEPS = 3, 12  # at most, and with the same factors
HOPED_SHARE, TOLD_SHARE = 0.3, 1e-12  # of the energy: what a good step takes off, what is no chance


def sharpened(
    stiffening: Stiffening, rested: Relaxed, held_m: FloatArray | None, steps: int
) -> Relaxed:
    """What has come to rest, brought there to the last digits: by Newton's steps with next to no
    damping and, as near as this, the same factors for all, as long as these lead nearer.

    What a tolerance leaves moves a soft piece by a hundredth of a millimetre, on every processor
    another way: what is told of a symmetric one, as soft this way as that, would go by it.
    """
    problem = Energy(stiffening, held_m)
    now = problem.standing_at(rested.positions_m)
    if not steps or now.pushed_n <= SHARP_N:
        return rested
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
    `relax`): as far as few factors lead, those of its start and of where these lead no further."""
    problem = Energy(stiffening, held_m, load_n)
    now = problem.standing_at(start_m)
    for _ in range(YIELDING_FACTORS):
        before = now
        now = _by_the_same_factors(problem, now, tolerance_n, longest_m, YIELDING_STEPS)
        if now is before or now.pushed_n <= tolerance_n:
            break
    return Relaxed(problem.positions(now.freedom), now.energy, now.pushed_n, now.iterations)


def _by_the_same_factors(
    problem: Energy, start: Rest, tolerance_n: float, longest_m: float, steps: int
) -> Rest:
    """Newton's steps with next to no damping and the factors of the start for all, each as long as
    it takes off half of the force left, or as much of the energy as was to be hoped for, and moves
    no freedom by more than `longest_m`."""
    stiffening, now = problem.stiffening, start
    slight = SLIGHT * float(stiffening.springs.stiffness_n_per_m.max(initial=1.0))
    solve = stiffening.solving(problem.curvature(now.freedom), slight)
    for _ in range(steps):
        if solve is None or now.pushed_n <= tolerance_n:
            break
        step = -solve(now.gradient)
        freedom = now.freedom + step
        nearer = Rest(freedom, *problem.value(freedom), now.iterations + 1)
        hoped = 0.5 * float(-now.gradient @ step)
        fell = now.energy - nearer.energy > max(HOPED_SHARE * hoped, TOLD_SHARE * abs(now.energy))
        calmed = nearer.pushed_n <= 0.5 * now.pushed_n
        if float(np.abs(step).max()) > longest_m or not (calmed or fell):
            break
        now = nearer
    return now
