"""Learning minutes per kind of operation from a log of own times.

The log is a CSV file (RFC 4180) whose first line names its columns: `kind`, `count` and
`minutes`, and any others for own use. A row says that so many of a kind (balloons sized,
pairs tied, knots of chains, ... see labour.PER) took so many minutes of one pair of hands.
"""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from buildplan.language.messages import Message, listing, message, message_count
from buildplan.sequence.model import Kind

COLUMNS = ("kind", "count", "minutes")


@dataclass(frozen=True)
class Learned:
    """Minutes per unit of a kind, all its rows taken together: total minutes over total
    count, so that a long row counts for more than a short one."""

    minutes: float
    count: int
    rows: int


class TimeLogError(Exception):
    """A log that cannot be read: every mistake in it, one line each."""

    def __init__(self, mistakes: Sequence[Message]) -> None:
        super().__init__(f"{len(mistakes)} mistakes")
        self.mistakes = tuple(mistakes)


@dataclass(frozen=True)
class _Row:
    kind: Kind
    count: float
    minutes: float


def learn_minutes(log: str) -> Mapping[Kind, Learned]:
    """Minutes by kind from the text of a log. Raises TimeLogError with every mistake."""
    lines = csv.reader(io.StringIO(log.lstrip("\ufeff"), newline=""))
    header = [cell.strip().lower() for cell in next(lines, [])]
    missing = [column for column in COLUMNS if column not in header]
    if missing:
        raise TimeLogError([_log_line(1, _no_columns(missing))])
    places = [header.index(column) for column in COLUMNS]
    mistakes: list[Message] = []
    rows: dict[Kind, list[_Row]] = {}
    for cells in lines:
        if any(cell.strip() for cell in cells):
            read, wrong = _row(cells, places)
            mistakes += [_log_line(lines.line_num, mistake) for mistake in wrong]
            if read is not None:
                rows.setdefault(read.kind, []).append(read)
    if mistakes:
        raise TimeLogError(mistakes)
    return {kind: _together(rows[kind]) for kind in Kind if kind in rows}


def _row(cells: Sequence[str], places: Sequence[int]) -> tuple[_Row | None, list[Message]]:
    if len(cells) <= max(places):
        return None, [_too_short(len(cells))]
    kind, count, minutes = (cells[place].strip() for place in places)
    wrong: list[Message] = []
    if kind.lower() not in list(Kind):
        wrong.append(_no_such_kind(kind, list(Kind)))
    numbers = []
    for column, value in (("count", count), ("minutes", minutes)):
        number = _number(value)
        if number is None:
            wrong.append(_no_number(column, value))
        else:
            numbers.append(number)
    if wrong:
        return None, wrong
    return _Row(Kind(kind.lower()), *numbers), []


def _number(value: str) -> float | None:
    try:
        number = float(value)
    except ValueError:
        return None
    return number if math.isfinite(number) and number > 0 else None


def _together(rows: Sequence[_Row]) -> Learned:
    count = sum(row.count for row in rows)
    return Learned(sum(row.minutes for row in rows) / count, round(count), len(rows))


def _log_line(line: int, mistake: Message) -> Message:
    """`line 4: there is no kind of work called "sizing"; ...`"""
    return message("line {line}: {message}", line=line, message=mistake)


def _no_such_kind(kind: str, kinds: Sequence[str]) -> Message:
    """A kind of work that is not known."""
    return message(
        'there is no kind of work called "{kind}"; the kinds are {kinds}',
        kind=kind,
        kinds=listing(kinds),
    )


def _no_number(column: str, value: str) -> Message:
    """A cell that should hold a number above 0."""
    return message(
        '{column} is "{value}", and should be a number above 0', column=column, value=value
    )


def _too_short(cells: int) -> Message:
    """A row without enough cells."""
    return message_count(
        "has {number} cell, and should have kind, count and minutes",
        "has {number} cells, and should have kind, count and minutes",
        cells,
    )


def _no_columns(missing: Sequence[str]) -> Message:
    """A first line that does not name the columns."""
    return message_count(
        "the first line should name the columns kind, count and minutes; {missing} is not there",
        "the first line should name the columns kind, count and minutes; {missing} are not there",
        len(missing),
        missing=listing(missing),
    )
