"""An event whose day by the clock is longer than anybody should work."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from pathlib import Path

from shipped import book_of

from buildplan.booklet.office.event_front import night_words
from buildplan.business.buying.shopping import ShoppedFor, shopping_list
from buildplan.business.events.day import day_of
from buildplan.business.events.event_plan import EventPlan, plan_event
from buildplan.design.event import Vehicle, read_event
from buildplan.language.voice import Voice

EVENT = read_event(Path(__file__).parents[2] / "designs" / "reopening.event.yaml")


def planned(crew: int, vehicles: Sequence[Vehicle] = EVENT.vehicles) -> EventPlan:
    books = [book_of(Path(piece.design).stem) for piece in EVENT.designs]
    asked = [
        ShoppedFor(piece.design, book.design, book.framework, piece.count)
        for piece, book in zip(EVENT.designs, books, strict=True)
    ]
    event = EVENT.model_copy(update={"crew": crew, "vehicles": list(vehicles)})
    return plan_event(event, books, shopping_list(asked), Voice())


def test_a_day_through_the_night_is_told() -> None:
    """From memory: directives on working time ask for 11 hours of rest in each 24."""
    assert not [*night_words(planned(4), Voice())]
    alone = planned(1)
    assert alone.opening - day_of(alone)[0].at > timedelta(hours=24 - 11)
    (told,) = night_words(alone, Voice())
    assert "more people" in told
