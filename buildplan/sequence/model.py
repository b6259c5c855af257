"""Operations and steps as frozen data."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property

from buildplan.framework.cells import CellKind
from buildplan.framework.ends import End
from buildplan.sequence.work_names import Name


class Stage(StrEnum):
    """The seven stages, in the order in which each first comes up."""

    SIZE = "size"
    PAIR = "pair"
    CHAIN = "chain"
    CLOSE_RINGS = "close rings"
    BRACE = "brace"
    LOCK_JOINTS = "lock joints"
    FINISH = "finish"


class Kind(StrEnum):
    """What hands do in an operation.

    `TIE_OFF` closes the neck of a link balloon that has no partner with a knot of its own;
    `TAG` marks joints with their labels; `SETTLE` brings the knots of a brace to lie on those
    of the chains; `JOIN` brings together the knots of chains that meet at a joint where no
    brace does, or joints of different parts that are tied to one another.
    """

    SIZE = "size"
    PAIR = "pair"
    TIE_OFF = "tie off"
    CHAIN = "chain"
    CLOSE_RING = "close ring"
    TAG = "tag"
    LAY = "lay"
    BRACE = "brace"
    SETTLE = "settle"
    SINGLE = "single"
    JOIN = "join"
    TURN_OVER = "turn over"
    LOCK = "lock"
    INSPECT = "inspect"
    STAND_UP = "stand up"


class Access(StrEnum):
    """How a joint can be got at."""

    DIRECT = "direct"
    LIFTED = "lifted"
    ON_ITS_SIDE = "on its side"
    STOOL = "stool"
    LADDER = "ladder"
    TURNED = "turned"
    NONE = "none"


@dataclass(frozen=True)
class Knot:
    """Balloon ends knotted together at a joint: (link id, end) each.

    A knot of a single end is that end tied into a joint which stands already.
    """

    joint: str
    ends: tuple[tuple[str, End], ...]


@dataclass(frozen=True)
class Operation:
    """One act of work.

    `needs` and `makes` are names of things (`work_names`). An operation can be done once all it
    needs has been made. `links` and `locks` are what it handles: what it brings into the piece
    (locks by joint), or what it makes ready (see `adds`). `joints` are the joints at which hands
    work, in the order of the work; along a chain every joint it runs through, so that the first
    comes again at the end when the chain is to be closed. `balloon` is the key of what a size
    operation sizes, and empty elsewhere. `adds` says whether what it handles becomes part of the
    piece by it. `people` is how many it takes; `up` is the side that must be up for it ("front" or
    "back"), empty where the piece is never turned over. `course` numbers, from 1, the courses of
    what is built without braces; 0 elsewhere. `chain` is the letter of the long chain that it
    ties, closes or tags, `brace` the number of the brace that it ties or settles; empty and 0
    elsewhere.
    """

    id: Name
    kind: Kind
    stage: Stage
    needs: tuple[Name, ...]
    makes: tuple[Name, ...]
    links: tuple[str, ...] = ()
    locks: tuple[str, ...] = ()
    joints: tuple[str, ...] = ()
    knots: tuple[Knot, ...] = ()
    balloon: str = ""
    adds: bool = False
    people: int = 1
    up: str = ""
    course: int = 0
    chain: str = ""
    brace: int = 0


@dataclass(frozen=True)
class Turn:
    """One doing of a step that is done several times: the joints where hands work, and the
    operations in the order of the work (a brace, its settling, its singles, its locks)."""

    joints: tuple[str, ...]
    operations: tuple[Operation, ...]

    def of_kind(self, kind: Kind) -> tuple[Operation, ...]:
        """The operations of one kind, in order."""
        return tuple(operation for operation in self.operations if operation.kind is kind)


@dataclass(frozen=True)
class Step:
    """One numbered step of the booklet, as plain data; `instructions` puts it into words.

    Done `times` over, once for each of `turns`; work that has no place of its own yet (80
    equal pairs, 30 equal short chains) has a single turn for all its times. What hands do turn
    by turn is one step: two balloons are sized and tied, a brace is tied and locked; `kind` is
    that of what gives the step its name. `adds` counts the balloons that come into the piece
    (all times together, by key); `prepares` counts those made ready, each once. `needs` are
    numbers of earlier steps. `cells` are the kinds of cell concerned.
    `behind` are joints at the back of the piece, which hands reach low; `ways` names the joints
    that are got at otherwise than directly. `alike` is the number of the first step that asks for
    the same moves at other joints, or None. Side work can go on at the same time as the steps
    about it: `side_work` is the first step of the main line that needs it, None for the main line
    itself. `repeats` is the number of the step that this one does again at an equal part, joint for
    joint, or None; `part` is the name of the part that it builds, empty of what ties parts or comes
    before them.
    """

    number: int
    stage: Stage
    kind: Kind
    times: int
    turns: tuple[Turn, ...]
    needs: tuple[int, ...]
    adds: Mapping[str, int]
    prepares: Mapping[str, int]
    cells: tuple[CellKind, ...]
    behind: tuple[str, ...] = ()
    ways: Mapping[Access, tuple[str, ...]] = field(default_factory=dict)
    alike: int | None = None
    side_work: int | None = None
    repeats: int | None = None
    part: str = ""

    @cached_property
    def operations(self) -> tuple[Operation, ...]:
        """Every operation of every turn, in order."""
        return tuple(operation for turn in self.turns for operation in turn.operations)

    @cached_property
    def kinds(self) -> tuple[Kind, ...]:
        """The kinds of work in it, in the order in which they first come up."""
        return tuple(dict.fromkeys(operation.kind for operation in self.operations))

    @property
    def links(self) -> tuple[str, ...]:
        """Link balloons that all turns bring or prepare."""
        return tuple(link for operation in self.operations for link in operation.links)

    @property
    def locks(self) -> tuple[str, ...]:
        """Joints at which all turns set a lock."""
        return tuple(joint for operation in self.operations for joint in operation.locks)

    def of_kind(self, kind: Kind) -> tuple[Operation, ...]:
        """The operations of one kind, in order."""
        return self._by_kind.get(kind, ())

    @cached_property
    def _by_kind(self) -> Mapping[Kind, tuple[Operation, ...]]:
        return {
            kind: tuple(operation for operation in self.operations if operation.kind is kind)
            for kind in self.kinds
        }
