"""Which pages make a booklet, in what order."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from buildplan.booklet.common.after import standing, taking_down
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.front import cautions, cover, reading_guide
from buildplan.booklet.common.gauges import gauges_within, true_gauges
from buildplan.booklet.common.map_sheets import map_sheets
from buildplan.booklet.common.needs import needs
from buildplan.booklet.common.piece import finished_piece, joint_maps
from buildplan.booklet.common.steps import step_leaves, step_parts
from buildplan.booklet.crew.pages import crew_leaves
from buildplan.booklet.sale.cover import sale_cover
from buildplan.booklet.sale.pages import before_you_start, licence, your_colours
from buildplan.booklet.training.pages import practice_piece, sign_off, with_lessons
from buildplan.business.copies.serial import Copy, design_digest, sealed, serial_of
from buildplan.document.imposition import folded
from buildplan.document.renderer import Leaf, Press
from buildplan.language.speaking import say, speaking


def training_leaves(book: Book) -> list[Leaf]:
    """The pages of the training edition."""
    sheets = map_sheets(book)
    return [
        cover(book),
        *cautions(book),
        reading_guide(book),
        needs(book),
        *gauges_within(book),
        finished_piece(book),
        *joint_maps(book, sheets),
        *practice_piece(book),
        *with_lessons(book, step_parts(book, sheets)),
        *sign_off(book),
        standing(book),
        taking_down(book),
    ]


def sale_leaves(book: Book) -> list[Leaf]:
    """The pages of the sale edition: those of the training edition, less what a trainer signs,
    and the seller's own."""
    sheets = map_sheets(book)
    return [
        sale_cover(book),
        *cautions(book),
        reading_guide(book),
        before_you_start(book),
        needs(book),
        your_colours(book),
        *gauges_within(book),
        finished_piece(book),
        *joint_maps(book, sheets),
        *step_leaves(book, sheets),
        standing(book),
        taking_down(book),
        *licence(book),
    ]


LEAVES: Mapping[str, Callable[[Book], list[Leaf]]] = {
    "training": training_leaves,
    "crew": crew_leaves,
    "sale": sale_leaves,
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
        return folded(_whole(apart), marked.paper.sheet)

    def alone(marked: Book) -> bytes:
        title = say("{piece}: gauges at true size", piece=marked.facts.name)
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
    title = say("{piece}: build booklet", piece=book.facts.name)
    return _printed(book, LEAVES[book.edition](book), title)


def _printed(book: Book, leaves: Sequence[Leaf], title: str) -> bytes:
    brand = book.design.brand if book.branding is None else book.branding.brand
    foot = book.facts.name if brand is None else f"{book.facts.name} · {brand.name}"
    if book.facts.problems:
        foot = f"{foot} · {say('DRAFT: this piece has problems')}"
    if book.serial:
        marked = say("printed for {buyer}", buyer=book.buyer) if book.buyer else ""
        foot = "\n".join([foot, " · ".join(filter(None, [book.serial, marked]))])
    return Press(book.paper, foot).print(
        leaves,
        title=title,
        author="buildplan" if brand is None else brand.name,
    )
