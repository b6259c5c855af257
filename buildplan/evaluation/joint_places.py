"""Where the joints of each part of a piece are, for those who write the ties between parts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from buildplan.evaluation.evaluating import Evaluation
from buildplan.framework.model import Framework
from buildplan.shape.constants import constants_with
from buildplan.shape.finding import Settings, shapes_of_parts
from buildplan.shape.model import Shape
from buildplan.shape.placing import link_m

EDGE_SHARE = 0.3  # of a link: joints this near the highest, lowest or outermost are at that edge
SIDES: Mapping[str, tuple[int, int]] = {
    "lowest": (1, -1),
    "highest": (1, 1),
    "left": (0, -1),
    "right": (0, 1),
    "front": (2, 1),
    "back": (2, -1),
}


@dataclass(frozen=True)
class PartJoints:
    """A part (or a whole piece, which is no assembly), its framework and shape by itself; its
    joints, called as in the whole; and those that lie farthest to each of SIDES."""

    name: str
    framework: Framework
    shape: Shape
    sides: Mapping[str, tuple[str, ...]]


def joint_places(piece: Evaluation) -> tuple[PartJoints, ...]:
    """The joints of each part of a piece, in the order in which they are built."""
    settings = Settings(constants=constants_with(piece.design.constants))
    if not piece.framework.parts:
        alone = (piece.framework, piece.shape)
        return (_placed(piece.framework.name, *alone),)
    shapes = shapes_of_parts(piece.framework, settings)
    return tuple(
        _placed(part.name, part.framework, shape)
        for part, shape in zip(piece.framework.parts, shapes, strict=True)
    )


def _placed(name: str, framework: Framework, shape: Shape) -> PartJoints:
    reach = EDGE_SHARE * link_m(framework)
    at = {joint: shape.at[joint] for joint in framework.joints}
    sides = {}
    for side, (axis, sign) in SIDES.items():
        most = max(sign * place[axis] for place in at.values())
        sides[side] = tuple(j for j, place in at.items() if sign * place[axis] >= most - reach)
    return PartJoints(name, framework, shape, sides)
