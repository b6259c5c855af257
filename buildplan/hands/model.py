"""Measurements of a person's own work, and what is learned from them, as frozen data.

Lengths are in metres, times in minutes. What is learned are logarithms of factors on the program's
own constants, with their covariance: a factor of 1 is what the program takes for granted.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from math import exp, sqrt

import numpy as np
from numpy.typing import NDArray

from buildplan.sequence.model import Kind

HANDS_FILE = "hands.yaml"  # of designs that lie beside it

FloatArray = NDArray[np.float64]

NINETY_PER_CENT = 1.6448536269514722  # standard normal quantile at 0.95 (NIST/SEMATECH 1.3.6.7.1)


@dataclass(frozen=True, order=True)
class Size:
    """A link balloon by the size on its bag and the gauge that it is sized to."""

    nominal_m: float
    gauge_m: float


Sizes = tuple[tuple[Size | None, int], ...]
"""How many links there are of each size; None stands for those whose length is known already."""


@dataclass(frozen=True)
class ChainOfTen:
    """Ten links of one size tied end to end, measured from the first knot to the last."""

    size: Size
    length_m: float


@dataclass(frozen=True)
class RingAcross:
    """A ring laid round on the floor, measured over its balloons; `sizes` are its links."""

    sizes: tuple[tuple[Size, int], ...]
    across_m: float


@dataclass(frozen=True)
class StandingHeight:
    """A finished piece as it stands. `span_m` is how far its joints reach up by the program's own
    lengths, `body_m` what its balloons add to that, `sag_m` how far it sinks; `sizes` are its
    links."""

    sizes: Sizes
    span_m: float
    body_m: float
    sag_m: float
    height_m: float


@dataclass(frozen=True)
class TimedWork:
    """So many of a kind of work, done by one pair of hands in so many minutes."""

    kind: Kind
    count: float
    minutes: float


Measurement = ChainOfTen | RingAcross | StandingHeight | TimedWork


@dataclass(frozen=True)
class TieLength:
    """How long links of a size come out between their knots; None stands for links of any size."""

    size: Size | None = None


@dataclass(frozen=True)
class BodyWidth:
    """How wide a balloon comes out, over the gauge that it is sized to."""


@dataclass(frozen=True)
class Give:
    """How stiff the built piece is."""


@dataclass(frozen=True)
class Pace:
    """How long work takes; None stands for work of any kind."""

    kind: Kind | None = None


Habit = TieLength | BodyWidth | Give | Pace


@dataclass(frozen=True)
class Factor:
    """A factor on one of the program's constants, and the range that holds it nine times in ten."""

    value: float
    low: float
    high: float


@dataclass(frozen=True)
class Hands:
    """What is known of a person's habits: the logarithms' means (n) and covariance (n, n)."""

    habits: tuple[Habit, ...]
    mean: FloatArray
    covariance: FloatArray
    measurements: tuple[Measurement, ...] = ()

    @cached_property
    def number(self) -> Mapping[Habit, int]:
        """Where each habit stands."""
        return {habit: i for i, habit in enumerate(self.habits)}

    @property
    def taken_for_granted(self) -> Hands:
        """The same hands as seen by a design that has been worked out with them: all factors 1."""
        return Hands(self.habits, np.zeros(len(self.habits)), self.covariance, self.measurements)

    def weights(self, shares: Mapping[Habit, float]) -> FloatArray:
        """A sum of habits as a row (n); habits that are not known of count for nothing."""
        row = np.zeros(len(self.habits))
        for habit, share in shares.items():
            if habit in self.number:
                row[self.number[habit]] += share
        return row

    def factor(self, shares: Mapping[Habit, float]) -> Factor:
        """The product of habits, each to the power of its share."""
        row = self.weights(shares)
        middle = float(row @ self.mean)
        half = NINETY_PER_CENT * sqrt(max(float(row @ self.covariance @ row), 0.0))
        return Factor(exp(middle), exp(middle - half), exp(middle + half))

    def tie(self, sizes: Sizes) -> Factor:
        """The factor on the tie-to-tie length of links: of one size, or on the mean of several."""
        return self.factor(tie_shares(sizes))


def tie_shares(sizes: Sizes) -> dict[Habit, float]:
    """The habits that the mean tie-to-tie length of links rests on, by share of their number."""
    whole = sum(count for _, count in sizes)
    shares: dict[Habit, float] = {}
    for size, count in sizes:
        if size is not None:
            for habit in (TieLength(), TieLength(size)):
                shares[habit] = shares.get(habit, 0.0) + count / whole
    return shares
