"""The knots: pairs chained tail to tail, and the neck of a balloon without a partner."""

from __future__ import annotations

import math
from collections.abc import Sequence

from buildplan.drawing.marks import Mark, Picture, Point
from buildplan.drawing.techniques.props import (
    WIDTH,
    Strand,
    badge,
    knot,
    link,
    lip,
    move,
    palette,
    picture,
    signs,
    tail_end,
    told_apart,
    weave,
    words,
)
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

MOST_IN_A_ROW, PITCH, ROW_PT, WORD_PT = 12, 44.0, 212.0, 34.0  # of a chain; of words below it
CLOSED_PT = 16.0  # how far the closed neck of an odd chain reaches


def chain_strands(colour: str, other: str) -> tuple[Strand, Strand]:
    """The two tails of a double knot, still open: two half knots, the second the other way
    about, which makes a reef knot. (left balloon's tail, right balloon's tail)"""
    middle, half, rise = 110.0, 24.0, 7.5
    y, low, high = 88.0, 80.0, 112.0

    def half_knot(height: float, way: int) -> list[tuple[float, float]]:
        """From below on one side to above on the other, in three half waves."""
        shares = [i / 12 for i in range(13)]
        return [
            (middle + way * half * (2 * t - 1), height - rise * math.cos(3 * math.pi * t))
            for t in shares
        ]

    def levels(line: list[tuple[float, float]]) -> list[tuple[float, float, int]]:
        return [
            (x, y, 1 if i / 12 < 1 / 3 - 1e-9 or i / 12 >= 2 / 3 - 1e-9 else -1)
            for i, (x, y) in enumerate(line)
        ]

    left = [
        (56, y, 1),
        (66, y - 4, 1),
        (76, y - 10, 1),
        *levels(half_knot(low, 1)),
        (143, low + 11, 1),
        (147, (low + high) / 2, 1),
        (143, high - 11, 1),
        *levels(half_knot(high, -1)),
        (77, high + 10, 1),
        (66, high + 18, 1),
    ]
    right = [
        (164, y, 0),
        (154, y - 4, 0),
        (144, y - 10, 0),
        *((a, b, 0) for a, b in half_knot(low, -1)),
        (77, low + 11, 0),
        (73, (low + high) / 2, 0),
        (77, high - 11, 0),
        *((a, b, 0) for a, b in half_knot(high, 1)),
        (143, high + 10, 0),
        (154, high + 18, 0),
    ]
    return Strand(tuple(left), colour, 6.0), Strand(tuple(right), other, 6.0)


def chain_pairs(framework: Framework, voice: Voice, links: Sequence[str] = ()) -> Picture:
    """Pairs chained tail to tail; `links` are those of the chain, or the first chain's."""
    row = links or framework.chains[0].chain.links
    number = len(row) if 3 <= len(row) <= MOST_IN_A_ROW else 4
    odd = number % 2 == 1  # its last balloon ends in a neck, closed by a knot of its own
    keys = [framework.link[id_].balloon for id_ in row[:number]]
    keys += keys[-1:] * (number - len(keys))
    colours = [framework.balloons[key].colour for key in keys]
    sign = [signs(framework).get(key, 0) for key in keys]
    left, right = chain_strands(colours[1], told_apart(colours[1], colours[2]))
    marks: list[Mark] = [
        *link((4, 88), (56, 88), 44, colours[1], sign=sign[1]),
        *link((164, 88), (216, 88), 44, colours[2], sign=sign[2]),
        *weave([right, left]),
        *tail_end(left),
        *tail_end(right),
        *badge((110, 62), "1"),
        *badge((110, 131), "2"),
    ]
    apart = min(PITCH, (ROW_PT - CLOSED_PT * odd) / number)
    begin = (WIDTH - apart * number - CLOSED_PT * odd) / 2
    if odd:
        end = begin + apart * number
        marks += _closed_neck((end, 33), colours[-1])
        marks.append(words((min(end + 8, WIDTH - 18), 5), voice.say_in("neck", "closed")))
    for i in range(number):
        x = begin + apart * i
        marks += link((x + 0.5, 33), (x + apart - 0.5, 33), 0.77 * apart, colours[i], sign=sign[i])
    for i, colour in enumerate(colours[1:], 1):
        marks += knot((begin + apart * i, 33), 0, colour, 2.8)
    for i in _named_knots(number, apart):
        named = voice.say("necks") if i % 2 else voice.say("tails")
        marks.append(words((begin + apart * i, 5), named))
    below = voice.say(
        "Two pairs tied tail to tail with a double knot. First the left tail goes over the"
        " right one, behind it and over it again; then the same once more the other way about,"
        " above the first. Pull both ends. Below, two pairs chained: necks, tails, necks."
    )
    if number != 4:
        below = voice.say(
            "Two pairs tied tail to tail with a double knot. First the left tail goes over the"
            " right one, behind it and over it again; then the same once more the other way about,"
            " above the first. Pull both ends. Below, the chain of {number}: necks and tails in"
            " turn.",
            number=number,
        )
    return picture(marks, below)


