"""The balloons of a piece as arrays: ends, lengths, radii, and which bodies crowd one another."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations

import numpy as np
from scipy.spatial import cKDTree

from buildplan.framework.model import Framework
from buildplan.shape.constants import Constant
from buildplan.shape.model import FloatArray, IntArray
from buildplan.shape.springs import Springs, springs_between


@dataclass(frozen=True)
class LinkBodies:
    """Link balloons by number, in the order of the framework's links, and joints by the number
    of their place.

    `ends` (links, 2) are numbers of joints, `length_m` the tie-to-tie lengths, `radius_m`
    half the gauges. `sharing` (pairs, 3) lists bodies that meet: the two links and the joint
    that they share.
    """

    joints: int
    ends: IntArray
    length_m: FloatArray
    radius_m: FloatArray
    sharing: IntArray

    def midpoints_m(self, positions_m: FloatArray) -> FloatArray:
        """Centre of each body, (links, 3)."""
        return 0.5 * (positions_m[self.ends[:, 0]] + positions_m[self.ends[:, 1]])

    def axes(self, positions_m: FloatArray) -> FloatArray:
        """Direction of each body from start to finish, (links, 3), of length 1."""
        vector = positions_m[self.ends[:, 1]] - positions_m[self.ends[:, 0]]
        length = np.linalg.norm(vector, axis=1, keepdims=True)
        return np.asarray(vector / np.maximum(length, 1e-12))

    def lowest_m(self, positions_m: FloatArray) -> FloatArray:
        """Lowest point of each body, a spheroid along its axis, (links, 3)."""
        axis = self.axes(positions_m)
        radius, half = self.radius_m[:, None], self.length_m[:, None] / 2
        upward = axis[:, 1:2]
        reach = np.sqrt(radius**2 + (half**2 - radius**2) * upward**2)
        down = (
            radius**2 * np.array([0.0, 1.0, 0.0]) + (half**2 - radius**2) * upward * axis
        ) / reach
        return np.asarray(self.midpoints_m(positions_m) - down)

    def strain(self, positions_m: FloatArray) -> FloatArray:
        """Relative change of each link's length, (links,)."""
        vector = positions_m[self.ends[:, 1]] - positions_m[self.ends[:, 0]]
        return np.asarray(np.linalg.norm(vector, axis=1) / self.length_m - 1)

    @cached_property
    def far_ends(self) -> IntArray:
        """For each pair of `sharing`, the joint of either link that is not shared."""
        first, second, joint = self.sharing.T
        return np.column_stack(
            [self.ends[first].sum(axis=1) - joint, self.ends[second].sum(axis=1) - joint]
        )

    @cached_property
    def links_at(self) -> tuple[IntArray, ...]:
        """Numbers of the links that end at each joint."""
        order = np.argsort(self.ends.ravel(), kind="stable")
        at = self.ends.ravel()[order]
        cuts = np.searchsorted(at, np.arange(1, self.joints))
        return tuple(np.split(order // 2, cuts))

    @cached_property
    def parted(self) -> IntArray:
        """The pairs of `sharing` whose far ends differ: not two links between the same joints."""
        return np.asarray(self.sharing[self.far_ends[:, 0] != self.far_ends[:, 1]])

    @cached_property
    def sharing_keys(self) -> IntArray:
        """The pairs of `sharing` as sorted single numbers, for look-up."""
        return np.unique(self.sharing[:, 0] * len(self.ends) + self.sharing[:, 1])


def bodies_of(framework: Framework) -> LinkBodies:
    """The arrays of a framework."""
    number = framework.place_number
    ends = np.array([(number[link.start], number[link.finish]) for link in framework.links], int)
    types = [framework.balloons[link.balloon] for link in framework.links]
    at: list[list[int]] = [[] for _ in framework.places]
    for i, (start, finish) in enumerate(ends):
        at[start].append(i)
        at[finish].append(i)
    sharing = [(i, j, joint) for joint, links in enumerate(at) for i, j in combinations(links, 2)]
    return LinkBodies(
        joints=len(framework.places),
        ends=ends.reshape(-1, 2),
        length_m=np.array([balloon.tie_to_tie_m for balloon in types]),
        radius_m=np.array([balloon.gauge_m / 2 for balloon in types]),
        sharing=np.array(sharing, int).reshape(-1, 3),
    )


def struts(bodies: LinkBodies, constants: Mapping[str, Constant]) -> Springs:
    """Every link as a stiff strut of its tie-to-tie length."""
    return springs_between(
        bodies.ends,
        np.array([1.0, -1.0]),
        bodies.joints,
        bodies.length_m,
        constants["strut_stiffness"].value,
        push_only=False,
    )


def crowding(bodies: LinkBodies, constants: Mapping[str, Constant]) -> Springs:
    """Bodies that share a joint push apart below a share of their mean tie-to-tie length.

    Their midpoints differ by half the vector between their far ends, so that is the spring.
    Two links between the same two joints have no far ends that could part: left out.
    """
    parted = bodies.far_ends[:, 0] != bodies.far_ends[:, 1]
    first, second, _ = bodies.sharing[parted].T
    mean = 0.5 * (bodies.length_m[first] + bodies.length_m[second])
    return springs_between(
        bodies.far_ends[parted],
        np.array([0.5, -0.5]),
        bodies.joints,
        constants["crowding_ratio"].value * mean,
        constants["crowding_stiffness"].value,
        push_only=True,
    )


def opening(bodies: LinkBodies, constants: Mapping[str, Constant]) -> Springs:
    """Two links that meet would rather lie in one line: the knots' own slight stiffness.

    Far too weak to stretch anything. It settles what lengths and crowding leave open (a loose ring
    lies round, a wall of squares lies flat), so that a floppy piece has one drawn shape.
    """
    parted = bodies.far_ends[:, 0] != bodies.far_ends[:, 1]
    first, second, _ = bodies.sharing[parted].T
    return springs_between(
        bodies.far_ends[parted],
        np.array([0.5, -0.5]),
        bodies.joints,
        0.5 * (bodies.length_m[first] + bodies.length_m[second]),
        constants["opening_stiffness"].value,
        push_only=True,
    )


def touching_m(
    bodies: LinkBodies, pairs: IntArray, constants: Mapping[str, Constant]
) -> FloatArray:
    """How near the midpoints of bodies that share no joint may come, (pairs,).

    Bodies squash as far as they do where they share a joint, but are never wider than their gauge.
    """
    squashed = constants["crowding_ratio"].value * bodies.length_m[pairs].mean(axis=1)
    return np.asarray(np.minimum(squashed, bodies.radius_m[pairs].sum(axis=1)))


def neighbours(
    bodies: LinkBodies, positions_m: FloatArray, skin_m: float, constants: Mapping[str, Constant]
) -> IntArray:
    """Pairs of links (pairs, 2) that share no joint and are nearer than touching plus `skin_m`."""
    middle = bodies.midpoints_m(positions_m)
    reach = 2 * float(bodies.radius_m.max()) + skin_m
    pairs = cKDTree(middle).query_pairs(reach, output_type="ndarray")
    pairs = pairs[np.lexsort((pairs[:, 1], pairs[:, 0]))]
    apart = np.linalg.norm(middle[pairs[:, 0]] - middle[pairs[:, 1]], axis=1)
    near = apart < touching_m(bodies, pairs, constants) + skin_m
    strangers = ~np.isin(pairs[:, 0] * len(bodies.ends) + pairs[:, 1], bodies.sharing_keys)
    return np.asarray(pairs[near & strangers], int)


def contacts(bodies: LinkBodies, pairs: IntArray, constants: Mapping[str, Constant]) -> Springs:
    """Bodies that share no joint may not overlap: midpoints push apart below touching."""
    ends = np.hstack([bodies.ends[pairs[:, 0]], bodies.ends[pairs[:, 1]]])
    return springs_between(
        ends,
        np.array([0.5, 0.5, -0.5, -0.5]),
        bodies.joints,
        touching_m(bodies, pairs, constants),
        constants["overlap_stiffness"].value,
        push_only=True,
    )
