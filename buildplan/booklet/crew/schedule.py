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
from buildplan.sequence.jobs import Job
from buildplan.sequence.timetable import RESERVE, PlaceWork, Timetable, WorkPlace

CLOSE_ROWS = 2.5


def schedule(book: Book, work: Sequence[Job], plan: Timetable) -> list[Flowable]:
    """Each part of the work as a chart by person and a table by job."""
    voice = book.voice
    blocks: list[Flowable] = []
    for part in plan.parts:
        blocks += _part(book, work, part)
    blocks.append(
        Words(
            voice.say(
                "Times are estimates for practised hands, from the start of each part; {reserve} "
                "are held back for breaks, bursts and mistakes where it says latest. A person who "
                "waits holds the work, hands on locks and picks up.",
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
            strong(voice.whole(one.job.number)),
            plain(job_title(voice, one.job, book.told)),
            f"{clock(one.start)} – {clock(one.finish)}",
            plain(who_words(one, voice)),
            "",
        )
        for one in timed_jobs(part, work)
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
                "{part}: {time} for {people} people",
                part=name,
                time=duration(voice, part.minutes),
                people=book.facts.crew,
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
            (14, 44, 28, 74, 20),
            pad=CLOSE_ROWS,
        ),
    ]
