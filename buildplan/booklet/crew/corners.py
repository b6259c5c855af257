"""Crew pages of corners: each kind once, as large as its column, with what it is called."""

from __future__ import annotations

from collections.abc import Hashable, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.front import DIP, TIP
from buildplan.booklet.common.spurs import spur_before, spur_whole
from buildplan.document.blocks import Shown, Words
from buildplan.document.layout import COLUMN_GAP, Columns, is_wide
from buildplan.document.text import plain, strong
from buildplan.drawing.cell_diagrams import cell_diagram
from buildplan.drawing.cell_layout import newest_brace
from buildplan.drawing.corner_sides import with_sides
from buildplan.drawing.map_style import joint_radius
from buildplan.drawing.marks import Picture
from buildplan.framework import cells as cells_of
from buildplan.framework.cells import STRAIGHT
from buildplan.framework.model import Cell
from buildplan.instructions.kneeling import closing, locked_from_outside
from buildplan.language.phrases import sentences

HEIGHT, LARGE = 132.0, 176.0  # of several; of one alone
GAP, MOST_ABREAST = 12.0, 3
SHORT_LABELS, MOST_LARGER = 11.0, 1.5  # radius of discs with labels like A12; longer ones need more
NAMED = {cells_of.TIP: TIP, cells_of.DIP: DIP}


def corners_drawn(book: Book, after: Sequence[Flowable] = ()) -> list[Flowable]:
    """Each kind of corner once for every way in which it is tied: which joints are left out, which
    balloon is shared; and what is different where a tube closes. What is told `after` them stands
    in what is left of their last row, if that is not taken."""
    first: dict[Hashable, Cell] = {}
    for cell in book.framework.cells:
        if cell.kind != STRAIGHT:
            first.setdefault(_tied_so(book, cell), cell)
    across = _abreast(book, len(first))
    gap = GAP if across == MOST_ABREAST else COLUMN_GAP
    high = LARGE if len(first) == 1 else HEIGHT
    larger = min(max(1.0, joint_radius(book.framework) / SHORT_LABELS), MOST_LARGER)
    enlarged = book.paper.picture_scale
    wide = (book.paper.measure - gap * (across - 1)) / across / enlarged
    drawn: list[list[Flowable]] = [
        [Shown(picture, enlarged, after=2.0), *_called(book, cell)]
        for cell in first.values()
        for picture in _drawn(book, cell, (wide, high * larger))
    ]
    last, closed = len(drawn) % across, _closed(book)
    if last:  # what is left of the last row
        drawn += [closed or [*after], *([[]] * (across - last - 1))]
    rows = [drawn[at : at + across] for at in range(0, len(drawn), across)]
    shown = [Columns(row, gap=gap, after=4.0) for row in rows]
    return [*shown, *([] if last else closed), *([] if last and not closed else after)]


def _abreast(book: Book, kinds: int) -> int:
    """How many stand beside one another: three if that is all, and their labels are short."""
    if not is_wide(book.paper):
        return 1
    short = joint_radius(book.framework) <= SHORT_LABELS
    return MOST_ABREAST if kinds == MOST_ABREAST and short else MOST_ABREAST - 1


def _tied_so(book: Book, cell: Cell) -> Hashable:
    """What the picture of a corner depends on: its kind, whether its first brace is tied last, as
    where a tube closes, and what that brace is tied of."""
    newest = newest_brace(book.framework, cell)
    closes = newest.number == cell.first
    return cell.name, closes, tuple((len(one.joints), one.closed) for one in newest.chains)


def _called(book: Book, cell: Cell) -> list[Flowable]:
    """What a corner is called, where that is a word of the trade, and at which brace it is drawn
    where it is tied otherwise than before."""
    voice = book.voice
    if newest_brace(book.framework, cell).number == cell.first:
        told = voice.say(
            "{corner}, where the tube closes", corner=voice.tell(cell.kind.words.called)
        )
        return [Words(strong(told))]
    if cell.kind not in NAMED:
        return []
    word = NAMED[cell.kind]
    name, meaning = strong(voice.say(word[0])), plain(voice.say(word[1]))
    return [Words(voice.say("{name}: {words}", name=name, words=meaning))]


def _closed(book: Book) -> list[Flowable]:
    """What is different at the last brace of each tube that closes."""
    voice, context = book.voice, book.context
    blocks: list[Flowable] = []
    for brace in book.framework.braces:
        told = sentences(*closing(context, [brace]), *locked_from_outside(context, [brace]))
        if told:
            name = strong(voice.say("Brace {number}", number=brace.number))
            blocks.append(Words(voice.say("{name}: {words}", name=name, words=plain(told))))
    return blocks


def _drawn(book: Book, cell: Cell, size: tuple[float, float]) -> list[Picture]:
    if cell.kind.is_spur:
        return spur_whole(book, cell) or [spur_before(book, len(book.steps), cell, size)]
    diagram = cell_diagram(book.framework, cell.number, *size, book.voice)
    return [with_sides(diagram, book.framework, cell, book.voice)]
