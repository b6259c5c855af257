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


def _high(book: Book) -> int:
    """How many people work at joints that are high up, where those are more than lift the piece and
    than there are; else 0."""
    most = max(book.people, default=0)
    return most if most > max(book.facts.crew, lifting(book)) else 0


def people_figure(book: Book) -> str:
    """How many people it takes, as a figure: `2`, `2 (3 to lift)` or `2 (3 high up)`."""
    crew, needed, high = book.facts.crew, lifting(book), _high(book)
    if high:
        return book.voice.say("{people} ({number} high up)", people=crew, number=high)
    if needed <= crew:
        return book.voice.whole(crew)
    return book.voice.say("{people} ({lifters} to lift)", people=crew, lifters=needed)


def people_words(book: Book) -> str:
    """How many people it takes, said the same on every page."""
    crew, needed, high = book.facts.crew, lifting(book), _high(book)
    if high:
        return book.voice.say_count(
            "{number} person; {high} while one stands on a stool or ladder",
            "{number} people; {high} while one stands on a stool or ladder",
            crew,
            high=high,
        )
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
