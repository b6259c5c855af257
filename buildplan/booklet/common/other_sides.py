"""A corner that is seen the other way round than the work before it, drawn from across as well.

Where the inner chains go further than the outer ones, what is built lies on the other side of the
builder's seat. The first corner of such a kind is shown from both sides, unless it is seen straight
across in any case.
"""

from __future__ import annotations

from dataclasses import replace

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views, brace_of
from buildplan.booklet.common.step_moves import corner_of
from buildplan.document.undrawn import Undrawn
from buildplan.drawing.closeup import close_up
from buildplan.drawing.marks import Picture
from buildplan.drawing.panel import Panel
from buildplan.drawing.seat import leaves_out, other_side
from buildplan.instructions.moves import Corner
from buildplan.sequence.model import Kind, Step


def is_seen_across(book: Book, step: Step) -> bool:
    """Whether what is built lies otherwise at the corner of a step than in the steps before it, and
    no step has shown such a corner yet."""
    cell = corner_of(book, step)
    if cell is None or cell.inner <= cell.outer or leaves_out(cell):
        return False
    return book.context.teacher(Corner(cell.kind), step) is None


def from_the_other_side(
    book: Book, step: Step, views: Views, width: float, height: float
) -> Undrawn | None:
    """The close-up of a step as it is seen from across, where that is shown."""
    closeups = views.of(step)
    if not is_seen_across(book, step) or len(closeups) != 1:
        return None
    brace = brace_of(book, step.of_kind(Kind.BRACE)[0])
    panel = replace(closeups[0].panel, camera=other_side(book.framework, book.shape, brace))
    return Undrawn(width, height, lambda: _drawn_across(book, step, panel, width, height))


def _drawn_across(book: Book, step: Step, panel: Panel, width: float, height: float) -> Picture:
    voice = book.voice
    drawn = close_up(
        panel,
        width,
        height,
        title=voice.say("from the other side"),
        alt=voice.say("The same, step {number}, seen from the other side.", number=step.number),
    )
    return replace(drawn, data=(("picture", "other side"), ("step", str(step.number))))
