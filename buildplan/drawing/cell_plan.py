"""The plan of a tube's cells in model units: one balloon is one long.

Each cell is laid as a regular polygon: its outer links, its inner links and its two braces
are the sides, so that a straight cell is a square, a fan a triangle, and a tip or a dip a
square that stands on its corner. Cells that follow one another share a brace.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from buildplan.drawing.marks import Point
from buildplan.framework.model import Cell

OUTER, INNER = 0, 1
Corner = tuple[int, int]  # side, and index along it from the first cell's first brace


def polygon(outer: int, inner: int) -> dict[Corner, Point]:
    """Corners of one cell, outer side up, going on to the right."""
    sides = outer + inner + 2
    radius, step = 0.5 / math.sin(math.pi / sides), 360 / sides
    at: dict[Corner, Point] = {}
    for i in range(outer + 1):
        angle = math.radians(90 + (outer / 2 - i) * step)
        at[OUTER, i] = (radius * math.cos(angle), radius * math.sin(angle))
    for i in range(inner + 1):
        angle = math.radians(270 - (inner / 2 - i) * step)
        at[INNER, i] = (radius * math.cos(angle), radius * math.sin(angle))
    return at


def run_plan(cells: Sequence[Cell], level: int) -> dict[Corner, Point]:
    """Corners of cells that follow one another, cell `level` of them lying level.

    Indices count from 0 at the first brace of the first cell.
    """
    shapes = [polygon(cell.outer, cell.inner) for cell in cells]
    starts = [(0, 0)]
    for cell in cells:
        starts.append((starts[-1][0] + cell.outer, starts[-1][1] + cell.inner))
    placed: list[dict[Corner, Point]] = [{} for _ in cells]
    placed[level] = shapes[level]
    for i in range(level + 1, len(cells)):
        before = cells[i - 1]
        ends = (placed[i - 1][OUTER, before.outer], placed[i - 1][INNER, before.inner])
        placed[i] = _moved(shapes[i], (shapes[i][OUTER, 0], shapes[i][INNER, 0]), ends)
    for i in range(level - 1, -1, -1):
        shape, cell = shapes[i], cells[i]
        own = (shape[OUTER, cell.outer], shape[INNER, cell.inner])
        placed[i] = _moved(shape, own, (placed[i + 1][OUTER, 0], placed[i + 1][INNER, 0]))
    return {
        (side, starts[i][side] + index): at
        for i, shape in enumerate(placed)
        for (side, index), at in shape.items()
    }


def _moved(
    shape: dict[Corner, Point], own: tuple[Point, Point], onto: tuple[Point, Point]
) -> dict[Corner, Point]:
    """The shape turned and shifted so that its two points `own` fall on `onto`."""
    a, b = complex(*own[0]), complex(*own[1])
    c, d = complex(*onto[0]), complex(*onto[1])
    turn = (d - c) / (b - a)
    moved = {corner: c + turn * (complex(*at) - a) for corner, at in shape.items()}
    return {corner: (at.real, at.imag) for corner, at in moved.items()}
