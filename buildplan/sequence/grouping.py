"""Operations gathered into what is told as one step.

Equal work is one group with a count. What is done turn by turn is one group: a brace with its
singles and its locks, a joint with its lock, two balloons sized and tied to each other.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from buildplan.framework.cells import STRAIGHT as STRAIGHT_CELL
from buildplan.sequence.colour_order import is_long
from buildplan.sequence.model import Kind, Operation, Stage
from buildplan.sequence.ordering import phase
from buildplan.sequence.piece import PieceIndex
from buildplan.sequence.work_names import Name

HEADS = (Kind.BRACE, Kind.SINGLE, Kind.JOIN, Kind.TURN_OVER)
ASSEMBLING = (*HEADS, Kind.SETTLE, Kind.LOCK)
TYING = (Kind.PAIR, Kind.TIE_OFF)
STRAIGHT = STRAIGHT_CELL.name


@dataclass(frozen=True)
class Group:
    """Operations told in one step; `shape` is equal where the same moves are asked for."""

    stage: Stage
    kind: Kind
    turns: tuple[tuple[Operation, ...], ...]
    times: int
    shape: Hashable
    cells: tuple[str, ...] = ()

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
    preparing = sorted(
        (op for op in ahead if op.stage is not Stage.FINISH),
        key=lambda op: (phase(op), _purpose(piece, op)),
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


@dataclass(frozen=True)
class _Round:
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


def _rounds(piece: PieceIndex, ordered: Sequence[Operation]) -> list[_Round]:
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
    return [_Round(tuple(turn)) for turn in rounds]


def _at_corner(piece: PieceIndex, head: Operation, single: Operation) -> bool:
    """Whether a single belongs to the brace before it: it is of the same part, and not between
    two parts."""
    if (head.kind, single.kind) != (Kind.BRACE, Kind.SINGLE):
        return False
    if single.links[0] in piece.framework.extras:
        return False
    joints = (head.joints[0], *single.joints)
    return len({piece.framework.built_with(joint).joints for joint in joints}) == 1


def _assembly(piece: PieceIndex, ordered: Sequence[Operation], limit: int) -> list[Group]:
    runs: list[list[_Round]] = []
    for round_ in _rounds(piece, ordered):
        if runs and _same_move(piece, runs[-1][-1], round_):
            runs[-1].append(round_)
        else:
            runs.append([round_])
    groups = []
    for run in runs:
        coming = [round_ for round_ in run if round_.comes_in]
        tied = run[len(coming) :]
        most = max(1, limit // _most_parts(piece, tied)) if tied else 1
        first, *others = _even_parts(tied, most) if tied else [[]]
        groups += [_group(piece, part) for part in ([*coming, *first], *others)]
    return groups


def _same_move(piece: PieceIndex, before: _Round, after: _Round) -> bool:
    """Whether a head can be told with the one before it: the same move, both with locks or
    both without, and no cell but straight ones between them."""
    if after.comes_in or before.comes_in or before.head.course != after.head.course:
        return before.comes_in and before.head.course == after.head.course
    cells = {*_cells(piece, before.head), *_cells(piece, after.head)}
    if before.head.kind is Kind.BRACE and not cells <= {STRAIGHT}:
        return False
    if bool(before.joints(Kind.LOCK)) != bool(after.joints(Kind.LOCK)):
        return False
    singles = [_letters(piece, round_.joints(Kind.SINGLE)) for round_ in (before, after)]
    return singles[0] == singles[1] and _move(piece, before.head) == _move(piece, after.head)


def _most_parts(piece: PieceIndex, run: Sequence[_Round]) -> int:
    """The most links or locks that one round of `run` has to do with."""
    return max(max(_parts(piece, round_), len(round_.joints(Kind.LOCK)), 1) for round_ in run)


def _parts(piece: PieceIndex, round_: _Round) -> int:
    head = round_.head
    if head.kind is Kind.JOIN and len(head.joints) == 1:
        # knots that are brought together: each holds two ends, or a free one
        return sum(ceil(len(piece.framework.links_at[joint]) / 2) for joint in head.joints)
    return sum(len(operation.links) for operation in round_.turn)


def _even_parts(run: Sequence[_Round], most: int) -> list[Sequence[_Round]]:
    """`run` cut into as few parts of at most `most` as can be, as even as can be."""
    count = -(-len(run) // most)
    cuts = [i * len(run) // count for i in range(count + 1)]
    return [run[a:b] for a, b in pairwise(cuts)]


def _letters(piece: PieceIndex, joints: Iterable[str]) -> tuple[str, ...]:
    return tuple(piece.letter[joint] for joint in joints)


def _move(piece: PieceIndex, head: Operation) -> Hashable:
    """What hands do in a head, apart from the numbers of its joints."""
    if head.kind is Kind.LAY:
        return head.id
    if head.kind in (Kind.JOIN, Kind.TURN_OVER):
        parts = [piece.framework.part_at(joint) for joint in head.joints]
        return head.kind, tuple(part and part.name for part in parts if len(parts) > 1)
    letters = _letters(piece, head.joints)
    if head.kind is Kind.SINGLE:
        parts = [piece.framework.part_at(joint) for joint in head.joints]
        if parts[0] is not parts[1]:  # between two parts: told with all that are
            letters = tuple(part.name for part in parts if part is not None)
        return head.kind, letters, piece.keys(head.links)
    brace = piece.framework.brace[head.brace]
    chains = tuple((_letters(piece, chain.joints), chain.closed) for chain in brace.chains)
    links = piece.framework.link
    shared = tuple(
        (*_letters(piece, (links[link].start, links[link].finish)),) for link in brace.shared
    )
    return head.kind, chains, shared


def _cells(piece: PieceIndex, head: Operation) -> tuple[str, ...]:
    if head.kind is Kind.BRACE:
        found = [cell.name for cell in piece.cells_at(piece.framework.brace[head.brace])]
        return tuple(dict.fromkeys(found)) or ((STRAIGHT,) if piece.framework.cells else ())
    if head.kind is Kind.SINGLE:
        cell = piece.cell_of_skipped.get(head.joints[0])
        return () if cell is None else (cell.name,)
    return ()


def _group(piece: PieceIndex, rounds: Sequence[_Round]) -> Group:
    heads = [round_.head for round_ in rounds if not round_.comes_in]
    coming = tuple(round_.head.kind for round_ in rounds if round_.comes_in)
    cells = tuple(dict.fromkeys(name for head in heads for name in _cells(piece, head)))
    moves = tuple(
        (
            _move(piece, round_.head),
            _letters(piece, round_.joints(Kind.SINGLE)),
            _where(piece, round_),
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


def _where(piece: PieceIndex, round_: _Round) -> Hashable:
    """On which chains locks sit; where chains meet, only how many they are."""
    locked = round_.joints(Kind.LOCK)
    if round_.head.kind is Kind.JOIN:
        return len(locked)
    return _letters(piece, locked)
