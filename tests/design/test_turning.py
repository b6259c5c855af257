"""How far a course turns, against plane geometry that does not come from the project."""

from __future__ import annotations

import math
import re
from collections import Counter

import pytest
from design_texts import RING, changed, only_problem, problems, read
from hypothesis import given, settings
from hypothesis import strategies as st

from buildplan.framework.cell_turns import FOLDED_DEG, OPENED_DEG
from buildplan.framework.cells import CELL_KINDS, CellKind, cell_kind
from buildplan.language.voice import Voice
from buildplan.patterns.closure import check_coming_round
from buildplan.patterns.course import cell_counts, cell_of
from buildplan.patterns.tube_keys import Repeat
from buildplan.patterns.turning import (
    FIXED_TOLERANCE_DEG,
    MOST_TOLERANCE_DEG,
    CourseTurn,
    SideLengths,
    cell_turn,
    comes_round,
    course_turn,
    inner_gauge_that_closes,
    tolerance_deg,
)
from buildplan.source.lengths import TIE_TO_TIE_PER_GAUGE
from buildplan.source.suggestions import Put, suggestion_words

EQUAL = SideLengths(outer=9.2, inner=9.2, brace=9.2, inner_gauge=8, inner_nominal=12)

# Machinery's Handbook, 31st ed., p. 82, "Formulas and Table for Regular Polygons": column R/S,
# circumradius over side, by the number of sides
CIRCUMRADIUS_PER_SIDE = {8: 1.3066, 10: 1.6180, 12: 1.9319, 16: 2.5629, 24: 3.8306, 48: 7.6449}


def course(*names: str) -> Counter[CellKind]:
    return Counter(cell_of(name) for name in names)


def test_cells_of_equal_lengths() -> None:
    # a square goes straight on; the angle of an equilateral triangle is 60 degrees
    assert cell_turn(cell_of("straight"), EQUAL) == CourseTurn(0, 0)
    fan, fan_in = cell_turn(cell_of("fan"), EQUAL), cell_turn(cell_of("fan_in"), EQUAL)
    assert fan.least_deg == fan.most_deg == pytest.approx(60)
    assert fan_in.least_deg == fan_in.most_deg == pytest.approx(-60)
    # a rhombus turns by its own angle
    tip, dip = cell_turn(cell_of("tip"), EQUAL), cell_turn(cell_of("dip"), EQUAL)
    assert tip.least_deg == pytest.approx(FOLDED_DEG)
    assert tip.most_deg == pytest.approx(OPENED_DEG)
    assert (dip.least_deg, dip.most_deg) == pytest.approx((-OPENED_DEG, -FOLDED_DEG))


@given(st.floats(1, 20), st.floats(11, 30))
@settings(max_examples=50)
def test_fan_against_the_cosine_rule(outer: float, brace: float) -> None:
    lengths = SideLengths(outer, 9.2, brace, 8, 12)
    expected = math.degrees(math.acos(1 - outer**2 / (2 * brace**2)))
    assert cell_turn(cell_of("fan"), lengths).most_deg == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize("sides", CIRCUMRADIUS_PER_SIDE)
def test_ring_of_straights_is_two_polygons_one_inside_the_other(sides: int) -> None:
    """Braces lie along the radii, so the two circumradii differ by one brace."""
    ratio = CIRCUMRADIUS_PER_SIDE[sides]
    brace = 9.2 if sides >= 16 else 4.6
    inner = (9.2 * ratio - brace) / ratio
    lengths = SideLengths(9.2, inner, brace, inner / TIE_TO_TIE_PER_GAUGE, 12)
    counts = {cell_of("straight"): sides}
    assert course_turn(counts, lengths).most_deg == pytest.approx(360, abs=0.05)
    assert comes_round(counts, lengths)


