"""What is said of a piece by how it is built: by whom, and how it is held."""

from __future__ import annotations

from buildplan.booklet.common.book import Book
from buildplan.sequence.model import Kind


def is_braced(book: Book) -> bool:
    """Whether braces are tied in the piece; it is then built lying flat."""
    return any(step.kind is Kind.BRACE for step in book.steps)


def lifting(book: Book) -> int:
    """How many people lift the piece, or put it together."""
    return max(operation.people for step in book.steps for operation in step.operations)


def people_figure(book: Book) -> str:
    """How many people it takes, as a figure: `2`, or `2 (3 to lift)`."""
    crew, needed = book.facts.crew, lifting(book)
    if needed <= crew:
        return book.voice.whole(crew)
    return book.voice.say("{people} ({lifters} to lift)", people=crew, lifters=needed)


def people_words(book: Book) -> str:
    """How many people it takes, said the same on every page."""
    crew, needed = book.facts.crew, lifting(book)
    if needed <= crew:
        return book.voice.say_count("{number} person", "{number} people", crew)
    return book.voice.say_count(
        "{number} person; {lifters} to turn, lift and stand it up",
        "{number} people; {lifters} to turn, lift and stand it up",
        crew,
        lifters=needed,
    )


def hold_words(book: Book) -> str:
    """Where hands take hold of the finished piece."""
    if is_braced(book):
        return book.voice.say("Hold the braced tube, never a single balloon.")
    return book.voice.say("Both hands round a joint, never on a single balloon.")
