"""A first piece to practise on: a short post with the real piece's own kinds of balloon."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from buildplan.design.building import build_framework
from buildplan.design.measures import Units
from buildplan.design.model import Design
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import Framework
from buildplan.language.speaking import mark
from buildplan.language.voice import Voice
from buildplan.patterns.build import built_as
from buildplan.patterns.tube_keys import Tube
from buildplan.sequence.model import Step
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape
from buildplan.shape.model import Shape

NAME = mark("Practice post")
# Two cells: each chain is one pair, and three short braces stand across the chains.
COURSE = ("straight", "straight")
USUAL_CHAINS = 4


@dataclass(frozen=True)
class Practice:
    """The practice piece; `counts` are its own balloons and no part of the real piece's."""

    framework: Framework
    shape: Shape
    steps: tuple[Step, ...]
    counts: dict[str, int]


def practice(design: Design, framework: Framework, units: Units, voice: Voice) -> Practice | None:
    """The practice piece of a design, or None when its piece has no locks to practise."""
    if not framework.locks:
        return None
    link = framework.link
    along = _usual(link[i].balloon for long in framework.chains for i in long.chain.links)
    across = _usual(link[i].balloon for brace in framework.braces for i in brace.links) or along
    chains = len(framework.chains) if framework.braces else USUAL_CHAINS
    tube = Tube.model_validate(
        {
            "closed": False,
            "chains": chains if chains in (2, 3, 4) else USUAL_CHAINS,
            "long": along,
            "brace": across,
            "lock": _usual(lock.balloon for lock in framework.locks),
            "course": list(COURSE),
        }
    )
    changes = {
        "name": voice.say(NAME),
        "build": built_as("tube", tube),
        "stand_on": None,
        "colour_pattern": {},
    }
    built = build_framework(design.model_copy(update=changes))
    return Practice(
        built,
        find_shape(built),
        plan_steps(built, units=units),
        {key: count for key, count in balloon_counts(built).items() if count},
    )


def _usual(keys: Iterable[str]) -> str:
    """The key that comes most often, the first of those that come as often; empty if none."""
    counted = Counter(keys).most_common(1)
    return counted[0][0] if counted else ""
