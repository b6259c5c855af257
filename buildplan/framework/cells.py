"""The kinds of cell: what each is called, how far the chains advance in it, how it turns.

A kind that is added here (or with `CELL_KINDS[name] = ...`) can stand in a file's course, and is
told, drawn and counted like the others.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from buildplan.framework.cell_turns import CourseTurn, SideLengths, polygon_turn
from buildplan.language.messages import Message, message, message_in

SPUR_LINKS = 4  # balloons of a spur at least: out and back again


@dataclass(frozen=True)
class CellWords:
    """What is said of a kind of cell: its name, one of them, what it does to the
    piece (nothing, if it does nothing), and its name on a drawing, where that is another."""

    called: Message
    one: Message
    effect: Message | None
    on_drawing: Message | None = None


@dataclass(frozen=True)
class CellKind:
    """A kind of cell: its name in a file, how many balloons the outer and the inner chains advance
    by, what is said of it, and how far it turns the course, given those and the lengths."""

    name: str
    outer: int
    inner: int
    words: CellWords = field(compare=False, repr=False)
    turn: Callable[[int, int, SideLengths], CourseTurn] = field(compare=False, repr=False)

    @property
    def advances(self) -> tuple[int, int]:
        """How many balloons the outer and the inner chains advance by."""
        return self.outer, self.inner

    @property
    def is_spur(self) -> bool:
        """Whether the chains of one side run out and back again, as the rails of a ladder."""
        return max(self.advances) >= SPUR_LINKS and not min(self.advances)


STRAIGHT = CellKind(
    "straight",
    1,
    1,
    CellWords(
        message_in("kind of cell", "straight"),
        message("a straight"),
        None,
    ),
    polygon_turn,
)
FAN = CellKind(
    "fan",
    1,
    0,
    CellWords(
        message_in("kind of cell", "fan"),
        message("a fan"),
        message("The piece bends inward here."),
    ),
    polygon_turn,
)
FAN_IN = CellKind(
    "fan_in",
    0,
    1,
    CellWords(
        message_in("kind of cell", "inward fan"),
        message("an inward fan"),
        message("The piece bends outward here."),
        message_in("kind of cell on a drawing", "fan in"),
    ),
    polygon_turn,
)
DIP = CellKind(
    "dip",
    0,
    2,
    CellWords(
        message_in("kind of cell", "dip"),
        message("a dip"),
        None,
    ),
    polygon_turn,
)
TIP = CellKind(
    "tip",
    2,
    0,
    CellWords(
        message_in("kind of cell", "tip"),
        message("a tip"),
        None,
    ),
    polygon_turn,
)
SPUR = CellWords(
    message_in("kind of cell", "spur"),
    message("a spur"),
    message("A spur of the outer chains stands out there."),
)
UNEVEN = CellWords(
    message_in("kind of cell", "uneven cell"),
    message("an uneven cell"),
    None,
)
# what a file may call a cell, by that name
CELL_KINDS: dict[str, CellKind] = {kind.name: kind for kind in (STRAIGHT, FAN, FAN_IN, DIP, TIP)}


def cell_kind(outer: int, inner: int) -> CellKind:
    """The kind of cell by whose sides the chains advance so far; one that has no name of its own
    goes by the two numbers."""
    for kind in CELL_KINDS.values():
        if kind.advances == (outer, inner):
            return kind
    words = SPUR if outer >= SPUR_LINKS and not inner else UNEVEN
    return CellKind(f"{outer},{inner}", outer, inner, words, polygon_turn)
