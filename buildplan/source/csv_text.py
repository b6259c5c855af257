"""Tables as comma-separated values, for spreadsheets and scripts."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence
from decimal import Decimal

Cell = str | int | float | Decimal | None

# A spreadsheet runs a cell that begins so as a formula (known as CSV injection, OWASP; from
# memory). An apostrophe before it makes it text.
FORMULA_SIGNS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
# What begins like one, and what begins like one that has its apostrophe: that gets a further one,
# so that what is read back is what was written.
_FORMULA = re.compile(r"[\s']*[=+@＝＋－＠-]|[ ']*[\t\r\n]")
# In countries that write 1,5 a semicolon parts cells, quotes or not; so may a tab or a line end.
_FORMULA_WITHIN = re.compile(r"([;\t\r\n]\s*)(?='*[=+@＝＋－＠-])")
_TEXT_WITHIN = re.compile(r"([;\t\r\n]\s*)'(?='*[=+@＝＋－＠-])")
# Spreadsheets tell UTF-8 by it; without it they take £ for two signs.
BYTE_ORDER_MARK = "\ufeff"


def csv_bytes(rows: Iterable[Sequence[Cell]]) -> bytes:
    """Rows as RFC 4180 has them (lines end in CR LF, quotes doubled), in UTF-8 with its mark.

    Text that a spreadsheet would run as a formula, or a part of it that could come to stand in a
    cell of its own, gets an apostrophe before it; numbers are written plainly, with a point, and
    None as an empty cell.
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
    if not isinstance(cell, str):
        return str(cell)
    text = _FORMULA_WITHIN.sub(r"\1'", cell)
    return f"'{text}" if _FORMULA.match(cell) else text


def read_cell(text: str) -> str:
    """The text of a cell that `csv_bytes` has written, as it was before."""
    if text.startswith("'") and _FORMULA.match(text[1:]):
        text = text[1:]
    return _TEXT_WITHIN.sub(r"\1", text)
