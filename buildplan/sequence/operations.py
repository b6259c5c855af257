"""Every act of work that a framework takes, with what it needs and what it makes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from buildplan.framework.model import Framework
from buildplan.sequence import work_names as names
from buildplan.sequence.assembly import assembling
from buildplan.sequence.courses import WorkOrder, order_of
from buildplan.sequence.model import Kind, Operation, Stage
from buildplan.sequence.preparation import chaining, closing, preparing, tagging

# Nobody turns a piece over or stands it up alone (common practice, no source).
FEWEST_LIFTERS = 2


def operations(
    framework: Framework, order: WorkOrder | None = None, lifters: int = FEWEST_LIFTERS
) -> tuple[Operation, ...]:
    """All operations of `framework`, in an order of no meaning (see `ordering.in_order`).

    `order` is what their needs leave open (None: as the graph alone gives it), `lifters` how
    many people turn the piece over or stand it up.
    """
    order = order or order_of(framework)
    made = [
        *preparing(framework),
        *chaining(framework),
        *closing(framework, order.course_of),
        *tagging(framework, order.course_of),
        *assembling(framework, order, lifters),
    ]
    return (*made, *_finishing(made, max(lifters, order.at_ties)))


def _finishing(made: Sequence[Operation], lifters: int) -> Iterator[Operation]:
    needed = {thing for operation in made for thing in operation.needs}
    loose = tuple(thing for op in made for thing in op.makes if thing not in needed)
    yield Operation(names.INSPECT, Kind.INSPECT, Stage.FINISH, loose, (names.INSPECTED,))
    yield Operation(
        id=names.STAND_UP,
        kind=Kind.STAND_UP,
        stage=Stage.FINISH,
        needs=(names.INSPECTED,),
        makes=(names.STANDING,),
        people=lifters,
    )
