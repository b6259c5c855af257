"""How far parts that stand on the floor are from one another, on lines beneath it: the figure in
its line where there is room, else below it, clear of those of its neighbours."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from buildplan.drawing.dimensions import dimension_marks
from buildplan.drawing.fonts import text_width
from buildplan.drawing.labels import DARK
from buildplan.drawing.line_art import TYPE
from buildplan.drawing.marks import Ink, Label, Mark, Polyline

LINE_PT, TICK_PT = 11.0, 3.0  # from one row of figures to the next; half of what ends a line
ROOM_PT, BETWEEN_PT = 24.0, 4.0  # what arrows need beside a figure; between two figures
LINE = Ink(stroke=DARK, width=0.6)


def rows_of_figures(feet: Sequence[float], apart: Sequence[str]) -> list[int]:
    """The row of each figure between neighbours of `feet`: 0 is the line itself."""
    rows: list[int] = []
    taken: dict[int, float] = {}  # how far right each row is taken, figures coming left to right
    for start, end, words in zip(feet, feet[1:], apart, strict=False):
        wide, middle = text_width(words, TYPE), (start + end) / 2
        row = 0 if abs(end - start) >= wide + ROOM_PT else 1
        while row and taken.get(row, -1e9) > middle - wide / 2:
            row += 1
        taken[row] = middle + wide / 2 + BETWEEN_PT
        rows.append(row)
    return rows


def distance_marks(feet: Sequence[float], y: float, apart: Sequence[str]) -> Iterator[Mark]:
    """The lines between neighbours of `feet`, at a height on the page, with their figures."""
    rows = rows_of_figures(feet, apart)
    for start, end, words, row in zip(feet, feet[1:], apart, rows, strict=False):
        if not row:
            yield from dimension_marks((start, y), (end, y), words, TYPE)
            continue
        yield Polyline(((start, y), (end, y)), LINE)
        for x in (start, end):
            yield Polyline(((x, y - TICK_PT), (x, y + TICK_PT)), LINE)
        at = ((start + end) / 2, y - row * LINE_PT - TYPE * 0.36)
        yield Label(at, words, TYPE, DARK)
