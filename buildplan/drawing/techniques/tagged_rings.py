"""Chains that are closed into rings and tagged: two free ends brought together, then the closed
ring with a tag at each knot, tail knots told from neck knots."""

from __future__ import annotations

import math
from collections.abc import Sequence

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, PAPER, TYPE
from buildplan.drawing.map_style import JOINT_FILL
from buildplan.drawing.marks import Ink, Label, Mark, Picture, Point, Polyline
from buildplan.drawing.techniques.mistakes import with_mistake
from buildplan.drawing.techniques.props import FINE, knot, link, picture, signs, words
from buildplan.drawing.techniques.rings import closing_ends, ring_marks, round_points, twisted_ring
from buildplan.framework.ends import End
from buildplan.framework.model import Framework, LongChain
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice

MOST = 16  # balloons of a ring all of whose knots have room for a name
# Points: the ring that is being closed and the one that is tagged, from their middles.
OPEN, ACROSS, HIGH = (44.0, 91.0), 36.0, 32.0
CLOSED, FAR, TAGS = (156.0, 84.0), 33.0, 47.0
STOUT = 0.85  # of a balloon, of its length as drawn
LEGEND_X, LEGEND_Y = 134.0, (13.0, 2.0)


def ring_with_tags(
    framework: Framework, voice: Voice, ring: LongChain, tagged: LongChain, turn: int
) -> Picture:
    """A `ring` whose free ends are brought together, and another closed, its joint 1 at the foot,
    with its tags; these go round anticlockwise where `turn` is 1, clockwise where it is -1."""
    balloon = framework.balloons[framework.link[ring.chain.links[0]].balloon]
    drawn, points = ring_marks(framework, ring.chain.links, OPEN, (ACROSS, HIGH))
    marks: list[Mark] = [
        *drawn,
        *closing_ends(points, (OPEN[0], OPEN[1] - HIGH - 15), balloon.colour),
        *_tagged(framework, tagged, turn),
        *_legend(voice),
    ]
    ends = [_end(framework, tagged, place) for place in range(len(tagged.chain.links))]
    named = zip(tagged.chain.joints, ends, strict=True)
    tails = [joint for joint, end in named if end is End.TAIL]
    told = picture(
        marks,
        sentences(
            voice.say("The two free ends of a chain laid round are brought together."),
            voice.say(
                "Chain {letter} closed, a tag at each knot: {joints}; tail knots: {tails}.",
                letter=tagged.letter,
                joints=", ".join(tagged.chain.joints),
                tails=", ".join(tails),
            ),
        ),
    )
    return with_mistake(told, twisted_ring(balloon.colour, voice), (0.0, 0.0), (7.0, 32.0))


def has_room(long: LongChain) -> bool:
    """Whether all knots of a ring have room for their names."""
    return len(long.chain.links) <= MOST


def _tagged(framework: Framework, long: LongChain, turn: int) -> list[Mark]:
    """The balloons of a ring from knot to knot, and their tags outside."""
    count, sign = len(long.chain.links), signs(framework)
    knots = round_points(CLOSED, FAR, FAR, count, -90.0, turn * 360.0)[:count]
    marks: list[Mark] = []
    for number, id_ in enumerate(long.chain.links):
        one, other = knots[number], knots[(number + 1) % count]
        kind = framework.link[id_].balloon
        stout = STOUT * math.dist(one, other)
        marks += link(one, other, stout, framework.balloons[kind].colour, sign=sign[kind])
    for place, ((x, y), joint) in enumerate(zip(knots, long.chain.joints, strict=True)):
        out = TAGS / FAR
        at = (CLOSED[0] + (x - CLOSED[0]) * out, CLOSED[1] + (y - CLOSED[1]) * out)
        marks.append(Polyline(((x, y), at), FINE))
        kind = framework.link[long.chain.links[0]].balloon
        marks += knot((x, y), 0, framework.balloons[kind].colour, 2.0)
        marks += _tag(at, joint, _end(framework, long, place))
    return marks


def _end(framework: Framework, long: LongChain, place: int) -> End:
    """Which ends of its balloons are tied to one another at the knot at a place along a ring, from
    0; of two that differ, that of the one after it. A ring may come to a joint more than once."""
    chain = long.chain
    return framework.link[chain.links[place]].end_at(chain.joints[place])


def _tag(at: Point, joint: str, end: End) -> list[Mark]:
    """A tag about a point: dark at a tail knot."""
    (x, y), half = at, text_width(joint, TYPE, bold=True) / 2 + 2
    edges = ((x - half, y - 5), (x + half, y - 5), (x + half, y + 5), (x - half, y + 5))
    dark = end is End.TAIL
    ink = Ink(fill=JOINT_FILL if dark else PAPER, stroke=INK, width=0.8)
    foot = (x, y - TYPE * 0.36)
    return [
        Polyline(edges, ink, closed=True),
        Label(foot, joint, TYPE, PAPER if dark else INK, bold=True),
    ]


def _legend(voice: Voice) -> Sequence[Mark]:
    """What dark and light tags are."""
    marks: list[Mark] = []
    told = ((True, voice.say("tail knot")), (False, voice.say("neck knot")))
    for (dark, said), y in zip(told, LEGEND_Y, strict=True):
        x = LEGEND_X
        edges = ((x, y), (x + 8, y), (x + 8, y + 7), (x, y + 7))
        ink = Ink(fill=JOINT_FILL if dark else PAPER, stroke=INK, width=0.8)
        marks += [Polyline(edges, ink, closed=True), words((x + 12, y + 0.5), said, "start")]
    return marks
