"""Closing a ring: its two free ends brought together, its balloons counted first."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from itertools import pairwise

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK
from buildplan.drawing.marks import Label, Mark, Picture, Point
from buildplan.drawing.techniques.mistakes import mistaken, with_mistake
from buildplan.drawing.techniques.props import (
    Strand,
    link,
    move,
    picture,
    signs,
    tail_end,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

WITHIN = 130.0  # points: what fits within the ring that is being closed
TWISTED = 14  # balloons of the ring that is closed with a twist


def round_points(
    centre: Point, across: float, high: float, count: int, first_deg: float, span_deg: float
) -> list[Point]:
    """Points along an ellipse, equally far apart along its edge."""
    dense = [math.radians(first_deg + span_deg * i / 400) for i in range(401)]
    line = [(centre[0] + across * math.cos(a), centre[1] + high * math.sin(a)) for a in dense]
    return evenly(line, count)


def evenly(line: Sequence[Point], count: int) -> list[Point]:
    """Points that part a line into `count` parts equally long."""
    along = [0.0]
    for a, b in pairwise(line):
        along.append(along[-1] + math.dist(a, b))
    found, k = [], 0
    for i in range(count + 1):
        goal = along[-1] * i / count
        while k < len(line) - 2 and along[k + 1] < goal:
            k += 1
        share = (goal - along[k]) / ((along[k + 1] - along[k]) or 1.0)
        (x0, y0), (x1, y1) = line[k], line[k + 1]
        found.append((x0 + (x1 - x0) * share, y0 + (y1 - y0) * share))
    return found


def close_ring(framework: Framework, voice: Voice, letters: Collection[str] = ()) -> Picture:
    """The two free ends of a chain brought together, its balloons counted first; of the chains
    with `letters` only, where they are given."""
    closed = [
        c for c in framework.chains if c.chain.closed and (c.letter in letters or not letters)
    ]
    some = closed[0].chain.links[0] if closed else framework.links[0].id
    balloon = framework.link[some].balloon
    colour, sign = framework.balloons[balloon].colour, signs(framework)[balloon]
    lengths = [len(c.chain.links) for c in closed]
    alike = len(set(lengths)) == 1
    counts = [f"{c.letter} {voice.whole(len(c.chain.links))}" for c in closed]
    centre = (110.0, 78.0)
    points = round_points(centre, 92, 48, 16, -72, 324)
    marks: list[Mark] = []
    order = sorted(range(16), key=lambda i: -(points[i][1] + points[i + 1][1]))
    for i in order:
        if i not in (7, 8):
            marks += link(points[i], points[i + 1], 25, colour, sign=sign)
    for i in range(3):
        marks.append(words((centre[0] - 8 + 8 * i, centre[1] + 46), "."))
    right, left = points[0], points[-1]
    ends = (
        Strand(((*left, 0), (left[0] + 8, left[1] - 6, 0), (106, 15, 0)), colour, 4.5),
        Strand(((*right, 0), (right[0] - 8, right[1] - 6, 0), (114, 15, 0)), colour, 4.5),
    )
    marks += weave(ends)
    for end in ends:
        marks += tail_end(end)
    marks += move([(72, 8), (84, 5), (98, 7)])
    marks += move([(148, 8), (136, 5), (122, 7)])
    marks += [
        words(
            (110, 64),
            voice.say("balloons in the ring:") if alike else voice.say("balloons in each ring:"),
        ),
        words((110, 53), voice.say("count before you tie")),
    ]
    rows = [voice.whole(lengths[0])] if alike else [", ".join(counts[i : i + 4]) for i in (0, 4)]
    if max(text_width(row, 10, bold=True) for row in rows) > WITHIN or len(counts) > 8:
        rows = [voice.say("each as its row says")]
    size = 20.0 if alike else 10.0
    for i, row in enumerate(reversed([row for row in rows if row])):
        marks.append(Label((110, 78 + 12 * i), row, size, INK, bold=True))
    drawn = picture(
        marks,
        voice.say(
            "A chain laid round, its two free ends brought together at the foot of the ring. Count"
            " its balloons before you tie the double knot: {counts}.",
            counts=", ".join(counts),
        ),
    )
    return with_mistake(drawn, _twisted(colour, voice), (0.0, 0.0), (7.0, 36.0))


def _twisted(colour: str, voice: Voice) -> Picture:
    """A closed chain that lies in a figure of eight, for it was twisted: where it crosses itself,
    one balloon lies over another."""
    turns = [2 * math.pi * i / 400 for i in range(401)]
    line = [(27 + 22 * math.sin(t), 14 + 10 * math.sin(2 * t)) for t in turns]
    knots = evenly(line, 2 * TWISTED)[1::2]  # it crosses itself in the middle of a balloon
    marks: list[Mark] = []
    for one, other in pairwise([*knots, knots[0]]):
        marks += link(one, other, 7.0, colour)
    alt = voice.say("Crossed out: a chain closed with a twist, which crosses itself.")
    return mistaken((54.0, 28.0), "ring", marks, alt)
