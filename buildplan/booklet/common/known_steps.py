"""Steps that brace one more part of several as those before it were: told in rows, a line each,
beside where on the part they are. Their pictures are with the first part."""

from __future__ import annotations

from collections.abc import Hashable, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.panel_rows import ROW_GAP
from buildplan.booklet.common.step_links import page_of_step
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
from buildplan.instructions.grammar import as_in_steps
from buildplan.instructions.stages import part_of_step
from buildplan.sequence.model import Kind, Step, Turn
from buildplan.shape.lying import laid_in_figure

WHERE, LOW = (104.0, 88.0), (104.0, 58.0)  # where on the part; beside few rows
FEW_ROWS = 4


def is_of_later_part(book: Book, step: Step) -> bool:
    """Whether a step is at a part laid in its figure that is not the first one."""
    part = part_of_step(book.framework, step)
    if part is None or not laid_in_figure(part.framework):
        return False
    first = next(one for one in book.framework.parts if laid_in_figure(one.framework))
    return part.name != first.name


def is_known(book: Book, step: Step) -> bool:
    """Whether a step ties braces of a part that is not the first braced one, by nothing but moves,
    corners and rows that steps before it were drawn with."""
    if step.kind is not Kind.BRACE or not is_of_later_part(book, step):
        return False
    before = _braced_before(book, step)
    corners = {cell for other in before for cell in other.cells}
    if not corners.issuperset(step.cells) or _drawn_in(book, step) is None:
        return False
    return not new_moves(book, step, WHERE[1])


def _braced_before(book: Book, step: Step) -> list[Step]:
    return [other for other in book.steps[: step.number - 1] if other.kind is Kind.BRACE]


def _row(book: Book, turn: Turn) -> Hashable:
    """What makes the row of a brace another to the hands that tie it: its balloons and those it
    shares, how many balloons meet at each of its joints, and the singles beside it."""
    braces = [book.framework.brace[op.brace] for op in turn.operations if op.kind is Kind.BRACE]
    rows = tuple(
        (len(one.links), len(one.shared), *(len(book.framework.links_at[j]) for j in one.section))
        for one in braces
    )
    singles = sum(op.kind is Kind.SINGLE for op in turn.operations)
    return rows, singles


def _drawn_in(book: Book, step: Step) -> int | None:
    """The latest of the steps in which the rows of a step first came up; none where one of them
    is new."""
    first: dict[Hashable, int] = {}
    for other in _braced_before(book, step):
        for turn in other.turns:
            first.setdefault(_row(book, turn), other.number)
    drawn = [first.get(_row(book, turn)) for turn in step.turns]
    return None if None in drawn else max(number for number in drawn if number is not None)


def known_step(book: Book, views: Views, links: Sequence[Flowable], step: Step) -> list[Flowable]:
    """The title, the words, a line to tick for each row and the check; at their side what leads to
    other pages and the part, with a circle where the work is."""
    rows = [plain(line) for turn in book.told(step).turns for line in turn.lines if turn.name]
    place = WHERE if len(rows) > FEW_ROWS else LOW
    panels = step_panels(book, step, views, place, place)
    voice, drawn = book.voice, _to_look_up(book, step)
    told = [
        step_title(book, step),
        *(Words(plain(voice.say("As in step {step}.", step=one.number)), BODY) for one in drawn),
        *words_of(book, step),
        Items([*rows, check_words(book, step)], ticked=True, gap=ROW_GAP),
    ]
    aside = [*links, *(page_of_step(voice, one) for one in drawn), Shown(panels.where)]
    wide = max(ASIDE, WHERE[0])
    shares = (book.paper.measure - wide - COLUMN_GAP, wide)
    return [Columns((told, aside), shares, gap=COLUMN_GAP, after=4.0)]


def _to_look_up(book: Book, step: Step) -> list[Step]:
    """The step whose pictures show such rows, unless the words lead to one."""
    number, told = _drawn_in(book, step), book.told(step)
    if number is None or (told.as_in and as_in_steps(book.voice, told.as_in) in told.text):
        return []
    return [book.steps[number - 1]]
