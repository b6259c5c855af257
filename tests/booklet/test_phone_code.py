"""Codes of printed pages, read back by a reader of its own: ZXing's (zxing-cpp)."""

from __future__ import annotations

from dataclasses import replace
from itertools import groupby
from pathlib import Path

import pypdfium2
import pytest
import zxingcpp

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.business.copies.page_link import leads_to, page_address
from buildplan.design.model import Brand
from buildplan.design.reading import read_brand, read_design
from buildplan.document.paper import PAPERS
from buildplan.drawing.marks import Polyline
from buildplan.drawing.qr_code import qr_picture
from buildplan.instructions.stages import PART
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import jobs
from buildplan.source.problems import DesignProblemsError, in_words

DESIGN = Path(__file__).parents[2] / "designs" / "gallery" / "slim_column.yaml"
LINK = "https://lantern-street.example/slim_column?of=ñ"


def read_codes(printed: bytes) -> list[list[str]]:
    """The texts of the codes on each page."""
    with pypdfium2.PdfDocument(printed) as document:
        pages = [page.render(scale=2).to_pil() for page in document]
    return [[found.text for found in zxingcpp.read_barcodes(page)] for page in pages]


@pytest.mark.parametrize("edition", ["training", "crew"])
def test_codes_lead_to_the_piece_and_to_each_part_of_the_work(edition: str) -> None:
    design = read_design(DESIGN)
    book = gather_book(design, PAPERS["a4"], design.units, edition)
    pages = read_codes(print_booklet(replace(book, link=f"{LINK}#top")))
    assert pages[0] == [f"{LINK}#top"]
    steps = [text for page in pages[1:] for text in page]
    assert all(text.startswith(f"{LINK}#step-") for text in steps)  # what was behind a # goes
    numbers = [int(text.rpartition("-")[2]) for text in steps]
    parts = [next(part)[1] for _, part in groupby(_parts(book, edition), key=lambda one: one[0])]
    assert numbers == parts
    assert len(numbers) >= 2


def _parts(book: Book, edition: str) -> list[tuple[str, int]]:
    """The part of the work that each step is in, as the edition tells it, and its number."""
    if edition == "crew":
        return [(str(job.portable), step.number) for job in jobs(book.steps) for step in job.steps]
    return [(PART[step.stage], step.number) for step in book.steps]


def test_a_booklet_without_an_address_has_no_code() -> None:
    design = read_design(DESIGN)
    book = gather_book(design, PAPERS["a4"], design.units, "crew")
    assert not any(read_codes(print_booklet(book)))


def test_a_code_has_its_quiet_zone_and_dark_modules_alone() -> None:
    """ISO/IEC 18004: four light modules all round; version 1 has 21 modules a side."""
    marks = [mark for mark in qr_picture("A", 29.0, "a code").marks if isinstance(mark, Polyline)]
    ground, *dark = (mark.points for mark in marks)
    assert ground == ((0, 0), (29, 0), (29, 29), (0, 29))
    corners = {corner for points in dark for corner in points}
    assert corners <= {(x, y) for x in range(4, 26) for y in range(4, 26)}


def test_an_address_is_the_one_given_else_the_sellers() -> None:
    seller = Brand(name="Lantern Street Balloons", link="https://lantern-street.example/{piece}")
    design = Path("plans/short post.yaml")
    assert leads_to(None, seller, design) == "https://lantern-street.example/short%20post"
    assert leads_to("https://a.example/b", seller, design) == "https://a.example/b"
    assert leads_to(None, None, design) == ""


NO_ADDRESS = ("star", "javascript:alert(1)", "https://", "https://a b", "x" * 999)


@pytest.mark.parametrize("text", NO_ADDRESS)
def test_what_is_no_address_is_refused(text: str) -> None:
    with pytest.raises(ToldError, match="no address of a page"):
        page_address(text)


def test_a_brand_file_with_a_wrong_address_names_its_line(tmp_path: Path) -> None:
    brand = tmp_path / "brand.yaml"
    brand.write_text("name: Lantern Street Balloons\nlink: lantern-street\n", encoding="utf-8")
    with pytest.raises(DesignProblemsError) as found:
        read_brand(brand)
    (problem,) = found.value.problems
    said = in_words(problem, Voice(), "brand.yaml")
    assert said.startswith("brand.yaml:2")
    assert "https://" in said


def test_the_title_of_a_part_stands_above_its_code_and_its_first_step() -> None:
    """Of the star's sale edition too, in which the first brace with its hand moves fills a page."""
    design = read_design(DESIGN.parents[1] / "reading_star.yaml")
    book = replace(gather_book(design, PAPERS["a4"], design.units, "sale"), link=LINK)
    printed = print_booklet(book)
    with pypdfium2.PdfDocument(printed) as pdf:
        texts = [page.get_textpage().get_text_range() for page in pdf]
    parts = [next(part)[1] for _, part in groupby(_parts(book, "sale"), key=lambda one: one[0])]
    for number in parts:
        title = book.told(book.steps[number - 1]).title
        (page,) = (text for text in texts if f"from step {number} on, in 3D" in text)
        assert f"{number} {title}" in " ".join(page.split())
        assert f": steps {number} to" in page
