"""Pictures of chains that come in with a course, where they lie, the first time that each way of
laying them comes up."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from buildplan.booklet.common.book import Book
from buildplan.drawing.marks import Picture
from buildplan.drawing.techniques.folded_layers import Layers, folded_layers
from buildplan.drawing.techniques.held_joints import hold_joint
from buildplan.drawing.techniques.rounds import lay_rows, set_round, stand_round
from buildplan.drawing.techniques.tagged_rings import has_room, ring_with_tags
from buildplan.framework.chain_roles import UPRIGHT
from buildplan.framework.model import LongChain
from buildplan.instructions.coming import is_first, is_flat
from buildplan.sequence.directions import Direction
from buildplan.sequence.laid import RoundCourse, lies_alone, round_course, rows_of
from buildplan.sequence.model import Kind, Step
from buildplan.shape.lying import laid_in_figure

LONG = 2.5  # times as long as deep: a low wall or a beam. Ours.
BACKWARD = frozenset({Direction.CLOCKWISE, Direction.LEFT})


def laid_pictures(book: Book, step: Step) -> tuple[Picture, ...]:
    """Where the chains of a step lie: a row with its uprights; a ring with its zigzag, or set on
    the one below, where none before was laid so. None of other chains."""
    if is_planned(book, step):
        return ()  # the plan of the course has them where they lie
    coming = _coming(book, step)
    rows = rows_of(coming)
    if rows and (step.kind is Kind.LAY or any(one.role == UPRIGHT for one in coming)):
        turn = _turn(book, rows[0])
        layers = _layers(book, step, coming)
        folded = (folded_layers(book.framework, book.voice, layers),) if layers else ()
        return (lay_rows(book.framework, book.voice, rows, coming, turn), *folded)
    course = _round(book, step)
    if course is None:
        return ()
    before = [_round(book, other) for other in book.steps[: step.number - 1]]
    known = {other.down is None for other in before if other is not None}
    if (course.down is None) in known:
        return ()
    turn = _turn(book, course.ring)
    if course.down is None:
        return ()
    return (set_round(book.framework, book.voice, course, turn),)


def _layers(book: Book, step: Step, coming: Sequence[LongChain]) -> Layers | None:
    """The first chain up that a step lays in front of one that lies there, of a piece that is built
    lying, with the balloon between their first joints; None of another step."""
    if is_first(book.context, step) or not is_flat(book.context, step):
        return None
    link = book.framework.link
    lying = [one for other in book.steps[: step.number - 1] for one in _coming(book, other)]
    for front in (one for one in coming if one.role == UPRIGHT):
        first = front.chain.joints[0]
        for id_ in book.framework.links_at[first]:
            other = link[id_].finish if link[id_].start == first else link[id_].start
            up = (one for one in lying if one.role == UPRIGHT)
            back = next((one for one in up if one.chain.joints[0] == other), None)
            if back is not None and min(len(back.chain.links), len(front.chain.links)) > 1:
                return Layers(back, front, id_)
    return None


def is_planned(book: Book, step: Step) -> bool:
    """Whether a step joins a course that has a plan: of a piece or part that is built standing and
    goes round, unlike a low wall. Of rings with zigzags alone it is the first, which lies flat; the
    others lie over one another as seen from above."""
    joins = step.of_kind(Kind.JOIN) if step.kind is Kind.JOIN else ()
    if not joins or not joins[0].course or len(joins[0].joints) > 1:
        return False
    part_at = book.framework.part_at
    part = part_at(joins[0].joints[0])
    if (part.name if part else "") in book.figures.flat:
        return False
    if _is_long(book, joins[0].joints[0]):
        return False
    if first_ring(book, step) is not None:
        return True
    own = [
        one
        for one in book.steps
        if _coming(book, one) and part_at(one.of_kind(Kind.LAY)[0].joints[0]) is part
    ]
    return any(_round(book, one) is None for one in own)


def first_ring(book: Book, step: Step) -> RoundCourse | None:
    """The ring that a step lays flat on the floor with its zigzag round it and nothing else, first
    of its piece or part; None of another step."""
    course = _round(book, step)
    if course is None or not is_first(book.context, step):
        return None
    return course if lies_alone(course, book.framework) else None


def _is_long(book: Book, joint: str) -> bool:
    """Whether what a joint is of is much longer than deep, as a low wall or a beam is."""
    joints = book.framework.built_with(joint).joints
    plan = np.ptp(np.array([book.shape.at[one][[0, 2]] for one in joints]), axis=0)
    return float(plan.max()) > LONG * float(plan.min())


def tagged_pictures(book: Book, step: Step) -> tuple[Picture, ...]:
    """How the first chains of a step are closed and tagged, if all of them are closed: the zigzag
    with its tags, else the ring; none of one whose knots have no room for their names."""
    coming, course = _coming(book, step), _round(book, step)
    if not all_closed(book, step):
        return ()
    ring = coming[0] if course is None else course.ring
    up = None if course is None else course.up
    tagged = up if up is not None and has_room(up) else ring
    if not has_room(tagged):
        return ()
    return (ring_with_tags(book.framework, book.voice, ring, tagged, _turn(book, ring)),)


def all_closed(book: Book, step: Step) -> bool:
    """Whether chains come in with a step, and all of them are closed into rings."""
    coming = _coming(book, step)
    return bool(coming) and all(one.chain.closed for one in coming)


def stood_pictures(book: Book, step: Step) -> tuple[Picture, ...]:
    """What stands: how the zigzag of the first ring comes up once it is locked, and who holds what
    where chains are set on what stands; each where none before was."""
    before = book.steps[: step.number - 1]
    ring = _rising(book, step)
    if ring is not None and ring.up is not None:
        if any(_rising(book, other) is not None for other in before):
            return ()
        turn = _turn(book, ring.ring)
        return (stand_round(book.framework, book.voice, ring.ring, ring.up, turn),)
    if not _sets_on(book, step) or any(_sets_on(book, other) for other in before):
        return ()
    return _held(book, step)


def _rising(book: Book, step: Step) -> RoundCourse | None:
    """The first ring of a piece or part with the zigzag that comes up from it; None of another."""
    course = _round(book, step)
    if course is None or course.up is None:
        return None
    return course if is_first(book.context, step) else None


def _sets_on(book: Book, step: Step) -> bool:
    """Whether a step sets chains on what stands, not beside what lies on its back."""
    return (
        step.kind is Kind.JOIN
        and bool(_coming(book, step))
        and not is_first(book.context, step)
        and not is_flat(book.context, step)
    )


def _held(book: Book, step: Step) -> tuple[Picture, ...]:
    """Who holds what at the first joint that a step locks."""
    locked = next(
        (op.joints[0] for op in step.of_kind(Kind.JOIN) if op.joints[0] in step.locks), ""
    )
    course = _round(book, step)
    chains = sorted(_coming(book, step), key=lambda one: course is None or one is not course.ring)
    new = [id_ for one in chains for id_ in one.chain.links]
    met = book.context.met_at(locked) if locked else ()
    coming = sorted(set(met) & set(new), key=new.index)
    standing = [id_ for id_ in met if id_ not in coming]
    if not coming:
        return ()
    return (hold_joint(book.framework, book.voice, locked, standing, coming),)


def _round(book: Book, step: Step) -> RoundCourse | None:
    coming = _coming(book, step)
    if not coming:
        return None
    earlier = book.steps[: step.number - 1]
    return round_course(coming, [one for other in earlier for one in _coming(book, other)])


def _coming(book: Book, step: Step) -> list[LongChain]:
    """The chains that come in with a step, to be joined course by course."""
    laid = step.of_kind(Kind.LAY)
    if not laid or laid_in_figure(book.framework.built_with(laid[0].joints[0])):
        return []
    return [book.context.long_of(operation) for operation in step.of_kind(Kind.TAG)]


def _turn(book: Book, long: LongChain) -> int:
    """1 where numbers run anticlockwise or to the right, -1 where they run the other way."""
    return -1 if book.context.figures.ways.get(long.letter) in BACKWARD else 1
