"""Where hands can get: each joint as the piece lies on the floor when it is tied and locked.

A person kneels on free floor beside the piece or inside it. A joint is in reach if the
forearm can come to it in a straight line between the balloons, with the elbow above the
floor, and the elbow is within an upper arm of a shoulder. A joint that faces the floor is in
reach once somebody lifts the piece there, if it lies near enough to free floor; failing that,
once the piece is turned over.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum, auto

import numpy as np
from scipy.spatial import cKDTree

from buildplan.framework.model import Framework
from buildplan.sequence.assembly import Joins, meeting_joints
from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.operations import FEWEST_LIFTERS, operations
from buildplan.sequence.ordering import in_order
from buildplan.sequence.words import reaching as words
from buildplan.shape.model import FloatArray, IntArray, Shape
from buildplan.source.problems import Kind as ProblemKind
from buildplan.source.problems import Problem


class ReachKind(ProblemKind):
    """What keeps hands from a joint."""

    OUT_OF_REACH = auto()
    ONLY_FROM_BEHIND = auto()


@dataclass(frozen=True)
class Hands:
    """The measures of a small adult, from memory; lengths in metres.

    `shoulders` are pairs of height above the floor and how far the body leans forward for it.
    `stance` is what a kneeling person needs free round them. Balloons yield: their bodies
    are counted at `yielding` of their size.
    """

    forearm: float = 0.30
    upper_arm: float = 0.32
    shoulders: tuple[tuple[float, float], ...] = ((0.45, 0.25), (0.60, 0.25), (0.75, 0.0))
    stance: float = 0.15
    elbow_above_floor: float = 0.05
    yielding: float = 0.9


class Way(StrEnum):
    """How a joint can be got at while the piece lies front up."""

    DIRECT = "direct"
    LIFTED = "lifted"
    TURNED = "turned"
    NONE = "none"


# One person lifts about this length of a piece. From memory.
METRES_PER_LIFTER = 1.5
_DIRECTIONS = 300
_GRID_M = 0.1
# floor farther than this from a joint helps nobody to reach it
_FLOOR_M = 1.0


def lifters(shape: Shape) -> int:
    """How many people turn the piece over or stand it up."""
    longest = max(shape.width_m, shape.height_m, shape.depth_m)
    return max(FEWEST_LIFTERS, int(np.ceil(longest / METRES_PER_LIFTER)))


def sweep(framework: Framework, shape: Shape, joints: Iterable[str]) -> tuple[str, ...]:
    """`joints` from one end of the piece to the other, so that what is not built yet leaves
    room to kneel."""
    along = 0 if shape.width_m >= shape.height_m else 1

    def place(joint: str) -> tuple[float, float, str]:
        x_y = shape.at[joint][:2].round(3)
        return float(x_y[along]), float(x_y[1 - along]), joint

    return tuple(sorted(joints, key=place))


@dataclass(frozen=True)
class Reach:
    """How each joint is got at, the operations in which it is, and what cannot be got at."""

    ways: Mapping[str, Way]
    operations: tuple[Operation, ...]
    problems: tuple[Problem, ...]


def find_reach(framework: Framework, shape: Shape, hands: Hands | None = None) -> Reach:
    """Plan the work so that hands can get at every joint: front up for as long as that helps;
    joints where chains meet that face the floor and cannot be lifted come after one turning
    over. `problems` names the joints for which no order serves."""
    people = lifters(shape)
    meeting = sweep(framework, shape, meeting_joints(framework))
    planned = operations(framework, Joins(meeting), people)
    ways = ways_to_joints(framework, shape, in_order(planned), hands)
    below = tuple(joint for joint in meeting if ways[joint] is Way.TURNED)
    if below:
        above = tuple(joint for joint in meeting if joint not in set(below))
        planned = operations(framework, Joins(above, below), people)
    return Reach(ways, planned, _problems(ways, below))


def ways_to_joints(
    framework: Framework,
    shape: Shape,
    ordered: Sequence[Operation],
    hands: Hands | None = None,
) -> Mapping[str, Way]:
    """How each joint at which `ordered` operations tie, settle or lock is got at, with the
    piece as it stands when the last of them is done."""
    hands = hands or Hands()
    there = _brought(framework, ordered)
    last = {
        joint: place
        for place, operation in enumerate(ordered)
        if operation.kind in (Kind.BRACE, Kind.SETTLE, Kind.SINGLE, Kind.JOIN, Kind.LOCK)
        for joint in operation.joints
    }
    front, back = (_Lying(framework, shape, up, hands) for up in (1.0, -1.0))
    ways = {}
    for joint, place in last.items():
        about = front.about(joint)
        bodies = about[there[about] <= place]
        if front.in_reach(joint, bodies):
            ways[joint] = Way.DIRECT
        elif front.in_reach(joint, bodies, lifted=True):
            ways[joint] = Way.LIFTED
        elif back.in_reach(joint, bodies):
            ways[joint] = Way.TURNED
        else:
            ways[joint] = Way.NONE
    return ways


def _brought(framework: Framework, ordered: Sequence[Operation]) -> FloatArray:
    """For each link, the place in `ordered` from which on it is in the way. A chain of a
    piece that is joined joint by joint lies loose until both its ends are joined."""
    when = {}
    joined = {}
    for place, operation in enumerate(ordered):
        if operation.adds:
            when.update(dict.fromkeys(operation.links, place))
        if operation.kind is Kind.JOIN and len(operation.joints) == 1:
            joined.update(dict.fromkeys(operation.joints, place))
    if joined:
        for link in framework.links:
            ends = (joined.get(link.start), joined.get(link.finish))
            when[link.id] = max(place for place in (*ends, when[link.id]) if place is not None)
    return np.array([when[link.id] for link in framework.links], dtype=np.float64)


class _Lying:
    """A piece lying on the floor, and a person beside it."""

    def __init__(self, framework: Framework, shape: Shape, up: float, hands: Hands) -> None:
        radius = np.array([framework.balloons[k.balloon].gauge_m / 2 for k in framework.links])
        flat = shape.positions_m * (1.0, 1.0, up)
        flat[:, 2] += radius.max() - flat[:, 2].min()
        number = shape.row
        starts = flat[[number[link.start] for link in framework.links]]
        finishes = flat[[number[link.finish] for link in framework.links]]
        length = np.linalg.norm(finishes - starts, axis=1)
        self.hands = hands
        self.at = {joint: flat[row] for joint, row in number.items()}
        self.starts, self.finishes = starts[:, :2], finishes[:, :2]
        self.middle = (starts + finishes) / 2
        self.axis = (finishes - starts) / length[:, None]
        self.half = length / 2 * hands.yielding
        self.radius = radius * hands.yielding
        self.longest = float(length.max() / 2 + radius.max())
        self.near = cKDTree(self.middle[:, :2])
        self.directions = _spread_directions(_DIRECTIONS)

    def about(self, joint: str) -> IntArray:
        """Numbers of the links near enough to matter to a person reaching for `joint`."""
        far = _FLOOR_M + self.hands.stance + self.longest
        return np.array(self.near.query_ball_point(self.at[joint][:2], far), dtype=np.intp)

    def in_reach(self, joint: str, bodies: IntArray, lifted: bool = False) -> bool:
        """Whether a hand gets to `joint` past `bodies` (numbers of links). `lifted`, the elbow
        may be where the floor was."""
        at, hands = self.at[joint], self.hands
        elbows = at + hands.forearm * self._clear(at, bodies)
        if not lifted:
            elbows = elbows[elbows[:, 2] >= hands.elbow_above_floor]
        spots = self._free_floor(at, bodies)
        if not len(elbows) or not len(spots):
            return False
        if lifted:
            elbows = np.maximum(elbows, (-np.inf, -np.inf, hands.elbow_above_floor))
        for height, lean in hands.shoulders:
            shoulders = np.column_stack([spots, np.full(len(spots), height)])
            apart = np.linalg.norm(shoulders[:, None] - elbows[None], axis=2)
            if (apart <= hands.upper_arm + lean).any():
                return True
        return False

    def _clear(self, at: FloatArray, bodies: IntArray) -> FloatArray:
        """Directions from `at` in which a forearm passes between the bodies, each counted as
        an ellipsoid along its link."""
        reach = self.hands.forearm + self.longest
        near = np.linalg.norm(self.middle[bodies] - at, axis=1) < reach
        which = bodies[near]
        axis, half, radius = self.axis[which], self.half[which], self.radius[which]
        offset = at - self.middle[which]
        along = (offset * axis).sum(axis=1)
        across = offset - along[:, None] * axis
        # directions and axes are of unit length, so that products give the parts across as well
        d_along = self.directions @ axis.T
        d_offset = self.directions @ offset.T
        a = (d_along / half) ** 2 + (1 - d_along**2) / radius**2
        b = along * d_along / half**2 + (d_offset - along * d_along) / radius**2
        c = (along / half) ** 2 + (across**2).sum(axis=1) / radius**2 - 1
        root = np.sqrt(np.maximum(b * b - a * c, 0.0))
        hit = (b * b > a * c) & (root - b > 0) & (-root - b < self.hands.forearm * a)
        return np.asarray(self.directions[~hit.any(axis=1)])

    def _free_floor(self, at: FloatArray, bodies: IntArray) -> FloatArray:
        """Spots of floor about `at` on which nothing lies."""
        spots = at[:2] + _GRID
        start, run = self.starts[bodies], self.finishes[bodies] - self.starts[bodies]
        x, y = (spots[:, None, axis] - start[:, axis] for axis in (0, 1))
        share = (x * run[:, 0] + y * run[:, 1]) / np.maximum((run * run).sum(axis=1), 1e-9)
        np.clip(share, 0.0, 1.0, out=share)
        apart = (x - share * run[:, 0]) ** 2 + (y - share * run[:, 1]) ** 2
        clear = (apart > (self.radius[bodies] + self.hands.stance) ** 2).all(axis=1)
        return np.asarray(spots[clear])


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


def _problems(ways: Mapping[str, Way], turned: Sequence[str]) -> tuple[Problem, ...]:
    shut = tuple(joint for joint, way in ways.items() if way is Way.NONE)
    amid = tuple(j for j, way in ways.items() if way is Way.TURNED and j not in set(turned))
    problems = []
    if shut:
        problems.append(Problem(ReachKind.OUT_OF_REACH, *words.out_of_reach(), joints=shut))
    if amid:
        problems.append(Problem(ReachKind.ONLY_FROM_BEHIND, *words.only_from_behind(), joints=amid))
    return tuple(problems)
