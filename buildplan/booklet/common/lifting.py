"""When a piece that only its locks keep in shape may first be lifted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.design.measures import size_words
from buildplan.document.blocks import Words
from buildplan.document.text import STRONG, plain
from buildplan.language.phrases import sentences
from buildplan.sequence.lifting import FirstLift, first_lifts
from buildplan.sequence.model import Access, Step

TILTED = (Access.LIFTED, Access.ON_ITS_SIDE)


def _lifts(book: Book) -> list[FirstLift]:
    """When each part may first be lifted; empty for a piece that keeps its shape without locks."""
    folds = book.examination.folds_unlocked_m > 0
    return [*first_lifts(book.framework, book.steps)] if folds else []


def first_lift_notice(
    book: Book, steps: Sequence[Step], job_of: Mapping[int, int] | None = None
) -> list[Flowable]:
    """What stands before the steps with the first lock: after which it may be lifted, and why;
    after which job, where the job of each step is given."""
    lifts, voice = _lifts(book), book.voice
    if not lifts or min(one.first_lock for one in lifts) not in {step.number for step in steps}:
        return []
    said = voice.say(
        "Do not stand it up or carry it before {steps}: until then it can fold by {length} "
        "or more.",
        steps=_done(lifts, book) if job_of is None else _job_done(lifts, book, job_of),
        length=size_words(book.examination.folds_unlocked_m, book.units),
    )
    tilted = any(way in step.ways for step in book.steps for way in TILTED)
    there = voice.say(
        "Where a step has it lifted at a joint, lift there alone, both hands under it."
    )
    return [Words(plain(sentences(said, there if tilted else "")), STRONG, after=8, keep=True)]


def all_locked(book: Book) -> list[str]:
    """What is to be ticked before it is lifted, part by part; nothing for a piece that keeps its
    shape."""
    voice = book.voice
    return [
        voice.say(
            "Part {part} is tied and locked, up to and with step {step}",
            part=one.part,
            step=one.last,
        )
        if one.part
        else voice.say("All of it is tied and locked, up to and with step {step}", step=one.last)
        for one in _lifts(book)
    ]


def _job_done(lifts: Sequence[FirstLift], book: Book, job_of: Mapping[int, int]) -> str:
    """`job 8 is done`, or of parts `job 8 is done for part L and job 9 is done for part R`."""
    voice = book.voice
    if not lifts[0].part:
        return voice.say("job {number} is done", number=job_of[lifts[0].last])
    return voice.listed(
        [
            voice.say(
                "job {number} is done for part {part}", number=job_of[one.last], part=one.part
            )
            for one in lifts
        ]
    )


def _done(lifts: Sequence[FirstLift], book: Book) -> str:
    """`step 31 is done`, or of parts `step 12 is done for L and step 20 for R`."""
    voice = book.voice
    if not lifts[0].part:
        return voice.say("step {step} is done", step=lifts[0].last)
    return voice.listed(
        [
            voice.say("step {step} is done for part {part}", step=one.last, part=one.part)
            for one in lifts
        ]
    )
