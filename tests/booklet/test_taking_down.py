"""Taking an event down: every piece in its turn, by the clock of the closing."""

from __future__ import annotations

import pytest
from shipped import book_of
from test_event import EVENT, books, plan, planned

from buildplan.booklet.common.book import Book
from buildplan.business.events.event_plan import EventPlan
from buildplan.business.events.taking_down import (
    DOWN_MINUTES,
    DownKind,
    Manner,
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
        assert [row.kind for row in own] == [*DownKind][1:], "it is untied while it is held"
        laid, let_out = own[1], own[2]
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


def test_what_was_built_standing_is_untied_while_it_is_held() -> None:
    """As on the pages of the piece itself: it is held while its ballast comes off, and then laid
    down (common practice, no source)."""
    piece = EVENT.designs[0].model_copy(update={"design": "slim_column.yaml", "count": 1})
    event = EVENT.model_copy(update={"designs": [piece]})
    rows = [
        row for row in taking_down(planned(event, [book_of("gallery/slim_column")])) if row.copy
    ]
    assert [row.kind for row in rows[:2]] == [DownKind.UNTIE, DownKind.LAY]
    assert {row.manner for row in rows} == {Manner.WHOLE}
