"""Where the gauges go: among the pages, or by themselves."""

from __future__ import annotations

from dataclasses import replace

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.piece import gauges
from buildplan.document.paper import true_size
from buildplan.document.renderer import Leaf


def true_gauges(book: Book) -> list[Leaf]:
    """The gauges at true size, whatever else is enlarged."""
    paper = true_size(book.paper)
    return [replace(leaf, paper=paper) for leaf in gauges(replace(book, paper=paper))]


def gauges_within(book: Book) -> list[Leaf]:
    """The gauges as pages of the booklet, unless they are printed by themselves."""
    return [] if book.gauges_apart else true_gauges(book)
