"""Tables, set by platypus and tagged row by row."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass
from functools import cached_property
from math import fsum
from typing import Any, TypeAlias

from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable, Table
from reportlab.platypus.tables import TableRenderCB

from buildplan.document.blocks import TICK_INDENT, Items, Shown, Words
from buildplan.document.layout import Columns
from buildplan.document.text import BODY, RULE, STRONG, TINT, column_widths, least_widths
from buildplan.drawing.fonts import REGULAR
from buildplan.drawing.marks import Picture

# However close its rows are, a table's columns stand this far from the lines between them.
LEAST_SIDE = 3.5

SHORT = 0.14  # share of a page: a table that is as short as this is not parted

# markup, or a flowable of its own
Cell: TypeAlias = str | Flowable


class _Tags(TableRenderCB):  # type: ignore[misc]
    """Opens and closes a table's elements while platypus draws it.

    The first row is of column heads, on every page again; with `row_heads` the first cell of
    the other rows heads its row (ISO 32000-1, 14.8.5.7: Scope).
    """

    def __init__(self, row_heads: bool) -> None:
        self._row_heads = row_heads
        self._opened: list[AbstractContextManager[Any]] = []
        self._row = 0

    def _open(self, context: AbstractContextManager[Any]) -> None:
        context.__enter__()
        self._opened.append(context)

    def _close(self) -> None:
        self._opened.pop().__exit__(None, None, None)

    def startTable(self, table: Table) -> None:  # noqa: N802 (names of reportlab's)
        self._open(table.canv.element("Table"))

    def startBG(self, table: Table) -> None:  # noqa: N802
        self._open(table.canv.artifact())

    def endBG(self, table: Table) -> None:  # noqa: N802
        self._close()

    def startRow(self, table: Table, row: int) -> None:  # noqa: N802
        self._row = row
        self._open(table.canv.element("TR"))

    def endRow(self, table: Table) -> None:  # noqa: N802
        self._close()

    def startCell(  # noqa: N802
        self, table: Table, row: int, column: int, *_: object
    ) -> None:
        if row == 0:
            self._open(table.canv.element("TH", scope="Column"))
        elif column == 0 and self._row_heads:
            self._open(table.canv.element("TH", scope="Row"))
        else:
            self._open(table.canv.element("TD"))

    def endCell(self, table: Table) -> None:  # noqa: N802
        self._close()

    def startLines(self, table: Table) -> None:  # noqa: N802
        self._open(table.canv.artifact())

    def endLines(self, table: Table) -> None:  # noqa: N802
        self._close()

    def endTable(self, table: Table) -> None:  # noqa: N802
        self._close()


@dataclass(frozen=True)
class Cells:
    """What a table holds: the head, the rows, and pictures by row (from 1) that stand at the
    right of the first cell."""

    head: tuple[Cell, ...]
    rows: tuple[tuple[Cell, ...], ...]
    pictures: Mapping[int, Picture]

    @cached_property
    def all(self) -> list[tuple[Cell, ...]]:
        """The head and the rows."""
        return [self.head, *self.rows]

    @cached_property
    def words(self) -> list[list[str]]:
        """The markup of all cells."""
        return [[cell if isinstance(cell, str) else "" for cell in row] for row in self.all]


class Grid(Flowable):  # type: ignore[misc]
    """A table; a cell is markup or a flowable.

    `shares` of the width go to the columns, none less than its longest word. A page that begins
    within it has its head again, no row is parted, and neither the first nor the last stands alone.
    `pad` is what is free above and below each row; a `ticked` one has a box to tick before it.
    """

    def __init__(
        self,
        head: Sequence[Cell],
        rows: Sequence[Sequence[Cell]],
        shares: Sequence[float],
        right_aligned: frozenset[int] = frozenset(),
        pad: float = 4.0,
        after: float = 12.0,
        *,
        pictures: Mapping[int, Picture] | None = None,
        row_heads: bool = False,
        ticked: bool = False,
    ) -> None:
        super().__init__()
        self._cells = Cells(tuple(head), tuple(map(tuple, rows)), pictures or {})
        self._shares, self._right, self._pad = tuple(shares), right_aligned, pad
        self._side = max(pad, LEAST_SIDE)
        self._row_heads, self._ticked = row_heads, ticked
        self.spaceAfter = after
        self._tables: dict[float, Table] = {}

    @cached_property
    def _least(self) -> list[float]:
        least = least_widths(self._cells.words, self._side)
        if self._ticked:
            least[0] += TICK_INDENT
        if self._cells.pictures:
            least[0] += max(picture.width for picture in self._cells.pictures.values()) + 2
        return least

    def _widths(self, width: float) -> list[float]:
        if fsum(self._least) > width and self._side > self._pad:  # room for words comes first
            self._side = self._pad
            del self._least
        wanted = [width * share / fsum(self._shares) for share in self._shares]
        return column_widths(wanted, self._least)

    def _cell(self, row: int, column: int, cell: Cell, width: float) -> list[Flowable]:
        if not isinstance(cell, str):
            return [cell]
        if self._ticked and row and not column:
            return [Items((cell,), ticked=True, gap=0, after=0)]
        style = STRONG if row == 0 else BODY
        if column in self._right:
            style = ParagraphStyle(f"{style.name}-right", parent=style, alignment=2)
        words = Words(cell, style, after=0)
        if column or row not in self._cells.pictures:
            return [words]
        picture = self._cells.pictures[row]
        shown = Shown(picture, after=0, align="right")
        inner = width - 2 * self._side
        shares = (inner - picture.width - 2, picture.width)
        return [Columns([[words], [shown]], shares, gap=2, after=0)]

    def _table(self, width: float) -> Table:
        if width in self._tables:
            return self._tables[width]
        widths, pad = self._widths(width), self._pad
        cells = [
            [self._cell(number, i, cell, widths[i]) for i, cell in enumerate(row)]
            for number, row in enumerate(self._cells.all)
        ]
        style = [
            ("FONTNAME", (0, 0), (-1, -1), REGULAR),
            ("VALIGN", (0, 0), (-1, -1), "TOP"),
            ("LEFTPADDING", (0, 0), (-1, -1), self._side),
            ("RIGHTPADDING", (0, 0), (-1, -1), self._side),
            ("TOPPADDING", (0, 0), (-1, -1), pad),
            ("BOTTOMPADDING", (0, 0), (-1, -1), pad),
            ("BACKGROUND", (0, 0), (-1, 0), TINT),
            ("LINEBELOW", (0, 0), (-1, -1), 0.5, RULE),
            ("NOSPLIT", (0, 0), (-1, min(2, len(cells) - 1))),
            ("NOSPLIT", (0, max(len(cells) - 2, 0)), (-1, -1)),
        ]
        self._tables[width] = Table(
            cells,
            widths,
            style=style,
            repeatRows=1,
            hAlign="LEFT",
            spaceAfter=self.spaceAfter,
            renderCB=_Tags(self._row_heads),
        )
        return self._tables[width]

    def wrap(self, width: float, room: float) -> tuple[float, float]:
        self.width = width
        _, self.height = self._table(width).wrapOn(self.canv, width, room)
        return width, self.height

    def split(self, width: float, room: float) -> list[Flowable]:
        page = self.canv.room_below
        if room < page and self._table(width).wrapOn(self.canv, width, page)[1] < SHORT * page:
            return []
        return list(self._table(width).splitOn(self.canv, width, room))

    def draw(self) -> None:
        self._table(self.width).drawOn(self.canv, 0, 0)
