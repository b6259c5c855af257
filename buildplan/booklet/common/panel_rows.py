"""Pictures in rows, with what is to be ticked under them, beside them or below."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, fsum

from reportlab.platypus import Flowable

from buildplan.document.blocks import TICK_INDENT, Items, Shown
from buildplan.document.layout import Columns
from buildplan.document.text import BODY, plain
from buildplan.document.undrawn import Showable
from buildplan.drawing.fonts import text_width

GAP, ROW_GAP = 10.0, 3.0
LEAST_BESIDE = 150.0  # so wide is room beside pictures for rows of joints
NEARLY = 0.01
LOOSE = 1.08  # lines end where a word does: so much longer is what they hold
# Rows of so many letters, and so many of them, stand two abreast on a page so wide; points.
TICK_PT = TICK_INDENT + 0.5  # what stands before a row
SHORT_ROW, FEWEST_ABREAST, ABREAST_FROM = 42, 4, 420.0


def panel(picture: Showable, rows: Sequence[str]) -> list[Flowable]:
    """A picture, and under it what is to be ticked of it."""
    wide = picture.width
    items = Items([unbroken_row(row, wide) for row in rows], ticked=True, gap=2.0, after=2.0)
    return [Shown(picture, after=4.0), *([items] if rows else [])]


def unbroken_row(row: str, width: float) -> str:
    """A row to be ticked in a column so wide, as markup: its name on a line of its own where only
    the rest of it fits on one."""
    width -= TICK_PT
    name, mark, rest = row.partition(": ")
    fits = text_width(row, BODY.fontSize) <= width
    if fits or not mark or text_width(rest, BODY.fontSize) > width:
        return plain(row)
    return f"{plain(name)}:<br/>{plain(rest)}"


def abreast(rows: Sequence[str], measure: float) -> list[Flowable]:
    """Rows to be ticked; those after the long ones two abreast where all are short and several."""
    first = next((n for n, row in enumerate(rows) if len(row) <= SHORT_ROW), len(rows))
    long, short = rows[:first], rows[first:]
    fit = len(short) >= FEWEST_ABREAST and max(map(len, short)) <= SHORT_ROW
    if not fit or measure < ABREAST_FROM:
        return _listed(rows)
    half = -(-len(short) // 2)
    columns = [
        [Items([plain(row) for row in some], ticked=True, gap=ROW_GAP, after=0.0)]
        for some in (short[:half], short[half:])
    ]
    above = _listed(long) if long else []
    return [*above, Columns(columns, gap=GAP, after=ROW_GAP)]


def in_columns(rows: Sequence[str], measure: float) -> list[Flowable]:
    """Rows to be ticked, down one column after another, as many as their words leave room for."""
    longest = max((text_width(row, BODY.fontSize) for row in rows), default=0.0)
    across = max(1, min(len(rows), int((measure + GAP) / (longest + TICK_PT + GAP))))
    deep = -(-len(rows) // across)
    columns = [
        [Items([plain(row) for row in rows[at : at + deep]], ticked=True, gap=ROW_GAP, after=0.0)]
        for at in range(0, len(rows), deep)
    ]
    return [Columns(columns, gap=GAP, after=ROW_GAP)] if rows else []


def rows_high(rows: Sequence[str], wide: float) -> float:
    """About how high rows to be ticked are in a column so wide, in points."""
    room = wide - TICK_PT
    lines = [max(1, ceil(LOOSE * text_width(row, BODY.fontSize) / room)) for row in rows]
    return fsum(BODY.leading * count + ROW_GAP for count in lines)


def _listed(rows: Sequence[str]) -> list[Flowable]:
    return [Items([plain(row) for row in rows], ticked=True, gap=ROW_GAP, after=ROW_GAP)]


def in_rows(
    cells: Sequence[Sequence[Flowable]], measure: float, ticked: Sequence[str] = ()
) -> list[Flowable]:
    """Cells that each begin with a picture, side by side while there is room; what is to be
    `ticked` stands in the room that the last row of them leaves, or below it."""
    rows: list[list[Sequence[Flowable]]] = []
    left = 0.0
    for cell in cells:
        wide = cell[0].picture.width
        if not rows or wide > left + NEARLY:
            rows.append([])
            left = measure
        rows[-1].append(cell)
        left -= wide + GAP
    found: list[Flowable] = []
    below = ticked
    for row in rows:
        widths = [cell[0].picture.width for cell in row]
        rest = measure - fsum(widths) - GAP * len(widths)
        filled = row is rows[-1] and rest >= LEAST_BESIDE
        columns = [*row, _listed(ticked) if filled else []] if rest > 0 else row
        shares = (*widths, rest) if rest > 0 else tuple(widths)
        found.append(Columns(columns, shares, gap=GAP, after=4.0))
        below = () if filled else ticked
    return [*found, *(abreast(below, measure) if below else ())]
