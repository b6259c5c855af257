"""The locks on the plan of a course: for each the two gaps through which its rounds go."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from itertools import pairwise

from buildplan.drawing.line_art import INK
from buildplan.drawing.lock_gaps import lock_gaps
from buildplan.drawing.map_style import to_edge
from buildplan.drawing.marks import Circle, Ink, Mark, Point
from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

ROUND = 4.4  # radius of a round of a lock
UPRIGHT_PT = 3.0  # what is no longer on the page stands straight up from its joint


def ways_of_rounds(
    framework: Framework, shape: Shape, joints: Collection[str], spots: Mapping[str, Point]
) -> Mapping[str, Sequence[float | None]]:
    """The way of each round of the locks of the joints that are tied, radians on the page; None of
    one whose gap is not seen from above."""
    found: dict[str, Sequence[float | None]] = {}
    for joint, gaps in lock_gaps(framework, shape, joints).items():
        ways = _ways(framework, joint, spots)
        found[joint] = [_between(ways, one, other) for one, other in gaps]
    return found


def rounds_of_locks(
    framework: Framework,
    rounds: Mapping[str, Sequence[float | None]],
    spots: Mapping[str, Point],
) -> list[Mark]:
    """The rounds of each lock that is laid, in the gaps through which they go."""
    colour = {lock.joint: framework.balloons[lock.balloon].colour for lock in framework.locks}
    return [
        mark
        for joint, ways in rounds.items()
        for way in ways
        if way is not None
        for mark in gap_round(joint, way, spots, colour[joint])
    ]


def gap_round(joint: str, way: float, spots: Mapping[str, Point], colour: str) -> list[Mark]:
    """A round of a lock beside the name of its joint, some way from there; dashed, for it is
    underneath."""
    (x, y), far = spots[joint], to_edge(joint, way) + ROUND
    at = (x + far * math.cos(way), y + far * math.sin(way))
    return [Circle(at, ROUND, Ink(colour, INK, 0.9, (2.0, 1.2)))]


def _ways(framework: Framework, joint: str, spots: Mapping[str, Point]) -> Mapping[str, float]:
    """The way of each balloon from a joint on the page, radians; of those that lie there."""
    found: dict[str, float] = {}
    for id_ in framework.links_at[joint]:
        one = framework.link[id_]
        end = spots.get(one.finish if one.start == joint else one.start)
        if end is not None and math.dist(end, spots[joint]) > UPRIGHT_PT:
            found[id_] = math.atan2(end[1] - spots[joint][1], end[0] - spots[joint][0])
    return found


def _between(ways: Mapping[str, float], one: str, other: str) -> float | None:
    """The middle of the gap between two balloons that are next to one another on the page; None
    where they are not."""
    ids = sorted(ways, key=lambda id_: ways[id_])
    for first, second in pairwise([*ids, *ids[:1]]):
        if {first, second} == {one, other} and len(ids) > 2:
            return ways[first] + (ways[second] - ways[first]) % (2 * math.pi) / 2
    return None
