"""A design measured: its solved size, and what it costs in balloons and minutes."""

from __future__ import annotations

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


@dataclass(frozen=True)
class Measured:
    """A design at rest, its size, and how many balloons and minutes of work it takes."""

    design: Design
    framework: Framework
    shape: Shape

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
        hands = hands_with(constants_with(self.design.constants))
        return find_reach(self.framework, self.shape, hands)

    @cached_property
    def minutes(self) -> float:
        """Minutes of work in all, one pair of hands."""
        minutes = {str(kind): value for kind, value in self.design.labour.items()}
        return work_minutes(plan_steps(self.framework, reach=self.reach), minutes)


def first_mistake(data: object) -> Message | None:
    """The first thing that a file of this content would be refused for, or None."""
    mistakes = check(data, CONSTANTS)
    try:
        Design.model_validate(data)
    except ValidationError as error:
        mistakes = mistakes_in(error.errors(include_url=False), data, Design)
    return next((mistake.message for mistake in mistakes), None)


def measure(data: object, folder: Path = HERE) -> Measured:
    """Solve the design that plain data makes; it must pass `check`. The files of an assembly's
    parts lie in `folder`. Raises DesignProblemsError where its parts cannot be joined."""
    found = seated(joined_data(data, folder, CONSTANTS))
    if found.problems:
        raise DesignProblemsError(str(folder), found.problems, found.design.name)
    design = found.design
    framework = build_framework(design)
    return Measured(design, framework, resting_shape(design, framework))
