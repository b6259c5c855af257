"""A piece with problems is printed as a draft: every page says so, the first says what is wrong."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pypdfium2
import pytest
from sold_copies import sold_book

from buildplan.booklet.editions import print_booklet
from buildplan.design.building import build_framework
from buildplan.hands.reading import read_draft, read_known
from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.source.kinds import FileKind
from buildplan.source.problems import DesignProblemsError, Problem, ProblemKind, in_words


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


OPEN = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link, nominal: 12, inflate_to: 8, colour: navy}
  k: {kind: round, nominal: 5, inflate_to: 3.5, colour: gold}
build:
  tube:
    closed: true
    chains: 4
    long: a
    brace: a
    lock: k
    course: [{repeat: 3, cells: [straight, fan]}]
"""


def test_a_course_that_does_not_come_round_is_read_for_a_draft(tmp_path: Path) -> None:
    """Three fans turn it by 180 degrees; with any other mistake nothing can be drawn."""
    file, voice = tmp_path / "trial.yaml", Voice()
    file.write_text(OPEN, "utf-8")
    with pytest.raises(DesignProblemsError):
        read_known(file, voice)
    design, (problem,) = read_draft(file, voice)
    assert problem.kind == FileKind.NOT_COMING_ROUND
    assert "turns 180 degrees" in in_words(problem, voice)
    assert len(build_framework(design).braces) == 6
    file.write_text(OPEN.replace("brace: a", "brace: b"), "utf-8")
    with pytest.raises(DesignProblemsError):
        read_draft(file, voice)
