"""The balloons of a chain in a row, colour by colour, with the names of its knots."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from buildplan.drawing.fonts import text_width
from buildplan.drawing.line_art import INK, TYPE
from buildplan.drawing.marks import Label, Mark, Picture
from buildplan.drawing.techniques.props import knot, link, signs
from buildplan.framework.model import Framework
from buildplan.language.phrases import first_to_last
from buildplan.language.voice import Voice

# Points. A line holds whole runs of this many balloons, as many as there is room for.
RUN, PITCH, STOUT = 8, 26.0, 20.0
MARGIN, LINE, NAME_BELOW = 12.0, 36.0, 19.0


def colour_strip(
    framework: Framework, voice: Voice, links: Sequence[str], joints: Sequence[str], width: float
) -> Picture:
    """The balloons `links` of a chain in their order, first on the left, in lines no longer than
    `width` points, and under its knots the names of `joints`: one more than balloons, or none of a
    chain that has no place yet."""
    fit = int((width - 2 * MARGIN) / PITCH)
    fit = fit - fit % RUN if fit >= RUN else max(fit, 1)
    lines = [range(first, min(first + fit, len(links))) for first in range(0, len(links), fit)]
    high = LINE if joints else LINE - NAME_BELOW / 2
    marks: list[Mark] = []
    for number, line in enumerate(lines):
        y = high * (len(lines) - number) - STOUT / 2 - 2
        marks += _line(framework, links, line, y)
        if joints:
            marks += _names(joints, line, y - NAME_BELOW)
    longest = max(len(line) for line in lines)
    told = voice.say("The balloons in their order, from left to right.")
    if joints:
        told = voice.say(
            "The balloons in their order, from left to right, knots {joints}.",
            joints=first_to_last(voice, joints[0], joints[-1]),
        )
    return Picture(2 * MARGIN + PITCH * longest, high * len(lines), tuple(marks), told)


def _line(framework: Framework, links: Sequence[str], line: range, y: float) -> list[Mark]:
    """One line of balloons, and the knots between them."""
    marks: list[Mark] = []
    colour_sign = signs(framework)
    knots = [(MARGIN + PITCH * place, y) for place in range(len(line) + 1)]
    for number, (one, other) in zip(line, pairwise(knots), strict=True):
        kind = framework.link[links[number]].balloon
        colour = framework.balloons[kind].colour
        marks += link(one, other, STOUT, colour, sign=colour_sign[kind])
    for at, number in zip(knots, (*line, line[-1]), strict=True):
        colour = framework.balloons[framework.link[links[number]].balloon].colour
        marks += knot(at, 0, colour, 1.6)
    return marks


def _names(joints: Sequence[str], line: range, y: float) -> list[Mark]:
    """The names under the knots of a line, as many as stand apart."""
    shown = [joints[number] for number in (*line, line[-1] + 1)]
    apart = 1 + int((max(text_width(joint, TYPE) for joint in shown) + 3) / PITCH)
    return [
        Label((MARGIN + PITCH * place, y), joint, TYPE, INK)
        for place, joint in enumerate(shown)
        if place % apart == 0
    ]
