"""The log of what was measured: a filled sheet, or work that was timed. One reader for both.

The log is a CSV file (RFC 4180; semicolons, tabs and decimal commas do as well, as spreadsheets
write them). Its first line names its columns: those of the sheet, or `kind`, `count` and what the
time is in (`minutes`, `hours` or `seconds`) for work that was timed. Others are for own use.
"""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from buildplan.evaluation.evaluating import Evaluation
from buildplan.hands.forecast import MeasuringChoice, candidates
from buildplan.hands.log_cells import (
    METRES,
    MINUTES,
    TIMES,
    BadCellError,
    kind_in,
    number_in_column,
    unit_in,
)
from buildplan.hands.model import (
    ChainOfTen,
    Measurement,
    RingAcross,
    StandingHeight,
    TimedWork,
)
from buildplan.language.messages import Message, listing, message, message_count
from buildplan.sequence.labour import Learned
from buildplan.sequence.model import Kind
from buildplan.source.csv_text import read_cell
from buildplan.source.mistake import quoted

COLUMNS = ("design", "what", "which", "count", "expected", "unit", "measured")
MOST_OFF = 2.0  # times what is foretold, or a part of it: from memory, and generous
TIMED = ("kind", "count")
CHAIN, RING, HEIGHT, WORK = "chain of ten", "ring", "height", "work"

MOST_OF_A_HEAD = 40  # signs that are told of what a column is called


@dataclass(frozen=True)
class BadLogRow:
    """A row of a log that cannot be read, and why."""

    line: int
    why: Message


class LogError(Exception):
    """A log that cannot be read: all that is wrong with it."""

    def __init__(self, rows: Sequence[BadLogRow]) -> None:
        super().__init__(f"{len(rows)} bad row(s)")
        self.rows = tuple(rows)


def what_of(candidate: MeasuringChoice) -> str:
    """What a log calls a thing that can be measured."""
    match candidate.measurement:
        case ChainOfTen():
            return CHAIN
        case RingAcross():
            return RING
        case StandingHeight():
            return HEIGHT


def read_log(text: str, piece_of: Callable[[str], Evaluation]) -> tuple[Measurement, ...]:
    """The measurements of a log. `piece_of` finds a design by what the log calls it, worked out
    without anybody's hands. Raises LogError with every bad row."""
    head, rows = _table(text)
    found: list[Measurement] = []
    bad: list[BadLogRow] = []
    time = _time_column(head)
    if time is None and not set(COLUMNS) <= set(head):
        raise LogError([BadLogRow(1, _no_columns(head))])
    known: dict[str, dict[tuple[str, str], MeasuringChoice]] = {}
    for line, cells in rows:
        try:
            row = _row(head, cells, (*TIMED, time) if time else ())
            if row[time or "measured"]:
                found.append(_timed(row, time) if time else _measured(row, known, piece_of))
        except BadCellError as error:
            bad.append(BadLogRow(line, error.why))
    if bad:
        raise LogError(bad)
    return tuple(found)


def is_unfilled(text: str) -> bool:
    """Whether a text is a sheet in which nothing is measured yet."""
    try:
        head, rows = _table(text)
        return set(COLUMNS) <= set(head) and not any(
            _row(head, cells, ())["measured"] for _, cells in rows
        )
    except (LogError, BadCellError):
        return False


def minutes_learned(measurements: Iterable[Measurement]) -> Mapping[Kind, Learned]:
    """Minutes of each kind of work, all its rows taken together: so that a long one counts for
    more than a short one."""
    rows: dict[Kind, list[TimedWork]] = {}
    for one in measurements:
        if isinstance(one, TimedWork):
            rows.setdefault(one.kind, []).append(one)
    found = {}
    for kind in Kind:
        if kind in rows:
            count = math.fsum(row.count for row in rows[kind])
            minutes = math.fsum(row.minutes for row in rows[kind])
            found[kind] = Learned(minutes / count, round(count), len(rows[kind]))
    return found


def _time_column(head: Sequence[str]) -> str | None:
    """The column of times in a log of times; None for a sheet."""
    if not set(TIMED) <= set(head):
        return None
    return next((name for name in TIMES if name in head), None)