@pytest.mark.parametrize("sides", [n for n in CIRCUMRADIUS_PER_SIDE if n >= 16])
def test_inner_gauge_that_closes_against_the_handbook(sides: int) -> None:
    gauge = inner_gauge_that_closes({cell_of("straight"): sides}, EQUAL)
    ratio = CIRCUMRADIUS_PER_SIDE[sides]
    assert gauge == pytest.approx(8 * (ratio - 1) / ratio, abs=0.002)


@given(st.integers(0, 4), st.integers(0, 4), st.floats(5, 20), st.floats(5, 20), st.floats(5, 20))
@settings(max_examples=100)
def test_turning_is_mirrored_when_the_sides_are(
    m: int, n: int, outer: float, inner: float, brace: float
) -> None:
    turn = cell_turn(cell_kind(m, n), SideLengths(outer, inner, brace, 8, 12))
    mirrored = cell_turn(cell_kind(n, m), SideLengths(inner, outer, brace, 8, 12))
    assert turn.least_deg <= turn.most_deg
    assert (turn.least_deg, turn.most_deg) == pytest.approx(
        (-mirrored.most_deg, -mirrored.least_deg)
    )


@pytest.mark.parametrize(
    ("names", "closes"),
    [
        (["fan"] * 6 + ["straight"] * 12, True),
        (["fan"] * 6 + ["straight"] * 300, True),
        (["fan"] * 5 + ["straight"] * 12, False),
        (["fan"] * 5 + ["straight"] * 300, False),
        (["fan"] * 7 + ["straight"] * 12, False),
        (["straight"] * 12, False),
        (["straight"] * 1000, False),
        ((["straight"] * 3 + ["tip"] + ["straight"] * 3 + ["dip"]) * 5, True),
        ((["straight"] * 5 + ["tip"]) * 4, True),
        ((["straight"] * 5 + ["tip"]) * 2, False),
        ((["straight"] * 5 + ["tip"]) * 3, True),
        (["fan"] * 7 + ["fan_in"] + ["straight"] * 8, True),
    ],
)
def test_which_courses_come_round(names: list[str], closes: bool) -> None:
    assert comes_round(course(*names), EQUAL) is closes
    cells = tuple(map(cell_of, names))
    assert (not list(check_coming_round(cells, EQUAL, ()))) is closes


def test_tolerance_never_reaches_a_whole_fan() -> None:
    assert tolerance_deg(course("fan"), EQUAL) == FIXED_TOLERANCE_DEG
    assert tolerance_deg({cell_of("straight"): 10**6}, EQUAL) == MOST_TOLERANCE_DEG < 60


def test_five_fans_are_one_balloon_short_outside() -> None:
    problem = only_problem(changed(RING, ("repeat: 6", "repeat: 5")))
    assert (problem.line, problem.path) == (20, "build.tube.course")
    assert "turns 300 degrees" in Voice().tell(problem.message)
    assert "must turn 360" in Voice().tell(problem.message)
    assert "the outer side is about 1 balloon short" in Voice().tell(problem.message)
    assert "add 1 fan cell" in suggestion_words(problem.suggestion, Voice())


def test_seven_fans_are_one_balloon_short_inside() -> None:
    problem = only_problem(changed(RING, ("repeat: 6", "repeat: 7")))
    assert "turns 420 degrees" in Voice().tell(problem.message)
    assert "the inner side is about 1 balloon short" in Voice().tell(problem.message)
    assert "take out 1 fan cell" in suggestion_words(problem.suggestion, Voice())


def test_all_straight_is_six_balloons_short_outside() -> None:
    text = changed(RING, ("repeat: 6", "repeat: 40"), ("straight, fan", "straight"))
    problem = only_problem(text)
    assert "turns 0 degrees" in Voice().tell(problem.message)
    assert "the outer side is about 6 balloons short" in Voice().tell(problem.message)
    assert "add 6 fan cells" in suggestion_words(problem.suggestion, Voice())
    # Machinery's Handbook has no 40-gon: R = s / (2 sin(180 / n)), the formula on that page
    ratio = 1 / (2 * math.sin(math.pi / 40))
    assert f"to {8 * (ratio - 1) / ratio:.3g} instead of 8" in suggestion_words(
        problem.suggestion, Voice()
    )


