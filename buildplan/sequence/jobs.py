"""The steps of a piece as a crew takes them: a few jobs, the braces in runs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum, auto

from buildplan.framework.cells import STRAIGHT, CellKind
from buildplan.sequence.model import Kind, Operation, Step, Turn
from buildplan.sequence.rounds import HEADS
from buildplan.sequence.shared_work import PORTABLE

# Braces in a run: at least so many unless the piece has fewer, and no more than so many unless
# one step of the plan has them. Measured by what a table beside one picture can hold.
LEAST_BRACES, MOST_BRACES = 10, 14
# A last run shorter than this goes with the one before it.
SHORT_RUN = 4


class JobKind(Enum):
    """What a job is about."""

    SIZE_AND_PAIR = auto()
    LOCKS = auto()
    LONG_CHAINS = auto()
    SHORT_CHAINS = auto()
    LAY_OUT = auto()
    RUN = auto()
    LOOK_OVER = auto()
    STAND_UP = auto()


@dataclass(frozen=True)
class RunRow:
    """One brace, single or joint of a run (or a laying, or a turning over): the step and the
    operation that it is, the kinds of cell that it finishes, and the joints that are locked with
    it. `place` is its turn in the step and its place among the heads of that turn."""

    step: Step
    head: Operation
    place: tuple[int, int]
    cells: tuple[CellKind, ...] = ()
    locks: tuple[str, ...] = ()

    @property
    def kind(self) -> Kind:
        """What hands do in it."""
        return self.head.kind

    @property
    def joints(self) -> tuple[str, ...]:
        """The joints where hands work."""
        return self.head.joints

    @property
    def brace(self) -> int | None:
        """The number of a brace in the piece."""
        return self.head.brace if self.kind is Kind.BRACE else None


@dataclass(frozen=True)
class Job:
    """A few steps that are one job to a crew. `rows` are those of a run of braces, else empty;
    `portable` says that it can be done beforehand and carried."""

    number: int
    kind: JobKind
    steps: tuple[Step, ...]
    rows: tuple[RunRow, ...] = ()
    portable: bool = False

    @property
    def joints(self) -> tuple[str, ...]:
        """Every joint at which hands work, in order."""
        turns = (turn for step in self.steps for turn in step.turns)
        return tuple(dict.fromkeys(joint for turn in turns for joint in turn.joints))


def jobs(steps: Sequence[Step]) -> tuple[Job, ...]:
    """Every step in exactly one job, jobs in the order of the work."""
    on_the_piece = _on_the_piece(steps)
    told = {step.number for step in on_the_piece}
    apart: dict[JobKind, list[Step]] = {}
    for step in steps:
        if step.number not in told:
            apart.setdefault(_kind(step), []).append(step)
    after = [(k, apart.pop(k), ()) for k in (JobKind.LOOK_OVER, JobKind.STAND_UP) if k in apart]
    found = [(kind, members, ()) for kind, members in apart.items()]
    runs = [
        (JobKind.RUN, run, tuple(row for step in run for row in _rows(step)))
        for run in _runs(on_the_piece)
    ]
    return tuple(
        Job(number, kind, tuple(members), rows, all(step.kind in PORTABLE for step in members))
        for number, (kind, members, rows) in enumerate([*found, *runs, *after], 1)
    )


def _kind(step: Step) -> JobKind:
    first = step.operations[0]
    if step.kind in (Kind.PAIR, Kind.TIE_OFF):
        return JobKind.LOCKS if first.locks else JobKind.SIZE_AND_PAIR
    if step.kind is Kind.CHAIN:
        return JobKind.LONG_CHAINS if first.adds else JobKind.SHORT_CHAINS
    if step.kind in (Kind.CLOSE_RING, Kind.TAG, Kind.LAY):
        return JobKind.LAY_OUT
    return JobKind.STAND_UP if step.kind is Kind.STAND_UP else JobKind.LOOK_OVER


def _on_the_piece(steps: Sequence[Step]) -> list[Step]:
    """Braces, singles and joins; and the laying of an assembly's parts after the first."""
    found: list[Step] = []
    for step in steps:
        if step.kind in HEADS or (found and step.kind is Kind.LAY):
            found.append(step)
    return found


