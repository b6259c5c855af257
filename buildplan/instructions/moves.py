"""Hand moves: which ones a step asks for, and which step teaches each."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum, auto

from buildplan.framework.cells import CellKind
from buildplan.framework.ends import End
from buildplan.framework.model import Chain, Framework
from buildplan.sequence.model import Kind, Operation, Step
from buildplan.sequence.piece import PieceIndex


class Hand(Enum):
    """A move of the hands that is the same wherever it is done."""

    SIZE = auto()
    TIE_PAIR = auto()
    MAKE_LOCK = auto()
    TIE_OFF = auto()
    SETTLE = auto()
    SHARE = auto()
    LOCK = auto()
    SINGLE = auto()
    JOIN = auto()
    TIE_PARTS = auto()
    SINGLE_BETWEEN_PARTS = auto()
    BRING_IN = auto()
    SET_ON = auto()


@dataclass(frozen=True)
class Lead:
    """How a short chain is led: right round or from joint to joint, and with which ends of its
    own it is tied in first and last."""

    closed: bool
    over: bool
    first: End
    last: End


@dataclass(frozen=True)
class Corner:
    """What a kind of cell that is not straight asks for."""

    cell: CellKind


Move = Hand | Lead | Corner

_ALWAYS: Mapping[Kind, Sequence[Hand]] = {
    Kind.SIZE: (Hand.SIZE,),
    Kind.TIE_OFF: (Hand.TIE_OFF,),
    Kind.SETTLE: (Hand.SETTLE,),
    Kind.LOCK: (Hand.LOCK,),
}


def lead_of(framework: Framework, chain: Chain) -> Lead:
    """How a short chain is led."""
    link = framework.link
    first = link[chain.links[0]].end_at(chain.joints[0])
    last = link[chain.links[-1]].end_at(chain.joints[0 if chain.closed else -1])
    return Lead(chain.closed, len(chain.joints) > 2, first, last)


def between_parts(piece: PieceIndex, single: Operation) -> bool:
    """Whether a single goes from one part to another."""
    one, other = (piece.framework.part_at(joint) for joint in single.joints)
    return one is not other


def first_taught(piece: PieceIndex, steps: Sequence[Step]) -> Mapping[Move, int]:
    """The number of the step in which each move first comes up."""
    first: dict[Move, int] = {}
    laid: set[str] = set()
    for step in steps:
        for move in (*_moves(piece, step), *_set_on(piece, step, laid)):
            first.setdefault(move, step.number)
    return first


def _set_on(piece: PieceIndex, step: Step, laid: set[str]) -> Iterator[Move]:
    """The bringing in of a course, on the floor or on what stands; `laid` gathers what parts have
    been begun."""
    for operation in step.of_kind(Kind.LAY) if step.of_kind(Kind.TAG) else ():
        part = piece.framework.part_at(operation.joints[0])
        name = "" if part is None else part.name
        yield Hand.BRING_IN
        if name in laid:
            yield Hand.SET_ON
        laid.add(name)


def _moves(piece: PieceIndex, step: Step) -> Iterator[Move]:
    for operation in step.operations:
        yield from _ALWAYS.get(operation.kind, ())
        match operation.kind:
            case Kind.PAIR:
                yield Hand.TIE_PAIR
                if operation.locks:
                    yield Hand.MAKE_LOCK
            case Kind.SINGLE:
                yield Hand.SINGLE_BETWEEN_PARTS if between_parts(piece, operation) else Hand.SINGLE
            case Kind.JOIN:
                yield Hand.JOIN if len(operation.joints) == 1 else Hand.TIE_PARTS
            case Kind.BRACE:
                brace = piece.framework.brace[operation.brace]
                yield from (lead_of(piece.framework, chain) for chain in brace.chains)
                yield from (Corner(cell.kind) for cell in piece.cells_at(brace))
                if brace.shared:
                    yield Hand.SHARE
