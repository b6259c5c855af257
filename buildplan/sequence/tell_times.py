"""A timetable in words and in plain data."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime
from typing import Any

from buildplan.sequence.timetable import RESERVE, Place, Timetable, people_at, waiting_minutes
from buildplan.sequence.words import times as words


def timetable_lines(planned: Timetable) -> list[str]:
    """The timetable in words, a line each."""
    lines: list[str] = []
    for part in planned.parts:
        people = len(planned.crew)
        lines.append(words.part(str(part.place), people, part.minutes, part.work, part.critical))
        for span in part.spans:
            name = planned.crew[span.person].name
            waits = span.finish - span.start - span.work
            lines.append("  " + words.span(name, span.start, span.finish, span.steps, waits))
        for person, waited in waiting_minutes(part).items():
            found = (w.for_person for w in part.waits if w.person == person)
            names = [planned.crew[i].name for i in sorted({i for i in found if i is not None})]
            lines.append("  " + words.waiting(planned.crew[person].name, waited, names))
    lines += [words.too_few(step, people) for step, people in planned.short_of.items()]
    return lines


def steps_with_times(
    steps: Iterable[Mapping[str, Any]], planned: Timetable
) -> list[dict[str, Any]]:
    """Steps as `exchange.steps_as_json` gives them, each with the `place` where it is done, its
    `starts` and `ends` (minutes from the start of the work there, to the second) and the
    names of the `people` who do it."""
    timed = []
    for step in steps:
        number = step["number"]
        part = next(part for part in planned.parts if number in part.step_times)
        starts, ends = part.step_times[number]
        people = [planned.crew[i].name for i in people_at(part, number)]
        times = {"starts": round(starts, 2), "ends": round(ends, 2), "people": people}
        timed.append({**step, "place": str(part.place), **times})
    return timed


def start_lines(starts: Mapping[Place, datetime]) -> list[str]:
    """The latest moments to start, a line each, and what they hold back."""
    lines = [words.start_by(str(place), start) for place, start in starts.items()]
    return [*lines, words.reserve(RESERVE)]
