"""Folded booklets: ISO 216 halves, the order of a saddle-stitched sheet, gauges left whole."""

from __future__ import annotations

import io
from dataclasses import replace

import pikepdf
import pypdf
import pytest
from hypothesis import given
from hypothesis import strategies as st
from page_words import words_of, words_of_pages
from reportlab.pdfgen.canvas import Canvas
from sold_copies import sold_book

from buildplan.booklet.editions import print_folded
from buildplan.document.imposition import folded, sides
from buildplan.document.paper import PAPERS
from buildplan.language.voice import Voice


def test_eight_pages_lie_as_the_printing_trade_lays_them() -> None:
    """Saddle stitch of 8 pages: 8|1, 2|7, 6|3, 4|5 (imposition tables; from memory)."""
    assert sides(8) == [(8, 1), (2, 7), (6, 3), (4, 5)]


@given(st.integers(1, 300))
def test_folding_the_sheets_gives_the_pages_in_order(pages: int) -> None:
    """Folded by hand: sheets laid one in another, read leaf by leaf from the outside in."""
    found = sides(pages)
    assert len(found) % 2 == 0
    sheets = [(found[i], found[i + 1]) for i in range(0, len(found), 2)]
    # the right half of a front and the left half of its back are the two sides of one leaf
    first_half = [page for front, back in sheets for page in (front[1], back[0])]
    second_half = [page for front, back in reversed(sheets) for page in (back[1], front[0])]
    read = [*first_half, *second_half]
    assert [page for page in read if page is not None] == list(range(1, pages + 1))
    assert read[-1] == pages, "the last page is the back cover"
    assert read[:-1] == [*range(1, pages), *[None] * (-pages % 4)], "blanks come before it"
    assert len(read) % 4 == 0


def numbered(pages: int, size: tuple[float, float]) -> bytes:
    out = io.BytesIO()
    canvas = Canvas(out, pagesize=size)
    for number in range(1, pages + 1):
        canvas.drawString(100, 100, f"page {number}.")
        canvas.showPage()
    canvas.save()
    return out.getvalue()


def matrices(page: pypdf.PageObject) -> list[list[float]]:
    contents = page.get_contents()
    assert contents is not None
    content = contents.get_data().decode("ascii")
    return [[float(v) for v in line.split()[1:7]] for line in content.splitlines()]


def test_half_of_a4_is_a5() -> None:
    """ISO 216: A5 is 148 x 210 mm, half of A4, and of the same shape but for rounding; a page is
    made smaller by the square root of 2, to about 71 %."""
    a4 = PAPERS["a4"].sheet
    reader = pypdf.PdfReader(io.BytesIO(folded(numbered(5, a4), a4, Voice())))
    mm = 72 / 25.4
    for page in reader.pages:
        width, height = float(page.mediabox.width), float(page.mediabox.height)
        assert width / 2 == pytest.approx(148 * mm, abs=0.51 * mm)
        assert height == pytest.approx(210 * mm, abs=0.01)
        for a, b, c, d, _, _ in matrices(page):
            assert (b, c) == (0, 0)
            assert a == d == pytest.approx(2**-0.5, rel=2e-3)


def test_every_page_stays_in_its_half() -> None:
    for name in PAPERS:
        sheet = PAPERS[name].sheet
        reader = pypdf.PdfReader(io.BytesIO(folded(numbered(4, sheet), sheet, Voice())))
        for page in reader.pages:
            half = float(page.mediabox.width) / 2
            for side, (a, _, _, d, x, y) in enumerate(matrices(page)):
                assert side * half - 0.01 <= x <= x + a * sheet[0] <= (side + 1) * half + 0.01
                assert -0.01 <= y <= y + d * sheet[1] <= float(page.mediabox.height) + 0.01


def test_page_that_lies_across_is_turned_upright() -> None:
    sheet = PAPERS["a4"].sheet
    reader = pypdf.PdfReader(io.BytesIO(folded(numbered(1, sheet[::-1]), sheet, Voice())))
    ((a, b, c, d, x, y),) = matrices(reader.pages[0])
    assert (a, d) == (0, 0)
    corners = [(c * v + x, b * u + y) for u in (0, sheet[1]) for v in (0, sheet[0])]
    # the only page is the back cover, at the left
    assert all(
        -0.01 <= u <= sheet[1] / 2**0.5 + 0.01 and -0.01 <= v <= sheet[0] for u, v in corners
    )
    assert b > 0 > c, "a quarter turn, not a mirror image"


def test_print_file_says_that_it_is_not_tagged_and_leaves_the_gauges_out() -> None:
    book = replace(sold_book(), edition="training")
    sheets, gauges = print_folded(book)
    assert print_folded(book) == (sheets, gauges)
    with pikepdf.open(io.BytesIO(sheets)) as pdf:
        assert not pdf.Root.MarkInfo.Marked
        assert "/StructTreeRoot" not in pdf.Root
        assert "not tagged" in str(pdf.docinfo.Title)
    alone = pypdf.PdfReader(io.BytesIO(gauges))
    mark_info = alone.root_object["/MarkInfo"].get_object()
    assert isinstance(mark_info, pypdf.generic.DictionaryObject)
    assert mark_info["/Marked"]
    for page in alone.pages:
        assert float(page.mediabox.width) == pytest.approx(210 / 25.4 * 72, abs=0.01)
    assert all("100 %" in text for text in words_of_pages(gauges))
    assert "print at 100 %" not in words_of(sheets)
