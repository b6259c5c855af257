"""Who does what when at an event: jobs in order, where each person is, and as rows."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta

from reportlab.platypus import Flowable

from buildplan.booklet.crew.times import (
    BAR,
    BARS,
    FOOT,
    GRID,
    GRIDS,
    INK,
    LANE,
    MOST_LANES,
    NAME,
    SOFT,
    TYPE,
    Timed,
    lane_name,
    lane_words,
    place_name,
    place_word,
    timed_jobs,
    who_words,
)
from buildplan.business.buying.csv_text import Cell
from buildplan.business.events.event_plan import Copy, EventPlan, five_minutes_before, moment_words
from buildplan.document.blocks import Shown, Words, heading
from buildplan.document.tables import Grid
from buildplan.document.text import SMALL, STRONG, plain, strong
from buildplan.drawing.fonts import text_width
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Polyline
from buildplan.instructions.jobs import job_title
from buildplan.language.grammar import sentences
from buildplan.language.speaking import say, say_in, spoken_voice, whole
from buildplan.sequence.jobs import Job
from buildplan.sequence.timetable import Part

# Minutes: shorter stays and waits are not told one by one in the chart.
SHORT_STAY = 2.0
# In place of a piece's number: who helps now here, now there.
ANYWHERE = 0


@dataclass(frozen=True)
class TimedJob:
    """A job of a piece in the timetable. `number` is its own throughout the event, in the order
    in which jobs begin; the piece's crew booklet knows it by `timed.job.number`."""

    number: int
    copy: Copy
    timed: Timed


def timed(plan: EventPlan, part: Part) -> list[TimedJob]:
    """All jobs of a part, of every piece, in the order in which they begin."""
    found = [
        (one.start, i, one, copy)
        for i, copy in enumerate(plan.copies)
        for one in timed_jobs(part, copy.jobs)
    ]
    found.sort(key=lambda one: one[:2])
    earlier = plan.timetable.parts[: plan.timetable.parts.index(part)]
    before = sum(len(timed_jobs(p, copy.jobs)) for p in earlier for copy in plan.copies)
    return [TimedJob(before + n, copy, one) for n, (_, _, one, copy) in enumerate(found, start=1)]


def times_blocks(plan: EventPlan, measure: float) -> list[Flowable]:
    blocks: list[Flowable] = []
    for part in plan.timetable.parts:
        blocks += _part(plan, part, measure)
    for step, people in plan.timetable.short_of.items():
        copy, job = _job_of(plan, step)
        words = say(
            "{piece}, {job} ({number}): takes {people} people. Call for help.",
            piece=copy.name,
            job=job_title(spoken_voice(), job, copy.told),
            number=job.number,
            people=people,
        )
        blocks.append(Words(plain(words), STRONG))
    blocks.append(
        Words(
            say(
                "Times count back from the opening and are the latest (estimates). The job's "
                "number in brackets is that of the piece's crew booklet. Who has nothing to start "
                "holds the work, hands on locks and picks up."
            ),
            SMALL,
        )
    )
    return blocks


def _title(one: TimedJob) -> str:
    return job_title(spoken_voice(), one.timed.job, one.copy.told)


def _job_of(plan: EventPlan, number: int) -> tuple[Copy, Job]:
    return next(
        (copy, job)
        for copy in plan.copies
        for job in copy.jobs
        if any(step.number == number for step in job.steps)
    )


def _part(plan: EventPlan, part: Part, measure: float) -> list[Flowable]:
    found = timed(plan, part)
    starts = five_minutes_before(plan.starts[part.place])
    rows = tuple(
        (
            strong(whole(one.number)),
            f"{_clock(starts, one.timed.start)} – {_clock(starts, one.timed.finish)}",
            plain(one.copy.name),
            f"{plain(_title(one))} ({one.timed.job.number})",
            plain(who_words(one.timed, spoken_voice())),
        )
        for one in found
    )
    begins = moment_words(starts, plan.opening)
    return [
        heading(
            say("{part}, from {time}", part=place_name(part.place, spoken_voice()), time=begins)
        ),
        Shown(chart(plan, part, measure)),
        Words(_legend(plan, part), SMALL, after=8),
        Grid(
            (say("No."), say("When"), say("Piece"), say("Job"), say("Who")),
            rows,
            (26, 76, 118, 110, 150),
        ),
    ]


def stays(plan: EventPlan, part: Part, person: int) -> list[tuple[int, float, float]]:
    """Where a person is: the number of the piece (from 1), from when, until when. Work on one
    piece that follows on is one stay; short ones are put together as ANYWHERE."""
    piece_of = {
        step.number: i for i, copy in enumerate(plan.copies, start=1) for step in copy.steps
    }
    spans = [span for span in part.spans if span.person == person]
    at = _joined((piece_of[span.steps[0]], span.start, span.finish) for span in spans)
    return _joined(
        (piece if finish - start > SHORT_STAY else ANYWHERE, start, finish)
        for piece, start, finish in at
    )