def _no_columns(head: Sequence[str]) -> Message:
    if set(TIMED) & set(head):
        return message(
            "the first line must name the columns {kind} and {count}, and one that says what the "
            "times are in: {times}",
            kind=TIMED[0],
            count=TIMED[1],
            times=listing(list(TIMES), "or"),
        )
    return message(
        "the first line must name the columns {sheet}, or {timed}",
        sheet=listing(COLUMNS),
        timed=listing((*TIMED, "minutes")),
    )


def _row(head: Sequence[str], cells: Sequence[str], needed: Sequence[str]) -> dict[str, str]:
    """A row by its columns; one that is short of those that are `needed` is refused."""
    if len(cells) <= max((head.index(column) for column in needed), default=-1):
        raise BadCellError(
            message_count(
                "has {number} cell, and must have {columns}",
                "has {number} cells, and must have {columns}",
                len(cells),
                columns=listing(needed),
            )
        )
    if any(cells[len(head) :]):
        raise BadCellError(
            message(
                "has {number} cells below {columns}: write decimals with a point, or part the "
                "cells by semicolons",
                number=len(cells),
                columns=listing(one[:MOST_OF_A_HEAD] for one in head),
            )
        )
    return dict.fromkeys(head, "") | dict(zip(head, cells, strict=False))


def _table(text: str) -> tuple[list[str], list[tuple[int, list[str]]]]:
    """The heads of a log, and its rows that are not empty, each with its line. Raises LogError."""
    text = text.lstrip("\ufeff")
    first = text.partition("\n")[0]
    delimiter = max(",;\t", key=first.count)
    lines = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)
    try:
        head = [cell.strip().lower() for cell in next(lines, [])]
        rows = [(lines.line_num, [read_cell(cell).strip() for cell in cells]) for cells in lines]
    except csv.Error:
        why = message("this line is not written as CSV is: is a quotation mark closed?")
        raise LogError([BadLogRow(lines.line_num, why)]) from None
    return head, [(line, cells) for line, cells in rows if any(cells)]


def _timed(row: Mapping[str, str], time: str) -> TimedWork:
    minutes = number_in_column(row, time) * TIMES[time]
    return TimedWork(kind_in(row["kind"]), number_in_column(row, "count"), minutes)


def _measured(
    row: Mapping[str, str],
    known: dict[str, dict[tuple[str, str], MeasuringChoice]],
    piece_of: Callable[[str], Evaluation],
) -> Measurement:
    what = row["what"].lower()
    if what == WORK:
        minutes = number_in_column(row, "measured") * unit_in(row, MINUTES)
        return TimedWork(kind_in(row["which"]), number_in_column(row, "count"), minutes)
    value = number_in_column(row, "measured") * unit_in(row, METRES)
    design = row["design"]
    if design not in known:
        known[design] = {
            (what_of(one), one.which.strip()): one for one in candidates(piece_of(design))
        }
    found = known[design].get((what, row["which"]))
    if found is None:
        why = message(
            "{what} {which} is nothing that can be measured on {design}; see buildplan measure",
            what=quoted(what),
            which=quoted(row["which"]),
            design=quoted(design),
        )
        raise BadCellError(why)
    match found.measurement:
        case ChainOfTen() as chain:
            share = number_in_column(row, "count") / 10
            _refuse_slip(row, value, chain.length_m * share)
            return replace(chain, length_m=value / share)
        case RingAcross() as ring:
            _refuse_slip(row, value, ring.across_m)
            return replace(ring, across_m=value)
        case StandingHeight() as height:
            _refuse_slip(row, value, height.height_m)
            return replace(height, height_m=value)


def _refuse_slip(row: Mapping[str, str], value_m: float, foretold_m: float) -> None:
    """A length that no hands make: one in another unit, or with its point elsewhere."""
    if foretold_m / MOST_OFF <= value_m <= foretold_m * MOST_OFF:
        return
    unit = row["unit"].lower()
    raise BadCellError(
        message(
            "{value} {unit} cannot be right where about {foretold} {unit} is foretold; measure "
            "again, or write it in {unit}",
            value=row["measured"],
            unit=unit,
            foretold=f"{foretold_m / METRES[unit]:.4g}",
        )
    )