def _closed_neck(at: Point, colour: str) -> list[Mark]:
    """The neck at the end of a chain of an odd number of balloons, closed by a knot of its own."""
    x, y = at
    neck = Strand(
        ((x, y, 0), (x + 0.5 * CLOSED_PT, y, 0), (x + 0.8 * CLOSED_PT, y, 0)), colour, 4.0
    )
    return [*weave([neck]), *knot((x + 0.3 * CLOSED_PT, y), 0, colour, 2.4), *lip(neck)]


def _named_knots(number: int, apart: float) -> list[int]:
    """Which knots of a row are named, from 1: necks and tails in turn, as near as words stand."""
    named = [1]
    for i in range(2, number):
        if (i - named[-1]) % 2 and (i - named[-1]) * apart >= WORD_PT:
            named.append(i)
    return named


def closing_strand(colour: str) -> Strand:
    """A neck tied in an overhand knot, still open: round to a loop, and the end through it."""
    return Strand(
        (
            (92, 84, 0),
            (108, 84, 0),
            (122, 81, 1),
            (136, 76, 1),  # over what comes back
            (152, 76, 1),
            (162, 88, 3),  # over the end on its way out
            (154, 104, 3),
            (138, 106, -1),
            (126, 96, -1),
            (124, 80, -1),  # behind the neck
            (130, 64, 2),
            (144, 62, 2),
            (152, 76, 2),  # up through the loop, over its near side
            (156, 92, 2),  # and out behind its far side
            (164, 104, 2),
            (176, 114, 2),
            (190, 118, 2),
        ),
        colour,
    )


def tie_off(framework: Framework, voice: Voice, link_id: str = "") -> Picture:
    """The neck of a balloon without a partner, closed with a knot of its own."""
    own = palette(framework)
    colour, sign = own.brace, own.brace_sign
    if link_id:
        key = framework.link[link_id].balloon
        colour, sign = framework.balloons[key].colour, signs(framework)[key]
    strand = closing_strand(colour)
    short = Strand(((146, 26, 0), (160, 26, 0), (175, 26, 0)), colour, 5.0)
    marks: list[Mark] = [
        *link((22, 84), (92, 84), 62, colour, sign=sign),
        *weave([strand]),
        *lip(strand),
        *move([(197, 119), (205, 121), (214, 120)]),
        *link((104, 26), (147, 26), 38, colour, sign=sign),
        *weave([short]),
        *knot((154, 26), 0, colour, 3.4),
        *lip(short),
        words((182, 23), voice.say_in("neck", "closed"), "start"),
    ]
    return picture(
        marks,
        voice.say(
            "One link balloon by itself: its neck is led round to a loop, the end goes behind the"
            " neck and through the loop, and is pulled tight. Below, the neck closed. Its tail"
            " stays free."
        ),
    )
