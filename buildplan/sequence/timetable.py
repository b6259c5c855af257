"""Who does what when: the steps of a piece shared among a crew.

What can be carried (sized balloons, pairs, chains) may be made beforehand in the workshop;
closing, laying and all that follows is done where the piece will stand.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from math import fsum

from buildplan.language.messages import message
from buildplan.language.told import ToldError
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.network import INFLATE, TIE, Activity
from buildplan.sequence.scheduling import Assignment, Person, Schedule, schedule, ways_to_the_end
from buildplan.sequence.shared_work import Work, activities_of, prepared_first, works_of

# Held back for breaks, bursts and mistakes, as a share of the time worked out. From memory.
RESERVE = 0.15
# People stay at one work unless something else is more pressing by this share of the whole.
GRAIN, GRAIN_OF_SEVERAL = 0.1, 0.02  # of one piece; of several, whose whole is longer
# Minutes: work shorter than this is told together with what follows it.
SHORT = 2.0


class WorkPlace(StrEnum):
    """Where work is done."""

    WORKSHOP = "workshop"
    SITE = "site"


@dataclass(frozen=True)
class WorkSpan:
    """A person at the same work for a while: step numbers, from start to finish, how much of
    that time they work (the rest they wait), and the kinds of work they do. Minutes from the
    start of the part."""

    person: int
    steps: tuple[int, ...]
    start: float
    finish: float
    work: float
    kinds: tuple[Kind, ...] = ()


@dataclass(frozen=True)
class Wait:
    """A person with nothing to start, until somebody (a place in the crew) had finished a
    step. `for_person` is None when they waited only for enough people to be free."""

    person: int
    start: float
    finish: float
    for_person: int | None
    step: int


@dataclass(frozen=True)
class PlaceWork:
    """The work at one place. `minutes` is how long the crew takes, `work` the minutes of work
    of all people together, `critical` how long it would take with hands enough."""

    place: WorkPlace
    minutes: float
    work: float
    critical: float
    spans: tuple[WorkSpan, ...]
    waits: tuple[Wait, ...]
    step_times: Mapping[int, tuple[float, float]]


@dataclass(frozen=True)
class Timetable:
    """A crew's work, part by part. `short_of` names steps that take more people than the crew
    has, with that number: help has to be called for them."""

    crew: tuple[Person, ...]
    parts: tuple[PlaceWork, ...]
    short_of: Mapping[int, int]

    @property
    def minutes(self) -> float:
        """All parts, one after another."""
        return fsum(part.minutes for part in self.parts)


def crew_of(people: int, inflate_only: int = 0) -> tuple[Person, ...]:
    """`people` in all, of whom the last `inflate_only` cannot tie. Raises ToldError unless
    at least one can."""
    if not 0 <= inflate_only < people:
        raise ToldError(message("a crew needs at least one who can tie"))
    able = [Person(i + 1) for i in range(people - inflate_only)]
    helping = [Person(i + 1, frozenset({INFLATE})) for i in range(people - inflate_only, people)]
    return (*able, *helping)


def timetable(
    steps: Sequence[Step],
    crew: Sequence[Person],
    minutes: Mapping[str, float],
    in_workshop: bool = True,
    piece_of: Mapping[int, str] | None = None,
    built: Collection[str] = (),
) -> Timetable:
    """Share the operations of `steps` among `crew`. `minutes` replaces remembered times by
    kind (see `labour`); without `in_workshop` all is done on site, in one part. `piece_of`
    names the piece of each step, by its number, when several are built at once; those of `built`
    are built in the workshop and only stood up on site."""
    everyone_ties = all(TIE in person.skills for person in crew)
    works = prepared_first(works_of(steps, everyone_ties, piece_of or {}), built)
    places = [WorkPlace.WORKSHOP, WorkPlace.SITE] if in_workshop else [WorkPlace.SITE]
    parts = []
    for place in places:
        here = [
            work
            for work in works
            if not in_workshop or (place is WorkPlace.WORKSHOP) == _beforehand(work, built)
        ]
        if here:
            grain = GRAIN_OF_SEVERAL if piece_of else GRAIN
            parts.append(_part(place, here, crew, minutes, grain))
    short_of = {work.step: work.people for work in works if work.people > len(crew)}
    return Timetable(tuple(crew), tuple(parts), short_of)


def _beforehand(work: Work, built: Collection[str]) -> bool:
    """Whether work is done in the workshop where there is one."""
    return work.portable or (work.piece in built and work.kind is not Kind.STAND_UP)


def _part(
    place: WorkPlace,
    works: Sequence[Work],
    crew: Sequence[Person],
    minutes: Mapping[str, float],
    grain: float,
) -> PlaceWork:
    activities = activities_of(works, crew, minutes)
    critical = max(ways_to_the_end(activities).values(), default=0.0)
    work = fsum(activity.minutes * activity.people for activity in activities)
    planned = schedule(activities, crew, grain * max(critical, work / len(crew)))
    work_of = {work.id: work for work in works}
    return PlaceWork(
        place=place,
        minutes=planned.minutes,
        work=work,
        critical=critical,
        spans=_spans(planned, work_of, len(crew)),
        waits=_waits(planned, {a.id: a for a in activities}, work_of, len(crew)),
        step_times=_step_times(planned, work_of),
    )


def _by_person(planned: Schedule, people: int) -> list[list[Assignment]]:
    mine: list[list[Assignment]] = [[] for _ in range(people)]
    for assignment in planned.assignments:
        for person in assignment.people:
            mine[person].append(assignment)
    return mine


def _spans(planned: Schedule, work_of: Mapping[str, Work], people: int) -> tuple[WorkSpan, ...]:
    """Each person's activities put together: those of one block, and short ones that follow
    one another at one piece."""
    spans: list[WorkSpan] = []
    for person, assignments in enumerate(_by_person(planned, people)):
        block, piece = 0, ""
        for one in assignments:
            work = work_of[one.activity]
            kinds = tuple(dict.fromkeys(op.kind for op in work.operations))
            new = WorkSpan(person, work.steps, one.start, one.finish, one.finish - one.start, kinds)
            short = block and max(_length(spans[-1]), _length(new)) < SHORT
            if block == work.block or (short and piece == work.piece):
                spans[-1] = _together(spans[-1], new)
            else:
                spans.append(new)
            block, piece = work.block, work.piece
    return tuple(spans)


def _length(span: WorkSpan) -> float:
    return span.finish - span.start


def _together(one: WorkSpan, other: WorkSpan) -> WorkSpan:
    steps = tuple(sorted({*one.steps, *other.steps}))
    kinds = tuple(dict.fromkeys((*one.kinds, *other.kinds)))
    return WorkSpan(one.person, steps, one.start, other.finish, one.work + other.work, kinds)


def _waits(
    planned: Schedule,
    activities: Mapping[str, Activity],
    work_of: Mapping[str, Work],
    people: int,
) -> tuple[Wait, ...]:
    done = {assignment.activity: assignment for assignment in planned.assignments}
    waits = []
    for person, assignments in enumerate(_by_person(planned, people)):
        free_since = 0.0
        for one in assignments:
            if one.start > free_since:
                held = [done[n] for n in activities[one.activity].needs]
                last = max(held, key=lambda before: before.finish, default=None)
                if last is not None and last.finish >= one.start:
                    waits.append(
                        Wait(
                            person,
                            free_since,
                            one.start,
                            last.people[0],
                            work_of[last.activity].step,
                        )
                    )
                else:
                    step = work_of[one.activity].step
                    waits.append(Wait(person, free_since, one.start, None, step))
            free_since = one.finish
    return tuple(waits)


def _step_times(
    planned: Schedule, work_of: Mapping[str, Work]
) -> Mapping[int, tuple[float, float]]:
    times: dict[int, tuple[float, float]] = {}
    for one in planned.assignments:
        for number in work_of[one.activity].steps:
            start, finish = times.get(number, (one.start, one.finish))
            times[number] = (min(start, one.start), max(finish, one.finish))
    return dict(sorted(times.items()))


def latest_starts(
    planned: Timetable,
    opening: datetime,
    travel: timedelta = timedelta(0),
    reserve: float = RESERVE,
) -> Mapping[WorkPlace, datetime]:
    """The latest moment to start each part so that the piece stands at `opening`: each part
    with its reserve, `travel` between workshop and site."""
    end, starts = opening, {}
    for part in reversed(planned.parts):
        starts[part.place] = end - timedelta(minutes=part.minutes * (1 + reserve))
        end = starts[part.place] - travel
    return {part.place: starts[part.place] for part in planned.parts}


def waiting_minutes(part: PlaceWork) -> Mapping[int, float]:
    """How long each person waits between their first and their last work."""
    waited: dict[int, float] = {}
    for wait in part.waits:
        waited[wait.person] = waited.get(wait.person, 0.0) + wait.finish - wait.start
    return waited


def people_at(part: PlaceWork, step: int) -> tuple[int, ...]:
    """Who works at a step."""
    return tuple(sorted(work_at(part, step)))


def work_at(part: PlaceWork, step: int) -> Mapping[int, tuple[Kind, ...]]:
    """The kinds of work that each person does while they are at a step."""
    found: dict[int, tuple[Kind, ...]] = {}
    for span in part.spans:
        if step in span.steps:
            found[span.person] = (*found.get(span.person, ()), *span.kinds)
    return found
