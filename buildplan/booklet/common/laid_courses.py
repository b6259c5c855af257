"""Pictures of chains that come in with a course, where they lie, the first time that each way of
laying them comes up."""

from __future__ import annotations

import math

import numpy as np

from buildplan.booklet.common.book import Book
from buildplan.drawing.marks import Picture
from buildplan.drawing.techniques.rounds import lay_round, lay_rows, set_round, stand_round
from buildplan.framework.model import LongChain
from buildplan.sequence.directions import Direction
from buildplan.sequence.laid import RoundCourse, round_course, rows_of
from buildplan.sequence.model import Kind, Step
from buildplan.shape.lying import FLAT

BACKWARD = frozenset({Direction.CLOCKWISE, Direction.LEFT})


def laid_pictures(book: Book, step: Step) -> tuple[Picture, ...]:
    """Where the chains of a step lie: a row with its uprights; a ring with its zigzag, or set on
    the one below, where none before was laid so. None of other chains."""
    if is_planned(book, step):
        return ()  # the plan of the course has them where they lie
    coming = _coming(book, step)
    rows = rows_of(coming)
    if step.kind is Kind.LAY and rows:
        turn = _turn(book, rows[0])
        return (lay_rows(book.framework, book.voice, rows, coming, turn),)
    course = _round(book, step)
    if course is None:
        return ()
    before = [_round(book, other) for other in book.steps[: step.number - 1]]
    known = {other.down is None for other in before if other is not None}
    if (course.down is None) in known:
        return ()
    turn = _turn(book, course.ring)
    if course.down is not None:
        return (set_round(book.framework, book.voice, course, turn),)
    if course.up is None:
        return ()
    first = _first_deg(book, course.ring)
    return (lay_round(book.framework, book.voice, course.ring, course.up, first, turn),)


def is_planned(book: Book, step: Step) -> bool:
    """Whether a step joins a course that has a plan: of a piece or part that is built standing and
    goes round, unlike a low wall, and not of rings with zigzags alone, which lie over one another
    as seen from above."""
    joins = step.of_kind(Kind.JOIN) if step.kind is Kind.JOIN else ()
    if not joins or not joins[0].course or len(joins[0].joints) > 1:
        return False
    part_at = book.framework.part_at
    part = part_at(joins[0].joints[0])
    if (part.name if part else "") in book.figures.flat:
        return False
    if _is_long(book, joins[0].joints[0]):
        return False
    own = [
        one
        for one in book.steps
        if _coming(book, one) and part_at(one.of_kind(Kind.LAY)[0].joints[0]) is part
    ]
    return any(_round(book, one) is None for one in own)


def _is_long(book: Book, joint: str) -> bool:
    """Whether what a joint is of is much longer than deep, as a low wall or a beam is."""
    joints = book.framework.built_with(joint).joints
    plan = np.ptp(np.array([book.shape.at[one][[0, 2]] for one in joints]), axis=0)
    return float(plan.max()) > FLAT * float(plan.min())


def stood_pictures(book: Book, step: Step) -> tuple[Picture, ...]:
    """How the zigzag of the first ring comes up once it is locked, where none before did."""
    course = _round(book, step)
    if course is None or course.down is not None or course.up is None:
        return ()
    before = [_round(book, other) for other in book.steps[: step.number - 1]]
    if any(other is not None and other.down is None for other in before):
        return ()
    turn = _turn(book, course.ring)
    return (stand_round(book.framework, book.voice, course.ring, course.up, turn),)


def _round(book: Book, step: Step) -> RoundCourse | None:
    coming = _coming(book, step)
    if not coming:
        return None
    earlier = book.steps[: step.number - 1]
    return round_course(coming, [one for other in earlier for one in _coming(book, other)])


def _coming(book: Book, step: Step) -> list[LongChain]:
    """The chains that come in with a step, to be joined course by course."""
    laid = step.of_kind(Kind.LAY)
    if not laid or book.framework.built_with(laid[0].joints[0]).braces:
        return []
    return [book.context.long_of(operation) for operation in step.of_kind(Kind.TAG)]


def _turn(book: Book, long: LongChain) -> int:
    """1 where numbers run anticlockwise or to the right, -1 where they run the other way."""
    return -1 if book.context.figures.ways.get(long.letter) in BACKWARD else 1


def _first_deg(book: Book, ring: LongChain) -> float:
    """Where joint 1 of a ring is, seen from above with the front at the foot; degrees."""
    at = np.array([book.shape.at[joint] for joint in ring.chain.joints])
    x, _, z = at[0] - at.mean(axis=0)
    return math.degrees(math.atan2(-z, x))
