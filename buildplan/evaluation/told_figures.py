"""The figures that steps quote, for whoever builds to check against."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import numpy as np

from buildplan.design.measures import Units
from buildplan.evaluation.setting_up import (
    built_flat,
    built_standing,
    one_layer,
    parts_apart,
    set_up,
    shared_knots,
)
from buildplan.framework.cells import STRAIGHT
from buildplan.framework.chain_roles import RING, ROW, Layer
from buildplan.framework.model import Brace, Framework, LongChain
from buildplan.instructions.model import Figures, Side, Span, Taped
from buildplan.sequence.directions import directions
from buildplan.sequence.hand_reach import hands_with
from buildplan.sequence.reach import is_long
from buildplan.shape.calibration import ring_checks
from buildplan.shape.constants import CONSTANTS, Constant
from buildplan.shape.holding import conditions
from buildplan.shape.model import FloatArray, Shape

# A side is worth a tape from so many cells on, and straight if its ends are so near as far apart
# as the way along it is long. Ours.
FEWEST_CELLS, STRAIGHTEST = 2, 0.98
# A ring is level whose knots are less apart in height than this share of half a balloon. Ours.
LEVEL = 0.5
# Who kneels before joints has the middle of the body so far from them, and half of that free on
# every other side (from memory).
KNEELING_M = 0.5


def told_figures(
    framework: Framework,
    shape: Shape,
    units: Units,
    constants: Mapping[str, Constant] = CONSTANTS,
) -> Figures:
    """How wide each ring is, laid round on the floor, how long each straight side, which way the
    numbers of chains run, whether the piece is built standing, and how its parts come together.
    `units` are the reader's."""
    rings = {
        ring.chain: Span(ring.outside_m, ring.low_m, ring.high_m) for ring in ring_checks(framework)
    }
    return Figures(
        rings=rings,
        sides=_sides(framework, shape),
        heights=_heights(framework, shape),
        ways=directions(framework, shape),
        stands=built_standing(framework, shape),
        held_by=tuple(conditions(shape.holding, units)),
        hung=shape.holding.hung,
        set_up=set_up(framework, shape, hands_with(constants)),
        flat=built_flat(framework, shape),
        one_layer=one_layer(framework, shape),
        shared=shared_knots(framework, shape),
        apart=parts_apart(framework, shape),
        closed_inside=frozenset(_closed_inside(framework, shape)),
        long=is_long(shape, hands_with(constants)),
        rows=_rows(framework, shape),
        hand_m=constants["hand"].value,
    )


def _rows(framework: Framework, shape: Shape) -> Mapping[str, tuple[Taped, ...]]:
    """How long the rows of each layer are of what is built lying, and how far from its lowest; of
    a row that is as long as one before it only how far."""
    found, flat = {}, built_flat(framework, shape)
    for name, built in _built(framework):
        rows = [long for long in built.chains if long.role == ROW and name in flat]
        lowest: dict[Layer | None, LongChain] = {}
        lengths: dict[Layer | None, set[float]] = {}
        for row in rows:
            first, last = row.chain.joints[0], row.chain.joints[-1]
            below = lowest.setdefault(row.layer, row)
            ends = [(first, last)] if len(row.chain.links) >= FEWEST_CELLS else []
            foot = below.chain.joints[0]
            level = abs(float(shape.at[foot][0] - shape.at[first][0])) < LEVEL * KNEELING_M
            ends += [(foot, first)] if below is not row and level else []
            taped = [_taped(built, shape, *pair) for pair in ends]
            alike = {round(one.span.length_m, 2) for one in taped[:1] if ends[0] == (first, last)}
            known = lengths.setdefault(row.layer, set())
            found[row.letter] = tuple(taped[1:] if alike and alike <= known else taped)
            known |= alike
    return found


def _taped(built: Framework, shape: Shape, first: str, last: str) -> Taped:
    length = float(np.linalg.norm(shape.at[last] - shape.at[first]))
    slack = length * max(built.balloons[link.balloon].tie_within for link in built.links)
    return Taped(first, last, Span(length, length - slack, length + slack))


