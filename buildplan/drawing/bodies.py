"""A state of the work as bodies in space: link balloons and the rounds of locks."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property

import numpy as np
import numpy.typing as npt

from buildplan.drawing.arrays import BoolArray, FloatArray
from buildplan.drawing.valleys import ON_BALLOON, valleys
from buildplan.framework.chain_roles import RING
from buildplan.framework.model import Framework, Link, Role
from buildplan.shape.model import Shape
from buildplan.shape.tied_parts import doubled, part_of, way_apart

# Of two balloons that share both their knots each bows aside by this share of its gauge. Ours:
# they touch, and give a little.
BOWED = 0.42
# Of a round's radius: how far out of its joint its centre is, and how far aside. Ours: two rounds
# side by side touch one another and the knots.
OUT, ASIDE = 0.75, 0.96

NameArray = npt.NDArray[np.object_]


@dataclass(frozen=True, eq=False)
class Bodies:
    """The bodies of a scene, one row each; links first, in the framework's order.

    `names` are link ids, and joints for the rounds of a lock (two rows each). `first` and
    `second` (n, 3) are a link's two knots, a round's joint and the point across its centre
    from there; `centre` (n, 3) is the middle. Lengths are metres.
    """

    names: NameArray
    balloons: NameArray
    is_link: BoolArray
    is_new: BoolArray
    first: FloatArray
    second: FloatArray
    centre: FloatArray
    radius: FloatArray

    def some(self, kept: BoolArray) -> Bodies:
        """The bodies for which `kept` (n,) is true."""
        rows = np.flatnonzero(kept)
        return Bodies(
            names=self.names[rows],
            balloons=self.balloons[rows],
            is_link=self.is_link[rows],
            is_new=self.is_new[rows],
            first=self.first[rows],
            second=self.second[rows],
            centre=self.centre[rows],
            radius=self.radius[rows],
        )

    def moved(self, by_m: FloatArray) -> Bodies:
        """The bodies, each moved by its row of `by_m` (n, 3), metres."""
        return replace(
            self, first=self.first + by_m, second=self.second + by_m, centre=self.centre + by_m
        )


@dataclass(frozen=True)
class Scene:
    """What is in a picture: a piece, its shape, what is new and what stands already.

    Links are named by id, locks by joint; what is named nowhere is not drawn. `patterns`
    gives balloon keys the number of their sign (`Look.pattern`), `finishes` another finish
    than their own. Of what stands, `far_links` and `far_locks` are drawn simpler. `loose` are
    links that hang on a joint with their other end nowhere yet: stubs. `every_body` are the
    bodies to choose from, where they are known already.
    """

    framework: Framework
    shape: Shape
    new_links: frozenset[str] = frozenset()
    done_links: frozenset[str] = frozenset()
    new_locks: frozenset[str] = frozenset()
    done_locks: frozenset[str] = frozenset()
    patterns: Mapping[str, int] = field(default_factory=dict)
    finishes: Mapping[str, str] = field(default_factory=dict)
    far_links: frozenset[str] = frozenset()
    far_locks: frozenset[str] = frozenset()
    loose: frozenset[str] = frozenset()
    every_body: Bodies | None = field(default=None, repr=False, compare=False)

    @cached_property
    def bodies(self) -> Bodies:
        """Every body that the scene shows."""
        whole = self.every_body or every_body(self.framework, self.shape)
        new = _named(whole, self.new_links, self.new_locks)
        done = _named(whole, self.done_links, self.done_locks)
        return replace(whole, is_new=new).some(new | done)


def finished(
    framework: Framework, shape: Shape, patterns: Mapping[str, int] | None = None
) -> Scene:
    """The whole piece, every part in full colour."""
    return Scene(
        framework,
        shape,
        new_links=frozenset(framework.link),
        new_locks=frozenset(framework.lock_at),
        patterns=patterns or {},
    )


def outward(framework: Framework, shape: Shape) -> FloatArray:
    """Unit vectors (joints, 3), in the shape's order, that point away from what each joint
    is tied to; for a joint whose ties pull evenly all round, away from the piece's middle."""
    at = shape.positions_m
    starts, finishes = _link_rows(framework, shape, framework.links)
    ties = np.zeros((len(at), 4))
    np.add.at(ties, starts, np.column_stack([at[finishes], np.ones(len(finishes))]))
    np.add.at(ties, finishes, np.column_stack([at[starts], np.ones(len(starts))]))
    away = at - ties[:, :3] / np.maximum(ties[:, 3:], 1)
    even = np.linalg.norm(away, axis=1) < 1e-6
    away[even] = (at - np.mean(at, axis=0))[even]
    return _unit(away, np.array([0.0, 0.0, 1.0]))


