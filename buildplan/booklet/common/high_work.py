"""Work above what a hand reaches from the floor: what to bring for it, and what to mind."""

from __future__ import annotations

from buildplan.booklet.common.book import Book
from buildplan.sequence.hand_reach import HandReach
from buildplan.sequence.model import Access


def to_stand_on(book: Book) -> list[str]:
    """What people stand on for high joints and high ties."""
    hands, told, voice = HandReach(), book.figures.set_up, book.voice
    held_m = _held_m(book)
    stool = any(Access.STOOL in step.ways for step in book.steps) or held_m > hands.highest
    ladder = any(Access.LADDER in step.ways for step in book.steps)
    ladder = ladder or held_m > hands.highest + hands.stool
    if told is not None:
        stool, ladder = stool or bool(told.high - told.higher), ladder or bool(told.higher)
    return [
        *([voice.say("A steady step stool")] if stool else []),
        *([voice.say("A ladder or platform that is made for the height")] if ladder else []),
    ]


def fastened_high(book: Book) -> list[str]:
    """What to mind where a piece is fastened out of reach from the floor."""
    hands, voice, held_m = HandReach(), book.voice, _held_m(book)
    if held_m <= hands.highest:
        return []
    if held_m <= hands.highest + hands.stool:
        return [
            voice.say(
                "Its upper ties are high: work from a steady step stool, and have somebody hold it."
            )
        ]
    return [
        voice.say(
            "Its upper ties are out of reach from a step stool. Work from a ladder or platform that"
            " is made for it, as your local rules ask."
        )
    ]


def _held_m(book: Book) -> float:
    """How high above the floor a piece is fastened: a hung piece, or one tied to a wall or pole, at
    its top. Of any other 0."""
    holding = book.shape.holding
    if holding.hung or holding.tied_to_wall or holding.pole:
        return book.shape.height_m
    return 0.0
