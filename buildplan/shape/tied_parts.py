"""How parts lie where they are tied to one another: which way the one goes from the other, and
balloons of both that share their two knots."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from buildplan.framework.locks import Tie
from buildplan.framework.model import Framework
from buildplan.shape.model import FloatArray, Shape

# A way that is no longer than this share of a link does not tell parts apart. Ours.
LEAST_SHARE = 0.05
UP = np.array([0.0, 1.0, 0.0])


@dataclass(frozen=True, eq=False)
class Doubled:
    """Balloons of two parts between the same two knots, by their ids; `way` is the unit vector
    (3,) along an axis in which the second lies from the first."""

    first: str
    second: str
    way: FloatArray


def way_apart(framework: Framework, shape: Shape, one: str, other: str) -> FloatArray:
    """The unit vector (3,) along that axis, up or down, left or right, to the front or back, in
    which part `other` goes on most from where it is tied to part `one`: from the joints next to
    those that are tied in the one to those in the other. Straight up where that tells nothing."""
    shared = [tie for tie in framework.ties if {one, other} <= _parts(framework, tie)]
    tied = {joint for tie in framework.ties for joint in tie.joints}
    ends = {name: [j for tie in shared for j in _of(framework, tie, name)] for name in (one, other)}
    leads = [_lead(framework, shape, ends[name], tied) for name in (one, other)]
    run = leads[1] - leads[0]
    longest = max(framework.balloons[link.balloon].tie_to_tie_m for link in framework.links)
    if float(np.linalg.norm(run)) <= LEAST_SHARE * longest:
        return UP
    axis = int(np.argmax(np.abs(run)))
    way: FloatArray = np.zeros(3)
    way[axis] = np.sign(run[axis])
    return way


def doubled(framework: Framework, shape: Shape) -> Iterator[Doubled]:
    """Balloons of different parts between the same two knots, part by part; in the order of the
    links."""
    place = {joint: tie.name for tie in framework.ties for joint in tie.joints}
    between: dict[frozenset[str], list[str]] = {}
    for link in framework.links:
        if link.start in place and link.finish in place:
            ends = frozenset((place[link.start], place[link.finish]))
            between.setdefault(ends, []).append(link.id)
    ways: dict[tuple[str, str], FloatArray] = {}
    for links in between.values():
        for pair in combinations(links, 2):
            parts = tuple(part_of(framework, framework.link[link].start) for link in pair)
            if parts[0] == parts[1]:
                continue
            if parts not in ways:
                ways[parts[0], parts[1]] = way_apart(framework, shape, parts[0], parts[1])
            yield Doubled(*pair, ways[parts[0], parts[1]])


def part_of(framework: Framework, joint: str) -> str:
    """The name of the part that a joint of an assembly is of."""
    part = framework.part_at(joint)
    return part.name if part is not None else ""


def _parts(framework: Framework, tie: Tie) -> set[str]:
    return {part_of(framework, joint) for joint in tie.joints}


def _of(framework: Framework, tie: Tie, part: str) -> Iterator[str]:
    """The joints of a tie that are of a part."""
    return (joint for joint in tie.joints if part_of(framework, joint) == part)


def _lead(framework: Framework, shape: Shape, joints: list[str], tied: set[str]) -> FloatArray:
    """How far the balloons at some joints lead on the mean, (3,) metres, those to other joints
    that are tied left out; nothing where there are no others."""
    ways = [
        shape.at[end] - shape.at[joint]
        for joint in joints
        for link in map(framework.link.__getitem__, framework.links_at[joint])
        for end in ((link.finish if link.start == joint else link.start),)
        if end not in tied
    ]
    return np.asarray(np.mean(ways, axis=0)) if ways else np.zeros(3)
