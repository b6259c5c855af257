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

from buildplan.sequence.labour import MINUTES, PER
from buildplan.sequence.model import Kind
from buildplan.sequence.words import times as words

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

    def __init__(self, mistakes: Sequence[str]) -> None:
        super().__init__("; ".join(mistakes))
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
        raise TimeLogError([words.log_line(1, words.no_columns(missing))])
    places = [header.index(column) for column in COLUMNS]
    mistakes: list[str] = []
    rows: dict[Kind, list[_Row]] = {}
    for cells in lines:
        if any(cell.strip() for cell in cells):
            read, wrong = _row(cells, places)
            mistakes += [words.log_line(lines.line_num, mistake) for mistake in wrong]
            if read is not None:
                rows.setdefault(read.kind, []).append(read)
    if mistakes:
        raise TimeLogError(mistakes)
    return {kind: _together(rows[kind]) for kind in Kind if kind in rows}


def _row(cells: Sequence[str], places: Sequence[int]) -> tuple[_Row | None, list[str]]:
    if len(cells) <= max(places):
        return None, [words.too_short(len(cells))]
    kind, count, minutes = (cells[place].strip() for place in places)
    wrong = []
    if kind.lower() not in list(Kind):
        wrong.append(words.no_such_kind(kind, list(Kind)))
    numbers = []
    for column, value in (("count", count), ("minutes", minutes)):
        number = _number(value)
        if number is None:
            wrong.append(words.no_number(column, value))
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


def labour_lines(learned: Mapping[Kind, Learned]) -> list[str]:
    """What was learned, as a `labour` block to paste into a design file."""
    lines = ["labour:"]
    for kind, one in learned.items():
        said = words.learned(one.minutes, PER[kind], one.rows, one.count, MINUTES[kind])
        lines.append(f"  {kind}: {one.minutes:.4g}  # {said}")
    return lines
