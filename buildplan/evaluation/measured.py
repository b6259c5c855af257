"""A design measured: its solved size, and what it costs in balloons and minutes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from pydantic import ValidationError

from buildplan.design.building import build_framework
from buildplan.design.checks import check
from buildplan.design.model import Design
from buildplan.design.reading import joined_data
from buildplan.evaluation.evaluating import resting_shape
from buildplan.evaluation.seating import seated
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import Framework
from buildplan.language.messages import Message, message
from buildplan.sequence.hand_reach import hands_with
from buildplan.sequence.labour import work_minutes
from buildplan.sequence.reach import Reach, find_reach
from buildplan.sequence.steps import plan_steps
from buildplan.shape.constants import CONSTANTS, constants_with
from buildplan.shape.model import Shape
from buildplan.source.problems import DesignProblemsError
from buildplan.source.refusals import mistakes_in

HERE = Path()

BuiltBy = Callable[[Design], Design]
"""A design as certain hands build it: with their own lengths, stiffness and minutes."""


def as_written(design: Design) -> Design:
    """A design as the hands build it that are taken for granted."""
    return design


@dataclass(frozen=True)
class Measured:
    """A design at rest, its size, and how many balloons and minutes of work it takes, by the hands
    that build it; `design` is as its file has it."""

    design: Design
    framework: Framework
    shape: Shape
    built_by: BuiltBy = as_written

    @property
    def height_m(self) -> float:
        """Height of the solved shape."""
        return self.shape.height_m

    @property
    def width_m(self) -> float:
        """Width of the solved shape."""
        return self.shape.width_m

    @property
    def balloons(self) -> int:
        """Balloons of every kind."""
        return sum(balloon_counts(self.framework).values())

    @property
    def problem(self) -> Message | None:
        """The first thing wrong with its shape, or None."""
        found = next((problem.message for problem in self.shape.problems), None)
        if found is None and not self.shape.standing.stands:
            return message("it does not stand")
        return found

    @cached_property
    def reach(self) -> Reach:
        """How hands get at its joints."""
        hands = hands_with(constants_with(self.built_by(self.design).constants))
        return find_reach(self.framework, self.shape, hands)

    @cached_property
    def minutes(self) -> float:
        """Minutes of work in all, one pair of hands."""
        labour = self.built_by(self.design).labour
        minutes = {str(kind): value for kind, value in labour.items()}
        return work_minutes(plan_steps(self.framework, reach=self.reach), minutes)


def first_mistake(data: object) -> Message | None:
    """The first thing that a file of this content would be refused for, or None."""
    mistakes = check(data, CONSTANTS)
    try:
        Design.model_validate(data)
    except ValidationError as error:
        mistakes = mistakes_in(error.errors(include_url=False), data, Design)
    return next((mistake.message for mistake in mistakes), None)


def measure(data: object, folder: Path = HERE, built_by: BuiltBy = as_written) -> Measured:
    """Solve the design that plain data makes; it must pass `check`. The files of an assembly's
    parts lie in `folder`. Raises DesignProblemsError where its parts cannot be joined."""
    found = seated(joined_data(data, folder, CONSTANTS))
    if found.problems:
        raise DesignProblemsError(str(folder), found.problems, found.design.name)
    built = built_by(found.design)
    framework = build_framework(built)
    return Measured(found.design, framework, resting_shape(built, framework), built_by)
