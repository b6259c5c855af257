"""Calibration: what to measure on the floor, and how far the size moves with warmth and gauge.

A finished ring, laid round on the floor before anything is braced, has the diameter of the polygon
of its links: the quickest check with a tape measure that the tie-to-tie length is right.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.framework.model import Chain, Framework
from buildplan.shape.model import FloatArray
from buildplan.shape.roots import bisected

ZERO_CELSIUS_K = 273.15


@dataclass(frozen=True)
class RingCheck:
    """A closed chain laid round: what a tape measure should show, in metres.

    `outside_m` goes through the middle and over the balloons; `low_m` and `high_m` bound it.
    """

    chain: str
    links: int
    outside_m: float
    low_m: float
    high_m: float

    @property
    def measured(self) -> bool:
        """Whether its length is known and not estimated."""
        return self.low_m == self.high_m


@dataclass(frozen=True)
class SizeChange:
    """How the size of the piece moves: the factor and the height that comes of it."""

    factor: float
    height_m: float


def circle_radius_m(sides_m: Sequence[float] | FloatArray) -> float:
    """Radius of the circle on which a closed polygon of these sides can lie.

    Solves sum of 2 asin(s / 2R) = 2 pi; for n equal sides R = s / (2 sin(pi / n)). With fewer than
    three sides, or one longer than the rest together, there is no such circle: ValueError.
    """
    sides = np.asarray(sides_m, float)
    longest, total = float(sides.max()), float(sides.sum())
    if len(sides) < 3 or longest >= total - longest:
        raise ValueError("these sides do not close to a polygon")

    def short(radius: float) -> float:
        return float(2 * np.arcsin(np.minimum(sides / (2 * radius), 1)).sum() - 2 * np.pi)

    least = longest / 2
    if short(least) >= 0:
        return bisected(short, least, total)

    # the middle lies outside: the longest side is seen from beyond, its angle counts from the rest
    rest = np.delete(sides, int(sides.argmax()))

    def beyond(radius: float) -> float:
        return float(np.arcsin(rest / (2 * radius)).sum() - np.arcsin(longest / (2 * radius)))

    most = least
    while beyond(most) <= 0:
        most *= 2
    return bisected(beyond, least, most)


def _ring(framework: Framework, name: str, chain: Chain) -> RingCheck:
    types = [framework.balloons[framework.link[link].balloon] for link in chain.links]
    across = 2 * circle_radius_m([balloon.tie_to_tie_m for balloon in types])
    apothem = np.sqrt(
        np.maximum((across / 2) ** 2 - np.array([b.tie_to_tie_m for b in types]) ** 2 / 4, 0)
    )
    outside = float((2 * apothem + [balloon.gauge_m for balloon in types]).max())
    slack = max(balloon.tie_within for balloon in types) * across
    return RingCheck(name, len(types), outside, outside - slack, outside + slack)


def ring_checks(framework: Framework) -> tuple[RingCheck, ...]:
    """What each closed long chain should measure when it lies round on the floor."""
    return tuple(
        _ring(framework, long.letter, long.chain)
        for long in framework.chains
        if long.chain.closed and len(long.chain.links) >= 3
    )


def warmth_factor(from_celsius: float, to_celsius: float) -> float:
    """How lengths change with the air's temperature.

    Ideal gas at constant pressure: volume goes with absolute temperature (Charles), lengths with
    its cube root. The skin's over-pressure of a few per cent of an atmosphere is left out.
    """
    ratio = (to_celsius + ZERO_CELSIUS_K) / (from_celsius + ZERO_CELSIUS_K)
    return float(ratio ** (1 / 3))


def at_warmth(height_m: float, from_celsius: float, to_celsius: float) -> SizeChange:
    """Height of a piece of `height_m` that is sized at one temperature and stands at another."""
    factor = warmth_factor(from_celsius, to_celsius)
    return SizeChange(factor, height_m * factor)


def at_gauge_step(framework: Framework, height_m: float, step_m: float) -> SizeChange:
    """Height of a piece of `height_m` when its link balloons are all sized `step_m` larger (or
    smaller, negative).

    The tie-to-tie length goes with the gauge; a piece of several sizes moves with their mean.
    """
    gauges = [framework.balloons[link.balloon].gauge_m for link in framework.links]
    factor = 1 + step_m / float(np.mean(gauges))
    return SizeChange(factor, height_m * factor)
