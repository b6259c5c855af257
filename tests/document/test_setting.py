"""How blocks are set on pages: what stays together, what is parted, what a last page has."""

from __future__ import annotations

import io
import re

import pypdfium2
import pytest
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable, Paragraph

from buildplan.document.blocks import Items, Shown, Stack, Words, heading, together
from buildplan.document.layout import Columns, Either, Filled
from buildplan.document.links import Anchor, ContentsLine
from buildplan.document.paper import PAPERS
from buildplan.document.parting import parts_of_word
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.spare_room import Lowest
from buildplan.document.tables import Grid
from buildplan.document.text import BODY, column_widths, fitted, least_widths
from buildplan.drawing.fonts import text_width
from buildplan.drawing.marks import Picture
from buildplan.language.voice import Voice

PAPER = PAPERS["a4"]
WORDS = "so many words that a line is full of them and a second one begins " * 2


def pages_of(*blocks: Flowable, titled: bool = False) -> list[str]:
    """The words of each page of a section made of some blocks."""
    section = Section("Title", blocks, titled=titled)
    data = print_document(Document([section], PAPER, Voice(), "-"))
    with pypdfium2.PdfDocument(io.BytesIO(data)) as pdf:
        return [" ".join(page.get_textpage().get_text_range().split()) for page in pdf]


def entries(page: str) -> list[int]:
    return [int(number) for number in re.findall(r"entry (\d+)\.", page)]


def items(count: int) -> Items:
    return Items([f"entry {number}." for number in range(count)])


@pytest.mark.parametrize("count", [3, 38, 39, 40, 41, 42, 43, 80, 81, 82])
def test_a_list_is_told_once_in_order_and_no_last_page_has_next_to_nothing(count: int) -> None:
    pages = pages_of(items(count), Words("the end"))
    assert [n for page in pages for n in entries(page)] == list(range(count))
    assert "the end" in pages[-1]
    if len(pages) > 1:
        assert len(entries(pages[-1])) >= 4


def test_the_last_of_a_list_is_not_alone_on_a_page() -> None:
    """What follows the list fills that page, so that nothing else would bring it company."""
    for before in range(30, 45):
        pages = pages_of(Words("above"), items(before), *(Words(f"line {n}.") for n in range(20)))
        assert all(len(entries(page)) != 1 for page in pages)


def test_a_heading_stays_with_what_follows() -> None:
    for before in range(30, 45):
        pages = pages_of(items(before), heading("Heading"), Words("What follows."))
        (page,) = (page for page in pages if "Heading" in page)
        assert "What follows." in page


def test_what_belongs_together_is_not_parted() -> None:
    for before in range(30, 45):
        pages = pages_of(items(before), together(*(Words(f"line {n}.") for n in range(9))))
        assert sum("line" in page for page in pages) == 1


@pytest.mark.parametrize("titles", [1, 2, 4])
def test_titles_do_not_stand_alone_above_what_has_a_page_only_without_them(titles: int) -> None:
    """What would be whole on a page of its own is parted below titles, however high they are."""
    high = [heading(f"Heading {n}.") for n in range(titles)]
    pages = pages_of(*high, together(*(Words(f"line {n}.") for n in range(40))))
    assert len(pages) == 2
    assert f"Heading {titles - 1}." in pages[0]
    assert "line 30." in pages[0]


def test_below_a_title_a_picture_as_high_as_a_page_has_a_page() -> None:
    for high in range(600, 760, 20):
        picture = Shown(Picture(300, high, (), "-"))
        pages = pages_of(heading("Heading"), Stack([picture, Words("below"), items(30)]))
        assert entries(" ".join(pages)) == list(range(30))


def test_what_may_be_told_in_another_way_fills_the_page_it_is_parted_on() -> None:
    lines = [Words(f"line {n}.") for n in range(40)]
    pages = pages_of(heading("Heading"), together(Either(together(*lines), lines)))
    assert "line 30." in pages[0]


def test_columns_run_on_when_no_page_holds_them() -> None:
    pages = pages_of(Columns([[items(90)], [Words("beside")]]))
    assert [n for page in pages for n in entries(page)] == list(range(90))
    assert len(pages) == 3


def test_a_table_repeats_its_head_and_parts_no_row() -> None:
    rows = [(f"row {n}.", f"{WORDS} end {n}.") for n in range(60)]
    pages = pages_of(Grid(("First", "Second"), rows, (1, 3)))
    assert len(pages) > 1
    for page in pages:
        assert page.count("First Second") == 1
        begun = re.findall(r"row (\d+)\.", page)
        assert begun == re.findall(r"end (\d+)\.", page)
        assert len(begun) >= 2


def test_a_picture_fills_what_the_words_leave() -> None:
    asked: list[tuple[float, float]] = []

    def make(width: float, height: float) -> Picture:
        asked.append((width, height))
        return Picture(width, height, (), "a picture")

    pages = pages_of(Filled([Words("above")], make, [Words("below")]))
    assert len(pages) == 1
    assert {round(width) for width, _ in asked} == {round(PAPER.measure)}
    room = PAPER.top - PAPER.bottom
    assert room - 60 < asked[-1][1] < room
    long = [Words(WORDS) for _ in range(24)]
    assert len(pages_of(Filled(long, make, [Words("below")]))) == 2


def test_a_picture_whose_words_fill_a_page_has_the_next() -> None:
    """What is above it goes to a new page first, and leaves no room for it there either."""

    def make(width: float, height: float) -> Picture:
        return Picture(width, height, (), "-")

    for count in range(36, 44):
        above = [Words(f"line {n}.") for n in range(count)]
        pages = pages_of(Filled(above, make, [Words("below")]), titled=True)
        assert f"line {count - 1}." in " ".join(pages)
        assert "below" in pages[-1]


