"""Knots and free ends of chains, brought together at one joint."""

from __future__ import annotations

import cmath
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from buildplan.drawing.bodies import outward
from buildplan.drawing.camera import Camera, project
from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, TYPE, between, rope
from buildplan.drawing.marks import Mark, Picture, Point
from buildplan.drawing.seat import seat_before
from buildplan.drawing.techniques.props import (
    WIDTH,
    knot,
    link,
    move,
    neck_colour,
    signs,
    words,
)
from buildplan.framework.model import Framework, LongChain, Role
from buildplan.language.voice import Voice
from buildplan.sequence.reach import is_one_layer
from buildplan.shape.model import Shape

APART_X, TOGETHER_X = 51.0, 169.0
WORDS_HIGH, ABOUT = 14.0, 16.0  # below the joints; about the tips of their balloons
NEAR, FAR = 8.0, 47.0  # of a balloon's two ends, from the middle of the joint
PULLED_OUT = 11.0  # how far each chain lies from the others before
STOUTEST = 27.0
STEEP = 0.99  # of a way that leads straight up or down
ACROSS = 0.3  # of a chain whose balloons lead away on both sides of its knot: it has no one side


@dataclass(frozen=True)
class _Brought:
    """What one chain brings to a joint: the balloons on either side of its knot, or the one
    of its free end."""

    links: tuple[str, ...]


def join_chains(
    framework: Framework, voice: Voice, joint: str = "", shape: Shape | None = None
) -> Picture:
    """Every knot and free end that meets at `joint`, apart and brought together; without one, at
    the first joint where chains meet. With the shape they are the way round that the builder has
    them, apart too where they can be drawn so: what leads up leads up."""
    if not joint:
        meeting = (j for j, links in framework.links_at.items() if len(links) > 2)
        joint = next(meeting, framework.joints[0])
    brought = _brought_to(framework, joint)
    balloons = sum(len(one.links) for one in brought)
    apart = together = _ways(brought)
    if shape is not None:
        together = _ways_as_built(framework, shape, joint)
        apart = together if _come_apart(brought, together) else apart
    heights = [0.0, *(FAR * math.sin(way) for ways in (apart, together) for way in ways.values())]
    y = WORDS_HIGH + ABOUT - min(heights)
    marks: list[Mark] = []
    for x, ways, pulled_out in ((APART_X, apart, PULLED_OUT), (TOGETHER_X, together, 0.0)):
        marks += _star(framework, brought, ways, (x, y), pulled_out)
    marks += knot((TOGETHER_X, y), 35, _colour(framework, brought[0].links[0]), 3.6)
    marks += move([(103, y), (109, y), (116, y)])
    parts = _counted(brought, voice)
    named = voice.say_count(
        "joint {joint}: {number} balloon",
        "joint {joint}: {number} balloons",
        balloons,
        joint=joint,
    )
    halves = [text_width(told, TYPE) / 2 + 1 for told in (parts, named)]
    marks.append(words((max(APART_X, halves[0]), 4), parts))
    marks.append(words((min(TOGETHER_X, WIDTH - halves[1]), 4), named))
    return Picture(
        WIDTH,
        y + max(heights) + ABOUT,
        tuple(marks),
        voice.say(
            "Left, {parts}, all tagged {joint}. Right, brought together, knot on knot: one joint,"
            " with {number} balloons round it.",
            parts=parts,
            joint=joint,
            number=balloons,
        ),
    )


def balloons_brought(framework: Framework, joint: str) -> int:
    """How many balloons meet at a joint where chains are brought together: singles come later."""
    return sum(framework.link[id_].role is not Role.SINGLE for id_ in framework.links_at[joint])


def _brought_to(framework: Framework, joint: str) -> list[_Brought]:
    """What each chain brings to a joint, knots before free ends."""
    found = [_Brought(links) for long in framework.chains for links in _links_beside(long, joint)]
    return sorted(found, key=lambda one: -len(one.links))


def _links_beside(long: LongChain, joint: str) -> list[tuple[str, ...]]:
    """The balloons on both sides of each of a chain's knots at a joint, and at its free ends."""
    chain, count = long.chain, len(long.chain.links)
    found = []
    for place, at in enumerate(chain.joints):
        if at != joint:
            continue
        beside = [place - 1, place]
        if chain.closed:
            beside = [number % count for number in beside]
        found.append(tuple(chain.links[n] for n in beside if 0 <= n < count))
    return found


