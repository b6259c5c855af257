"""Through which gaps the rounds of a lock go: for each round the two balloons of the joint that it
sits between, seen from outside."""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping, Sequence
from itertools import pairwise

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import lock_centres, outward
from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

Gap = tuple[str, str]  # the two link balloons that it is between
FEWEST = 3  # balloons of a joint that has gaps to either side of it
ON_LINE = 1e-6  # radians


def lock_gaps(
    framework: Framework, shape: Shape, joints: Collection[str]
) -> Mapping[str, tuple[Gap, Gap]]:
    """The gaps of the two rounds of the lock at each of some joints that have one and where three
    balloons or more meet; the rounds sit where `lock_centres` has them, and go out through two
    gaps, never through one."""
    away, centres = outward(framework, shape), lock_centres(framework, shape)
    found: dict[str, tuple[Gap, Gap]] = {}
    for place, lock in enumerate(framework.locks):
        links = framework.links_at[lock.joint] if lock.joint in joints else ()
        if len(links) >= FEWEST:
            out = away[shape.row[lock.joint]]
            at = shape.at[lock.joint]
            ways = {id_: _other_end(framework, shape, id_, lock.joint) - at for id_ in links}
            found[lock.joint] = _gaps(ways, out, centres[place] - at)
    return found


def _other_end(framework: Framework, shape: Shape, id_: str, joint: str) -> FloatArray:
    link = framework.link[id_]
    return np.asarray(shape.at[link.finish if link.start == joint else link.start])


def _gaps(ways: Mapping[str, FloatArray], out: FloatArray, rounds: FloatArray) -> tuple[Gap, Gap]:
    """Of the gaps between balloons that lead some `ways` from a joint, as seen along `out`, those
    of its `rounds` (2, 3), which are given from the joint."""
    aside = rounds[1] - (rounds[1] @ out) * out
    across = aside / np.linalg.norm(aside)
    up = np.cross(out, across)
    other = math.atan2(float(rounds[0] @ up), float(rounds[0] @ across))
    turned = {id_: math.atan2(float(way @ up), float(way @ across)) for id_, way in ways.items()}
    ids = sorted(turned, key=lambda id_: (round(turned[id_], 6), id_))
    gaps = list(pairwise([*ids, ids[0]]))
    wide = [(turned[b] - turned[a]) % (2 * math.pi) for a, b in gaps]

    def off(number: int, way: float) -> float:
        """How far a way is from the nearest of a gap, and then from its middle."""
        middle = turned[gaps[number][0]] + wide[number] / 2
        from_middle = abs((way - middle + math.pi) % (2 * math.pi) - math.pi)
        beyond = max(from_middle - wide[number] / 2 - ON_LINE, 0.0)
        return round(beyond, 6) + 1e-3 * round(from_middle, 6)

    first = min(range(len(gaps)), key=lambda n: off(n, 0.0))
    rest: Sequence[int] = [n for n in range(len(gaps)) if n != first]
    second = min(rest, key=lambda n: off(n, other))
    return gaps[first], gaps[second]


def gap_middle(ways: Mapping[str, float], gap: Gap) -> float:
    """The middle of the gap between two balloons of a joint, by the ways (radians) in which all of
    them lead from it: on the side on which no other leads away."""
    one, other = (ways[id_] % (2 * math.pi) for id_ in gap)
    low, high = min(one, other), max(one, other)
    within = any(low + ON_LINE < way % (2 * math.pi) < high - ON_LINE for way in ways.values())
    return (low + high) / 2 + (math.pi if within else 0.0)
