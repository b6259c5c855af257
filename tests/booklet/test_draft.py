"""A piece with problems is printed as a draft: every page says so, the first says what is wrong."""

from __future__ import annotations

from dataclasses import replace

import pypdfium2
import pytest
from sold_copies import sold_book

from buildplan.booklet.editions import print_booklet
from buildplan.language.messages import message
from buildplan.source.problems import Problem, ProblemKind


class Made(ProblemKind):
    """Kinds of problem of this test alone."""

    WRONG = "wrong"


PROBLEM = Problem(Made.WRONG, message("The post has no head."), joints=("A1", "B2"))


@pytest.mark.parametrize("edition", ["training", "crew", "sale"])
def test_every_page_of_a_draft_says_so_and_the_first_says_why(edition: str) -> None:
    book = sold_book()
    facts = replace(book.facts, problems=(PROBLEM,))
    with pypdfium2.PdfDocument(print_booklet(replace(book, edition=edition, facts=facts))) as pdf:
        pages = [" ".join(page.get_textpage().get_text_range().split()) for page in pdf]
    assert all("DRAFT" in page for page in pages)
    assert "at A1 and B2: The post has no head." in pages[0]
    assert "do not build" in pages[0]


def test_what_is_no_draft_does_not_say_so() -> None:
    with pypdfium2.PdfDocument(print_booklet(replace(sold_book(), edition="crew"))) as pdf:
        assert not any("DRAFT" in page.get_textpage().get_text_range() for page in pdf)
