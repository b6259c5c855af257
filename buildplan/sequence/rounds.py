"""Work on the piece round by round: a head (a brace, a single, a join) with what belongs to it, and
whether two rounds ask for the same moves."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Sequence
from dataclasses import dataclass

from buildplan.framework.cells import STRAIGHT, CellKind
from buildplan.framework.model import Cell
from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.piece import PieceIndex

HEADS = (Kind.BRACE, Kind.SINGLE, Kind.JOIN, Kind.TURN_OVER)


@dataclass(frozen=True)
class Round:
    """A head with what belongs to it: the settling of a brace, its singles, its locks; or a chain
    that comes in for a course: its closing, its tags and, of the last one, the laying of all."""

    turn: tuple[Operation, ...]

    @property
    def head(self) -> Operation:
        return self.turn[0]

    @property
    def comes_in(self) -> bool:
        """Whether it brings a chain in, and ties nothing to anything."""
        return self.head.kind in (Kind.CLOSE_RING, Kind.TAG)

    def joints(self, kind: Kind) -> tuple[str, ...]:
        """The joints of its operations of one kind."""
        return tuple(j for op in self.turn[1:] if op.kind is kind for j in op.joints)


def rounds_of(piece: PieceIndex, ordered: Sequence[Operation]) -> list[Round]:
    """Operations on the piece, in order, as rounds."""
    rounds: list[list[Operation]] = []
    chains: dict[str, list[Operation]] = {}  # that come in with a course, by letter
    for operation in ordered:
        if operation.kind in (Kind.CLOSE_RING, Kind.TAG):
            chains.setdefault(operation.chain, []).append(operation)
            continue
        if chains and operation.kind is Kind.LAY:
            rounds += chains.values()
            rounds[-1].append(operation)
            chains = {}
            continue
        heads = operation.kind in HEADS or operation.kind is Kind.LAY
        if heads and not (rounds and _at_corner(piece, rounds[-1][0], operation)):
            rounds.append([operation])
        else:
            rounds[-1].append(operation)
    return [Round(tuple(turn)) for turn in rounds]


def spur_of(piece: PieceIndex, head: Operation) -> Cell | None:
    """The spur that a single is of, if it is of one."""
    cell = piece.cell_of_single.get(head.links[0]) if head.kind is Kind.SINGLE else None
    return cell if cell is not None and cell.kind.is_spur else None


def _at_corner(piece: PieceIndex, head: Operation, single: Operation) -> bool:
    """Whether a single belongs to the brace before it: it is of the same part, and not between
    two parts; or to the spur that the single before it is of."""
    spur = spur_of(piece, single)
    if spur is not None:
        return spur is spur_of(piece, head)
    if (head.kind, single.kind) != (Kind.BRACE, Kind.SINGLE):
        return False
    link = single.links[0]
    if link in piece.framework.extras and link not in piece.cell_of_single:
        return False
    joints = (head.joints[0], *single.joints)
    return len({piece.framework.built_with(joint).joints for joint in joints}) == 1


def same_move(piece: PieceIndex, before: Round, after: Round) -> bool:
    """Whether a head can be told with the one before it: the same move, both with locks or
    both without, and no cell but straight ones between them."""
    if after.comes_in or before.comes_in or before.head.course != after.head.course:
        return before.comes_in and before.head.course == after.head.course
    if spur_of(piece, before.head) or spur_of(piece, after.head):
        return False
    cells = {*cells_of(piece, before.head), *cells_of(piece, after.head)}
    if before.head.kind is Kind.BRACE and not cells <= {STRAIGHT}:
        return False
    if bool(before.joints(Kind.LOCK)) != bool(after.joints(Kind.LOCK)):
        return False
    singles = [letters_at(piece, round_.joints(Kind.SINGLE)) for round_ in (before, after)]
    return singles[0] == singles[1] and move_of(piece, before.head) == move_of(piece, after.head)


def most_parts(run: Sequence[Round]) -> int:
    """The most links or locks that one round of `run` has to do with."""
    return max(max(_parts(round_), len(round_.joints(Kind.LOCK)), 1) for round_ in run)


def _parts(round_: Round) -> int:
    # where chains meet a joint is one, with the balloons that are tied in there
    return sum(len(operation.links) for operation in round_.turn)


def letters_at(piece: PieceIndex, joints: Iterable[str]) -> tuple[str, ...]:
    """The letter of the chain at each joint."""
    return tuple(piece.letter[joint] for joint in joints)


def move_of(piece: PieceIndex, head: Operation) -> Hashable:
    """What hands do in a head, apart from the numbers of its joints."""
    if head.kind is Kind.LAY:
        return head.id
    if head.kind in (Kind.JOIN, Kind.TURN_OVER):
        parts = [piece.framework.part_at(joint) for joint in head.joints]
        return head.kind, tuple(part and part.name for part in parts if len(parts) > 1)
    letters = letters_at(piece, head.joints)
    if head.kind is Kind.SINGLE:
        parts = [piece.framework.part_at(joint) for joint in head.joints]
        if parts[0] is not parts[1]:  # between two parts: told with all that are
            letters = tuple(part.name for part in parts if part is not None)
        return head.kind, letters, piece.keys(head.links)
    brace = piece.framework.brace[head.brace]
    chains = tuple((letters_at(piece, chain.joints), chain.closed) for chain in brace.chains)
    links = piece.framework.link
    shared = tuple(
        (*letters_at(piece, (links[link].start, links[link].finish)),) for link in brace.shared
    )
    return head.kind, chains, shared


def cells_of(piece: PieceIndex, head: Operation) -> tuple[CellKind, ...]:
    """The kinds of cell that a head finishes."""
    if head.kind is Kind.BRACE:
        found = [cell.kind for cell in piece.cells_at(piece.framework.brace[head.brace])]
        return tuple(dict.fromkeys(found)) or ((STRAIGHT,) if piece.framework.cells else ())
    if head.kind is Kind.SINGLE:
        cell = piece.cell_of_skipped.get(head.joints[0])
        return () if cell is None else (cell.kind,)
    return ()


def where_locked(piece: PieceIndex, round_: Round) -> Hashable:
    """On which chains locks sit; where chains meet, only how many they are."""
    locked = round_.joints(Kind.LOCK)
    if round_.head.kind is Kind.JOIN:
        return len(locked)
    return letters_at(piece, locked)
