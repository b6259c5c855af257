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
    if not tags:
        return []
    stood, high = _stands_built(book), _high(book, hands.highest)
    before = _off_with_parts(book) if stood else high
    if tags == before:
        return []
    told = [
        voice.say(
            "Take off the other {number} tags: tear what a lock holds off beside it",
            number=tags - before,
        )
        if before
        else voice.say(
            "Take off all {number} tags: tear off beside the lock what it holds fast", number=tags
        )
    ]
    if not stood:
        return told
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


def _off_with_parts(book: Book) -> int:
    """How many tags have come off parts before they were lifted (see `lifted_on`)."""
    return sum(_is_off(book, tag) for tag in tags_of(book.steps))


def _is_off(book: Book, tag: str) -> bool:
    told, part = book.figures.set_up, book.framework.part_at(tag)
    if told is None or part is None or tag in book.framework.tie_of:
        return False
    return part.name in told.rising.intersection(told.lifted)


def _high(book: Book, height_m: float) -> int:
    """How many tags are higher than that once the piece is up, without those that have come off
    parts before: y is up. Tags of chains that wait for their course come off with it."""
    at = book.shape.at
    return sum(
        tag in at and float(at[tag][1]) > height_m and not _is_off(book, tag)
        for tag in tags_of(book.steps)
    )
