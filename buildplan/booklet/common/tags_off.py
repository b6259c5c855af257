"""When tags come off: those that will hang out of reach before a piece is lifted, the others once
it stands; and from what."""

from __future__ import annotations

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.needs import tags_of
from buildplan.design.measures import size_words
from buildplan.sequence.hand_reach import HandReach
from buildplan.sequence.model import Kind, Step


def tags_off_before(book: Book) -> list[str]:
    """That tags come off before a piece is lifted that are out of reach once it is up."""
    number = _high(book, HandReach().highest)
    if not number or _stands_built(book):
        return []
    return [
        book.voice.say_count(
            "{number} tag that will be above {height} is off",
            "{number} tags that will be above {height} are off",
            number,
            height=book.voice.tell(size_words(HandReach().highest, book.units)),
        )
    ]


def tags_off(book: Book, step: Step) -> list[str]:
    """That the tags come off once a piece has been stood up, as far as they have not before; from
    what, where they are out of reach."""
    voice, hands = book.voice, HandReach()
    tags = len(tags_of(book.steps)) if step.kind is Kind.STAND_UP else 0
    high = _high(book, hands.highest)
    if not tags:
        return []
    if high and not _stands_built(book):
        rest = voice.say(
            "Take off the other {number} tags: tear what a lock holds off beside it",
            number=tags - high,
        )
        return [rest] if tags > high else []
    told = [
        voice.say(
            "Take off all {number} tags: tear off beside the lock what it holds fast", number=tags
        )
    ]
    if _high(book, hands.highest + hands.stool):
        told.append(
            voice.say(
                "Tags that are left out of reach: only from a ladder or platform that is made for"
                " it, as your local rules ask, with somebody beside it"
            )
        )
    elif high:
        told.append(
            voice.say(
                "Tags that are left out of reach: from a steady step stool that somebody holds"
            )
        )
    return told


def _stands_built(book: Book) -> bool:
    """Whether a piece stands when its last joint is tied: nothing lifts all of it."""
    return book.figures.stands and not book.figures.hung


def _high(book: Book, height_m: float) -> int:
    """How many tags are higher than that once the piece is up: y is up. Tags of chains that wait
    for their course come off with it."""
    at = book.shape.at
    return sum(1 for tag in tags_of(book.steps) if tag in at and float(at[tag][1]) > height_m)
