"""Where two pieces meet: the turns and moves that bring joints of one to joints of the other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from scipy.spatial import cKDTree

from buildplan.shape.model import FloatArray

MEETS_SHARE = 0.3  # of a link: joints this near are brought together
LONG_SHARE, ALIKE_SHARE = 0.3, 0.25  # of a link: pairs of joints that a turn is told by
MOST_ANGLES, MOST_TURNED_BY = 48, 6
STEP_M = 0.01  # moves that differ by less are tried once
UPRIGHT_ONLY: tuple[float, ...] = (0.0,)

Spots = Mapping[str, FloatArray]


@dataclass(frozen=True)
class Meeting:
    """`pairs` are joints that come together, of what stays and of what is turned by `angle`
    (radians, about y) and then moved by `move_m`; `miss_m` is how far apart they are at most."""

    pairs: tuple[tuple[str, str], ...]
    angle: float
    move_m: FloatArray
    miss_m: float

    def moved(self, at: FloatArray) -> FloatArray:
        """Where points (n, 3) of what is moved come to be."""
        return at @ turned(self.angle).T + self.move_m


def turned(angle: float) -> FloatArray:
    """The rotation (3, 3) about y by an angle."""
    cos, sin = np.cos(angle), np.sin(angle)
    return np.array([[cos, 0.0, sin], [0.0, 1.0, 0.0], [-sin, 0.0, cos]])


def meetings(
    stays: Spots,
    moves: Spots,
    a_link_m: float,
    angles: Sequence[float],
    within_m: float = np.inf,
) -> Iterator[Meeting]:
    """Every way that brings at least one joint of `moves` to one of `stays`, turned by one of
    `angles` and moved by less than `within_m`; joints meet that are then nearer than a share of a
    link."""
    names, goals = list(stays), np.array(list(stays.values()))
    own, tree = list(moves), cKDTree(goals)
    near = MEETS_SHARE * a_link_m
    for angle in angles:
        points = np.array(list(moves.values())) @ turned(angle).T
        every = _moves(goals, points, within_m + near)
        _, once = np.unique(np.round(every / STEP_M), axis=0, return_index=True)
        for move in every[np.sort(once)]:
            found = _nearest(tree, points + move, near)
            if len(found) > 1:  # set down in the middle of what it meets
                move = move + np.mean([goals[j] - points[i] - move for i, j in found], axis=0)
                found = _nearest(tree, points + move, near)
            if found and np.linalg.norm(move) < within_m:
                miss = max(float(np.linalg.norm(points[i] + move - goals[j])) for i, j in found)
                pairs = tuple((names[j], own[i]) for i, j in found)
                yield Meeting(pairs, angle, move, miss)


def _moves(goals: FloatArray, points: FloatArray, within_m: float) -> FloatArray:
    """The moves (n, 3) that bring a point to a goal, and are no longer; a little longer ones too,
    which may count as the same."""
    if not np.isfinite(within_m):
        return (goals[:, None] - points[None]).reshape(-1, 3)
    reach = within_m + 2 * STEP_M
    near = cKDTree(points).query_ball_point(goals, reach, return_sorted=True)
    moves = [goal - points[which] for goal, which in zip(goals, near, strict=True) if which]
    return np.concatenate(moves) if moves else np.empty((0, 3))


def _nearest(tree: cKDTree, points: FloatArray, near: float) -> list[tuple[int, int]]:
    """Pairs of a point and what it meets, each in one pair."""
    apart, which = tree.query(points, distance_upper_bound=near)
    best: dict[int, int] = {}
    for i in np.argsort(apart, kind="stable"):
        if np.isfinite(apart[i]):
            best.setdefault(int(which[i]), int(i))
    return sorted((i, j) for j, i in best.items())


def turns_between(stays: Spots, moves: Spots, a_link_m: float) -> tuple[float, ...]:
    """Angles that turn two level joints of `moves` as two of `stays` lie; none first."""
    found = {0: 0.0}
    goals, points = np.array(list(stays.values())), np.array(list(moves.values()))
    for way, length in _level(goals[:MOST_TURNED_BY], a_link_m):
        for own, its_length in _level(points, a_link_m):
            if abs(its_length - length) < ALIKE_SHARE * a_link_m:
                # turning by t takes (x, z) to (x cos t + z sin t, z cos t - x sin t)
                angle = float(np.arctan2(own[1] * way[0] - own[0] * way[1], own @ way))
                found.setdefault(round(np.degrees(angle) / 2) % 180, angle)
    return tuple(sorted(found.values(), key=abs)[:MOST_ANGLES])


def _level(points: FloatArray, a_link_m: float) -> Iterator[tuple[FloatArray, float]]:
    """The ways in the plane between points of about one height, with how far apart they are."""
    for i, one in enumerate(points):
        for j, other in enumerate(points):
            way = (other - one)[[0, 2]]
            length = float(np.linalg.norm(way))
            level = abs(other[1] - one[1]) < LONG_SHARE * a_link_m
            if i != j and level and length > LONG_SHARE * a_link_m:
                yield way, length
