"""Minutes of work by kind of operation."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import fsum

from buildplan.sequence.model import Kind, Operation, Step

# Minutes by a practised hand with an electric inflator, from memory; the design file's
# `labour`, or a log of own times, replaces any of them.
MINUTES: Mapping[Kind, float] = {
    Kind.SIZE: 0.2,
    Kind.PAIR: 0.2,
    Kind.TIE_OFF: 0.1,
    Kind.CHAIN: 0.25,
    Kind.CLOSE_RING: 0.5,
    Kind.TAG: 0.2,
    Kind.LAY: 5.0,
    Kind.BRACE: 1.2,
    Kind.SETTLE: 0.3,
    Kind.SINGLE: 0.5,
    Kind.JOIN: 0.8,
    Kind.TURN_OVER: 2.0,
    Kind.LOCK: 0.3,
    Kind.INSPECT: 5.0,
    Kind.STAND_UP: 5.0,
}

# What the minutes of each kind are counted by.
PER: Mapping[Kind, str] = {
    Kind.SIZE: "balloon",
    Kind.PAIR: "pair",
    Kind.TIE_OFF: "balloon",
    Kind.CHAIN: "knot",
    Kind.CLOSE_RING: "ring",
    Kind.TAG: "tag",
    Kind.LAY: "piece",
    Kind.BRACE: "brace",
    Kind.SETTLE: "brace",
    Kind.SINGLE: "single",
    Kind.JOIN: "joint",
    Kind.TURN_OVER: "piece",
    Kind.LOCK: "lock",
    Kind.INSPECT: "piece",
    Kind.STAND_UP: "piece",
}


@dataclass(frozen=True)
class Learned:
    """Minutes per unit of a kind of work, from so many units in so many rows of a log."""

    minutes: float
    count: int
    rows: int


def units(operation: Operation) -> int:
    """How many balloons, knots, tags, ... the minutes of an operation are counted for."""
    if operation.kind is Kind.SIZE:
        return len(operation.links) + 2 * len(operation.locks)
    if operation.kind is Kind.CHAIN:
        return len(operation.knots)
    if operation.kind is Kind.TAG:
        return len(operation.joints)
    return 1


def operation_minutes(operation: Operation, overrides: Mapping[str, float]) -> float:
    """Minutes that one operation takes one pair of hands; `overrides` by kind, per unit."""
    kind = operation.kind
    return overrides.get(str(kind), MINUTES[kind]) * units(operation)


def work_minutes(steps: Sequence[Step], overrides: Mapping[str, float]) -> float:
    """Minutes of work in all, one pair of hands; `overrides` by kind of operation."""
    return fsum(
        operation_minutes(operation, overrides) for step in steps for operation in step.operations
    )
