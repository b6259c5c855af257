"""A step's pictures as one picture, for a web shop or a message to the crew."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.step_blocks import MOST_HEIGHT
from buildplan.booklet.common.step_moves import first_moves
from buildplan.booklet.common.step_pictures import PlacedPicture, step_pictures
from buildplan.drawing.marks import Inset, Picture

MARGIN = 8.0


def step_drawings(book: Book) -> Mapping[int, Picture]:
    """Every step's pictures side by side as on its page, by step number."""
    return dict(drawings_from(book, 1))


def drawings_from(book: Book, first: int) -> Iterator[tuple[int, Picture]]:
    """The same one after another, beginning with a step and those behind it."""
    views = plan_views(book)
    for step in (*book.steps[first - 1 :], *book.steps[: first - 1]):
        moves = first_moves(book, step, MOST_HEIGHT)
        pictures = step_pictures(book, step, views, moves, book.paper.measure, MOST_HEIGHT)
        yield step.number, _together(pictures.placed, pictures.height)


def _together(placed: tuple[PlacedPicture, ...], height: float) -> Picture:
    """Pictures in their places, in one that is as wide as they are, with a margin round it."""
    insets = tuple(
        Inset(at.picture, (MARGIN + at.x, MARGIN + height - at.y - at.picture.height))
        for at in placed
    )
    width = max(at.x + at.picture.width for at in placed)
    words = " ".join(at.picture.alt for at in placed)
    return Picture(width + 2 * MARGIN, height + 2 * MARGIN, insets, words)
