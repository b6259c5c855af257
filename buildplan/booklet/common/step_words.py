"""The words of a step: its title beside what is looked up with it, what is told, what is ticked;
with hand moves beside them."""

from __future__ import annotations

from collections.abc import Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.ballasting import ballast_row, is_ballasted
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.panel_rows import ABREAST_FROM, in_rows
from buildplan.booklet.common.tags_off import tags_off
from buildplan.document.blocks import Shown, Words, paragraph_of_own
from buildplan.document.layout import Columns
from buildplan.document.text import BODY, HEADING, plain, strong
from buildplan.document.undrawn import Showable
from buildplan.sequence.model import Kind, Stage, Step

PLACE = (84.0, 62.0)
ASIDE = 102.0  # of what leads to other pages, on one line
COLUMN_GAP = 14.0
SHORT_TITLE, SHORT_TEXT = 32, 110  # letters
LEAST_WORDS = 230.0  # so wide are words beside a hand move


def told_with_moves(
    book: Book,
    links: Sequence[Flowable],
    step: Step,
    said: Sequence[Flowable],
    moves: Sequence[Showable],
    aside: Sequence[Showable],
    people: Sequence[Showable] = (),
) -> list[Flowable]:
    """Title and what is `said` beside `links` to other pages, and the new hand moves: the first of
    them beside the words where that takes no more rows of pictures. The small picture of where goes
    with them, or stands beside the words where there are none or it would have a row to itself.
    Pictures of `people` at the work are beside the words in any case."""
    measure = book.paper.measure
    with_place = _rows_of([*moves, *aside], measure) == _rows_of(moves, measure)
    last = [*moves, *(aside if with_place else ())]
    where = None if with_place else next(iter(aside), None)
    if moves and not people and measure - moves[0].width - COLUMN_GAP >= LEAST_WORDS:
        beside = 1 + _rows_of(last[1:], measure)
        if beside <= _rows_of(last, measure):
            rest = in_rows([[Shown(one)] for one in last[1:]], measure)
            return [_head(book, links, step, said, where, moves[:1]), *rest]
    head = _head(book, links, step, said, where, people)
    head.keepWithNext = True
    return [head, *in_rows([[Shown(one)] for one in last], measure)]


def _rows_of(pictures: Sequence[Showable], measure: float) -> int:
    return len(in_rows([[Shown(one)] for one in pictures], measure))


def _head(
    book: Book,
    links: Sequence[Flowable],
    step: Step,
    said: Sequence[Flowable],
    where: Showable | None,
    moves: Sequence[Showable] = (),
) -> Columns:
    """The title and words of work on the piece, and beside them what leads to other pages and, if
    they are given, the small picture of where on the whole piece and others."""
    drawn = [*([where] if where else ()), *moves]
    wide = max(ASIDE, *(one.width for one in drawn), 0.0)
    shares = (book.paper.measure - wide - COLUMN_GAP, wide)
    told = [step_title(book, step), *said]
    if where and not moves and _is_short(book, step):  # the links beside the picture, not above it
        rest = book.paper.measure - where.width - ASIDE - 2 * COLUMN_GAP
        return Columns(
            (told, [Shown(where)], links), (rest, where.width, ASIDE), gap=COLUMN_GAP, after=4.0
        )
    return Columns((told, [*links, *map(Shown, drawn)]), shares, gap=COLUMN_GAP, after=4.0)


def _is_short(book: Book, step: Step) -> bool:
    """Whether title and words of a step are one line and two at most, however narrow."""
    told = book.told(step)
    wide = book.paper.measure >= ABREAST_FROM
    return wide and len(told.title) <= SHORT_TITLE and len(told.text) <= SHORT_TEXT


def step_title(book: Book, step: Step) -> Words:
    """The number and title of work on the piece."""
    return Words(plain(f"{step.number} {book.told(step).title}"), HEADING, "H2")


def words_of(book: Book, step: Step, acts: Sequence[Flowable] = ()) -> list[Flowable]:
    """A step's words: all of them, or what comes before its `acts`; then what the design adds."""
    told = book.told(step)
    text = told.intro if acts else told.text
    words: list[Flowable] = [Words(plain(text), BODY)] if text else []
    for stage in dict.fromkeys(operation.stage for operation in step.operations):
        note = book.design.text.get(stage.value)
        if note and step.number == _first_of_stage(book.steps, stage):
            words.append(paragraph_of_own(note))
    return words


def ticks(book: Book, step: Step) -> list[str]:
    """What is to be ticked: the rows of the step, the ballast where it comes on, the
    tags that come off in the end, and the check."""
    late = step.kind is Kind.STAND_UP and is_ballasted(book, step)
    rows = [*book.told(step).rows, *([ballast_row(book)] if late else []), *tags_off(book, step)]
    return [*(plain(words) for words in rows), check_words(book, step)]


def check_words(book: Book, step: Step) -> str:
    """What shows that a step was done well."""
    return f"{strong(book.voice.say('Check'))} {plain(book.told(step).check)}"


def _first_of_stage(steps: Sequence[Step], stage: Stage) -> int:
    return next(step.number for step in steps if any(op.stage is stage for op in step.operations))
