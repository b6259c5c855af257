"""The nearest courses that close and stand: what a closed tube's course would have to be.

Other courses are made from the one there is by few changes (cells put in, taken out, made others,
spread), each is laid out in the plane at once, and those that come round there with the least
forcing are solved, the nearest first.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from shapely.geometry import LinearRing

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.evaluation.evaluating import holding_of, resting_shape
from buildplan.evaluation.measured import Measured, first_mistake
from buildplan.framework.model import Framework
from buildplan.language.messages import Message, message
from buildplan.patterns.course import expand_course
from buildplan.patterns.course_edits import (
    Cells,
    Edit,
    added,
    as_items,
    made,
    mirrored,
    spread,
    taken_out,
)
from buildplan.patterns.tube_keys import Tube
from buildplan.patterns.tube_lengths import side_lengths
from buildplan.patterns.turning import SideLengths, comes_round
from buildplan.shape.constants import constants_with
from buildplan.shape.examining import examine
from buildplan.shape.finding import Settings, find_shape
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.plan import EASE_RIGID, ComplexArray, close_plan, lay_sections, plan_of
from buildplan.source.balloons import Balloon
from buildplan.source.file_changes import changed_data
from buildplan.source.kinds import FileKind
from buildplan.source.partial_validation import salvage
from buildplan.source.suggestions import Put, Remedy

Data = Mapping[str, Any]

AT = ("build", "tube", "course")
BENDS = ("fan", "tip", "fan_in", "dip")
MOST_CHANGED = 12  # cells of one kind that are put in, taken out or changed at once
MOST_IN_GROUP = 3  # of those, in each turn of a course that repeats
MOST_CELLS = 150  # courses beyond this are left to the eye: every trial is a shape to solve
# How far the cells that cannot give are turned all the same, in degrees, root mean square, when the
# course is closed in the plane: from trials, what is more comes out strained.
FORCED_DEG = 4.0
SPREADING = 2  # what it counts to spread all bends anew, in cells
USUAL_TRIALS = 24
COURSE_TRIALS = 10  # where a course is but one of the things that may mend a piece
# what another course mends
OF_THE_COURSE = (
    FileKind.NOT_COMING_ROUND,
    ShapeKind.DOES_NOT_CLOSE,
    ShapeKind.RUNS_INTO_ITSELF,
)
SAME_PLACE = 1e-6  # of the size of the piece
FEWEST_CORNERS = 3


@dataclass(frozen=True)
class NearCourse:
    """A course that closes and stands: how to come to it, and the piece it makes."""

    edit: Edit
    changes: tuple[Put, ...]
    measured: Measured

    @property
    def way(self) -> Remedy:
        """It as a way to mend the design."""
        return Remedy(self.edit.words, self.changes)


@dataclass(frozen=True)
class _Candidate:
    edit: Edit
    changes: tuple[Put, ...]
    framework: Framework
    design: Design
    forced_deg: float


def near_courses(
    data: Data,
    count: int,
    trials: int = USUAL_TRIALS,
    progress: Callable[[int, int], None] | None = None,
) -> list[NearCourse]:
    """Up to `count` courses of a closed tube that close and stand, the nearest first.

    `data` is a design file as plain data, right but for its course. No more than `trials`
    shapes are solved; `progress` is told how many have been, and how many were found. The same data
    give the same courses.
    """
    tube = Tube.model_validate(data["build"]["tube"])
    cells = tuple(expand_course(tube))
    if not tube.closed or len(cells) > MOST_CELLS:
        return []
    found: list[NearCourse] = []
    for number, candidate in enumerate(_candidates(data, tube, cells)[:trials]):
        if progress is not None:
            progress(number, len(found))
        near = _solved(candidate)
        if near is not None:
            found.append(near)
        if len(found) == count:
            break
    return found


def _candidates(data: Data, tube: Tube, cells: Cells) -> list[_Candidate]:
    """Courses that come round in the plane, in the order in which they are worth solving."""
    seen = {cells}
    found = []
    lengths = _lengths(data, tube, cells)
    for edit in sorted(_edits(cells), key=lambda one: one.moved):
        if edit.cells in seen or not (lengths and comes_round(Counter(edit.cells), lengths)):
            continue
        seen.add(edit.cells)
        candidate = _laid(data, tube, edit)
        if candidate is not None:
            found.append(candidate)
    # of courses as near, one that repeats itself is the better piece
    return sorted(
        found,
        key=lambda one: (one.edit.moved, -_times(one.edit.cells), round(one.forced_deg, 3)),
    )


def _lengths(data: Data, tube: Tube, cells: Cells) -> SideLengths | None:
    balloons = {key: salvage(Balloon, one) for key, one in data["balloons"].items()}
    counts = (sum(one.outer for one in cells), sum(one.inner for one in cells))
    return side_lengths(tube, balloons, data.get("colour_pattern") or {}, counts)


def _laid(data: Data, tube: Tube, edit: Edit) -> _Candidate | None:
    """An edit laid out in the plane; None where its course does not come round there, or would
    cross itself."""
    changes = [Put(AT, as_items(edit.cells))]
    skips = any(one.outer > 1 or one.inner > 1 for one in edit.cells)
    if tube.single is None and tube.chains > 2 and skips:  # a ladder needs none
        changes.append(Put((*AT[:-1], "single"), tube.brace))
    made_data = changed_data(data, changes)
    if first_mistake(made_data) is not None:
        return None
    design = Design.model_validate(made_data)
    framework = build_framework(design)
    plan = plan_of(framework)
    turn, slant = close_plan(plan, plan.turn, np.zeros(len(plan.turn)))
    rigid = plan.turn_ease <= EASE_RIGID
    change = np.degrees((turn - plan.turn)[rigid])
    forced = float(np.sqrt((change**2).mean())) if rigid.any() else 0.0
    middle, heading = lay_sections(plan, turn, slant)
    across = 0.5 * plan.width_m * 1j * np.exp(1j * heading)
    sides = [side[:-1] for side in (middle + across, middle - across)]
    if forced > FORCED_DEG or any(map(_crosses_itself, sides)):
        return None
    return _Candidate(edit, tuple(changes), framework, design, forced)


def _crosses_itself(side: ComplexArray) -> bool:
    """Whether the line of a side, closed, crosses itself; where braces meet it stands still."""
    moved = side[np.abs(side - np.roll(side, 1)) > SAME_PLACE * float(np.abs(side).max())]
    if len(moved) <= FEWEST_CORNERS:
        return False
    return not LinearRing(np.column_stack([moved.real, moved.imag])).is_simple


def _solved(candidate: _Candidate) -> NearCourse | None:
    """The course of a candidate if its solved shape has no problems."""
    design, framework = candidate.design, candidate.framework
    constants = constants_with(design.constants)
    one_start = Settings(constants=constants, starts=1)
    if find_shape(framework, holding=holding_of(design), settings=one_start).problems:
        return None
    shape = resting_shape(design, framework)
    if shape.problems or examine(framework, shape, constants=constants).problems:
        return None
    return NearCourse(candidate.edit, candidate.changes, Measured(design, framework, shape))


def _edits(cells: Cells) -> Iterator[Edit]:
    """Courses a few changes away; each also with its bends spread anew."""
    for edit in _changes(cells, MOST_CHANGED):
        yield edit
        even = spread(edit.cells)
        yield Edit(even.cells, _then(edit.words, even.words), edit.moved + SPREADING)
    yield replace(spread(cells), moved=SPREADING)
    yield mirrored(cells)
    times = _times(cells)
    if times > 1:
        for edit in _changes(cells[: len(cells) // times], MOST_IN_GROUP):
            words = message(
                "in each of its {times} turns: {change}", times=times, change=edit.words
            )
            yield Edit(edit.cells * times, words, edit.moved * times)


def _then(one: Message, other: Message) -> Message:
    return message("{one}, then {other}", one=one, other=other)


def _times(cells: Cells) -> int:
    """How often the course repeats itself."""
    length = len(cells)
    periods = (p for p in range(1, length + 1) if length % p == 0)
    return next(length // p for p in periods if cells == cells[:p] * (length // p))


def _changes(cells: Cells, most: int) -> Iterator[Edit]:
    count = {name: sum(one.name == name for one in cells) for name in ("straight", *BENDS)}
    for number in range(1, most + 1):
        for name in ("straight", *BENDS):
            yield added(cells, name, number)
            if number <= count[name] and number < len(cells):
                yield taken_out(cells, name, number)
            for other in ("straight", *BENDS):
                if other != name and number <= count[name]:
                    yield made(cells, name, other, number)
