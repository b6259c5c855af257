"""When each job of a crew and each of its lines begins, as its bar in the schedule has it: the same
times stand at the head of the job and beside its lines."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from buildplan.booklet.crew.times import clock, timed_jobs, worked_at
from buildplan.document.blocks import Words
from buildplan.document.text import HEADING, QUIET, plain, unbroken
from buildplan.drawing.fonts import REGULAR
from buildplan.sequence.jobs import Job
from buildplan.sequence.stretches import Stretch
from buildplan.sequence.timetable import Timetable

TYPE = 10  # points; large print is for all of it


@dataclass(frozen=True)
class JobTimes:
    """When a crew is at its work, in minutes from the start of the part: the bars of each job, by
    its number, and when each step begins, by its number."""

    bars: Mapping[int, Sequence[tuple[float, float]]]
    begins: Mapping[int, float]


def job_times(work: Sequence[Job], plan: Timetable) -> JobTimes:
    """The times of a crew's jobs and steps."""
    taken: dict[int, list[Stretch]] = {}
    for part in plan.parts:
        for one in timed_jobs(part, work):
            taken.setdefault(one.job.number, []).append(one)
    return JobTimes(
        {number: worked_at(some) for number, some in taken.items()},
        {step: start for part in plan.parts for step, (start, _) in part.step_times.items()},
    )


def job_heading(name: str, job: Job, times: JobTimes) -> Words:
    """The name of a job as a heading, with the times of its bars, if it is long enough for one."""
    return _timed(name, times.bars.get(job.number, ()))


def jobs_heading(name: str, run: Sequence[Job], times: JobTimes) -> Words:
    """A name of several jobs as a heading, with when the first of them begins and the last ends."""
    bars = [bar for job in run for bar in times.bars.get(job.number, ())]
    whole = (min(start for start, _ in bars), max(finish for _, finish in bars)) if bars else None
    return _timed(name, [] if whole is None else [whole])


def _timed(name: str, bars: Sequence[tuple[float, float]]) -> Words:
    told = ", ".join(f"{clock(start)} – {clock(finish)}" for start, finish in bars)
    markup = f"{plain(name)} &nbsp;{quietly(told)}" if told else plain(name)
    return Words(markup, HEADING, "H2", after=5.0, keep=True)


def line_starts(steps: Sequence[int], times: JobTimes) -> list[str]:
    """When each line of a job begins, as markup, by the number of its first step: empty at the
    first, which begins with its job, and where a line begins with the one before it."""
    begun = [clock(times.begins[step]) for step in steps]
    return [
        quietly(at) if place and at != begun[place - 1] else "" for place, at in enumerate(begun)
    ]


def later_bars(job: Job, steps: Sequence[int], times: JobTimes) -> list[str]:
    """For each line of a job, by the number of its first step, when it begins, as markup, if it is
    the first in a bar after the first bar of the job; empty at any other."""
    found, bars = [], times.bars.get(job.number, ())
    seen = {0}
    for step in steps:
        bar = max(
            (n for n, (start, _) in enumerate(bars) if start <= times.begins[step]), default=0
        )
        found.append("" if bar in seen else quietly(clock(times.begins[step])))
        seen.add(bar)
    return found


def quietly(told: str) -> str:
    """Times in small print, as markup, which stay on one line."""
    return f'<font name="{REGULAR}" size="{TYPE}" color="{QUIET}">{unbroken(plain(told))}</font>'
