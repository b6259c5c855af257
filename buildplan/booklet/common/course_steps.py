"""Steps that bring in a course of what is neither a tube nor rings with zigzags: the plan of the
course from above, and beside it what meets at each of its joints."""

from __future__ import annotations

from collections.abc import Sequence
from math import fsum

from reportlab.platypus import Flowable

from buildplan.booklet.common.ballasting import ballast_link
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.course_plans import GAP, PLAN_SHARE, plan_and_rows, plan_of, plan_wide
from buildplan.booklet.common.course_rows import (
    coming_lines,
    shown_rows,
    table_high,
    ticked_rows,
    tied_at_joints,
    tied_place,
)
from buildplan.booklet.common.joint_moves import closed_from_outside
from buildplan.booklet.common.locks_behind import locks_behind
from buildplan.booklet.common.map_sheets import step_place
from buildplan.booklet.common.panel_rows import ABREAST_FROM, ROW_GAP, rows_high
from buildplan.booklet.common.side_views import side_views
from buildplan.booklet.common.step_pictures import shown_in, step_panels
from buildplan.booklet.common.step_words import (
    PLACE,
    check_words,
    step_title,
    told_with_moves,
    words_of,
)
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.growing import Growing
from buildplan.document.layout import Columns
from buildplan.document.links import Anchor
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import step_picture
from buildplan.drawing.seat import STANDING_WHOLE
from buildplan.instructions.coming import is_first
from buildplan.instructions.joint_table import joint_table
from buildplan.sequence.model import Kind, Step

# Points; shares of the measure.
HEAD_SHARES = (0.8, 0.2)
CLOSEUP_WIDE, CLOSEUP_HIGH, MOST_CLOSEUP_HIGH = 248.0, 92.0, 146.0
STANDS, STANDING_LINES = (96.0, 66.0), 4
FEWEST_ROWS = 4  # of joints in a table; so many chains have room beside the small picture
OVER = 12.0  # that words may be longer than the pictures beside them


def is_tabled(book: Book, step: Step) -> bool:
    """Whether a step joins chains of which other ones meet at each joint, and has no plan: several
    joints, or there is nothing to compare."""
    joins = step.of_kind(Kind.JOIN) if step.kind is Kind.JOIN else ()
    return len(joins) >= FEWEST_ROWS and joint_table(book.context, step.turns) is not None


def planned_step(
    book: Book,
    views: Views,
    beside: Sequence[Flowable],
    step: Step,
    acts: Sequence[Flowable],
) -> list[Flowable]:
    """Title and words; the chains that come in; the plan, and beside it what is tied at each joint
    in its turn and how the piece stands then; the check. Where there is room for the chains beside
    the plan they are there."""
    said, below = words_of(book, step, acts), acts
    if all(isinstance(act, Words) for act in acts):
        said, below = [*said, *acts], ()
    measure = book.paper.measure
    if below and is_first(book.context, step):  # all of it is down its columns
        return [*_head_of(book, beside, step, said), *below]
    least = plan_wide(book)
    wide = measure - least - GAP
    told, tied, check = coming_lines(book, step), tied_at_joints(book, step), book.told(step).check
    left, aside = plan_of(book, step, least).height - table_high(tied, wide), []
    for lines in (told, [check], [""] * STANDING_LINES):
        left -= rows_high(lines, wide)
        aside.append(left >= 0 and measure >= ABREAST_FROM)
        left += 0.0 if aside[-1] else rows_high(lines, wide)
    checked: list[Flowable] = [Items([check_words(book, step)], ticked=True, after=ROW_GAP)]

    def rows() -> list[Flowable]:
        chains = ticked_rows(told) if aside[0] else []
        place = Anchor(tied_place(book, step))
        ends = [*(checked if aside[1] else ()), *(_standing(book, views, step) if aside[2] else ())]
        return [*chains, place, *shown_rows(tied), *ends]

    def tall(wide: float) -> float:
        lines = [*(told if aside[0] else ()), *([check] if aside[1] else ())]
        return table_high(tied, wide) + rows_high(lines, wide) + (STANDS[1] if aside[2] else 0.0)

    body = plan_and_rows(book, step, rows, tall)
    first = [] if aside[0] else ticked_rows(told)
    drawn = (*(() if below else side_views(book, step)), *closed_from_outside(book, step))
    if drawn and measure >= ABREAST_FROM:
        narrow = measure - max(one.width for one in drawn) - GAP
        high = rows_high([book.told(step).text, *told], narrow)
        if high <= fsum(one.height for one in drawn) + OVER:  # beside the pictures
            said, first = [*said, *first], []
    head = _head_of(book, beside, step, said, drawn)
    return [*head, *below, *first, *body, *(() if aside[1] else checked)]