def _counted(brought: Sequence[_Brought], voice: Voice) -> str:
    """`2 knots and 1 free end`."""
    knots = sum(len(one.links) > 1 for one in brought)
    ends = len(brought) - knots
    told = []
    if knots:
        told.append(voice.say_count("{number} knot", "{number} knots", knots))
    if ends:
        told.append(voice.say_count("{number} free end", "{number} free ends", ends))
    return voice.listed(told)


def _ways(brought: Sequence[_Brought]) -> Mapping[str, float]:
    """The way of each balloon from the joint, in radians: evenly round it, each chain's beside one
    another, the first's upwards."""
    ids = [id_ for one in brought for id_ in one.links]
    slot = 2 * math.pi / len(ids)
    first = math.pi / 2 - slot * (len(brought[0].links) - 1) / 2
    return {id_: first + slot * number for number, id_ in enumerate(ids)}


def _ways_as_built(framework: Framework, shape: Shape, joint: str) -> Mapping[str, float]:
    """The same in the order round the joint that is seen from outside it, and turned so as to come
    nearest to what is seen."""
    seat = _seat(framework, shape, joint)
    links = [framework.link[id_] for id_ in framework.links_at[joint]]
    ends = [link.finish if link.start == joint else link.start for link in links]
    seen, _ = project(seat, np.array([shape.at[end] - shape.at[joint] for end in ends]))
    angles = np.arctan2(seen[:, 1], seen[:, 0]).tolist()
    ways = dict(zip((link.id for link in links), angles, strict=True))
    ids, slot = sorted(ways, key=lambda id_: ways[id_]), 2 * math.pi / len(ways)
    off = sum(cmath.exp(1j * (ways[id_] - slot * number)) for number, id_ in enumerate(ids))
    return {id_: cmath.phase(off) + slot * number for number, id_ in enumerate(ids)}


def _seat(framework: Framework, shape: Shape, joint: str) -> Camera:
    """From outside the piece straight at a joint; of what has no inside, from before it."""
    if is_one_layer(framework, shape):
        return seat_before(framework, shape, [joint])
    away = outward(framework, shape)[shape.row[joint]]
    up = (0.0, 1.0, 0.0) if abs(away[1]) < STEEP else (0.0, 0.0, 1.0)
    return Camera((float(away[0]), float(away[1]), float(away[2])), up, "outside")


def _come_apart(brought: Sequence[_Brought], ways: Mapping[str, float]) -> bool:
    """Whether chains can be drawn apart with their balloons that way round: but for one that goes
    across, each has its own beside one another."""
    place = {id_: number for number, id_ in enumerate(sorted(ways, key=lambda id_: ways[id_]))}
    steps = [abs(place[one.links[0]] - place[one.links[-1]]) for one in brought]
    return sum(step not in (0, 1, len(ways) - 1) for step in steps) <= 1


def _star(
    framework: Framework,
    brought: Sequence[_Brought],
    ways: Mapping[str, float],
    middle: Point,
    pulled_out: float,
) -> list[Mark]:
    """The balloons round a joint, each chain's `pulled_out` to its side."""
    count = len(ways)
    slot = 2 * math.pi / count
    stout = min(STOUTEST, 1.9 * (NEAR + FAR) / 2 * math.sin(slot / 2)) if count > 2 else STOUTEST
    colour_sign = signs(framework)
    marks: list[Mark] = []
    for one in brought:
        side = sum(cmath.exp(1j * ways[id_]) for id_ in one.links) / len(one.links)
        across = abs(side) < ACROSS
        facing = ways[one.links[0]] + math.pi / 2 if across else cmath.phase(side)
        at = middle if across else _from(middle, facing, pulled_out)
        far = FAR - pulled_out * 0.6
        ends = []
        for id_ in one.links:
            way, colour = ways[id_], _colour(framework, id_)
            near, tip = _from(at, way, NEAR), _from(at, way, far)
            sign = colour_sign[framework.link[id_].balloon]
            marks += link(near, tip, stout, colour, sign=sign)
            ends.append(_from(at, way, NEAR + 1.0))
        colour = _colour(framework, one.links[0])
        line = [ends[0], at, ends[1]] if len(ends) > 1 else [ends[0], between(ends[0], at), at]
        marks += rope(line, 4.5, neck_colour(colour), INK)
        if pulled_out and len(ends) > 1:
            marks += knot(at, math.degrees(facing) - 90, colour, 3.2)
    return marks


def _from(at: Point, way: float, far: float) -> Point:
    return at[0] + far * math.cos(way), at[1] + far * math.sin(way)


def _colour(framework: Framework, id_: str) -> str:
    return framework.balloons[framework.link[id_].balloon].colour
