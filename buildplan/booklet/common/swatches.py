"""Colour swatches that do not rely on colour: the balloon with its sign, as pictures have it."""

from __future__ import annotations

import numpy as np

from buildplan.drawing.marks import Look, Picture
from buildplan.drawing.stamps import round_stamps
from buildplan.framework.model import BalloonType
from buildplan.language.voice import Voice


def swatch(
    balloon: BalloonType, letter: str, pattern: int, voice: Voice, size: float = 20
) -> Picture:
    """A balloon's colour and sign, `size` points square."""
    middle = np.array([size / 2, size / 2])
    knot = np.array([size / 2, 0.0])
    look = Look("round", balloon.colour, "new", line=0.05, finish=balloon.finish)
    marks = round_stamps(look, knot, middle, size * 0.86, pattern)
    message = balloon.kind.words.in_a_key
    return Picture(
        size, size, tuple(marks), voice.say(message, letter=letter, colour=balloon.label)
    )
