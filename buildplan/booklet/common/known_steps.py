"""Steps that brace one more part of several as those before it were: told in rows, a line each,
beside where on the part they are. Their pictures are with the first part."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.panel_rows import ROW_GAP
from buildplan.booklet.common.step_moves import new_moves
from buildplan.booklet.common.step_pictures import step_panels
from buildplan.booklet.common.step_words import (
    ASIDE,
    COLUMN_GAP,
    check_words,
    step_title,
    words_of,
)
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.layout import Columns
from buildplan.document.text import BODY, plain
from buildplan.instructions.stages import part_of_step
from buildplan.sequence.model import Kind, Step

WHERE, LOW = (104.0, 88.0), (104.0, 58.0)  # where on the part; beside few rows
FEW_ROWS = 4


def is_of_later_part(book: Book, step: Step) -> bool:
    """Whether a step is at a braced part that is not the first one."""
    part = part_of_step(book.framework, step)
    if part is None or not part.framework.braces:
        return False
    first = next(one for one in book.framework.parts if one.framework.braces)
    return part.name != first.name


def is_known(book: Book, step: Step) -> bool:
    """Whether a step ties braces of a part that is not the first braced one, by nothing but moves
    and corners that steps before it were drawn with."""
    if step.kind is not Kind.BRACE or not is_of_later_part(book, step):
        return False
    before = [other for other in book.steps[: step.number - 1] if other.kind is Kind.BRACE]
    corners = {cell for other in before for cell in other.cells}
    return corners.issuperset(step.cells) and not new_moves(book, step, WHERE[1])


def known_step(book: Book, views: Views, links: Sequence[Flowable], step: Step) -> list[Flowable]:
    """The title, the words, a line to tick for each row and the check; at their side what leads to
    other pages and the part, with a circle where the work is."""
    rows = [plain(line) for turn in book.told(step).turns for line in turn.lines if turn.name]
    place = WHERE if len(rows) > FEW_ROWS else LOW
    panels = step_panels(book, step, views, place, place)
    told = [
        step_title(book, step),
        *_as_before(book, step),
        *words_of(book, step),
        Items([*rows, check_words(book, step)], ticked=True, gap=ROW_GAP),
    ]
    wide = max(ASIDE, WHERE[0])
    shares = (book.paper.measure - wide - COLUMN_GAP, wide)
    return [Columns((told, [*links, Shown(panels.where)]), shares, gap=COLUMN_GAP, after=4.0)]


def _as_before(book: Book, step: Step) -> list[Flowable]:
    """In the first step of a part that is braced so, where its moves are drawn, unless its words
    lead there."""
    braced = [other for other in book.steps if other.kind is Kind.BRACE]
    before = [other for other in braced if other.number < step.number]
    part = part_of_step(book.framework, step)
    known = part_of_step(book.framework, before[-1]) is part or book.told(step).as_in
    if known:
        return []
    return [Words(plain(book.voice.say("As in step {step}.", step=braced[0].number)), BODY)]
