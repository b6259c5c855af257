"""How a step of work on the piece is laid out: its words, a panel for each brace with its rows,
where on the whole piece it is; as large as the page has room for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportlab.platypus import Flowable

from buildplan.booklet.common.ballasting import ballast_link
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.course_steps import is_tabled, planned_step, tabled_step
from buildplan.booklet.common.laid_courses import is_planned
from buildplan.booklet.common.map_sheets import step_place
from buildplan.booklet.common.other_sides import is_seen_across
from buildplan.booklet.common.panel_rows import (
    ABREAST_FROM,
    GAP,
    ROW_GAP,
    abreast,
    in_rows,
    panel,
    unbroken_row,
)
from buildplan.booklet.common.people_at_braces import (
    is_locked_where_it_closes,
    locked_where_it_closes,
    people_at,
)
from buildplan.booklet.common.step_moves import corner_of
from buildplan.booklet.common.step_pictures import CELL_HEIGHT, CELL_WIDTH, shown_in, step_panels
from buildplan.booklet.common.step_words import PLACE, check_words, told_with_moves, words_of
from buildplan.document.blocks import Items, Shown, Stack, Words, together
from buildplan.document.growing import Growing
from buildplan.document.layout import Columns
from buildplan.document.undrawn import Showable
from buildplan.drawing.marks import Picture
from buildplan.instructions.printed_rows import printed
from buildplan.sequence.model import Kind, Step

PICTURE_HEIGHT, JOINED_HEIGHT = 140.0, 108.0
LEAST_HEIGHT = 124.0  # of close-ups: three steps of them have room on a page
HIGHEST = 230.0
NARROWEST, WIDEST = 150.0, 250.0
FEW_JOINTS, NARROWEST_OF_FEW = 2, 104.0  # a close-up of so few joints that meet needs less
SHORT_CHECK = 60  # letters; a longer check stands below the pictures, not under one of them
# The small picture of the whole piece grows by this share of what a step grows, and by so much;
# under the diagram of a corner it is so high at first, and grows by so much at most.
PLACE_SHARE, MORE_PLACE = 0.6, 44.0
UNDER_CORNER, MORE_UNDER = 78.0, 60.0
BY_PERSON = (104.0, 72.0)  # and so large above a person at the work


def on_the_piece(
    book: Book,
    views: Views,
    beside: Sequence[Flowable],
    step: Step,
    moves: Sequence[Picture],
    acts: Sequence[Flowable],
) -> Flowable:
    """A step of work on the piece, its pictures as large as the page has room for."""
    if is_planned(book, step):
        return Stack(planned_step(book, views, beside, step, acts))
    if is_tabled(book, step):
        return tabled_step(book, views, beside, step, moves, acts)
    most = _sizes(book, views, step).most
    return Growing(
        step_place(step), lambda more: _blocks(book, views, beside, step, moves, acts, more), most
    )


def _blocks(
    book: Book,
    views: Views,
    beside: Sequence[Flowable],
    step: Step,
    moves: Sequence[Picture],
    acts: Sequence[Flowable],
    more: float,
) -> list[Flowable]:
    """Title and words; the hand moves that are new, or the acts with theirs; a panel for each brace
    with its rows under it, and the diagram of a corner; the whole piece where a row of them has a
    place left, else with the hand moves or beside the words; the check last. All of it is `more`
    points higher than it need be, or less."""
    measure = book.paper.measure
    told_turns = book.told(step).turns
    turns = [list(turn.lines) for turn in told_turns if turn.name]
    sizes = _sizes(book, views, step)
    has_place = sizes.place is None
    size, place = sizes.grown(more)
    panels = step_panels(book, step, views, size, place)
    closeups = len(panels.closeups)
    alone = len(turns) != closeups  # several turns in one panel: their rows stand by themselves
    told: Sequence[Sequence[str]] = [()] * closeups if alone else turns
    cells = [panel(picture, rows) for picture, rows in zip(panels.closeups, told, strict=True)]
    check = _check(book, step)
    under_corner = _is_under_corner(book, views, step)
    aside = [] if has_place or under_corner else [panels.where]
    said, below = words_of(book, step, acts), acts
    if all(isinstance(act, Words) for act in acts):  # no pictures that need the whole width
        said, below = [*said, *acts], ()
    said = [*said, *map(Shown, locked_where_it_closes(book, step))]
    people: Sequence[Showable] = people_at(book, views, step)
    row: Sequence[Showable] = moves
    if below:  # few words to stand beside
        row, people = [*people, *moves], ()
    head = [*told_with_moves(book, beside, step, said, row, aside, people), *below]
    if has_place and not alone and measure >= ABREAST_FROM:
        if closeups == 1:  # what is to be ticked has the room between the pictures
            told_row = [unbroken_row(row, size[0]) for row in turns[0]]
            ticked = Items([*told_row, check_words(book, step)], ticked=True)
            cells = [[Shown(panels.closeups[0])], [ticked], [Shown(panels.where)]]
            return [*head, Columns(cells, gap=GAP, after=4.0)]
        if len(book.told(step).check) <= SHORT_CHECK:
            return [*head, *in_rows([*cells, [Shown(panels.where, after=4.0), check]], measure)]
    if under_corner:  # beside what is to be ticked
        corner = [Shown(one) for one in (panels.corner, panels.where) if one]
        return [*head, *in_rows([[*cells[0], check], corner], measure)]
    cells += [[Shown(one)] for one in (panels.corner, panels.where if has_place else None) if one]
    if panels.across:
        drawn = (*panels.closeups, panels.across, panels.corner)
        cells = [[Shown(one)] for one in drawn if one]
        return [*head, *in_rows(cells, measure), *abreast(turns[0], measure), check]
    rows = list(printed(book.context, step.turns, told_turns)) if alone else []
    pictures = in_rows(cells, measure)  # the last of them stays with what is to be ticked
    last = together(*pictures[-1:], *abreast(rows, measure), check)
    return [*head, *pictures[:-1], last]


def _check(book: Book, step: Step) -> Stack:
    """What shows that the step was done well, to be ticked."""
    ticked = Items([check_words(book, step)], ticked=True, gap=ROW_GAP, after=ROW_GAP)
    return Stack([ticked, *ballast_link(book, step)])


def _is_under_corner(book: Book, views: Views, step: Step) -> bool:
    """Whether the small picture of the whole piece stands under the diagram of a corner, where what
    is to be ticked has its room beside it: of a single brace that is not seen from across too, and
    has no pictures beside its words."""
    named = [turn for turn in book.told(step).turns if turn.name]
    one = len(shown_in(book, views.of(step))) == 1 == len(named)
    wide = book.paper.measure >= ABREAST_FROM
    beside = is_seen_across(book, step) or is_locked_where_it_closes(book, step)
    return one and wide and corner_of(book, step) is not None and not beside


@dataclass(frozen=True)
class _Sizes:
    """How wide and high close-ups are, in so many rows, and no higher than `highest`; and the
    small picture of the whole piece, None where it is as large as they are."""

    closeup: tuple[float, float]
    highest: float
    rows: int
    place: tuple[float, float] | None
    under_corner: bool = False

    @property
    def most(self) -> float:
        """How much higher all of it can be."""
        if self.under_corner:
            return MORE_UNDER + max(self.highest - CELL_HEIGHT, 0.0)
        place = 0.0 if self.place is None else MORE_PLACE
        return place + self.rows * max(self.highest - self.closeup[1], 0.0)

    def grown(self, more: float) -> tuple[tuple[float, float], tuple[float, float]]:
        """The close-ups and the whole piece, `more` higher together: the whole piece by the larger
        share, as far as it is worth it."""
        wide, tall = self.closeup
        if self.place is None:
            size = (wide, tall + min(more / self.rows, max(self.highest - tall, 0.0)))
            return size, size
        if self.under_corner:  # the close-up and what is under it; beside it diagram and piece
            of_place = min(more, MORE_UNDER)
            tall = min(max(tall, min(tall + more, CELL_HEIGHT) + more - of_place), self.highest)
            return (wide, tall), (self.place[0], self.place[1] + of_place)
        of_place = min(more * PLACE_SHARE, MORE_PLACE)
        of_each = min((more - of_place) / self.rows, max(self.highest - tall, 0.0))
        scale = 1 + of_place / self.place[1]
        return (wide, tall + of_each), (self.place[0] * scale, self.place[1] * scale)


def _sizes(book: Book, views: Views, step: Step) -> _Sizes:
    """How large the pictures of a step are at first, and how far they can grow."""
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
    tall = LEAST_HEIGHT
    tall = JOINED_HEIGHT if narrow or step.kind is Kind.JOIN else tall
    highest = min(wide, HIGHEST)
    if _is_under_corner(book, views, step):
        of_place = (CELL_WIDTH, UNDER_CORNER)
        return _Sizes((wide, tall), highest, lines, of_place, under_corner=True)
    if has_place:
        return _Sizes((wide, tall), highest, lines, None)
    beside = BY_PERSON if is_locked_where_it_closes(book, step) else PLACE
    return _Sizes((wide, tall), highest, lines, beside)
