"""Operations gathered into what is told as one step.

Equal work is one group with a count. What is done turn by turn is one group: a brace with its
singles and its locks, a joint with its lock, two balloons sized and tied to each other.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from buildplan.framework.cells import CellKind
from buildplan.sequence.colour_order import is_long
from buildplan.sequence.model import Kind, Operation, Stage
from buildplan.sequence.ordering import phase
from buildplan.sequence.piece import PieceIndex
from buildplan.sequence.rounds import (
    HEADS,
    Round,
    cells_of,
    letters_at,
    most_parts,
    move_of,
    rounds_of,
    same_move,
    where_locked,
)
from buildplan.sequence.work_names import Name

ASSEMBLING = (*HEADS, Kind.SETTLE, Kind.LOCK)
TYING = (Kind.PAIR, Kind.TIE_OFF)
# More chains than this are laid in a step of their own before anything is joined to them. Ours.
MOST_COMING = 4


@dataclass(frozen=True)
class Group:
    """Operations told in one step; `shape` is equal where the same moves are asked for."""

    stage: Stage
    kind: Kind
    turns: tuple[tuple[Operation, ...], ...]
    times: int
    shape: Hashable
    cells: tuple[CellKind, ...] = ()

    @property
    def operations(self) -> tuple[Operation, ...]:
        """Every operation of every turn, in order."""
        return tuple(operation for turn in self.turns for operation in turn)

    @property
    def heads(self) -> tuple[Operation, ...]:
        """The operation that each turn is named by: its brace, single or join, say. A turn that
        only brings a chain in for the joins has none."""
        named = (next((op for op in turn if op.kind is self.kind), None) for turn in self.turns)
        return tuple(operation for operation in named if operation is not None)

    @property
    def locks(self) -> tuple[str, ...]:
        """Joints that it locks."""
        return tuple(joint for operation in self.operations for joint in operation.locks)

    def of_kind(self, kind: Kind) -> tuple[Operation, ...]:
        """The operations of one kind, in order."""
        return tuple(operation for operation in self.operations if operation.kind is kind)


def groups(piece: PieceIndex, ordered: Sequence[Operation], new_parts_limit: int) -> list[Group]:
    """Groups in the order of `ordered`, no brace group with more than `new_parts_limit` new
    links or locks (a single brace may exceed it)."""
    on_the_piece = [op.kind in ASSEMBLING or op.course > 0 for op in ordered]
    first = on_the_piece.index(True) if any(on_the_piece) else len(ordered)
    # the parts of an assembly after the first are laid in the course of assembling
    building = [
        op for i, op in enumerate(ordered) if on_the_piece[i] or (op.kind is Kind.LAY and i > first)
    ]
    held = {op.id for op in building}
    ahead = [op for op in ordered if op.id not in held]
    place = {long.letter: number for number, long in enumerate(piece.framework.chains)}
    preparing = sorted(
        (op for op in ahead if op.stage is not Stage.FINISH),
        key=lambda op: (phase(op), _purpose(piece, op), place.get(op.chain, -1)),
    )
    finishing = [op for op in ahead if op.stage is Stage.FINISH]
    return [
        *_gathered(piece, preparing),
        *_assembly(piece, building, new_parts_limit),
        *_gathered(piece, finishing),
    ]


def _purpose(piece: PieceIndex, operation: Operation) -> int:
    """What work is for, in the order of need: long chains, braces and singles, locks."""
    if operation.locks:
        return 2
    return 0 if piece.long_links.issuperset(operation.links) else 1


def _gathered(piece: PieceIndex, ordered: Sequence[Operation]) -> list[Group]:
    sizing = {op.makes[0]: op for op in ordered if op.kind is Kind.SIZE}
    together: dict[Hashable, list[Operation]] = {}
    for operation in ordered:
        if operation.kind is not Kind.SIZE:
            together.setdefault((operation.kind, _sameness(piece, operation)), []).append(operation)
    gathered = []
    for shape, same in together.items():
        first = same[0]
        placed = first.adds or first.kind in (Kind.CLOSE_RING, Kind.TAG)
        if is_for_courses(piece, first):
            placed = len({piece.keys(operation.links) for operation in same}) > 1
        turns = tuple((operation,) for operation in same) if placed else (tuple(same),)
        if first.kind in TYING:
            turns = (tuple(op for tied in same for op in _sized_and_tied(tied, sizing)),)
        gathered.append(Group(first.stage, first.kind, turns, len(same), shape))
    return gathered


def _sized_and_tied(tied: Operation, sizing: Mapping[Name, Operation]) -> tuple[Operation, ...]:
    """What is tied at once when it has been sized, so that no open neck waits."""
    return (*(sizing[thing] for thing in tied.needs), tied)


def _sameness(piece: PieceIndex, operation: Operation) -> Hashable:
    """What operations of one kind must have in common to be told together."""
    if operation.kind is Kind.LAY:
        return operation.id
    if operation.kind is Kind.PAIR and operation.links:
        return operation.links[0] in piece.long_links, tuple(sorted(piece.keys(operation.links)))
    if operation.kind is Kind.TIE_OFF:
        return piece.keys(operation.links)
    if operation.kind is Kind.CHAIN:
        long = operation.links[0] in piece.long_links
        closed = operation.joints[0] == operation.joints[-1]
        keys = piece.keys(operation.links)
        if long and len(set(keys)) > 1 and not is_long(keys):
            # of the same make: each row tells its own order of colours
            return operation.adds, long, closed, len(keys)
        return operation.adds, long, closed, keys
    return None


def is_for_courses(piece: PieceIndex, operation: Operation) -> bool:
    """Whether an operation ties a chain that comes in with a course, and has no place before."""
    if operation.kind is not Kind.CHAIN or operation.links[0] not in piece.long_links:
        return False
    return not operation.adds


def _assembly(piece: PieceIndex, ordered: Sequence[Operation], limit: int) -> list[Group]:
    runs: list[list[Round]] = []
    for round_ in rounds_of(piece, ordered):
        if runs and same_move(piece, runs[-1][-1], round_):
            runs[-1].append(round_)
        else:
            runs.append([round_])
    groups = []
    for run in runs:
        coming = [round_ for round_ in run if round_.comes_in]
        tied = run[len(coming) :]
        with_first = len(coming) <= MOST_COMING
        room = limit - len(coming) if with_first else limit
        most = max(1, room // most_parts(tied)) if tied else 1
        first, *others = _even_parts(tied, most) if tied else [[]]
        together = [[*coming, *first]] if with_first else [coming, first]
        groups += [_group(piece, part) for part in (*together, *others) if part]
    return groups


def _even_parts(run: Sequence[Round], most: int) -> list[Sequence[Round]]:
    """`run` cut into as few parts of at most `most` as can be, as even as can be."""
    count = -(-len(run) // most)
    cuts = [i * len(run) // count for i in range(count + 1)]
    return [run[a:b] for a, b in pairwise(cuts)]


def _group(piece: PieceIndex, rounds: Sequence[Round]) -> Group:
    heads = [round_.head for round_ in rounds if not round_.comes_in]
    coming = tuple(round_.head.kind for round_ in rounds if round_.comes_in)
    cells = tuple(dict.fromkeys(kind for head in heads for kind in cells_of(piece, head)))
    moves = tuple(
        (
            move_of(piece, round_.head),
            letters_at(piece, round_.joints(Kind.SINGLE)),
            where_locked(piece, round_),
        )
        for round_ in rounds
        if not round_.comes_in
    )
    return Group(
        stage=Stage.BRACE,
        kind=heads[0].kind if heads else Kind.LAY,
        turns=tuple(round_.turn for round_ in rounds),
        times=len(rounds),
        shape=(coming, moves, cells),
        cells=cells,
    )