def test_a_picture_with_a_page_of_words_below_it_stands_before_them() -> None:
    def make(width: float, height: float) -> Picture:
        return Picture(width, height, (), "-")

    below = [Words(f"line {n}.") for n in range(38)]
    pages = pages_of(Filled([Words("above")], make, below), titled=True)
    assert "above" in pages[0]
    assert "line 37." in pages[-1]


def test_a_picture_is_never_larger_than_its_page() -> None:
    assert len(pages_of(Shown(Picture(5000.0, 9000.0, (), "large")), Words("after"))) == 2


def test_page_numbers_are_those_of_the_pages() -> None:
    def line(n: int) -> ContentsLine:
        return ContentsLine(f"place {n}", lambda _: f"place {n}", lambda page: f"page {page}")

    lines = [line(n) for n in range(70)]  # the contents themselves take more than a page
    places = [
        block
        for n in range(70)
        for block in (Anchor(f"place {n}"), Words(f"here is {n}. {WORDS * 3}"))
    ]
    pages = pages_of(*lines, *places)
    contents = " ".join(pages[:3])
    for n in range(70):
        (at,) = (number for number, page in enumerate(pages, 1) if f"here is {n}." in page)
        assert re.search(rf"place {n} {at}\b", contents)


def test_columns_break_no_word_and_keep_the_width_of_the_table() -> None:
    rows = [["ADVERTENCIA", "a b c d e f"], ["x", "desproporcionadamente largo"]]
    least = least_widths(rows, 4.0)
    widths = column_widths((20.0, 400.0), least)
    assert widths[0] == least[0] > 20.0
    assert sum(widths) == pytest.approx(420.0)
    assert all(wide >= low for wide, low in zip(widths, least, strict=True))


def test_columns_stay_as_wanted_where_no_word_is_too_long() -> None:
    assert column_widths((100.0, 200.0), least_widths([["a", "b"]], 4.0)) == [100.0, 200.0]


def test_one_long_word_takes_no_width_from_words_that_others_have() -> None:
    rows = [["Label", "Holds", "Loaded"], ["W" * 80, "chains of twelve", "x"]]
    least = least_widths(rows, 2.0)
    widths = column_widths((300.0, 100.0, 30.0), least)
    assert widths[1] >= least_widths([["Holds chains twelve"]], 2.0)[0] - 60
    assert all(wide >= low for wide, low in zip(widths, least, strict=True))
    narrow = column_widths((100.0, 60.0, 30.0), least)
    assert sum(narrow) == pytest.approx(190.0)
    assert narrow[1:] == least[1:], "the widest alone gives way"


@pytest.mark.parametrize(
    ("word", "parts"),
    [
        ("\u0e40\u0e01\u0e49\u0e32", ["\u0e40\u0e01\u0e49\u0e32"]),  # one syllable of Thai
        ("\u8bfb\uff0c\u661f\u3002", ["\u8bfb\uff0c", "\u661f\u3002"]),
        ("\u300c\u661f\u300d\u8bfb", ["\u300c\u661f\u300d", "\u8bfb"]),
        ("ab", ["a", "b"]),
    ],
)
def test_a_word_is_parted_where_its_script_allows(word: str, parts: list[str]) -> None:
    """JIS X 4051 (from memory): no line begins with what closes, none ends with what opens."""
    assert parts_of_word(word) == parts


@pytest.mark.parametrize("letter", ["a", "!", "(", "e\u0301", "a."])
@pytest.mark.parametrize("bold", ["{}", "x <b>{}</b>"], ids=["alone", "styled"])
def test_a_word_of_many_lines_keeps_within_them(letter: str, bold: str) -> None:
    paragraph = Paragraph(bold.format(letter * 300), BODY)
    _, tall = paragraph.wrap(150.0, 1000.0)
    assert tall >= 5 * BODY.leading
    canvas = Canvas(out := io.BytesIO(), pagesize=(170, 2000), initialFontName=BODY.fontName)
    paragraph.drawOn(canvas, 10, 10)
    canvas.save()
    with pypdfium2.PdfDocument(out.getvalue()) as pdf:
        page = pdf[0].get_textpage()
        text = page.get_text_range()
        right = max(page.get_charbox(at)[2] for at, sign in enumerate(text) if sign.strip())
    assert right <= 161.0
    assert len(re.findall("[\u00e9e]" if letter[0] == "e" else re.escape(letter[0]), text)) >= 300
    assert not re.search("(^|\n)\u0301", text)


def test_what_stands_in_full_elsewhere_is_cut_rather_than_too_small_to_read() -> None:
    short, size = fitted("a name", 200.0, 10.0)
    assert (short, size) == ("a name", 10.0)
    words, size = fitted("one name, and another, " * 9, 200.0, 10.0)
    assert size == 7.0
    assert words.startswith("one name, and another")
    assert words.endswith("\u2026")
    assert 180.0 < text_width(words, size) <= 200.0
    # a letter goes with its marks: not cut between them
    marked, _ = fitted("e\u0301" * 200, 200.0, 10.0)
    assert marked.removesuffix("\u2026").endswith("\u0301")


def test_of_shapes_that_hold_the_same_the_lowest_is_set() -> None:
    told = [Words(f"line {n}.") for n in range(30)]
    high, low = Columns([told]), Columns([told[::2], told[1::2]])
    assert len(pages_of(Lowest([high, low]), items(20))) == 1
    assert len(pages_of(Lowest([high]), items(20))) == 2