def along_chain(framework: Framework, shape: Shape) -> FloatArray:
    """Unit vectors (joints, 3), in the shape's order, along the long chain at each joint, where
    one goes round as a ring along that; zero where no chain passes."""
    long = [link for link in framework.links if link.role is Role.CHAIN]
    rings = [
        framework.link[id_]
        for one in framework.chains
        if one.role is RING
        for id_ in one.chain.links
    ]
    along, round_it = (_runs(framework, shape, links) for links in (long, rings))
    passed = np.linalg.norm(round_it, axis=1) > 1e-9
    return _unit(np.where(passed[:, None], round_it, along), np.zeros(3))


def _runs(framework: Framework, shape: Shape, links: Sequence[Link]) -> FloatArray:
    """At each joint (joints, 3) the sum of the ways along some of its links."""
    at = shape.positions_m
    starts, finishes = _link_rows(framework, shape, links)
    run = np.zeros_like(at)
    np.add.at(run, starts, at[finishes] - at[starts])
    np.add.at(run, finishes, at[finishes] - at[starts])
    return run


def _link_rows(
    framework: Framework, shape: Shape, links: Sequence[Link]
) -> tuple[list[int], list[int]]:
    row = shape.row
    return [row[link.start] for link in links], [row[link.finish] for link in links]


def _unit(vectors: FloatArray, instead: FloatArray) -> FloatArray:
    """Each of `vectors` (n, 3) at unit length, `instead` of those without a length."""
    length = np.linalg.norm(vectors, axis=1)[:, None]
    return np.where(length > 1e-9, vectors / np.maximum(length, 1e-12), instead)


def lock_centres(framework: Framework, shape: Shape) -> FloatArray:
    """Centres (locks, 2, 3) of the two rounds of each lock, in the framework's order: they
    hug the joint from outside, side by side across the chain, or in the valleys between its
    balloons where one lies there; where parts are tied, across the way from part to part."""
    row = shape.row
    rows = [row[lock.joint] for lock in framework.locks]
    radius = np.array([framework.balloons[lock.balloon].gauge_m / 2 for lock in framework.locks])
    away, along = outward(framework, shape)[rows], along_chain(framework, shape)[rows]
    along = _along_ties(framework, shape, along)
    across = np.cross(away, along)
    for instead in ((0.0, 0.0, 1.0), (0.0, 1.0, 0.0)):
        level = np.linalg.norm(across, axis=1) < 1e-6
        across[level] = np.cross(away[level], instead)
    across = _unit(across, np.array([1.0, 0.0, 0.0]))
    sides = np.stack([-across, across], axis=1)
    for number, ways in _in_the_way(framework, shape, away, sides).items():
        sides[number] = valleys(ways, away[number], across[number])
    middle = shape.positions_m[rows] + away * OUT * radius[:, None]
    # Rounds that are not opposite hang farther out, so that they touch all the same.
    apart = np.linalg.norm(sides[:, 1] - sides[:, 0], axis=1) / 2
    centres: FloatArray = middle[:, None] + sides * (ASIDE * radius / apart)[:, None, None]
    return centres


