"""Sentences of the timetable, and of a log of own times."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from buildplan.language.grammar import capital, listed
from buildplan.sequence.words.grammar import noun, numbered, several


def duration(minutes: float) -> str:
    """`45 min`, `2 h`, `3 h 41 min`; to the minute, and never none at all."""
    hours, rest = divmod(max(1, round(minutes)), 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def clock(minutes: float) -> str:
    """Time since the start: `0:05`, `2:31`."""
    hours, rest = divmod(round(minutes), 60)
    return f"{hours}:{rest:02}"


def part(place: str, people: int, minutes: float, work: float, critical: float) -> str:
    """`Workshop: 1 h 50 min for 2 people (3 h 41 min of work). Not less than 5 min with any
    number of people.`"""
    who = several(people, "person", "people")
    return (
        f"{capital(place)}: {duration(minutes)} for {who} ({duration(work)} of work). Not less than"
        f" {duration(critical)} with any number of people."
    )


def span(name: str, start: float, finish: float, steps: Sequence[int], waits: float) -> str:
    """`person 1  0:00 to 0:24  steps 1 and 4`."""
    waiting = f", waiting {duration(waits)} of it" if waits >= 0.5 else ""
    return f"{name}  {clock(start)} to {clock(finish)}  {numbered('step', steps)}{waiting}"


def waiting(name: str, minutes: float, for_names: Sequence[str]) -> str:
    """`person 2 waits 1 h 15 min in all, for person 1.`"""
    whom = f", for {listed(for_names)}" if for_names else ""
    return f"{name} waits {duration(minutes)} in all{whom}."


def too_few(step: int, people: int) -> str:
    """`Step 75 takes 2 people: call for help.`"""
    return f"Step {step} takes {people} people: call for help."


def start_by(place: str, moment: datetime) -> str:
    """`Start in the workshop by 09:10 on 3 May 2031.`"""
    where = "in the workshop" if place == "workshop" else "on site"
    return f"Start {where} by {moment:%H:%M} on {moment.day} {moment:%B %Y}."


def reserve(share: float) -> str:
    """What the times to start hold back."""
    return f"{round(share * 100)} in a hundred are held back for breaks, bursts and mistakes."


# --- a log of own times -------------------------------------------------------------------


def log_line(line: int, message: str) -> str:
    """`line 4: there is no kind of work called "sizing"; ...`"""
    return f"line {line}: {message}"


def no_such_kind(kind: str, kinds: Sequence[str]) -> str:
    """A kind of work that is not known."""
    return f'there is no kind of work called "{kind}"; the kinds are {listed(kinds)}'


def no_number(column: str, value: str) -> str:
    """A cell that should hold a number above 0."""
    return f'{column} is "{value}", and should be a number above 0'


def too_short(cells: int) -> str:
    """A row without enough cells."""
    return f"has {several(cells, 'cell')}, and should have kind, count and minutes"


def no_columns(missing: Sequence[str]) -> str:
    """A first line that does not name the columns."""
    return (
        f"the first line should name the columns kind, count and minutes; {listed(missing)}"
        f" {noun(len(missing), 'is', 'are')} not there"
    )


def learned(kind: str, minutes: float, per: str, rows: int, count: int, before: float) -> str:
    """`pair: 0.25 min a pair, from 80 in 3 rows (0.2 before)`."""
    return (
        f"{kind}: {minutes:.3g} min a {per}, from {count} in {several(rows, 'row')}"
        f" ({before:.3g} before)"
    )
