"""The steps of a piece as a crew takes them: a few jobs, the braces in runs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.framework.cells import cell_words
from buildplan.language.grammar import first_to_last
from buildplan.language.speaking import mark, say, spoken_voice
from buildplan.sequence.grouping import HEADS, STRAIGHT
from buildplan.sequence.model import Kind, Operation, Step, Turn
from buildplan.sequence.timetable import PORTABLE

# Braces in a run: at least so many unless the piece has fewer, and no more than so many unless
# one step of the plan has them. Measured by what a table beside one picture can hold.
LEAST_BRACES, MOST_BRACES = 5, 12
# A last run shorter than this goes with the one before it.
SHORT_RUN = 4
# Titles of jobs that hold no braces.
SIZE_AND_PAIR, LOCKS = mark("Size and pair"), mark("Locks")
LONG_CHAINS, SHORT_CHAINS = mark("Long chains"), mark("Short chains")
LAY_OUT, LOOK_OVER = mark("Lay out"), mark("Look over and stand up")


@dataclass(frozen=True)
class Row:
    """One brace, single or joint of a run: what it is, what it is called, the kind of cell that
    it finishes, how it is tied, and the joints where hands work and that are locked then. A
    brace has its number in the piece."""

    kind: Kind
    name: str
    cell: str
    words: str
    locks: tuple[str, ...]
    joints: tuple[str, ...] = ()
    brace: int | None = None


@dataclass(frozen=True)
class Job:
    """A few steps that are one job to a crew. `rows` are those of a run of braces, else empty;
    `portable` says that it can be done beforehand and carried."""

    number: int
    title: str
    steps: tuple[Step, ...]
    rows: tuple[Row, ...] = ()
    portable: bool = False

    @property
    def joints(self) -> tuple[str, ...]:
        """Every joint at which hands work, in order."""
        turns = (turn for step in self.steps for turn in step.turns)
        return tuple(dict.fromkeys(joint for turn in turns for joint in turn.joints))


def jobs(steps: Sequence[Step]) -> tuple[Job, ...]:
    """Every step in exactly one job, jobs in the order of the work."""
    before: dict[str, list[Step]] = {}
    after: dict[str, list[Step]] = {}
    on_the_piece = _on_the_piece(steps)
    told = {step.number for step in on_the_piece}
    for step in steps:
        if step.number not in told:
            part = after if step.kind in (Kind.INSPECT, Kind.STAND_UP) else before
            part.setdefault(_title(step), []).append(step)
    found: list[Job] = []

    def add(title: str, members: Sequence[Step], rows: tuple[Row, ...] = ()) -> None:
        portable = all(step.kind in PORTABLE for step in members)
        found.append(Job(len(found) + 1, title, tuple(members), rows, portable))

    for title, members in before.items():
        add(say(title), members)
    for run in _runs(on_the_piece):
        rows = tuple(row for step in run for row in _rows(step))
        add(_run_title(rows), run, rows)
    for title, members in after.items():
        add(say(title), members)
    return tuple(found)


def _title(step: Step) -> str:
    """A marked message: it is said when the job is made."""
    first = step.operations[0]
    if step.kind in (Kind.PAIR, Kind.TIE_OFF):
        return LOCKS if first.locks else SIZE_AND_PAIR
    if step.kind is Kind.CHAIN:
        return LONG_CHAINS if first.adds else SHORT_CHAINS
    if step.kind in (Kind.CLOSE_RING, Kind.TAG, Kind.LAY):
        return LAY_OUT
    return LOOK_OVER


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
    """Runs that end after a corner of the course where they can."""
    runs: list[list[Step]] = []
    for step in steps:
        goes_on = (
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
        if goes_on:
            runs[-1].append(step)
        else:
            runs.append([step])
    anew = len(runs) > 1 and _starts_anew(runs[-2][-1], runs[-1][0])
    if len(runs) > 1 and _braces(runs[-1]) < SHORT_RUN and not anew:
        last = runs.pop()
        runs[-1] += last
    return runs


def _starts_anew(before: Step, step: Step) -> bool:
    """Whether another part begins here, or the tying of the parts."""
    return step.kind is Kind.LAY or (_ties(step) and not _ties(before))


def _ties(step: Step) -> bool:
    return step.kind is Kind.JOIN and len(step.operations[0].joints) > 1


def _ends_at_corner(run: Sequence[Step]) -> bool:
    return not set(run[-1].cells) <= {STRAIGHT}


def _rows(step: Step) -> list[Row]:
    if step.kind is Kind.TURN_OVER:
        turned = say("the whole piece, all hands at once")
        return [Row(step.kind, say("Turn over"), "", turned, ())]
    if step.kind is Kind.LAY:
        return [Row(step.kind, step.title, "", "", ())]
    kinds = (cell_words(name) for name in step.cells if name != STRAIGHT)
    cell = ", ".join(spoken_voice().tell(kind.called) for kind in kinds)
    return [row for turn in step.turns for row in _rows_of(turn, cell)]


def _rows_of(turn: Turn, cell: str) -> list[Row]:
    """A brace, single or joint with the locks at its joints; locks that wait for it elsewhere
    are those of the first."""
    heads = [operation for operation in turn.operations if operation.kind in HEADS]
    locked = [joint for operation in turn.operations for joint in operation.locks]
    rows = []
    # each head has a line of its own, and they come before those of the locks
    for line, head in zip(turn.words.splitlines(), heads, strict=False):
        # the name stands in a column of its own
        name, _, words = line.partition(": ")
        own = tuple(joint for joint in locked if joint in head.joints)
        if head is heads[0]:
            others = {joint for other in heads[1:] for joint in other.joints}
            own = tuple(joint for joint in locked if joint not in others)
        number = _brace_number(head)
        rows.append(Row(head.kind, name, cell, words.strip(), own, head.joints, number))
        cell = ""
    return rows


def _run_title(rows: Sequence[Row]) -> str:
    braces = [row.brace for row in rows if row.brace is not None]
    if not braces:
        named = [row.name for row in rows if row.kind not in (Kind.TURN_OVER, Kind.LAY)]
        named = named or [row.name for row in rows]
        return named[0] if len(named) == 1 else first_to_last(named[0], named[-1])
    if len(braces) == 1:
        return say("Brace {number}", number=braces[0])
    return say("Braces {first} to {last}", first=braces[0], last=braces[-1])


def _brace_number(operation: Operation) -> int | None:
    if operation.kind is not Kind.BRACE:
        return None
    return int(operation.id.rpartition(" ")[2])
