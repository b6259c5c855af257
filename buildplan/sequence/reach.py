"""Where hands can get: each joint as the piece is when it is tied and locked.

Where a joint is not in reach (`hand_reach`), somebody lifts the piece by an edge, or stands it on
its side; failing that, it is turned over, once, when all else is done. What is built standing is
gone round, and its high joints are reached from a stool.

All this is advice. Balloons yield and people help one another: what the model finds no way to is
told as a caution, and nothing is refused for it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from enum import auto
from functools import cache

import numpy as np

from buildplan.framework.model import Framework
from buildplan.sequence.courses import built_pieces, in_courses, order_of
from buildplan.sequence.hand_reach import HandReach, PartBodies, PartOnFloor, Posture
from buildplan.sequence.model import Access, Kind, Operation
from buildplan.sequence.operations import FEWEST_LIFTERS, operations
from buildplan.sequence.ordering import in_order
from buildplan.sequence.unreached import out_of_reach
from buildplan.shape.lying import lies_built, put_together_standing
from buildplan.shape.model import FloatArray, Shape
from buildplan.source.problems import Problem, ProblemKind


class ReachKind(ProblemKind):
    """What is to be known about getting at joints."""

    OUT_OF_REACH = auto()


# Joints that lie so near their common plane, as a mean square, are one layer.
ONE_LAYER_M = 0.02
# So many times as wide as high is long. Ours.
LONG = 2.0
# Of so many people or more who stand a piece up one keeps its foot from sliding. Ours.
WITH_ONE_AT_FOOT = 3


def lifters(shape: Shape, hands: HandReach) -> int:
    """How many people turn the piece over or stand it up."""
    longest = max(shape.width_m, shape.height_m, shape.depth_m)
    return max(FEWEST_LIFTERS, int(np.ceil(longest / hands.lifter)))


def is_long(shape: Shape, hands: HandReach) -> bool:
    """Whether those who stand a piece up spread out along it, for its ends alone would bend it."""
    return shape.width_m > LONG * shape.height_m and lifters(shape, hands) > WITH_ONE_AT_FOOT


@dataclass(frozen=True)
class Reach:
    """How each joint is got at, the operations in which it is, in their order, and what to take
    note of."""

    ways: Mapping[str, Access]
    operations: tuple[Operation, ...]
    cautions: tuple[Problem, ...]


def find_reach(framework: Framework, shape: Shape, hands: HandReach | None = None) -> Reach:
    """Plan the work so that hands can get at every joint. What lies is lifted or stood on its
    side where that helps; joints for which it does not are locked after one turning over of the
    piece, or part. `cautions` names the joints to which no way was found."""
    hands = hands or HandReach()
    people = lifters(shape, hands)
    # as many as lift it, and one who ties what the others hold
    tying = people + (1 if put_together_standing(framework, shape) else 0)
    order = replace(order_of(framework, shape.at), at_ties=tying)
    ordered = in_order(operations(framework, order, people))
    ways = ways_to_joints(framework, shape, ordered, hands)
    turned = frozenset(joint for joint, way in ways.items() if way is Access.TURNED)
    if turned:
        ordered = in_order(operations(framework, replace(order, later=turned), people))
    return Reach(ways, ordered, _cautions(ways))


def ways_to_joints(
    framework: Framework,
    shape: Shape,
    ordered: Sequence[Operation],
    hands: HandReach | None = None,
) -> Mapping[str, Access]:
    """How each joint at which `ordered` operations tie, settle or lock is got at, with its part
    as it stands when the last of them is done; other parts are out of the way. Where parts are
    tied to one another the piece stands, and everybody can come near."""
    hands = hands or HandReach()
    ways: dict[str, Access] = {}
    for _, own in built_pieces(framework):
        about = _About(own, shape, hands, _brought(own, ordered))
        for joint, place in _last_worked(own, ordered).items():
            ways[joint] = about.way_to(joint, place)
    return ways


def _last_worked(own: Framework, ordered: Sequence[Operation]) -> Mapping[str, int]:
    """The place in `ordered` of the last work at each joint of a part."""
    joints = frozenset(own.joints)
    kinds = (
        Kind.BRACE,
        Kind.SETTLE,
        Kind.SINGLE,
        Kind.JOIN,
        Kind.LOCK,
    )
    return {
        joint: place
        for place, operation in enumerate(ordered)
        if operation.kind in kinds and joints.issuperset(operation.joints)
        for joint in operation.joints
    }


def _brought(own: Framework, ordered: Sequence[Operation]) -> FloatArray:
    """For each link of a part, the place in `ordered` from which on it is in the way. A chain of
    a piece that is joined joint by joint lies loose until both its ends are joined."""
    when: dict[str, int] = {}
    joined: dict[str, int] = {}
    for place, operation in enumerate(ordered):
        if operation.adds:
            when.update(dict.fromkeys(operation.links, place))
        if operation.kind is Kind.JOIN and len(operation.joints) == 1:
            joined.update(dict.fromkeys(operation.joints, place))
    places = []
    for link in own.links:
        ends = (joined.get(link.start, 0), joined.get(link.finish, 0))
        places.append(max(when[link.id], *ends))
    return np.array(places, dtype=np.float64)


def is_one_layer(own: Framework, shape: Shape) -> bool:
    """Whether the joints of what is built lie in one plane, so that it has no inside."""
    places = np.array([shape.at[joint] for joint in own.joints])
    off_the_plane = np.linalg.svd(places - places.mean(axis=0), compute_uv=False)[-1]
    return bool(off_the_plane < ONE_LAYER_M * len(places) ** 0.5)


class _About:
    """A part, and people about it."""

    def __init__(self, own: Framework, shape: Shape, hands: HandReach, brought: FloatArray) -> None:
        self.part = PartBodies(own, shape, hands, brought)
        self.hands = hands
        self.own, self.inside = own, not is_one_layer(own, shape)
        self.stands = in_courses(own) and not lies_built(own, shape)
        self.seen: dict[str, PartOnFloor] = {}

    def way_to(self, joint: str, now: float) -> Access:
        """How a joint is got at past the links that are there `now`, a place in the order."""
        hands = self.hands
        both = (*hands.kneeling, *hands.standing)
        if self.stands:
            return self._way_standing(joint, now)
        if self._placed("front", *_FRONT).in_reach(joint, now, hands.kneeling):
            return Access.DIRECT
        for way, angle in ((Access.LIFTED, hands.lifted_edge_deg), (Access.ON_ITS_SIDE, 90.0)):
            for edge in range(4):
                placed = self._placed(f"{way} {edge}", *_tilted(edge, angle))
                if placed.in_reach(joint, now, both):
                    return way
        turned = self._placed("back", *_BACK)
        reached = turned.in_reach(joint, np.inf, hands.kneeling)
        return Access.TURNED if reached else Access.NONE

    def _way_standing(self, joint: str, now: float) -> Access:
        """How a joint of what stands is got at: from the floor, a stool, or as high as it takes."""
        placed, hands = self._placed("standing", *_STANDING), self.hands
        level = placed.height_of(joint) - max(one.shoulder for one in hands.standing)
        ways = [(*hands.kneeling, *hands.standing), _raised(hands.standing, hands.stool)]
        if placed.height_of(joint) > hands.highest and level > hands.stool:
            ways.append(_raised(hands.standing, level))
        match placed.first_in_reach(joint, now, ways):
            case None:
                return Access.NONE
            case 0:
                over = self._over(placed, joint) > hands.reach_over
                return Access.STOOL if over else Access.DIRECT
            case 1:
                return Access.STOOL
            case _:
                return Access.LADDER

    def _over(self, placed: PartOnFloor, joint: str) -> float:
        """How high a hand goes up over what stands, to reach a joint from inside; 0 where there is
        no inside."""
        if not self.inside:
            return 0.0
        met = [self.own.link[id_] for id_ in self.own.links_at[joint]]
        return max(placed.height_of(end) for link in met for end in (link.start, link.finish))

    def _placed(self, name: str, *rows: FloatArray) -> PartOnFloor:
        if name not in self.seen:
            self.seen[name] = PartOnFloor(self.part, np.array(rows))
        return self.seen[name]


def _raised(postures: Sequence[Posture], by_m: float) -> tuple[Posture, ...]:
    """Postures of somebody who stands so much higher."""
    return tuple(Posture(p.shoulder + by_m, p.lean, p.headroom + by_m) for p in postures)


Rows = tuple[FloatArray, FloatArray, FloatArray]


def _rows(*rows: tuple[float, float, float]) -> Rows:
    one, other, up = (np.array(row) for row in rows)
    return one, other, up


# What is along the floor, across it and up, of x, y and z as the piece will stand.
_FRONT = _rows((1, 0, 0), (0, 1, 0), (0, 0, 1))
_BACK = _rows((1, 0, 0), (0, -1, 0), (0, 0, -1))
_STANDING = _rows((1, 0, 0), (0, 0, -1), (0, 1, 0))


@cache
def _tilted(edge: int, angle_deg: float) -> Rows:
    """Lying front up, lifted by an edge (right, left, top, bottom)."""
    sine, cosine = np.sin(np.deg2rad(angle_deg)), np.cos(np.deg2rad(angle_deg))
    sign = 1.0 if edge % 2 == 0 else -1.0
    if edge < 2:
        return _rows((cosine, 0, -sign * sine), (0, 1, 0), (sign * sine, 0, cosine))
    return _rows((1, 0, 0), (0, cosine, -sign * sine), (0, sign * sine, cosine))


def _cautions(ways: Mapping[str, Access]) -> tuple[Problem, ...]:
    shut = tuple(joint for joint, way in ways.items() if way is Access.NONE)
    if not shut:
        return ()
    return (Problem(ReachKind.OUT_OF_REACH, *out_of_reach(), joints=shut),)
