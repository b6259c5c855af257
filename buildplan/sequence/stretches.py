"""When each job of a crew is worked at: stretches without a break, and who does what in them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from buildplan.sequence.jobs import Job
from buildplan.sequence.model import Kind
from buildplan.sequence.timetable import SHORT, PlaceWork, WorkSpan


@dataclass(frozen=True)
class Stretch:
    """A job of a piece (its place among those given) worked at without a break: minutes from the
    start of the part, and the kinds of work of each person (a place in the crew)."""

    piece: int
    job: Job
    start: float
    finish: float
    acts: Mapping[int, tuple[Kind, ...]]


@dataclass(frozen=True)
class _Stay:
    person: int
    job: tuple[int, int]  # piece and place of the job in it
    start: float
    finish: float
    kinds: tuple[Kind, ...]


def stretches(part: PlaceWork, pieces: Sequence[Sequence[Job]]) -> tuple[Stretch, ...]:
    """All work of a part, in the order in which it begins; a job that is left and taken up again
    has several stretches. `pieces` are the jobs of each piece, their steps numbered throughout."""
    job_of = {
        step.number: (piece, place)
        for piece, jobs in enumerate(pieces)
        for place, job in enumerate(jobs)
        for step in job.steps
    }
    people = sorted({span.person for span in part.spans})
    stays = [
        stay
        for person in people
        for stay in _stays([span for span in part.spans if span.person == person], job_of)
    ]
    by_job: dict[tuple[int, int], list[_Stay]] = {}
    for stay in _without_odd_ends(stays):
        by_job.setdefault(stay.job, []).append(stay)
    found = [
        Stretch(piece, pieces[piece][place], *times)
        for (piece, place), own in sorted(by_job.items())
        for times in _together(own)
    ]
    return tuple(sorted(found, key=lambda one: (one.start, one.piece, one.job.number)))


def _stays(spans: Sequence[WorkSpan], job_of: Mapping[int, tuple[int, int]]) -> list[_Stay]:
    """One person's work, job by job; what a span tells together belongs to its last job."""
    found: list[_Stay] = []
    for span in spans:
        job = max(job_of[step] for step in span.steps)
        stay = _Stay(span.person, job, span.start, span.finish, span.kinds)
        if found and found[-1].job == job and _meet(found[-1], stay):
            found[-1] = _joined(found[-1], stay)
        else:
            found.append(stay)
    return found


def _meet(before: _Stay, after: _Stay) -> bool:
    return after.start - before.finish < SHORT


def _joined(before: _Stay, after: _Stay) -> _Stay:
    kinds = tuple(dict.fromkeys((*before.kinds, *after.kinds)))
    return replace(after, start=before.start, kinds=kinds)


def _without_odd_ends(stays: Sequence[_Stay]) -> Iterator[_Stay]:
    """Stays, where a short one (the odd balloon of a chain) is told with what the same person does
    next at the same piece, if its job is told elsewhere."""
    long = Counter(stay.job for stay in stays if stay.finish - stay.start >= SHORT)
    held: _Stay | None = None
    for stay in stays:
        if held is not None:
            goes_on = held.person == stay.person and held.job[0] == stay.job[0]
            if goes_on and _meet(held, stay):
                stay = _joined(held, stay)
            else:
                yield held
        held = stay if stay.finish - stay.start < SHORT and long[stay.job] else None
        if held is None:
            yield stay
    if held is not None:
        yield held


def _together(
    stays: Sequence[_Stay],
) -> Iterator[tuple[float, float, Mapping[int, tuple[Kind, ...]]]]:
    """The stays of all people at one job, put together where they meet."""
    groups: list[list[_Stay]] = []
    for stay in sorted(stays, key=lambda one: (one.start, one.person)):
        if groups and stay.start - max(one.finish for one in groups[-1]) < SHORT:
            groups[-1].append(stay)
        else:
            groups.append([stay])
    for group in groups:
        acts: dict[int, tuple[Kind, ...]] = {}
        for stay in sorted(group, key=lambda one: one.person):
            acts[stay.person] = tuple(dict.fromkeys((*acts.get(stay.person, ()), *stay.kinds)))
        yield min(one.start for one in group), max(one.finish for one in group), acts
