"""Relaxing with the bodies that share no joint kept apart."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from buildplan.shape.bodies import LinkBodies, contacts, neighbours
from buildplan.shape.comparing import laid_on
from buildplan.shape.constants import Constant
from buildplan.shape.freedoms import Freedoms, Stiffening
from buildplan.shape.model import FloatArray, IntArray
from buildplan.shape.near_rest import sharpened
from buildplan.shape.relaxing import NEWTON_STEPS, ROUNDS, Relaxed, relax
from buildplan.shape.springs import Springs, energy_and_gradient, together

MEETINGS = 6  # how often new neighbours are looked for
LONGEST_SHARE = 0.05  # of the piece's size: the farthest that one step may move a joint


def relax_apart(
    bodies: LinkBodies,
    springs: Springs,
    freedoms: Freedoms,
    start_m: FloatArray,
    tolerance_n: float,
    constants: Mapping[str, Constant],
    newton_steps: int = NEWTON_STEPS,
    rounds: int = ROUNDS,
    held_m: FloatArray | None = None,
    work: float = np.inf,
    sharpenings: int = 0,
) -> Relaxed:
    """Relax with the bodies that share no joint kept apart; `held_m` is that of `relax`, and so is
    `work`, for all its runs together. What has come to rest is `sharpened` by so many steps.

    Neighbours are sought within a skin; the run is repeated while the piece has met bodies that
    were not looked at. The residual is that with every contact counted.
    """
    skin = 0.5 * float(bodies.length_m.mean())
    positions, iterations, worked = start_m, 0, 0.0
    for _ in range(MEETINGS):
        pairs = neighbours(bodies, positions, skin, constants)
        stiffening = Stiffening(together([springs, contacts(bodies, pairs, constants)]), freedoms)
        longest = max(skin, LONGEST_SHARE * float(np.ptp(positions, axis=0).max()))
        result = relax(
            stiffening,
            positions,
            tolerance_n,
            longest,
            held_m=held_m,
            newton_steps=newton_steps,
            rounds=rounds,
            work=work - worked,
        )
        positions, iterations = result.positions_m, iterations + result.iterations
        worked += result.work
        met = neighbours(bodies, positions, 0.0, constants)
        if np.isin(_keys(met, bodies), _keys(pairs, bodies)).all():
            if result.residual_n <= tolerance_n:
                result = sharpened(stiffening, result, held_m, sharpenings)
            if held_m is None:  # nothing keeps it where it lay: it has drifted, as chance has it
                result = replace(result, positions_m=laid_on(start_m, result.positions_m))
            return replace(result, iterations=iterations, work=worked)
        if result.cut:
            break
    every = together([springs, contacts(bodies, met, constants)])
    energy, gradient = energy_and_gradient(every, positions)
    left = float(np.abs(freedoms.felt(gradient)).max(initial=0.0))
    return Relaxed(positions, energy, left, iterations, worked, result.cut)


def _keys(pairs: IntArray, bodies: LinkBodies) -> IntArray:
    return np.asarray(pairs[:, 0] * len(bodies.ends) + pairs[:, 1])
