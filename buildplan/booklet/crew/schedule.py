"""Crew pages of who does what when: each part of the work by person and by job."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.crew.times import chart, clock, place_name, timed_jobs, who_words
from buildplan.document.blocks import Shown, Words, heading
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, plain, strong
from buildplan.evaluation.figures import minutes_words
from buildplan.instructions.jobs import job_title
from buildplan.instructions.times import duration
from buildplan.language.messages import mark
from buildplan.language.phrases import people_counted
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import Job
from buildplan.sequence.stretches import Stretch
from buildplan.sequence.timetable import RESERVE, PlaceWork, Timetable, WorkPlace

CLOSE_ROWS = 1.5


def schedule(book: Book, work: Sequence[Job], plan: Timetable) -> list[Flowable]:
    """Each part of the work as a chart by person and a table by job."""
    voice = book.voice
    blocks: list[Flowable] = []
    for part in plan.parts:
        blocks += _part(book, work, part)
    blocks.append(
        Words(
            voice.say(
                "Estimates for practised hands, from the start of each part; {reserve} are held "
                "back for breaks and bursts where it says latest. Who waits holds the work, hands "
                "on locks and picks up.",
                reserve=voice.percent(RESERVE),
            ),
            SMALL,
        )
    )
    return blocks


def _part(book: Book, work: Sequence[Job], part: PlaceWork) -> list[Flowable]:
    voice = book.voice
    in_workshop = part.place is WorkPlace.WORKSHOP
    name = place_name(part.place, voice)
    rows = tuple(
        (
            strong(voice.whole(taken[0].job.number)),
            plain(job_title(voice, taken[0].job, book.told)),
            ", ".join(f"{clock(one.start)} – {clock(one.finish)}" for one in taken),
            plain(who),
            "",
        )
        for taken, who in _by_job(part, work, voice)
    )
    begin = (
        mark("Begin at the latest {time} before the vehicle leaves. We begin at: ____________")
        if in_workshop
        else mark("Begin at the latest {time} before it must stand. We begin at: ____________")
    )
    latest = minutes_words(part.minutes * (1 + RESERVE), voice)
    enlarged = book.paper.picture_scale
    return [
        heading(
            voice.say(
                "{part}: {time} for {people}",
                part=name,
                time=duration(voice, part.minutes),
                people=people_counted(voice, book.facts.crew),
            )
        ),
        Words(voice.say(begin, time=strong(latest))),
        Shown(
            chart(
                part,
                work,
                book.paper.measure / enlarged,
                voice.say("{part}, by person", part=name),
                voice,
            ),
            enlarged,
        ),
        Grid(
            (
                voice.say("Job"),
                "",
                voice.say("From – to"),
                voice.say("Person: what"),
                voice.say("Done at"),
            ),
            rows,
            (10, 36, 30, 88, 18),
            pad=CLOSE_ROWS,
        ),
    ]


def _by_job(part: PlaceWork, work: Sequence[Job], voice: Voice) -> list[tuple[list[Stretch], str]]:
    """The jobs in the order in which they begin, each with its stretches by the same people."""
    found: dict[tuple[int, str], list[Stretch]] = {}
    for one in timed_jobs(part, work):
        found.setdefault((one.job.number, who_words(one, voice)), []).append(one)
    return [(taken, who) for (_, who), taken in found.items()]
