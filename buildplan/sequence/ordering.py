"""The order of work: what needs what, and one order that respects it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

import networkx as nx

from buildplan.sequence.model import Kind, Operation

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


def phase(operation: Operation) -> int:
    """The place of an operation's kind in the course of the work: what is done course by course
    is all assembling."""
    return _ASSEMBLING if operation.course else _PHASE[operation.kind]


def natural(label: str) -> tuple[tuple[int, int, str], ...]:
    """A sort key under which A2 comes before A10, and chain Z before chain AA."""
    pieces = re.findall(r"\d+|[A-Z]+|[^\dA-Z]+", label)
    return tuple(
        (0, int(p), "") if p.isdecimal() else (1, len(p) if p.isupper() else 0, p) for p in pieces
    )


def needs_graph(ops: Iterable[Operation]) -> nx.DiGraph:
    """Operations by id, with an edge from each to those that need what it makes.

    Raises ValueError when a thing is made twice, or needed and never made.
    """
    graph = nx.DiGraph()
    maker: dict[str, str] = {}
    operations = tuple(ops)
    for operation in operations:
        if operation.id in graph:
            raise ValueError(f"operation {operation.id!r} is listed twice")
        graph.add_node(operation.id, operation=operation)
        for thing in operation.makes:
            if thing in maker:
                raise ValueError(f"{thing!r} is made by {maker[thing]!r} and {operation.id!r}")
            maker[thing] = operation.id
    for operation in operations:
        for thing in operation.needs:
            if thing not in maker:
                raise ValueError(f"{operation.id!r} needs {thing!r}, which nothing makes")
            graph.add_edge(maker[thing], operation.id)
    return graph


def in_order(ops: Iterable[Operation]) -> tuple[Operation, ...]:
    """The operations in a topological order of their needs.

    Among those that could be done next, the one of the earliest phase and the smallest
    label comes first, so the order does not depend on the order of `ops`. Raises ValueError
    when operations need one another in a circle.
    """
    graph = needs_graph(ops)
    by_id: Mapping[str, Operation] = dict(graph.nodes(data="operation"))

    def rank(name: str) -> tuple[int, int, int, tuple[tuple[int, int, str], ...]]:
        operation = by_id[name]
        return phase(operation), operation.course, _PHASE[operation.kind], natural(name)

    try:
        return tuple(by_id[name] for name in nx.lexicographical_topological_sort(graph, key=rank))
    except nx.NetworkXUnfeasible as circle:
        raise ValueError("some operations need one another in a circle") from circle
