"""What a piece will measure in these hands, and what to measure to know it better."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import sqrt

import numpy as np

from buildplan.evaluation.evaluating import Evaluation
from buildplan.framework.model import Chain, Framework
from buildplan.hands.learning import expected, narrowed, prior
from buildplan.hands.model import (
    NINETY_PER_CENT,
    ChainOfTen,
    Hands,
    RingAcross,
    Size,
    Sizes,
    StandingHeight,
)
from buildplan.shape.calibration import ring_checks

STEP = 1e-4  # of a logarithm, for slopes


@dataclass(frozen=True)
class Forecast:
    """A length in metres, and the range that holds it nine times in ten."""

    value_m: float
    low_m: float
    high_m: float


@dataclass(frozen=True)
class MeasuringChoice:
    """Something that can be measured on a piece: which of it (a balloon's key, a chain's letter;
    empty for the whole), as hands that nothing is known of would find it."""

    which: str
    measurement: ChainOfTen | RingAcross | StandingHeight


@dataclass(frozen=True)
class Narrowing:
    """What one more measurement is worth: the range of the height then, either way, in metres."""

    candidate: MeasuringChoice
    now_m: float
    then_m: float


def _size_of(framework: Framework, key: str) -> Size | None:
    """The size of a link balloon whose length is worked out from its gauge; else None."""
    balloon = framework.balloons[key]
    size = Size(round(balloon.nominal_m, 5), round(balloon.gauge_m, 5))
    return size if balloon.tie_within else None


def _sizes_in(framework: Framework, links: tuple[str, ...]) -> Sizes:
    keys = Counter(framework.link[link].balloon for link in links)
    counts: Counter[Size | None] = Counter()
    for key, count in keys.items():
        counts[_size_of(framework, key)] += count
    return tuple(counts.items())


def _ring(framework: Framework, chain: Chain) -> tuple[tuple[Size, int], ...] | None:
    sizes = _sizes_in(framework, chain.links)
    known = [(size, count) for size, count in sizes if size is not None]
    return tuple(known) if len(known) == len(sizes) else None


def height_of(piece: Evaluation) -> StandingHeight:
    """The height of a piece as the program works it out, ready to be compared with a real one.

    `piece` is the design without anybody's hands.
    """
    heights = piece.shape.positions_m[:, 1]
    span = float(heights.max() - heights.min())
    sizes = _sizes_in(piece.framework, tuple(link.id for link in piece.framework.links))
    tall = piece.shape.height_m
    return StandingHeight(sizes, span, tall - span, piece.sag_m, piece.standing_height_m)


def candidates(piece: Evaluation) -> Iterator[MeasuringChoice]:
    """What can be measured on a piece, each once: chains of ten, rings, the height."""
    framework = piece.framework
    sizes: dict[Size, str] = {}
    for link in framework.links:
        size = _size_of(framework, link.balloon)
        if size is not None:
            sizes.setdefault(size, link.balloon)
    nobody = prior(list(sizes))
    for size, key in sizes.items():
        chain = ChainOfTen(size, 1.0)
        yield MeasuringChoice(key, replace(chain, length_m=expected(nobody, chain, nobody.mean)))
    closed = {ring.chain for ring in ring_checks(framework)}
    seen = set()
    for long in framework.chains:
        links = _ring(framework, long.chain) if long.letter in closed else None
        if links is not None and links not in seen:
            seen.add(links)
            ring = RingAcross(links, 1.0)
            across = expected(nobody, ring, nobody.mean)
            yield MeasuringChoice(long.letter, replace(ring, across_m=across))
    yield MeasuringChoice("", height_of(piece))


def _half_width_m(hands: Hands, height: StandingHeight) -> float:
    middle = expected(hands, height, hands.mean)
    slope = np.array(
        [
            (expected(hands, height, hands.mean + STEP * unit) - middle) / STEP
            for unit in np.eye(len(hands.habits))
        ]
    )
    return NINETY_PER_CENT * sqrt(float(slope @ hands.covariance @ slope))


def forecast(hands: Hands, height: StandingHeight) -> Forecast:
    """How high a piece will stand in these hands."""
    middle, half = expected(hands, height, hands.mean), _half_width_m(hands, height)
    return Forecast(middle, middle - half, middle + half)


def narrowest(hands: Hands, piece: Evaluation) -> Narrowing | None:
    """The measurement, other than the height itself, that would narrow the height's range most;
    None where nothing is left to measure."""
    found = list(candidates(piece))
    height = height_of(piece)
    now = _half_width_m(hands, height)
    tried = [
        Narrowing(one, now, _half_width_m(narrowed(hands, one.measurement), height))
        for one in found
        if not isinstance(one.measurement, StandingHeight)
    ]
    return min(tried, key=lambda one: one.then_m, default=None)
