"""What the chains that come in with a course are to one another: a ring and the zigzag about it, a
row and the chains that begin at it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import fsum, pi, tan

from buildplan.framework.model import Framework, LongChain


@dataclass(frozen=True)
class RoundCourse:
    """A closed ring, the zigzag that goes up from it and the one whose tips it is set on, where
    there are any."""

    ring: LongChain
    up: LongChain | None
    down: LongChain | None


def round_course(coming: Sequence[LongChain], standing: Sequence[LongChain]) -> RoundCourse | None:
    """What comes in with a course, if that is a ring and at most one zigzag; of what stands, the
    zigzag that comes up to the ring."""
    for ring in coming:
        others = [one for one in coming if one is not ring]
        if len(others) > 1 or not all(goes_about(ring, one) for one in others):
            continue
        down = next((one for one in standing if goes_about(ring, one)), None)
        if others or down:
            return RoundCourse(ring, others[0] if others else None, down)
    return None


def lies_alone(course: RoundCourse, framework: Framework) -> bool:
    """Whether nothing but a ring and the zigzag that goes up from it meets at the ring's joints."""
    return course.up is not None and course.down is None and is_regular(course, framework)


def is_regular(course: RoundCourse, framework: Framework) -> bool:
    """Whether nothing meets at the joints of a ring but it and the zigzags below and above it."""
    meets = 2 + 2 * sum(one is not None for one in (course.up, course.down))
    return all(len(framework.links_at[joint]) == meets for joint in course.ring.chain.joints)


def lets_a_hand_in(ring: LongChain, framework: Framework, hand_m: float) -> bool:
    """Whether a hand of that breadth fits within a ring as it is built: between the balloons of a
    regular polygon, whose sides are a / tan(pi / n) apart."""
    links = [framework.link[id_] for id_ in ring.chain.links]
    kinds = [framework.balloons[link.balloon] for link in links]
    side = fsum(kind.tie_to_tie_m for kind in kinds) / len(kinds)
    thick = fsum(kind.gauge_m for kind in kinds) / len(kinds)
    return side / tan(pi / len(kinds)) - thick >= hand_m


def goes_about(ring: LongChain, zigzag: LongChain) -> bool:
    """Whether every second joint of a closed chain is one of a ring, each once."""
    own, joints = set(ring.chain.joints), zigzag.chain.joints
    on = [joint in own for joint in joints]
    alternate = all(one != other for one, other in pairwise(on))
    closed = ring.chain.closed and zigzag.chain.closed
    return closed and alternate and len(joints) == 2 * len(own) and own <= set(joints)


def rows_of(coming: Sequence[LongChain]) -> Sequence[LongChain]:
    """The rows among chains that come in, if all others begin at their joints, one at each, and
    lead away from them; none where that is not so."""
    if any(one.chain.closed for one in coming):
        return ()
    rows = [
        one
        for one in coming
        if any(other.chain.joints[0] in one.chain.joints[1:] for other in coming)
    ]
    along = [joint for row in rows for joint in row.chain.joints]
    others = [one for one in coming if one not in rows]
    feet = [one.chain.joints[0] for one in others]
    away = all(set(one.chain.joints[1:]).isdisjoint(along) for one in others)
    once = len(set(along)) == len(along) and len(set(feet)) == len(feet)
    return rows if feet and away and once and set(feet) <= set(along) else ()
