"""Telling the jobs of a crew."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from buildplan.instructions.model import StepWords
from buildplan.language.messages import mark
from buildplan.language.phrases import first_to_last
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import Job, JobKind, RunRow
from buildplan.sequence.model import Kind, Step

Told = Callable[[Step], StepWords]

_TITLES: Mapping[JobKind, str] = {
    JobKind.SIZE_AND_PAIR: mark("Size and pair"),
    JobKind.LOCKS: mark("Locks"),
    JobKind.LONG_CHAINS: mark("Long chains"),
    JobKind.SHORT_CHAINS: mark("Short chains"),
    JobKind.LAY_OUT: mark("Lay out"),
    JobKind.LOOK_OVER: mark("Look over"),
    JobKind.STAND_UP: mark("Stand up"),
}


@dataclass(frozen=True)
class JobRow:
    """A row of a run as a table shows it: what it is called, the kinds of cell that it finishes,
    and how it is tied."""

    name: str
    cell: str
    words: str


def job_row(voice: Voice, row: RunRow, told: Told) -> JobRow:
    """What a table says of a row; `told` gives the words of its step."""
    if row.kind is Kind.TURN_OVER:
        turned = voice.say("the whole piece, all hands at once")
        return JobRow(voice.say("Turn over"), "", turned)
    words = told(row.step)
    if row.kind is Kind.LAY:
        return JobRow(words.title, "", "")
    turn, head = row.place
    said = words.turns[turn].rows[head]
    return JobRow(
        said.name, ", ".join(voice.tell(kind.words.called) for kind in row.cells), said.said
    )


def job_title(voice: Voice, job: Job, told: Told) -> str:
    """What a job is called: `Long chains`, `Braces 1 to 9`."""
    if job.kind is not JobKind.RUN:
        return voice.say(_TITLES[job.kind])
    braces = [row.brace for row in job.rows if row.brace is not None]
    if len(braces) == 1:
        return voice.say("Brace {number}", number=braces[0])
    if braces:
        return voice.say("Braces {first} to {last}", first=braces[0], last=braces[-1])
    rows = [row for row in job.rows if row.kind in (Kind.SINGLE, Kind.JOIN)] or job.rows
    if len(rows) > 1 and all(row.kind is Kind.JOIN and len(row.joints) == 1 for row in rows):
        first, last = rows[0].joints[0], rows[-1].joints[0]
        return voice.say("Joints {first} to {last}", first=first, last=last)
    if len(rows) > 1 and all(row.kind is Kind.JOIN and len(row.joints) > 1 for row in rows):
        ends = ["+".join(row.joints) for row in (rows[0], rows[-1])]
        return voice.say("Tie {first} to {last}", first=ends[0], last=ends[1])
    if all(row.kind is Kind.SINGLE for row in rows) and len(rows) > 1:
        return voice.say("Tie together")
    names = [job_row(voice, row, told).name for row in rows]
    return names[0] if len(names) == 1 else first_to_last(voice, names[0], names[-1])