def _closed_inside(framework: Framework, shape: Shape) -> Iterator[str]:
    """The parts whose tube closes at a corner that leaves out inner joints, with room for who
    kneels before those."""
    for name, built in _built(framework):
        cell = next((cell for cell in reversed(built.cells) if cell.skipped), None)
        if not built.closed or cell is None or cell.inner <= cell.outer:
            continue
        ends = {built.braces[-1].number, built.braces[0].number}
        if not {cell.first, cell.second} & ends:
            continue
        held = [built.brace[n].section[0] for n in (cell.first, cell.second)]
        middle, at = (
            np.mean([shape.at[joint][:2] for joint in joints], axis=0)
            for joints in (held, cell.skipped)
        )
        spot = at + KNEELING_M * (at - middle) / np.linalg.norm(at - middle)
        away = np.array([shape.at[joint][:2] for joint in built.joints]) - spot
        if np.min(np.linalg.norm(away, axis=1)) >= KNEELING_M / 2:
            yield name


def _built(framework: Framework) -> list[tuple[str, Framework]]:
    """The parts by their names, or the piece itself, which is ""."""
    return [(part.name, part.framework) for part in framework.parts] or [("", framework)]


def _sides(framework: Framework, shape: Shape) -> Mapping[int, Side]:
    """The straight sides by their last brace, measured along the first chain of their braces."""
    found = {}
    for braces in _straight_runs(framework):
        knots = np.array([shape.at[brace.section[0]] for brace in braces])
        along = float(np.linalg.norm(np.diff(knots, axis=0), axis=1).sum())
        length = float(np.linalg.norm(knots[-1] - knots[0]))
        if length < STRAIGHTEST * along:
            continue
        slack = length * _within(framework, braces)
        first, last = braces[0].number, braces[-1].number
        found[last] = Side(first, last, Span(length, length - slack, length + slack))
    return found


def _heights(framework: Framework, shape: Shape) -> Mapping[str, Span]:
    """How high the knots of stacked rings are above the floor on which the lowest lies: of those
    that are level."""
    found = {}
    for _, built in _built(framework):
        rings = [long for long in built.chains if long.role == RING]
        for ring in rings[1:]:
            lowest, middle = (_ring_middle(shape, one) for one in (rings[0], ring))
            lying = built.balloons[built.link[rings[0].chain.links[0]].balloon].gauge_m / 2
            up = float(np.linalg.norm(middle - lowest))
            knots = (_places(shape, ring) - lowest) @ (middle - lowest) / up + lying
            if np.ptp(knots) > LEVEL * lying:
                continue
            height, low, high = (float(of(knots)) for of in (np.mean, np.min, np.max))
            within = max(built.balloons[link.balloon].tie_within for link in built.links)
            found[ring.letter] = Span(height, low - height * within, high + height * within)
    return found


def _places(shape: Shape, ring: LongChain) -> FloatArray:
    return np.array([shape.at[joint] for joint in ring.chain.joints])


def _ring_middle(shape: Shape, ring: LongChain) -> FloatArray:
    middle: FloatArray = np.mean(_places(shape, ring), axis=0)
    return middle


def _straight_runs(framework: Framework) -> Iterator[list[Brace]]:
    """The braces of each run of straight cells, in their order."""
    run: list[Brace] = []
    for cell in framework.cells:
        first, second = framework.brace[cell.first], framework.brace[cell.second]
        if cell.kind == STRAIGHT and cell.first < cell.second:
            run = [*run, second] if run and run[-1] is first else [first, second]
            continue
        if len(run) > FEWEST_CELLS:
            yield run
        run = []
    if len(run) > FEWEST_CELLS:
        yield run


def _within(framework: Framework, braces: list[Brace]) -> float:
    """The share by which the lengths of the chains about braces may differ."""
    joints = {joint for brace in braces for joint in brace.section}
    links = [link for link in framework.links if {link.start, link.finish} <= joints]
    return max(framework.balloons[link.balloon].tie_within for link in links)
