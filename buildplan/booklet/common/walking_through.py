"""What goes through the standing piece, where anybody does."""

from __future__ import annotations

from buildplan.booklet.common.book import Book
from buildplan.document.text import plain, strong
from buildplan.evaluation.passing_words import opening_caution, opening_words
from buildplan.language.phrases import sentences
from buildplan.shape.carrying import walk_through


def walked_through(book: Book) -> tuple[str, ...]:
    """How wide and high the way through the piece is clear, and what is to be known of it, as
    markup; nothing where nobody can walk."""
    voice = book.voice
    opening = walk_through(book.framework, book.shape)
    if opening is None:
        return ()
    told = voice.say("Walked through: {told}.", told=opening_words(opening, book.units, voice))
    caution = plain(opening_caution(opening, book.units, voice))
    return (sentences(strong(told), _beside_the_ballast(book), caution),)


def _beside_the_ballast(book: Book) -> str:
    """That the way is as wide with ballast on, where it takes any."""
    if not book.examination.wind.ballast_at:
        return ""
    return book.voice.say("Its ballast lies before and behind it, not in this way.")
