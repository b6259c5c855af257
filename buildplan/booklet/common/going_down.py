"""A piece taken down, in the order in which hands do it: the same on the pages of every edition."""

from __future__ import annotations

from buildplan.booklet.common.book import Book
from buildplan.document.text import strong
from buildplan.sequence.reach import WITH_ONE_AT_FOOT, lifters


def going_down(book: Book) -> list[str]:
    """From clearing people away to the balloons counted into their bags."""
    voice = book.voice
    held = bool(book.figures.held_by)
    untied = voice.say("Some hold the piece while one unties it from what holds it")
    ballasted = book.examination.wind.ballast_at or not held
    return [
        voice.say("Clear people away, put on safety glasses"),
        *([untied] if held else []),
        _lowered(book),
        *([voice.say("Untie the ballast once the piece lies flat")] if ballasted else []),
        voice.say(
            "Let the air out: snip each neck beside its knot with blunt scissors; do not burst "
            "balloons near people"
        ),
        voice.say(
            "Count what goes into the bags: {balloons} balloons were in the piece",
            balloons=strong(voice.whole(book.facts.total)),
        ),
    ]


def _lowered(book: Book) -> str:
    """How it comes to lie, by as many as stood it up."""
    voice, people = book.voice, lifters(book.shape)
    if people >= WITH_ONE_AT_FOOT and not book.shape.holding.hung:
        return voice.say(
            "{people} people or more let it down slowly, one at its foot",
            people=strong(voice.whole(people)),
        )
    return voice.say(
        "{people} people or more let it down slowly",
        people=strong(voice.whole(people)),
    )
