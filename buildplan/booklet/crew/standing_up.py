"""The crew's job of standing the piece up: what must be ready, who holds where, ballast before
anybody lets go."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.booklet.common.ballasting import (
    ballast_row,
    is_ballasted,
    ready_rows,
    where_bags_lie,
)
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.step_moves import stood_up_picture
from buildplan.booklet.common.tags_off import tags_off
from buildplan.document.blocks import Items, Shown
from buildplan.document.layout import beside
from buildplan.document.text import plain, strong
from buildplan.language.phrases import clauses, sentences
from buildplan.sequence.model import Step

WORDS_SHARE = 0.72
PICTURE_SIZE = (150.0, 140.0)
CLOSE = 2.5


def stood_up(book: Book, step: Step) -> list[Flowable]:
    """What is ticked before, while and after a piece is stood up, beside who holds it where."""
    told, enlarged = book.told(step), book.paper.picture_scale
    turned, *ready = ready_rows(book, step)
    rows = [turned, f"{clauses(book.voice, ready)}."] if ready else [turned]
    rows.append(f"{strong(told.title)}. {plain(told.text)}")
    if is_ballasted(book, step):
        rows.append(plain(sentences(f"{ballast_row(book)}.", where_bags_lie(book))))
    rows += map(plain, (*tags_off(book, step), told.check))
    picture = stood_up_picture(book, step, PICTURE_SIZE)
    ticked = Items(tuple(rows), ticked=True, gap=CLOSE)
    return [*beside(book.paper, [ticked], [Shown(picture, enlarged)], WORDS_SHARE)]
