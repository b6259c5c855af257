"""How ballast is tied on: a soft loop round the knots of a low joint, short to what stands beside
it."""

from __future__ import annotations

import math
from collections.abc import Sequence

from buildplan.drawing.line_art import INK, PAPER, SOFT, smooth
from buildplan.drawing.marks import Ink, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.props import (
    Strand,
    knot,
    link,
    palette,
    round_,
    signs,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

WIDTH, HEIGHT, FLOOR = 230.0, 96.0, 18.0
WEBBING, SAND = "#B59A6A", "#D8CDB4"
JOINT: Point = (72.0, 40.0)
# How long and stout balloons are along the floor and up from it, and between which ways these go.
ALONG, RISING, UP_DEG, KNOT_PT = (52.0, 40.0), (44.0, 30.0), (130.0, 50.0), 4.0


def tie_ballast(framework: Framework, joint: str, voice: Voice) -> Picture:
    """Soft webbing looped round the knots of a joint, between its own balloons, and tied short and
    taut to a bag of sand beside it on the floor. How it is done is common practice, no source."""
    colours = palette(framework)
    x, y = JOINT
    balloons = _balloons(framework, joint)
    bag = (170.0, FLOOR)
    loop = (
        (x - 4, y - 8, 1),
        (x - 9, y + 1, 1),
        (x - 3, y + 9, -1),
        (x + 6, y + 7, -1),
        (x + 9, y, -1),
        (x + 5, y - 7, 1),
        (x + 14, y - 5, 1),
        (bag[0] - 20, bag[1] + 28, 1),
        (bag[0], bag[1] + 33, 1),
    )
    marks: list[Mark] = [
        Polyline(((6.0, FLOOR), (WIDTH - 6, FLOOR)), Ink(stroke=SOFT, width=0.9)),
        *balloons,
        *knot((x, y), 20, colours.chain, 3.4),
        *weave([Strand(loop, WEBBING, 4.4)]),
        *knot((x, y - 8), 0, WEBBING, 3.0),
        *_bag(bag),
        *knot((bag[0], bag[1] + 33), 90, WEBBING, 3.0),
    ]
    lock = framework.lock_at.get(joint)
    if lock is not None:
        colour, sign = framework.balloons[lock.balloon].colour, signs(framework)[lock.balloon]
        for side in (-1, 1):
            marks += round_((x + side * 10, y + 15), (x + side * 2, y + 3), 17, colour, sign)
    marks += [
        words((x - 6, 5), voice.say("round the knots of {joint}", joint=joint)),
        words((bag[0] + 6, 5), voice.say("short and taut")),
    ]
    alt = voice.say(
        "How ballast is tied on: a loop of soft webbing goes round the knots of joint {joint},"
        " between its balloons, and is tied short and taut to a sandbag on the floor beside it.",
        joint=joint,
    )
    return Picture(WIDTH, HEIGHT, tuple(marks), alt, (("picture", "ballast"),))


def _balloons(framework: Framework, joint: str) -> list[Mark]:
    """The balloons that meet at a joint, each in its colour: those of its first long chain along
    the floor, the others up from it, as from before them."""
    along = [id_ for id_ in _own_chain(framework, joint) if id_ in framework.links_at[joint]]
    rest = [id_ for id_ in framework.links_at[joint] if id_ not in along]
    step = (UP_DEG[1] - UP_DEG[0]) / max(len(rest) - 1, 1)
    ways = [UP_DEG[0] + step * n for n in range(len(rest))] if len(rest) > 1 else [90.0]
    marks: list[Mark] = []
    for id_, way in zip(rest, ways, strict=False):
        marks += _balloon(framework, id_, way, *RISING)
    for id_, way in zip(along, (180.0, 0.0), strict=False):
        marks += _balloon(framework, id_, way, *ALONG)
    return marks


def _own_chain(framework: Framework, joint: str) -> Sequence[str]:
    """The balloons of the first long chain that passes a joint."""
    chains = (long.chain for long in framework.chains)
    return next((chain.links for chain in chains if joint in chain.joints), ())


def _balloon(framework: Framework, id_: str, way_deg: float, long: float, fat: float) -> list[Mark]:
    """A balloon that leads away from the joint, so long and stout."""
    (x, y), way = JOINT, math.radians(way_deg)
    kind = framework.link[id_].balloon
    start, end = (
        (x + far * math.cos(way), y + far * math.sin(way)) for far in (KNOT_PT, KNOT_PT + long)
    )
    return link(start, end, fat, framework.balloons[kind].colour, sign=signs(framework)[kind])


def _bag(foot: Point) -> list[Mark]:
    """A bag of sand that stands on the floor, its neck tied off."""
    x, y = foot
    outline = [(-24, 0), (-27, 9), (-20, 22), (-5, 30), (-9, 40), (9, 40), (5, 30)]
    outline += [(20, 22), (27, 9), (24, 0)]
    drawn = smooth([(x + u, y + v) for u, v in outline], Ink(SAND, INK, 0.9), closed=True)
    seam = Polyline(((x - 14, y + 8), (x + 14, y + 8)), Ink(stroke=PAPER, width=1.2))
    return [drawn, seam]
