"""Learning from simulated hands: people drawn at random, who measure with a tape that is off."""

from __future__ import annotations

from functools import cache
from math import exp
from pathlib import Path

import numpy as np
import pytest
from awkward_pieces import tube
from scipy.stats import norm

from buildplan.design.reading import read_design
from buildplan.evaluation.evaluating import Evaluation, evaluate
from buildplan.hands.applying import learned_for, with_hands
from buildplan.hands.forecast import candidates, forecast, height_of, narrowest
from buildplan.hands.learning import SPREADS, expected, learn, narrowed, noise, prior
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
)
from buildplan.hands.words import height_lines
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind
from buildplan.shape.calibration import circle_radius_m

DESIGNS = Path(__file__).parents[2] / "designs"
SHIPPED = ("reading_star", "walk_through_gate", "picture_frame")
LARGE, SMALL = Size(0.3048, 0.2032), Size(0.1524, 0.127)


@cache
def piece(name: str) -> Evaluation:
    design = read_design(DESIGNS / f"{name}.yaml")
    return evaluate(design, design.units, 12)


def told_by(
    hands: Hands, logs: FloatArray, one: Measurement, rng: np.random.Generator
) -> Measurement:
    """What somebody of these habits measures, as far as the tape is right."""
    value = expected(hands, one, logs) * exp(rng.normal(0, noise(one)))
    match one:
        case ChainOfTen(size=size):
            return ChainOfTen(size, value)
        case RingAcross(sizes=sizes):
            return RingAcross(sizes, value)
        case StandingHeight():
            return StandingHeight(one.sizes, one.span_m, one.body_m, one.sag_m, value)
        case TimedWork(kind=kind, count=count):
            return TimedWork(kind, count, value)


def test_the_quantile_is_the_normal_one() -> None:
    """NIST/SEMATECH e-Handbook 1.3.6.7.1, cumulative normal: 0.95 at 1.645; scipy to all places."""
    assert pytest.approx(norm.ppf(0.95), abs=1e-12) == NINETY_PER_CENT


@cache
def people() -> tuple[tuple[FloatArray, Hands], ...]:
    """The habits that 200 people have, and what is learned of them from what they measure."""
    rng = np.random.default_rng(20261128)
    asked: tuple[Measurement, ...] = (
        ChainOfTen(LARGE, 1.0),
        RingAcross(((LARGE, 40),), 1.0),
        StandingHeight(((LARGE, 300), (SMALL, 100)), 2.7, 0.2, 0.06, 1.0),
        TimedWork(Kind.BRACE, 40, 1.0),
    )
    anybody = prior([LARGE, SMALL])
    found = []
    for _ in range(200):
        logs = rng.multivariate_normal(anybody.mean, anybody.covariance)
        told = [told_by(anybody, logs, one, rng) for one in asked]
        found.append((logs, learn(told, [LARGE, SMALL])))
    return tuple(found)


WHAT: dict[str, dict[Habit, float]] = {
    "large links": {TieLength(): 1.0, TieLength(LARGE): 1.0},
    "small links, never measured": {TieLength(): 1.0, TieLength(SMALL): 1.0},
    "bodies": {BodyWidth(): 1.0},
    "stiffness": {Give(): 1.0},
    "braces": {Pace(): 1.0, Pace(Kind.BRACE): 1.0},
    "locks, never timed": {Pace(): 1.0, Pace(Kind.LOCK): 1.0},
}


def share_inside(shares: dict[Habit, float]) -> float:
    """The share of 200 people whose truth lies in the range that should hold nine in ten."""
    anybody = prior([LARGE, SMALL])
    inside = 0
    for logs, found in people():
        true = exp(float(anybody.weights(shares) @ logs))
        factor = found.factor(shares)
        inside += factor.low <= true <= factor.high
    return inside / len(people())


@pytest.mark.parametrize("what", WHAT)
def test_the_truth_lies_in_the_ninety_per_cent_range(what: str) -> None:
    """Of 200 people the range that should hold nine in ten holds 85 to 95 in a hundred."""
    assert 0.85 <= share_inside(WHAT[what]) <= 0.95, what


def height_off(name: str) -> float:
    """By what share the foretold height of a shipped design is off, in 19 of 20 of 50 hands, after
    a chain of ten and, where it has one, a ring."""
    made = piece(name)
    rng = np.random.default_rng(7)
    anybody = learned_for(made.design, ())
    # the first of each kind; the gate is open and has no ring
    found = {type(one.measurement): one.measurement for one in reversed([*candidates(made)])}
    height = height_of(made)
    asked = [found[kind] for kind in (ChainOfTen, RingAcross) if kind in found]
    off = []
    for _ in range(50):
        logs = rng.multivariate_normal(anybody.mean, anybody.covariance)
        # how a piece sags is not what a chain and a ring can tell
        logs[anybody.number[Give()]] = 0.0
        measured = [told_by(anybody, logs, one, rng) for one in asked]
        learned = learned_for(made.design, measured)
        off.append(forecast(learned, height).value_m / expected(anybody, height, logs) - 1)
    return float(np.quantile(np.abs(off), 0.95))


