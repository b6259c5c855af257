"""The log of what was measured: a filled sheet, or work that was timed. One reader for both.

The log is a CSV file (RFC 4180; semicolons, tabs and decimal commas do as well, as spreadsheets
write them). Its first line names its columns: those of the sheet, or `kind`, `count` and what the
time is in (`minutes`, `hours` or `seconds`) for work that was timed. Others are for own use.
"""

from __future__ import annotations

import csv
import io
import math
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from buildplan.evaluation.evaluating import Evaluation
from buildplan.hands.forecast import MeasuringChoice, candidates
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
from buildplan.source.almost_numbers import number_in
from buildplan.source.csv_text import read_cell
from buildplan.source.mistake import nearest, quoted

COLUMNS = ("design", "what", "which", "count", "expected", "unit", "measured")
# what is measured by hand lies between
LEAST, MOST = 1e-6, 1e6
MOST_OFF = 2.0  # times what is foretold, or a part of it: from memory, and generous
_CLOCK = re.compile(r"([0-9]{1,2}):([0-5][0-9])(?::([0-5][0-9]))?")
METRES: Mapping[str, float] = {"mm": 0.001, "cm": 0.01, "m": 1.0, "in": 0.0254, "ft": 0.3048}
MINUTES: Mapping[str, float] = {"min": 1.0, "h": 60.0, "s": 1 / 60}
# the column of a log of times, by what it is in
TIMES: Mapping[str, float] = {"minutes": 1.0, "hours": 60.0, "seconds": 1 / 60}
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
        except _BadCellError as error:
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
    except (LogError, _BadCellError):
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
        raise _BadCellError(
            message_count(
                "has {number} cell, and must have {columns}",
                "has {number} cells, and must have {columns}",
                len(cells),
                columns=listing(needed),
            )
        )
    if any(cells[len(head) :]):
        raise _BadCellError(
            message(
                "has {number} cells below {columns}: write decimals with a point, or part the "
                "cells by semicolons",
                number=len(cells),
                columns=listing(one[:MOST_OF_A_HEAD] for one in head),
            )
        )
    return dict.fromkeys(head, "") | dict(zip(head, cells, strict=False))


class _BadCellError(Exception):
    def __init__(self, why: Message) -> None:
        super().__init__(why.text)
        self.why = why


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


def number(text: str) -> float:
    """A number above 0, with a decimal point or comma, that hands can come to. Raises ValueError
    for anything else."""
    value = float(text.replace(",", "."))
    if not math.isfinite(value) or not LEAST <= value <= MOST:
        raise ValueError(text)
    return value


def _number(row: Mapping[str, str], column: str) -> float:
    given = row.get(column, "")
    try:
        return number(given)
    except ValueError:
        right = _meant(given, column)
        if right:
            why = message(
                "{column} is to be a number above 0, and is {value}; write {right}",
                column=column,
                value=quoted(given),
                right=right,
            )
        else:
            why = message(
                "{column} is to be a number above 0, and is {value}",
                column=column,
                value=quoted(given),
            )
        raise _BadCellError(why) from None


def _meant(text: str, column: str) -> str:
    """The number that a cell almost is, as the log has to write it: `ten`, `12 min`, `0:12:30`."""
    clock = _CLOCK.fullmatch(text)
    if clock is not None and column in TIMES:
        hours, minutes, seconds = (float(part or 0) for part in clock.groups())
        return f"{round((60 * hours + minutes + seconds / 60) / TIMES[column], 4):g}"
    plain = number_in(text)
    try:
        return plain if plain and number(plain) else ""
    except ValueError:
        return ""


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
        names = [str(kind) for kind in Kind]
        guess = nearest(text, names)
        value, listed = quoted(text), listing(names, "or")
        if guess is None:
            why = message(
                "{value} is no kind of work; the kinds of work are {names}",
                value=value,
                names=listed,
            )
        else:
            why = message(
                "{value} is no kind of work; did you mean {right}? the kinds of work are {names}",
                value=value,
                right=guess,
                names=listed,
            )
        raise _BadCellError(why) from None


def _timed(row: Mapping[str, str], time: str) -> TimedWork:
    minutes = _number(row, time) * TIMES[time]
    return TimedWork(_kind(row["kind"]), _number(row, "count"), minutes)


def _measured(
    row: Mapping[str, str],
    known: dict[str, dict[tuple[str, str], MeasuringChoice]],
    piece_of: Callable[[str], Evaluation],
) -> Measurement:
    what = row["what"].lower()
    if what == WORK:
        minutes = _number(row, "measured") * _unit(row, MINUTES)
        return TimedWork(_kind(row["which"]), _number(row, "count"), minutes)
    value = _number(row, "measured") * _unit(row, METRES)
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
        raise _BadCellError(why)
    match found.measurement:
        case ChainOfTen() as chain:
            share = _number(row, "count") / 10
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
    raise _BadCellError(
        message(
            "{value} {unit} cannot be right where about {foretold} {unit} is foretold; measure "
            "again, or write it in {unit}",
            value=row["measured"],
            unit=unit,
            foretold=f"{foretold_m / METRES[unit]:.4g}",
        )
    )
