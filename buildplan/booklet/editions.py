"""Which pages make a booklet, in what order."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial

from buildplan.booklet.common.after import standing, taking_down
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.front import cautions, cover, reading_guide
from buildplan.booklet.common.gauges import gauges_within, true_gauges
from buildplan.booklet.common.map_sheets import map_sheets
from buildplan.booklet.common.needs import needs
from buildplan.booklet.common.piece import finished_piece, joint_maps
from buildplan.booklet.common.steps import step_sections
from buildplan.booklet.crew.pages import crew_sections
from buildplan.booklet.sale.cover import sale_cover
from buildplan.booklet.sale.pages import before_you_start, licence, your_colours
from buildplan.booklet.training.pages import practice_of, practice_piece, sign_off
from buildplan.booklet.training.teaching import lessons_before
from buildplan.business.copies.serial import Copy, design_digest, sealed, serial_of
from buildplan.document.imposition import folded
from buildplan.document.printing import Document, Section, print_document
from buildplan.language.speaking import speaking


def training_sections(book: Book) -> list[Section]:
    """The pages of the training edition."""
    sheets, practice = map_sheets(book), practice_of(book)
    rest = [
        needs(book, practice.counts if practice else None),
        *gauges_within(book),
        finished_piece(book),
        *joint_maps(book, sheets),
        *practice_piece(book, practice),
        *step_sections(book, sheets, partial(lessons_before, book)),
        sign_off(book),
        standing(book),
        taking_down(book),
    ]
    return [cover(book), cautions(book), reading_guide(book, rest), *rest]


def sale_sections(book: Book) -> list[Section]:
    """The pages of the sale edition: those of the training edition, less what a trainer signs,
    and the seller's own."""
    sheets = map_sheets(book)
    rest = [
        before_you_start(book),
        needs(book),
        your_colours(book),
        *gauges_within(book),
        finished_piece(book),
        *joint_maps(book, sheets),
        *step_sections(book, sheets),
        standing(book),
        taking_down(book),
        licence(book),
    ]
    return [sale_cover(book), cautions(book), reading_guide(book, rest), *rest]


SECTIONS: Mapping[str, Callable[[Book], list[Section]]] = {
    "training": training_sections,
    "crew": crew_sections,
    "sale": sale_sections,
}


def print_booklet(book: Book, key: bytes = b"") -> bytes:
    """The whole booklet as a tagged PDF. The same book gives the same bytes.

    A sold copy gets its serial and its seal, made with the seller's `key` if there is one.
    """
    with speaking(book.language):
        return _sealed(book, key, _whole)


def print_folded(book: Book, key: bytes = b"") -> tuple[bytes, bytes]:
    """The booklet laid out for folding, not tagged; and its gauges at true size, by themselves,
    for they must not be made smaller."""

    def sheets(marked: Book) -> bytes:
        apart = replace(marked, gauges_apart=True)
        return folded(_whole(apart), marked.paper.sheet, marked.voice)

    def alone(marked: Book) -> bytes:
        title = marked.voice.say("{piece}: gauges at true size", piece=marked.facts.name)
        return _printed(marked, true_gauges(marked), title)

    with speaking(book.language):
        return _sealed(book, key, sheets), _sealed(book, key, alone)


def _sealed(book: Book, key: bytes, printed: Callable[[Book], bytes]) -> bytes:
    """What is printed of a book, marked with its serial and sealed where it is a sold copy."""
    if book.edition != "sale":
        return printed(book)
    copy = copy_of(book, keyed=bool(key))
    return sealed(printed(replace(book, serial=serial_of(copy, key))), copy, key)


def copy_of(book: Book, keyed: bool) -> Copy:
    """What the serial of a sold copy is made from."""
    return Copy(
        piece=book.facts.name,
        design=design_digest(book.design),
        edition=book.edition,
        buyer=book.buyer,
        brand=book.branding.name if book.branding is not None else "",
        paper=book.paper.name,
        units=book.units,
        language=book.language,
        keyed=keyed,
    )


def _whole(book: Book) -> bytes:
    title = book.voice.say("{piece}: build booklet", piece=book.facts.name)
    return _printed(book, SECTIONS[book.edition](book), title)


def _printed(book: Book, sections: Sequence[Section], title: str) -> bytes:
    voice = book.voice
    brand = book.design.brand if book.branding is None else book.branding.brand
    foot = book.facts.name if brand is None else f"{book.facts.name} · {brand.name}"
    if book.serial:
        marked = voice.say("printed for {buyer}", buyer=book.buyer) if book.buyer else ""
        foot = "\n".join([foot, " · ".join(filter(None, [book.serial, marked]))])
    return print_document(
        Document(
            sections,
            book.paper,
            voice,
            title,
            author="buildplan" if brand is None else brand.name,
            foot=foot,
            stamp=voice.say("DRAFT: this piece has problems") if book.facts.problems else "",
        )
    )
