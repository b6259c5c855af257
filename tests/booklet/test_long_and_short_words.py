"""Pages hold when words are 40 % longer, or half as long: measured on the printed PDF."""

from __future__ import annotations

import gettext
import io
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import combinations

import pikepdf
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from shapely.geometry import Polygon, box
from shapely.strtree import STRtree
from sold_copies import sold_book

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.editions import print_booklet
from buildplan.document.paper import PAPERS, large_print
from buildplan.language import voice

PLACEHOLDER = re.compile(r"(\{\w*\})")
WORD = re.compile(r"[^\W\d_]{2,}")
EDITIONS = ("training", "crew", "sale")
LONGER, SHORTER = 1.4, 0.5


def stretched(message: str, factor: float) -> str:
    """A message whose words are so much longer or shorter, its placeholders left alone."""

    def word(found: re.Match[str]) -> str:
        text = found[0]
        length = max(1, round(len(text) * factor))
        return (text * 2)[:length]

    parts = PLACEHOLDER.split(message)
    return "".join(p if PLACEHOLDER.fullmatch(p) else WORD.sub(word, p) for p in parts)


@dataclass
class Stretched(gettext.NullTranslations):
    """English of another length."""

    factor: float

    def __post_init__(self) -> None:
        super().__init__()

    def gettext(self, message: str) -> str:
        return stretched(message, self.factor)

    def ngettext(self, msgid1: str, msgid2: str, n: int) -> str:
        return stretched(msgid1 if n == 1 else msgid2, self.factor)

    def pgettext(self, context: str, message: str) -> str:
        return stretched(message, self.factor)


def book_in(edition: str, paper: str, *, large: bool) -> Book:
    """A bent post in the language of the moment."""
    sheet, design = PAPERS[paper], sold_book().design
    book = gather_book(design, large_print(sheet) if large else sheet, design.units, edition)
    return replace(book, branding=sold_book().branding, buyer="Zed") if edition == "sale" else book


Lines = list[tuple[Polygon, str]]


def lines_of(page: pypdfium2.PdfPage) -> Lines:
    """The lines of text that stand on a page itself, not within its pictures' forms: the box of
    each, drawn in a little for accents and tails, and its words."""
    text = page.get_textpage()
    found = []
    for item in page.get_objects(filter=[pdfium.FPDF_PAGEOBJ_TEXT], max_depth=1):
        left, low, right, high = item.get_bounds()
        inset = 0.15 * (high - low)
        words = text.get_text_bounded(left, low, right, high)
        if right - left > 1 and high - low > 2 * inset:
            found.append((box(left + 0.3, low + inset, right - 0.3, high - inset), words))
    return found


def figures_of(pdf: pikepdf.Pdf) -> Iterator[tuple[int, Polygon]]:
    """The boxes of pictures, as they are tagged: page index and box."""
    index = {page.obj.objgen: number for number, page in enumerate(pdf.pages)}

    def below(node: pikepdf.Object) -> Iterator[tuple[int, Polygon]]:
        if not isinstance(node, pikepdf.Dictionary) or "/S" not in node:
            return
        if node.S == "/Figure":
            yield index[node.Pg.objgen], box(*(float(v) for v in node.A.BBox))
        kids = node.get("/K", pikepdf.Array())
        for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
            yield from below(kid)

    yield from below(pdf.Root.StructTreeRoot.K[0])


@pytest.mark.parametrize("factor", [LONGER, SHORTER], ids=["longer", "shorter"])
@pytest.mark.parametrize(
    ("edition", "paper", "large"),
    [*((edition, "a4", False) for edition in EDITIONS), ("crew", "letter", True)],
)
def test_nothing_is_clipped_overlaps_or_runs_off(
    edition: str, paper: str, large: bool, factor: float, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(voice, "_catalogue", lambda language: Stretched(factor))
    data = print_booklet(book_in(edition, paper, large=large))
    with pikepdf.open(io.BytesIO(data)) as tagged:
        figures = list(figures_of(tagged))
    with pypdfium2.PdfDocument(data) as pdf:
        for number, page in enumerate(pdf):
            here = [figure for at, figure in figures if at == number]
            width, height = page.get_size()
            assert_clear(lines_of(page), here, box(-0.5, -0.5, width + 0.5, height + 0.5), number)


def assert_clear(lines: Lines, figures: list[Polygon], sheet: Polygon, number: int) -> None:
    """Lines lie on the sheet, off one another and, unless they are a picture's own, off pictures;
    pictures lie off one another."""
    for one, other in combinations(figures, 2):
        assert one.intersection(other).area < 1, f"pictures overlap on page {number + 1}"
    for figure in figures:
        assert sheet.contains(figure), f"a picture runs off page {number + 1}"
    own = [any(figure.contains(line.centroid) for figure in figures) for line, _ in lines]
    outside = [line for line, within in zip(lines, own, strict=True) if not within]
    for line, words in outside:
        assert sheet.contains(line), f"page {number + 1}: {words}"
        for figure in figures:
            over = figure.intersection(line).area
            assert over < 0.1 * line.area, f"page {number + 1}: {words} runs into a picture"
    boxes = [line for line, _ in outside]
    for one, other in STRtree(boxes).query(boxes).T if boxes else ():
        if one < other:
            (first, said), (second, told) = outside[one], outside[other]
            over = first.intersection(second).area
            assert over < 0.05 * min(first.area, second.area), (
                f"page {number + 1}: {said!r} over {told!r}"
            )