def _head_of(
    book: Book,
    beside: Sequence[Flowable],
    step: Step,
    said: Sequence[Flowable],
    drawn: Sequence[Picture] = (),
) -> list[Flowable]:
    """Title and what is said, beside what leads to other pages and what is `drawn` with it."""
    links, measure = [*beside, *ballast_link(book, step)], book.paper.measure
    told, shown = [step_title(book, step), *said], [Shown(one, after=ROW_GAP) for one in drawn]
    if drawn and measure < ABREAST_FROM:
        told, shown = [*told, *shown], []
    wide = max((one.width for one in drawn), default=0.0)
    shares = (measure - wide - GAP, wide) if shown else HEAD_SHARES
    head = Columns((told, [*links, *shown]), shares, gap=GAP, after=4.0)
    head.keepWithNext = True
    return [head]


def tabled_step(
    book: Book,
    views: Views,
    beside: Sequence[Flowable],
    step: Step,
    moves: Sequence[Picture],
    acts: Sequence[Flowable],
) -> Growing:
    """Title and words; the chains that come in; the close-ups one below another, as high as the
    page has room for, and beside them what is tied at each joint in its turn, with the check."""
    count = max(len(shown_in(book, views.of(step))), 1)

    def make(more: float) -> list[Flowable]:
        return _tabled(book, views, beside, step, moves, acts, CLOSEUP_HIGH + more / count)

    return Growing(step_place(step), make, count * (MOST_CLOSEUP_HIGH - CLOSEUP_HIGH))


def _tabled(
    book: Book,
    views: Views,
    beside: Sequence[Flowable],
    step: Step,
    moves: Sequence[Picture],
    acts: Sequence[Flowable],
    high: float,
) -> list[Flowable]:
    """The same, its close-ups so many points high."""
    measure = book.paper.measure
    size = (min(CLOSEUP_WIDE, PLAN_SHARE * measure), high)
    panels = step_panels(book, step, views, size, PLACE)
    said, below = words_of(book, step, acts), acts
    if all(isinstance(act, Words) for act in acts):
        said, below = [*said, *acts], ()
    aside = [panels.where]
    if len(moves) == 1 and not below:  # the words have room for both beside the hand move
        said, aside = [*said, Shown(panels.where)], []
    coming_in = coming_lines(book, step)
    chains = ticked_rows(coming_in)
    if not moves and not below and len(coming_in) <= FEWEST_ROWS:  # beside the small picture
        said, chains = [*said, *chains], []
    head = told_with_moves(book, beside, step, said, moves, aside)
    check = Items([check_words(book, step)], ticked=True, gap=ROW_GAP, after=ROW_GAP)
    tied = [*shown_rows(tied_at_joints(book, step)), check, *ballast_link(book, step)]
    drawn: list[Flowable] = [
        Shown(one, after=4.0) for one in (*panels.closeups, *locks_behind(book, step))
    ]
    shares = (size[0], measure - size[0] - GAP)
    body = [Columns((drawn, tied), shares, gap=GAP, after=4.0)]
    return [*head, *below, *chains, *(body if measure >= ABREAST_FROM else [*drawn, *tied])]


def _standing(book: Book, views: Views, step: Step) -> list[Flowable]:
    """The piece as it stands after a step."""
    alt = book.voice.say(
        "How the piece stands after step {number}. {check}",
        number=step.number,
        check=book.told(step).check,
    )
    whole = step_picture(views.progress.whole(step), STANDING_WHOLE, *STANDS, alt=alt)
    return [Shown(whole, align="right")]
