"""Who does what when at an event: a row for each job, without a break in it, and the way."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from datetime import timedelta

from reportlab.platypus import Flowable

from buildplan.booklet.crew.times import act_words, place_name, place_word
from buildplan.booklet.office.event_chart import chart, clock, legend
from buildplan.booklet.office.event_down import down_rows
from buildplan.business.events.day import (
    DayStep,
    Moment,
    day_of,
    five_minutes_before,
    moment_words,
)
from buildplan.business.events.event_plan import Copy, EventPlan
from buildplan.document.blocks import Shown, Words, heading
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, STRONG, plain, strong
from buildplan.instructions.jobs import job_title
from buildplan.language.phrases import people_counted
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import Job
from buildplan.sequence.stretches import Stretch, stretches
from buildplan.sequence.timetable import PlaceWork, WorkPlace
from buildplan.source.csv_text import Cell

CLOSE_ROWS = 3.0


@dataclass(frozen=True)
class TimedJob:
    """A job of a piece, worked at without a break. `number` is its row's throughout the event, in
    the order in which rows begin; one that is taken up again is `turn` of `turns`. The piece's crew
    booklet knows it by `stretch.job.number`."""

    number: int
    copy: Copy
    stretch: Stretch
    turn: int
    turns: int


def timed(plan: EventPlan, part: PlaceWork) -> list[TimedJob]:
    """All work of a part, of every piece, in the order in which it begins."""
    found: list[TimedJob] = []
    number = 0
    for one in plan.timetable.parts:
        rows = stretches(one, [copy.jobs for copy in plan.copies])
        turns = Counter((row.piece, row.job.number) for row in rows)
        seen: Counter[tuple[int, int]] = Counter()
        for row in rows:
            number += 1
            key = (row.piece, row.job.number)
            seen[key] += 1
            if one is part:
                found.append(TimedJob(number, plan.copies[row.piece], row, seen[key], turns[key]))
    return found


def times_blocks(plan: EventPlan, measure: float, voice: Voice) -> list[Flowable]:
    """Each part of the work as a chart and a table, and the way between them."""
    blocks: list[Flowable] = []
    for part in plan.timetable.parts:
        if part.place is WorkPlace.SITE:
            blocks += _way(plan, voice)
        blocks += _part(plan, part, measure, voice)
    for step, people in plan.timetable.short_of.items():
        copy, job = _job_of(plan, step)
        words = voice.say(
            "{piece}, {job} ({number}): takes {people} people. Call for help.",
            piece=copy.name,
            job=job_title(voice, job, copy.told),
            number=job.number,
            people=people,
        )
        blocks.append(Words(plain(words), STRONG))
    blocks.append(
        Words(
            voice.say(
                "Times count back from the opening and are the latest (estimates). The job's "
                "number in brackets is that of the piece's crew booklet. Who has nothing to start "
                "holds the work, hands on locks and picks up."
            ),
            SMALL,
        )
    )
    return blocks


def _title(one: TimedJob, voice: Voice) -> str:
    """What the row is called: `Locks (2)`, `Size and pair (1), part 2 of 3`."""
    job = one.stretch.job
    named = voice.say(
        "{job} ({number})", job=job_title(voice, job, one.copy.told), number=job.number
    )
    if one.turns == 1:
        return named
    return voice.say("{job}, part {turn} of {turns}", job=named, turn=one.turn, turns=one.turns)


def _job_of(plan: EventPlan, number: int) -> tuple[Copy, Job]:
    return next(
        (copy, job)
        for copy in plan.copies
        for job in copy.jobs
        if any(step.number == number for step in job.steps)
    )


def _way(plan: EventPlan, voice: Voice) -> list[Flowable]:
    """Loading, the way and unloading, as rows."""
    moments = way_moments(plan)
    if not moments:
        return []
    rows = tuple(
        (_from_to(plan, moment, voice), plain(_way_words(moment, voice))) for moment in moments
    )
    return [
        heading(voice.say("On the way")),
        Grid((voice.say("When"), voice.say("What")), rows, (130, 350), pad=CLOSE_ROWS),
    ]


def way_moments(plan: EventPlan) -> list[Moment]:
    """Loading, the way and unloading, as far as they take any time."""
    on_the_way = (DayStep.BACK, DayStep.LOAD, DayStep.LEAVE, DayStep.UNLOAD)
    return [moment for moment in day_of(plan) if moment.step in on_the_way]


def _from_to(plan: EventPlan, moment: Moment, voice: Voice) -> str:
    starts = five_minutes_before(moment.at)
    first = moment_words(starts, plan.opening, voice)
    return f"{first} – {clock(starts, moment.minutes)}"


def _way_words(moment: Moment, voice: Voice) -> str:
    match moment.step:
        case DayStep.LOAD:
            return voice.say("Load the vehicles, by the load list")
        case DayStep.LEAVE:
            return voice.say("On the way")
        case DayStep.BACK:
            return voice.say("Back to load again")
        case _:
            return voice.say("Park, measure the doors, carry in")


def _part(plan: EventPlan, part: PlaceWork, measure: float, voice: Voice) -> list[Flowable]:
    starts = five_minutes_before(plan.starts[part.place])
    rows = tuple(
        (
            strong(voice.whole(one.number)),
            f"{clock(starts, one.stretch.start)} – {clock(starts, one.stretch.finish)}",
            plain(one.copy.name),
            plain(_title(one, voice)),
            plain(act_words(one.stretch.acts, voice)),
        )
        for one in timed(plan, part)
    )
    begins = moment_words(starts, plan.opening, voice)
    picture = chart(plan, part, measure, voice)
    return [
        heading(
            voice.say(
                "{part}, from {time}: {people}",
                part=place_name(part.place, voice),
                time=begins,
                people=people_counted(voice, plan.event.crew),
            )
        ),
        Shown(picture),
        Words(legend(plan, picture, voice), SMALL, after=8),
        Grid(
            (
                voice.say("No."),
                voice.say("When"),
                voice.say("Piece"),
                voice.say("Job"),
                voice.say("Who"),
            ),
            rows,
            (26, 76, 122, 118, 138),
            pad=CLOSE_ROWS,
        ),
    ]


def timetable_rows(plan: EventPlan, voice: Voice) -> list[list[Cell]]:
    """The timetable as rows of a table, the head first. Minutes count from the start of the
    part, clock times from when it must start at the latest."""
    head = (
        voice.say_in("column", "no"),
        voice.say_in("column", "place"),
        voice.say_in("column", "from"),
        voice.say_in("column", "to"),
        voice.say_in("column", "start min"),
        voice.say_in("column", "end min"),
        voice.say_in("column", "piece"),
        voice.say_in("column", "job"),
        voice.say_in("column", "title"),
        voice.say_in("column", "who"),
    )
    rows: list[list[Cell]] = [list(head)]
    for part in plan.timetable.parts:
        if part.place is WorkPlace.SITE:
            rows += [_way_row(moment, voice) for moment in way_moments(plan)]
        starts = five_minutes_before(plan.starts[part.place])
        rows += [
            [
                one.number,
                place_word(part.place, voice),
                clock(starts, one.stretch.start),
                clock(starts, one.stretch.finish),
                round(one.stretch.start),
                round(one.stretch.finish),
                one.copy.name,
                one.stretch.job.number,
                job_title(voice, one.stretch.job, one.copy.told),
                act_words(one.stretch.acts, voice),
            ]
            for one in timed(plan, part)
        ]
    return [*rows, *down_rows(plan, voice)]


def _way_row(moment: Moment, voice: Voice) -> list[Cell]:
    starts = five_minutes_before(moment.at)
    ends = starts + timedelta(minutes=moment.minutes)
    way = voice.say_in("where work is done", "way")
    times = (f"{starts:%H:%M}", f"{ends:%H:%M}", 0, round(moment.minutes))
    return [None, way, *times, "", None, _way_words(moment, voice), ""]
