"""Steps that bring in a course of what is neither a tube nor rings with zigzags: the plan of the
course from above, and beside it what meets at each of its joints."""

from __future__ import annotations

from collections.abc import Sequence
from math import fsum

from reportlab.platypus import Flowable

from buildplan.booklet.common.ballasting import ballast_link
from buildplan.booklet.common.book import Book
from buildplan.booklet.common.closeups import Views
from buildplan.booklet.common.joint_moves import closed_from_outside
from buildplan.booklet.common.laid_courses import first_ring, is_planned
from buildplan.booklet.common.map_sheets import step_place
from buildplan.booklet.common.panel_rows import ABREAST_FROM, ROW_GAP, rows_high
from buildplan.booklet.common.side_views import side_views
from buildplan.booklet.common.step_pictures import step_panels
from buildplan.booklet.common.step_words import (
    PLACE,
    check_words,
    step_title,
    told_with_moves,
    words_of,
)
from buildplan.document.blocks import Items, Shown, Words
from buildplan.document.layout import Columns
from buildplan.document.links import Anchor
from buildplan.document.tables import Grid
from buildplan.document.text import plain
from buildplan.drawing.course_plan import PlannedCourse, course_plan
from buildplan.drawing.marks import Picture
from buildplan.drawing.scene import step_picture
from buildplan.drawing.seat import STANDING_WHOLE
from buildplan.instructions.coming import coming, is_first
from buildplan.instructions.joint_table import JointTable, balloons_between, joint_table
from buildplan.instructions.printed_rows import printed
from buildplan.language.phrases import clauses
from buildplan.sequence.model import Kind, Step

# Points; shares of the page and of the table beside the plan.
PLAN_SHARE, PLAN_HIGH, GAP = 0.5, 0.294, 12.0  # of the measure, of the height of a page
HEAD_SHARES = (0.8, 0.2)
CLOSEUP_WIDE, CLOSEUP_HIGH = 248.0, 92.0
STANDS, STANDING_LINES = (96.0, 66.0), 4
FEWEST_ROWS = 4  # of joints in a table; so many chains have room beside the small picture
ROW_HIGH = 16.0  # of the table, about
OVER = 12.0  # that words may be longer than the pictures beside them
COLUMNS, PAD = (0.22, 0.18, 0.6), 1.4


def is_tabled(book: Book, step: Step) -> bool:
    """Whether a step joins chains of which other ones meet at each joint, and has no plan: several
    joints, or there is nothing to compare."""
    joins = step.of_kind(Kind.JOIN) if step.kind is Kind.JOIN else ()
    return len(joins) >= FEWEST_ROWS and joint_table(book.context, step.turns) is not None


def tied_place(book: Book, step: Step) -> str:
    """The name of the place where what a step ties is listed, for links to lead to: of a course
    with a plan its table, which may be on a later page than its title."""
    listed = step.repeats is None and is_planned(book, step)
    return f"{step_place(step)} joints" if listed else step_place(step)


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
    plan = plan_of(book, step, min(PLAN_HIGH * book.paper.height, PLAN_SHARE * measure))
    wide = measure - plan.width - GAP
    told, tied, check = _coming_lines(book, step), _tied(book, step), book.told(step).check
    left, aside = plan.height - _high(tied, wide), []
    for lines in (told, [check], [""] * STANDING_LINES):
        left -= rows_high(lines, wide)
        aside.append(left >= 0 and measure >= ABREAST_FROM)
        left += 0.0 if aside[-1] else rows_high(lines, wide)
    chains = _ticked(told)
    checked: list[Flowable] = [Items([check_words(book, step)], ticked=True, after=ROW_GAP)]
    standing: list[Flowable] = [Shown(_standing(book, views, step), align="right")]
    column = [*(chains if aside[0] else ()), Anchor(tied_place(book, step)), *_shown(tied)]
    column += [*(checked if aside[1] else ()), *(standing if aside[2] else ())]
    body = [Columns(([Shown(plan)], column), (plan.width, wide), gap=GAP, after=2.0)]
    if measure < ABREAST_FROM:
        body = [Shown(plan), *column]
    first = () if aside[0] else chains
    drawn = (*(() if below else side_views(book, step)), *closed_from_outside(book, step))
    if drawn and measure >= ABREAST_FROM:
        narrow = measure - max(one.width for one in drawn) - GAP
        high = rows_high([book.told(step).text, *told], narrow)
        if high <= fsum(one.height for one in drawn) + OVER:  # beside the pictures
            said, first = [*said, *first], ()
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


def rows_and_check(book: Book, step: Step, wide: float) -> tuple[list[Flowable], float]:
    """The chains that come in with a step, what is tied at each joint, the check; and about how
    high these are in a column so `wide`, in points."""
    told, tied, check = _coming_lines(book, step), _tied(book, step), check_words(book, step)
    ticked = Items([check], ticked=True, after=ROW_GAP)
    place = Anchor(tied_place(book, step))
    blocks = [*(_ticked(told) if told else ()), place, *_shown(tied), ticked]
    return blocks, rows_high([*told, check], wide) + _high(tied, wide)


