"""Crew pages for what is built course by course: which chains come in, the joints in their order,
one check a course."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from reportlab.platypus import Flowable

from buildplan.booklet.common.ballasting import (
    ballast_act,
    begins_in_place,
    is_ballasted,
    place_act,
)
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.holding import while_it_grows
from buildplan.booklet.crew.standing_so_far import standing
from buildplan.booklet.crew.when import JobTimes, line_starts
from buildplan.document.blocks import Items, Words
from buildplan.document.tables import Grid
from buildplan.document.text import plain, strong, unbroken
from buildplan.instructions.coming import coming
from buildplan.instructions.job_checks import job_checks
from buildplan.instructions.model import Doing
from buildplan.language.phrases import clauses, sentences
from buildplan.sequence.jobs import Job
from buildplan.sequence.model import Kind, Step

CLOSEST_ROWS = 1.2


def is_of_courses(job: Job) -> bool:
    """Whether a job is nothing but courses."""
    return bool(job.rows) and all(row.head.course for row in job.rows)


def course_blocks(book: Book, job: Job, times: JobTimes) -> list[Flowable]:
    """Each course of a job: its chains as a table, its joints in one line with when they are begun,
    its check."""
    by_course = groupby(job.steps, key=lambda step: step.operations[0].course)
    courses = [tuple(steps) for _, steps in by_course]
    starts = line_starts([steps[0].number for steps in courses], times)
    return [
        block
        for steps, begins in zip(courses, starts, strict=True)
        for block in _course(book, steps, begins)
    ]


def _course(book: Book, steps: Sequence[Step], begins: str) -> list[Flowable]:
    voice = book.voice
    chains = tuple(
        (strong(unbroken(row.name)), plain(row.said))
        for step in steps
        for turn, told in zip(step.turns, book.told(step).turns, strict=True)
        if turn.operations[0].kind in (Kind.TAG, Kind.CLOSE_RING)
        for row in told.rows
    )
    joins = [op for step in steps for op in step.of_kind(Kind.JOIN)]
    locked = any(step.locks for step in steps)
    in_order = " ".join(joint for op in joins for joint in op.joints)
    brought = " ".join(link for op in joins for link in op.links)
    lines = [plain(one.said) for step in steps for one in _held(book, step)]
    if joins:
        told = (
            voice.say("Join, and lock each before the next: {joints}", joints=strong(in_order))
            if locked
            else voice.say("Join one after another: {joints}", joints=strong(in_order))
        )
        lines.append(" ".join(filter(None, (told, begins))))
    if brought:
        lines.append(
            voice.say(
                "Single balloons, each tied in at the first of its joints: {links}",
                links=plain(brought),
            )
        )
    checks = sentences(
        *job_checks(book.context, steps),
        f"{clauses(voice, standing(book, steps))}." if joins else "",
    )
    blocks: list[Flowable] = []
    if chains:
        head = ("", _coming_in(book, steps))
        blocks.append(Grid(head, chains, (30, 150), pad=CLOSEST_ROWS, after=4))
    if lines:
        blocks.append(Items(tuple(lines), ticked=True, gap=2))
    if checks:
        told = voice.say("{check} {counts}", check=strong(voice.say("Check")), counts=plain(checks))
        blocks.append(Words(told))
    return blocks


def _held(book: Book, step: Step) -> list[Doing]:
    """What holds a piece while it grows, before a step's joints are tied."""
    place = [place_act(book)] if begins_in_place(book, step) else []
    ballast = [ballast_act(book)] if is_ballasted(book, step) else []
    return [*place, *while_it_grows(book, step), *ballast]


def _coming_in(book: Book, steps: Sequence[Step]) -> str:
    """What is done with the chains that come in; how rings are closed with the first that are, and
    with all others that they are."""
    closing = next((step for step in book.steps if step.of_kind(Kind.CLOSE_RING)), None)
    if closing in steps:
        return book.voice.say(
            "Chains that come in: tie the two ends of each together without a twist, that knot is"
            " the first of its row; set them on, tag them"
        )
    if any(long.chain.closed for step in steps for long in coming(book.context, step)):
        return book.voice.say("Coming in: close into a ring, set on, tag")
    return book.voice.say("Chains that come in: set them on, tag them")
