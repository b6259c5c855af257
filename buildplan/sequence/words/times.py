"""Sentences of the timetable, and of a log of own times."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from babel.dates import format_date

from buildplan.language.grammar import first_to_last, listed, number_ranges, written
from buildplan.language.speaking import locale, mark, say, say_count, say_in

# keys of the places where work is done: see timetable.Place
WORKSHOP = "workshop"
# what the minutes of a kind of work are counted by: see labour.PER
_PER = {
    "balloon": mark("{minutes} min a balloon"),
    "pair": mark("{minutes} min a pair"),
    "knot": mark("{minutes} min a knot"),
    "ring": mark("{minutes} min a ring"),
    "tag": mark("{minutes} min a tag"),
    "piece": mark("{minutes} min a piece"),
    "brace": mark("{minutes} min a brace"),
    "single": mark("{minutes} min a single"),
    "joint": mark("{minutes} min a joint"),
    "lock": mark("{minutes} min a lock"),
}


def duration(minutes: float) -> str:
    """`45 min`, `2 h`, `3 h 41 min`; to the minute, and never none at all."""
    hours, rest = divmod(max(1, round(minutes)), 60)
    if not hours:
        return say("{minutes} min", minutes=rest)
    if not rest:
        return say("{hours} h", hours=hours)
    return say("{hours} h {minutes} min", hours=hours, minutes=rest)


def clock(minutes: float) -> str:
    """Time since the start: `0:05`, `2:31`."""
    hours, rest = divmod(round(minutes), 60)
    return f"{hours}:{rest:02}"


def person_name(number: int) -> str:
    """One of a crew whose names are not known."""
    return say("person {number}", number=number)


def part(place: str, people: int, minutes: float, work: float, critical: float) -> str:
    """`Workshop: 1 h 50 min for 2 people (3 h 41 min of work). Not less than 5 min with any
    number of people.`"""
    where = say_in("place of work", "Site")
    if place == WORKSHOP:
        where = say_in("place of work", "Workshop")
    return say_count(
        "{place}: {time} for {number} person ({work} of work). Not less than {critical} with any"
        " number of people.",
        "{place}: {time} for {number} people ({work} of work). Not less than {critical} with any"
        " number of people.",
        people,
        place=where,
        time=duration(minutes),
        work=duration(work),
        critical=duration(critical),
    )


def span(name: str, start: float, finish: float, steps: Sequence[int], waits: float) -> str:
    """`person 1  0:00 to 0:24  steps 1 and 4`."""
    time, numbers = first_to_last(clock(start), clock(finish)), number_ranges(steps)
    done = say_count("step {steps}", "steps {steps}", len(steps), steps=numbers)
    if waits >= 0.5:
        done = say("{steps}, waiting {time} of it", steps=done, time=duration(waits))
    return f"{name}  {time}  {done}"


def waiting(name: str, minutes: float, for_names: Sequence[str]) -> str:
    """`person 2 waits 1 h 15 min in all, for person 1.`"""
    time = duration(minutes)
    if for_names:
        return say(
            "{name} waits {time} in all, for {others}.",
            name=name,
            time=time,
            others=listed(for_names),
        )
    return say("{name} waits {time} in all.", name=name, time=time)


def too_few(step: int, people: int) -> str:
    """`Step 75 takes 2 people: call for help.`"""
    return say("Step {step} takes {people} people: call for help.", step=step, people=people)


def start_by(place: str, moment: datetime) -> str:
    """`Start in the workshop by 09:10 on 3 May 2031.`"""
    message = mark("Start on site by {time} on {date}.")
    if place == WORKSHOP:
        message = mark("Start in the workshop by {time} on {date}.")
    date = format_date(moment, "long", locale=locale())
    return say(message, time=f"{moment:%H:%M}", date=date)


def reserve(share: float) -> str:
    """What the times to start hold back."""
    return say(
        "{hundredths} in a hundred are held back for breaks, bursts and mistakes.",
        hundredths=round(share * 100),
    )


# --- a log of own times -------------------------------------------------------------------


def log_line(line: int, message: str) -> str:
    """`line 4: there is no kind of work called "sizing"; ...`"""
    return say("line {line}: {message}", line=line, message=message)


def no_such_kind(kind: str, kinds: Sequence[str]) -> str:
    """A kind of work that is not known."""
    return say(
        'there is no kind of work called "{kind}"; the kinds are {kinds}',
        kind=kind,
        kinds=listed(kinds),
    )


def no_number(column: str, value: str) -> str:
    """A cell that should hold a number above 0."""
    return say('{column} is "{value}", and should be a number above 0', column=column, value=value)


def too_short(cells: int) -> str:
    """A row without enough cells."""
    return say_count(
        "has {number} cell, and should have kind, count and minutes",
        "has {number} cells, and should have kind, count and minutes",
        cells,
    )


def no_columns(missing: Sequence[str]) -> str:
    """A first line that does not name the columns."""
    return say_count(
        "the first line should name the columns kind, count and minutes; {missing} is not there",
        "the first line should name the columns kind, count and minutes; {missing} are not there",
        len(missing),
        missing=listed(missing),
    )


def learned(minutes: float, per: str, rows: int, count: int, before: float) -> str:
    """`0.25 min a pair, from 80 in 3 rows (0.2 before)`."""
    return say_count(
        "{time}, from {count} in {number} row ({before} before)",
        "{time}, from {count} in {number} rows ({before} before)",
        rows,
        time=say(_PER[per], minutes=_three_figures(minutes)),
        count=count,
        before=_three_figures(before),
    )


def _three_figures(value: float) -> str:
    """A number to three figures, without noughts at its end."""
    text = f"{value:.3g}"
    return written(f"{float(text):.0f}" if "e" in text else text)
