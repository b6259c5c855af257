"""What a step has done, one thing after another, each beside the pictures that show it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from itertools import groupby
from math import fsum
from string import ascii_lowercase

from reportlab.platypus import Flowable

from buildplan.booklet.common.ballasting import (
    ballast_act,
    begins_in_place,
    is_ballasted,
    place_act,
)
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.course_plans import plan_and_rows, plan_of
from buildplan.booklet.common.course_rows import (
    coming_lines,
    joint_rows,
    rows_and_check,
    ticked_rows,
)
from buildplan.booklet.common.holding import while_it_grows
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.booklet.common.panel_rows import ABREAST_FROM, GAP, ROW_GAP, rows_high
from buildplan.booklet.common.side_views import side_views
from buildplan.booklet.common.step_moves import act_moves, how_to
from buildplan.booklet.common.step_words import check_words
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.layout import Columns, Either
from buildplan.document.text import plain, strong
from buildplan.drawing.marks import Picture
from buildplan.instructions.coming import is_first
from buildplan.instructions.model import Doing
from buildplan.language.phrases import sentences
from buildplan.sequence.model import Kind, Step

ABREAST = 2
MOST_EMPTY = 0.5  # of a page: rather than leave more of it, acts are parted
PLAN_PT = 206.0  # wide and high at most


@dataclass(frozen=True)
class Last:
    """What comes after the acts of a step, in their columns; about how high it is, in points."""

    blocks: Sequence[Flowable]
    high: float


def acts_of(book: Book, step: Step, taught: Set[Kind] = frozenset()) -> list[Flowable]:
    """What a step has done one thing after another, each with the hand moves that are new with it;
    nothing where its words are few, or stand by the row of pictures of how a brace is tied."""
    acts = list(book.told(step).acts)
    if not acts or (step.kind is Kind.BRACE and Kind.BRACE not in taught):
        return []
    if is_ballasted(book, step):
        acts = [acts[0], *_ballasted(ballast_act(book), acts[1:])]
    if begins_in_place(book, step):
        acts.insert(0, place_act(book))
    acts = [*while_it_grows(book, step), *acts]
    pictures: dict[Kind, Sequence[Picture]] = {
        kind: [how_to(book, step, move) for move in some]
        for kind, some in act_moves(book, step, taught).items()
    }
    measure = book.paper.measure
    if not is_planned(book, step):
        return told_in_order(acts, pictures, measure)
    if pictures and not is_first(book.context, step):
        pictures[Kind.LAY] = side_views(book, step)
    if not pictures or not is_first(book.context, step):
        return told_down_columns(acts, pictures, measure, Last((), 0.0))
    pictures[Kind.LAY] = [plan_of(book, step, PLAN_PT)]
    last = Last(*rows_and_check(book, step, _column_wide(measure)))
    columns = told_down_columns(acts, pictures, measure, last)
    del pictures[Kind.LAY]  # alone, with its rows
    parted = _about_plan(book, step, acts, pictures)
    return [Either(columns[0], parted)] if len(columns) == 1 else parted


def _ballasted(ballast: Doing, acts: Sequence[Doing]) -> list[Doing]:
    """Acts after ballast is tied on; in one with it the locks of ties laid ready, whose picture
    then stands beside that of what they are on."""
    if acts and acts[0].kind is Kind.SETTLE:
        return [Doing(sentences(ballast.said, acts[0].said), Kind.SETTLE), *acts[1:]]
    return [ballast, *acts]


def _about_plan(
    book: Book, step: Step, acts: Sequence[Doing], pictures: Mapping[Kind, Sequence[Picture]]
) -> list[Flowable]:
    """What is done before the chains lie; the plan of them beside their rows; what is done then, at
    each joint, and the check."""
    measure = book.paper.measure
    cells = _cells(acts, pictures)
    laid = 1 + next(n for n, act in enumerate(acts) if act.kind is Kind.LAY)
    told = coming_lines(book, step)
    plan = plan_and_rows(book, step, lambda: ticked_rows(told), lambda wide: rows_high(told, wide))
    check = Items([check_words(book, step)], ticked=True, after=ROW_GAP)
    begun = [block for run in _alike(cells[:laid]) for block in _abreast(run, measure)]
    then = _abreast(cells[laid:], measure)
    for block in then[:-1]:  # words with no picture of their own go with the next
        block.keepWithNext = isinstance(block, Words)
    return [*begun, *plan, *then, *joint_rows(book, step), check]


def told_in_order(
    acts: Sequence[Doing], pictures: Mapping[Kind, Sequence[Picture]], measure: float
) -> list[Flowable]:
    """Acts lettered in their order, the pictures of each below its words; then the pictures that
    are of none of them. Where the page is wide enough pictures are two abreast, words without a
    picture beside one that is alone or right across."""
    return _abreast(_cells(acts, pictures), measure)


def _abreast(cells: Sequence[Sequence[Flowable]], measure: float) -> list[Flowable]:
    if measure < ABREAST_FROM:
        return [block for cell in cells for block in cell]
    return [block for row in _in_rows(cells) for block in _row(row)]


def _alike(cells: Sequence[Sequence[Flowable]]) -> list[list[Sequence[Flowable]]]:
    """Cells with pictures apart from those without, so that words alone stand right across."""
    return [[*some] for _, some in groupby(cells, key=_is_drawn)]


def told_down_columns(
    acts: Sequence[Doing],
    pictures: Mapping[Kind, Sequence[Picture]],
    measure: float,
    last: Last,
) -> list[Flowable]:
    """Acts as of `told_in_order`, then what comes `last`, down one column and then the next,
    where any has pictures and the page is wide enough."""
    cells = _cells(acts, pictures)
    if measure < ABREAST_FROM or not any(map(_is_drawn, cells)):
        return [*(block for cell in cells for block in cell), *last.blocks]
    high = _cells_high(acts, pictures, measure, last)
    cells += [[*last.blocks]] if last.blocks else []
    cut = min(range(1, len(high) + 1), key=lambda n: max(fsum(high[:n]), fsum(high[n:])))
    columns = [[block for cell in some for block in cell] for some in (cells[:cut], cells[cut:])]
    return [Columns(columns, gap=2 * GAP, after=4.0, most_empty=MOST_EMPTY)]


def _column_wide(measure: float) -> float:
    return (measure - 2 * GAP) / ABREAST


def _cells_high(
    acts: Sequence[Doing],
    pictures: Mapping[Kind, Sequence[Picture]],
    measure: float,
    last: Last,
) -> list[float]:
    """About how high each act with its pictures is in its column, then each picture that is of
    none, then what comes last; in points."""
    wide = _column_wide(measure)
    told = {act.kind for act in acts}
    return [
        *(
            rows_high([act.said], wide) + fsum(one.height for one in _of(act, pictures))
            for act in acts
        ),
        *(one.height for kind, some in pictures.items() if kind not in told for one in some),
        *([last.high] if last.blocks else ()),
    ]


def _cells(
    acts: Sequence[Doing], pictures: Mapping[Kind, Sequence[Picture]]
) -> list[list[Flowable]]:
    """Each act with its pictures, then the pictures that are of none."""
    cells = [
        [
            Words(f"{strong(letter)}  {plain(act.said)}"),
            *(Shown(picture, after=4.0) for picture in _of(act, pictures)),
        ]
        for letter, act in zip(ascii_lowercase, acts, strict=False)
    ]
    told = {act.kind for act in acts}
    rest = [picture for kind, some in pictures.items() if kind not in told for picture in some]
    return [*cells, *([Shown(picture, after=4.0)] for picture in rest)]


def _of(act: Doing, pictures: Mapping[Kind, Sequence[Picture]]) -> Sequence[Picture]:
    return () if act.kind is None else pictures.get(act.kind, ())


def _in_rows(cells: Sequence[Sequence[Flowable]]) -> Iterator[Sequence[Sequence[Flowable]]]:
    """Cells as they stand in columns side by side: a picture and the next, or all words up to the
    next; words before a single picture; else words right across."""
    runs = [run for drawn, some in groupby(cells, key=_is_drawn) for run in _split(drawn, [*some])]
    at = 0
    while at < len(runs):
        drawn = [_is_drawn(run[0]) for run in runs[at:]]
        alone = not drawn[0] and [*drawn[1:], False].index(False) != 1
        across = 1 if alone else ABREAST
        yield [[block for cell in run for block in cell] for run in runs[at : at + across]]
        at += across


def _split(
    drawn: bool, cells: Sequence[Sequence[Flowable]]
) -> Iterator[Sequence[Sequence[Flowable]]]:
    """Cells with pictures one by one, words together."""
    yield from ([cell] for cell in cells) if drawn else [cells]


def _row(cells: Sequence[Sequence[Flowable]]) -> Sequence[Flowable]:
    if not any(map(_is_drawn, cells)):
        return [block for cell in cells for block in cell]
    beside = [*cells, *[()] * (ABREAST - len(cells))]
    if len(cells) == 1:  # its words beside its pictures
        drawn = [isinstance(block, Shown) for block in cells[0]]
        first = drawn.index(True)
        beside = [cells[0][:first], cells[0][first:]] if first else beside
    return [Columns(beside, gap=2 * GAP, after=4.0)]


def _is_drawn(cell: Sequence[Flowable]) -> bool:
    return any(isinstance(block, Shown) for block in cell)