def tabled_step(
    book: Book,
    views: Views,
    beside: Sequence[Flowable],
    step: Step,
    moves: Sequence[Picture],
    acts: Sequence[Flowable],
) -> list[Flowable]:
    """Title and words; the chains that come in; the close-ups one below another, and beside them
    what is tied at each joint in its turn, with the check."""
    measure = book.paper.measure
    size = (min(CLOSEUP_WIDE, PLAN_SHARE * measure), CLOSEUP_HIGH)
    panels = step_panels(book, step, views, size, PLACE)
    said, below = words_of(book, step, acts), acts
    if all(isinstance(act, Words) for act in acts):
        said, below = [*said, *acts], ()
    aside = [panels.where]
    if len(moves) == 1 and not below:  # the words have room for both beside the hand move
        said, aside = [*said, Shown(panels.where)], []
    coming_in = _coming_lines(book, step)
    chains = _ticked(coming_in)
    if not moves and not below and len(coming_in) <= FEWEST_ROWS:  # beside the small picture
        said, chains = [*said, *chains], []
    head = told_with_moves(book, beside, step, said, moves, aside)
    check = Items([check_words(book, step)], ticked=True, gap=ROW_GAP, after=ROW_GAP)
    tied = [*_shown(_tied(book, step)), check, *ballast_link(book, step)]
    drawn: list[Flowable] = [Shown(one, after=4.0) for one in panels.closeups]
    shares = (size[0], measure - size[0] - GAP)
    body = [Columns((drawn, tied), shares, gap=GAP, after=4.0)]
    return [*head, *below, *chains, *(body if measure >= ABREAST_FROM else [*drawn, *tied])]


def _coming_lines(book: Book, step: Step) -> list[str]:
    """The rows of what comes in with a step: chains, and balloons between two joints."""
    told = [
        line
        for turn, words in zip(step.turns, book.told(step).turns, strict=True)
        if turn.operations[0].kind is not Kind.JOIN
        for line in words.lines
    ]
    return [*told, *balloons_between(book.context, step.turns)]


def _ticked(lines: Sequence[str]) -> list[Flowable]:
    return [Items([plain(line) for line in lines], ticked=True, gap=ROW_GAP, after=ROW_GAP)]


def _high(tied: JointTable | list[str], wide: float) -> float:
    """About how high what is tied at each joint is, in points."""
    if isinstance(tied, JointTable):
        return ROW_HIGH * (len(tied.rows) + 2)
    return rows_high(tied, wide)


def _tied(book: Book, step: Step) -> JointTable | list[str]:
    """What meets at each joint: a table, or lines where it is the same at all of them."""
    table = joint_table(book.context, step.turns)
    if table is not None:
        return table
    both = [
        (turn, words)
        for turn, words in zip(step.turns, book.told(step).turns, strict=True)
        if turn.operations[0].kind is Kind.JOIN
    ]
    return list(printed(book.context, [turn for turn, _ in both], [words for _, words in both]))


def _shown(tied: JointTable | list[str]) -> list[Flowable]:
    if isinstance(tied, list):
        return _ticked(tied)
    rows = [tuple(map(plain, row)) for row in tied.rows]
    return [Grid(tied.head, rows, COLUMNS, pad=PAD, after=6.0, row_heads=True, ticked=True)]


def plan_of(book: Book, step: Step, across: float) -> Picture:
    """The plan of what a step joins, `across` points wide."""
    voice = book.voice
    rows = clauses(voice, (line for turn in book.told(step).turns for line in turn.lines))
    alt = voice.say("Plan of step {number}, from above: {rows}.", number=step.number, rows=rows)
    course = planned_course(book, step)
    return course_plan(book.framework, book.shape, course, across, alt, voice.say("From above"))


def planned_course(book: Book, step: Step) -> PlannedCourse:
    """What a step joins, and what stands about it: balloons that are tied at one end already."""
    link, joins = book.framework.link, step.of_kind(Kind.JOIN)
    chains = tuple(coming(book.context, step))
    between = tuple(id_ for op in joins for id_ in op.links)
    tied = tuple(op.joints[0] for op in joins)
    brought = {*between, *(id_ for one in chains for id_ in one.chain.links)}
    met = dict.fromkeys(id_ for joint in tied for id_ in book.context.met_at(joint))
    others = [id_ for id_ in met if id_ not in brought]
    earlier = [op for one in book.steps[: step.number - 1] for op in one.of_kind(Kind.JOIN)]
    done = {joint for op in earlier for joint in op.joints}
    ends = {j for id_ in {*brought, *met} for j in (link[id_].start, link[id_].finish)}
    stands = {id_ for id_ in others if not done.isdisjoint((link[id_].start, link[id_].finish))}
    return PlannedCourse(
        chains,
        between,
        tuple(id_ for id_ in others if id_ not in stands),
        tuple(id_ for id_ in others if id_ in stands),
        tied,
        frozenset(ends & done),
        frozenset(ends - done - set(tied)),
        bool(step.locks),
        first_ring(book, step),
    )


def _standing(book: Book, views: Views, step: Step) -> Picture:
    """The piece as it stands after a step."""
    alt = book.voice.say(
        "How the piece stands after step {number}. {check}",
        number=step.number,
        check=book.told(step).check,
    )
    return step_picture(views.progress.whole(step), STANDING_WHOLE, *STANDS, alt=alt)