def _in_the_way(
    framework: Framework, shape: Shape, away: FloatArray, sides: FloatArray
) -> dict[int, FloatArray]:
    """The locks, by number, of which a round would lie on a balloon, each with the unit vectors
    (m, 3) along the balloons of its joint. In a braced part the rounds lie on the long chain, to
    either side of it; the locks of ties go by the parts that they tie."""
    tied = {tie.name for tie in framework.ties}
    braced = {part_of(framework, link.start) for link in framework.links if link.role is Role.BRACE}
    at, row = shape.positions_m, shape.row
    owner, ways = [], []
    for number, lock in enumerate(framework.locks):
        if lock.joint not in tied and part_of(framework, lock.joint) not in braced:
            for id_ in framework.links_at.get(lock.joint, ()):
                link = framework.link[id_]
                other = link.finish if link.start == lock.joint else link.start
                owner.append(number)
                ways.append(at[row[other]] - at[row[lock.joint]])
    if not owner:
        return {}
    of, unit = np.array(owner), _unit(np.array(ways), np.zeros(3))
    seen = _unit(unit - np.sum(unit * away[of], axis=1)[:, None] * away[of], np.zeros(3))
    near = np.max(np.sum(sides[of] * seen[:, None], axis=2), axis=1)
    lying = np.unique(of[near > np.cos(ON_BALLOON)])
    return {number: unit[of == number] for number in lying.tolist()}


def _along_ties(framework: Framework, shape: Shape, along: FloatArray) -> FloatArray:
    """`along` (locks, 3), for the locks of ties the way from part to part instead."""
    ways: dict[tuple[str, ...], FloatArray] = {}
    found = along.copy()
    tied = {tie.name: tie for tie in framework.ties}
    for row, lock in enumerate(framework.locks):
        if lock.joint in tied:
            parts = tuple(part_of(framework, joint) for joint in tied[lock.joint].joints)
            if parts not in ways:
                ways[parts] = way_apart(framework, shape, parts[0], parts[1])
            found[row] = ways[parts]
    return found


def every_body(framework: Framework, shape: Shape) -> Bodies:
    """Every body of the whole piece; none of them is new. Where balloons of two parts share their
    knots, they bow aside of one another."""
    bodies = straight_bodies(framework, shape)
    aside = np.zeros((len(bodies.names), 3))
    if framework.ties:
        row = {link.id: i for i, link in enumerate(framework.links)}
        for pair in doubled(framework, shape):
            for link, way in ((pair.first, -pair.way), (pair.second, pair.way)):
                aside[row[link]] += way * BOWED * 2 * bodies.radius[row[link]]
    return bodies.moved(aside)


def straight_bodies(framework: Framework, shape: Shape) -> Bodies:
    """Every body of the whole piece, each straight from knot to knot."""
    row = shape.row
    links, locks = framework.links, framework.locks
    start, finish = _link_rows(framework, shape, links)
    joint = np.repeat([row[lock.joint] for lock in locks], 2).astype(int)
    centres = lock_centres(framework, shape).reshape(-1, 3)
    at = shape.positions_m
    first = np.vstack([at[start].reshape(-1, 3), at[joint].reshape(-1, 3)])
    second = np.vstack([at[finish].reshape(-1, 3), 2 * centres - at[joint].reshape(-1, 3)])
    names = [link.id for link in links] + [lock.joint for lock in locks for _ in range(2)]
    keys = [link.balloon for link in links] + [lock.balloon for lock in locks for _ in range(2)]
    return Bodies(
        names=np.array(names, dtype=object),
        balloons=np.array(keys, dtype=object),
        is_link=np.arange(len(names)) < len(links),
        is_new=np.zeros(len(names), dtype=bool),
        first=first,
        second=second,
        centre=(first + second) / 2,
        radius=np.array([framework.balloons[key].gauge_m / 2 for key in keys], dtype=float),
    )


def _named(bodies: Bodies, links: frozenset[str], locks: frozenset[str]) -> BoolArray:
    """Which bodies are among the links, or the locks, named."""
    found = np.zeros(len(bodies.names), dtype=bool)
    for names, rows in ((links, bodies.is_link), (locks, ~bodies.is_link)):
        if names:
            found[rows] = list(map(names.__contains__, bodies.names[rows].tolist()))
    return found


def link_length_m(framework: Framework) -> float:
    """The longest tie-to-tie length among the piece's link balloons."""
    kinds = framework.balloons.values()
    return max((kind.tie_to_tie_m for kind in kinds if kind.kind.is_strut), default=0.2)
