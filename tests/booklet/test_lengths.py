"""How long the star's training booklet is, in pages and in words, and how full its pages are.

The bounds are our own: what people read at the start of a working day. No source.
"""

from __future__ import annotations

import io
from pathlib import Path

import numpy as np
import pypdfium2
import pytest
import shipped

from buildplan.booklet.common.book import gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS

DESIGNS = Path(__file__).parents[2] / "designs"

MOST_PAGES, MOST_WORDS = 32, 6500
HALF, ONE_IN = 0.5, 15
# The foot of a page, and its head: neither counts as filled. Shares of the sheet's height.
FOOT, HEAD = 0.06, 0.08


def test_few_pages_and_few_words() -> None:
    texts = shipped.page_texts("reading_star")
    assert len(texts) <= MOST_PAGES
    assert sum(len(text.split()) for text in texts) < MOST_WORDS


@pytest.mark.parametrize("name", shipped.SHIPPED)
def test_few_pages_are_less_than_half_full(name: str) -> None:
    """The last page of a part aside, at most one in fifteen is."""
    with pypdfium2.PdfDocument(io.BytesIO(shipped.printed(name))) as pdf:
        filled = [_filled(page) for page in pdf]
        ends = [_begins_a_part(pdf[number]) for number in range(1, len(pdf))] + [True]
    short = [
        n
        for n, (full, end) in enumerate(zip(filled, ends, strict=True), 1)
        if full < HALF and not end
    ]
    assert len(short) <= len(filled) / ONE_IN, short


CREW_PAGES = {"reading_star": 11, "gallery/dawn_column": 12, "gallery/story_wall": 14}


@pytest.mark.parametrize("name", CREW_PAGES)
def test_a_crew_carries_few_pages(name: str) -> None:
    """Whatever the pattern: a wall took 34 pages when each of its joints was a row."""
    design = read_design(DESIGNS / f"{name}.yaml")
    data = print_booklet(gather_book(design, PAPERS["a4"], design.units, "crew"))
    with pypdfium2.PdfDocument(io.BytesIO(data)) as pdf:
        assert len(pdf) <= CREW_PAGES[name]


def _filled(page: pypdfium2.PdfPage) -> float:
    """How far down a page there is ink, as a share of what is between head and foot."""
    ink = np.asarray(page.render(scale=0.25, grayscale=True).to_pil().convert("L")) < 250
    rows = np.flatnonzero(ink.any(axis=1)) / ink.shape[0]
    within = rows[(rows > HEAD) & (rows < 1 - FOOT)]
    return float((within.max() - HEAD) / (1 - HEAD - FOOT)) if len(within) else 0.0


def _begins_a_part(page: pypdfium2.PdfPage) -> bool:
    """Whether the head of a page is empty: its title stands there."""
    text = page.get_textpage()
    width, height = page.get_size()
    return not text.get_text_bounded(0, height * (1 - 0.06), width * 0.5, height).strip()
