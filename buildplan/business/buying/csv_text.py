"""Tables as comma-separated values, for spreadsheets and scripts."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence
from decimal import Decimal

Cell = str | int | float | Decimal | None

# A spreadsheet runs a cell that begins so as a formula (known as CSV injection, OWASP; from
# memory). An apostrophe before it makes it text.
FORMULA_SIGNS = ("=", "+", "-", "@", "\t", "\r", "\n")
# Spreadsheets tell UTF-8 by it; without it they take £ for two signs.
BYTE_ORDER_MARK = "\ufeff"


def csv_bytes(rows: Iterable[Sequence[Cell]]) -> bytes:
    """Rows as RFC 4180 has them (lines end in CR LF, quotes doubled), in UTF-8 with its mark.

    Text that a spreadsheet would run as a formula gets an apostrophe before it; numbers are
    written plainly, with a point, and None as an empty cell.
    """
    target = io.StringIO()
    writer = csv.writer(target, lineterminator="\r\n")
    writer.writerows([_cell(cell) for cell in row] for row in rows)
    return (BYTE_ORDER_MARK + target.getvalue()).encode("utf-8")


def _cell(cell: Cell) -> str:
    if cell is None:
        return ""
    if isinstance(cell, Decimal):
        return f"{cell:f}"
    if isinstance(cell, str) and cell.lstrip(" ").startswith(FORMULA_SIGNS):
        return f"'{cell}"
    return str(cell)
