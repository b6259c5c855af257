"""Lessons on the pages: each technique taught once, before the first step that asks for it."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.training.lessons import (
    CORNERS,
    LESSONS,
    LOOSE,
    STOOD,
    TAGGED_BY_ROW,
    Lesson,
)
from buildplan.document.blocks import Words
from buildplan.document.layout import Boxed
from buildplan.document.text import TINT, plain, strong
from buildplan.framework.cells import STRAIGHT
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Step

PAD = 8.0


def lessons_before(book: Book, step: Step) -> Sequence[Flowable]:
    """The lessons of the kinds of work that first come up in a step, on one ground; with the first
    brace, that of the corners too if the piece has any. The step itself shows the moves."""
    before = {kind for other in book.steps[: step.number - 1] for kind in other.kinds}
    told: list[Flowable] = []
    for kind in step.kinds:
        if kind in before or kind not in LESSONS:
            continue
        told.append(_lesson(book.voice, _lesson_of(book, kind, step)))
        if kind is Kind.BRACE and any(set(other.cells) - {STRAIGHT} for other in book.steps):
            told.append(_lesson(book.voice, CORNERS))
    if not told:
        return ()
    return (Boxed(told, PAD, line=None, fill=TINT),)


def _lesson_of(book: Book, kind: Kind, step: Step) -> Lesson:
    """What is taught of a kind of work that first comes up in a step."""
    if kind is Kind.LAY and not book.framework.built_with(step.operations[0].joints[0]).braces:
        return LOOSE
    if kind is Kind.TAG and step.kind is not Kind.TAG:
        return TAGGED_BY_ROW
    if kind is Kind.STAND_UP and book.figures.stands:
        return STOOD
    return LESSONS[kind]


def _lesson(voice: Voice, lesson: Lesson) -> Words:
    return Words(
        sentences(
            strong(voice.say("Learn: {lesson}.", lesson=voice.say(lesson.title))),
            plain(voice.say(lesson.why)),
            strong(voice.say("Usual mistake:")),
            plain(voice.say(lesson.mistake)),
        )
    )
