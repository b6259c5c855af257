"""Which pages make a booklet, in what order."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from buildplan.booklet.book import Book
from buildplan.booklet.map_sheets import map_sheets
from buildplan.booklet.pages_after import standing, taking_down
from buildplan.booklet.pages_crew import crew_leaves
from buildplan.booklet.pages_front import cautions, cover, needs, reading_guide
from buildplan.booklet.pages_piece import finished_piece, gauges, joint_maps
from buildplan.booklet.pages_steps import step_leaves
from buildplan.booklet.press import Leaf, Press

LANGUAGE = "en-GB"


def training_leaves(book: Book) -> list[Leaf]:
    """The pages of the training edition."""
    sheets = map_sheets(book)
    return [
        cover(book),
        cautions(book),
        reading_guide(book),
        needs(book),
        *gauges(book),
        finished_piece(book),
        *joint_maps(book, sheets),
        *step_leaves(book, sheets),
        standing(book),
        taking_down(book),
    ]


LEAVES: Mapping[str, Callable[[Book], list[Leaf]]] = {
    "training": training_leaves,
    "crew": crew_leaves,
}


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
        LEAVES[book.edition](book),
        title=f"{book.facts.name}: build booklet",
        author=author,
        language=LANGUAGE,
    )
