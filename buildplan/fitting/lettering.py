"""An outline from a letter of a font, with its holes."""

from __future__ import annotations

import numpy as np
from matplotlib.font_manager import FontProperties
from matplotlib.textpath import TextPath
from shapely import Polygon

from buildplan.drawing.fonts import our_own
from buildplan.fitting.outline import Drawn, OutlineError, ring_points
from buildplan.language.messages import message

FONT = "DejaVu Sans"  # comes with matplotlib, so that it is the same everywhere
ROUNDED = 0.03  # of the letter's height, off its corners


def letter_outline(letter: str, font: str = FONT) -> Drawn:
    """The outer edge of one letter or digit, and its holes. Raises OutlineError."""
    if len(letter) != 1 or not letter.isprintable() or letter.isspace():
        raise OutlineError(
            message("{text} is not one letter", text=repr(letter)),
            message("give one letter, as in letter:A"),
        )
    if not our_own(letter):
        raise OutlineError(
            message("the font {font} draws nothing for {letter}", font=font, letter=repr(letter)),
            message("choose another letter"),
        )
    path = TextPath((0, 0), letter, size=100, prop=FontProperties(family=font, weight="bold"))
    parts = [Polygon(part) for part in path.to_polygons() if len(np.asarray(part)) > 3]
    if not parts:
        raise OutlineError(
            message("the font {font} draws nothing for {letter}", font=font, letter=repr(letter)),
            message("choose another letter"),
        )
    whole = max(parts, key=lambda part: part.area)
    apart = [part for part in parts if not whole.buffer(1e-6).covers(part)]
    if apart:
        raise OutlineError(
            message(
                "the letter {letter} is in {count} parts",
                letter=repr(letter),
                count=len(apart) + 1,
            ),
            message("choose one that is in one part, or make each part from an SVG file"),
        )
    height = whole.bounds[3] - whole.bounds[1]
    rounded = whole.buffer(-ROUNDED * height).buffer(ROUNDED * height)
    holes = tuple(ring_points(part) for part in parts if part is not whole)
    return Drawn(ring_points(rounded), holes)
