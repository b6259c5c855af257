"""A grown figure as the strokes that draw it, and its design."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import groupby
from math import degrees

import numpy as np

from buildplan.design.model import Design
from buildplan.fitting.tube_design import BRACE, ENGLISH, LOCK, LONG, Gauges, design_with
from buildplan.language.voice import Voice
from buildplan.patterns.figure_cells import AHEAD, LEFT, RIGHT, Ends, sides_of
from buildplan.patterns.figure_keys import (
    Figure,
    FigureCell,
    FigureItem,
    FigureRun,
    FigureStroke,
    Side,
)

HEADING_TO = 1  # decimal places of a degree
# how a square and a triangle are called that are left by a side
_SQUARE: Mapping[Side, FigureCell] = {
    AHEAD: FigureCell.STRAIGHT,
    LEFT: FigureCell.CORNER_LEFT,
    RIGHT: FigureCell.CORNER_RIGHT,
}
_TRIANGLE: Mapping[Side, FigureCell] = {
    LEFT: FigureCell.FAN_LEFT,
    RIGHT: FigureCell.FAN_RIGHT,
}


@dataclass
class _Stroke:
    """Where a stroke sets out (None for the first), and its cells by name."""

    out_of: tuple[int, int, Side] | None
    cells: list[FigureCell] = field(default_factory=list)


def figure_design(
    at: Sequence[complex],
    cells: Sequence[Sequence[int]],
    gauges: Gauges,
    name: str,
    stand_on: Sequence[str] = (),
    voice: Voice = ENGLISH,
) -> Design:
    """The design of a figure of `cells`, each given by its corners clockwise, as numbers into
    the places `at` of its joints."""
    heading, strokes = _strokes(at, cells)
    figure = Figure(
        strokes=[_as_stroke(stroke) for stroke in strokes],
        heading=heading,
        long=LONG,
        brace=BRACE,
        lock=LOCK,
    )
    return design_with("figure", figure, gauges, name, stand_on, voice)


def _strokes(at: Sequence[complex], cells: Sequence[Sequence[int]]) -> tuple[float, list[_Stroke]]:
    """Which way the first stroke sets out, degrees, and all: each goes straight on as long as it
    can, and turns aside where it must."""
    of_side = {side: n for n, corners in enumerate(cells) for side in sides_of(corners)}
    free = [side for side in of_side if side[::-1] not in of_side]
    # from the lowest side, as near the middle as there is one
    middle = float(np.mean([place.real for place in at]))
    right, left = min(free, key=lambda side: _lowness(at, side, middle))
    heading = degrees(float(np.angle(1j * (at[right] - at[left]))))
    strokes: list[_Stroke] = []
    left_over: list[tuple[Ends, tuple[int, int, Side] | None]] = [((left, right), None)]
    drawn: set[int] = set()
    while left_over:
        entry, out_of = left_over.pop(0)
        if of_side[entry[::-1]] in drawn:
            continue
        stroke = _Stroke(out_of)
        strokes.append(stroke)
        while True:
            cell = of_side[entry[::-1]]
            drawn.add(cell)
            sides = _sides_from(cells[cell], entry)
            onward = [
                side for side, ends in sides.items() if _next(of_side, drawn, ends) is not None
            ]
            leaving = onward[0] if onward else next(iter(sides))
            stroke.cells.append((_SQUARE if AHEAD in sides else _TRIANGLE)[leaving])
            place = len(strokes), len(stroke.cells)
            left_over += [(sides[side], (*place, side)) for side in onward[1:]]
            if not onward:
                break
            entry = sides[leaving]
    return round(heading, HEADING_TO) + 0.0, strokes


def _lowness(at: Sequence[complex], side: Ends, middle: float) -> tuple[float, float]:
    place = (at[side[0]] + at[side[1]]) / 2
    return round(place.imag, 3), abs(place.real - middle)


def _next(of_side: Mapping[Ends, int], drawn: set[int], ends: Ends) -> int | None:
    """The cell beyond a side, if there is one that is not drawn yet."""
    cell = of_side.get(ends[::-1])
    return None if cell is None or cell in drawn else cell


def _sides_from(corners: Sequence[int], entry: Ends) -> dict[Side, Ends]:
    """The sides of a cell as whoever enters it by a side (left joint, right joint) sees them: to
    go straight on comes first."""
    start = corners.index(entry[0])
    left, *far, right = (*corners[start:], *corners[:start])
    if len(far) == 1:
        return {LEFT: (left, far[0]), RIGHT: (far[0], right)}
    return {AHEAD: (far[0], far[1]), LEFT: (left, far[0]), RIGHT: (far[1], right)}


def _as_stroke(stroke: _Stroke) -> FigureStroke:
    items: list[FigureItem] = []
    for cell, run in groupby(stroke.cells):
        count = len(list(run))
        plain: list[FigureItem] = [str(cell)] * count
        items += [FigureRun(repeat=count, cells=[str(cell)])] if count > 3 else plain
    if stroke.out_of is None:
        return FigureStroke(cells=items)
    number, cell_number, side = stroke.out_of
    return FigureStroke(stroke=number, cell=cell_number, side=side, cells=items)
