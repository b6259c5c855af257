"""Pages hold when words are longer: another language, other names."""

from __future__ import annotations

import io

import pytest
from buildplan.document.flow import COMPANY, Items, Words, leaves_of, pages_of
from buildplan.document.renderer import Press, column_widths, least_widths
from pypdf import PdfReader

from buildplan.booklet.common.cautions import CHOKING_HAZARD, CHOKING_WORDS, choking_box
from buildplan.document.paper import PAPERS
from buildplan.language.speaking import LOCALES, speaking

PAPER = PAPERS["a4"]


@pytest.mark.parametrize("language", LOCALES)
def test_the_regulations_own_words_stand_in_every_language(language: str) -> None:
    """16 CFR 1500.19(b)(2): the statement itself, whatever else is said beside it."""
    with speaking(language):
        leaves = leaves_of(PAPER, "-", [choking_box(PAPER)])
        pdf = Press(PAPER, "-").print(leaves, title="-", author="-")
    read = " ".join(PdfReader(io.BytesIO(pdf)).pages[0].extract_text().split())
    for words in (CHOKING_HAZARD, *CHOKING_WORDS):
        assert words in read


def test_columns_break_no_word_and_keep_the_width_of_the_table() -> None:
    rows = [["ADVERTENCIA", "a b c d e f"], ["x", "desproporcionadamente largo"]]
    least = least_widths(rows, 4.0)
    widths = column_widths((20.0, 400.0), least)
    assert widths[0] == least[0] > 20.0
    assert sum(widths) == pytest.approx(420.0)
    assert all(wide >= low for wide, low in zip(widths, least, strict=True))


def test_columns_stay_as_wanted_where_no_word_is_too_long() -> None:
    assert column_widths((100.0, 200.0), least_widths([["a", "b"]], 4.0)) == [100.0, 200.0]


@pytest.mark.parametrize("entries", [7, 20, 40])
def test_no_paragraph_has_the_last_page_to_itself(entries: int) -> None:
    """Whatever room there is, the last page has some of the list or the list is not parted."""
    items = Items(tuple(f"entry {number}" for number in range(entries)))
    tall = items.height(400.0) + items.after
    for room in (tall + 2.0, tall / 2 + 20.0):
        pages = pages_of([items, Words("the end")], 400.0, room, room)
        assert len(pages) > 1
        assert isinstance(pages[-1][0], Items)
        lists = [one for page in pages for one in page if isinstance(one, Items)]
        listed = [text for one in lists for text in one.items]
        assert listed == list(items.items)
        assert sum(len(one.items) for one in pages[-1] if isinstance(one, Items)) >= COMPANY
