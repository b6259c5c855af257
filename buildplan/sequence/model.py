"""Operations and steps as frozen data."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from buildplan.framework.model import End


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
    """What hands do in an operation."""

    SIZE = "size"
    PAIR = "pair"
    CHAIN = "chain"
    CLOSE_RING = "close ring"
    LAY = "lay"
    BRACE = "brace"
    SINGLE = "single"
    LOCK = "lock"
    STAND_UP = "stand up"


@dataclass(frozen=True)
class Knot:
    """Balloon ends knotted together at a joint: (link id, end) each."""

    joint: str
    ends: tuple[tuple[str, End], ...]


@dataclass(frozen=True)
class Operation:
    """One act of work.

    `needs` and `makes` are names of things: `sized A1-A2`, `pair A1-A2 A2-A3`, `chain A`,
    `ring A`, `laid`, `brace 3`, `lock A1`. An operation can be done once all it needs has
    been made. `links` and `locks` are what it brings into the piece (locks by joint), or,
    for size and pair, what it prepares. `joints` are the joints at which hands work.
    """

    id: str
    kind: Kind
    stage: Stage
    needs: tuple[str, ...]
    makes: tuple[str, ...]
    links: tuple[str, ...]
    locks: tuple[str, ...]
    joints: tuple[str, ...]
    knots: tuple[Knot, ...]


@dataclass(frozen=True)
class Turn:
    """One doing of a step that is done several times: what it is called ("Brace 3"), the
    joints where hands work, and the operations in it."""

    name: str
    joints: tuple[str, ...]
    operations: tuple[Operation, ...]


@dataclass(frozen=True)
class Step:
    """One numbered step of the booklet.

    Done `times` over, once for each of `turns`. `adds` counts the balloons that come into
    the piece (all times together, by key); `prepares` counts those made ready. `needs` are
    numbers of earlier steps. `taken_with` names the step that is done turn by turn together
    with this one (a brace and its locks), or is None.
    """

    number: int
    stage: Stage
    kind: Kind
    title: str
    text: str
    check: str
    times: int
    turns: tuple[Turn, ...]
    needs: tuple[int, ...]
    adds: Mapping[str, int]
    prepares: Mapping[str, int]
    taken_with: int | None
    cells: tuple[str, ...]

    @property
    def operations(self) -> tuple[Operation, ...]:
        """Every operation of every turn, in order."""
        return tuple(operation for turn in self.turns for operation in turn.operations)

    @property
    def links(self) -> tuple[str, ...]:
        """Link balloons that all turns bring or prepare."""
        return tuple(link for operation in self.operations for link in operation.links)

    @property
    def locks(self) -> tuple[str, ...]:
        """Joints at which all turns set a lock."""
        return tuple(joint for operation in self.operations for joint in operation.locks)
