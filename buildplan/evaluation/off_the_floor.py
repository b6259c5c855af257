"""Parts that carry others and do not come down to the floor: one of two columns under a beam that
is built lower than the other hangs from the beam."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from enum import auto

from buildplan.design.measures import Units, side_words
from buildplan.framework.model import Framework, Part
from buildplan.language.messages import Measure, message
from buildplan.shape.model import Shape
from buildplan.shape.tied_parts import part_of
from buildplan.source.problems import Problem, ProblemKind
from buildplan.source.suggestions import to_try

OFF_SHARE = 0.3  # of the longest link: what is nearer to the floor rests on it. Ours.


class FloorKind(ProblemKind):
    """What is to be known of the foot of a part."""

    OFF_THE_FLOOR = auto()


def off_the_floor(framework: Framework, shape: Shape, units: Units) -> Iterator[Problem]:
    """A caution for each part that hangs from those that are set on it, with nothing beneath."""
    if shape.holding.hung:
        return
    longest_m = max(framework.balloons[link.balloon].tie_to_tie_m for link in framework.links)
    low = {part.name: _lowest(shape, part) for part in framework.parts}
    floor_m = min(map(float, shape.positions_m[:, 1]))
    for part in framework.parts:
        off_m = _height_m(shape, low[part.name]) - floor_m
        if off_m > OFF_SHARE * longest_m and _hangs(framework, shape, part, low):
            yield Problem(
                FloorKind.OFF_THE_FLOOR,
                message(
                    "part {part} does not reach the floor: it hangs {off} above it from what is set"
                    " on it",
                    part=part.name,
                    off=Measure(side_words(off_m, units), 100 * off_m),
                ),
                to_try(message("build what carries one part of one height")),
                joints=(low[part.name],),
            )


def _hangs(framework: Framework, shape: Shape, part: Part, low: Mapping[str, str]) -> bool:
    """Whether others are set on a part that is set on none, and nothing that it is tied to comes
    down as low as it does."""
    if part.on or not any(part.name in one.on for one in framework.parts):
        return False
    own_m = _height_m(shape, low[part.name])
    beside = {
        part_of(framework, joint)
        for tie in framework.ties
        if any(part_of(framework, one) == part.name for one in tie.joints)
        for joint in tie.joints
    }
    return all(_height_m(shape, low[name]) >= own_m for name in beside)


def _lowest(shape: Shape, part: Part) -> str:
    return min(part.framework.joints, key=lambda joint: _height_m(shape, joint))


def _height_m(shape: Shape, joint: str) -> float:
    return float(shape.at[joint][1])
