"""The plan of a course from above, and beside it or below what is tied at each of its joints: as
large as the page has room for."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from reportlab.platypus import Flowable

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.laid_courses import first_ring
from buildplan.booklet.common.map_sheets import step_place
from buildplan.booklet.common.panel_rows import ABREAST_FROM
from buildplan.document.blocks import Shown
from buildplan.document.growing import Growing
from buildplan.document.layout import Columns
from buildplan.drawing.course_plan import PlannedCourse, balloon_long, course_plan
from buildplan.drawing.marks import Picture
from buildplan.instructions.coming import coming
from buildplan.language.phrases import clauses
from buildplan.sequence.model import Kind, Step

# Shares of the measure and of the height of a page; points.
PLAN_SHARE, PLAN_HIGH, GAP = 0.5, 0.294, 12.0
MOST_SHARE, LEAST_ALONE, LEAST_COLUMN, STRIDE = 0.9, 330.0, 190.0, 12.0
LONGEST = 92.0  # of a balloon: a plan of few does not grow beyond that


def plan_and_rows(
    book: Book,
    step: Step,
    rows: Callable[[], Sequence[Flowable]],
    rows_high: Callable[[float], float],
) -> list[Flowable]:
    """The plan of what a step joins beside its `rows`, which are `rows_high` points high in a
    column so wide; where the page has room the plan grows, and has its rows below it where it
    grows to the width of the page. On a narrow page they are below it."""
    measure, least = book.paper.measure, plan_wide(book)
    plan = plan_of(book, step, least)
    if measure < ABREAST_FROM:
        return [Shown(plan), *rows()]

    course = planned_course(book, step)
    largest = least * LONGEST / balloon_long(book.framework, book.shape, course, least)

    def high(wide: float, tall: float) -> float:
        beside = measure - wide - GAP
        return tall + rows_high(measure) if _is_alone(wide) else max(tall, rows_high(beside))

    def make(more: float) -> list[Flowable]:
        room, ratio = high(plan.width, plan.height) + more, plan.height / plan.width
        for wide in _widths(measure, least, largest) if more else ():
            if high(wide, wide * ratio) <= room:
                larger = plan_of(book, step, wide)
                if high(wide, larger.height) <= room:
                    return _laid(larger, rows(), measure)
        return _laid(plan, rows(), measure)

    most = next(_widths(measure, least, largest), least)
    grown = high(most, most * plan.height / plan.width) - high(plan.width, plan.height)
    return [Growing(f"{step_place(step)} plan", make, grown)]


def plan_wide(book: Book) -> float:
    """How wide a plan is at least, in points."""
    return min(PLAN_HIGH * book.paper.height, PLAN_SHARE * book.paper.measure)


def _widths(measure: float, least: float, largest: float) -> Iterator[float]:
    """How wide a plan may be, the widest first: alone, then beside its rows."""
    wide = min(MOST_SHARE * measure, largest)
    while wide > least:
        if wide >= LEAST_ALONE or wide <= measure - LEAST_COLUMN - GAP:
            yield wide
        wide -= STRIDE


def _is_alone(wide: float) -> bool:
    return wide >= LEAST_ALONE


def _laid(plan: Picture, rows: Sequence[Flowable], measure: float) -> list[Flowable]:
    if _is_alone(plan.width):
        return [Shown(plan), *rows]
    shares = (plan.width, measure - plan.width - GAP)
    return [Columns(([Shown(plan)], rows), shares, gap=GAP, after=8.0)]


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
