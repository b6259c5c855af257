"""Minutes of work by kind of operation."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from buildplan.sequence.model import Kind, Operation, Step

# Minutes by a practised hand with an electric inflator, from memory; the design file's
# `labour` replaces any of them. Per balloon for size, per pair for pair, per knot for
# chain, and per operation for the rest.
MINUTES: Mapping[str, float] = {
    "size": 0.2,
    "pair": 0.2,
    "chain": 0.25,
    "close ring": 0.5,
    "lay": 5.0,
    "brace": 1.5,
    "single": 0.5,
    "lock": 0.3,
    "stand up": 5.0,
}


def _units(operation: Operation) -> int:
    """How many times over the operation's minutes count."""
    if operation.kind is Kind.SIZE:
        return len(operation.links) + 2 * len(operation.locks)
    if operation.kind is Kind.PAIR:
        return max(1, len(operation.links) // 2 + len(operation.locks))
    if operation.kind is Kind.CHAIN:
        return max(1, len(operation.links) // 2)
    return 1


def work_minutes(steps: Sequence[Step], overrides: Mapping[str, float]) -> float:
    """Minutes of work in all, one pair of hands; `overrides` by kind of operation."""
    minutes = {**MINUTES, **overrides}
    return sum(
        minutes.get(operation.kind.value, 1.0) * _units(operation)
        for step in steps
        for operation in step.operations
    )
