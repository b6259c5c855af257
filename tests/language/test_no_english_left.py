"""Every word of every page is a catalogue's, or the user's own.

The pages are printed in a made-up language, whose catalogue writes each message in Cyrillic
letters: a Latin word on such a page came past the catalogues. Then pages in every other language
are read for words that only English messages have.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pikepdf
import pypdfium2
import pytest
from babel.messages.pofile import read_po
from made_up_language import PLACEHOLDER, WORD, speak_made_up

from buildplan.booklet.common.book import Book, gather_book
from buildplan.booklet.common.cautions import CHOKING_HAZARD, CHOKING_WORDS
from buildplan.booklet.editions import print_booklet
from buildplan.business.copies.brand import branding
from buildplan.design.reading import read_brand, read_design
from buildplan.design.translating import translated_brand, translated_design
from buildplan.document.paper import PAPERS
from buildplan.language.voice import CATALOGUES, ENGLISH

DESIGNS = Path(__file__).parent.parent.parent / "designs"
BRAND = DESIGNS / "brand" / "lantern_street.yaml"
# a piece for each language; between them all that are shipped
PIECES = [
    ("es", "walk_through_gate"),
    ("de", "reading_star"),
    ("fr", "picture_frame"),
    ("pt", "walk_through_gate"),
]
EDITIONS = ["training", "crew", "sale"]
LEFT_ALONE = {
    "buildplan",  # our name
    "verify",  # a command's
    "and",  # of the list pattern, which is CLDR's
    "in",  # symbols of units, on the ruler
    "mm",
}
# with accents too: no English word is found within another language's
LETTERS = re.compile(r"[^\W\d_]{2,}")
SERIAL = re.compile(r"[A-Z0-9]{4}(-[A-Z0-9]{2,6})+")


def printed(name: str, edition: str, language: str = ENGLISH) -> tuple[Book, bytes]:
    design = translated_design(read_design(DESIGNS / f"{name}.yaml"), language)
    book = gather_book(design, PAPERS["a4"], design.units, edition, language)
    if edition == "sale":
        brand = branding(translated_brand(read_brand(BRAND), language), BRAND)
        book = replace(book, branding=brand, buyer="Zed")
    return book, print_booklet(book)


def words_of(pdf: bytes) -> Iterator[tuple[str, str]]:
    """Everything that a reader can read or hear of a document, with where it stands."""
    with pypdfium2.PdfDocument(pdf) as document:
        for number, page in enumerate(document, start=1):
            yield f"page {number}", page.get_textpage().get_text_range()
    with pikepdf.open(io.BytesIO(pdf)) as document:
        yield "title", str(document.docinfo.get("/Title", ""))
        for number, thing in enumerate(document.objects):
            if isinstance(thing, pikepdf.Dictionary):
                for key in ("/Alt", "/ActualText", "/E", "/Contents", "/Title"):
                    value = thing.get(key)
                    if isinstance(value, pikepdf.String):
                        yield f"object {number} {key}", str(value)


def own_words(book: Book) -> set[str]:
    """Words that the user wrote: names, labels, notes, brand, keys."""
    design, brand = book.design, book.branding
    texts = [design.name, *design.text.values(), *design.balloons, design.currency or ""]
    texts += [balloon.label for balloon in design.balloons.values()]
    for one in (design.brand, brand.brand if brand is not None else None):
        if one is not None:
            texts += [one.name, one.contact, one.licence]
    texts += [book.buyer, book.paper.name]
    # the regulation is quoted in its own words
    texts += [CHOKING_HAZARD, *CHOKING_WORDS]
    return {word.lower() for text in texts for word in WORD.findall(text)}


def left(book: Book, pdf: bytes) -> list[str]:
    allowed = own_words(book) | LEFT_ALONE
    found = []
    for where, text in words_of(pdf):
        for word in WORD.findall(SERIAL.sub("", text)):
            if word.lower() not in allowed:
                found.append(f"{where}: {word} in {' '.join(text.split())[:120]!r}")
    return found


@pytest.mark.parametrize("edition", EDITIONS)
def test_every_word_on_every_page_comes_from_the_catalogues(
    edition: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    speak_made_up(monkeypatch)
    assert left(*printed("reading_star", edition)) == []


@cache
def english_only(language: str) -> frozenset[str]:
    """Words that stand in English messages and in none of the language's."""
    path = CATALOGUES / language / "LC_MESSAGES" / "buildplan.po"
    with path.open("rb") as file:
        messages = [m for m in read_po(file) if m.id]
    return frozenset(words_in(m.id for m in messages) - words_in(m.string for m in messages))


def words_in(texts: Iterable[object]) -> set[str]:
    """The words of messages, each with one form or several."""
    return {
        word.lower()
        for text in texts
        for form in (text if isinstance(text, (tuple, list)) else (text,))
        for word in LETTERS.findall(PLACEHOLDER.sub("", str(form)))
    }


@pytest.mark.parametrize(("language", "name"), PIECES)
@pytest.mark.parametrize("edition", EDITIONS)
def test_no_english_is_left_on_pages_in_other_languages(
    language: str, name: str, edition: str
) -> None:
    book, pdf = printed(name, edition, language)
    own = own_words(book)
    for where, text in words_of(pdf):
        assert words_in([text]) & english_only(language) <= own, where


@pytest.mark.parametrize(
    ("language", "navy", "peach"),  # from memory
    [("de", "marineblau", "pfirsich"), ("es", "azul marino", "melocotón"), ("en", "navy", "Peach")],
)
def test_colours_of_ours_are_called_as_the_reader_does(
    language: str, navy: str, peach: str, tmp_path: Path
) -> None:
    """A label of the file's own is left as it is."""
    file = tmp_path / "ring.yaml"
    file.write_text(
        "buildplan: 1\nname: Ring\nunits: in\nballoons:\n"
        "  a: {kind: link, nominal: 12, inflate_to: 8, colour: navy}\n"
        '  b: {kind: link, nominal: 12, inflate_to: 8, colour: "#FFDAB9", label: Peach}\n'
        '  c: {kind: link, nominal: 12, inflate_to: 8, colour: "#204060", label: Nachtblau}\n'
        "  l: {kind: round, nominal: 5, inflate_to: 3.5, colour: gold}\n"
        "build: {solid: {shape: octahedron, edge: a, lock: l}}\n"
    )
    balloons = translated_design(read_design(file), language).balloons
    assert [balloons[key].label for key in "abc"] == [navy, peach, "Nachtblau"]
