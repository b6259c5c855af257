"""Crew pages: each kind of corner drawn once, before the runs of braces."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.spurs import spur_before, spur_whole
from buildplan.booklet.crew.run_lines import run_lines
from buildplan.document.blocks import Shown, Words, heading, together
from buildplan.document.layout import COLUMN_GAP, Columns
from buildplan.drawing.cell_diagrams import cell_diagram
from buildplan.drawing.map_style import joint_radius
from buildplan.drawing.marks import Picture
from buildplan.framework.cells import STRAIGHT
from buildplan.framework.model import Cell
from buildplan.sequence.jobs import Job

CORNER_WIDTH, CORNER_HEIGHT = 155.0, 125.0
SHORT_LABELS, MOST_LARGER = 11.0, 1.5  # radius of discs with labels like A12; longer ones need more


def how_to_read(book: Book, work: Sequence[Job]) -> list[Flowable]:
    """What a line of several braces means, where there is one."""
    if not any(line.several for job in work for line in run_lines(book, job.rows)):
        return []
    words = book.voice.say(
        "A line of several braces gives the joints of the first and of the last: each brace is "
        "one balloon further along every chain than the one before it, and is locked before "
        "the next."
    )
    return [Words(words)]


def corners_drawn(book: Book, told: Sequence[Flowable]) -> list[Flowable]:
    """Each kind of corner once: which joints are skipped, which balloon is shared; and what is
    told beside them."""
    first: dict[str, Cell] = {}
    for cell in book.framework.cells:
        if cell.kind != STRAIGHT:
            first.setdefault(cell.name, cell)
    if not first:
        return list(told)
    enlarged = book.paper.picture_scale
    larger = min(max(1.0, joint_radius(book.framework) / SHORT_LABELS), MOST_LARGER)
    wide = min(CORNER_WIDTH * larger, book.paper.measure / enlarged)
    drawn = [
        Shown(picture, enlarged)
        for cell in first.values()
        for picture in _corner_drawn(book, cell, (wide, CORNER_HEIGHT * larger))
    ]
    words = book.voice.say(
        "Each kind of corner, where it first comes up. At the others the joints are those of "
        "their rows."
    )
    beside: list[Flowable] = [Words(words), *told]
    across = max(1, int((book.paper.measure + COLUMN_GAP) / (wide * enlarged + COLUMN_GAP)))
    rows = [[[each] for each in drawn[at : at + across]] for at in range(0, len(drawn), across)]
    if len(rows[-1]) < across:  # the words have room beside the last picture
        rows[-1].append(beside)
        rows[-1] += [[]] * (across - len(rows[-1]))
        beside = []
    top, *others = map(Columns, rows)
    return [together(heading(book.voice.say("Corners")), top), *others, *beside]


def _corner_drawn(book: Book, cell: Cell, size: tuple[float, float]) -> list[Picture]:
    if cell.kind.is_spur:
        return spur_whole(book, cell) or [spur_before(book, len(book.steps), cell, size)]
    return [cell_diagram(book.framework, cell.number, *size, book.voice)]