def _braces(run: Sequence[Step]) -> int:
    return sum(len(step.turns) for step in run if step.kind in (Kind.BRACE, Kind.JOIN))


def _runs(steps: Sequence[Step]) -> list[list[Step]]:
    """Runs that end after a corner of the course where they can; whole courses of what has no
    braces."""
    runs: list[list[Step]] = []
    joints = Counter(_course(step) for step in steps for _ in step.of_kind(Kind.JOIN))
    for step in steps:
        goes_on = (
            bool(runs)
            and not _begins_a_piece(runs, step)
            and (
                _course(step) == _course(runs[-1][-1])
                or _braces(runs[-1]) + joints[_course(step)] <= MOST_BRACES
            )
            if _course(step)
            else (
                bool(runs)
                and not _starts_anew(runs[-1][-1], step)
                and (
                    step.kind in (Kind.SINGLE, Kind.TURN_OVER)
                    or _braces(runs[-1]) < LEAST_BRACES
                    or (
                        not _ends_at_corner(runs[-1])
                        and _braces(runs[-1]) + _braces([step]) <= MOST_BRACES
                    )
                )
            )
        )
        if goes_on:
            runs[-1].append(step)
        else:
            runs.append([step])
    anew = len(runs) > 1 and (_starts_anew(runs[-2][-1], runs[-1][0]) or _course(runs[-1][0]) > 0)
    if len(runs) > 1 and _braces(runs[-1]) < SHORT_RUN and not anew:
        last = runs.pop()
        runs[-1] += last
    return runs


def _course(step: Step) -> int:
    """The number of the course that a step is of, 0 of what is not built so."""
    return step.operations[0].course


def _begins_a_piece(runs: Sequence[Sequence[Step]], step: Step) -> bool:
    """Whether a course comes to no joint that a chain brought before: another part begins."""
    brought = {j for run in runs for one in run for op in one.of_kind(Kind.TAG) for j in op.joints}
    here = {joint for op in step.operations for joint in op.joints}
    return brought.isdisjoint(here)


def _starts_anew(before: Step, step: Step) -> bool:
    """Whether another part begins here, or the tying of the parts."""
    return (step.kind is Kind.LAY and not _course(step)) or (_ties(step) and not _ties(before))


def _ties(step: Step) -> bool:
    if step.kind is Kind.SINGLE:
        parts = (
            {joint.rpartition(".")[0] for joint in op.joints} for op in step.of_kind(Kind.SINGLE)
        )
        return any(len(names) > 1 for names in parts)
    return any(len(operation.joints) > 1 for operation in step.of_kind(Kind.JOIN))


def _ends_at_corner(run: Sequence[Step]) -> bool:
    return not set(run[-1].cells) <= {STRAIGHT}


def _rows(step: Step) -> list[RunRow]:
    if step.kind is Kind.TURN_OVER or (step.kind is Kind.LAY and not _course(step)):
        return [RunRow(step, step.operations[0], (0, 0), locks=step.locks)]
    cells = tuple(kind for kind in step.cells if kind != STRAIGHT)
    return [
        row for place, turn in enumerate(step.turns) for row in _rows_of(step, place, turn, cells)
    ]


def _rows_of(step: Step, place: int, turn: Turn, cells: tuple[CellKind, ...]) -> list[RunRow]:
    """A brace, single or joint with the locks at its joints; locks that wait for it elsewhere
    are those of the first."""
    heads = [operation for operation in turn.operations if operation.kind in HEADS]
    if not heads:  # a chain that comes in for the joints after it
        return [RunRow(step, operation, (place, 0)) for operation in turn.of_kind(Kind.TAG)]
    locked = [joint for operation in turn.operations for joint in operation.locks]
    rows = []
    for number, head in enumerate(heads):
        own = tuple(joint for joint in locked if joint in head.joints)
        if head is heads[0]:
            others = {joint for other in heads[1:] for joint in other.joints}
            own = tuple(joint for joint in locked if joint not in others)
        rows.append(RunRow(step, head, (place, number), cells if head is heads[0] else (), own))
    return rows