@pytest.mark.parametrize("name", SHIPPED)
def test_one_chain_and_one_ring_foretell_the_height_within_three_per_cent(name: str) -> None:
    assert height_off(name) < 0.03


def test_the_piece_worked_out_with_hands_is_the_piece_that_was_foretold() -> None:
    made = piece("picture_frame")
    chain = next(one.measurement for one in candidates(made))
    assert isinstance(chain, ChainOfTen)
    found = learned_for(made.design, [ChainOfTen(chain.size, 1.04 * chain.length_m)])
    again = with_hands(made.design, found)
    built = evaluate(again, again.units, 12)
    assert height_of(built).height_m == pytest.approx(
        forecast(found, height_of(made)).value_m, rel=0.01
    )
    assert built.shape.height_m > made.shape.height_m


def test_what_the_file_says_itself_stands() -> None:
    design = read_design(DESIGNS / "picture_frame.yaml")
    measured = {
        key: one.model_copy(update={"tie_to_tie": 9.0}) if one.kind == "link" else one
        for key, one in design.balloons.items()
    }
    own = design.model_copy(update={"balloons": measured, "labour": {"brace": 3.0}})
    timed = [TimedWork(Kind.BRACE, 10, 5.0), TimedWork(Kind.LOCK, 10, 5.0)]
    found = learned_for(own, [ChainOfTen(LARGE, 2.5), *timed])
    with_own = with_hands(own, found)
    assert with_own.balloons == own.balloons
    assert with_own.labour["brace"] == 3.0
    assert with_own.labour["lock"] > 0.3


def test_nothing_measured_leaves_everything_as_it_is() -> None:
    found = learn([], [LARGE])
    assert found.factor({TieLength(): 1.0}).value == pytest.approx(1.0)
    assert np.allclose(found.covariance, prior([LARGE]).covariance)


def test_a_ring_expected_is_the_polygon_of_the_handbook() -> None:
    """R = s / (2 sin(pi / n)): Machinery's Handbook, 31st ed., p. 82; R/S is 0.8507 for n = 5."""
    anybody = prior([LARGE])
    side = LARGE.gauge_m * 1.15
    assert circle_radius_m([side] * 5) == pytest.approx(0.8507 * side, rel=1e-4)
    across = expected(anybody, RingAcross(((LARGE, 5),), 1.0), anybody.mean)
    apothem = 0.8507 * side * np.cos(np.pi / 5)
    assert across == pytest.approx(2 * apothem + LARGE.gauge_m, rel=1e-4)


def spread_of(hands: Hands, shares: dict[Habit, float]) -> float:
    row = hands.weights(shares)
    return float(row @ hands.covariance @ row)


def test_what_is_said_to_narrow_most_does() -> None:
    """The same covariance as after learning from a measurement that shows what was expected."""
    made = piece("reading_star")
    nobody = learned_for(made.design, ())
    best = narrowest(nobody, made)
    assert best is not None
    assert best.then_m < best.now_m
    after = learned_for(made.design, [best.candidate.measurement])
    foretold = narrowed(nobody, best.candidate.measurement)
    assert np.allclose(after.covariance, foretold.covariance, atol=1e-7)


@pytest.mark.parametrize("count", [1, 3, 10])
def test_more_measurements_of_a_kind_narrow_as_the_root_of_their_number(count: int) -> None:
    """Standard error of a mean: sigma / sqrt(n) (NIST/SEMATECH e-Handbook 1.3.5.2), the prior
    aside: precisions add up."""
    length = 10 * LARGE.gauge_m * 1.15
    found = learn([ChainOfTen(LARGE, length)] * count)
    before = SPREADS.tie**2 + SPREADS.own**2
    after = 1 / (1 / before + count / SPREADS.chain_of_ten**2)
    assert spread_of(found, {TieLength(): 1.0, TieLength(LARGE): 1.0}) == pytest.approx(
        after, rel=1e-3
    )


def test_what_does_not_hold_itself_up_is_as_high_as_where_it_is_held() -> None:
    """A strip of two chains on its end falls: nobody can measure how high it stands by itself."""
    strip = tube(100, 2)
    alone = evaluate(strip, strip.units, 12)
    assert alone.falls
    held = evaluate(tube(100, 2, pole=True), strip.units, 12)
    assert not held.falls
    assert alone.standing_height_m == pytest.approx(held.standing_height_m, rel=0.01)
    told = next(height_lines(prior([LARGE]), alone, Voice()))
    assert "where something holds it up" in told
    assert "as it stands" in next(height_lines(prior([LARGE]), held, Voice()))
