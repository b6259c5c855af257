"""How a step is laid out: its title, its words beside what is to be ticked, its pictures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from itertools import groupby
from types import MappingProxyType

from reportlab.platypus import Flowable

from buildplan.booklet.common.acts import acts_of
from buildplan.booklet.common.ballasting import (
    ballast_link,
    before_standing,
)
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.known_steps import is_known, known_step
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.booklet.common.laying_out import laid_blocks
from buildplan.booklet.common.map_links import title_beside_map
from buildplan.booklet.common.map_sheets import MapSheets, step_place
from buildplan.booklet.common.on_the_piece import PICTURE_HEIGHT, on_the_piece
from buildplan.booklet.common.panel_rows import (
    ROW_GAP,
    in_columns,
    in_rows,
)
from buildplan.booklet.common.spurs import spur_of_step, spur_pictures, spur_place
from buildplan.booklet.common.step_links import looked_up
from buildplan.booklet.common.step_moves import (
    how_to,
    is_laid_to_brace,
    new_moves,
)
from buildplan.booklet.common.step_pictures import (
    PlacedPicture,
    StepPictures,
    step_pictures,
)
from buildplan.booklet.common.step_words import (
    COLUMN_GAP,
    PLACE,
    check_words,
    ticks,
    told_with_moves,
    words_of,
)
from buildplan.booklet.common.strips import strip_rows
from buildplan.document.blocks import Items, PictureRow, Rule, Shown, Stack
from buildplan.document.layout import Columns
from buildplan.document.links import Anchor
from buildplan.document.text import plain
from buildplan.drawing.marks import Picture
from buildplan.instructions.coming import is_first
from buildplan.instructions.setting_up import is_tying
from buildplan.sequence.model import Kind, Step

MOST_HEIGHT = 200.0
WORDS_SHARE = 0.52
MANY_ROWS = 6  # so many rows have the width of the page, in columns
LONG_CHECK = 240  # letters; a check longer than this has the whole width
BELOW_TITLE = 60.0  # a title of the work, and the space about it
AT_THE_TABLE = frozenset({Kind.SIZE, Kind.PAIR, Kind.TIE_OFF, Kind.CHAIN})
LESS_EMPTY = 0.25  # where a plan comes with what is done first, that can be on the page before it
MOST_EMPTY = 0.42  # of a page: rather than leave more of it, what comes before a step goes there


def step_block(
    book: Book,
    views: Views,
    sheets: MapSheets,
    step: Step,
    before: Sequence[Flowable] = (),
    taught: Set[Kind] = frozenset(),
    practised: Mapping[int, str] = MappingProxyType({}),
) -> Stack:
    """A step, and what comes `before` it, on one page if a page has room for them; else what comes
    before has the page before it. What is learnt before work on the piece has its hand moves; those
    of `taught` kinds of work are shown elsewhere, at the place that is `practised` of a step."""
    progress = (step.number, len(book.steps))
    place = Anchor(step_place(step), f"{step.number} {book.told(step).title}", progress)
    acts: Sequence[Flowable] = ()
    if _has_pictures(book, views, step):
        acts = acts_of(book, step, taught)
        moves = [] if acts else _moves(book, step, taught)
        below = () if before else moves
        aside = looked_up(book, sheets, step, practised)
        body = (
            known_step(book, views, aside, step)
            if is_known(book, step) and not before
            else [on_the_piece(book, views, aside, step, below, acts)]
            if views.of(step)
            else _along_a_spur(book, views, aside, step, below)
        )
        shown = in_rows([[Shown(move)] for move in moves], book.paper.measure)
        before = [Stack([*before, *shown], whole=True)] if before else ()
    else:
        told = _as_before if built_alike(book, step) else _beside_the_piece
        if told is _beside_the_piece and is_laid_to_brace(book, step):
            told = laid_blocks
        title = f"{step.number} {book.told(step).title}"
        body = [title_beside_map(book, sheets, [step], title), *told(book, views, step)]
    # chains with their colours can be parted from one another, and a plan from its words
    parted = bool(strip_rows(book, step)) or is_laid_to_brace(book, step)
    # what is told act by act, or brought up and then tied, can be on two pages; so can what is
    # learnt and then done, but no balloon is sized on one page and tied on another
    at_the_table = step.kind in AT_THE_TABLE
    in_turn = is_tying(step) or len(acts) > 1 or (bool(before) and not at_the_table)
    empty = MOST_EMPTY if in_turn else 1.0
    if in_turn and acts and is_planned(book, step) and is_first(book.context, step):
        empty = LESS_EMPTY
    stack = Stack(
        [Rule(), place, *body], whole=not parted, below_title=BELOW_TITLE, most_empty=empty
    )
    if not before:
        return stack
    return Stack(
        [*before, stack],
        whole=True,
        below_title=BELOW_TITLE,
        most_empty=1.0 if at_the_table else min(empty, MOST_EMPTY),
    )


def _has_pictures(book: Book, views: Views, step: Step) -> bool:
    """Whether a step has close-ups, or the diagrams of a spur, of its own."""
    shown = views.of(step) or spur_of_step(book, step) is not None
    return bool(shown) and not built_alike(book, step)


def _along_a_spur(
    book: Book, views: Views, aside: Sequence[Flowable], step: Step, moves: Sequence[Picture]
) -> list[Flowable]:
    """Title and words beside where it is; the hand moves that are new; the diagrams of the spur;
    its rows and the check."""
    measure = book.paper.measure
    drawn = [[Shown(picture)] for picture in (*moves, *spur_pictures(book, step))]
    (turn,) = book.told(step).turns
    singles = turn.lines[: len(step.of_kind(Kind.SINGLE))]
    rest = [*map(plain, turn.lines[len(singles) :]), check_words(book, step)]
    where = spur_place(book, views.progress, step, PLACE, book.told(step).title)
    return [
        *told_with_moves(book, aside, step, words_of(book, step), (), (where,)),
        *in_rows(drawn, measure),
        *in_columns(singles, measure),
        Items(rest, ticked=True, gap=ROW_GAP),
    ]


def built_alike(book: Book, step: Step) -> bool:
    """Whether a step does again, joint for joint, what another did at an equal part that is not its
    mirror image: the pictures and rows of that one serve for both."""
    if step.repeats is None:
        return False
    here, there = (
        next(
            part for op in one.operations for part in map(book.framework.part_at, op.joints) if part
        )
        for one in (step, book.steps[step.repeats - 1])
    )
    return here.mirrored == there.mirrored


def _as_before(book: Book, views: Views, step: Step) -> list[Flowable]:
    """What is done again at an equal part: where it was told, and its check."""
    return [*words_of(book, step), Items([check_words(book, step)], ticked=True, gap=ROW_GAP)]


def _moves(book: Book, step: Step, taught: Set[Kind]) -> list[Picture]:
    """The hand moves that a step on the piece is the first to show, side by side."""
    return [how_to(book, step, move) for move in new_moves(book, step, PICTURE_HEIGHT, taught)]


def _beside_the_piece(book: Book, views: Views, step: Step) -> list[Flowable]:
    """A single narrow picture at the right of the words, others below them."""
    acts = acts_of(book, step)
    words = [*before_standing(book, step)]
    words += words_of(book, step, acts)
    pictures = StepPictures((), 0.0) if acts else _pictures(book, views, step)
    words += acts
    strips = strip_rows(book, step)
    marked = [check_words(book, step)] if strips else ticks(book, step)
    below: list[Flowable] = []
    if len(book.told(step).check) > LONG_CHECK and len(marked) > 1:
        below = [Items([marked.pop()], ticked=True, gap=ROW_GAP)]
    checks = [*strips, Items(marked, ticked=True, gap=ROW_GAP), *ballast_link(book, step)]
    rows = [PictureRow([at.picture for at in row]) for row in _rows(pictures)]
    measure, placed = book.paper.measure, pictures.placed
    if len(placed) == 1 and placed[0].picture.width < measure / 2 and not strips:
        wide = placed[0].picture.width
        shares = (measure - wide - COLUMN_GAP, wide)
        told = book.told(step).rows
        if len(told) >= MANY_ROWS and not ballast_link(book, step):  # below the picture
            rest = [Items(marked[len(told) :], ticked=True, gap=ROW_GAP)]
            rest = rest if len(marked) > len(told) else []
            first = Columns((words, rows), shares, gap=COLUMN_GAP)
            return [first, *in_columns(told, measure), *rest, *below]
        if step.kind is Kind.STAND_UP:  # its words are as high as its picture
            return [Columns((words, rows), shares, gap=COLUMN_GAP, after=4.0), *checks, *below]
        return [Columns(([*words, *checks], rows), shares, gap=COLUMN_GAP), *below]
    if rows or strips:
        return [*words, *rows, *checks, *below]
    shares = (WORDS_SHARE, 1 - WORDS_SHARE)
    return [Columns((words, checks), shares, gap=COLUMN_GAP, after=6.0), *below]


def _pictures(book: Book, views: Views, step: Step) -> StepPictures:
    """The pictures of work beside the piece or on the whole of it."""
    moves = new_moves(book, step, PICTURE_HEIGHT)
    return step_pictures(book, step, views, moves, book.paper.measure, MOST_HEIGHT)


def _rows(pictures: StepPictures) -> list[list[PlacedPicture]]:
    return [list(row) for _, row in groupby(pictures.placed, key=lambda at: at.y)]
