"""A piece that closes round its middle, seen from there, and which of its maps shows what."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from buildplan.framework.chain_roles import OPEN_CHAIN, RING, ZIGZAG
from buildplan.framework.model import Framework, Link
from buildplan.shape.model import FloatArray

# Half a map goes so far past the level of the middle that joints about there are on it.
LEVEL_DEG = 5.0
# One map shows it all if no joint lies nearer than this to the point under the middle.
FROM_BELOW_DEG = 30.0
SAMPLES = 9  # points of a great circle between its joints
LEAST_AWAY = 0.3  # of the farthest joint's distance from the middle: nearer, it is not round


@dataclass(frozen=True)
class Half:
    """One map: from below or from above, which joints and links it shows in full, and which of
    those that other maps show it draws again."""

    from_below: bool
    joints: tuple[str, ...]
    links: tuple[Link, ...]
    joints_again: tuple[str, ...] = ()
    links_again: tuple[Link, ...] = ()


@dataclass(frozen=True)
class RoundPiece:
    """Where the joints of a piece are seen from its middle: unit vectors, with y up."""

    framework: Framework
    seen: Mapping[str, FloatArray]

    def from_pole_deg(self, joint: str, from_below: bool) -> float:
        """The angle between a joint and the line down from the middle, or up."""
        up = float(np.clip(self.seen[joint][1], -1, 1))
        return math.degrees(math.acos(-up if from_below else up))

    def way(self, link: Link) -> list[FloatArray]:
        """Points of the great circle from joint to joint of a link."""
        start, finish = self.seen[link.start], self.seen[link.finish]
        mixed = (start + (finish - start) * i / (SAMPLES + 1) for i in range(SAMPLES + 2))
        return [one / np.linalg.norm(one) for one in mixed]

    @cached_property
    def halves(self) -> tuple[Half, ...]:
        """One map or two; every joint and every link is on one of them in full."""
        joints, links = self.framework.joints, self.framework.links
        if all(self.from_pole_deg(joint, True) > FROM_BELOW_DEG for joint in joints):
            return (Half(False, joints, links),)
        low = {j for j in joints if self.from_pole_deg(j, True) <= 90 + LEVEL_DEG}
        level = {j for j in low if self.from_pole_deg(j, False) <= 90 + LEVEL_DEG}

        def ends_in(link: Link, some: set[str]) -> int:
            return (link.start in some) + (link.finish in some)

        below = [x for x in links if ends_in(x, low) == 2]
        # from below the middle to above it: on both maps
        past = [x for x in links if ends_in(x, low) == 1 and not ends_in(x, level)]
        above = [x for x in links if x not in below and x not in past]
        ends = {joint for x in past for joint in (x.start, x.finish)}
        again = [*(x for x in below if ends_in(x, level) == 2), *past]
        return (
            Half(True, _of(joints, low), (*below, *past), _of(joints, ends - low)),
            Half(
                False,
                _of(joints, set(joints) - low),
                tuple(above),
                _of(joints, level | ends & low),
                tuple(again),
            ),
        )


def _of(joints: Sequence[str], some: set[str]) -> tuple[str, ...]:
    """Those joints that are among some, in their order."""
    return tuple(joint for joint in joints if joint in some)


def round_piece(framework: Framework, at: Mapping[str, FloatArray] | None) -> RoundPiece | None:
    """A piece of rings, zigzags and single balloons, as seen from its middle; None where it has
    something else, or it is not known where its joints are."""
    roles = {long.role for long in framework.chains}
    if at is None or not roles <= {RING, ZIGZAG, OPEN_CHAIN} or len(framework.joints) < 4:
        return None
    places = np.array([at[joint] for joint in framework.joints])
    off = places - places.mean(axis=0)
    away = np.linalg.norm(off, axis=1)
    if float(away.min()) < LEAST_AWAY * float(away.max()):
        return None
    seen = dict(zip(framework.joints, off / away[:, None], strict=True))
    return RoundPiece(framework, seen)
