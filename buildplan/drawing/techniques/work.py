"""Sizing balloons against a gauge, turning the piece over, and standing it up."""

from __future__ import annotations

import math
from collections.abc import Sequence

from buildplan.drawing.colours import shade
from buildplan.drawing.line_art import INK, PALE, SOFT, WASH, arc, smooth
from buildplan.drawing.marks import Circle, Curve, Ink, Look, Mark, Picture, Point, Polyline, Stamp
from buildplan.drawing.symbols import quantised_line
from buildplan.drawing.techniques.props import (
    cross,
    link,
    move,
    palette,
    picture,
    round_,
    tick,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

JAW = 5.0  # straight part of the drawn gauge's jaws
FIGURE = "#C4CBD1"


def _jaws(x: float, y: float, radius: float) -> list[Mark]:
    """A card with a notch, opening upwards."""
    wall, deep = 9.0, JAW
    left, right, top = x - radius - wall, x + radius + wall, y + deep
    foot = y - radius - wall
    bend = arc((x, y), radius, 180, 360, Ink())
    corner = (right, top)

    def line(a: Point, b: Point) -> tuple[Point, Point, Point]:
        return (a, b, b)

    path = [
        line((left, foot), (left, top)),
        line((left, top), (x - radius, top)),
        line((x - radius, top), (x - radius, y)),
        *bend.pieces,
        line((x + radius, y), (x + radius, top)),
        line((x + radius, top), corner),
        line(corner, (right, foot)),
    ]
    return [Curve((left, foot), tuple(path), Ink(WASH, INK, 1.0), closed=True)]


def size_balloons(framework: Framework, voice: Voice, key: str = "") -> Picture:
    """A balloon too small, right, and too big for the gauge; two sized alike at a time.

    `key` names the balloon; without it, it is one of the long chains'.
    """
    colour, is_round = palette(framework).chain, False
    if key:
        balloon = framework.balloons[key]
        colour, is_round = balloon.colour, not balloon.kind.is_strut
    marks: list[Mark] = []
    radius, y = 23.0, 93.0
    for x, share, word in (
        (36.0, 0.76, voice.say("too small")),
        (110.0, 1.0, voice.say_in("size of a balloon", "right")),
        (184.0, 1.13, voice.say("too big")),
    ):
        marks += _jaws(x, y, radius)
        size = radius * share
        # a balloon too big rests on the jaws' corners
        centre = y if share <= 1 else y + JAW + math.sqrt(size**2 - radius**2)
        if share < 1:
            centre = y - radius + size
        marks += _end_on((x, centre), size, colour)
        marks.append(words((x - 5, 52), word))
        if share == 1.0:
            marks += tick((x + 17, 54.5), 4)
        else:
            marks += cross((x + 25, 55), 3)
    for x in (82.0, 138.0):
        if is_round:
            marks += round_((x, 24), (x, 60), 40, colour)
        else:
            marks += link((x - 25, 24), (x + 25, 24), 40, colour)
    for height in (4.0, 44.0):
        marks.append(Polyline(((46, height), (174, height)), Ink(None, INK, 0.7, (3, 2))))
    marks.append(words((2, 21), voice.say("two alike"), "start"))
    return picture(
        marks,
        voice.say(
            "Sizing against the gauge. Left, too small: a gap at the jaws. Middle, right: the"
            " balloon just touches both jaws. Right, too big: it will not go in. Below, two"
            " balloons sized to the same size, ready to be tied as a pair."
        ),
    )


def in_gauge(at: Point, radius: float, colour: str) -> list[Mark]:
    """A balloon that just fits the notch of its gauge, seen along its length."""
    return [*_jaws(*at, radius), *_end_on(at, radius, colour)]


def _end_on(centre: Point, radius: float, colour: str) -> list[Mark]:
    """A balloon seen along its length, its neck towards us."""
    x, y = centre
    size = 2 * radius
    body = Look("body", colour, "new", line=0.0, length=1.0)
    end = Look("end", colour, "new", near="neck", line=quantised_line(0.9 / size), length=1.0)
    return [
        Circle(centre, radius, Ink(shade(colour, -0.3), INK, 1.0)),
        Stamp(body, (size, 0, 0, size, x, y)),
        Stamp(end, (size, 0, 0, size, x, y)),
    ]


def person(x: float, foot: float, tall: float, facing: int, hands: Point) -> list[Mark]:
    """A plain standing figure, `tall` high, with its hands at `hands`; `facing` +1 or -1."""
    hip, shoulder = foot + tall * 0.50, foot + tall * 0.79
    lean = facing * tall * 0.03
    limbs: list[tuple[list[Point], float]] = []
    for ahead in (-1, 1):
        ankle = (x + ahead * tall * 0.085, foot + tall * 0.035)
        knee = (x + ahead * tall * 0.055 + facing * tall * 0.015, foot + tall * 0.27)
        toe = (ankle[0] + facing * tall * 0.06, foot + tall * 0.02)
        limbs.append(([(x + ahead * tall * 0.025, hip), knee, ankle], tall * 0.075))
        limbs.append(([ankle, toe], tall * 0.045))
    limbs.append(
        ([(x, hip - 2), (x + lean * 0.4, hip + tall * 0.14), (x + lean, shoulder)], tall * 0.15)
    )
    for drop in (0.0, tall * 0.07):
        reach = (hands[0], hands[1] - drop)
        elbow = ((x + lean + reach[0]) / 2 - facing, min(shoulder, reach[1]) - tall * 0.05)
        limbs.append(([(x + lean, shoulder - tall * 0.02), elbow, reach], tall * 0.055))
    head, radius = (x + lean * 1.6, foot + tall * 0.92), tall * 0.078
    marks: list[Mark] = [smooth(line, Ink(None, INK, thick + 1.8)) for line, thick in limbs]
    marks.append(Circle(head, radius + 0.9, Ink(INK)))
    marks += [smooth(line, Ink(None, FIGURE, thick)) for line, thick in limbs]
    marks.append(Circle(head, radius, Ink(FIGURE)))
    return marks


def _hoop(centre: Point, across: float, high: float) -> list[Point]:
    """A plain hoop seen from a little above, from its nearest point round to it again."""
    count = 26
    turns = [2 * math.pi * i / count for i in range(count + 1)]
    return [(centre[0] + across * math.sin(t), centre[1] - high * math.cos(t)) for t in turns]


def _hoop_of_links(ring: Sequence[Point], colour: str) -> list[Mark]:
    marks: list[Mark] = []
    for i in sorted(range(len(ring) - 1), key=lambda k: -(ring[k][1] + ring[k + 1][1])):
        marks += link(ring[i], ring[i + 1], 12.5, colour)
    return marks


def _lifted_by_two(marks: Sequence[Mark], hold: float) -> list[Mark]:
    people = person(34, 14, 96, 1, (57, hold)) + person(186, 14, 96, -1, (163, hold))
    floor = Polyline(((4, 14), (216, 14)), Ink(None, SOFT, 1.0))
    return [floor, *marks, *people]


def turn_over(framework: Framework, voice: Voice) -> Picture:
    """Two people turn the piece over, one on each side."""
    lying = smooth(_hoop((110, 31), 56, 13)[:-1], Ink(None, PALE, 1.0, (3, 2)), closed=True)
    marks = _lifted_by_two(
        [lying, *_hoop_of_links(_hoop((110, 62), 56, 13), palette(framework).chain)], 62
    )
    marks += move([(84, 92), (92, 118), (110, 126), (128, 118), (136, 92)])
    marks.append(words((110, 2), voice.say("back up")))
    return picture(
        marks,
        voice.say(
            "Two people, one on each side, lift the piece, drawn as a plain hoop, clear of the"
            " floor and turn it over together, so that its back comes up."
        ),
    )


def stand_up(framework: Framework, voice: Voice) -> Picture:
    """Two people raise the piece about its foot, one on each side."""
    lying = smooth(_hoop((110, 31.44), 56, 13.44)[:-1], Ink(None, PALE, 1.0, (3, 2)), closed=True)
    raised = _hoop((110, 52.72), 56, 34.72)
    marks = _lifted_by_two([lying, *_hoop_of_links(raised, palette(framework).chain)], 62)
    marks += move([(110, 96), (110, 112), (110, 128)])
    marks.append(words((110, 2), voice.say("the foot stays on the floor")))
    return picture(
        marks,
        voice.say(
            "Two people, one on each side, raise the piece, drawn as a plain hoop, from lying flat."
            " Its foot stays on the floor; they lift together by the braces."
        ),
    )
