"""What a user may name as an outline, and what she gives for its height and its gauges."""

from __future__ import annotations

import re
from collections.abc import Mapping
from math import fsum
from pathlib import Path
from string import ascii_lowercase

import numpy as np

from buildplan.design.building import METRES_PER_UNIT
from buildplan.design.measures import Units
from buildplan.design.wishes import GAUGE_STEP
from buildplan.fitting.inside import band_gauge_m, band_width_m
from buildplan.fitting.lettering import letter_outline
from buildplan.fitting.outline import Drawn, Outline, OutlineError, outline_of
from buildplan.fitting.outlines import named_outline
from buildplan.fitting.photo_outline import PHOTOS, photo_outline, photo_outlines
from buildplan.fitting.svg_outline import svg_outline, svg_outlines
from buildplan.language.messages import message, message_count
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice
from buildplan.source.almost_numbers import measured
from buildplan.source.mistake import listed, quoted

METRES = {"cm": 0.01, "m": 1.0, "mm": 0.001, "in": 0.0254, "ft": 0.3048}
MOST_PIECES = 8  # outlines of one drawing that are fitted
LEAST_HEIGHT_M, MOST_HEIGHT_M = 0.3, 6.0
# Gauges that links are sized to: 8 and 6 inches of a 12-inch link, 5 of a 6-inch one, and the
# like in centimetres. Common practice, no source.
GAUGES: Mapping[Units, tuple[float, ...]] = {"in": (8.0, 6.0, 5.0), "cm": (20.0, 15.0, 12.5)}
# Those of figures, whose cells are as wide as a link is long; the last where the others are too
# coarse.
FIGURE_GAUGES: Mapping[Units, tuple[float, ...]] = {"in": (5.0, 4.0, 3.0), "cm": (12.5, 10.0, 7.5)}
LEAST_GAUGE_IN, MOST_GAUGE_IN = 3.0, 10.0
ENGLISH = Voice()


def parse_height(text: str) -> float:
    """Metres of a height such as `150cm`, `1.5 m`, `60in`, `5ft` or `7'10"`. Raises ToldError."""
    found = measured(text)
    if not found and (meant := _heights_meant(text)):
        raise ToldError(
            message(
                "{text} has no unit; write {right}", text=quoted(text), right=listed(meant, "or")
            )
        )
    if not found:
        raise ToldError(
            message(
                "{text} is not a height; write it like 150cm, 1.5m, 60in or 5ft", text=quoted(text)
            )
        )
    height_m = fsum(number * METRES[unit] for number, unit in found)
    if not LEAST_HEIGHT_M <= height_m <= MOST_HEIGHT_M:
        raise ToldError(
            message(
                "a height of {height} is beyond what a piece can have: {least} to {most}",
                height=text.strip(),
                least=f"{LEAST_HEIGHT_M * 100:.0f}cm",
                most=f"{MOST_HEIGHT_M:g}m",
            )
        )
    return height_m


def _heights_meant(text: str) -> list[str]:
    """The heights that a piece can have, of those that a number alone may mean."""
    number = text.strip().replace(",", ".")
    if not re.fullmatch(r"\d+(\.\d+)?", number):
        return []
    return [
        f"{number}{unit}"
        for unit in ("cm", "in", "m", "ft")
        if LEAST_HEIGHT_M <= float(number) * METRES[unit] <= MOST_HEIGHT_M
    ]


def units_of(height: str) -> Units:
    """The units of a file for a height that was given so: `150cm` and `2m` are metric."""
    return "cm" if all(unit in ("cm", "m", "mm") for _, unit in measured(height)) else "in"


def parse_gauges(text: str, units: Units = "in") -> tuple[float, ...]:
    """Gauges in `units` from a list such as `8,6,5`, in inches, or `20cm,15cm`: each to the
    nearest step that a gauge has. Raises ToldError."""
    gauges_m = []
    for word in text.split(","):
        found = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*(cm|in)?\s*", word)
        gauge_m = 0.0 if found is None else float(found[1]) * METRES[found[2] or "in"]
        if not LEAST_GAUGE_IN <= gauge_m / METRES["in"] <= MOST_GAUGE_IN:
            raise ToldError(
                message(
                    "{text} is no list of gauges; write inches with commas, such as 8,6,5, or "
                    "centimetres as 20cm,15cm, each from {least} to {most} inches",
                    text=repr(text),
                    least=f"{LEAST_GAUGE_IN:g}",
                    most=f"{MOST_GAUGE_IN:g}",
                )
            )
        gauges_m.append(gauge_m)
    step_m = GAUGE_STEP[units] * METRES[units]
    steps = dict.fromkeys(round(gauge_m / step_m) for gauge_m in gauges_m)
    return tuple(number * GAUGE_STEP[units] for number in steps)


