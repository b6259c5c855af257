"""Several pieces at one event as one job: their steps together, one shopping list, one
timetable for one crew."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from buildplan.business.buying.shopping import ShoppedFor, ShoppingList, shopping_list
from buildplan.design.building import build_framework
from buildplan.design.event import Event
from buildplan.design.measures import Units, units_read
from buildplan.design.model import Design
from buildplan.evaluation.evaluating import Evaluation
from buildplan.evaluation.told_figures import told_figures
from buildplan.instructions.model import StepWords
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.sequence.jobs import Job, jobs
from buildplan.sequence.labour import MINUTES
from buildplan.sequence.model import Operation, Step
from buildplan.sequence.timetable import Timetable, WorkPlace, crew_of, latest_starts, timetable
from buildplan.sequence.work_names import in_piece

# An event names no day: any will do to count back from.
_SOME_DAY = datetime(2000, 1, 10)


@dataclass(frozen=True)
class Copy:
    """One piece that is built: a design is built as many times as the event says.

    `design` is its design's place in the event, `number` its own among the `of` that are built.
    `steps` are those of its booklet, numbered on through all pieces of the event so that they
    can be told apart; `jobs` are those steps as a crew takes them, numbered as in its booklet;
    `words` are what they say. One that is `built` in the workshop is carried whole.
    """

    name: str
    design: int
    number: int
    of: int
    built: bool
    book: Evaluation
    steps: tuple[Step, ...]
    jobs: tuple[Job, ...]
    words: tuple[StepWords, ...]

    def told(self, step: Step) -> StepWords:
        """What one of its steps says."""
        return self.words[step.number - self.steps[0].number]

    @property
    def people(self) -> int:
        """The most people that any of its work takes at once."""
        return max(operation.people for step in self.steps for operation in step.operations)


@dataclass(frozen=True)
class EventPlan:
    """An event worked out. `starts` says when each part must be begun at the latest; `units` are
    the reader's: those of the event file, else of its first design, where it is read in both.
    The vehicles go in `trips`, the last of them back in time for the work on site."""

    event: Event
    copies: tuple[Copy, ...]
    shopping: ShoppingList
    timetable: Timetable
    starts: Mapping[WorkPlace, datetime]
    units: Units
    trips: int = 1

    @property
    def opening(self) -> datetime:
        """When all stands, on the same calendar as `starts`."""
        return opening_of(self.event)

    @property
    def firsts(self) -> tuple[Copy, ...]:
        """The first of the pieces of each design."""
        return tuple(copy for copy in self.copies if copy.number == 1)

    @property
    def people(self) -> int:
        """The people that the day takes: the crew, or more where some work takes more at once."""
        return max(self.event.crew, *(copy.people for copy in self.copies))


def opening_of(event: Event) -> datetime:
    """The event's opening time, on a day that stands for any."""
    return moment_on(event.opening)


def moment_on(time: str) -> datetime:
    """A time of day, `17:30`, on the day of the opening, which stands for any."""
    hours, minutes = time.split(":")
    return _SOME_DAY.replace(hour=int(hours), minute=int(minutes))


def event_shopping(
    event: Event, designs: Sequence[tuple[str, Design]], voice: Voice
) -> ShoppingList:
    """What is bought for all pieces of an event; `designs` are its own, in order, each with what
    its file is called. Raises DesignProblemsError where they disagree."""
    needed = [
        ShoppedFor(file, design, build_framework(design), piece.count)
        for (file, design), piece in zip(designs, event.designs, strict=True)
    ]
    return shopping_list(needed, units_read(voice, needed[0].design.units))


def plan_event(
    event: Event, books: Sequence[Evaluation], shopping: ShoppingList, voice: Voice
) -> EventPlan:
    """Plan the event; `books` are those of its designs, in order."""
    copies = copies_of(event, books, voice)
    planned = timetable(
        [step for copy in copies for step in copy.steps],
        crew_of(event.crew),
        labour_of(event, [book.design for book in books]),
        piece_of={step.number: copy.name for copy in copies for step in copy.steps},
        built=[copy.name for copy in copies if copy.built],
    )
    way = timedelta(minutes=event.loading + event.travel + event.unloading)
    starts = latest_starts(planned, opening_of(event), way)
    units = units_read(voice, event.units or shopping.units)
    return EventPlan(event, copies, shopping, planned, starts, units)


def copies_of(event: Event, books: Sequence[Evaluation], voice: Voice) -> tuple[Copy, ...]:
    """Every piece that is built, each as many times over as the event says."""
    copies: list[Copy] = []
    for place, (book, piece) in enumerate(zip(books, event.designs, strict=True)):
        figures = told_figures(book.framework, book.shape, book.units, book.constants)
        words = tell_steps(book.steps, book.framework, book.units, voice, figures)
        for number in range(1, piece.count + 1):
            before = sum(len(copy.steps) for copy in copies)
            steps = numbered_on(book.steps, before, f"piece {len(copies) + 1}")
            built = piece.travels == "built"
            name = _name(book, number, piece.count, voice)
            copies.append(
                Copy(name, place, number, piece.count, built, book, steps, jobs(steps), words)
            )
    return tuple(copies)


def _name(book: Evaluation, number: int, count: int, voice: Voice) -> str:
    name = book.facts.name
    if count == 1:
        return name
    return voice.say("{piece}, {number} of {count}", piece=name, number=number, count=count)


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
