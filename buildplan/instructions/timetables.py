"""A timetable in words and in plain data."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime
from typing import Any

from buildplan.instructions import times as words
from buildplan.language.voice import Voice
from buildplan.sequence.labour import MINUTES, PER, Learned
from buildplan.sequence.model import Kind
from buildplan.sequence.timetable import RESERVE, Timetable, WorkPlace, people_at, waiting_minutes


def timetable_lines(voice: Voice, planned: Timetable) -> list[str]:
    """The timetable in words, a line each."""
    lines: list[str] = []
    called = [words.person_name(voice, person.number) for person in planned.crew]
    for part in planned.parts:
        people = len(planned.crew)
        lines.append(words.part(voice, part.place, people, part.minutes, part.work, part.critical))
        for span in part.spans:
            name = called[span.person]
            waits = span.finish - span.start - span.work
            lines.append("  " + words.span(voice, name, span.start, span.finish, span.steps, waits))
        for person, waited in waiting_minutes(part).items():
            found = (w.for_person for w in part.waits if w.person == person)
            names = [
                words.person_name(voice, planned.crew[i].number)
                for i in sorted({i for i in found if i is not None})
            ]
            lines.append(
                "  "
                + words.waiting(
                    voice, words.person_name(voice, planned.crew[person].number), waited, names
                )
            )
    lines += [words.too_few(voice, step, people) for step, people in planned.short_of.items()]
    return lines


def steps_with_times(
    steps: Iterable[Mapping[str, Any]], planned: Timetable, voice: Voice
) -> list[dict[str, Any]]:
    """Steps as `exchange.steps_as_json` gives them, each with the `place` where it is done, its
    `starts` and `ends` (minutes from the start of the work there, to the second) and the
    names of the `people` who do it."""
    timed = []
    for step in steps:
        number = step["number"]
        part = next(part for part in planned.parts if number in part.step_times)
        starts, ends = part.step_times[number]
        people = [words.person_name(voice, planned.crew[i].number) for i in people_at(part, number)]
        times = {"starts": round(starts, 2), "ends": round(ends, 2), "people": people}
        timed.append({**step, "place": str(part.place), **times})
    return timed


def start_lines(voice: Voice, starts: Mapping[WorkPlace, datetime]) -> list[str]:
    """The latest moments to start, a line each, and what they hold back."""
    lines = [words.start_by(voice, place, start) for place, start in starts.items()]
    return [*lines, words.reserve(voice, RESERVE)]


def labour_lines(voice: Voice, learned: Mapping[Kind, Learned]) -> list[str]:
    """What a log has taught, as a `labour` block to paste into a design file."""
    lines = ["labour:"]
    for kind, one in learned.items():
        said = words.learned(voice, one.minutes, PER[kind], one.rows, one.count, MINUTES[kind])
        lines.append(f"  {kind}: {one.minutes:.4g}  # {said}")
    return lines
