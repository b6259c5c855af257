"""Where hands can get: each joint as the piece is when it is tied and locked.

A person kneels or stands on free floor beside the piece or inside it. A joint is in reach if the
forearm can come to it in a straight line between the balloons, with the elbow above the floor,
and the elbow is within an upper arm and a lean of a shoulder. Where it is not, somebody lifts the
piece by an edge, or stands it on its side; failing that, it is turned over, once, when all else is
done. What is built standing is gone round, and its high joints are reached from a stool.

All this is advice. Balloons yield and people help one another: what the model finds no way to is
told as a caution, and nothing is refused for it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from enum import auto
from functools import cache

import numpy as np
from scipy.spatial import cKDTree

from buildplan.framework.model import Framework
from buildplan.sequence.courses import built_pieces, in_courses, order_of
from buildplan.sequence.model import Access, Kind, Operation
from buildplan.sequence.operations import FEWEST_LIFTERS, operations
from buildplan.sequence.ordering import in_order
from buildplan.sequence.unreached import out_of_reach
from buildplan.shape.model import FloatArray, IntArray, Shape
from buildplan.source.problems import Problem, ProblemKind


class ReachKind(ProblemKind):
    """What is to be known about getting at joints."""

    OUT_OF_REACH = auto()


@dataclass(frozen=True)
class Posture:
    """How somebody is beside the piece: how high their shoulder is and how far it comes forward
    of where they kneel or stand, and what is over that height is over their head; metres."""

    shoulder: float
    lean: float
    headroom: float


@dataclass(frozen=True)
class HandReach:
    """The measures of a small adult and what balloons allow, from memory; lengths in metres.

    `stance` is what somebody needs free round their knees or feet. Balloons yield to a hand that
    is pushed between them: their bodies are counted at `yielding` of their size. `stool` is the
    height of a step stool.
    """

    forearm: float = 0.30
    upper_arm: float = 0.32
    kneeling: tuple[Posture, ...] = (
        Posture(0.45, 0.40, 0.6),  # on one hand, bent low over the piece
        Posture(0.60, 0.35, 0.8),
        Posture(0.75, 0.15, 1.0),
    )
    standing: tuple[Posture, ...] = (Posture(0.95, 0.45, 1.2), Posture(1.30, 0.15, 1.6))
    stance: float = 0.10
    elbow_above_floor: float = 0.05
    yielding: float = 0.8
    stool: float = 0.45


# One person lifts about this length of a piece. From memory.
METRES_PER_LIFTER = 1.5
# How far an edge is lifted while somebody reaches under, in degrees. From memory.
LIFTED_DEG = 40.0
# A piece so many times as wide and as high as it is deep lies flat while it is built. Ours.
FLAT = 2.5
_DIRECTIONS = 300
_GRID_M = 0.1
# floor farther than this from a joint helps nobody to reach it
_FLOOR_M = 1.0


def lifters(shape: Shape) -> int:
    """How many people turn the piece over or stand it up."""
    longest = max(shape.width_m, shape.height_m, shape.depth_m)
    return max(FEWEST_LIFTERS, int(np.ceil(longest / METRES_PER_LIFTER)))


@dataclass(frozen=True)
class Reach:
    """How each joint is got at, the operations in which it is, and what to take note of."""

    ways: Mapping[str, Access]
    operations: tuple[Operation, ...]
    cautions: tuple[Problem, ...]


def find_reach(framework: Framework, shape: Shape, hands: HandReach | None = None) -> Reach:
    """Plan the work so that hands can get at every joint. What lies is lifted or stood on its
    side where that helps; joints for which it does not are locked after one turning over of the
    piece, or part. `cautions` names the joints to which no way was found."""
    people = lifters(shape)
    order = order_of(framework, shape.at)
    planned = operations(framework, order, people)
    ways = ways_to_joints(framework, shape, in_order(planned), hands)
    turned = frozenset(joint for joint, way in ways.items() if way is Access.TURNED)
    if turned:
        planned = operations(framework, replace(order, later=turned), people)
    return Reach(ways, planned, _cautions(ways))


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
        there = _brought(own, ordered)
        worked = _last_worked(own, ordered)
        about = _About(own, shape, hands)
        for joint, place in worked.items():
            ways[joint] = about.way_to(joint, there <= place)
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


def is_flat(own: Framework, shape: Shape) -> bool:
    """Whether what is built without braces is flat, as a wall, and is built lying on its back."""
    width, height, depth = np.ptp(np.array([shape.at[joint] for joint in own.joints]), axis=0)
    return bool(min(width, height) > FLAT * depth)


class _About:
    """A part, and people about it."""

    def __init__(self, own: Framework, shape: Shape, hands: HandReach) -> None:
        self.part = _Part(own, shape, hands)
        self.hands = hands
        self.stands = in_courses(own) and not is_flat(own, shape)
        self.seen: dict[str, _Placed] = {}

    def way_to(self, joint: str, there: np.ndarray) -> Access:
        """How a joint is got at past the links that are `there`."""
        hands = self.hands
        both = (*hands.kneeling, *hands.standing)
        if self.stands:
            if self._placed("standing", *_STANDING).in_reach(joint, there, both):
                return Access.DIRECT
            raised = tuple(
                Posture(p.shoulder + hands.stool, p.lean, p.headroom + hands.stool)
                for p in hands.standing
            )
            return self._way(Access.STOOL, "standing", joint, there, raised)
        if self._placed("front", *_FRONT).in_reach(joint, there, hands.kneeling):
            return Access.DIRECT
        for way, angle in ((Access.LIFTED, LIFTED_DEG), (Access.ON_ITS_SIDE, 90.0)):
            for edge in range(4):
                placed = self._placed(f"{way} {edge}", *_tilted(edge, angle))
                if placed.in_reach(joint, there, both):
                    return way
        return self._way(Access.TURNED, "back", joint, np.ones_like(there), hands.kneeling)

    def _way(
        self, way: Access, attitude: str, joint: str, there: np.ndarray, postures: Sequence[Posture]
    ) -> Access:
        rows = _STANDING if attitude == "standing" else _BACK
        reached = self._placed(attitude, *rows).in_reach(joint, there, postures)
        return way if reached else Access.NONE

    def _placed(self, name: str, *rows: FloatArray) -> _Placed:
        if name not in self.seen:
            self.seen[name] = _Placed(self.part, np.array(rows))
        return self.seen[name]


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


class _Part:
    """The bodies of a part as the piece will stand."""

    def __init__(self, own: Framework, shape: Shape, hands: HandReach) -> None:
        radius = np.array([own.balloons[link.balloon].gauge_m / 2 for link in own.links])
        self.starts = np.array([shape.at[link.start] for link in own.links])
        self.finishes = np.array([shape.at[link.finish] for link in own.links])
        length = np.linalg.norm(self.finishes - self.starts, axis=1)
        self.at = {joint: shape.at[joint] for joint in own.joints}
        self.half = length / 2 * hands.yielding
        self.radius = radius * hands.yielding
        self.longest = float(length.max() / 2 + radius.max())
        self.full_radius = float(radius.max())
        self.hands = hands


class _Placed:
    """A part in one attitude on the floor."""

    def __init__(self, part: _Part, rows: FloatArray) -> None:
        self.part, self.hands, self.rows = part, part.hands, rows
        starts, finishes = part.starts @ rows.T, part.finishes @ rows.T
        self.sunk = part.full_radius - min(starts[:, 2].min(), finishes[:, 2].min())
        starts[:, 2] += self.sunk
        finishes[:, 2] += self.sunk
        self.middle = (starts + finishes) / 2
        span = finishes - starts
        self.axis = span / np.maximum(np.linalg.norm(span, axis=1), 1e-9)[:, None]
        self.starts, self.finishes = starts[:, :2], finishes[:, :2]
        self.lowest = np.minimum(starts[:, 2], finishes[:, 2]) - part.radius
        self.near = cKDTree(self.middle[:, :2])

    def in_reach(self, joint: str, there: np.ndarray, postures: Sequence[Posture]) -> bool:
        """Whether a hand gets to `joint` past the links that are `there`, from any posture."""
        at = self.rows @ self.part.at[joint]
        at[2] += self.sunk
        far = _FLOOR_M + self.hands.stance + self.part.longest
        bodies = np.array(self.near.query_ball_point(at[:2], far), dtype=np.intp)
        bodies = bodies[there[bodies]]
        elbows = at + self.hands.forearm * self._clear(at, bodies)
        elbows = elbows[elbows[:, 2] >= self.hands.elbow_above_floor]
        if not len(elbows):
            return False
        for posture in postures:
            spots = self._free_floor(at, bodies[self.lowest[bodies] < posture.headroom])
            shoulders = np.column_stack([spots, np.full(len(spots), posture.shoulder)])
            apart = np.linalg.norm(shoulders[:, None] - elbows[None], axis=2)
            if (apart <= self.hands.upper_arm + posture.lean).any():
                return True
        return False

    def _clear(self, at: FloatArray, bodies: IntArray) -> FloatArray:
        """Directions from `at` in which a forearm passes between the bodies, each counted as
        an ellipsoid along its link."""
        directions = _spread_directions(_DIRECTIONS)
        reach = self.hands.forearm + self.part.longest
        near = np.linalg.norm(self.middle[bodies] - at, axis=1) < reach
        which = bodies[near]
        axis, half, radius = self.axis[which], self.part.half[which], self.part.radius[which]
        offset = at - self.middle[which]
        along = (offset * axis).sum(axis=1)
        across = offset - along[:, None] * axis
        # directions and axes are of unit length, so that products give the parts across as well
        d_along = directions @ axis.T
        d_offset = directions @ offset.T
        a = (d_along / half) ** 2 + (1 - d_along**2) / radius**2
        b = along * d_along / half**2 + (d_offset - along * d_along) / radius**2
        c = (along / half) ** 2 + (across**2).sum(axis=1) / radius**2 - 1
        root = np.sqrt(np.maximum(b * b - a * c, 0.0))
        hit = (b * b > a * c) & (root - b > 0) & (-root - b < self.hands.forearm * a)
        return np.asarray(directions[~hit.any(axis=1)])

    def _free_floor(self, at: FloatArray, bodies: IntArray) -> FloatArray:
        """Spots of floor about `at` on which none of `bodies` lies."""
        spots = at[:2] + _GRID
        start, run = self.starts[bodies], self.finishes[bodies] - self.starts[bodies]
        x, y = (spots[:, None, axis] - start[:, axis] for axis in (0, 1))
        share = (x * run[:, 0] + y * run[:, 1]) / np.maximum((run * run).sum(axis=1), 1e-9)
        np.clip(share, 0.0, 1.0, out=share)
        apart = (x - share * run[:, 0]) ** 2 + (y - share * run[:, 1]) ** 2
        clear = (apart > (self.part.radius[bodies] + self.hands.stance) ** 2).all(axis=1)
        return np.asarray(spots[clear])


@cache
def _spread_directions(count: int) -> FloatArray:
    """Directions spread evenly over the sphere along a golden-angle spiral."""
    place = np.arange(count) + 0.5
    height = 1 - 2 * place / count
    turn = place * np.pi * (3 - np.sqrt(5))
    flat = np.sqrt(1 - height**2)
    return np.column_stack([flat * np.cos(turn), flat * np.sin(turn), height])


def _floor_grid() -> FloatArray:
    steps = round(_FLOOR_M / _GRID_M)
    line = np.arange(-steps, steps + 1) * _GRID_M
    grid = np.stack(np.meshgrid(line, line), axis=-1).reshape(-1, 2)
    return np.asarray(grid[np.linalg.norm(grid, axis=1) <= _FLOOR_M])


_GRID = _floor_grid()


def _cautions(ways: Mapping[str, Access]) -> tuple[Problem, ...]:
    shut = tuple(joint for joint, way in ways.items() if way is Access.NONE)
    if not shut:
        return ()
    return (Problem(ReachKind.OUT_OF_REACH, *out_of_reach(), joints=shut),)
