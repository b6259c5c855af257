"""The sheet that measurements are written on, as rows, and the log that comes back.

The log is a CSV file (RFC 4180; semicolons, tabs and decimal commas do as well, as spreadsheets
write them). Its first line names its columns: those of the sheet, or `kind`, `count` and `minutes`
for work that was timed.
"""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from buildplan.evaluation.evaluating import Evaluation
from buildplan.hands.forecast import Candidate, candidates
from buildplan.hands.learning import measured
from buildplan.hands.model import (
    ChainOfTen,
    Measurement,
    RingAcross,
    StandingHeight,
    Work,
)
from buildplan.language.messages import Message, listing, message
from buildplan.sequence.labour import units
from buildplan.sequence.model import Kind

COLUMNS = ("design", "what", "which", "count", "expected", "unit", "measured")
TIMED = ("kind", "count", "minutes")
METRES: Mapping[str, float] = {"mm": 0.001, "cm": 0.01, "m": 1.0, "in": 0.0254, "ft": 0.3048}
MINUTES: Mapping[str, float] = {"min": 1.0, "h": 60.0, "s": 1 / 60}
CHAIN, RING, HEIGHT, WORK = "chain of ten", "ring", "height", "work"


@dataclass(frozen=True)
class BadRow:
    """A row of a log that cannot be read, and why."""

    line: int
    why: Message


class LogError(Exception):
    """A log that cannot be read: all that is wrong with it."""

    def __init__(self, rows: Sequence[BadRow]) -> None:
        super().__init__(f"{len(rows)} bad row(s)")
        self.rows = tuple(rows)


def _what(candidate: Candidate) -> str:
    match candidate.measurement:
        case ChainOfTen():
            return CHAIN
        case RingAcross():
            return RING
        case StandingHeight():
            return HEIGHT


def sheet_rows(piece: Evaluation, design: str) -> list[tuple[str, ...]]:
    """What to measure on a piece, a row each with an empty last column, after the heads.

    `design` is what the file is called, as seen from where the log will be kept. Lengths are in
    the piece's own units.
    """
    unit = piece.units
    rows: list[tuple[str, ...]] = [COLUMNS]
    for one in candidates(piece):
        length = f"{measured(one.measurement) / METRES[unit]:.1f}"
        count = "10" if isinstance(one.measurement, ChainOfTen) else "1"
        rows.append((design, _what(one), one.which, count, length, unit, ""))
    counts: dict[Kind, int] = {}
    for step in piece.steps:
        for operation in step.operations:
            counts[operation.kind] = counts.get(operation.kind, 0) + units(operation)
    rows += [(design, WORK, str(kind), str(n), "", "min", "") for kind, n in counts.items()]
    return rows


def read_log(text: str, piece_of: Callable[[str], Evaluation]) -> tuple[Measurement, ...]:
    """The measurements of a log. `piece_of` finds a design by what the log calls it, worked out
    without anybody's hands. Raises LogError with every bad row."""
    head, rows = _table(text)
    found: list[Measurement] = []
    bad: list[BadRow] = []
    timed = set(TIMED) <= set(head)
    if not timed and not set(COLUMNS) <= set(head):
        why = message(
            "the first line must name the columns {sheet}, or {timed}",
            sheet=listing(COLUMNS),
            timed=listing(TIMED),
        )
        raise LogError([BadRow(1, why)])
    known: dict[str, dict[tuple[str, str], Candidate]] = {}
    for line, cells in rows:
        row = dict(zip(head, cells, strict=False))
        value = row.get("minutes" if timed else "measured", "")
        if not value:
            continue
        try:
            found.append(_timed(row) if timed else _measured(row, known, piece_of))
        except _BadCellError as error:
            bad.append(BadRow(line, error.why))
    if bad:
        raise LogError(bad)
    return tuple(found)


class _BadCellError(Exception):
    def __init__(self, why: Message) -> None:
        super().__init__(why.text)
        self.why = why


def _table(text: str) -> tuple[list[str], Iterator[tuple[int, list[str]]]]:
    """The heads of a log, and its rows that are not empty, each with its line."""
    text = text.lstrip("\ufeff")
    first = text.partition("\n")[0]
    delimiter = max(",;\t", key=first.count)
    lines = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)
    head = [cell.strip().lower() for cell in next(lines, [])]

    def rows() -> Iterator[tuple[int, list[str]]]:
        for cells in lines:
            if any(cell.strip() for cell in cells):
                yield lines.line_num, [cell.strip() for cell in cells]

    return head, rows()


def number(text: str) -> float:
    """A number above 0, with a decimal point or comma. Raises ValueError for anything else."""
    value = float(text.replace(",", "."))
    if not math.isfinite(value) or value <= 0:
        raise ValueError(text)
    return value


def _number(row: Mapping[str, str], column: str) -> float:
    try:
        return number(row.get(column, ""))
    except ValueError:
        why = message(
            "{column} is to be a number above 0, and is {value}",
            column=column,
            value=f'"{row.get(column, "")}"',
        )
        raise _BadCellError(why) from None


def _unit(row: Mapping[str, str], units: Mapping[str, float]) -> float:
    unit = row.get("unit", "").lower()
    if unit not in units:
        why = message("unit is to be {names}", names=listing(list(units), "or"))
        raise _BadCellError(why)
    return units[unit]


def _kind(text: str) -> Kind:
    try:
        return Kind(text.lower())
    except ValueError:
        why = message("the kinds of work are {names}", names=listing([str(k) for k in Kind], "or"))
        raise _BadCellError(why) from None


def _timed(row: Mapping[str, str]) -> Work:
    return Work(_kind(row["kind"]), _number(row, "count"), _number(row, "minutes"))


def _measured(
    row: Mapping[str, str],
    known: dict[str, dict[tuple[str, str], Candidate]],
    piece_of: Callable[[str], Evaluation],
) -> Measurement:
    what = row["what"].lower()
    if what == WORK:
        minutes = _number(row, "measured") * _unit(row, MINUTES)
        return Work(_kind(row["which"]), _number(row, "count"), minutes)
    value = _number(row, "measured") * _unit(row, METRES)
    design = row["design"]
    if design not in known:
        known[design] = {(_what(one), one.which): one for one in candidates(piece_of(design))}
    found = known[design].get((what, row["which"]))
    if found is None:
        why = message(
            "{what} {which} is nothing that can be measured on {design}; see buildplan measure",
            what=what,
            which=row["which"],
            design=design,
        )
        raise _BadCellError(why)
    match found.measurement:
        case ChainOfTen() as chain:
            return replace(chain, length_m=value * 10 / _number(row, "count"))
        case RingAcross() as ring:
            return replace(ring, across_m=value)
        case StandingHeight() as height:
            return replace(height, height_m=value)
