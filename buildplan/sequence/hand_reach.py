"""How far a hand comes: a part in one attitude on the floor, and people about it.

A person kneels or stands on free floor beside the piece or inside it. A joint is in reach if the
forearm can come to it in a straight line between the balloons, with the elbow above the floor,
and the elbow is within an upper arm and a lean of a shoulder.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache, cached_property

import numpy as np
import numpy.typing as npt
from scipy.spatial import cKDTree

from buildplan.framework.model import Framework
from buildplan.sequence.taken_floor import TakenFloor, taken_floor
from buildplan.shape.constants import Constant
from buildplan.shape.model import FloatArray, IntArray, Shape


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
    height of a step stool; down inside over what stands somebody on the floor reaches where that
    is no higher than `reach_over`. To reach under a piece it is lifted by an edge, as far as
    `lifted_edge_deg`; each who lifts lifts about so much of it as `lifter` says.
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
    reach_over: float = 1.5
    lifted_edge_deg: float = 40.0
    lifter: float = 1.5

    @property
    def highest(self) -> float:
        """How high a hand still works from the floor: 1.92 m as it comes, about what small adults
        reach up to with a grip (from memory: women's 5th percentile, 1.8 to 1.9 m)."""
        return self.forearm + self.upper_arm + max(one.shoulder for one in self.standing)


def hands_with(constants: Mapping[str, Constant]) -> HandReach:
    """The measures of hands as a table of constants has them; other postures lean in proportion
    to the one that is bent lowest."""
    usual = HandReach()
    lean = constants["lean"].value / usual.kneeling[0].lean
    return HandReach(
        forearm=constants["forearm"].value,
        upper_arm=constants["upper_arm"].value,
        kneeling=tuple(replace(each, lean=each.lean * lean) for each in usual.kneeling),
        standing=tuple(replace(each, lean=each.lean * lean) for each in usual.standing),
        stance=constants["clear_floor"].value,
        yielding=constants["yielding"].value,
        stool=constants["stool"].value,
        reach_over=constants["reach_over"].value,
        lifted_edge_deg=constants["lifted_edge"].value,
        lifter=constants["lifter"].value,
    )


_DIRECTIONS = 300


_GRID_M = 0.1
_SPOTS_AT_ONCE, _BODIES_AT_ONCE = 40, 100
_MANY_BODIES = 400  # about a joint: so many take most of the floor


# floor farther than this from a joint helps nobody to reach it
_FLOOR_M = 1.0
_SQUARE_M = 0.3  # of the floor: what lies about it is looked up once for all joints over it


class PartBodies:
    """The bodies of a part as the piece will stand, and from which place in the order of work on
    each is there: `when` (links,)."""

    def __init__(self, own: Framework, shape: Shape, hands: HandReach, when: FloatArray) -> None:
        radius = np.array([own.balloons[link.balloon].gauge_m / 2 for link in own.links])
        self.starts = np.array([shape.at[link.start] for link in own.links])
        self.finishes = np.array([shape.at[link.finish] for link in own.links])
        length = np.linalg.norm(self.finishes - self.starts, axis=1)
        self.at = {joint: shape.at[joint] for joint in own.joints}
        self.half = length / 2 * hands.yielding
        self.radius = radius * hands.yielding
        self.longest = float(length.max() / 2 + radius.max())
        self.full_radius = float(radius.max())
        self.hands, self.when = hands, when


class PartOnFloor:
    """A part in one attitude on the floor."""

    def __init__(self, part: PartBodies, rows: FloatArray) -> None:
        self.part, self.hands, self.rows = part, part.hands, rows
        starts, finishes = part.starts @ rows.T, part.finishes @ rows.T
        self.sunk = part.full_radius - min(starts[:, 2].min(), finishes[:, 2].min())
        starts[:, 2] += self.sunk
        finishes[:, 2] += self.sunk
        self.middle = (starts + finishes) / 2
        span = finishes - starts
        self.axis = span / np.maximum(np.linalg.norm(span, axis=1), 1e-9)[:, None]
        self.starts, self.runs = starts[:, :2], span[:, :2]
        self.run_squares = np.maximum((self.runs * self.runs).sum(axis=1), 1e-9)
        self.kept_m = part.radius + self.hands.stance
        self.kept_free = self.kept_m**2
        self.lowest = np.minimum(starts[:, 2], finishes[:, 2]) - part.radius
        self.tree, self.plan = cKDTree(self.middle), cKDTree(self.middle[:, :2])
        self.about: dict[tuple[int, int], IntArray] = {}

    def height_of(self, joint: str) -> float:
        """How high a joint is above the floor, in metres."""
        return float(self.rows[2] @ self.part.at[joint] + self.sunk)

    @cached_property
    def taken(self) -> TakenFloor:
        """The floor under the whole part."""
        postures = (*self.hands.kneeling, *self.hands.standing)
        headrooms = [one.headroom for one in postures]
        return taken_floor(
            self.starts, self.runs, self.kept_m, self.lowest, self.part.when, headrooms
        )

    def in_reach(self, joint: str, now: float, postures: Sequence[Posture]) -> bool:
        """Whether a hand gets to `joint` past the links that are there `now`, from any posture."""
        return self.first_in_reach(joint, now, (postures,)) is not None

    def first_in_reach(
        self, joint: str, now: float, ways_to_be: Sequence[Sequence[Posture]]
    ) -> int | None:
        """The number of the first of some sets of postures from which a hand gets to `joint` past
        the links that are there `now`, a place in the order of work; None where it does from none
        of them."""
        at = self.rows @ self.part.at[joint]
        at[2] += self.sunk
        there = self.part.when <= now
        elbows = at[2] + self.hands.forearm * _spread_directions(_DIRECTIONS)[:, 2]
        ways = self._clear(at, np.flatnonzero(elbows >= self.hands.elbow_above_floor), there)
        if not len(ways):
            return None
        bodies = self._about(at)
        bodies = bodies[there[bodies]]
        elbows = elbows[ways]
        across = _squares_to_elbows(self.hands.forearm)[ways]
        lowest = self.lowest[bodies]
        # where a body lies under one headroom it lies under every greater one
        taken_from = np.full(len(_GRID), np.inf)
        for number, postures in enumerate(ways_to_be):
            for posture in postures:
                arm = (self.hands.upper_arm + posture.lean) ** 2 - (posture.shoulder - elbows) ** 2
                near = (across <= arm[:, None]).any(axis=0) & (taken_from > posture.headroom)
                taken_from[near] = posture.headroom
                spots, low = at[:2] + _GRID[near], bodies[lowest < posture.headroom]
                if len(low) > _MANY_BODIES:
                    taken, free = self.taken.taken_and_free(spots, posture.headroom, now)
                    if free.any():
                        return number
                    spots = spots[~taken]
                if self._some_floor(spots, low):
                    return number
        return None

    def _about(self, at: FloatArray) -> IntArray:
        """The bodies that may lie on the floor about a place, and some farther off."""
        square = int(at[0] // _SQUARE_M), int(at[1] // _SQUARE_M)
        if square not in self.about:
            middle = (np.array(square) + 0.5) * _SQUARE_M
            far = _FLOOR_M + self.hands.stance + self.part.longest + _SQUARE_M
            self.about[square] = np.array(self.plan.query_ball_point(middle, far), dtype=np.intp)
        return self.about[square]

    def _clear(self, at: FloatArray, ways: IntArray, there: np.ndarray) -> IntArray:
        """Those of some directions in which, from `at`, a forearm passes between the bodies that
        are `there`."""
        reach = self.hands.forearm + self.part.longest
        near = np.array(self.tree.query_ball_point(at, reach), dtype=np.intp)
        for group in _dealt(near[there[near]]):
            if not len(ways):
                break
            ways = ways[self._passes(at, _spread_directions(_DIRECTIONS)[ways], group)]
        return ways

    def _passes(
        self, at: FloatArray, directions: FloatArray, which: IntArray
    ) -> npt.NDArray[np.bool_]:
        """In which directions (n, 3) from `at` a forearm meets none of some bodies, each counted
        as an ellipsoid along its link."""
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
        return np.asarray(~hit.any(axis=1))

    def _some_floor(self, spots: FloatArray, bodies: IntArray) -> bool:
        """Whether on some of the spots (n, 2) of the floor none of `bodies` lies."""
        groups = _dealt(bodies)
        for at in range(0, len(spots), _SPOTS_AT_ONCE):
            left = spots[at : at + _SPOTS_AT_ONCE]
            for group in groups:
                left = left[self._free(left, group)]
                if not len(left):
                    break
            else:
                return bool(len(left))
        return False

    def _free(self, spots: FloatArray, bodies: IntArray) -> npt.NDArray[np.bool_]:
        """On which spots none of `bodies` lies."""
        (x0, y0), (along, up) = self.starts[bodies].T, self.runs[bodies].T
        x, y = spots[:, :1] - x0, spots[:, 1:] - y0
        share = x * along
        share += y * up
        share /= self.run_squares[bodies]
        np.minimum(np.maximum(share, 0.0, out=share), 1.0, out=share)
        x -= share * along
        y -= np.multiply(share, up, out=share)
        x *= x
        y *= y
        x += y
        return np.asarray((x > self.kept_free[bodies]).all(axis=1))


def _dealt(bodies: IntArray) -> list[IntArray]:
    """Bodies in groups, each of them from everywhere: where many lie, the first few groups leave
    no spot free."""
    count = max(1, round(len(bodies) / _BODIES_AT_ONCE))
    return [bodies[one::count] for one in range(count)]


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
    grid = grid[np.linalg.norm(grid, axis=1) <= _FLOOR_M]
    # farthest out first: that is where the floor is likeliest to be free
    return np.asarray(grid[np.argsort(-np.linalg.norm(grid, axis=1), kind="stable")])


_GRID = _floor_grid()


@cache
def _squares_to_elbows(forearm: float) -> FloatArray:
    """How far each spot of the floor grid is, seen from above, from an elbow that lies in each
    direction from the joint, squared, (directions, spots)."""
    apart = _GRID[None] - forearm * _spread_directions(_DIRECTIONS)[:, None, :2]
    return np.asarray((apart**2).sum(axis=2))
