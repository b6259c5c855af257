"""The steps of a piece as a crew takes them: a few jobs, the braces in runs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.sequence.grouping import HEADS
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.timetable import PORTABLE

# Braces in a run: at least so many unless the piece has fewer, and no more than so many unless
# one step of the plan has them. Measured by what a table beside one picture can hold.
LEAST_BRACES, MOST_BRACES = 5, 12
# A last run shorter than this goes with the one before it.
SHORT_RUN = 4
TURN_OVER, TURNED = "Turn over", "the whole piece, all hands at once"


@dataclass(frozen=True)
class Row:
    """One brace, single or joint of a run: what it is called, the kind of cell that it
    finishes, how it is tied, and the joints that are locked then."""

    name: str
    cell: str
    words: str
    locks: tuple[str, ...]


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
    groups = _groups(steps)
    for step in steps:
        if step.kind not in HEADS and step.kind is not Kind.LOCK:
            part = after if step.kind in (Kind.INSPECT, Kind.STAND_UP) else before
            part.setdefault(_title(step), []).append(step)
    found: list[Job] = []

    def add(title: str, members: Sequence[Step], rows: tuple[Row, ...] = ()) -> None:
        portable = all(step.kind in PORTABLE for step in members)
        found.append(Job(len(found) + 1, title, tuple(members), rows, portable))

    for title, members in before.items():
        add(title, members)
    for run in _runs(groups):
        rows = tuple(row for group in run for row in _rows(group))
        add(_run_title(rows), [step for group in run for step in group], rows)
    for title, members in after.items():
        add(title, members)
    return tuple(found)


def _title(step: Step) -> str:
    first = step.operations[0]
    if step.kind in (Kind.SIZE, Kind.PAIR, Kind.TIE_OFF):
        return "Locks" if first.locks else "Size and pair"
    if step.kind is Kind.CHAIN:
        return "Long chains" if first.adds else "Short chains"
    if step.kind in (Kind.CLOSE_RING, Kind.TAG, Kind.LAY):
        return "Lay out"
    return "Look over and stand up"


def _groups(steps: Sequence[Step]) -> list[list[Step]]:
    """Braces, singles and joins, each with its locks."""
    groups: list[list[Step]] = []
    for step in steps:
        if step.kind in HEADS:
            groups.append([step])
        elif step.kind is Kind.LOCK:
            groups[-1].append(step)
    return groups


def _braces(run: Sequence[Sequence[Step]]) -> int:
    return sum(len(group[0].turns) for group in run if group[0].kind in (Kind.BRACE, Kind.JOIN))


def _runs(groups: Sequence[list[Step]]) -> list[list[list[Step]]]:
    """Runs that end after a corner of the course where they can."""
    runs: list[list[list[Step]]] = []
    for group in groups:
        goes_on = bool(runs) and (
            group[0].kind in (Kind.SINGLE, Kind.TURN_OVER)
            or _braces(runs[-1]) < LEAST_BRACES
            or (
                not _ends_at_corner(runs[-1])
                and _braces(runs[-1]) + _braces([group]) <= MOST_BRACES
            )
        )
        if goes_on:
            runs[-1].append(group)
        else:
            runs.append([group])
    if len(runs) > 1 and _braces(runs[-1]) < SHORT_RUN:
        last = runs.pop()
        runs[-1] += last
    return runs


def _ends_at_corner(run: Sequence[Sequence[Step]]) -> bool:
    return not set(run[-1][0].cells) <= {"straight"}


def _rows(group: Sequence[Step]) -> list[Row]:
    head, *locks = group
    if head.kind is Kind.TURN_OVER:
        return [Row(TURN_OVER, "", TURNED, ())]
    rows = []
    for place, turn in enumerate(head.turns):
        words = turn.words.removeprefix(turn.name).removeprefix(": ").strip()
        at = tuple(
            joint
            for step in locks
            for operation in step.turns[place].operations
            for joint in operation.locks
        )
        cell = ", ".join(name for name in head.cells if name != "straight")
        rows.append(Row(turn.name, cell, words, at))
    return rows


def _run_title(rows: Sequence[Row]) -> str:
    braces = [row.name.removeprefix("Brace ") for row in rows if row.name.startswith("Brace ")]
    if not braces:
        named = [row.name for row in rows if row.name != TURN_OVER] or [TURN_OVER]
        return named[0] if len(named) == 1 else f"{named[0]} to {named[-1]}"
    return f"Brace {braces[0]}" if len(braces) == 1 else f"Braces {braces[0]} to {braces[-1]}"
