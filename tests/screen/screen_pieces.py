"""Pieces as data for the tests of the screen."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from buildplan.booklet.common.book import Book, gather_book
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.language.voice import LOCALES, Voice
from buildplan.screen.gather import gather_piece
from buildplan.screen.model import Piece

DESIGNS = Path(__file__).parents[2] / "designs"
VOICES = [Voice(language) for language in LOCALES]
# one of each way of building: a closed tube, a column, a wall, a globe, an assembly
NAMES = (
    "reading_star",
    "gallery/reading_column",
    "gallery/story_wall",
    "gallery/reading_globe",
    "gallery/portal",
)


# of about 3,000 balloons
GREAT_WALL = """\
buildplan: 1
name: Great Wall
units: cm
balloons:
  long: {kind: link, nominal: 30, inflate_to: 20, colour: "#1F5F8B", label: deep blue}
  lock: {kind: round, nominal: 13, inflate_to: 9, colour: "#F7F3E8", label: ivory}
build:
  wall: {across: 27, up: 27, layers: 1, row: long, upright: long, lock: lock}
"""


@cache
def book(name: str) -> Book:
    """A shipped design, evaluated for the training edition."""
    design = read_design(DESIGNS / f"{name}.yaml")
    return gather_book(design, PAPERS["a4"], design.units, "training")


@cache
def piece(name: str) -> Piece:
    """A shipped design as data."""
    return gather_piece(book(name), VOICES)
