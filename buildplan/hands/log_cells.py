"""What a cell of a log says: a number, a unit, a kind of work; or why it says none."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping

from buildplan.language.messages import Message, listing, message
from buildplan.sequence.model import Kind
from buildplan.source.almost_numbers import number_in
from buildplan.source.mistake import nearest, quoted

# what is measured by hand lies between
LEAST, MOST = 1e-6, 1e6
_CLOCK = re.compile(r"([0-9]{1,2}):([0-5][0-9])(?::([0-5][0-9]))?")
METRES: Mapping[str, float] = {"mm": 0.001, "cm": 0.01, "m": 1.0, "in": 0.0254, "ft": 0.3048}
MINUTES: Mapping[str, float] = {"min": 1.0, "h": 60.0, "s": 1 / 60}
# the column of a log of times, by what it is in
TIMES: Mapping[str, float] = {"minutes": 1.0, "hours": 60.0, "seconds": 1 / 60}


class BadCellError(Exception):
    """A cell, or a row of them, that cannot be read, and why."""

    def __init__(self, why: Message) -> None:
        super().__init__(why.text)
        self.why = why


def number(text: str) -> float:
    """A number above 0, with a decimal point or comma, that hands can come to. Raises ValueError
    for anything else."""
    value = float(text.replace(",", "."))
    if not math.isfinite(value) or not LEAST <= value <= MOST:
        raise ValueError(text)
    return value


def number_in_column(row: Mapping[str, str], column: str) -> float:
    """The number of a row in a column. Raises BadCellError."""
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
        raise BadCellError(why) from None


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


def unit_in(row: Mapping[str, str], units: Mapping[str, float]) -> float:
    """What the unit of a row is in the SI, or in minutes. Raises BadCellError."""
    unit = row.get("unit", "").lower()
    if unit not in units:
        why = message("unit is to be {names}", names=listing(list(units), "or"))
        raise BadCellError(why)
    return units[unit]


def kind_in(text: str) -> Kind:
    """The kind of work that a cell names. Raises BadCellError."""
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
        raise BadCellError(why) from None
