"""How hard a piece is to build, by a rule that is printed with it."""

from __future__ import annotations

from dataclasses import dataclass

from buildplan.evaluation.facts import Facts
from buildplan.framework.cells import STRAIGHT
from buildplan.framework.model import Framework
from buildplan.language.messages import Message, message

NAMES = (
    message("a first piece"),
    message("some practice"),
    message("practised"),
    message("skilled"),
    message("expert"),
)
# The bounds are a judgement of ours, no measurement.
MANY_BALLOONS, VERY_MANY_BALLOONS = 200, 500
TALL_M = 2.0


@dataclass(frozen=True)
class Skill:
    """A level from 1 to 5, and the reasons that raised it above the first."""

    level: int
    reasons: tuple[Message, ...]

    @property
    def name(self) -> Message:
        """What the level is called."""
        return NAMES[self.level - 1]


def skill(framework: Framework, facts: Facts) -> Skill:
    """One level for each of: more than 200 balloons; more than 500; a course that turns; more
    than one kind of turn, or singles; taller than 2 m. Never above 5."""
    turns = {cell.kind for cell in framework.cells} - {STRAIGHT}
    asked = (
        (facts.total > MANY_BALLOONS, message("more than {number} balloons", number=MANY_BALLOONS)),
        (
            facts.total > VERY_MANY_BALLOONS,
            message("more than {number} balloons", number=VERY_MANY_BALLOONS),
        ),
        (bool(turns), message("the course turns, so joints must be counted at every corner")),
        (
            len(turns) > 1 or bool(framework.singles),
            message("more than one kind of corner, or singles"),
        ),
        (
            facts.height_m > TALL_M,
            message("taller than 2 m, so it takes helping hands to stand up"),
        ),
    )
    reasons = tuple(words for holds, words in asked if holds)
    return Skill(min(1 + len(reasons), len(NAMES)), reasons)
