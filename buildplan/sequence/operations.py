"""Every act of work that a framework takes, with what it needs and what it makes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from buildplan.framework.model import Framework
from buildplan.sequence.assembly import assembling
from buildplan.sequence.model import Kind, Operation, Stage
from buildplan.sequence.preparation import chaining, closing, laying, preparing, tagging


def operations(framework: Framework) -> tuple[Operation, ...]:
    """All operations of `framework`, in an order of no meaning (see `ordering.in_order`)."""
    made = [
        *preparing(framework),
        *chaining(framework),
        *closing(framework),
        *tagging(framework),
        laying(framework),
        *assembling(framework),
    ]
    return (*made, *_finishing(made))


def _finishing(made: Sequence[Operation]) -> Iterator[Operation]:
    needed = {thing for operation in made for thing in operation.needs}
    loose = tuple(thing for op in made for thing in op.makes if thing not in needed)
    yield Operation("inspect", Kind.INSPECT, Stage.FINISH, loose, ("inspected",))
    yield Operation("stand up", Kind.STAND_UP, Stage.FINISH, ("inspected",), ("standing",))
