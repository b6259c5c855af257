"""Lessons on the pages: each technique taught once, before the first step that asks for it."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.training.lessons import (
    CORNERS,
    HELD,
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
from buildplan.shape.lying import laid_in_figure

PAD = 8.0


def lessons_of(book: Book, learnt: Sequence[Step], step: Step) -> Sequence[Flowable]:
    """The lessons of what first comes up in a step, kinds of work and corners, on one ground; not
    of what has been `learnt` in others. The step itself shows the moves."""
    known = {kind for other in learnt for kind in other.kinds}
    new = set(step.kinds) - known
    told = [_lesson(book.voice, _lesson_of(book, kind, step)) for kind in LESSONS if kind in new]
    if _turns(step) and not any(_turns(other) for other in learnt):
        told.append(_lesson(book.voice, CORNERS))
    if not told:
        return ()
    return (Boxed(told, PAD, line=None, fill=TINT),)


def _turns(step: Step) -> bool:
    """Whether a step finishes a corner."""
    return not set(step.cells) <= {STRAIGHT}


def _lesson_of(book: Book, kind: Kind, step: Step) -> Lesson:
    """What is taught of a kind of work that first comes up in a step."""
    own = book.framework.built_with((*step.operations[0].joints, book.framework.joints[0])[0])
    if kind is Kind.LAY and not laid_in_figure(own):
        return LOOSE
    if kind is Kind.TAG and step.kind is not Kind.TAG:
        return TAGGED_BY_ROW
    if kind is Kind.STAND_UP and book.figures.stands:
        return HELD if book.figures.held_by else STOOD
    return LESSONS[kind]


def _lesson(voice: Voice, lesson: Lesson) -> Words:
    return Words(
        sentences(
            strong(voice.say("Learn: {lesson}.", lesson=voice.say(lesson.title))),
            plain(voice.say(lesson.why)),
            strong(voice.say("Mistake:")),
            plain(voice.say(lesson.mistake)),
        )
    )
