"""Several pieces at one event as one job: their steps together, one shopping list, one
timetable for one crew, one load list."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from buildplan.business.buying.shopping import ShoppingList
from buildplan.design.event import Event
from buildplan.design.model import Design
from buildplan.evaluation.evaluating import Evaluation
from buildplan.instructions.model import StepWords
from buildplan.instructions.telling import tell_steps
from buildplan.language.speaking import say, spoken_voice
from buildplan.sequence.jobs import Job, jobs
from buildplan.sequence.labour import MINUTES
from buildplan.sequence.model import Operation, Step
from buildplan.sequence.timetable import Place, Timetable, crew_of, latest_starts, timetable
from buildplan.sequence.work_names import in_piece

# An event names no day: any will do to count back from.
_SOME_DAY = datetime(2000, 1, 10)


@dataclass(frozen=True)
class Copy:
    """One piece that is built: a design is built as many times as the event says.

    `steps` are those of its booklet, numbered on through all pieces of the event so that they
    can be told apart; `jobs` are those steps as a crew takes them, numbered as in its booklet;
    `words` are what they say.
    """

    name: str
    book: Evaluation
    steps: tuple[Step, ...]
    jobs: tuple[Job, ...]
    words: tuple[StepWords, ...]

    def told(self, step: Step) -> StepWords:
        """What one of its steps says."""
        return self.words[step.number - self.steps[0].number]


@dataclass(frozen=True)
class EventPlan:
    """An event worked out. `starts` says when each part must be begun at the latest."""

    event: Event
    copies: tuple[Copy, ...]
    shopping: ShoppingList
    timetable: Timetable
    starts: Mapping[Place, datetime]

    @property
    def opening(self) -> datetime:
        """When all stands, on the same calendar as `starts`."""
        return opening_of(self.event)

    @property
    def leave(self) -> datetime | None:
        """When to leave the workshop; None when nothing is done on site."""
        site = self.starts.get(Place.SITE)
        return site and site - timedelta(minutes=self.event.travel)


def opening_of(event: Event) -> datetime:
    """The event's opening time, on a day that stands for any."""
    hours, minutes = event.opening.split(":")
    return _SOME_DAY.replace(hour=int(hours), minute=int(minutes))


def plan_event(event: Event, books: Sequence[Evaluation], shopping: ShoppingList) -> EventPlan:
    """Plan the event; `books` are those of its designs, in order."""
    copies = copies_of(
        [(book, piece.count) for book, piece in zip(books, event.designs, strict=True)]
    )
    planned = timetable(
        [step for copy in copies for step in copy.steps],
        crew_of(event.crew),
        labour_of(event, [book.design for book in books]),
        piece_of={step.number: copy.name for copy in copies for step in copy.steps},
    )
    travel = timedelta(minutes=event.travel)
    starts = latest_starts(planned, opening_of(event), travel)
    return EventPlan(event, copies, shopping, planned, starts)


def copies_of(pieces: Sequence[tuple[Evaluation, int]]) -> tuple[Copy, ...]:
    """Every piece that is built, each `count` times over."""
    copies: list[Copy] = []
    for book, count in pieces:
        for number in range(1, count + 1):
            name = book.facts.name
            if count > 1:
                name = say("{piece}, {number} of {count}", piece=name, number=number, count=count)
            before = sum(len(copy.steps) for copy in copies)
            steps = numbered_on(book.steps, before, f"piece {len(copies) + 1}")
            words = tell_steps(book.steps, book.framework, book.units, spoken_voice())
            copies.append(Copy(name, book, steps, jobs(steps), words))
    return tuple(copies)


def numbered_on(steps: Sequence[Step], before: int, piece: str) -> tuple[Step, ...]:
    """The steps with `before` added to their numbers, and all things they make and need marked
    as those of `piece`, so that pieces do not take one another's parts."""

    def on(number: int | None) -> int | None:
        return None if number is None else number + before

    def own(operation: Operation) -> Operation:
        return replace(
            operation,
            id=in_piece(piece, operation.id),
            needs=tuple(in_piece(piece, thing) for thing in operation.needs),
            makes=tuple(in_piece(piece, thing) for thing in operation.makes),
        )

    return tuple(
        replace(
            step,
            number=step.number + before,
            needs=tuple(number + before for number in step.needs),
            alike=on(step.alike),
            side_work=on(step.side_work),
            repeats=on(step.repeats),
            turns=tuple(
                replace(turn, operations=tuple(own(op) for op in turn.operations))
                for turn in step.turns
            ),
        )
        for step in steps
    )


def labour_of(event: Event, designs: Sequence[Design]) -> dict[str, float]:
    """Minutes by kind for the event's crew: its own; else the longest that a design gives or
    that is remembered for those designs that give none."""
    longest: dict[str, float] = {}
    for kind, remembered in MINUTES.items():
        given = [{str(k): v for k, v in design.labour.items()} for design in designs]
        if any(str(kind) in labour for labour in given):
            longest[str(kind)] = max(labour.get(str(kind), remembered) for labour in given)
    return longest | {str(kind): minutes for kind, minutes in event.labour.items()}


def moment_words(moment: datetime, opening: datetime) -> str:
    """A time of day as seen from the day of the opening: `07:40`, `the day before, 16:05`."""
    days = (opening.date() - moment.date()).days
    time = f"{moment:%H:%M}"
    if days == 0:
        return time
    if days == 1:
        return say("the day before, {time}", time=time)
    return say("{days} days before, {time}", days=days, time=time)


def five_minutes_before(moment: datetime) -> datetime:
    """The whole five minutes at or before a moment: a time to start is never put later."""
    return moment.replace(minute=moment.minute - moment.minute % 5, second=0, microsecond=0)
