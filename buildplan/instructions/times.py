"""Sentences of times: how long, who when, and what a log of own times has taught."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from babel.dates import format_date

from buildplan.language.messages import mark
from buildplan.language.phrases import first_to_last, number_ranges
from buildplan.language.voice import Voice
from buildplan.sequence.timetable import WorkPlace

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


def duration(voice: Voice, minutes: float) -> str:
    """`45 min`, `2 h`, `3 h 41 min`; to the minute, and never none at all."""
    hours, rest = divmod(max(1, round(minutes)), 60)
    if not hours:
        return voice.say("{minutes} min", minutes=rest)
    if not rest:
        return voice.say("{hours} h", hours=hours)
    return voice.say("{hours} h {minutes} min", hours=hours, minutes=rest)


def clock(minutes: float) -> str:
    """Time since the start: `0:05`, `2:31`."""
    hours, rest = divmod(round(minutes), 60)
    return f"{hours}:{rest:02}"


def person_name(voice: Voice, number: int) -> str:
    """One of a crew whose names are not known."""
    return voice.say("person {number}", number=number)


def part(
    voice: Voice, place: WorkPlace, people: int, minutes: float, work: float, critical: float
) -> str:
    """`Workshop: 1 h 50 min for 2 people (3 h 41 min of work). Not less than 5 min with any
    number of people.`"""
    where = voice.say_in("place of work", "Site")
    if place is WorkPlace.WORKSHOP:
        where = voice.say_in("place of work", "Workshop")
    return voice.say_count(
        "{place}: {time} for {number} person ({work} of work). Not less than {critical} with any"
        " number of people.",
        "{place}: {time} for {number} people ({work} of work). Not less than {critical} with any"
        " number of people.",
        people,
        place=where,
        time=duration(voice, minutes),
        work=duration(voice, work),
        critical=duration(voice, critical),
    )


def span(
    voice: Voice, name: str, start: float, finish: float, steps: Sequence[int], waits: float
) -> str:
    """`person 1  0:00 to 0:24  steps 1 and 4`."""
    time, numbers = first_to_last(voice, clock(start), clock(finish)), number_ranges(voice, steps)
    done = voice.say_count("step {steps}", "steps {steps}", len(steps), steps=numbers)
    if waits >= 0.5:
        done = voice.say("{steps}, waiting {time} of it", steps=done, time=duration(voice, waits))
    return f"{name}  {time}  {done}"


def waiting(voice: Voice, name: str, minutes: float, for_names: Sequence[str]) -> str:
    """`person 2 waits 1 h 15 min in all, for person 1.`"""
    time = duration(voice, minutes)
    if for_names:
        return voice.say(
            "{name} waits {time} in all, for {others}.",
            name=name,
            time=time,
            others=voice.listed(for_names),
        )
    return voice.say("{name} waits {time} in all.", name=name, time=time)


def too_few(voice: Voice, step: int, people: int) -> str:
    """`Step 75 takes 2 people: call for help.`"""
    return voice.say("Step {step} takes {people} people: call for help.", step=step, people=people)


def start_by(voice: Voice, place: WorkPlace, moment: datetime) -> str:
    """`Start in the workshop by 09:10 on 3 May 2031.`"""
    message = mark("Start on site by {time} on {date}.")
    if place is WorkPlace.WORKSHOP:
        message = mark("Start in the workshop by {time} on {date}.")
    date = format_date(moment, "long", locale=voice.locale)
    return voice.say(message, time=f"{moment:%H:%M}", date=date)


def reserve(voice: Voice, share: float) -> str:
    """What the times to start hold back."""
    return voice.say(
        "{hundredths} in a hundred are held back for breaks, bursts and mistakes.",
        hundredths=round(share * 100),
    )


def learned(voice: Voice, minutes: float, per: str, rows: int, count: int, before: float) -> str:
    """`0.25 min a pair, from 80 in 3 rows (0.2 before)`."""
    return voice.say_count(
        "{time}, from {count} in {number} row ({before} before)",
        "{time}, from {count} in {number} rows ({before} before)",
        rows,
        time=voice.say(_PER[per], minutes=_three_figures(voice, minutes)),
        count=count,
        before=_three_figures(voice, before),
    )


def _three_figures(voice: Voice, value: float) -> str:
    """A number to three figures, without noughts at its end."""
    text = f"{value:.3g}"
    return voice.written(f"{float(text):.0f}" if "e" in text else text)
