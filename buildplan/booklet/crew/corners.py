"""Crew pages of corners: each kind once, as large as its column, with what it is called."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.front import DIP, TIP
from buildplan.booklet.common.spurs import spur_before, spur_whole
from buildplan.document.blocks import Shown, Words
from buildplan.document.layout import COLUMN_GAP, Columns, is_wide
from buildplan.document.text import plain, strong
from buildplan.drawing.cell_diagrams import cell_diagram
from buildplan.drawing.map_style import joint_radius
from buildplan.drawing.marks import Picture
from buildplan.framework import cells as cells_of
from buildplan.framework.cells import STRAIGHT
from buildplan.framework.model import Cell

HEIGHT = 132.0
SHORT_LABELS, MOST_LARGER = 11.0, 1.5  # radius of discs with labels like A12; longer ones need more
NAMED = {cells_of.TIP: TIP, cells_of.DIP: DIP}


def corners_drawn(book: Book) -> list[Flowable]:
    """Each kind of corner once: which joints are left out, which balloon is shared."""
    first: dict[str, Cell] = {}
    for cell in book.framework.cells:
        if cell.kind != STRAIGHT:
            first.setdefault(cell.name, cell)
    if not first:
        return []
    enlarged = book.paper.picture_scale
    across = 2 if is_wide(book.paper) else 1
    larger = min(max(1.0, joint_radius(book.framework) / SHORT_LABELS), MOST_LARGER)
    wide = (book.paper.measure - COLUMN_GAP * (across - 1)) / across / enlarged
    drawn = [
        [Shown(picture, enlarged, after=2.0), *_called(book, cell)]
        for cell in first.values()
        for picture in _drawn(book, cell, (wide, HEIGHT * larger))
    ]
    rows = [drawn[at : at + across] for at in range(0, len(drawn), across)]
    empty: list[Flowable] = []
    return [Columns([*row, *[empty] * (across - len(row))], after=4.0) for row in rows]


def _called(book: Book, cell: Cell) -> list[Flowable]:
    """What a corner is called, where that is a word of the trade."""
    return [_word(book, NAMED[cell.kind])] if cell.kind in NAMED else []


def _word(book: Book, word: tuple[str, str]) -> Words:
    voice = book.voice
    name, meaning = strong(voice.say(word[0])), plain(voice.say(word[1]))
    return Words(voice.say("{name}: {words}", name=name, words=meaning))


def _drawn(book: Book, cell: Cell, size: tuple[float, float]) -> list[Picture]:
    if cell.kind.is_spur:
        return spur_whole(book, cell) or [spur_before(book, len(book.steps), cell, size)]
    return [cell_diagram(book.framework, cell.number, *size, book.voice)]
