"""The crew pages of the star: how it is tied, who does what when, the same times on all pages; and
those of two letters on a bar."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from pathlib import Path

import pypdf
import pytest
import shipped
from page_words import words_of

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.floor_plans import plan_with_tags
from buildplan.booklet.common.manner import lifting
from buildplan.booklet.common.needs import tags_of
from buildplan.booklet.crew.corners import corners_drawn
from buildplan.booklet.crew.hand_moves import hand_moves
from buildplan.booklet.crew.pages import crew_sections
from buildplan.booklet.editions import print_booklet
from buildplan.design.reading import read_design
from buildplan.document.layout import Columns
from buildplan.document.paper import PAPERS
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.marks import Inset
from buildplan.instructions.times import duration
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import jobs
from buildplan.sequence.model import Kind
from buildplan.sequence.timetable import crew_of, timetable
from buildplan.shape.lying import put_together_standing


@pytest.fixture(scope="module")
def book() -> Book:
    return replace(shipped.book_of("reading_star"), edition="crew")


@pytest.fixture(scope="module")
def printed(book: Book) -> bytes:
    return print_booklet(book)


@pytest.fixture(scope="module")
def text(printed: bytes) -> str:
    return words_of(printed)


def test_a_crew_carries_ten_pages(printed: bytes) -> None:
    """What a table on a floor has room for, and a clip board (common practice, no source)."""
    assert len(pypdf.PdfReader(io.BytesIO(printed)).pages) <= 10


def test_the_schedule_has_every_job_once_and_says_who_comes(book: Book, text: str) -> None:
    told = text[text.index("Beforehand, in the workshop: 1 h 50") :]
    told = told[told.index("Begin at the latest") : told.index("Estimates for practised hands")]
    assert len(re.findall(r"\d+:\d\d – \d+:\d\d", told)) == len(jobs(book.steps))
    more = lifting(book) - book.facts.crew
    assert more == 1
    assert f"{more} more helps" in told
    for part in timetable(book.steps, crew_of(book.facts.crew), {}).parts:
        assert text.count(duration(Voice(), part.minutes)) >= 2  # on both pages


def test_the_crew_lays_out_by_a_plan_that_names_every_tag(book: Book) -> None:
    """The front ones; under each lies one of the back with its number."""
    laid = next(step for step in book.steps if step.kind is Kind.LAY)
    plan = plan_with_tags(book, laid, 299.0, 222.0)
    front = {tag for tag in tags_of(book.steps) if tag[0] in "AB"}
    back = {tag for tag in tags_of(book.steps) if tag[0] in "CD"}
    assert front <= set(label_boxes(plan))
    assert {book.framework.mirror[joint] for joint in front} == back
    assert [mark for mark in plan.marks if isinstance(mark, Inset)], "where one kneels"


def test_every_way_in_which_a_corner_is_tied_has_its_picture(book: Book, text: str) -> None:
    """A closed course of tips and dips that begins with a whole brace comes to its last corner with
    the short brace first: that one shares balloons of brace 1."""
    row, *_ = corners_drawn(book)
    assert isinstance(row, Columns)
    assert len(row.columns) == 3
    (last,) = (cell for cell in book.framework.cells if cell.second == 1)
    own = book.framework.brace[last.first]
    assert set(own.shared) & set(book.framework.brace[1].links)
    assert f"dip, where the tube closes Brace {own.number}: Here the tube closes" in text
    assert "brace 1 stands whole" in text


def test_no_step_of_the_training_is_named(text: str) -> None:
    assert not re.search(r"\bsteps? \d", text)


def test_every_word_of_a_table_is_told_before_it(text: str) -> None:
    """What people who had not seen the piece asked for: brace, lock, single, shares, tip, dip."""
    before = text[: text.index("Joints in order")]
    for word in ("joint: ", "knot on knot: ", "shares: ", "brace: ", "lock: ", "single: "):
        assert word in before, word
    for word in ("tip: ", "dip: "):
        assert word in before, word
    assert "this knot is joint 1" in before
    assert "by two half turns, until both sit tight" in before


def test_a_move_is_shown_once(book: Book) -> None:
    assert len(hand_moves(book)) == 2  # a brace; a lock beside a free end


def test_a_bar_between_letters_is_laid_without_a_plan_of_braces(tmp_path: Path) -> None:
    file = tmp_path / "ii.yaml"
    file.write_text(
        "buildplan: 1\nname: II\nunits: in\nballoons:\n"
        "  long: {kind: link, nominal: 6, inflate_to: 4, colour: navy}\n"
        "  lock: {kind: round, nominal: 5, inflate_to: 2.5, colour: gold}\n"
        "build: {letters: {text: II, cells: 5, long: long, brace: long, bar: long, lock: lock}}\n"
    )
    book = gather_book(read_design(file), PAPERS["a4"], "in", "crew")
    assert "On the floor" in [section.title for section in crew_sections(book)]
    assert not put_together_standing(book.framework, book.shape), "all of it is tied lying"
