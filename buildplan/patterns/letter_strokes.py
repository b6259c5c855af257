"""The strokes of letters and digits: our own alphabet, as data.

A character is a graph of strokes. A stroke is a tube's course seen from the front: it sets out
from a free end, or from a side of a cell of an earlier stroke, and may end at one. Where it meets
another it shares the two joints of that side, front and back: a square cell with strokes on three
sides is a T, on four an X, a fan with one on each side a Y.

Characters are 2 `BETWEEN` + 3 cells high: three level bars, and so many cells between two of them.
Round ones turn half round by three fans with `ROUND` cells between two of them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum, auto

# a low bar keeps a word one piece: a short one between two letters, a long one for a space
SPACE, JOINER = "_", "-"
JOINERS = tuple(JOINER * cells for cells in range(1, 18))  # a longer one where a letter leans out
BARS = frozenset({SPACE, *JOINERS})


class LetterSize(Enum):
    """A number of cells that goes by how high characters are."""

    HEIGHT = auto()
    BETWEEN = auto()
    BAR = auto()
    HALF_BAR = auto()
    SHORT_BAR = auto()
    SERIF = auto()
    ROUND = auto()
    TALL_ROUND = auto()
    LEG = auto()
    STEM = auto()
    SLOPE = auto()
    ARM = auto()
    DIAGONAL = auto()


def sizes(height: int) -> Mapping[LetterSize, int]:
    """What each size comes to in characters `height` cells high."""
    between = (height - 3) // 2
    bar = between if between % 2 else between + 1
    bend = max(1, round(between / 3**0.5))
    return {
        LetterSize.HEIGHT: height,
        LetterSize.BETWEEN: between,  # two level bars
        LetterSize.BAR: bar,
        LetterSize.HALF_BAR: (bar - 1) // 2,
        LetterSize.SHORT_BAR: max(1, bar - 1),  # before a round
        LetterSize.SERIF: max(1, (bar - 1) // 2),
        LetterSize.ROUND: bend,
        LetterSize.TALL_ROUND: max(1, round((2 * between + 1) / 3**0.5)),
        LetterSize.LEG: round((between + 1.5) / 0.866) - 1,  # of K
        LetterSize.STEM: height - 1 - (bend + 1) // 2,  # of N
        LetterSize.SLOPE: round((height - 1.366) / 0.866),  # of V
        LetterSize.ARM: round((height * 2**0.5 - 2) / 2),  # of X
        LetterSize.DIAGONAL: round((height - 2) / 0.866) - 2,  # of Z
    }


@dataclass(frozen=True)
class CellCount:
    """A number of cells: a sum of sizes, each so many times, and `more`."""

    of: tuple[tuple[LetterSize, int], ...] = ()
    more: int = 0

    def __add__(self, other: CellCount | int) -> CellCount:
        if isinstance(other, int):
            return CellCount(self.of, self.more + other)
        both = Counter(dict(self.of))
        both.update(dict(other.of))
        return CellCount(tuple(both.items()), self.more + other.more)

    def __sub__(self, other: int) -> CellCount:
        return self + -other

    def __rmul__(self, times: int) -> CellCount:
        return CellCount(tuple((size, times * count) for size, count in self.of), times * self.more)

    def count(self, at: Mapping[LetterSize, int]) -> int:
        """How many they are where sizes come to `at`."""
        return self.more + sum(times * at[size] for size, times in self.of)


class Bend(Enum):
    """A cell that turns a stroke, to the right or to the left of whoever goes along it."""

    FAN_RIGHT = auto()
    FAN_LEFT = auto()
    CORNER_RIGHT = auto()
    CORNER_LEFT = auto()


class Heading(Enum):
    """Which way a stroke sets out from a free end."""

    UP = auto()
    RIGHTWARDS = auto()
    DOWN = auto()
    LEFTWARDS = auto()
    UP_RIGHT = auto()
    DOWN_STEEPLY = auto()


class Flank(Enum):
    """A side of a cell: on its left or its right, or the second on the left of a corner."""

    LEFT = auto()
    RIGHT = auto()
    SECOND_LEFT = auto()


@dataclass(frozen=True)
class CellSide:
    """A side of a cell of an earlier stroke; strokes and cells count from 0, or back from -1."""

    stroke: int
    cell: CellCount
    flank: Flank


class Itself(Enum):
    """An end of a stroke that is its own start."""

    START = auto()


@dataclass(frozen=True)
class Stroke:
    """Where it sets out, its cells in order (straight ones by their number), and what it ends at,
    if it does not end free."""

    start: Heading | CellSide
    course: tuple[CellCount | Bend, ...]
    end: CellSide | Itself | None = None


def cells(size: LetterSize) -> CellCount:
    """As many cells as a size comes to."""
    return CellCount(((size, 1),))


def stroke(
    start: Heading | CellSide, *course: CellCount | Bend | int, end: CellSide | Itself | None = None
) -> Stroke:
    """A stroke; a number in its course is so many straight cells."""
    run = tuple(CellCount(more=one) if isinstance(one, int) else one for one in course)
    return Stroke(start, run, end)


def left_of(stroke: int, cell: CellCount | int) -> CellSide:
    """The left side of a cell."""
    return _side(stroke, cell, Flank.LEFT)


def right_of(stroke: int, cell: CellCount | int) -> CellSide:
    """The right side of a cell."""
    return _side(stroke, cell, Flank.RIGHT)


def second_left_of(stroke: int, cell: CellCount | int) -> CellSide:
    """The second side on the left of a corner."""
    return _side(stroke, cell, Flank.SECOND_LEFT)


def _side(stroke: int, cell: CellCount | int, flank: Flank) -> CellSide:
    return CellSide(stroke, CellCount(more=cell) if isinstance(cell, int) else cell, flank)
