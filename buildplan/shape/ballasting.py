"""Where ballast goes on a piece's foot, and how much more it takes there than below its middle.

Ballast of mass b, the same at each of its places, holds the foot's edge e by b times the arm from
the middle of the places to e, as the piece of mass m does by its own. So what would hold it below
its centre of mass is to be multiplied by the largest ratio of those arms, over all edges.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from scipy.spatial import ConvexHull

from buildplan.framework.assembly import is_of_part
from buildplan.framework.model import Framework
from buildplan.shape.carrying import walk_through
from buildplan.shape.model import FloatArray, Shape
from buildplan.shape.standing import hull_corners

MOST_FEET = 8  # each joint on the floor gets ballast where there are so few
DIAGONALS = np.array([(-1, 1), (1, 1), (1, -1), (-1, -1)])  # in x and z
MUCH = 0.4  # of the links of the largest part: a part with fewer gets none
CORNERS = 3  # so few feet have none in their midst
SHORT_M = 1e-3  # arms count as no shorter
BAG_OFF_M = 0.3  # from a joint to its bag, tied short past the balloons there (from memory)
WIDE = 1.5  # times as wide as deep: bags lie before and behind. Ours.
MIDST = 0.5  # a joint so far off the middle of its foot, of the furthest, is neither. Ours.
LEAST_ARM = 0.5  # of the piece's own arm: where the places chosen have less, every foot gets some


def ballast_places(framework: Framework, shape: Shape) -> tuple[str, ...]:
    """The joints at which to tie ballast, the same at each: all feet where they are few, but for
    one in the midst of the others, whose bag would lie too far off; of parts that stand each for
    itself (bars between letters aside), one in front and one at the back; else the corners of the
    foot. None where something that does not fall over holds the piece."""
    if shape.holding.fixed:
        return ()
    feet = shape.standing.feet
    large = MUCH * max((len(part.framework.links) for part in framework.parts), default=0)
    parts = [part.name for part in framework.parts if len(part.framework.links) >= large]
    groups = ([joint for joint in feet if is_of_part(joint, part)] for part in parts)
    standing = [group for group in groups if group]
    if len(feet) <= MOST_FEET:
        return _at_the_edge(feet, shape)
    if len(standing) > 1:
        chosen = [joint for group in standing for joint in _front_and_back(group, shape)]
    else:
        chosen = _corners(feet, shape)
    places = tuple(joint for joint in feet if joint in chosen)
    return places if ballast_factor(shape, places) <= 1 / LEAST_ARM else feet


def _at_the_edge(feet: tuple[str, ...], shape: Shape) -> tuple[str, ...]:
    """Feet without those in the midst of the others, as the pole on which a globe stands."""
    at = _flat(feet, shape)
    broad = np.linalg.matrix_rank(at - at.mean(axis=0), tol=SHORT_M) == at.shape[1]
    if len(feet) <= CORNERS or not broad:
        return feet
    edge = hull_corners(at)
    within = [float(_arms_m(edge, place).min()) for place in at]
    middle = float(_arms_m(edge, edge.mean(axis=0)).min())
    return tuple(joint for joint, arm in zip(feet, within, strict=True) if arm < MIDST * middle)


def bag_places(framework: Framework, shape: Shape) -> Mapping[str, FloatArray]:
    """Where the bag of each joint that takes ballast lies on the floor, (2,) in x and z: before or
    behind its foot where people walk through, or the foot is wide; else outwards from it."""
    joints = ballast_places(framework, shape)
    if not joints:
        return {}
    at, foot = _flat(joints, shape), shape.standing.foot_polygon_m
    feet = shape.standing.feet_m
    middles = feet if len(feet) > 1 else 0.5 * (foot.min(axis=0) + foot.max(axis=0))[None]
    nearest = np.linalg.norm(at[:, None] - middles[None], axis=2).argmin(axis=1)
    off = at - middles[nearest]
    width, depth = np.ptp(foot, axis=0)
    if walk_through(framework, shape) is None and width < WIDE * depth:
        away = off / np.maximum(np.linalg.norm(off, axis=1), SHORT_M)[:, None]
        return dict(zip(joints, at + BAG_OFF_M * away, strict=True))
    reach = np.abs(off[:, 1]).max()
    behind = off[:, 1] < 0
    beside = np.flatnonzero(np.abs(off[:, 1]) < MIDST * reach)
    behind[beside] = np.arange(len(beside)) % 2 == 1  # by turns before and behind
    z = middles[nearest, 1] + np.where(behind, -1, 1) * (reach + BAG_OFF_M)
    return dict(zip(joints, np.column_stack([at[:, 0], z]), strict=True))


def ballast_factor(shape: Shape, places: Sequence[str]) -> float:
    """What the ballast that would hold the piece below its centre of mass is to be multiplied by,
    tied the same at each of `places`; 1 for a piece that does not stand, or takes none."""
    if not places:
        return 1.0
    standing = shape.standing
    own = _arms_m(standing.foot_polygon_m, standing.centre_of_mass_m[[0, 2]])
    theirs = _arms_m(standing.foot_polygon_m, _flat(places, shape).mean(axis=0))
    return float((own / np.maximum(theirs, SHORT_M)).max()) if own.min() > 0 else 1.0


def _arms_m(foot_m: FloatArray, point_m: FloatArray) -> FloatArray:
    """How far a point of the floor lies within each edge of a foot, of corners (k, 2)."""
    edges = ConvexHull(foot_m).equations
    return np.asarray(-edges.dot(np.append(point_m, 1.0)))


def _flat(joints: Sequence[str], shape: Shape) -> FloatArray:
    """Places (n, 2) of joints in the floor's plane, x and z."""
    return np.array([shape.at[joint] for joint in joints])[:, [0, 2]]


def _corners(feet: Sequence[str], shape: Shape) -> list[str]:
    furthest = np.argmax(_flat(feet, shape) @ DIAGONALS.T, axis=0)
    return [feet[int(number)] for number in furthest]


def _front_and_back(feet: Sequence[str], shape: Shape) -> list[str]:
    """Of a part's feet those furthest in front and furthest behind, nearest its middle."""
    x, z = _flat(feet, shape).T
    aside = np.abs(x - (x.min() + x.max()) / 2)
    return [feet[int(np.lexsort((aside, np.round(way * z, 3)))[0])] for way in (-1, 1)]
