"""Learning habits from measurements: least squares with the program's own constants as the prior.

Each residual is a difference of logarithms over its standard deviation, so that the sum of squares
is that of a normal model: prior and measurements in one. The covariance at the solution is
(J'J)^-1 (Bard 1974, Nonlinear Parameter Estimation; scipy's `curve_fit` uses the same).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, log, sqrt

import numpy as np

from buildplan.hands.model import (
    NINETY_PER_CENT,
    BodyWidth,
    ChainOfTen,
    FloatArray,
    Give,
    Habit,
    Hands,
    Measurement,
    Pace,
    RingAcross,
    Size,
    StandingHeight,
    TieLength,
    TimedWork,
    tie_shares,
)
from buildplan.sequence.labour import MINUTES
from buildplan.sequence.model import Kind
from buildplan.shape.calibration import circle_radius_m
from buildplan.source.lengths import ESTIMATED_WITHIN, TIE_TO_TIE_PER_GAUGE


@dataclass(frozen=True)
class Spreads:
    """Standard deviations of logarithms: how far hands differ, and how far a tape may be off.

    All from memory, but `tie`, which is what unmeasured lengths are said to be good for. `own` is
    what sizes of balloon differ by in the same hands; `kind` what kinds of work differ by.
    """

    tie: float = log(1 + ESTIMATED_WITHIN) / NINETY_PER_CENT
    own: float = 0.01
    body: float = 0.02
    give: float = 0.6
    pace: float = 0.3
    kind: float = 0.3
    chain_of_ten: float = 0.007
    ring: float = 0.007
    height: float = 0.01
    work: float = 0.15


SPREADS = Spreads()


def sizes_of(measurement: Measurement) -> tuple[Size, ...]:
    """The sizes of balloon that a measurement says something of."""
    match measurement:
        case ChainOfTen(size=size):
            return (size,)
        case RingAcross(sizes=sizes) | StandingHeight(sizes=sizes):
            return tuple(size for size, _ in sizes if size is not None)
    return ()


def prior(sizes: Sequence[Size], spreads: Spreads = SPREADS) -> Hands:
    """What is taken for granted of anybody's hands, for these sizes of balloon."""
    spread: dict[Habit, float] = {TieLength(): spreads.tie}
    spread |= {TieLength(size): spreads.own for size in sorted(set(sizes))}
    spread |= {BodyWidth(): spreads.body, Give(): spreads.give, Pace(): spreads.pace}
    spread |= {Pace(kind): spreads.kind for kind in Kind}
    variances = np.array(list(spread.values())) ** 2
    return Hands(tuple(spread), np.zeros(len(spread)), np.diag(variances))


def expected(hands: Hands, measurement: Measurement, logs: FloatArray) -> float:
    """What would be measured by hands of these habits (n)."""

    def of(shares: dict[Habit, float]) -> float:
        return exp(float(hands.weights(shares) @ logs))

    def tie_m(size: Size) -> float:
        return size.gauge_m * TIE_TO_TIE_PER_GAUGE * of({TieLength(): 1.0, TieLength(size): 1.0})

    match measurement:
        case ChainOfTen(size=size):
            return 10 * tie_m(size)
        case RingAcross(sizes=sizes):
            tie = {size: tie_m(size) for size, _ in sizes}
            sides = [tie[size] for size, count in sizes for _ in range(count)]
            radius = circle_radius_m(sides)
            body = of({BodyWidth(): 1.0})
            middles = [(radius, min(tie[size] / 2, radius), size.gauge_m) for size, _ in sizes]
            return max(2 * sqrt(r**2 - half**2) + gauge * body for r, half, gauge in middles)
        case StandingHeight(sizes=sizes, span_m=span, body_m=body_m, sag_m=sag):
            tall = span * of(tie_shares(sizes)) + body_m * of({BodyWidth(): 1.0})
            return max(tall - sag * of({Give(): -1.0}), tall / 4)
        case TimedWork(kind=kind, count=count):
            return MINUTES[kind] * count * of({Pace(): 1.0, Pace(kind): 1.0})


def measured(measurement: Measurement) -> float:
    """What was measured, in metres or minutes."""
    match measurement:
        case ChainOfTen(length_m=value) | RingAcross(across_m=value):
            return value
        case StandingHeight(height_m=value) | TimedWork(minutes=value):
            return value


def noise(measurement: Measurement, spreads: Spreads = SPREADS) -> float:
    """Standard deviation of the logarithm of what is measured."""
    match measurement:
        case ChainOfTen():
            return spreads.chain_of_ten
        case RingAcross():
            return spreads.ring
        case StandingHeight():
            return spreads.height
        case TimedWork():
            return spreads.work


def learn(
    measurements: Sequence[Measurement],
    sizes: Sequence[Size] = (),
    spreads: Spreads = SPREADS,
) -> Hands:
    """What the measurements say of the hands that made them; of `sizes` too, measured or not."""
    known = prior([*sizes, *(s for one in measurements for s in sizes_of(one))], spreads)
    if not measurements:
        return known
    from scipy.optimize import least_squares  # long to import, and not needed without measurements

    deviations = np.sqrt(np.diag(known.covariance))

    def residuals(logs: FloatArray) -> FloatArray:
        off = [
            log(expected(known, one, logs) / measured(one)) / noise(one, spreads)
            for one in measurements
        ]
        return np.concatenate([logs / deviations, off])

    found = least_squares(residuals, known.mean, method="trf", x_scale=deviations)
    covariance = np.linalg.inv(found.jac.T @ found.jac)
    return Hands(known.habits, np.asarray(found.x), covariance, tuple(measurements))


def narrowed(hands: Hands, candidate: Measurement, spreads: Spreads = SPREADS) -> Hands:
    """What would be known after one more measurement, whatever it shows: the covariance alone
    changes (Kalman's update for one reading, linear at the mean)."""
    step = 1e-5
    at = log(expected(hands, candidate, hands.mean))
    slope = np.array(
        [
            (log(expected(hands, candidate, hands.mean + step * unit)) - at) / step
            for unit in np.eye(len(hands.habits))
        ]
    )
    spread = hands.covariance @ slope
    variance = float(slope @ spread) + noise(candidate, spreads) ** 2
    covariance = hands.covariance - np.outer(spread, spread) / variance
    return Hands(hands.habits, hands.mean, covariance, hands.measurements)
