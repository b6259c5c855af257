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
from buildplan.booklet.common.course_steps import planned_step
from buildplan.booklet.common.known_steps import is_known, known_step
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.booklet.common.laying_out import laid_blocks
from buildplan.booklet.common.map_links import title_beside_map
from buildplan.booklet.common.map_sheets import MapSheets, step_place
from buildplan.booklet.common.other_sides import is_seen_across
from buildplan.booklet.common.panel_rows import (
    ABREAST_FROM,
    GAP,
    ROW_GAP,
    abreast,
    in_columns,
    in_rows,
    panel,
)
from buildplan.booklet.common.phone_code import STEPS_MM
from buildplan.booklet.common.spurs import spur_of_step, spur_pictures, spur_place
from buildplan.booklet.common.step_links import looked_up
from buildplan.booklet.common.step_moves import (
    corner_of,
    how_to,
    is_laid_to_brace,
    new_moves,
)
from buildplan.booklet.common.step_pictures import (
    CELL_WIDTH,
    PlacedPicture,
    StepPictures,
    shown_in,
    step_panels,
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
from buildplan.document.blocks import Items, PictureRow, Rule, Shown, Stack, Words
from buildplan.document.layout import Columns
from buildplan.document.links import Anchor
from buildplan.document.paper import mm
from buildplan.document.text import plain
from buildplan.drawing.marks import Picture
from buildplan.instructions.printed_rows import printed
from buildplan.sequence.model import Kind, Step

MOST_HEIGHT = 200.0
PICTURE_HEIGHT, JOINED_HEIGHT = 140.0, 108.0
KNOWN_HEIGHT = 124.0  # of work that was shown before: three steps of it have room on a page
NARROWEST, WIDEST = 150.0, 250.0
FEW_JOINTS, NARROWEST_OF_FEW = 2, 104.0  # a close-up of so few joints that meet needs less
WORDS_SHARE = 0.52
SHORT_CHECK = 60  # letters; a longer check stands below the pictures, not under one of them
MANY_ROWS = 6  # so many rows have the width of the page, in columns
LONG_CHECK = 240  # letters; a check longer than this has the whole width
BELOW_TITLE = 60.0  # a title of the work, and the space about it
NOTICE = 60.0  # of so many points at most, where it may be lifted
MOST_EMPTY = 0.42  # of a page: rather than leave more of it, what comes before a step goes there


def step_block(
    book: Book,
    views: Views,
    sheets: MapSheets,
    step: Step,
    before: Sequence[Flowable] = (),
    taught: Set[Kind] = frozenset(),
    practised: Mapping[int, str] = MappingProxyType({}),
    *,
    below_notice: bool = False,
) -> Stack:
    """A step, and what comes `before` it, on one page if a page has room for them; else what comes
    before has the page before it. What is learnt before work on the piece has its hand moves; those
    of `taught` kinds of work are shown elsewhere, at the place that is `practised` of a step. What
    stands below a title and a notice is parted rather than leave those alone on a page."""
    progress = (step.number, len(book.steps))
    place = Anchor(step_place(step), f"{step.number} {book.told(step).title}", progress)
    if _has_pictures(book, views, step):
        acts = acts_of(book, step, taught)
        moves = [] if acts else _moves(book, step, taught)
        below = () if before else moves
        aside = looked_up(book, sheets, step, practised)
        body = (
            known_step(book, views, aside, step)
            if is_known(book, step) and not before
            else _on_the_piece(book, views, aside, step, below, acts)
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
        body = [title_beside_map(book, sheets, step, title), *told(book, views, step)]
    # chains with their colours can be parted from one another, and a plan from its words
    under = BELOW_TITLE + (mm(STEPS_MM) if book.link else 0.0) + (NOTICE if below_notice else 0.0)
    parted = bool(strip_rows(book, step)) or is_laid_to_brace(book, step)
    stack = Stack([Rule(), place, *body], whole=not parted, below_title=under)
    if not before:
        return stack
    return Stack(
        [*before, stack],
        whole=True,
        below_title=under,
        most_empty=MOST_EMPTY,
        above=BELOW_TITLE,
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


def _on_the_piece(
    book: Book,
    views: Views,
    beside: Sequence[Flowable],
    step: Step,
    moves: Sequence[Picture],
    acts: Sequence[Flowable],
) -> list[Flowable]:
    """Title and words; the hand moves that are new, or the acts with theirs; a panel for each brace
    with its rows under it, and the diagram of a corner; the whole piece where a row of them has a
    place left, else with the hand moves or beside the words; the check last."""
    if is_planned(book, step):
        return planned_step(book, views, beside, step, acts)
    measure = book.paper.measure
    told_turns = book.told(step).turns
    turns = [list(turn.lines) for turn in told_turns if turn.name]
    size, has_place = _sizes(book, views, step)
    panels = step_panels(book, step, views, size, size if has_place else PLACE)
    closeups = len(panels.closeups)
    alone = len(turns) != closeups  # several turns in one panel: their rows stand by themselves
    told: Sequence[Sequence[str]] = [()] * closeups if alone else turns
    cells = [panel(picture, rows) for picture, rows in zip(panels.closeups, told, strict=True)]
    check = Stack(
        [
            Items([check_words(book, step)], ticked=True, gap=ROW_GAP, after=ROW_GAP),
            *ballast_link(book, step),
        ]
    )
    aside = [] if has_place else [panels.where]
    said, below = words_of(book, step, acts), acts
    if all(isinstance(act, Words) for act in acts):  # no pictures that need the whole width
        said, below = [*said, *acts], ()
    head = [*told_with_moves(book, beside, step, said, moves, aside), *below]
    if has_place and not alone and measure >= ABREAST_FROM:
        if closeups == 1:  # what is to be ticked has the room between the pictures
            ticked = Items([*map(plain, turns[0]), check_words(book, step)], ticked=True)
            row = [[Shown(panels.closeups[0])], [ticked], [Shown(panels.where)]]
            return [*head, Columns(row, gap=GAP, after=4.0)]
        if len(book.told(step).check) <= SHORT_CHECK:
            return [*head, *in_rows([*cells, [Shown(panels.where, after=4.0), check]], measure)]
    cells += [[Shown(one)] for one in (panels.corner, panels.where if has_place else None) if one]
    if panels.across:
        drawn = (*panels.closeups, panels.across, panels.corner)
        cells = [[Shown(one)] for one in drawn if one]
        return [*head, *in_rows(cells, measure), *abreast(turns[0], measure), check]
    rows = list(printed(book.context, step.turns, told_turns)) if alone else []
    return [*head, *in_rows(cells, measure), *abreast(rows, measure), check]


def _sizes(book: Book, views: Views, step: Step) -> tuple[tuple[float, float], bool]:
    """How wide and high the close-ups of a step are, and whether the whole piece has a place as
    large as theirs in a row of them that is not full."""
    measure, shown = book.paper.measure, shown_in(book, views.of(step))
    few = all(len(closeup.panel.joints) <= FEW_JOINTS for closeup in shown)
    narrow = few and step.kind in (Kind.JOIN, Kind.SINGLE)
    narrowest = NARROWEST_OF_FEW if narrow else NARROWEST
    fit = max(1, int((measure + GAP) / (narrowest + GAP)))
    lines = -(-len(shown) // fit)
    has_place = corner_of(book, step) is None and len(shown) < lines * fit
    across = -(-(len(shown) + has_place) // lines)  # rows alike: two and two, not three and one
    if has_place and len(shown) == 1 and step.kind is not Kind.JOIN and measure >= ABREAST_FROM:
        across = 3  # the words are between
    wide = min(WIDEST, (measure - GAP * (across - 1)) / across)
    if is_seen_across(book, step) and measure >= ABREAST_FROM:  # two close-ups and the diagram
        wide = (measure - CELL_WIDTH - 2 * GAP) / 2
    tall = PICTURE_HEIGHT if step.alike is None else KNOWN_HEIGHT
    return (wide, JOINED_HEIGHT if narrow or step.kind is Kind.JOIN else tall), has_place


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
