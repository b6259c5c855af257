"""How ballast is tied on: a soft loop round the knots of a low joint, short to what stands beside
it."""

from __future__ import annotations

from buildplan.drawing.line_art import INK, PAPER, SOFT, smooth
from buildplan.drawing.marks import Ink, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.props import (
    Strand,
    knot,
    link,
    palette,
    round_,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

WIDTH, HEIGHT, FLOOR = 230.0, 96.0, 18.0
WEBBING, SAND = "#B59A6A", "#D8CDB4"
JOINT: Point = (72.0, 40.0)


def tie_ballast(framework: Framework, joint: str, voice: Voice) -> Picture:
    """Soft webbing looped round the knots of a joint, between its balloons, and tied short and taut
    to a bag of sand beside it on the floor. How it is done is common practice, no source."""
    colours = palette(framework)
    x, y = JOINT
    balloons = [
        *link((x, y + 46), (x, y + 4), 30, colours.brace, "done"),
        *link((x - 56, y), (x - 4, y), 40, colours.chain, "done"),
        *link((x + 4, y), (x + 56, y), 40, colours.chain, "done"),
    ]
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
    if framework.locks:
        marks += [
            *round_((x - 10, y + 15), (x - 2, y + 3), 17, colours.lock),
            *round_((x + 10, y + 15), (x + 2, y + 3), 17, colours.lock),
        ]
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


def _bag(foot: Point) -> list[Mark]:
    """A bag of sand that stands on the floor, its neck tied off."""
    x, y = foot
    outline = [(-24, 0), (-27, 9), (-20, 22), (-5, 30), (-9, 40), (9, 40), (5, 30)]
    outline += [(20, 22), (27, 9), (24, 0)]
    drawn = smooth([(x + u, y + v) for u, v in outline], Ink(SAND, INK, 0.9), closed=True)
    seam = Polyline(((x - 14, y + 8), (x + 14, y + 8)), Ink(stroke=PAPER, width=1.2))
    return [drawn, seam]
