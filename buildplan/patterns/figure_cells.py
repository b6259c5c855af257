"""The cells of a figure laid side by side, and what stands in the way of that.

Lengths are in links. Places are worked out with the first stroke upright, so that what comes to lie
at one place does so whatever way the figure is turned.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import Enum, auto
from math import radians

import numpy as np

from buildplan.patterns.cell_outlines import Glyph, outlined
from buildplan.patterns.figure_keys import Figure, FigureCell, FigureItem, FigureRun, Side

LEFT: Side = "left"
AHEAD: Side = "ahead"
RIGHT: Side = "right"
_TURN_60 = complex(0.5, 0.75**0.5)
_DIGITS = 6  # of a link, to which places are told apart
# the side by which each cell is left, and whether it is a square
_LEAVING: Mapping[FigureCell, tuple[Side, bool]] = {
    FigureCell.STRAIGHT: (AHEAD, True),
    FigureCell.CORNER_LEFT: (LEFT, True),
    FigureCell.CORNER_RIGHT: (RIGHT, True),
    FigureCell.FAN_LEFT: (LEFT, False),
    FigureCell.FAN_RIGHT: (RIGHT, False),
}

Ends = tuple[int, int]
"""The joints of a side, to the left and to the right of whoever goes out by it."""


class NoSuchSideError(Exception):
    """A stroke that sets out from a side that is not there: of which stroke, from 0."""

    def __init__(self, stroke: int) -> None:
        super().__init__(f"stroke {stroke}")
        self.stroke = stroke


class Clash(Enum):
    """Why a cell cannot be where it is: it lies on another, meets others at a joint alone, or shuts
    a joint in, so that no outline reaches it."""

    ON_ANOTHER = auto()
    AT_A_JOINT = auto()
    SHUTS_IN = auto()


@dataclass(frozen=True)
class LaidCell:
    """A cell: its corners, clockwise, its sides, and which stroke and cell of it it is, from 0."""

    corners: tuple[int, ...]
    sides: Mapping[Side, Ends]
    stroke: int
    number: int


@dataclass
class FigureSheet:
    """Joints at places, each once, and the cells that have been laid."""

    at: list[complex] = field(default_factory=list)
    cells: list[LaidCell] = field(default_factory=list)
    _known: dict[tuple[float, float], int] = field(default_factory=dict)

    def joint(self, at: complex) -> int:
        """The joint at a place, a new one where there is none."""
        key = round(at.real, _DIGITS) + 0.0, round(at.imag, _DIGITS) + 0.0
        if key not in self._known:
            self._known[key] = len(self.at)
            self.at.append(at)
        return self._known[key]


def cell_count(figure: Figure) -> int:
    """How many cells a figure has, without laying them."""
    return sum(
        item.repeat * len(item.cells) if isinstance(item, FigureRun) else 1
        for stroke in figure.strokes
        for item in stroke.cells
    )


def cells_of(items: Sequence[FigureItem]) -> Iterator[FigureCell]:
    """The cells of a stroke one by one."""
    for item in items:
        if isinstance(item, FigureRun):
            yield from (FigureCell(one) for _ in range(item.repeat) for one in item.cells)
        else:
            yield FigureCell(item)


def lay_figure(figure: Figure) -> FigureSheet:
    """All cells of a figure. Raises NoSuchSideError."""
    sheet = FigureSheet()
    of_stroke: list[list[LaidCell]] = []
    for number, stroke in enumerate(figure.strokes):
        start: Ends = (sheet.joint(0j), sheet.joint(1 + 0j))
        if number:
            try:
                laid = of_stroke[_counted(stroke.stroke)][_counted(stroke.cell)]
                start = laid.sides[stroke.side or AHEAD]
            except (IndexError, KeyError):
                raise NoSuchSideError(number) from None
        of_stroke.append([])
        for place, cell in enumerate(cells_of(stroke.cells)):
            side, square = _LEAVING[cell]
            laid = _lay(sheet, start, square, (number, place))
            of_stroke[-1].append(laid)
            start = laid.sides[side]
    return sheet


def _counted(number: int | None) -> int:
    """A number from 1 as one from 0. Raises IndexError where there is none."""
    if number is None:
        raise IndexError
    return number - 1


def _lay(sheet: FigureSheet, start: Ends, square: bool, place: tuple[int, int]) -> LaidCell:
    corners = corners_on(sheet, start, square)
    left, *far, right = corners
    sides: dict[Side, Ends] = {LEFT: (left, far[0]), RIGHT: (far[-1], right)}
    if square:
        sides[AHEAD] = (far[0], far[1])
    laid = LaidCell(corners, sides, *place)
    sheet.cells.append(laid)
    return laid


def corners_on(sheet: FigureSheet, start: Ends, square: bool) -> tuple[int, ...]:
    """The corners of a cell on a side, clockwise: that side's left joint first, its right last."""
    left, right = start
    at_left, at_right = sheet.at[left], sheet.at[right]
    across = at_right - at_left
    if square:
        far = sheet.joint(at_left + 1j * across), sheet.joint(at_right + 1j * across)
        return (left, *far, right)
    return (left, sheet.joint(at_left + across * _TURN_60), right)


def in_the_way(sheet: FigureSheet) -> tuple[LaidCell, Clash] | None:
    """The first cell that cannot be where it is, and why. None where all can."""
    taken: set[Ends] = set()
    for cell in sheet.cells:
        sides = set(sides_of(cell.corners))
        if taken & sides:
            return cell, Clash.ON_ANOTHER
        taken |= sides
    passed = Counter(a for a, b in taken if (b, a) not in taken)
    wrong = {a for a, _ in taken if passed[a] != 1}
    for cell in reversed(sheet.cells):
        at = wrong & set(cell.corners)
        if at:
            return cell, Clash.AT_A_JOINT if max(passed[a] for a in at) else Clash.SHUTS_IN
    return None


def sides_of(corners: Sequence[int]) -> Iterator[Ends]:
    """The sides of a cell, clockwise."""
    return zip(corners, (*corners[1:], corners[0]), strict=True)


def drawn_figure(figure: Figure) -> Glyph:
    """A figure that is right, as its front is drawn."""
    sheet = lay_figure(figure)
    turn = complex(np.exp(1j * radians(figure.heading - 90)))
    at = [place * turn for place in sheet.at]
    return outlined(at, [cell.corners for cell in sheet.cells])
