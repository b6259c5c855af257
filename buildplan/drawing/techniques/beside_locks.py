"""How a balloon between two parts is tied in at joints that have their locks, and how hands get at
those underneath where the parts lie."""

from __future__ import annotations

from buildplan.drawing.colours import mix
from buildplan.drawing.line_art import INK, PAPER, SOFT, TYPE, rope
from buildplan.drawing.marks import Circle, Ink, Mark, Picture, Point, Polyline
from buildplan.drawing.symbols import DONE_LINE
from buildplan.drawing.techniques.hands import pinching_hand
from buildplan.drawing.techniques.props import (
    Palette,
    Strand,
    badge,
    knot,
    link,
    move,
    neck_colour,
    palette,
    picture,
    round_,
    tail_end,
    tick,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

# Points: a joint before and after, how far from it its chain's balloons begin, the lock's rounds.
LOOSE, TIED, REACH = (56.0, 92.0), (164.0, 92.0), 17.0
LONG, FAT, ROUND, PALE = 34.0, 32.0, 17.0, 0.45
# Two parts from the side as they lie: their front above their back, the floor below.
LEFT, RIGHT, FRONT, BACK, FLOOR = 64.0, 160.0, 112.0, 68.0, 18.0
END_ON = 36.0


def tie_beside_lock(framework: Framework, voice: Voice) -> Picture:
    """An end that is tied in at a locked joint: a round of the lock pushed aside, the end once
    round the joint's knots beneath both rounds; then knotted twice, close to the lock."""
    colours = palette(framework)
    marks: list[Mark] = []
    for x, y in (LOOSE, TIED):
        marks += link((x - REACH - LONG, y), (x - REACH, y), FAT, colours.chain, "done")
        marks += link((x + REACH, y), (x + REACH + LONG, y), FAT, colours.chain, "done")
    marks += [*_led_round(LOOSE, colours), *_knotted(TIED, colours)]
    marks += move([(106, LOOSE[1]), (110, LOOSE[1]), (116, LOOSE[1])])
    marks += [
        words((LOOSE[0], 4), voice.say("once round the joint")),
        words((TIED[0] - 4, 4), voice.say("knot it twice")),
        *tick((TIED[0] + 34, 8), 4),
    ]
    return picture(
        marks,
        voice.say(
            "A joint with its lock. Left, the lower round is pushed aside: the free end comes up"
            " beside it, goes once round the joint's knots, beneath both rounds, and out. Right,"
            " it is knotted twice and sits close beside the lock, whose rounds are back."
        ),
    )


def _led_round(at: Point, colours: Palette) -> list[Mark]:
    """The end on its way round the knots, beneath the necks of the lock's rounds."""
    x, y = at
    line = Strand(((x - REACH - 1, y, 1), (x, y, 1), (x + REACH + 1, y, 1)), colours.chain, 5)
    end = Strand(
        (
            (x - 2, 50, 2),
            (x - 3, y - 18, 2),
            (x - 11, y - 6, 2),
            (x - 10, y + 8, 2),
            (x, y + 12, 2),
            (x + 10, y + 8, 0),
            (x + 9, y - 6, 0),
            (x - 1, y - 16, 0),
            (x - 15, y - 20, 0),
            (x - 24, y - 28, 0),
        ),
        colours.brace,
        5,
    )
    above, aside = (x + 1, y + 27), (x + 27, y - 27)
    necks = [
        Strand(((x, y, 3), (x, y + 10, 3), (x + 1, y + 21, 3)), _pale(colours), 3.4),
        Strand(((x, y, 3), (x + 9, y - 10, 3), (x + 22, y - 22, 3)), _pale(colours), 3.4),
    ]
    return [
        *link((x - 2, 14), (x - 2, 50), 34, colours.brace, sign=colours.brace_sign),
        *weave([line, end, *necks]),
        *knot(at, 0, colours.chain, 3.6),
        *round_(above, (x, y + 18), ROUND, _pale(colours)),
        *round_(aside, (x + 20, y - 20), ROUND, _pale(colours)),
        *tail_end(end),
        *move([(x + 8, y - 33), (x + 12, y - 38), (x + 22, y - 39)]),
    ]


def _knotted(at: Point, colours: Palette) -> list[Mark]:
    """The end tied, the lock's rounds where they belong."""
    x, y = at
    nozzles = [(x - REACH - 1, y), (x - 4, y), (x + 4, y), (x + REACH + 1, y)]
    neck = [(x - 4, 50), (x - 5, 62), (x - 5, 74), (x - 4, y - 5)]
    return [
        *link((x - 4, 14), (x - 4, 50), 34, colours.brace, sign=colours.brace_sign),
        *rope(nozzles, 5, neck_colour(colours.chain), INK),
        *knot(at, 0, colours.chain, 3.6),
        *rope(neck, 5, neck_colour(colours.brace), INK),
        *knot((x - 4, y - 5), 90, colours.brace, 3.8),
        *round_((x + 1, y + 14), (x, y + 3), ROUND, _pale(colours)),
        *round_((x + 10, y - 13), (x + 3, y - 3), ROUND, _pale(colours)),
    ]


def reach_under(framework: Framework, voice: Voice) -> Picture:
    """Two parts that lie, from the side: one person lifts both where they meet, the other ties the
    balloon between their backs from beneath."""
    colours = palette(framework)
    marks: list[Mark] = [Polyline(((6.0, FLOOR), (214.0, FLOOR)), Ink(stroke=SOFT, width=0.9))]
    pale = Ink(mix(colours.chain, PAPER, 0.72), DONE_LINE, 0.6)
    for x in (LEFT, RIGHT):
        marks += link((x, BACK), (x, FRONT), 26, colours.brace, "done")
        marks += [Circle((x, y), END_ON / 2, pale) for y in (BACK, FRONT)]
    inner = LEFT + END_ON / 2, RIGHT - END_ON / 2
    marks += link((inner[0], FRONT), (inner[1], FRONT), 30, colours.brace, "done")
    marks += link(
        (inner[0], BACK), (inner[1] - 14, BACK), 28, colours.brace, sign=colours.brace_sign
    )
    free = Strand(
        ((inner[1] - 14, BACK, 0), (inner[1] - 7, BACK - 1, 0), (inner[1], BACK, 0)),
        colours.brace,
        4.5,
    )
    marks += weave([free])
    for x, side, way in ((LEFT, -1, 205.0), (RIGHT, 1, 335.0)):
        marks += pinching_hand((x + side * 6, BACK - END_ON / 2 + 1), way, thumb_left=side > 0)
        marks += badge((x + side * 44, FLOOR + 12), "1")
    marks += pinching_hand((inner[1] - 5, BACK - 3), 242.0)
    marks += [
        *badge((inner[1] - 40, FLOOR + 12), "2"),
        words((LEFT - 6, 4), voice.say("1 lifts")),
        words((RIGHT - 30, 4), voice.say("2 ties")),
    ]
    layers = (
        (FRONT, voice.say_in("layer of chains", "front")),
        (
            BACK,
            voice.say_in("layer of chains", "back"),
        ),
    )
    marks += [words((4, y - TYPE / 3), said, "start") for y, said in layers]
    return picture(
        marks,
        voice.say(
            "Two parts that lie front up, from the side. The first person lifts both where they"
            " meet, hands under their backs; the second reaches in beneath and ties the balloon"
            " between the backs. The one between the fronts is tied already."
        ),
    )


def _pale(colours: Palette) -> str:
    return mix(colours.lock, PAPER, PALE)
