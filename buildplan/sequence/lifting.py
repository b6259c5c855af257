"""When what lies as it was built may first be stood up: once all of it is tied and locked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from buildplan.framework.model import Framework
from buildplan.sequence.courses import built_pieces
from buildplan.sequence.model import Kind, Operation, Step


@dataclass(frozen=True)
class FirstLift:
    """A part, "" for a whole piece, and the numbers of the steps that set the first of its own
    locks, and its last lock or balloon: what ties it to other parts comes on when these stand."""

    part: str
    first_lock: int
    last: int


def first_lifts(framework: Framework, steps: Sequence[Step]) -> Iterator[FirstLift]:
    """When each part, or the whole piece, may first be lifted; nothing of what has no locks."""
    for part, own in built_pieces(framework):
        building = [step for step in steps if any(_adds_to(own, op) for op in step.operations)]
        locking = [step for step in building if step.of_kind(Kind.LOCK)]
        if locking:
            yield FirstLift(part, locking[0].number, building[-1].number)


def _adds_to(own: Framework, operation: Operation) -> bool:
    """Whether work brings a lock or a balloon into a part."""
    if operation.kind is Kind.LOCK:
        return any(joint in own.lock_at for joint in operation.locks)
    return operation.adds and any(link in own.link for link in operation.links)