def _joined(stays: Iterable[tuple[int, float, float]]) -> list[tuple[int, float, float]]:
    """Stays at one place that follow one another as one."""
    found: list[tuple[int, float, float]] = []
    for piece, start, finish in stays:
        if found and found[-1][0] == piece and start - found[-1][2] < SHORT_STAY:
            found[-1] = (piece, found[-1][1], finish)
        else:
            found.append((piece, start, finish))
    return found


def chart(plan: EventPlan, part: Part, width: float) -> Picture:
    """A lane for each person, a bar with its number for each piece that they are at, and the
    time of day below."""
    people = sorted({span.person for span in part.spans})[:MOST_LANES]
    height = LANE * len(people) + FOOT
    scale = (width - NAME - 14) / part.minutes
    starts = five_minutes_before(plan.starts[part.place])
    every = next((g for g in GRIDS if g * scale >= 38), GRIDS[-1])
    marks: list[Mark] = []
    for i in range(int(part.minutes // every) + 1):
        x = NAME + i * every * scale
        marks.append(Polyline(((x, FOOT - 3), (x, height)), Ink(stroke=GRID, width=0.6)))
        marks.append(Label((x, 3), _clock(starts, i * every), TYPE, SOFT))
    told = []
    for lane, person in enumerate(people):
        low = height - LANE * (lane + 1) + (LANE - BAR) / 2
        marks.append(
            Label((0, low + 5), lane_name(person, spoken_voice()), TYPE, INK, anchor="start")
        )
        bars = stays(plan, part, person)
        for piece, start, finish in bars:
            left, right = NAME + start * scale, NAME + finish * scale
            box = ((left, low), (right, low), (right, low + BAR), (left, low + BAR))
            marks.append(Polyline(box, Ink(BARS[piece % 2], INK, 0.7), closed=True))
            name = str(piece) if piece != ANYWHERE else "+"
            if right - left > text_width(name, TYPE, bold=True) + 2:
                at = ((left + right) / 2, low + BAR / 2 - TYPE * 0.36)
                marks.append(Label(at, name, TYPE, INK, bold=True))
        where = ", ".join(
            say(
                "{piece} from {start} to {finish}",
                piece=_where(plan, piece),
                start=_clock(starts, start),
                finish=_clock(starts, end),
            )
            for piece, start, end in bars
        )
        told.append(lane_words(person, where, spoken_voice()))
    return Picture(
        width, height, tuple(marks), sentences(f"{place_name(part.place, spoken_voice())}.", *told)
    )


def _where(plan: EventPlan, piece: int) -> str:
    return plan.copies[piece - 1].name if piece != ANYWHERE else say("wherever hands are wanted")


def _legend(plan: EventPlan, part: Part) -> str:
    names = "; ".join(f"{strong(str(i))} {plain(c.name)}" for i, c in enumerate(plan.copies, 1))
    people = range(len(plan.timetable.crew))
    floating = any(at == ANYWHERE for person in people for at, *_ in stays(plan, part, person))
    helping = say("{plus} helps wherever hands are wanted.", plus=strong("+")) if floating else ""
    return sentences(say("Numbers in the bars are pieces: {pieces}.", pieces=names), helping)


def _clock(starts: datetime, minutes: float) -> str:
    return f"{starts + timedelta(minutes=round(minutes)):%H:%M}"


def timetable_rows(plan: EventPlan) -> list[list[Cell]]:
    """The timetable as rows of a table, the head first. Minutes count from the start of the
    part, clock times from when it must start at the latest."""
    rows: list[list[Cell]] = [
        [
            say_in("column", "no"),
            say_in("column", "place"),
            say_in("column", "from"),
            say_in("column", "to"),
            say_in("column", "start min"),
            say_in("column", "end min"),
            say_in("column", "piece"),
            say_in("column", "job"),
            say_in("column", "title"),
            say_in("column", "who"),
        ]
    ]
    for part in plan.timetable.parts:
        starts = five_minutes_before(plan.starts[part.place])
        rows += [
            [
                one.number,
                place_word(part.place, spoken_voice()),
                _clock(starts, one.timed.start),
                _clock(starts, one.timed.finish),
                round(one.timed.start),
                round(one.timed.finish),
                one.copy.name,
                one.timed.job.number,
                _title(one),
                who_words(one.timed, spoken_voice()),
            ]
            for one in timed(plan, part)
        ]
    return rows
