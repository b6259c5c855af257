"""Lessons on the pages: each technique taught once, before the first step that asks for it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.training.lessons import CORNERS, LESSONS, LOOSE, Lesson
from buildplan.document.blocks import Shown, Stack, Words, heading
from buildplan.document.layout import Boxed, Columns, is_wide
from buildplan.document.text import TINT, plain, strong
from buildplan.drawing.marks import Picture
from buildplan.drawing.techniques import moves, technique_pictures
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Step

PAD, GAP = 8.0, 12.0
LEAST_WORDS = 170.0


def lessons_before(book: Book, step: Step) -> Sequence[Flowable]:
    """The lesson of each kind of work that first comes up in a step; with the first brace, that
    of the corners too if the piece has any."""
    before = {kind for other in book.steps[: step.number - 1] for kind in other.kinds}
    told = []
    for kind in step.kinds:
        if kind in before or kind not in LESSONS:
            continue
        told.append(_lesson(book, _lesson_of(book, kind, step), _drawn(book, kind, step)))
        if kind is Kind.BRACE and any(set(other.cells) - {"straight"} for other in book.steps):
            told.append(_lesson(book, CORNERS, None))
    return told


def _lesson_of(book: Book, kind: Kind, step: Step) -> Lesson:
    """What is taught of a kind of work that first comes up in a step."""
    if kind is Kind.LAY and not book.framework.built_with(step.operations[0].joints[0]).braces:
        return LOOSE
    return LESSONS[kind]


def _drawn(book: Book, kind: Kind, step: Step) -> Picture | None:
    """The hand move that the lesson shows."""
    drawn = moves(book.framework, step, book.voice, (kind,))
    if kind is Kind.CHAIN and len(step.operations[0].links) < 3:  # nothing is tied yet
        drawn = technique_pictures(book.framework, kind, book.voice)
    return drawn[0] if drawn else None


def _lesson(book: Book, lesson: Lesson, picture: Picture | None) -> Flowable:
    voice = book.voice
    name = voice.say("Learn: {lesson}", lesson=voice.say(lesson.title))
    words: list[Flowable] = [heading(name), *_told(voice, lesson)]
    if picture is None or not is_wide(book.paper):
        return Boxed(words, PAD, line=None, fill=TINT)
    own = voice.say("Lesson {title}.", title=voice.say(lesson.title))
    shown = Shown(replace(picture, alt=f"{own} {picture.alt}"))
    # a move is shown at its own size, for the words in it
    left = book.paper.measure - 2 * PAD - GAP - picture.width
    if left < LEAST_WORDS:
        return Boxed([*words, shown], PAD, line=None, fill=TINT)
    columns = Columns(([Stack(words)], [shown]), (left, picture.width), gap=GAP)
    return Boxed([columns], PAD, line=None, fill=TINT)


def _told(voice: Voice, lesson: Lesson) -> list[Flowable]:
    parts = (
        (voice.say("Why."), lesson.why),
        (voice.say("Usual mistake."), lesson.mistake),
        (voice.say("How to see it."), lesson.see),
    )
    return [Words(f"{strong(name)} {plain(voice.say(words))}") for name, words in parts]
