"""What steps say, and the figures of a piece that they quote."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum

from buildplan.language.messages import Message
from buildplan.sequence.directions import Direction
from buildplan.sequence.model import Kind
from buildplan.shape.constants import CONSTANTS


@dataclass(frozen=True)
class RowWords:
    """One line of a step: what it is about (`Brace 3`), what it says of it, and the two together
    as they are printed."""

    name: str
    said: str
    line: str


@dataclass(frozen=True)
class TurnWords:
    """What is particular to one turn of a step, row by row. Work without a place of its own has no
    name, and its row says again what the text says."""

    name: str
    rows: tuple[RowWords, ...]

    @property
    def lines(self) -> tuple[str, ...]:
        """The rows as they are printed."""
        return tuple(row.line for row in self.rows)


@dataclass(frozen=True)
class Doing:
    """One of several things that a step has done in order: what is said of it, and the kind of work
    whose pictures show it, if any do."""

    said: str
    kind: Kind | None = None


@dataclass(frozen=True)
class StepWords:
    """What one step says: its heading, what to do, turn by turn what is particular to it, and what
    to count when it is done. Where what to do is long, `acts` is the same again, one thing after
    another, and `intro` what the text says before them. `as_in` are the numbers of the steps to
    look up for its moves."""

    number: int
    title: str
    text: str
    turns: tuple[TurnWords, ...]
    check: str
    intro: str = ""
    acts: tuple[Doing, ...] = ()
    as_in: tuple[int, ...] = ()

    @property
    def rows(self) -> tuple[str, ...]:
        """What must be read beside the text: the rows of each turn that has a name."""
        return tuple(line for turn in self.turns if turn.name for line in turn.lines)


@dataclass(frozen=True)
class Wording:
    """What all turns of a step have in common; `acts` are its text, one thing after another,
    `as_in` as of `StepWords`."""

    title: str
    text: str
    check: str
    acts: tuple[Doing, ...] = ()
    as_in: tuple[int, ...] = ()


@dataclass(frozen=True)
class Span:
    """A length to check with a tape: what it should be, and the range about it; metres."""

    length_m: float
    low_m: float
    high_m: float


@dataclass(frozen=True)
class Side:
    """A straight side, from its first brace to its last."""

    first: int
    last: int
    span: Span


class LiesAt(Enum):
    """Where balloons of one part come to lie beside those of another."""

    ON_TOP = "on top"
    RIGHT = "at the right"
    IN_FRONT = "in front"


@dataclass(frozen=True)
class SharedKnots:
    """Two parts that have balloons between the same two knots once they are tied: those of `part`
    lie where `placed` says, as seen from the front."""

    other: str
    part: str
    placed: LiesAt


@dataclass(frozen=True)
class SetUp:
    """How the parts of an assembly that is put together standing come to where they are tied:
    those that stand on the floor, from left to right, or one behind the other (`in_depth`) from
    the back to the front, how far their middles are apart (metres, neighbour by neighbour), those
    that are lifted on top, lowest first, those of them all that were built lying on their backs,
    and of each part the joints that are tied and face the front, from left to right. `high` are
    the ties that are out of reach from the floor, `higher` those out of reach from a step stool
    too; `rising` the parts built lying that reach out of reach from the floor once they are up."""

    standing: tuple[str, ...]
    apart_m: tuple[float, ...]
    lifted: tuple[str, ...]
    lying: tuple[str, ...]
    front: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    high: frozenset[str] = frozenset()
    higher: frozenset[str] = frozenset()
    rising: frozenset[str] = frozenset()
    in_depth: bool = False


@dataclass(frozen=True)
class PartsApart:
    """Which way one part goes on from another where they are tied: the axis by what lies there,
    and whether that way (`forward`) or the other."""

    axis: LiesAt
    forward: bool


@dataclass(frozen=True)
class Taped:
    """What a tape says from one knot to another, with its range."""

    first: str
    last: str
    span: Span


@dataclass(frozen=True)
class Figures:
    """Figures of a piece that its steps quote, where they are known: how wide each ring is across
    its outside as it lies round on the floor (by letter), the straight sides by their last brace,
    how high the knots of a column's rings are above the floor and which way the numbers run (by
    letter). `stands` says that it is built standing, so that nobody stands it up; `held_by` what
    it is held by where it does not stand by itself, `hung` whether it hangs from above; `set_up`
    how its parts come together, of an assembly that is put together standing; `flat` the parts
    (the whole piece is "") that are built course on course lying on their backs; `one_layer` those
    whose joints lie in one plane; `shared` the parts that share knots; `apart` which way the part
    of a tie's last joint goes on from that of its first, by the tie's name; `closed_inside` the
    parts whose tube is closed from inside its course, where there is room to kneel; `long` whether
    those who stand it up spread out along it; `rows` how long each row is of what is built lying,
    where none before is as long, and how far it is from the lowest of its layer (by letter);
    `hand_m` how broad a hand with a lock in it is."""

    rings: Mapping[str, Span] = field(default_factory=dict)
    sides: Mapping[int, Side] = field(default_factory=dict)
    heights: Mapping[str, Span] = field(default_factory=dict)
    ways: Mapping[str, Direction] = field(default_factory=dict)
    stands: bool = False
    held_by: tuple[Message, ...] = ()
    hung: bool = False
    set_up: SetUp | None = None
    flat: frozenset[str] = frozenset()
    one_layer: frozenset[str] = frozenset()
    shared: tuple[SharedKnots, ...] = ()
    apart: Mapping[str, PartsApart] = field(default_factory=dict)
    closed_inside: frozenset[str] = frozenset()
    long: bool = False
    rows: Mapping[str, tuple[Taped, ...]] = field(default_factory=dict)
    hand_m: float = CONSTANTS["hand"].value


NO_FIGURES = Figures()
