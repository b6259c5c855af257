"""The day of an event by the clock: when each part of it begins at the latest."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import Enum, auto

from buildplan.business.events.event_plan import EventPlan
from buildplan.language.voice import Voice
from buildplan.sequence.timetable import WorkPlace


class DayStep(Enum):
    """What begins at a moment of the day."""

    WORKSHOP = auto()
    LOAD = auto()
    LEAVE = auto()
    UNLOAD = auto()
    BACK = auto()
    SITE = auto()
    OPEN = auto()


@dataclass(frozen=True)
class Moment:
    """When a part of the day begins at the latest, and how many minutes it takes; what stands at
    the opening takes none. `trip` is which of the vehicles' trips it belongs to, from 1."""

    step: DayStep
    at: datetime
    minutes: float
    trip: int = 1


def day_of(plan: EventPlan) -> tuple[Moment, ...]:
    """The moments of the day in their order, counted back from the opening; a way or a loading of
    no minutes is left out. Work has its reserve in it."""
    event, opening = plan.event, plan.opening
    lasts = {part.place: part.minutes for part in plan.timetable.parts}
    site = plan.starts.get(WorkPlace.SITE, opening)
    found: list[Moment] = []
    at = site
    for trip in range(plan.trips, 0, -1):
        steps = [
            (DayStep.UNLOAD, event.unloading),
            (DayStep.LEAVE, event.travel),
            (DayStep.LOAD, event.loading),
            *([(DayStep.BACK, event.travel)] if trip > 1 else []),
        ]
        for step, minutes in steps:
            at -= timedelta(minutes=minutes)
            if minutes:
                found.append(Moment(step, at, minutes, trip))
    for place, step in ((WorkPlace.WORKSHOP, DayStep.WORKSHOP), (WorkPlace.SITE, DayStep.SITE)):
        if place in plan.starts:
            found.append(Moment(step, plan.starts[place], lasts[place]))
    found.append(Moment(DayStep.OPEN, opening, 0.0))
    return tuple(sorted(found, key=lambda moment: (moment.at, moment.trip, moment.step.value)))


def moment_words(moment: datetime, opening: datetime, voice: Voice) -> str:
    """A time of day as seen from the day of the opening: `07:40`, `the day before, 16:05`."""
    days = (opening.date() - moment.date()).days
    time = f"{moment:%H:%M}"
    if days == 0:
        return time
    if days == 1:
        return voice.say("the day before, {time}", time=time)
    return voice.say("{days} days before, {time}", days=days, time=time)


def five_minutes_before(moment: datetime) -> datetime:
    """The whole five minutes at or before a moment: a time to start is never put later."""
    return moment.replace(minute=moment.minute - moment.minute % 5, second=0, microsecond=0)
