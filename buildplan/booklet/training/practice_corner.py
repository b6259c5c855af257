"""The corner of the practice piece, and what is counted when the work on that piece is done."""

from __future__ import annotations

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.step_moves import corner_of
from buildplan.booklet.common.step_pictures import CELL_HEIGHT, CELL_WIDTH
from buildplan.booklet.training.practice import Practice
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.text import plain, strong
from buildplan.drawing.cell_diagrams import cell_diagram
from buildplan.drawing.seat import leaves_out
from buildplan.instructions.locking import done
from buildplan.sequence.model import Kind, Step

CORNER_SIZE = (CELL_WIDTH, CELL_HEIGHT)


def corner_cells(own: Book, step: Step) -> list[list[Flowable]]:
    """The diagram of the corner that a step finishes, if it is one, and from where it is seen where
    that is not from the open end."""
    corner = corner_of(own, step)
    if corner is None:
        return []
    locked = set(own.framework.lock_at)
    drawn = cell_diagram(own.framework, corner.number, *CORNER_SIZE, own.voice, locked)
    across = [Words(own.voice.say("from across"))] if leaves_out(corner) else []
    return [[Shown(drawn, after=0.0), *across]]


def counted_at_end(own: Book, made: Practice, step: Step) -> list[Flowable]:
    """What is counted after the last brace of the practice piece."""
    braces = [one for one in made.steps if one.kind is Kind.BRACE]
    if not braces or step.number != braces[-1].number:
        return []
    said = f"{strong(own.voice.say('Check'))} {plain(done(own.context, step))}"
    return [Items([said], ticked=True, gap=1.0, after=4.0)]