def test_inner_gauge_that_is_suggested_closes_the_ring() -> None:
    text = changed(RING, ("repeat: 6", "repeat: 40"), ("straight, fan", "straight"))
    gauge = re.search(
        r"to ([0-9.]+) instead", suggestion_words(only_problem(text).suggestion, Voice())
    )
    assert gauge
    inner = f"  inner: {{kind: link, nominal: 12, inflate_to: {gauge[1]}, "
    smaller = changed(
        text,
        ("  lock: ", inner + 'colour: "#000000", label: black}\n  lock: '),
        ("long: long\n", "long: {A: long, B: inner, C: inner, D: long}\n"),
    )
    assert not problems(smaller)


def test_course_that_bends_the_wrong_way() -> None:
    problem = only_problem(changed(RING, ("straight, fan", "straight, fan_in")))
    assert "turns -360 degrees" in Voice().tell(problem.message)
    assert "swap fan with fan_in" in suggestion_words(problem.suggestion, Voice())


def test_open_course_may_turn_as_it_likes() -> None:
    assert not problems(
        changed(RING, ("repeat: 6", "repeat: 3"), ("closed: true", "closed: false"))
    )


def test_colour_pattern_of_other_lengths_counts_in_the_mean() -> None:
    # half the inner links at gauge 5.5: the mean of 8 and 5.5 closes a ring of forty
    text = changed(
        RING,
        ("repeat: 6", "repeat: 40"),
        ("straight, fan", "straight"),
        (
            "  lock: ",
            '  small: {kind: link, nominal: 12, inflate_to: 5.5, colour: "#000000", label: b}\n'
            "  lock: ",
        ),
    )
    assert problems(text)
    assert not problems(text + "colour_pattern: {B: [long, small], C: [small, long]}\n")


@given(
    st.lists(st.sampled_from(sorted(CELL_KINDS)), max_size=14),
    st.integers(0, 60),
    st.floats(6, 12),
)
@settings(max_examples=150)
def test_whatever_is_suggested_brings_the_course_round(
    names: list[str], straights: int, inner: float
) -> None:
    cells = tuple(map(cell_of, [*names, *["straight"] * straights]))
    counts = Counter(cells)
    lengths = SideLengths(9.2, inner, 9.2, inner / TIE_TO_TIE_PER_GAUGE, 12)
    for mistake in check_coming_round(cells, lengths, ("course",)):
        for way in mistake.suggestion.ways:
            (put,) = way.changes
            assert isinstance(put, Put)
            made = Repeat.model_validate({"repeat": 1, "cells": put.value})
            assert comes_round(cell_counts([made]), lengths)
        for act, number, name in re.findall(
            r"(add|take out) (\d+) (\w+) cell", suggestion_words(mistake.suggestion, Voice())
        ):
            signed = int(number) if act == "add" else -int(number)
            tried = Counter(counts)
            tried[cell_of(name)] += signed
            assert tried[cell_of(name)] >= 0
            assert comes_round(tried, lengths)
        for gauge in re.findall(
            r"to ([0-9.]+) instead", suggestion_words(mistake.suggestion, Voice())
        ):
            sized = float(gauge) * TIE_TO_TIE_PER_GAUGE
            assert float(gauge) <= 12
            assert comes_round(counts, SideLengths(9.2, sized, 9.2, float(gauge), 12))


def test_measured_lengths_replace_the_estimate() -> None:
    # tie-to-tie measured 9.0 for the chains and 9.2 estimated for the braces: a fan turns less
    text = changed(RING, ("    label: deep", "    tie_to_tie: 7\n    label: deep"))
    problem = only_problem(text)
    turn = 6 * math.degrees(math.acos(1 - 7**2 / (2 * (8 * 1.15) ** 2)))
    assert f"turns {turn:.0f} degrees" in Voice().tell(problem.message)
    assert read(RING)
