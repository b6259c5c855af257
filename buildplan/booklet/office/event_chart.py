"""Where each person is at an event, as lanes of bars over the clock."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta

from buildplan.booklet.crew.times import (
    BAR,
    BARS,
    FOOT,
    GRID,
    GRIDS,
    INK,
    LANE,
    LANE_GAP,
    MOST_LANES,
    NAME,
    SOFT,
    TYPE,
    lane_name,
    lane_words,
    place_name,
)
from buildplan.business.events.day import five_minutes_before
from buildplan.business.events.event_plan import EventPlan
from buildplan.document.text import plain, strong
from buildplan.drawing.fonts import text_width
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Polyline
from buildplan.language.phrases import clauses
from buildplan.language.voice import Voice
from buildplan.sequence.timetable import PlaceWork

# Minutes: shorter stays and waits are not told one by one in the chart.
SHORT_STAY = 2.0
# In place of a piece's number: who helps now here, now there.
ANYWHERE = 0
PLUS = "+"
# Points: a narrower bar has no room for its number beside its neighbours'.
LEAST_BAR = 9.0

Stay = tuple[int, float, float]
"""Where a person is (the number of the piece, from 1), from when, until when, in minutes."""


def stays(plan: EventPlan, part: PlaceWork, person: int, short: float = SHORT_STAY) -> list[Stay]:
    """Where a person is. Work on one piece that follows on is one stay; those that are `short`
    are put together as ANYWHERE."""
    piece_of = {
        step.number: i for i, copy in enumerate(plan.copies, start=1) for step in copy.steps
    }
    spans = [span for span in part.spans if span.person == person]
    at = _joined((piece_of[span.steps[0]], span.start, span.finish) for span in spans)
    return _joined(
        (piece if finish - start > short else ANYWHERE, start, finish)
        for piece, start, finish in at
    )


def _joined(stays: Iterable[Stay]) -> list[Stay]:
    """Stays at one place that follow one another as one."""
    found: list[Stay] = []
    for piece, start, finish in stays:
        if found and found[-1][0] == piece and start - found[-1][2] < SHORT_STAY:
            found[-1] = (piece, found[-1][1], finish)
        else:
            found.append((piece, start, finish))
    return found


def chart(plan: EventPlan, part: PlaceWork, width: float, voice: Voice) -> Picture:
    """A lane for each person, a bar with its number for each piece that they are at, and the
    time of day below."""
    people = sorted({span.person for span in part.spans})[:MOST_LANES]
    height = LANE * len(people) + FOOT
    scale = (width - NAME - 14) / part.minutes
    starts = five_minutes_before(plan.starts[part.place])
    marks = _clock_marks(part, starts, scale, height)
    told = []
    for lane, person in enumerate(people):
        low = height - LANE * (lane + 1) + LANE_GAP
        marks.append(Label((0, low + 5), lane_name(person, voice), TYPE, INK, anchor="start"))
        bars = stays(plan, part, person, max(SHORT_STAY, LEAST_BAR / scale))
        marks += _lane(bars, low, scale)
        told.append(lane_words(person, _told(plan, bars, starts, voice), voice))
    title = f"{place_name(part.place, voice)}."
    return Picture(width, height, tuple(marks), " ".join([title, *told]))


def _clock_marks(part: PlaceWork, starts: datetime, scale: float, height: float) -> list[Mark]:
    every = next((g for g in GRIDS if g * scale >= 38), GRIDS[-1])
    marks: list[Mark] = []
    for i in range(int(part.minutes // every) + 1):
        x = NAME + i * every * scale
        marks.append(Polyline(((x, FOOT - 3), (x, height)), Ink(stroke=GRID, width=0.6)))
        marks.append(Label((x, 3), clock(starts, i * every), TYPE, SOFT))
    return marks


def _lane(bars: Sequence[Stay], low: float, scale: float) -> list[Mark]:
    """The bars of one person, each with its number: within it where it has room, else above it,
    clear of the number before."""
    marks: list[Mark] = []
    taken = 0.0
    for piece, start, finish in bars:
        left, right = NAME + start * scale, NAME + finish * scale
        box = ((left, low), (right, low), (right, low + BAR), (left, low + BAR))
        marks.append(Polyline(box, Ink(BARS[piece % 2], INK, 0.7), closed=True))
        number = str(piece) if piece != ANYWHERE else PLUS
        wide = text_width(number, TYPE, bold=True) + 2
        at = ((left + right) / 2, low + BAR / 2 - TYPE * 0.36)
        if right - left <= wide:
            at = (max(at[0], taken + wide / 2), low + BAR + 2)
            taken = at[0] + wide / 2
        marks.append(Label(at, number, TYPE, INK, bold=True))
    return marks


def _told(plan: EventPlan, bars: Sequence[Stay], starts: datetime, voice: Voice) -> str:
    return ", ".join(
        voice.say(
            "{piece} from {start} to {finish}",
            piece=_where(plan, piece, voice),
            start=clock(starts, start),
            finish=clock(starts, finish),
        )
        for piece, start, finish in bars
    )


def _where(plan: EventPlan, piece: int, voice: Voice) -> str:
    if piece == ANYWHERE:
        return voice.say("wherever hands are wanted")
    return plan.copies[piece - 1].name


def legend(plan: EventPlan, picture: Picture, voice: Voice) -> str:
    """What the numbers in the bars of a chart mean."""
    names = clauses(
        voice, (f"{strong(str(i))} {plain(c.name)}" for i, c in enumerate(plan.copies, 1))
    )
    words = voice.say("Numbers in the bars are pieces: {pieces}.", pieces=names)
    if any(isinstance(mark, Label) and mark.text == PLUS for mark in picture.marks):
        helps = voice.say("{plus} helps wherever hands are wanted.", plus=strong(PLUS))
        return f"{words} {helps}"
    return words


def clock(starts: datetime, minutes: float) -> str:
    """The time of day so many minutes after a start."""
    return f"{starts + timedelta(minutes=round(minutes)):%H:%M}"
