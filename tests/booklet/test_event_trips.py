"""An event whose vehicles go more than once: what goes when, and the day that comes of it."""

from __future__ import annotations

from datetime import timedelta
from itertools import pairwise

from page_words import words_of_pages
from test_event_night import EVENT, planned

from buildplan.booklet.office.event_booklet import print_event
from buildplan.business.events.day import DayStep, day_of
from buildplan.business.events.loading import load_of, on_trips
from buildplan.business.events.stowing import in_place
from buildplan.design.event import Vehicle
from buildplan.document.paper import PAPERS
from buildplan.language.voice import Voice
from buildplan.sequence.timetable import WorkPlace

VAN = Vehicle(name="van", length=260, width=150, height=140)


def test_what_finds_no_place_goes_on_a_later_trip_and_the_day_begins_earlier() -> None:
    once = planned(4, [VAN])
    load = load_of(once, Voice())
    assert load.trips == 2
    assert not load.left
    each = [box for trip in (1, 2) for box in load.on_trip(trip)]
    assert sorted(each, key=repr) == sorted(load.boxes, key=repr), "every box on one trip"
    assert all(in_place(stowed, load.rooms) for stowed in (load.stowed, *load.later))

    twice = on_trips(once, load)
    assert on_trips(twice, load) == twice
    more = timedelta(minutes=EVENT.travel + EVENT.loading + EVENT.travel + EVENT.unloading)
    assert twice.starts[WorkPlace.SITE] == once.starts[WorkPlace.SITE]
    assert twice.starts[WorkPlace.WORKSHOP] == once.starts[WorkPlace.WORKSHOP] - more
    trip = [DayStep.LOAD, DayStep.LEAVE, DayStep.UNLOAD]
    day = day_of(twice)
    way = [one for one in day if one.step in (*trip, DayStep.BACK)]
    assert [one.step for one in way] == [*trip, DayStep.BACK, *trip]
    for one, following in pairwise([*way, *(one for one in day if one.step is DayStep.SITE)]):
        assert one.at + timedelta(minutes=one.minutes) == following.at

    front = words_of_pages(print_event(once, PAPERS["a4"], Voice()))[0]
    assert "Drive back for trip 2" in front
    assert f"Trip 2 of 2, load {len(load.on_trip(2))} boxes" in front


def test_a_vehicle_that_would_go_all_day_is_not_planned_with() -> None:
    cart = Vehicle(name="cart", length=100, width=60, height=60)
    assert load_of(planned(4, [cart]), Voice()).trips == 1
