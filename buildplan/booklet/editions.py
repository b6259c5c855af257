"""Which pages make a booklet, in what order."""

from __future__ import annotations

from buildplan.booklet.book import Book
from buildplan.booklet.pages_after import standing, taking_down
from buildplan.booklet.pages_front import cautions, cover, needs, reading_guide
from buildplan.booklet.pages_piece import finished_piece, gauges, joint_maps
from buildplan.booklet.pages_steps import step_leaves
from buildplan.booklet.press import Leaf, Press

LANGUAGE = "en-GB"


def training_leaves(book: Book) -> list[Leaf]:
    """The pages of the training edition."""
    front = [cover(book), cautions(book)]
    body = [
        needs(book),
        *gauges(book),
        finished_piece(book),
        *joint_maps(book),
        *step_leaves(book),
        standing(book),
        taking_down(book),
    ]
    pages = enumerate(body, start=len(front) + 2)
    contents = [(leaf.title, number) for number, leaf in pages if leaf.listed]
    return [*front, reading_guide(book, contents), *body]


def print_booklet(book: Book) -> bytes:
    """The whole booklet as a tagged PDF. The same book gives the same bytes."""
    foot = book.facts.name
    if book.design.brand is not None:
        foot = f"{foot} · {book.design.brand.name}"
    if book.facts.problems:
        foot = f"{foot} · DRAFT: this piece has problems"
    author = book.design.brand.name if book.design.brand is not None else "buildplan"
    press = Press(book.paper, foot)
    return press.print(
        training_leaves(book),
        title=f"{book.facts.name}: build booklet",
        author=author,
        language=LANGUAGE,
    )
