"""Parts of an assembly that were built upright and lean over where they are tied: at one height
alone they turn about it."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from buildplan.framework.model import Framework
from buildplan.language.messages import listing, message
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.lying import laid_in_figure
from buildplan.shape.model import FloatArray, Shape
from buildplan.shape.tied_parts import part_of
from buildplan.source.problems import Problem
from buildplan.source.suggestions import by_hand

LEANS_DEG = 20.0  # more than what is soft or a little crooked. Ours.
LEVEL_DEG = 12.0  # rings of a column lie in planes as near to one another as that. Ours.
FEWEST_RINGS, IN_A_PLANE = 2, 3


def leaning(framework: Framework, shape: Shape) -> tuple[Problem, ...]:
    """A problem for each column of an assembly that leans over."""
    return tuple(_problems(framework, shape))


def _problems(framework: Framework, shape: Shape) -> Iterator[Problem]:
    for part in framework.parts:
        lean_deg = lean_of(part.framework, shape)
        if lean_deg is None or lean_deg <= LEANS_DEG:
            continue
        tied = [[part_of(framework, joint) for joint in tie.joints] for tie in framework.ties]
        others = [name for names in tied if part.name in names for name in names]
        names = list(dict.fromkeys(name for name in others if name != part.name))
        yield Problem(
            ShapeKind.LEANS,
            message(
                "part {part} leans over by {angle} degrees: it is tied to {others} where it can"
                " turn",
                part=part.name,
                angle=round(lean_deg),
                others=listing(names),
            ),
            by_hand(
                message(
                    "lay a beam on such parts and set the other on it, or tie it at two heights, at"
                    " joints that meet or with balloons between"
                )
            ),
            joints=tuple(part.framework.chains[0].chain.joints),
        )


def lean_of(own: Framework, shape: Shape) -> float | None:
    """How far the rings of a column are from level, degrees; None of what is no stack of rings."""
    if laid_in_figure(own):
        return None
    normals = [
        _normal(np.array([shape.at[joint] for joint in long.chain.joints]))
        for long in own.chains
        if long.chain.closed and len(long.chain.joints) > IN_A_PLANE
    ]
    if len(normals) < FEWEST_RINGS or len(normals) < len(own.chains):
        return None
    level = np.cos(np.radians(LEVEL_DEG))
    if any(abs(float(normals[0] @ one)) < level for one in normals):
        return None
    return float(np.degrees(np.arccos(min(abs(float(normals[0][1])), 1.0))))


def _normal(at_m: FloatArray) -> FloatArray:
    """The unit normal (3,) of the plane that joints (n, 3) are nearest to."""
    _, _, axes = np.linalg.svd(at_m - at_m.mean(axis=0))
    return np.asarray(axes[-1])
