"""Taking an event down: every piece in its turn, by the clock of the closing."""

from __future__ import annotations

import pytest
from test_event import EVENT, books, plan, planned

from buildplan.booklet.common.book import Book
from buildplan.business.events.event_plan import EventPlan
from buildplan.business.events.taking_down import (
    DOWN_MINUTES,
    DownKind,
    away_by,
    minutes_down,
    taking_down,
)
from buildplan.sequence.timetable import RESERVE

__all__ = ["books", "plan"]


def test_taking_down_has_a_row_for_each_piece_and_no_gap(plan: EventPlan) -> None:
    rows = taking_down(plan)
    assert {row.copy.name for row in rows if row.copy} == {copy.name for copy in plan.copies}
    assert [row.start for row in rows[1:]] == pytest.approx(
        [row.start + row.minutes for row in rows[:-1]]
    )
    for copy in plan.copies:
        own = [row for row in rows if row.copy is copy]
        assert [row.kind for row in own] == [*DownKind][1:], "it lies flat before it is untied"
        laid, let_out = own[0], own[2]
        assert laid.people == copy.people
        share = let_out.minutes * plan.event.crew / copy.book.facts.total
        assert share == pytest.approx((1 + RESERVE) * DOWN_MINUTES[DownKind.LET_OUT])


def test_taking_down_goes_by_the_clock_of_the_closing(books: list[Book]) -> None:
    late = EVENT.model_copy(update={"closing": "23:30", "taking_down": {"clear": 60}})
    planned_late = planned(late, books)
    times = away_by(planned_late)
    assert times is not None
    begins, away = times
    assert f"{begins:%H:%M}" == "23:30"
    assert (away - begins).total_seconds() / 60 == pytest.approx(
        minutes_down(taking_down(planned_late)) + late.unloading
    )
    assert taking_down(planned_late)[0].minutes == pytest.approx(60 * (1 + RESERVE))
    assert away_by(planned(EVENT.model_copy(update={"closing": None}), books)) is None
    past_midnight = away_by(planned(EVENT.model_copy(update={"closing": "01:00"}), books))
    assert past_midnight is not None
    assert past_midnight[0] > planned_late.opening
