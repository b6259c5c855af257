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
MOST_DRAWN, SLOTS = 16, 16  # balloons of a ring that are all drawn; else so many places of it
STOUTEST = 32.0
FEWEST_LARGE, SMALL = 10, 0.6  # a ring of fewer balloons is drawn smaller, at most so large
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
    drawn_links = closed[0].chain.links if closed else (framework.links[0].id,) * SLOTS
    colour = framework.balloons[framework.link[drawn_links[0]].balloon].colour
    shown = min(len(drawn_links), SLOTS)
    lengths = [len(c.chain.links) for c in closed]
    alike = len(set(lengths)) == 1
    counts = [f"{c.letter} {voice.whole(len(c.chain.links))}" for c in closed]
    large = shown >= FEWEST_LARGE  # a small one has its words beside it
    share = 1.0 if large else SMALL * math.sqrt(shown / FEWEST_LARGE)
    centre, middle = ((110.0, 78.0), 110.0) if large else ((58.0, 84.0), 158.0)
    marks, points = ring_marks(framework, drawn_links, centre, (92 * share, 48 * share))
    marks += closing_ends(points, (centre[0], centre[1] - 48 * share - 15), colour)
    marks += [
        words(
            (middle, 64),
            voice.say("balloons in the ring:") if alike else voice.say("balloons in each ring:"),
        ),
        words((middle, 53), voice.say("count before you tie")),
    ]
    rows = [voice.whole(lengths[0])] if alike else [", ".join(counts[i : i + 4]) for i in (0, 4)]
    if max(text_width(row, 10, bold=True) for row in rows) > WITHIN or len(counts) > 8:
        rows = [voice.say("each as its row says")]
    size = 20.0 if alike else 10.0
    for i, row in enumerate(reversed([row for row in rows if row])):
        marks.append(Label((middle, 78 + 12 * i), row, size, INK, bold=True))
    drawn = picture(
        marks,
        voice.say(
            "A chain laid round, its two free ends brought together at the foot of the ring. Count"
            " its balloons before you tie the double knot: {counts}.",
            counts=", ".join(counts),
        ),
    )
    return with_mistake(drawn, twisted_ring(colour, voice), (0.0, 0.0), (7.0, 36.0))


def ring_marks(
    framework: Framework, links: Sequence[str], centre: Point, half: tuple[float, float]
) -> tuple[list[Mark], list[Point]]:
    """The balloons of a chain laid round about a point, half as wide and high as given, open at the
    foot, and its knots; of one that is too long the first and the last of them."""
    keys, sign = [framework.link[id_].balloon for id_ in links], signs(framework)
    every = len(keys) <= MOST_DRAWN
    keys = keys if every else keys[: SLOTS // 2] + keys[-SLOTS // 2 :]
    points = round_points(centre, *half, len(keys), -72, 324)
    marks: list[Mark] = []
    stout = min(STOUTEST, 0.85 * math.dist(points[0], points[1]))
    for i in sorted(range(len(keys)), key=lambda i: -(points[i][1] + points[i + 1][1])):
        if every or i not in (SLOTS // 2 - 1, SLOTS // 2):
            own = framework.balloons[keys[i]].colour
            marks += link(points[i], points[i + 1], stout, own, sign=sign[keys[i]])
    for i in range(0 if every else 3):
        marks.append(words((centre[0] - 8 + 8 * i, centre[1] + half[1] - 2), "."))
    return marks, points


def closing_ends(points: Sequence[Point], foot: Point, colour: str) -> list[Mark]:
    """The two free ends of a chain that is laid round, and how they come together at its foot."""
    right, left = points[0], points[-1]
    x, y = foot
    ends = (
        Strand(((*left, 0), (left[0] + 8, left[1] - 6, 0), (x - 4, y, 0)), colour, 4.5),
        Strand(((*right, 0), (right[0] - 8, right[1] - 6, 0), (x + 4, y, 0)), colour, 4.5),
    )
    marks = list(weave(ends))
    for end in ends:
        marks += tail_end(end)
    marks += move([(x - 38, y - 7), (x - 26, y - 10), (x - 12, y - 8)])
    return [*marks, *move([(x + 38, y - 7), (x + 26, y - 10), (x + 12, y - 8)])]


def twisted_ring(colour: str, voice: Voice) -> Picture:
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
