"""Which pages make a booklet, in what order."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace

from buildplan.booklet.common.after import notes, standing, taking_down
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import plan_views
from buildplan.booklet.common.front import cautions, cover, reading_guide
from buildplan.booklet.common.gauges import gauges_within, true_gauges
from buildplan.booklet.common.map_sheets import map_sheets
from buildplan.booklet.common.needs import needs
from buildplan.booklet.common.piece import finished_piece, joint_maps
from buildplan.booklet.common.steps import step_sections
from buildplan.booklet.crew.pages import crew_sections
from buildplan.booklet.sale.copy_words import FOOT, words_of_copy
from buildplan.booklet.sale.cover import sale_cover
from buildplan.booklet.sale.pages import before_you_start, licence, your_colours
from buildplan.booklet.training.pages import beginners_total, sign_off
from buildplan.booklet.training.practice_page import (
    learnt_before,
    practice_minutes,
    practice_of,
    practice_pages,
    practised,
    practised_at,
    taught_by,
)
from buildplan.booklet.training.teaching import lessons_of
from buildplan.business.copies.filling import Sold, sold_copies
from buildplan.business.copies.serial import SoldCopy, design_digest, serial_of
from buildplan.document.blanks import Blank
from buildplan.document.imposition import folded
from buildplan.document.paper import high_set
from buildplan.document.printing import Document, Section, print_document
from buildplan.document.text import SMALL
from buildplan.drawing.typeset.font_files import with_fonts
from buildplan.language.isolates import isolated
from buildplan.sequence.model import Kind


def training_sections(book: Book) -> list[Section]:
    """The pages of the training edition."""
    views, sheets, practice = plan_views(book), map_sheets(book), practice_of(book)
    taught, practising = taught_by(book, practice), practice_minutes(book, practice)
    rest = [
        needs(book, practised(book, practice)),
        *gauges_within(book),
        finished_piece(book),
        *joint_maps(book, sheets),
        *practice_pages(book, practice),
        *step_sections(
            book,
            views,
            sheets,
            lambda step: lessons_of(book, learnt_before(book, practice, step), step),
            taught - {Kind.JOIN},  # more balloons may meet in the piece
            practised_at(book, practice),
        ),
        standing(book),
        taking_down(book),
        sign_off(book, practising),
    ]
    first_build = (
        book.voice.say("one beginner, with the practice piece")
        if practice
        else book.voice.say("hours of one beginner"),
        beginners_total(book, practising),
    )
    return [cover(book, first_build), cautions(book), reading_guide(book, views, rest), *rest]


def sale_sections(book: Book) -> list[Section]:
    """The pages of the sale edition: those of the training edition, less what a trainer signs,
    and the seller's own."""
    views, sheets = plan_views(book), map_sheets(book)
    rest = [
        before_you_start(book),
        needs(book),
        your_colours(book),
        *gauges_within(book),
        finished_piece(book),
        *joint_maps(book, sheets),
        *step_sections(book, views, sheets),
        standing(book),
        taking_down(book, [notes(book)]),
        licence(book),
    ]
    return [sale_cover(book), cautions(book), reading_guide(book, views, rest), *rest]


SECTIONS: Mapping[str, Callable[[Book], list[Section]]] = {
    "training": training_sections,
    "crew": crew_sections,
    "sale": sale_sections,
}


def print_booklet(book: Book, key: bytes = b"") -> bytes:
    """The whole booklet as a tagged PDF. The same book gives the same bytes.

    A sold copy gets its serial and its seal, made with the seller's `key` if there is one.
    """
    (whole,) = next(print_copies(book, [book.buyer], key))
    return whole


def print_folded(book: Book, key: bytes = b"") -> tuple[bytes, ...]:
    """The booklet laid out for folding, not tagged; and its gauges at true size, by themselves,
    for they must not be made smaller."""
    return next(print_folded_copies(book, [book.buyer], key))


def print_copies(
    book: Book, buyers: Sequence[str], key: bytes = b""
) -> Iterator[tuple[bytes, ...]]:
    """The booklet for each of its buyers in turn: all named, or one who is not. It is drawn once;
    each copy has the bytes that it has when it is printed alone."""
    return _copies(book, buyers, key, [_whole])


def print_folded_copies(
    book: Book, buyers: Sequence[str], key: bytes = b""
) -> Iterator[tuple[bytes, ...]]:
    """As `print_copies`, of what `print_folded` prints."""
    return _copies(book, buyers, key, [_folded, _gauges_alone])


def _copies(
    book: Book, buyers: Sequence[str], key: bytes, parts: Sequence[Callable[[Book], bytes]]
) -> Iterator[tuple[bytes, ...]]:
    with with_fonts(book.fonts):
        drawn = [part(replace(book, buyer=buyers[0])) for part in parts]
    if book.edition != "sale":
        yield tuple(drawn)
        return
    sold = [_sold(book, buyer, key) for buyer in buyers]
    yield from zip(*(sold_copies(data, key, sold) for data in drawn), strict=True)


def _sold(book: Book, buyer: str, key: bytes) -> Sold:
    copy = replace(copy_of(book, keyed=bool(key)), buyer=buyer)
    return Sold(copy, words_of_copy(buyer, serial_of(copy, key), book.voice), book.fonts)


def copy_of(book: Book, keyed: bool) -> SoldCopy:
    """What the serial of a sold copy is made from."""
    return SoldCopy(
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
    if book.edition == "crew":
        book = replace(book, paper=high_set(book.paper))
    return _printed(book, SECTIONS[book.edition](book), title)


def _folded(book: Book) -> bytes:
    return folded(_whole(replace(book, gauges_apart=True)), book.paper.sheet, book.voice)


def _gauges_alone(book: Book) -> bytes:
    title = book.voice.say("{piece}: gauges at true size", piece=book.facts.name)
    return _printed(book, true_gauges(book), title)


def _printed(book: Book, sections: Sequence[Section], title: str) -> bytes:
    voice = book.voice
    brand = book.design.brand if book.branding is None else book.branding.brand
    foot = " · ".join(map(isolated, (book.facts.name, *(() if brand is None else (brand.name,)))))
    return print_document(
        Document(
            sections,
            book.paper,
            voice,
            title,
            author="buildplan" if brand is None else brand.name,
            foot=foot,
            below=Blank(FOOT, SMALL) if book.edition == "sale" else None,
            stamp=voice.say("DRAFT: this piece has problems") if book.facts.problems else "",
        )
    )