def gauges_for(outline: Outline, units: Units = "in") -> tuple[float, ...]:
    """The usual gauges; for a band, with the one that makes the tube as wide in place of the
    nearest, if links can be sized to it."""
    width_m = band_width_m(outline)
    if width_m is None:
        return GAUGES[units]
    step = 2 * GAUGE_STEP[units]
    gauge_m = band_gauge_m(width_m)
    if not LEAST_GAUGE_IN <= gauge_m / METRES["in"] <= MOST_GAUGE_IN:
        return GAUGES[units]
    wanted = round(gauge_m / METRES_PER_UNIT[units] / step) * step
    nearest = min(GAUGES[units], key=lambda gauge: abs(gauge - wanted))
    return tuple(wanted if gauge == nearest else gauge for gauge in GAUGES[units])


def read_outlines(source: str, height_m: float, voice: Voice = ENGLISH) -> tuple[Outline, ...]:
    """The outlines that `source` names, from left to right: those of an `.svg` file or of a
    picture, all together `height_m` high, or the one that `read_outline` reads. Raises as that
    does."""
    file, suffix = Path(source), Path(source).suffix.lower()
    if suffix not in (".svg", *PHOTOS):
        return (read_outline(source, height_m, voice),)
    drawn = svg_outlines(file) if suffix == ".svg" else photo_outlines(file)
    if len(drawn) == 1:
        return (_sized(file.stem, drawn[0], height_m),)
    if len(drawn) > MOST_PIECES:
        raise OutlineError(
            message(
                "{file} shows {count} outlines, and at most {most} are drawn at once",
                file=source,
                count=len(drawn),
                most=MOST_PIECES,
            ),
            message("leave some out, or take one of them with --piece"),
        )
    low = min(float(one.points.imag.min()) for one in drawn)
    high = max(float(one.points.imag.max()) for one in drawn)
    scale = height_m / (high - low)
    named = zip(ascii_lowercase, drawn, strict=False)
    return tuple(
        _sized(f"{file.stem} {letter}", one, scale * float(np.ptp(one.points.imag)))
        for letter, one in named
    )


def piece_by_number(source: str, number: int, height_m: float) -> Outline:
    """One of several outlines of an `.svg` file or of a picture, by its number from the left, and
    `height_m` high by itself. Raises OutlineError where there are fewer; OSError passes through.
    """
    file, suffix = Path(source), Path(source).suffix.lower()
    drawn: tuple[Drawn, ...] = ()
    if suffix in (".svg", *PHOTOS):
        drawn = svg_outlines(file) if suffix == ".svg" else photo_outlines(file)
    elif number == 1:
        return read_outline(source, height_m)
    if not 1 <= number <= len(drawn):
        raise OutlineError(
            message_count(
                "{file} shows {number} outline",
                "{file} shows {number} outlines",
                max(1, len(drawn)),
                file=source,
            ),
            message("count them from the left, from 1; --taken draws the numbers of a picture"),
        )
    letter = f" {ascii_lowercase[number - 1]}" if 1 < len(drawn) <= len(ascii_lowercase) else ""
    return _sized(f"{file.stem}{letter}", drawn[number - 1], height_m)


def read_outline(source: str, height_m: float, voice: Voice = ENGLISH) -> Outline:
    """The outline that `source` names: the largest of an `.svg` file, a photo, `letter:A`, or one
    of our own curves. Raises OutlineError, or OSError when the file cannot be opened."""
    suffix = Path(source).suffix.lower()
    if suffix == ".svg":
        return _sized(Path(source).stem, svg_outline(Path(source)), height_m)
    if suffix in PHOTOS:
        return _sized(Path(source).stem, photo_outline(Path(source)), height_m)
    if source.startswith("letter:"):
        letter = source.removeprefix("letter:")
        return _sized(voice.say("letter {letter}", letter=letter), letter_outline(letter), height_m)
    if "." in source or "/" in source:
        raise OutlineError(
            message("{file} is no drawing that is read", file=source),
            message("give an .svg file with a closed path, or a .png or .jpg picture"),
        )
    return named_outline(source, height_m, voice)


def _sized(name: str, drawn: Drawn, height_m: float) -> Outline:
    return outline_of(name, drawn.points, height_m, drawn.holes, drawn.left_out)
