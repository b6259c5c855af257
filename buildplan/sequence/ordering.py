"""The order of work: what needs what, and one order that respects it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from graphlib import CycleError, TopologicalSorter
from heapq import heappop, heappush

from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.work_names import Name

# Work of an earlier phase comes first wherever needs leave a choice. Braces, their settling,
# singles, joins and locks are one phase: there the needs alone rule.
_PHASES: tuple[tuple[Kind, ...], ...] = (
    (Kind.SIZE,),
    (Kind.PAIR,),
    (Kind.TIE_OFF,),
    (Kind.CHAIN,),
    (Kind.CLOSE_RING,),
    (Kind.TAG,),
    (Kind.LAY,),
    (Kind.BRACE, Kind.SETTLE, Kind.SINGLE, Kind.JOIN, Kind.TURN_OVER, Kind.LOCK),
    (Kind.INSPECT,),
    (Kind.STAND_UP,),
)
_PHASE: Mapping[Kind, int] = {kind: i for i, kinds in enumerate(_PHASES) for kind in kinds}


_ASSEMBLING = _PHASE[Kind.BRACE]


_Natural = tuple[tuple[int, int, str], ...]
_Rank = tuple[int, int, int, _Natural]


def phase(operation: Operation) -> int:
    """The place of an operation's kind in the course of the work: what is done course by course
    is all assembling."""
    return _ASSEMBLING if operation.course else _PHASE[operation.kind]


def natural(label: str) -> _Natural:
    """A sort key under which A2 comes before A10, and chain Z before chain AA."""
    pieces = re.findall(r"\d+|[A-Z]+|[^\dA-Z]+", label)
    return tuple(
        (0, int(p), "") if p.isdecimal() else (1, len(p) if p.isupper() else 0, p) for p in pieces
    )


def done_before(ops: Iterable[Operation]) -> dict[Name, list[Name]]:
    """For each operation, by id, those that make what it needs.

    Raises ValueError when a thing is made twice, or needed and never made.
    """
    before: dict[Name, list[Name]] = {}
    maker: dict[Name, Name] = {}
    operations = tuple(ops)
    for operation in operations:
        if operation.id in before:
            raise ValueError(f"operation {operation.id!r} is listed twice")
        before[operation.id] = []
        for thing in operation.makes:
            if thing in maker:
                raise ValueError(f"{thing!r} is made by {maker[thing]!r} and {operation.id!r}")
            maker[thing] = operation.id
    for operation in operations:
        for thing in operation.needs:
            if thing not in maker:
                raise ValueError(f"{operation.id!r} needs {thing!r}, which nothing makes")
            before[operation.id].append(maker[thing])
    return before


def in_order(ops: Iterable[Operation]) -> tuple[Operation, ...]:
    """The operations in a topological order of their needs.

    Among those that could be done next, the one of the earliest phase and the smallest
    label comes first, so the order does not depend on the order of `ops`. Raises ValueError
    when operations need one another in a circle.
    """
    operations = tuple(ops)
    waiting = TopologicalSorter(done_before(operations))
    try:
        waiting.prepare()
    except CycleError as circle:
        raise ValueError("some operations need one another in a circle") from circle
    by_id = {operation.id: operation for operation in operations}
    ready: list[tuple[_Rank, Name]] = []
    found: list[Operation] = []
    while waiting.is_active():
        for name in waiting.get_ready():
            heappush(ready, (_rank(by_id[name]), name))
        _, name = heappop(ready)
        found.append(by_id[name])
        waiting.done(name)
    return tuple(found)


def _rank(operation: Operation) -> _Rank:
    kind = _PHASE[operation.kind]
    return phase(operation), operation.course, kind, natural(operation.id)
