"""Hand moves: which ones a step asks for, and which step teaches each."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum, auto

from buildplan.framework.cells import CellKind
from buildplan.framework.ends import End
from buildplan.framework.model import Chain, Framework, LongChain
from buildplan.sequence.laid import lies_alone, round_course
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
    LOCK_LYING = auto()
    LOCK_AT_BRACE = auto()
    SINGLE = auto()
    JOIN = auto()
    TIE_PARTS = auto()
    SINGLE_BETWEEN_PARTS = auto()
    JOIN_ENDS = auto()
    BRING_IN = auto()
    CLOSE_ROUND = auto()
    TAG_ENDS = auto()
    LIFT_CROWN = auto()
    SET_ROUND = auto()
    SET_ON = auto()
    LAY_NEXT = auto()


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


def first_taught(
    piece: PieceIndex, steps: Sequence[Step], flat: Collection[str] = ()
) -> Mapping[Move, int]:
    """The number of the step in which each move first comes up; `flat` are the parts that are built
    course on course lying on their backs (the whole piece is "")."""
    first: dict[Move, int] = {}
    long = {one.letter: one for one in piece.framework.chains}
    standing: dict[str, list[LongChain]] = {}
    for step in steps:
        coming = [long[operation.chain] for operation in step.of_kind(Kind.TAG)]
        laid = step.of_kind(Kind.LAY)
        courses: list[Move] = []
        if laid and coming:
            part = piece.framework.part_at(laid[0].joints[0])
            name = "" if part is None else part.name
            courses = [*_course(step, coming, standing.setdefault(name, []), name in flat)]
        course = round_course(coming, ()) if Hand.LIFT_CROWN in courses else None
        lying = course is not None and lies_alone(course, piece.framework)  # locked otherwise
        lock = Hand.LOCK_LYING if lying else Hand.LOCK
        lock = Hand.LOCK_AT_BRACE if step.kind is Kind.BRACE else lock
        for move in (*_moves(piece, step), *courses):
            first.setdefault(lock if move is Hand.LOCK else move, step.number)
    return first


def _course(
    step: Step, coming: Sequence[LongChain], standing: list[LongChain], flat: bool
) -> Iterator[Move]:
    """The bringing in of a course, on the floor or on what of its part stands; `standing` gathers
    that."""
    yield Hand.BRING_IN
    if step.of_kind(Kind.CLOSE_RING):
        yield Hand.CLOSE_ROUND
    if not all(long.chain.closed for long in coming):
        yield Hand.TAG_ENDS
    if standing:
        yield way_on(coming, standing, flat)
    elif (course := round_course(coming, ())) is not None and course.up is not None:
        yield Hand.LIFT_CROWN
    standing += coming


def way_on(coming: Sequence[LongChain], standing: Sequence[LongChain], flat: bool) -> Hand:
    """How a course comes on the one before it: laid next to it, set on the tips of its zigzag, or
    set on it otherwise."""
    if flat:
        return Hand.LAY_NEXT
    course = round_course(coming, standing)
    return Hand.SET_ROUND if course is not None and course.down is not None else Hand.SET_ON


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
                if len(operation.joints) == 1 and piece.passing[operation.joints[0]][1]:
                    yield Hand.JOIN_ENDS
            case Kind.BRACE:
                brace = piece.framework.brace[operation.brace]
                yield from (lead_of(piece.framework, chain) for chain in brace.chains)
                yield from (Corner(cell.kind) for cell in piece.cells_at(brace))
                if brace.shared:
                    yield Hand.SHARE
