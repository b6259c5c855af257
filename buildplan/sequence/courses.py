"""The courses of a piece that has no braces: ring on ring of a column, row on row of a wall, and
from the face or pole that a solid or globe stands on.

A course is a level of the piece. Its joints are joined one after another in the order round it,
or along it; the chains that are needed for them come in then and not before, so that nobody has
to find a knot among chains that lie loose for later.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise

import numpy as np

from buildplan.framework.model import Framework
from buildplan.sequence.ordering import natural
from buildplan.shape.model import FloatArray

# Shares of the shortest link. Joints no further apart in height than this are of one course, and
# no further apart in depth of one layer of it: less than half of what lies between two rows or
# layers, more than a solved shape sags. Ours.
LEVEL, LAYER = 0.3, 0.4
# A level this many times as wide as it is deep is gone along, any other is gone round. Ours.
ALONG = 1.5
# A layer of so many joints is a course by itself. Ours.
SHORT_ROW = 3

Places = Mapping[str, FloatArray]


@dataclass(frozen=True)
class JointCourse:
    """Joints in the order of joining them, and the letters of the chains that come in for them."""

    joints: tuple[str, ...]
    chains: tuple[str, ...]


@dataclass(frozen=True)
class WorkOrder:
    """What the needs of the work leave open.

    `courses` of what has no braces, by the name of its part (empty: the whole piece); `later` are
    the joints that are locked, and joined, only once the piece is turned over. `at_ties` is how
    many people tie parts to one another, where one ties what others hold up (0: as many as lift).
    """

    courses: Mapping[str, tuple[JointCourse, ...]] = field(default_factory=dict)
    later: frozenset[str] = frozenset()
    at_ties: int = 0

    @cached_property
    def course_of(self) -> Mapping[str, int]:
        """The number of the course in which each chain comes in, by its letter; courses of all
        parts are numbered through."""
        every = (course for own in self.courses.values() for course in own)
        return {letter: n for n, course in enumerate(every, 1) for letter in course.chains}


def built_pieces(framework: Framework) -> tuple[tuple[str, Framework], ...]:
    """What is built by itself, with its name: the parts, or the whole piece without a name."""
    parts = tuple((part.name, part.framework) for part in framework.parts)
    return parts or (("", framework),)


def order_of(framework: Framework, at: Places | None = None) -> WorkOrder:
    """The order of work; `at` says where joints are, with y up (without it, courses go by the
    number of balloons from the foot)."""
    return WorkOrder({name: courses(own, at) for name, own in built_pieces(framework)})


def in_courses(framework: Framework) -> bool:
    """Whether a piece or part is nothing but chains that meet, and is built course by course; what
    the design adds one by one is tied in when all of it stands."""
    own = framework.extras.issuperset(framework.singles)
    return bool(framework.chains) and not framework.braces and own


def loose_chains(framework: Framework) -> frozenset[str]:
    """Letters of the chains that are one balloon between joints which other chains make: they are
    no chains to tie and lay, but are tied in when their joints are joined."""
    if not in_courses(framework):
        return frozenset()
    made = {
        joint
        for long in framework.chains
        if len(long.chain.links) > 1
        for joint in long.chain.joints
    }
    return frozenset(
        long.letter
        for long in framework.chains
        if len(long.chain.links) == 1 and made.issuperset(long.chain.joints)
    )


def courses(framework: Framework, at: Places | None = None) -> tuple[JointCourse, ...]:
    """The courses of what is built without braces, from the foot up; none of what has braces."""
    if not in_courses(framework):
        return ()
    passed = Counter(joint for long in framework.chains for joint in long.chain.joints)
    met = {joint for joint, times in passed.items() if times > 1}
    levels = _levels_by_steps(framework) if at is None else _levels_by_height(framework, at)
    loose = loose_chains(framework)
    waiting = {c.letter: c.chain.joints for c in framework.chains if c.letter not in loose}
    found: list[JointCourse] = []
    for level in levels:
        joints = tuple(joint for joint in level if joint in met)
        coming = tuple(c for c, passes in waiting.items() if not set(joints).isdisjoint(passes))
        for letter in coming:
            del waiting[letter]
        if joints:
            found.append(JointCourse(joints, coming))
    if waiting:  # chains that meet no other lie there from the beginning
        first, *others = found or [JointCourse((), ())]
        found = [JointCourse(first.joints, (*first.chains, *waiting)), *others]
    return tuple(found)


def _levels_by_steps(framework: Framework) -> list[list[str]]:
    """Joints by how many balloons they are from the foot, or from the first joint; in the order
    of the chains."""
    import networkx as nx  # takes long to import, and most pieces have braces

    graph = nx.Graph((link.start, link.finish) for link in framework.links)
    number = {joint: i for i, joint in enumerate(framework.joints)}
    levels: list[list[str]] = []
    left = dict.fromkeys(framework.joints)
    starts = framework.foot or framework.joints[:1]
    while left:  # pieces that do not hang together come one after another
        reached = nx.multi_source_dijkstra_path_length(graph, set(starts), weight=None)
        deepest = int(max(reached.values()))
        for steps in range(deepest + 1):
            level = [joint for joint, far in reached.items() if far == steps]
            levels.append(sorted(level, key=number.__getitem__))
        for joint in reached:
            left.pop(joint, None)
        starts = tuple(left)[:1]
    return levels


def _levels_by_height(framework: Framework, at: Places) -> list[list[str]]:
    link_m = min(framework.balloons[link.balloon].tie_to_tie_m for link in framework.links)
    levels = _clustered(framework.joints, {j: at[j][1] for j in framework.joints}, LEVEL * link_m)
    layers = [_layers(level, at, LAYER * link_m) for level in levels]
    rounds = [
        _round(level, at, LAYER * link_m)
        for level, along in zip(levels, layers, strict=True)
        if not along
    ]
    # numbers run one way round in most levels of a pattern that numbers them: that way in all
    rings = [ring for ring, _ in rounds]
    turned = 2 * sum(map(_runs_forward, rings)) < sum(len(ring) > 2 for ring in rings)
    # what stands on a pole begins there; what ends in one closes there
    gone_round = iter(
        [*middle, *ring] if number == 0 and not layers[0] else [*ring, *middle]
        for number, (ring, middle) in enumerate(
            (_turned(ring) if turned else ring, middle) for ring, middle in rounds
        )
    )
    return [one for along in layers for one in (_rows(along) if along else [next(gone_round)])]


def _rows(layers: Sequence[Sequence[str]]) -> list[list[str]]:
    """Layers as courses of their own, the one that lies underneath first; short ones are one."""
    if min(map(len, layers)) >= SHORT_ROW:
        return [list(layer) for layer in layers]
    return [[joint for layer in layers for joint in layer]]


def _turned(ring: Sequence[str]) -> list[str]:
    """The other way round, from the same joint."""
    return [*ring[:1], *reversed(ring[1:])]


def _clustered(joints: Iterable[str], value: Mapping[str, float], gap: float) -> list[list[str]]:
    """Joints by a value, parted where it leaps by more than `gap`."""
    ordered = sorted(joints, key=lambda joint: (value[joint], natural(joint)))
    groups = [ordered[:1]]
    for before, joint in pairwise(ordered):
        if value[joint] - value[before] > gap:
            groups.append([])
        groups[-1].append(joint)
    return groups


def _layers(level: Sequence[str], at: Places, layer_m: float) -> list[list[str]]:
    """The layers of a flat level, the one at the back first, for it lies underneath, each along it
    from the left; none of a level that is gone round."""
    width, depth = np.ptp([(at[joint][0], at[joint][2]) for joint in level], axis=0)
    if width <= ALONG * depth and len(level) >= 3:
        return []
    layers = _clustered(level, {joint: at[joint][2] for joint in level}, layer_m)
    return [sorted(layer, key=lambda joint: round(float(at[joint][0]), 3)) for layer in layers]


def _round(level: Sequence[str], at: Places, layer_m: float) -> tuple[list[str], list[str]]:
    """The joints of a level in the order round it, from its lowest number, and those in the middle
    of it."""
    across = np.array([(at[joint][0], -at[joint][2]) for joint in level])
    x, y = (across - across.mean(axis=0)).T
    turn = dict(zip(level, np.arctan2(y, x).round(6), strict=True))
    out = dict(zip(level, np.hypot(x, y), strict=True))
    ring = sorted((j for j in level if out[j] > layer_m), key=lambda joint: turn[joint])
    first = min(range(len(ring)), key=lambda i: natural(ring[i]))
    middle = [joint for joint in level if out[joint] <= layer_m]
    return [*ring[first:], *ring[:first]], middle


def _runs_forward(level: Sequence[str]) -> bool:
    """Whether the numbers of a round go up as it is gone round."""
    return len(level) > 2 and natural(level[1]) < natural(level[-1])
