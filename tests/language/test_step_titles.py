"""Spanish titles of steps are in one grammatical form."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from buildplan.booklet.common.book import gather_book
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS

DESIGNS = Path(__file__).parents[2] / "designs"
PIECES = ["reading_star", "gallery/story_wall", "gallery/dawn_column", "gallery/portal"]
# Titles that name what is tied and not what is done.
NAMED = re.compile(r"(Travesaños?|Globos? sueltos?) ")


@pytest.mark.parametrize("name", PIECES)
def test_spanish_titles_are_infinitives(name: str) -> None:
    """As headings of instructions are in Spanish: -ar, -er, -ir (Nueva gramatica de la lengua
    espanola, on the infinitive in instructions; from memory)."""
    design = read_design(DESIGNS / f"{name}.yaml")
    book = gather_book(design, PAPERS["a4"], design.units, "training", "es")
    for step in book.steps:
        title = re.sub(r"^Parte \S+: ", "", book.told(step).title)
        if "como la parte" not in title and not NAMED.match(title):
            assert re.match(r"\w+[aei]r\b", title.lower()), title
