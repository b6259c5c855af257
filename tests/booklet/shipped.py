"""The shipped designs' booklets, each printed once for all tests of a run."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from pathlib import Path

from page_words import words_of_pages
from references import OnPage, Record, recorded

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.closeups import Views, plan_views
from buildplan.booklet.editions import print_booklet
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS

DESIGNS = Path(__file__).parent.parent.parent / "designs"
SHIPPED = sorted(p.stem for p in DESIGNS.glob("*.yaml") if not p.stem.endswith(".event"))
ON_PAPER = [(name, paper) for name in SHIPPED for paper in PAPERS]


@cache
def book_of(name: str, paper: str = "a4") -> Book:
    """A shipped design, gathered for the training edition in its own units."""
    if paper != "a4":
        return replace(book_of(name), paper=PAPERS[paper])
    design = read_design(DESIGNS / f"{name}.yaml")
    return gather_book(design, PAPERS[paper], design.units, "training")


@cache
def _print(name: str, paper: str) -> tuple[bytes, Record]:
    with recorded() as record:
        data = print_booklet(book_of(name, paper))
    return data, record


def printed(name: str, paper: str = "a4") -> bytes:
    """A shipped design's booklet."""
    return _print(name, paper)[0]


def pictures(name: str, paper: str = "a4") -> Sequence[OnPage]:
    """Every picture of a booklet, in the order of printing."""
    return _print(name, paper)[1].pictures


def record_of(name: str, paper: str = "a4") -> Record:
    """The pictures and page references of a booklet."""
    return _print(name, paper)[1]


@cache
def page_texts(name: str, paper: str = "a4") -> Sequence[str]:
    """The words of each page, white space folded."""
    return words_of_pages(printed(name, paper))


@cache
def views_of(name: str) -> Views:
    """What the pictures of a design's steps show; it is the same on any paper."""
    return plan_views(book_of(name))
