"""Swatches that do not rely on colour: the balloon in the shape of its kind, with its sign."""

from __future__ import annotations

import numpy as np

from buildplan.drawing.marks import Look, Mark, Picture
from buildplan.drawing.stamps import link_stamps, round_stamps
from buildplan.framework.model import BalloonType
from buildplan.language.voice import Voice

# Of a swatch's height: how wide it is, how thick a link balloon and a round are, and how far in
# the knots of a link balloon lie.
WIDE, LINK_THICK, ROUND_THICK, ENDS_IN = 1.8, 0.95, 0.68, 0.2
LINE = 0.05


def swatch(
    balloon: BalloonType, letter: str, pattern: int, voice: Voice, size: float = 20
) -> Picture:
    """A balloon with its colour and sign, `size` points high: a link balloon with its neck and its
    tail, a round smaller, with its one knot below."""
    wide = WIDE * size
    marks = (
        _link(balloon, pattern, size) if balloon.kind.is_strut else _round(balloon, pattern, size)
    )
    message = balloon.kind.words.in_a_key
    told = voice.say(message, letter=letter, colour=balloon.label)
    return Picture(wide, size, tuple(marks), told)


def _link(balloon: BalloonType, pattern: int, size: float) -> list[Mark]:
    wide, thick, middle = WIDE * size, LINK_THICK * size, size / 2
    tail, neck = np.array([ENDS_IN * size, middle]), np.array([wide - ENDS_IN * size, middle])
    length = wide - 2 * ENDS_IN * size
    look = Look("link", balloon.colour, "new", line=LINE, finish=balloon.finish)
    return link_stamps(
        look, tail, neck, length, thick, length / thick, near_end="neck", pattern=pattern
    )


def _round(balloon: BalloonType, pattern: int, size: float) -> list[Mark]:
    thick = ROUND_THICK * size
    centre = np.array([WIDE * size / 2, size - thick / 2 - 1])
    look = Look("round", balloon.colour, "new", line=LINE, finish=balloon.finish)
    return round_stamps(look, centre - (0, size), centre, thick, pattern)
