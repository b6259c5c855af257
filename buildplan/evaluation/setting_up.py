"""How the parts of an assembly come to where they are tied, from the solved shape."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

import numpy as np

from buildplan.framework.model import Framework, Part
from buildplan.instructions.model import LiesAt, PartsApart, SetUp, SharedKnots
from buildplan.sequence.courses import built_pieces, in_courses
from buildplan.sequence.hand_reach import HandReach
from buildplan.sequence.reach import is_one_layer
from buildplan.shape.lying import lies_built
from buildplan.shape.model import FloatArray, Shape
from buildplan.shape.tied_parts import doubled, part_of, way_apart

# A part stands on the floor if its lowest joint is no higher above the lowest of all than this
# share of the longest link. Ours.
ON_THE_FLOOR = 0.5
# A joint faces the front that is further before the middle of its part than this share of its
# depth. Ours.
BEFORE = 0.2
# What lies further along each axis: x to the right, y up, z to the front.
AXES = (LiesAt.RIGHT, LiesAt.ON_TOP, LiesAt.IN_FRONT)


def built_standing(framework: Framework, shape: Shape) -> bool:
    """Whether a piece is built course on course as it stands; an assembly is put together standing
    where one of its parts is, or where parts stand one behind the other: lying, the one would lie
    on the other, and no hand comes between."""
    return any(_stands(own, shape) for _, own in built_pieces(framework)) or any(
        one.axis is LiesAt.IN_FRONT for one in parts_apart(framework, shape).values()
    )


def set_up(framework: Framework, shape: Shape, hands: HandReach) -> SetUp | None:
    """How the parts of an assembly that is put together standing come together, and what of it is
    out of reach of `hands`; None of any other piece."""
    if not framework.parts or not built_standing(framework, shape):
        return None
    at = {
        part.name: np.array([shape.at[joint] for joint in part.framework.joints])
        for part in framework.parts
    }
    low = {name: float(np.min(places[:, 1])) for name, places in at.items()}
    floor = min(low.values()) + ON_THE_FLOOR * max(
        float(np.linalg.norm(shape.at[link.start] - shape.at[link.finish]))
        for link in framework.links
    )
    middle = {name: _middle(places) for name, places in at.items()}
    on_floor = [name for name in at if low[name] <= floor]
    wide, deep = np.ptp([middle[name] for name in on_floor], axis=0)
    in_depth = bool(deep > wide)
    standing = sorted(
        on_floor, key=lambda name: tuple(middle[name][::-1] if in_depth else middle[name])
    )
    lying = tuple(part.name for part in framework.parts if not _stands(part.framework, shape))
    return SetUp(
        tuple(standing),
        tuple(float(np.linalg.norm(middle[b] - middle[a])) for a, b in pairwise(standing)),
        tuple(sorted((name for name in at if low[name] > floor), key=lambda name: low[name])),
        lying,
        {part.name: _at_front(framework, part, shape) for part in framework.parts},
        _higher(framework, shape, hands.highest),
        _higher(framework, shape, hands.highest + hands.stool),
        frozenset(name for name in lying if float(np.max(at[name][:, 1])) > hands.highest),
        in_depth,
    )


def _higher(framework: Framework, shape: Shape, height_m: float) -> frozenset[str]:
    """The ties that are higher above the floor than that; y is up."""
    return frozenset(
        tie.name for tie in framework.ties if float(shape.at[tie.joints[0]][1]) > height_m
    )


def shared_knots(framework: Framework, shape: Shape) -> tuple[SharedKnots, ...]:
    """The parts that have balloons between the same two knots once they are tied, each pair of
    parts once."""
    found: dict[frozenset[str], SharedKnots] = {}
    for pair in doubled(framework, shape):
        links = framework.link[pair.first], framework.link[pair.second]
        one, other = (part_of(framework, link.start) for link in links)
        axis = int(np.argmax(np.abs(pair.way)))
        if pair.way[axis] < 0:
            one, other = other, one
        found.setdefault(frozenset((one, other)), SharedKnots(one, other, AXES[axis]))
    return tuple(found.values())


def parts_apart(framework: Framework, shape: Shape) -> Mapping[str, PartsApart]:
    """Which way the part of each tie's last joint goes on from that of its first."""
    found: dict[tuple[str, str], PartsApart] = {}
    for tie in framework.ties:
        one, other = (part_of(framework, joint) for joint in (tie.joints[0], tie.joints[-1]))
        if (one, other) not in found:
            way = way_apart(framework, shape, one, other)
            axis = int(np.argmax(np.abs(way)))
            found[one, other] = PartsApart(AXES[axis], forward=bool(way[axis] > 0))
    ends = ((tie.name, tie.joints[0], tie.joints[-1]) for tie in framework.ties)
    return {
        name: found[part_of(framework, first), part_of(framework, last)]
        for name, first, last in ends
    }


def _at_front(framework: Framework, part: Part, shape: Shape) -> tuple[str, ...]:
    """The joints of a part that are tied to others and lie before its middle, from the left."""
    own = set(part.framework.joints)
    depth = np.array([shape.at[joint][2] for joint in own])
    before = (float(depth.min()) + float(depth.max())) / 2 + BEFORE * float(np.ptp(depth))
    tied = [joint for tie in framework.ties for joint in tie.joints if joint in own]
    facing = [joint for joint in tied if shape.at[joint][2] > before]
    return tuple(sorted(facing, key=lambda joint: float(shape.at[joint][0])))


def built_flat(framework: Framework, shape: Shape) -> frozenset[str]:
    """The names of the parts, "" for a whole piece, that are built course on course lying on
    their backs."""
    return frozenset(
        name for name, own in built_pieces(framework) if in_courses(own) and not _stands(own, shape)
    )


def one_layer(framework: Framework, shape: Shape) -> frozenset[str]:
    """The names of the parts, "" for a whole piece, that have no inside."""
    return frozenset(name for name, own in built_pieces(framework) if is_one_layer(own, shape))


def _stands(own: Framework, shape: Shape) -> bool:
    """Whether a part is built standing, not lying on its back."""
    return in_courses(own) and not lies_built(own, shape)


def _middle(places: FloatArray) -> FloatArray:
    """The middle of a part on the floor: halfway along its width (x) and its depth (z)."""
    plan = places[:, [0, 2]]
    middle: FloatArray = (np.min(plan, axis=0) + np.max(plan, axis=0)) / 2
    return middle
