"""Crew pages of who does what when: each part of the work by person and by job."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.crew.times import (
    axis,
    clock,
    job_bar,
    place_name,
    timed_jobs,
    who_words,
    worked_at,
)
from buildplan.document.blocks import Shown, Words, heading
from buildplan.document.layout import is_wide
from buildplan.document.tables import LEAST_SIDE, Grid
from buildplan.document.text import plain, strong, unbroken
from buildplan.evaluation.figures import minutes_words
from buildplan.instructions.jobs import job_title
from buildplan.instructions.times import duration
from buildplan.language.messages import mark
from buildplan.language.phrases import people_counted, sentences
from buildplan.sequence.jobs import Job
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.stretches import Stretch
from buildplan.sequence.timetable import RESERVE, PlaceWork, Timetable, WorkPlace

CLOSE_ROWS = 1.2
BAR_WIDE = 100.0  # a job's line


def schedule(book: Book, work: Sequence[Job], plan: Timetable) -> list[Flowable]:
    """Each part of the work as a table by job, every job once, its bars over one clock."""
    voice = book.voice
    blocks: list[Flowable] = []
    for part in plan.parts:
        blocks += _part(book, work, part)
    told = voice.say(
        "Estimates for practised hands, from the start of each part; {reserve} are held back for "
        "breaks and bursts where it says latest. Where one holds and another locks, whoever is "
        "free comes over.",
        reserve=voice.percent(RESERVE),
    )
    called = [_called_in(book, work, part) for part in plan.parts]
    return [*blocks, Words(sentences(*called, plain(told)))]


def _part(book: Book, work: Sequence[Job], part: PlaceWork) -> list[Flowable]:
    voice = book.voice
    in_workshop = part.place is WorkPlace.WORKSHOP
    begin = (
        mark("Begin at the latest {time} before the vehicle leaves. We begin at: ____________")
        if in_workshop
        else mark("Begin at the latest {time} before it must stand. We begin at: ____________")
    )
    latest = minutes_words(part.minutes * (1 + RESERVE), voice)
    return [
        heading(
            voice.say(
                "{part}: {time} for {people}",
                part=place_name(part.place, voice),
                time=duration(voice, part.minutes),
                people=people_counted(voice, book.facts.crew),
            )
        ),
        Words(voice.say(begin, time=strong(latest)), keep=True),
        _table(book, work, part),
    ]


def _table(book: Book, work: Sequence[Job], part: PlaceWork) -> Grid:
    """Every job of a part once, by its number; where the paper is wide its bar over the clock."""
    voice, drawn = book.voice, is_wide(book.paper)
    taken: dict[int, list[Stretch]] = {}
    for one in timed_jobs(part, work):
        taken.setdefault(one.job.number, []).append(one)
    rows = [
        (
            strong(voice.whole(number)),
            plain(job_title(voice, some[0].job, book.told)),
            unbroken(f"{clock(some[0].start)} – {clock(max(one.finish for one in some))}"),
            *(_bar(book, part, some) if drawn else ()),
            plain(_who(book, some)),
            "",
        )
        for number, some in sorted(taken.items())
    ]
    head = (
        voice.say("Job"),
        "",
        voice.say("From – to"),
        *([Shown(axis(part, BAR_WIDE), after=0)] if drawn else ()),
        voice.say("Who"),
        unbroken(voice.say("Done at")),
    )
    shares = (20, 104, 70, *((BAR_WIDE + 2 * LEAST_SIDE,) if drawn else ()), 150, 50)
    return Grid(head, rows, shares, pad=CLOSE_ROWS)


def _bar(book: Book, part: PlaceWork, some: Sequence[Stretch]) -> list[Flowable]:
    """The line of a job, with its bars."""
    number = some[0].job.number
    helped = _helped(book, part, some[0].job)
    return [Shown(job_bar(part, worked_at(some), BAR_WIDE, number, book.voice, helped), after=0)]


def _who(book: Book, some: Sequence[Stretch]) -> str:
    """Who does what in a job, and how many more it takes."""
    acts: dict[int, tuple[Kind, ...]] = {}
    for one in some:
        for person, kinds in one.acts.items():
            acts[person] = (*acts.get(person, ()), *kinds)
    told = who_words(dict(sorted(acts.items())), book.voice)
    more = _more(book, some[0].job)
    if not more:
        return told
    return book.voice.say_count(
        "{told}; {number} more helps", "{told}; {number} more help", more, told=told
    )


def _more(book: Book, job: Job) -> int:
    """How many people a job takes beside the crew: who lifts, and who holds a stool."""
    return max(0, max(_people(book, step) for step in job.steps) - book.facts.crew)


def _people(book: Book, step: Step) -> int:
    return book.people[step.number - 1]


def _helped(book: Book, part: PlaceWork, job: Job) -> list[tuple[float, float]]:
    """When a job takes more people than the crew has: the steps that do, put together where one
    follows the other."""
    found: list[tuple[float, float]] = []
    for step in job.steps:
        if _people(book, step) <= book.facts.crew or step.number not in part.step_times:
            continue
        start, finish = part.step_times[step.number]
        if found and start <= found[-1][1]:
            found[-1] = found[-1][0], max(finish, found[-1][1])
        else:
            found.append((start, finish))
    return found


def _called_in(book: Book, work: Sequence[Job], part: PlaceWork) -> str:
    """Markup: from when help has to be there, for jobs that take more people than the crew has."""
    voice = book.voice
    numbers = {one.job.number: one.job for one in timed_jobs(part, work)}
    short = [job for _, job in sorted(numbers.items()) if _more(book, job)]
    if not short:
        return ""
    most = max(_more(book, job) for job in short)
    begins = min(start for job in short for start, _ in _helped(book, part, job))
    told = voice.say_count(
        "From {start} on {number} more person has to be there: {jobs}.",
        "From {start} on {number} more people have to be there: {jobs}.",
        most,
        start=strong(clock(begins)),
        jobs=voice.listed([voice.say("job {number}", number=job.number) for job in short]),
    )
    if not is_wide(book.paper):
        return told
    return sentences(told, voice.say("While they are needed the bar has a dark line."))
