"""Ballast in the step that stands a piece up: how much, where, and the page that says more."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.loads import joints_words, mass_words
from buildplan.document.links import PageLink
from buildplan.document.printing import Section
from buildplan.document.text import underlined
from buildplan.evaluation.ballast import ballast_each_kg
from buildplan.language.messages import mark
from buildplan.sequence.model import Kind, Step

STANDING = mark("Stand it up, hold it down")


def is_ballasted(book: Book, step: Step) -> bool:
    """Whether ballast comes on in a step: where the piece is stood up or let stand, unless it is
    fastened to what holds it."""
    return step.kind is Kind.STAND_UP and bool(book.examination.wind.ballast_at)


def ballast_row(book: Book) -> str:
    """Ballast, to be ticked before anybody lets go."""
    return book.voice.say(
        "Tie ballast of {each} to each of {joints}, then let go",
        each=mass_words(ballast_each_kg(book.examination), book.voice),
        joints=joints_words(book.examination.wind.ballast_at, book.voice),
    )


def ballast_link(book: Book, step: Step) -> Sequence[PageLink]:
    """What leads from the step that stands a piece up to the page about it."""
    if step.kind is not Kind.STAND_UP:
        return ()
    voice = book.voice
    title = voice.say(STANDING)

    def markup(page: int) -> str:
        return underlined(voice.say("ballast: page {page}", page=page))

    def words(page: int) -> str:
        return voice.say("To {title}, page {page}", title=title, page=page)

    here = underlined(voice.say("ballast: below on this page"))
    return (PageLink(Section(title, ()).place, markup, words, here=here),)
