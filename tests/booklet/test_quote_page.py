"""The customer's page of a quote: the same total, and nothing that is the seller's own."""

from __future__ import annotations

import csv
import re
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pdfua
import pypdfium2
import pytest
from page_words import words_of_pages
from shipped import DESIGNS, book_of

from buildplan.booklet.common.book import Book
from buildplan.booklet.office.quote_page import print_quote
from buildplan.business.buying.money import Quote, QuoteItem, money_words
from buildplan.business.buying.money import quote as quote_of
from buildplan.business.copies.brand import Branding, branding
from buildplan.business.quoting.offer import Offer, Party, PricedPiece, QuotedPiece
from buildplan.business.quoting.quote_words import quote_rows
from buildplan.design.model import Rates
from buildplan.design.reading import read_brand
from buildplan.document.paper import PAPERS, Paper, mm
from buildplan.language.voice import LOCALES, Voice
from buildplan.source.csv_text import csv_bytes

A4 = PAPERS["a4"]
BRAND_FILE = DESIGNS / "brand" / "lantern_street.yaml"
BRAND = branding(read_brand(BRAND_FILE), BRAND_FILE)


@pytest.fixture(scope="module")
def book() -> Book:
    return book_of("picture_frame")


def priced(book: Book, rates: Rates | None = None) -> Quote:
    currency, own = book.design.currency, book.design.rates
    assert currency is not None
    assert own is not None
    return quote_of(book.facts.purchases, book.facts.work_minutes, currency, rates or own)


def offer(book: Book, quote: Quote, customer: str = "", days: int | None = None) -> Offer:
    line = PricedPiece(QuotedPiece("picture_frame.yaml", book), quote.price)
    return Offer(quote, (line,), Party(customer), valid_days=days)


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
@pytest.mark.parametrize("language", LOCALES)
def test_it_is_one_accessible_page(book: Book, paper: Paper, language: str, tmp_path: Path) -> None:
    """pdfua (a subset of ISO 14289-1): no rule has a finding."""
    made = offer(book, priced(book), "Zed", 30)
    data = print_quote(made, paper, BRAND, Voice(language))
    assert len(words_of_pages(data)) == 1
    with pypdfium2.PdfDocument(data) as document:
        words = document[0].get_textpage()
        lowest = min(words.get_rect(i)[1] for i in range(words.count_rects()))
    assert lowest >= mm(10), "all of it is on the sheet, within what printers reach"
    path = tmp_path / "quote.pdf"
    path.write_bytes(data)
    assert not pdfua.validate(str(path)).findings


def test_a_quote_of_an_event_names_it_and_keeps_off_the_edge_without_a_brand(book: Book) -> None:
    job = replace(offer(book, priced(book)), job="Night market")
    job = replace(job, lines=(*job.lines, *job.lines))
    data = print_quote(job, A4, None, Voice())
    first, *others = words_of_pages(data)
    assert "Quote for Night market" in first
    assert len(others) == 2, "a page for each piece"
    with pypdfium2.PdfDocument(data) as document:
        words = document[0].get_textpage()
        highest = max(words.get_rect(i)[3] for i in range(words.count_rects()))
    assert A4.height - highest >= mm(10)


def test_price_and_tax_make_the_total_of_the_quote(book: Book) -> None:
    made = priced(book)
    (text,) = words_of_pages(print_quote(offer(book, made), A4, None, Voice()))
    shown = [Decimal(amount.replace(",", "")) for amount in re.findall(r"£([\d,.]+\d)", text)]
    assert shown == [made.price, made.sum(QuoteItem.TAX), made.total]
    assert shown[0] + shown[1] == shown[2]


def test_no_cost_margin_or_rate_is_shown(book: Book) -> None:
    made = priced(book)
    (text,) = words_of_pages(print_quote(offer(book, made, "Zed", 30), A4, BRAND, Voice()))
    for line in made.lines:
        if line.item is not QuoteItem.TAX:
            assert money_words(line.amount, made.currency, book.voice) not in text
    assert money_words(made.cost, made.currency, book.voice) not in text
    assert "argin" not in text
    assert "pack" not in text
    assert BRAND.name in text
    assert f"{book.facts.total} latex balloons" in text


def test_what_is_not_priced_is_not_promised(book: Book) -> None:
    bare = Rates(hour=Decimal(18), margin=Decimal("0.35"))
    (text,) = words_of_pages(print_quote(offer(book, priced(book, bare)), A4, None, Voice()))
    assert "taking away are not included" in text
    assert "no tax is added" in text
    assert "Tax," not in text


@pytest.mark.parametrize(
    ("days", "words"),
    [(1, "Valid for 1 day from"), (30, "Valid for 30 days from"), (None, "Valid for ______ days")],
)
def test_how_long_it_holds(book: Book, days: int | None, words: str) -> None:
    (text,) = words_of_pages(print_quote(offer(book, priced(book), "", days), A4, None, Voice()))
    assert words in text


def test_amounts_are_written_as_the_language_does() -> None:
    """Unicode CLDR: a point between thousands and a comma before decimals in Spanish, and the
    euro sign behind after a no-break space."""
    assert money_words(Decimal("1234.50"), "EUR", Voice()) == "€1,234.50"
    assert money_words(Decimal("1234.50"), "EUR", Voice("es")) == "1.234,50\N{NO-BREAK SPACE}€"


def test_tables_can_be_read_by_machines_in_every_language(book: Book) -> None:
    made = priced(book)
    table = csv_bytes(quote_rows(made, book.units, Voice("es"))).decode("utf-8-sig")
    head, *rows = table.splitlines()
    assert head != "item,what,amount,currency"
    amounts = [Decimal(row["amount"]) for row in csv.DictReader(rows, ["", "", "amount", ""])]
    assert amounts == [*(line.amount for line in made.lines), made.total]


def test_it_says_the_warning_of_the_regulation(book: Book) -> None:
    """16 CFR 1500.19(b)(2) by way of EDItEUR ONIX code list 143, value 02."""
    (text,) = words_of_pages(print_quote(offer(book, priced(book)), A4, BRAND, Voice()))
    flat = " ".join(re.findall(r"[a-z0-9]+", text.lower()))
    assert (
        "warning choking hazard children under 8 yrs can choke or suffocate on uninflated or "
        "broken balloons adult supervision required"
    ) in flat


@pytest.mark.parametrize("brand", [None, BRAND], ids=["plain", "branded"])
def test_a_quote_of_many_pieces_goes_on_on_the_next_page(
    book: Book, brand: Branding | None
) -> None:
    """Each piece is named once, and nothing comes nearer to an edge than printers reach."""
    one = offer(book, priced(book))
    (line,) = one.lines
    lines = tuple(
        replace(line, piece=replace(line.piece, made=replace(book, facts=named)))
        for number in range(20)
        for named in [replace(book.facts, name=f"Piece-{number:02} {'long ' * 14}")]
    )
    data = print_quote(replace(one, lines=lines, job="Night market"), A4, brand, Voice())
    first, second, *each = words_of_pages(data)
    assert len(each) == 20
    assert re.findall(r"Piece-\d\d", first + second) == [f"Piece-{n:02}" for n in range(20)]
    assert "Accepted" in second
    with pypdfium2.PdfDocument(data) as document:
        words = document[1].get_textpage()
        boxes = [words.get_rect(i) for i in range(words.count_rects())]
    assert min(box[1] for box in boxes) >= mm(10)
    assert A4.height - max(box[3] for box in boxes) >= mm(10)
