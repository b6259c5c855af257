"""The training booklet of an assembly that is put together standing: two columns and an arch."""

from __future__ import annotations

import io
from dataclasses import replace

import numpy as np
import pypdf
import pytest
from shipped import DESIGNS

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.progress import BuildProgress
from buildplan.booklet.editions import print_booklet
from buildplan.design.reading import read_design
from buildplan.document.paper import PAPERS
from buildplan.sequence.model import Kind, Step


@pytest.fixture(scope="module")
def book() -> Book:
    design = read_design(DESIGNS / "gallery" / "portal.yaml")
    return gather_book(design, PAPERS["a4"], design.units, "training")


@pytest.fixture(scope="module")
def whole(book: Book) -> str:
    reader = pypdf.PdfReader(io.BytesIO(print_booklet(book)))
    return " ".join(" ".join(page.extract_text().split()) for page in reader.pages)


def _ties(book: Book) -> list[Step]:
    return [s for s in book.steps if s.kind is Kind.JOIN and "+" in s.operations[0].id]


def test_an_equal_part_is_told_once(book: Book, whole: str) -> None:
    """The second column: its steps name those of the first, and print no rows."""
    again = [step for step in book.steps if step.repeats is not None]
    assert again
    for step in again:
        assert book.told(step).text in whole
        assert all(row not in whole for row in book.told(step).rows)


def test_a_crew_reads_an_equal_part_once(book: Book) -> None:
    """The rows of the first column stand there, and one line for the second."""
    crew = replace(book, edition="crew")
    reader = pypdf.PdfReader(io.BytesIO(print_booklet(crew)))
    text = " ".join(" ".join(page.extract_text().split()) for page in reader.pages)
    assert "Parts L and R are alike: do as jobs" in text
    assert "read R for L" in text
    assert "before the next: L.B1 L.B2 L.B3 L.B4" in text
    assert "before the next: R.B1" not in text


def test_the_first_of_equal_parts_says_how_many(book: Book) -> None:
    told = [said.text for said in book.words if "Build two of this part" in said.text]
    assert len(told) == 1
    assert "L and R are alike" in told[0]


def test_the_columns_are_set_as_far_apart_as_the_feet_of_the_arch(book: Book) -> None:
    """The feet of the arch are tied on the columns, joint on joint."""
    told = book.figures.set_up
    assert told is not None
    at = book.shape.at
    feet = [np.mean([at[f"T.{joint}"] for joint in row.split()], axis=0) for row in FEET]
    assert told.standing == ("L", "R")
    assert told.lifted == told.lying == ("T",)
    assert told.apart_m == pytest.approx([np.linalg.norm(feet[1] - feet[0])], rel=0.03)


FEET = ("A1 B1 C1 D1", "A13 B9 C9 D13")


def test_parts_are_set_up_before_the_first_is_tied_and_once(book: Book) -> None:
    first, *others = _ties(book)
    assert "Part T was built lying" in book.told(first).text
    assert all("built lying" not in book.told(step).text for step in others)


def test_a_part_is_drawn_alone_until_it_is_tied(book: Book) -> None:
    progress = BuildProgress(book)
    laid = next(step for step in book.steps if step.kind is Kind.LAY)
    assert {name[0] for name in progress.finished(laid).bodies.names} == {"T"}
    braced = next(step for step in book.steps if step.kind is Kind.BRACE)
    shown = progress.at_turns(braced, [0], braced.turns[0].joints)
    assert {name[0] for name in shown.bodies.names} == {"T"}
    tied = _ties(book)[-1]
    assert {name[0] for name in progress.whole(tied).bodies.names} == {"L", "R", "T"}


def test_each_part_has_its_own_head_and_its_own_count(book: Book, whole: str) -> None:
    for head in ("Part L: steps", "Part R: steps", "Part T: steps", "Tie together: steps"):
        assert head in whole
    assert "Brace and lock joints:" not in whole
    assert "Part L: 20/20 joints" in whole
    assert "8/8 ties between parts" in whole
