"""Crew pages for equal parts: the jobs of the second and later ones are those of the first."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.step_blocks import built_alike
from buildplan.booklet.crew.standing_so_far import standing
from buildplan.booklet.crew.when import JobTimes, jobs_heading
from buildplan.document.blocks import Items
from buildplan.document.text import plain
from buildplan.instructions.stages import part_of_step
from buildplan.language.phrases import clauses, first_to_last
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import Job


def equal_part(book: Book, job: Job) -> str:
    """The name of the part that a job builds again, joint for joint; empty of any other job."""
    if job.portable or not all(built_alike(book, step) for step in job.steps):
        return ""
    part = part_of_step(book.framework, job.steps[0])
    return "" if part is None else part.name


def equal_part_blocks(
    book: Book, run: Sequence[Job], name: str, job_of: Mapping[int, int], times: JobTimes
) -> list[Flowable]:
    """What is said of the jobs of a part that is like one before it; `job_of` is the job of each
    step."""
    voice = book.voice
    steps = [step for job in run for step in job.steps]
    first = [step.repeats for step in steps if step.repeats is not None]
    like = part_of_step(book.framework, book.steps[first[0] - 1])
    head = voice.say(
        "Part {part}, jobs {jobs}",
        part=name,
        jobs=_range(voice, run[0].number, run[-1].number),
    )
    told = voice.say(
        "Parts {first} and {part} are alike: do as jobs {jobs} say, and read {part} for {first}. "
        "{counts}.",
        first="" if like is None else like.name,
        part=name,
        jobs=_range(voice, job_of[first[0]], job_of[first[-1]]),
        counts=clauses(voice, standing(book, steps)),
    )
    return [jobs_heading(head, run, times), Items((plain(told),), ticked=True)]


def _range(voice: Voice, first: int, last: int) -> str:
    if first == last:
        return voice.whole(first)
    return first_to_last(voice, voice.whole(first), voice.whole(last))
