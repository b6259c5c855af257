"""The code that leads from a printed page to the page for phones, where a booklet has one."""

from __future__ import annotations

import re
from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.document.blocks import Shown, Words
from buildplan.document.layout import Columns
from buildplan.document.paper import mm
from buildplan.document.text import SMALL, plain, strong
from buildplan.drawing.qr_code import qr_picture
from buildplan.sequence.model import Step

# Wide enough for a phone to read at arm's length, on pages folded to A5 too.
COVER_MM, STEPS_MM = 28.0, 22.0
GAP = 8.0


def code_of_piece(book: Book) -> list[Flowable]:
    """The code of the whole piece, with what it is; nothing where the booklet leads to no page."""
    if not book.link:
        return []
    words = book.voice.say("On a phone: the whole build in 3D, step by step.")
    told = [Words(strong(words), SMALL, after=2), Words(_address_words(book.link), SMALL)]
    return [_beside_code(book, book.link, COVER_MM, (1.0, 2.0), told)]


def with_code_of_piece(book: Book, blocks: Sequence[Flowable]) -> list[Flowable]:
    """Blocks of a cover, to their right the code of the piece where the booklet has one."""
    code = code_of_piece(book)
    return [Columns((list(blocks), code), (0.55, 0.45), gap=GAP)] if code else list(blocks)


def code_at_step(book: Book, step: Step, told: Sequence[Flowable] = ()) -> list[Flowable]:
    """A line with the code that opens the page for phones at a step, kept with it, and beside it
    what is `told` before that step; this alone where the booklet leads to no page."""
    if not book.link:
        return list(told)
    words = book.voice.say("On a phone, from step {number} on, in 3D.", number=step.number)
    address = step_address(book.link, step.number)
    shares = (mm(STEPS_MM), book.paper.measure - mm(STEPS_MM) - GAP)
    line = _beside_code(book, address, STEPS_MM, shares, [Words(words, SMALL), *told])
    line.keepWithNext = True
    return [line]


def step_address(link: str, number: int) -> str:
    """Where the page for phones opens at a step. What stood behind a # is replaced."""
    return f"{link.partition('#')[0]}#step-{number}"


def _address_words(link: str) -> str:
    """An address as markup, its host on a line of its own; `https://`, which every browser takes
    for granted, would not leave that line room."""
    scheme, host, path = re.split(r"(?<=//)([^/]+/?)", link, maxsplit=1)
    shown = host if scheme == "https://" else scheme + host
    return f"{plain(shown)}<br/>{plain(path)}" if path else plain(shown)


def _beside_code(
    book: Book,
    address: str,
    width_mm: float,
    shares: tuple[float, float],
    told: Sequence[Flowable],
) -> Columns:
    alt = book.voice.say("Code for a phone's camera. It leads to {address}", address=address)
    picture = Shown(qr_picture(address, mm(width_mm), alt), after=0)
    return Columns(([picture], told), shares, gap=GAP)
