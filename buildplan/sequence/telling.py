"""What each step says, by its kind."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from buildplan.sequence import tell_assembling as assembling
from buildplan.sequence import tell_preparing as preparing
from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.plan import Plan
from buildplan.sequence.words.grammar import Wording

_Tell = Callable[[Plan, int], Wording]
_Row = Callable[[Plan, int, Sequence[Operation]], tuple[str, str]]

_TOLD: Mapping[Kind, tuple[_Tell, _Row]] = {
    Kind.PAIR: (preparing.pair, preparing.pair_row),
    Kind.TIE_OFF: (preparing.tie_off, preparing.tie_off_row),
    Kind.CHAIN: (preparing.chain, preparing.chain_row),
    Kind.CLOSE_RING: (preparing.close, preparing.close_row),
    Kind.TAG: (preparing.tag, preparing.tag_row),
    Kind.LAY: (preparing.lay, preparing.lay_row),
    Kind.BRACE: (assembling.brace, assembling.brace_row),
    Kind.SINGLE: (assembling.single, assembling.single_row),
    Kind.JOIN: (assembling.join, assembling.join_row),
    Kind.TURN_OVER: (assembling.turn_over, assembling.turned_row),
    Kind.INSPECT: (assembling.inspect, assembling.plain_row),
    Kind.STAND_UP: (assembling.stand_up, assembling.plain_row),
}


def wording(plan: Plan, number: int) -> Wording:
    """What step `number` says."""
    tell, _ = _told(plan, number)
    return tell(plan, number)


def row(plan: Plan, number: int, turn: Sequence[Operation]) -> tuple[str, str]:
    """Name and row of words of one turn of step `number`."""
    _, tell_row = _told(plan, number)
    return tell_row(plan, number, turn)


def _told(plan: Plan, number: int) -> tuple[_Tell, _Row]:
    group = plan.group(number)
    if group.kind is Kind.LAY and group.operations[0].course:
        return assembling.lay_course, assembling.coming_row
    return _TOLD[group.kind]
