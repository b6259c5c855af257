"""How what is not tied yet hangs: the knots of chains between two joints that are tied, and the
free ends of balloons that are tied at one end.

A balloon that is tied at one end alone is turned about that joint, a run of knots about the line of
the two joints that it lies between, from where it lies in the end outwards. How far is no
measurement: hands give way, and so do balloons.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Bodies
from buildplan.framework.model import Chain, Framework, LongChain
from buildplan.shape.model import Shape

# Degrees that it leans outwards, and the steepest that it then stands; from memory, for looks only.
OUTWARDS_DEG, STEEPEST_DEG, TURN_DEG = 45.0, 72.0, 3.0
AT_LEAST_M = 1e-6

End = tuple[str, str]  # of a link, at a joint


def hanging(
    framework: Framework, shape: Shape, bodies: Bodies, tied: Collection[str]
) -> tuple[Bodies, Mapping[End, FloatArray]]:
    """The bodies as they are while only the joints of `tied` are tied, and where each end of a
    balloon that is at none of them is (3,), metres. Rounds stay where they are."""
    free = dict[End, FloatArray]()
    for long in framework.chains:
        for run in _runs(long, tied):
            for knot, place in zip(run.free, _turned(framework, shape, run), strict=True):
                free |= {(id_, knot.joint): place for id_ in knot.links}
    first, second = bodies.first.copy(), bodies.second.copy()
    for row in np.flatnonzero(bodies.is_link):
        link = framework.link[bodies.names[row]]
        for ends, joint in ((first, link.start), (second, link.finish)):
            if (link.id, joint) in free:
                ends[row] = free[link.id, joint]
    centre = np.where(bodies.is_link[:, None], (first + second) / 2, bodies.centre)
    return replace(bodies, first=first, second=second, centre=centre), free


@dataclass(frozen=True)
class _FreeKnot:
    """A knot of a chain, or its free end, and the links that end there."""

    joint: str
    links: tuple[str, ...]


@dataclass(frozen=True)
class _FreeRun:
    """Free knots of a chain that follow one another, and the joints they lie between: two, or one
    where the chain ends."""

    free: Sequence[_FreeKnot]
    held: Sequence[str]


def _runs(long: LongChain, tied: Collection[str]) -> Iterator[_FreeRun]:
    """The runs of a chain's free knots; none of a chain that is tied nowhere."""
    knots = _knots(long.chain)
    first = next((i for i, knot in enumerate(knots) if knot.joint in tied), None)
    if first is None:
        return
    held, free = list[str](), list[_FreeKnot]()
    for knot in (*knots[first:], *knots[: first + 1]) if long.chain.closed else knots:
        if knot.joint not in tied:
            free.append(knot)
            continue
        if free:
            yield _FreeRun(free, [*held, knot.joint])
        held, free = [knot.joint], []
    if free:
        yield _FreeRun(free, held)


def _knots(chain: Chain) -> list[_FreeKnot]:
    """The knots along a chain, each once, with its free ends."""
    last = len(chain.links)
    found = []
    for place, joint in enumerate(chain.joints):
        before = chain.links[place - 1 : place] if place else chain.links[-1:] * chain.closed
        after = chain.links[place : place + 1] if place < last else ()
        found.append(_FreeKnot(joint, (*before, *after)))
    return found


def _turned(framework: Framework, shape: Shape, run: _FreeRun) -> FloatArray:
    """Where the free knots of a run hang (n, 3), no lower than the piece."""
    at = np.array([shape.at[knot.joint] for knot in run.free])
    held = np.array([shape.at[joint] for joint in run.held])
    own = framework.built_with(run.held[0]).joints
    every = np.array([shape.at[joint] for joint in own])
    hinge, middle = held.mean(axis=0), every.mean(axis=0)
    out = (hinge - middle) * (1.0, 0.0, 1.0)
    if np.linalg.norm(out) < AT_LEAST_M:
        out = (at.mean(axis=0) - hinge) * (1.0, 0.0, 1.0)
    if np.linalg.norm(out) < AT_LEAST_M:
        return at
    out = out / np.linalg.norm(out)
    axis = np.cross(np.array([0.0, 1.0, 0.0]), out)  # turning about it lowers what is outside
    if len(run.held) > 1 and np.linalg.norm(held[1] - held[0]) > AT_LEAST_M:
        along = (held[1] - held[0]) / np.linalg.norm(held[1] - held[0])
        axis = along if along @ axis > 0 else -along
    away = at.mean(axis=0) - hinge
    steep = math.degrees(math.atan2(float(away[1]), float(away @ out)))
    angle = max(OUTWARDS_DEG, steep - STEEPEST_DEG)
    floor = float(every[:, 1].min())
    while angle > 0:
        turned = hinge + _about(axis, math.radians(angle), at - hinge)
        if float(turned[:, 1].min()) >= floor - AT_LEAST_M:
            return np.asarray(turned)
        angle -= TURN_DEG
    return at


def _about(axis: FloatArray, angle: float, points: FloatArray) -> FloatArray:
    """Points (n, 3) turned about a unit axis through the origin (Rodrigues' formula)."""
    along = (points @ axis)[:, None] * axis
    turned = points * math.cos(angle) + np.cross(axis, points) * math.sin(angle)
    found: FloatArray = turned + along * (1 - math.cos(angle))
    return found
