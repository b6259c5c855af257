"""The hand moves at a joint that a step shows beside how its knots come together: a free end tied
in, also beside a lock that is there, and the lock of a joint of many balloons."""

from __future__ import annotations

from collections.abc import Mapping, Set

from buildplan.booklet.common.book import Book
from buildplan.booklet.common.laid_courses import first_ring
from buildplan.drawing.camera import CAMERAS, Camera
from buildplan.drawing.marks import Picture
from buildplan.drawing.seat import FROM_ABOVE
from buildplan.drawing.techniques import balloons_brought
from buildplan.drawing.techniques.beside_locks import reach_under, tie_beside_lock
from buildplan.drawing.techniques.braces import tie_end
from buildplan.drawing.techniques.large_locks import (
    lock_from_outside,
    lock_of_joint,
    locks_of_joints,
)
from buildplan.drawing.techniques.lying_locks import lock_lying
from buildplan.framework.extras import before_singles
from buildplan.instructions.folding import is_closed_last, is_narrow
from buildplan.instructions.setting_up import is_tying
from buildplan.instructions.singles import is_first_beside_locks, is_first_lifted
from buildplan.sequence.model import Kind, Step
from buildplan.shape.lying import lies_built

MANY_MET = 5  # balloons from which on the gaps for a lock are shown as they are
LEAST_MET = 3  # balloons that meet where one free end is tied into one knot


def with_ends(
    book: Book, step: Step, drawn: Mapping[Kind, tuple[Picture, ...]], taught: Set[Kind]
) -> Mapping[Kind, tuple[Picture, ...]]:
    """The same with how a free end is tied into a joint, where one is for the first time: instead
    of a joint of one knot and one end, for it shows that too. Where `taught` has singles it was
    shown on a practice piece."""
    ending = [one for one in book.steps if one.kind is Kind.JOIN and has_ends(book, one)]
    if Kind.JOIN not in drawn or ending[:1] != [step] or Kind.SINGLE in taught:
        return drawn
    plain = most_met(book, step) == LEAST_MET
    tied = tie_end(book.framework, book.voice)
    return {**drawn, Kind.JOIN: (tied,) if plain else (*drawn[Kind.JOIN], tied)}


def has_ends(book: Book, step: Step) -> bool:
    """Whether free ends are tied in at joints of a step that joins chains."""
    passing = book.context.piece.passing
    return not is_tying(step) and any(passing[op.joints[0]][1] for op in step.of_kind(Kind.JOIN))


def with_beside_locks(
    book: Book, step: Step, drawn: Mapping[Kind, tuple[Picture, ...]]
) -> Mapping[Kind, tuple[Picture, ...]]:
    """The same with how a balloon is tied in at joints that have their locks, and how parts that
    lie are lifted where those at their backs are tied, where either is for the first time."""
    found = dict(drawn)
    if is_first_beside_locks(book.context, step):
        beside = tie_beside_lock(book.framework, book.voice)
        across = found.get(Kind.SINGLE, ())[1:]  # not how an end is tied elsewhere
        found[Kind.SINGLE] = (*across, beside)
    if is_first_lifted(book.context, step):
        found[Kind.LAY] = (reach_under(book.framework, book.voice),)
    return found


def with_lock(
    book: Book, step: Step, drawn: Mapping[Kind, tuple[Picture, ...]], taught: Set[Kind]
) -> Mapping[Kind, tuple[Picture, ...]]:
    """The same with the lock of the joint, where more balloons meet than at those before it, as it
    is there, and of one where an odd number meet, so that no gap is opposite another; where a lock
    is taught in the same step that shows it. The lock of a ring that lies
    flat is shown with the first such ring, unless one was closed on a practice piece."""
    ring = first_ring(book, step) if Kind.CLOSE_RING in drawn and step.locks else None
    if ring is not None and Kind.CLOSE_RING not in taught:
        own = before_singles(book.framework.built_with(ring.ring.chain.joints[0]))
        lying = lock_lying(own, book.voice, ring, book.shape)
        return {**drawn, Kind.LOCK: (lying,)}
    met = most_met(book, step) if step.kind is Kind.JOIN else 0
    if Kind.JOIN not in drawn or Kind.LOCK in drawn or met < MANY_MET:
        return drawn
    joints = [op.joints[0] for op in step.of_kind(Kind.JOIN) if op.joints[0] in step.locks]
    brought = {joint: balloons_brought(book.framework, joint) for joint in joints}
    largest = next((j for j in joints if brought[j] == met), None)
    if largest is None:
        return drawn
    own = before_singles(book.framework.built_with(largest))
    plan = _plan_of(book, largest)
    odd = next((j for j in joints if MANY_MET <= brought[j] < met and brought[j] % 2), None)
    if odd is not None and not is_narrow(book.context, step):
        lock = locks_of_joints(own, book.voice, (largest, odd), book.shape, plan)
    else:
        drawing = lock_from_outside if is_narrow(book.context, step) else lock_of_joint
        lock = drawing(own, book.voice, largest, book.shape, plan)
    if Kind.STAND_UP in drawn:  # what meets there is shown by those who hold it
        drawn = {kind: some for kind, some in drawn.items() if kind is not Kind.JOIN}
    return {**drawn, Kind.LOCK: (lock,)}


def _plan_of(book: Book, joint: str) -> Camera:
    """Where the plan of a course that a joint is of is seen from."""
    own = book.framework.built_with(joint)
    return FROM_ABOVE if lies_built(own, book.shape) else CAMERAS["top"]


def closed_from_outside(book: Book, step: Step) -> tuple[Picture, ...]:
    """How the last joint of what closes is locked from outside, in the step that tells it."""
    if not step.locks or not step.of_kind(Kind.JOIN) or not is_closed_last(book.context, step):
        return ()
    joint = step.locks[-1]
    own = before_singles(book.framework.built_with(joint))
    return (lock_from_outside(own, book.voice, joint, book.shape, _plan_of(book, joint)),)


def most_met(book: Book, step: Step) -> int:
    """Most balloons that meet at a joint of a step that joins chains."""
    return max(balloons_brought(book.framework, op.joints[0]) for op in step.of_kind(Kind.JOIN))
