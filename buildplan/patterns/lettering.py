"""A letter's strokes laid as cells: the joints of its front, its outlines and its braces."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache

from buildplan.patterns.alphabet import GLYPHS
from buildplan.patterns.cell_outlines import Glyph, outlined
from buildplan.patterns.letter_strokes import (
    Bend,
    CellCount,
    CellSide,
    Flank,
    Heading,
    LetterSize,
    Stroke,
    sizes,
)

HEIGHTS = (5, 7, 9, 11, 13)
SIGN_OVER = 0.83  # of a link: how much higher letters stand than their cells, for their bodies
NARROW = frozenset("BMRW")  # stems that would run into one another in 5 cells

_TURN_60, _TURN_90 = complex(0.5, 0.75**0.5), 1j
# advance of the left and of the right side, and the turn to the left; a straight cell is no bend
_STEPS: Mapping[Bend | None, tuple[int, int, complex]] = {
    None: (1, 1, 1),
    Bend.FAN_RIGHT: (1, 0, _TURN_60.conjugate()),
    Bend.FAN_LEFT: (0, 1, _TURN_60),
    Bend.CORNER_RIGHT: (2, 0, _TURN_90.conjugate()),
    Bend.CORNER_LEFT: (0, 2, _TURN_90),
}
_HEADINGS: Mapping[Heading, complex] = {
    Heading.UP: 1j,
    Heading.RIGHTWARDS: 1,
    Heading.DOWN: -1j,
    Heading.LEFTWARDS: -1,
    Heading.UP_RIGHT: complex(0.5**0.5, 0.5**0.5),
    Heading.DOWN_STEEPLY: _TURN_60.conjugate(),
}


@dataclass
class _Drawing:
    """Joints as they are laid; `same` leads from a joint to the one that it is after all."""

    at: list[complex] = field(default_factory=list)
    same: list[int] = field(default_factory=list)
    # of each stroke, the joints of each cell on the left and on the right, in order
    cells: list[list[tuple[list[int], list[int]]]] = field(default_factory=list)

    def joint(self, at: complex) -> int:
        self.at.append(at)
        self.same.append(len(self.same))
        return len(self.at) - 1

    def find(self, joint: int) -> int:
        while self.same[joint] != joint:
            joint = self.same[joint]
        return joint

    def merge(self, one: int, other: int) -> None:
        one, other = sorted((self.find(one), self.find(other)))
        self.same[other] = one


def can_draw(character: str, height: int) -> bool:
    """Whether there is a character of that name and height."""
    return character in GLYPHS and (character not in NARROW or height > HEIGHTS[0])


@cache
def glyph(character: str, height: int) -> Glyph:
    """A character of GLYPHS, `height` cells high (one of HEIGHTS)."""
    size = sizes(height)
    drawing = _Drawing()
    for stroke in GLYPHS[character]:
        _lay(drawing, stroke, size)
    laid = [cell for cells in drawing.cells for cell in cells]
    # round each cell, clockwise as seen from the front
    corners = [[drawing.find(joint) for joint in (*one, *reversed(other))] for one, other in laid]
    return outlined(drawing.at, corners)


def _lay(drawing: _Drawing, stroke: Stroke, size: Mapping[LetterSize, int]) -> None:
    if isinstance(stroke.start, Heading):
        heading = _HEADINGS[stroke.start]
        left, right = drawing.joint(0.5j * heading), drawing.joint(-0.5j * heading)
    else:
        left, right = _side(drawing, stroke.start, size)
        heading = (drawing.at[left] - drawing.at[right]) / 1j
        heading /= abs(heading)
    first = (left, right)
    cells: list[tuple[list[int], list[int]]] = []
    drawing.cells.append(cells)
    for bend in _bends(stroke.course, size):
        lefts, rights = _cell(drawing, left, right, bend, heading)
        cells.append((lefts, rights))
        left, right, heading = lefts[-1], rights[-1], heading * _STEPS[bend][2]
    if stroke.end is not None:
        end = stroke.end
        there = _side(drawing, end, size)[::-1] if isinstance(end, CellSide) else first
        drawing.merge(left, there[0])
        drawing.merge(right, there[1])


def _bends(
    course: Sequence[CellCount | Bend], size: Mapping[LetterSize, int]
) -> Iterator[Bend | None]:
    """The cells of a course one by one: how each bends, if it does."""
    for item in course:
        if isinstance(item, Bend):
            yield item
        else:
            yield from [None] * item.count(size)


def _cell(
    drawing: _Drawing, left: int, right: int, bend: Bend | None, heading: complex
) -> tuple[list[int], list[int]]:
    """Lay one cell: the joints along its left and its right side, the first two its start."""
    on_left, on_right, turn = _STEPS[bend]
    at_left, at_right = drawing.at[left], drawing.at[right]
    if on_left and on_right:
        return [left, drawing.joint(at_left + heading)], [right, drawing.joint(at_right + heading)]
    pivot, out = (at_right, at_left) if on_left else (at_left, at_right)
    end = pivot + (out - pivot) * turn
    steps = [end] if on_left + on_right == 1 else [out + end - pivot, end]
    laid = [drawing.joint(at) for at in steps]
    return ([left, *laid], [right]) if on_left else ([left], [right, *laid])


def _side(drawing: _Drawing, side: CellSide, size: Mapping[LetterSize, int]) -> tuple[int, int]:
    """The joints of a cell's side, to the left and to the right of whoever goes out by it."""
    lefts, rights = drawing.cells[side.stroke][side.cell.count(size)]
    if side.flank is Flank.RIGHT:
        return rights[1], rights[0]
    first = 1 if side.flank is Flank.SECOND_LEFT else 0
    return lefts[first], lefts[first + 1]
