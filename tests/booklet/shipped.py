"""The shipped designs' booklets, each printed once for all tests of a run."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

from buildplan.booklet.book import Book, gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.booklet.paper import PAPERS
from buildplan.design.reading import read_design

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
def printed(name: str, paper: str = "a4") -> bytes:
    """A shipped design's booklet."""
    return print_booklet(book_of(name, paper))
