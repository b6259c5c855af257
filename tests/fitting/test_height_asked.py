"""The height that is asked for is that of the piece standing, within 3 %, whatever the outline."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from buildplan.design.measures import Units
from buildplan.fitting import fitting
from buildplan.fitting.courses import Course
from buildplan.fitting.drafting import Task
from buildplan.fitting.fit import Fit
from buildplan.fitting.following import tasks_for
from buildplan.fitting.outlines import named_outline
from buildplan.fitting.solving import solve
from buildplan.fitting.sources import LEAST_GAUGE_IN, MOST_GAUGE_IN
from buildplan.fitting.standing_fit import judged
from buildplan.fitting.tube_design import gauges_for_height, gauges_from
from buildplan.language.voice import Voice

# a star whose piece is 6 % lower than the outline with links of 6 inches
POINTED = Course(first=11, cells=(4,), last=8, mirrored=True, fold=5)


@given(
    given=st.floats(LEAST_GAUGE_IN, MOST_GAUGE_IN),
    factor=st.floats(0.8, 1.25),
    units=st.sampled_from(["in", "cm"]),
)
def test_there_are_gauges_for_every_height(given: float, factor: float, units: Units) -> None:
    """Every length of a piece goes with its gauges, so those bring it to within 2.5 %."""
    gauge = round(4 * given) / 4 if units == "in" else round(5.08 * given) / 2
    found = gauges_for_height(gauges_from(gauge, units), factor)
    assert found.long == pytest.approx(gauge * factor, rel=0.0255)
    # templates are made to eighths of an inch, or quarters of a centimetre (common practice, no
    # source)
    assert (found.long * (8 if units == "in" else 4)).is_integer()


def test_what_is_far_from_its_height_keeps_its_gauges() -> None:
    """A disc with hair-thin spikes would become a disc twice as large."""
    gauges = gauges_from(6.0)
    assert gauges_for_height(gauges, 2.0) == gauges
    assert gauges_for_height(gauges, 0.5) == gauges


@pytest.fixture(scope="module")
def low() -> Fit:
    """That star, judged: whose links of 6 inches make it too low."""
    star = named_outline("star", 1.2)
    task = next(one for one in tasks_for(star, gauges_from(6.0), Voice()) if one.symmetry.fold == 5)
    assert isinstance(task, Task)
    solved = solve(task, POINTED)
    assert solved is not None
    assert solved.height_share < 0.95
    fit = judged(solved)
    assert fit is not None
    return fit


def test_a_course_that_comes_out_low_is_made_of_larger_links(low: Fit) -> None:
    assert low.gauges.long > 6.0
    assert low.height_m == pytest.approx(1.2, rel=0.03)
    assert low.as_high
    assert low.buildable


def test_one_that_is_not_as_high_keeps_no_other_out(low: Fit) -> None:
    """However close it comes with however few balloons, it is the other that is written; it is
    shown all the same."""
    taller = low.outline.scaled(1.04)
    off = replace(low, outline=taller, close=replace(low.close, overlap=0.99))
    assert not off.as_high
    assert fitting.recommended([low, off]) is low
    shown = fitting._worth_showing([off, low])
    assert any(fit is low for fit in shown)
    assert any(fit is off for fit in shown)
    assert [fit is off for fit in fitting._worth_showing([off])] == [True]
