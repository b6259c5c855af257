"""How long the star's training booklet is, in pages and in words, and how full its pages are.

The bounds are our own: what people read at the start of a working day. No source.
"""

from __future__ import annotations

import io
from pathlib import Path

import pypdfium2
import pytest
import shipped
from page_fill import page_fill

from buildplan.booklet.common.book import gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS

DESIGNS = Path(__file__).parents[2] / "designs"

MOST_PAGES, MOST_WORDS = 32, 6500


def test_few_pages_and_few_words() -> None:
    texts = shipped.page_texts("reading_star")
    assert len(texts) <= MOST_PAGES
    assert sum(len(text.split()) for text in texts) < MOST_WORDS


@pytest.mark.parametrize("name", [*shipped.SHIPPED, "gallery/slim_column"])
def test_no_page_is_less_than_half_full(name: str) -> None:
    """The last page of a part aside. A column's practice piece once had a page nearly to itself."""
    assert page_fill(shipped.printed(name)).short == ()


CREW_PAGES = {"reading_star": 10, "gallery/dawn_column": 12, "gallery/story_wall": 14}


@pytest.mark.parametrize("name", CREW_PAGES)
def test_a_crew_carries_few_pages(name: str) -> None:
    """Whatever the pattern: a wall took 34 pages when each of its joints was a row."""
    design = read_design(DESIGNS / f"{name}.yaml")
    data = print_booklet(gather_book(design, PAPERS["a4"], design.units, "crew"))
    with pypdfium2.PdfDocument(io.BytesIO(data)) as pdf:
        assert len(pdf) <= CREW_PAGES[name]
