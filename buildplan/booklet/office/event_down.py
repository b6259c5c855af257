"""Taking down after an event: a row for each piece and kind of work, with its time and people."""

from __future__ import annotations

from collections.abc import Mapping

from reportlab.platypus import Flowable

from buildplan.booklet.office.event_chart import clock
from buildplan.business.events.event_plan import EventPlan
from buildplan.business.events.taking_down import (
    DownKind,
    DownRow,
    Manner,
    away_by,
    minutes_down,
    taking_down,
)
from buildplan.document.blocks import Words
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, STRONG, plain, strong
from buildplan.instructions.times import duration
from buildplan.language.messages import mark
from buildplan.language.phrases import people_counted
from buildplan.language.voice import Voice
from buildplan.source.csv_text import Cell

CLOSE_ROWS = 2.5
WHAT: Mapping[DownKind, str] = {
    DownKind.CLEAR: mark("Clear people away, safety glasses on, exits open"),
    DownKind.UNTIE: mark("Untie the ballast while somebody holds it"),
    DownKind.LAY: mark("Untie what holds it from above or behind; lay it flat"),
    DownKind.LET_OUT: mark("Snip each neck beside its knot; count into the bags"),
    DownKind.SWEEP: mark("Look over the floor for scraps; tie the bags shut"),
}
# what is said of those that come down part by part
IN_PARTS: Mapping[tuple[DownKind, Manner], str] = {
    (DownKind.LAY, Manner.IN_PARTS): mark(
        "Take it apart, what is on top first, as its booklet says"
    ),
    (DownKind.UNTIE, Manner.IN_PARTS): mark(
        "Untie the ballast of each part while somebody holds it; lay it flat"
    ),
}


def down_blocks(plan: EventPlan, voice: Voice) -> list[Flowable]:
    """The table of taking down, when the vehicles leave, and what its times rest on."""
    rows = taking_down(plan)
    table = [
        (
            _when(plan, row, voice),
            "" if row.copy is None else plain(row.copy.name),
            plain(_what(row, voice)),
            voice.whole(row.people),
            duration(voice, row.minutes * row.people),
        )
        for row in rows
    ]
    head = (
        voice.say("When"),
        voice.say("Piece"),
        voice.say("What"),
        voice.say("People"),
        voice.say("Work"),
    )
    blocks: list[Flowable] = [
        Words(plain(down_words(plan, voice)), STRONG, after=6),
        Grid(head, table, (86, 122, 176, 44, 60), frozenset({3, 4}), pad=CLOSE_ROWS, after=6),
    ]
    for copy in {row.copy.name: row for row in rows if row.short and row.copy}.values():
        assert copy.copy is not None, "what takes too many hands is a piece"
        words = voice.say(
            "{piece}: laying it flat takes {people} people. Call for help.",
            piece=copy.copy.name,
            people=copy.people,
        )
        blocks.append(Words(plain(words), STRONG))
    rests = voice.say(
        "Times are estimates, with the same reserve as the build; the event file's taking_down "
        "gives your own. One piece at a time: nothing half down is left alone, and nobody bursts "
        "balloons near people."
    )
    return [*blocks, Words(rests, SMALL)]


def down_words(plan: EventPlan, voice: Voice) -> str:
    """How long taking down lasts, in a sentence; by the clock where the closing time is known."""
    lasts = duration(voice, minutes_down(taking_down(plan)))
    times = away_by(plan)
    if times is None:
        return voice.say(
            "Taking down: {time} for {people}, then carry out and load (estimate).",
            time=lasts,
            people=people_counted(voice, plan.event.crew),
        )
    begins, away = times
    return voice.say(
        "Taking down from {from_time}: {time} for {people}; loaded and away by {away} (estimate).",
        from_time=f"{begins:%H:%M}",
        time=lasts,
        people=people_counted(voice, plan.event.crew),
        away=f"{away:%H:%M}",
    )


def down_rows(plan: EventPlan, voice: Voice) -> list[list[Cell]]:
    """Rows of the timetable: see `timetable_rows`. Minutes count from the closing; without one
    there are no times of day."""
    after = voice.say_in("where work is done", "after")
    found: list[list[Cell]] = []
    times = away_by(plan)
    for row in taking_down(plan):
        ends = row.start + row.minutes
        first, last = (
            ("", "") if times is None else (clock(times[0], row.start), clock(times[0], ends))
        )
        piece = "" if row.copy is None else row.copy.name
        people = voice.say_count("{number} person", "{number} people", row.people)
        minutes: list[Cell] = [round(row.start), round(ends)]
        found.append([None, after, first, last, *minutes, piece, None, _what(row, voice), people])
    return found


def _what(row: DownRow, voice: Voice) -> str:
    return voice.say(IN_PARTS.get((row.kind, row.manner), WHAT[row.kind]))


def _when(plan: EventPlan, row: DownRow, voice: Voice) -> str:
    times = away_by(plan)
    ends = row.start + row.minutes
    if times is None:
        return strong(voice.say("{first} to {last} min", first=round(row.start), last=round(ends)))
    return strong(f"{clock(times[0], row.start)} – {clock(times[0], ends)}")
