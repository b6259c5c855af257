"""Which joints a piece is set on, so that it is the way up that its outline is drawn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from buildplan.fitting.outline import ComplexArray

# How far above the lowest joint others may be that are its feet too, in links
FEET_WITHIN = (0.25, 0.5, 0.1)
LEAST_APART = 1.0  # links between two joints that tell what is level
DIGITS_OF_A_SLOPE = 3


def feet_to_try(joints: Sequence[str], drawn: ComplexArray, link_m: float) -> Iterator[list[str]]:
    """Joints to set a piece on, the likeliest first: none (it finds its own), those that lie lowest
    as the outline is drawn, and two that are level then. `drawn` are the places of `joints`, (n,),
    in metres."""
    yield []
    for within in FEET_WITHIN:
        limit = drawn.imag.min() + within * link_m
        yield [joint for joint, at in zip(joints, drawn, strict=True) if at.imag <= limit]
    level = level_joints(joints, drawn, link_m)
    if level:
        yield level


def level_joints(joints: Sequence[str], drawn: ComplexArray, link_m: float) -> list[str]:
    """The two joints below the middle that are the most nearly level, and of those the farthest
    apart; from left to right. None where all lie above one another."""
    low = np.flatnonzero(drawn.imag < drawn.imag.mean())
    apart = drawn[low][None, :] - drawn[low][:, None]
    wide = apart.real > LEAST_APART * link_m
    if not wide.any():
        return []
    slope = np.full(apart.shape, np.inf)
    slope[wide] = np.round(np.abs(apart.imag[wide]) / apart.real[wide], DIGITS_OF_A_SLOPE)
    best = int(np.lexsort((-apart.real.ravel(), slope.ravel()))[0])
    return [joints[int(low[place])] for place in divmod(best, len(low))]
