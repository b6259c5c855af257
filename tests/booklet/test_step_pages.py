"""The pages that steps lead to are the pages where those steps, and the pictures of their moves,
stand: in every edition that has steps in full, on any paper, in any language."""

from __future__ import annotations

import io
import re
from dataclasses import replace

import pypdfium2
import pytest
import shipped
from sold_copies import sold_book

from buildplan.booklet.common.book import Book
from buildplan.booklet.editions import print_booklet
from buildplan.document.paper import PAPERS
from buildplan.framework.cells import TIP
from buildplan.language.messages import mark
from buildplan.language.voice import Voice

STEP, PRACTISED = mark("step {step}: page {page}"), mark("shown from page {page}")
EDITIONS = [
    ("training", "letter", "en"),
    ("training", "a4", "de"),
    ("training", "a4", "fr"),
    ("sale", "a4", "es"),
    ("sale", "letter", "pt"),
]


def told(voice: Voice, message: str) -> re.Pattern[str]:
    """What leads to a page, its step and its page as groups."""
    said = " ".join(voice.say(message, step="@@", page="##").split())
    return re.compile(re.escape(said).replace("@@", r"(\d+)").replace(r"\#\#", r"(\d+)"))


def held(book: Book, pages: list[str]) -> tuple[set[int], set[int]]:
    """The steps that the pages lead to, and the pages with pictures, each found where it is said
    to be."""
    steps, practised = set(), set()
    for text in pages:
        for step, page in told(book.voice, STEP).findall(text):
            title = book.told(book.steps[int(step) - 1]).title
            assert f"{step} {title}" in pages[int(page) - 1]
            steps.add(int(step))
        for page in told(book.voice, PRACTISED).findall(text):
            title = book.voice.say("A first practice piece")
            assert title in pages[int(page) - 1]
            practised.add(int(page))
    return steps, practised


@pytest.mark.parametrize(("edition", "paper", "language"), EDITIONS)
def test_steps_lead_to_the_right_pages(edition: str, paper: str, language: str) -> None:
    book = replace(sold_book(), edition=edition, paper=PAPERS[paper], language=language)
    with pypdfium2.PdfDocument(io.BytesIO(print_booklet(book))) as pdf:
        pages = [" ".join(page.get_textpage().get_text_range().split()) for page in pdf]
    steps, practised = held(book, pages)
    assert steps >= {number for one in book.steps for number in book.told(one).as_in}
    assert bool(practised) is (edition == "training")


def test_the_star_leads_back_to_what_it_teaches() -> None:
    """To the braces' step, from the first that is done like it, and to that of its corners; and its
    braces and corners to the pages where they were practised."""
    book = shipped.book_of("reading_star")
    steps, practised = held(book, list(shipped.page_texts("reading_star")))
    first = next(step.number for step in book.steps if step.kind == "brace")
    tip = next(step.number for step in book.steps if TIP in step.cells)
    assert {first, tip} <= steps
    assert len(practised) == 2
