"""What a user may name as an outline, and what she gives for its height."""

from __future__ import annotations

import re
from pathlib import Path

from buildplan.fitting.fitting import LEAST_GAUGE_IN, MOST_GAUGE_IN
from buildplan.fitting.lettering import letter_outline
from buildplan.fitting.outline import Drawn, Outline, OutlineError, outline_of
from buildplan.fitting.outlines import named_outline
from buildplan.fitting.svg_outline import svg_outline
from buildplan.language.speaking import say

METRES = {"cm": 0.01, "m": 1.0, "mm": 0.001, "in": 0.0254, "ft": 0.3048}
LEAST_HEIGHT_M, MOST_HEIGHT_M = 0.3, 6.0


def parse_height(text: str) -> float:
    """Metres of a height such as `150cm`, `1.5 m`, `60in` or `5ft`.

    Raises ValueError, in words for the user, for anything else.
    """
    found = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*(cm|mm|m|in|ft)\s*", text)
    if found is None:
        raise ValueError(
            say("{text} is not a height; write it like 150cm, 1.5m, 60in or 5ft", text=repr(text))
        )
    height_m = float(found[1]) * METRES[found[2]]
    if not LEAST_HEIGHT_M <= height_m <= MOST_HEIGHT_M:
        raise ValueError(
            say(
                "a height of {height} is beyond what a piece can have: {least} to {most}",
                height=text.strip(),
                least=f"{LEAST_HEIGHT_M * 100:.0f}cm",
                most=f"{MOST_HEIGHT_M:g}m",
            )
        )
    return height_m


def parse_gauges(text: str) -> tuple[float, ...]:
    """Gauges in inches from a list such as `8,6,5`. Raises ValueError in words for the user."""
    try:
        gauges = tuple(float(word) for word in text.split(","))
    except ValueError:
        gauges = ()
    if not gauges or not all(LEAST_GAUGE_IN <= gauge <= MOST_GAUGE_IN for gauge in gauges):
        raise ValueError(
            say(
                "{text} is no list of gauges; write inches with commas, such as 8,6,5, each from "
                "{least} to {most}",
                text=repr(text),
                least=f"{LEAST_GAUGE_IN:g}",
                most=f"{MOST_GAUGE_IN:g}",
            )
        )
    return tuple(dict.fromkeys(gauges))


def read_outline(source: str, height_m: float) -> Outline:
    """The outline that `source` names: an `.svg` file, `letter:A`, or one of our own curves.

    Raises OutlineError, or OSError when the file cannot be opened.
    """
    if source.lower().endswith(".svg"):
        return _sized(Path(source).stem, svg_outline(Path(source)), height_m)
    if source.startswith("letter:"):
        letter = source.removeprefix("letter:")
        return _sized(say("letter {letter}", letter=letter), letter_outline(letter), height_m)
    if "." in source or "/" in source:
        raise OutlineError(
            say("{file} is no .svg file", file=source),
            say("give an .svg file with a closed path"),
        )
    return named_outline(source, height_m)


def _sized(name: str, drawn: Drawn, height_m: float) -> Outline:
    return outline_of(name, drawn.points, height_m, drawn.holes, drawn.left_out)
