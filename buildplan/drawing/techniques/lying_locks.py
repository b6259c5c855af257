"""The lock of a joint of the first ring, which lies flat with its zigzag round it: from above the
gaps through which its rounds go down, from the side how they are twisted underneath."""

from __future__ import annotations

import math
from collections.abc import Mapping

from buildplan.drawing.course_places import places_lying
from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, TYPE
from buildplan.drawing.lock_gaps import gap_middle, lock_gaps
from buildplan.drawing.marks import Circle, Ink, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.hands import pinching_hand
from buildplan.drawing.techniques.held_locks import locked_joint
from buildplan.drawing.techniques.locks import HELD_AT, HELD_HALF, twisted_necks
from buildplan.drawing.techniques.mistakes import lock_round_a_balloon, with_mistake
from buildplan.drawing.techniques.props import (
    Strand,
    badge,
    knot,
    link,
    move,
    neck_colour,
    palette,
    picture,
    round_,
    signs,
    tick,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.sequence.laid import RoundCourse
from buildplan.shape.model import Shape

# Points: the joint in either view, how long its balloons are, how far out its rounds lie.
ABOVE, ASIDE = (37.0, 74.0), (112.0, 86.0)
LONG, STOUT, NEAR, OUT, ROUND = 35.0, 20.0, 4.0, 25.0, 15.0
BADGES = (10.0, 85.0, 157.0)
FLOOR, DROOP, HALF = 19.0, 26.0, 37.0


def lock_lying(framework: Framework, voice: Voice, course: RoundCourse, shape: Shape) -> Picture:
    """The lock of the first joint of a ring that lies flat: its knot on top, one round down in the
    middle of the ring and one between the balloons of the zigzag; then twisted underneath."""
    joint, tight = course.ring.chain.joints[0], voice.say("tight")
    marks = [
        *_from_above(framework, shape, course, joint),
        *_from_the_side(framework, joint),
        locked_joint(framework, shape, joint, HELD_AT, HELD_HALF),
        *(
            mark
            for number, x in enumerate((10.0, 85.0, 157.0), 1)
            for mark in badge((x, 129), f"{number}")
        ),
        words((ABOVE[0], 4.0), voice.say("from above")),
        words((ASIDE[0], 4.0), voice.say("from the side")),
        words((182.0, 67.0), tight),
        *tick((190.0 + text_width(tight, TYPE) / 2, 70.0), 4),
    ]
    for number, x in enumerate(BADGES, 1):
        marks += badge((x, 129.0), str(number))
    told = picture(
        marks,
        voice.say(
            "Joint {joint} of a ring that lies flat. One, from above: the knot of its lock lies on"
            " top, a round goes down in the middle of the ring and one between the balloons of the"
            " zigzag. Two, from the side: the joint is lifted, the two rounds are twisted past each"
            " other underneath. Three, from outside once it stands: a round sits tight above the"
            " ring and one below.",
            joint=joint,
        ),
    )
    mistake = lock_round_a_balloon(palette(framework), voice)
    return with_mistake(told, mistake, (157.0, 4.0), (163.0, 10.0))


def _from_above(framework: Framework, shape: Shape, course: RoundCourse, joint: str) -> list[Mark]:
    """The joint as it lies, the middle of the ring below it; the rounds, which are under it, as
    dashed rings."""
    ways = _ways(framework, shape, course, joint)
    sign = signs(framework)
    marks: list[Mark] = []
    for id_, way in ways.items():
        balloon = framework.link[id_].balloon
        ends = _off(ABOVE, way, NEAR), _off(ABOVE, way, LONG)
        colour = framework.balloons[balloon].colour
        marks += link(*ends, STOUT, colour, sign=sign[balloon])
    lock = framework.balloons[framework.locks[0].balloon].colour
    rounds = [_off(ABOVE, gap_middle(ways, gap), OUT) for gap in _gaps(framework, shape, joint)]
    marks += [Circle(at, ROUND / 2, Ink(lock, INK, 0.9, (2.5, 2.0))) for at in rounds]
    neck = Strand(((*rounds[0], 0), (*ABOVE, 0), (*rounds[1], 0)), lock, 4.0)
    return [*marks, *weave([neck]), *knot(ABOVE, 0, lock, 3.4)]


def _gaps(framework: Framework, shape: Shape, joint: str) -> tuple[tuple[str, str], ...]:
    return lock_gaps(framework, shape, {joint})[joint]


def _ways(
    framework: Framework, shape: Shape, course: RoundCourse, joint: str
) -> Mapping[str, float]:
    """The way of each balloon from the joint as it lies, radians, the middle of the ring below."""
    spots = places_lying(shape.at, framework, course)
    x, y = spots[joint]
    turn = -math.pi / 2 - math.atan2(-y, -x)
    found: dict[str, float] = {}
    for id_ in framework.links_at[joint]:
        one = framework.link[id_]
        end = spots.get(one.finish if one.start == joint else one.start)
        if end is not None:
            found[id_] = math.atan2(end[1] - y, end[0] - x) + turn
    return found


def _off(at: Point, way: float, far: float) -> Point:
    return at[0] + far * math.cos(way), at[1] + far * math.sin(way)


def _from_the_side(framework: Framework, joint: str) -> list[Mark]:
    """The joint lifted off the floor by a hand, its necks twisted below it."""
    x, y = ASIDE
    ring = framework.balloons[framework.link[framework.links_at[joint][0]].balloon].colour
    lock = framework.balloons[framework.locks[0].balloon].colour
    one, two = twisted_necks((x, y), lock)
    nozzle = Strand(((x - 8, y, 0), (x, y, 0), (x + 8, y, 0)), ring, 5.0)
    marks: list[Mark] = [
        Polyline(((ASIDE[0] - HALF, FLOOR), (ASIDE[0] + HALF, FLOOR)), Ink(stroke=INK, width=0.8))
    ]
    for side in (-1, 1):
        ends = (x + side * LONG, y - DROOP), (x + side * 5, y)
        marks += link(*ends, STOUT, ring, "done")
    marks += weave([Strand(nozzle.points, neck_colour(ring), 5.0), two, one])
    marks += knot((x, y + 11), 0, lock, 2.8)
    for side in (-1, 1):
        marks += round_((x + side * 15, y - 42), (x + side * 8, y - 35), ROUND, lock)
    marks += move([(x - 22, y - 55), (x, y - 60), (x + 22, y - 55)])
    marks += pinching_hand((x - 9, y + 3), 140.0)
    return [*marks, *move([(x + 20, y + 4), (x + 20, y + 12), (x + 20, y + 22)])]
