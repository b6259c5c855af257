"""The forms of a gauge, drawn at true size (see gauge.py for the forms)."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from buildplan.design.measures import METRES_PER_INCH, Units, gauged_words
from buildplan.drawing.fonts import text_width, wrapped
from buildplan.drawing.line_art import INK, PAPER, SOFT, TYPE, WASH, arc
from buildplan.drawing.marks import Circle, Curve, Ink, Label, Mark, Point, Polyline
from buildplan.language.messages import mark
from buildplan.language.phrases import clauses
from buildplan.language.voice import Voice

MM = 72 / 25.4
INCH = 72.0
WALL = 14.0  # least card left round a gauge
# Straight part of a jaw, before the half circle: long, where the paper has room for it.
JAWS = (20 * MM, 14 * MM, 26.0)
CUT = Ink(stroke=INK, width=1.0)
EDGE = Ink(stroke=SOFT, width=0.6, dash=(5, 3))
WORDS_PT, TITLE_PT, LEAST_TITLE_PT = 9.0, 15.0, 9.0


class GaugeForm(StrEnum):
    """What a gauge is cut as (see gauge.py)."""

    HOLE = "hole"
    NOTCH = "notch"
    HALF = "half"
    TAPE = "tape"


@dataclass(frozen=True)
class Gauge:
    """One gauge on a sheet: its diameter, form, and the balloons that are sized with it.

    `jaw` is the straight part of a jaw, `arm` how much card is left above and below (all round a
    hole), `spine` how much behind, in points. `mouth` is a hole's centre; of a notch the
    middle of its mouth, half way between the ends of its jaws; of a half the same point, where
    its taped edge meets the mouth.
    """

    diameter_m: float
    form: GaugeForm
    balloons: tuple[str, ...]
    mouth: Point
    jaw: float = 0.0
    arm: float = WALL
    spine: float = WALL

    @property
    def diameter(self) -> float:
        """True diameter in points."""
        return points(self.diameter_m)


def points(length_m: float) -> float:
    """A length in metres as points on paper."""
    return length_m / METRES_PER_INCH * INCH


def diameter_words(diameter_m: float, units: Units, voice: Voice) -> str:
    """The diameter as the steps call it, and exactly in millimetres: `3 1/2 in (88.9 mm)`."""
    return voice.say(
        "{size} ({mm} mm)",
        size=gauged_words(diameter_m, units),
        mm=_short(diameter_m * 1000, voice, 1),
    )


def _short(value: float, voice: Voice, places: int = 2) -> str:
    """A number to so many places, without noughts at its end."""
    return voice.written(f"{value:.{places}f}".rstrip("0").rstrip("."))


def tape_words(gauge: Gauge, units: Units, voice: Voice) -> str:
    """What a tape measure round the balloon shows."""
    round_m = math.pi * gauge.diameter_m
    if units == "in":
        value = voice.say("{length} in", length=voice.decimal(round_m / METRES_PER_INCH, 1))
    else:
        value = voice.say("{length} cm", length=voice.decimal(round_m * 100, 1))
    size = diameter_words(gauge.diameter_m, units, voice)
    return voice.say("{size}: a tape measure round it shows {length}", size=size, length=value)


def gauge_words(gauge: Gauge, units: Units, voice: Voice) -> str:
    """A gauge in words, for those who cannot see it."""
    messages = {
        GaugeForm.HOLE: mark("A hole {size} across, for {balloons}."),
        GaugeForm.NOTCH: mark("A notch between two jaws {size} across, for {balloons}."),
        GaugeForm.HALF: mark(
            "Half a notch, to be taped to its other half, {size} across, for {balloons}."
        ),
        GaugeForm.TAPE: mark("{size}, for {balloons}."),
    }
    names = clauses(voice, gauge.balloons)
    measured = tape_words(gauge, units, voice) if gauge.form is GaugeForm.TAPE else ""
    size = measured or diameter_words(gauge.diameter_m, units, voice)
    return voice.say(messages[gauge.form], size=size, balloons=names)


def _card(x: float, y: float, width: float, height: float) -> Mark:
    corners = ((x, y), (x + width, y), (x + width, y + height), (x, y + height))
    return Polyline(corners, Ink(WASH, EDGE.stroke, EDGE.width, EDGE.dash), closed=True)


def _dimension(start: Point, finish: Point) -> list[Mark]:
    """A thin line from edge to edge with a filled arrow head at both ends."""
    angle = math.atan2(finish[1] - start[1], finish[0] - start[0])
    marks: list[Mark] = [Polyline((start, finish), Ink(stroke=INK, width=0.5))]
    for tip, way in ((start, angle), (finish, angle + math.pi)):
        barbs = [
            (tip[0] + 9 * math.cos(way + turn), tip[1] + 9 * math.sin(way + turn))
            for turn in (0.2, -0.2)
        ]
        marks.append(Polyline((tip, *barbs), Ink(fill=INK), closed=True))
    return marks


def _wrapped(words: Sequence[str], width: float, size: float) -> Iterator[str]:
    """Lines of at most `width`, each name beginning a line of its own."""
    for name in words:
        yield from wrapped(name, width, size)


@dataclass(frozen=True)
class GaugeWords:
    """How gauges are told on paper: in which units and voice, and how large (points)."""

    units: Units
    voice: Voice
    size_pt: float = WORDS_PT

    def names(self, gauge: Gauge, middle: Point, width: float) -> list[Mark]:
        """The gauge's size and its balloons, centred on a point."""
        title = diameter_words(gauge.diameter_m, self.units, self.voice)
        small = self.size_pt
        least, big = max(small, LEAST_TITLE_PT), max(small, TITLE_PT)
        while text_width(title, big, bold=True) > width and big > least:
            big -= 1
        heads = list(wrapped(title, width, big)) if big == small > WORDS_PT else [title]
        lines = list(_wrapped(gauge.balloons, width, small))
        x, y = middle[0], middle[1] + 6
        marks: list[Mark] = [
            Label((x, y + big * 1.25 * i), line, big, INK, bold=True)
            for i, line in enumerate(reversed(heads))
        ]
        below = [y - small * 14 / 9 - small * 12 / 9 * i for i in range(len(lines))]
        marks += [Label((x, at), line, small, SOFT) for at, line in zip(below, lines, strict=True)]
        return marks


def hole_marks(gauge: Gauge, words: GaugeWords) -> list[Mark]:
    """A full circle in its card."""
    (x, y), radius = gauge.mouth, gauge.diameter / 2
    side = radius + gauge.arm
    return [
        _card(x - side, y - side, 2 * side, 2 * side),
        Circle(gauge.mouth, radius, Ink(PAPER, CUT.stroke, CUT.width)),
        *_dimension((x - radius, y), (x + radius, y)),
        *words.names(gauge, (x, y + radius * 0.36), radius * 1.5),
    ]


def notch_marks(gauge: Gauge, inward: float, words: GaugeWords) -> list[Mark]:
    """Two jaws closed by a half circle; `inward` 1 from the left edge of the page, -1 from the
    right."""
    (x, y), radius = gauge.mouth, gauge.diameter / 2
    jaw, arm = gauge.jaw, gauge.arm
    deep, centre = jaw + radius + gauge.spine, (x + inward * jaw, y)
    bend = arc(centre, radius, 90, 90 - inward * 180, CUT)
    start, finish = (x, y + radius), (x, y - radius)
    jaws = (
        _straight(start, bend.start),
        *bend.pieces,
        _straight(bend.pieces[-1][2], finish),
    )
    left = x if inward > 0 else x - deep
    across = x + inward * jaw / 2
    return [
        _card(left, y - radius - arm, deep, 2 * (radius + arm)),
        Curve(start, jaws, Ink(fill=PAPER)),
        Curve(start, jaws, CUT),
        *_dimension((across, y + radius), (across, y - radius)),
        *words.names(gauge, (x + inward * (jaw + radius * 0.42), y), radius * 0.95),
    ]


def half_marks(gauge: Gauge, inward: float, upper: bool, words: GaugeWords) -> list[Mark]:
    """One jaw and a quarter circle, above or below the line along which its other half is taped
    to it."""
    (x, y), radius = gauge.mouth, gauge.diameter / 2
    up, jaw = 1.0 if upper else -1.0, gauge.jaw
    deep = jaw + radius + WALL
    start = (x, y + up * radius)
    bend = arc((x + inward * jaw, y), radius, up * 90, 90 - inward * 90, CUT)
    edge = (_straight(start, bend.start), *bend.pieces)
    filled = (*edge, _straight(edge[-1][2], (x, y)))
    left = x if inward > 0 else x - deep
    low = y if upper else y - radius - WALL
    voice = words.voice
    if upper:
        taped = voice.say("upper half: tape to the other half along this line")
    else:
        taped = voice.say("lower half: tape to the other half along this line")
    return [
        _card(left, low, deep, radius + WALL),
        Curve(start, filled, Ink(fill=PAPER)),
        Curve(start, edge, CUT),
        Polyline(((left, y), (left + deep, y)), Ink(stroke=INK, width=0.8, dash=(10, 3, 2, 3))),
        *_dimension((x + inward * jaw / 2, y), (x + inward * jaw / 2, y + up * radius)),
        *words.names(gauge, (x + inward * (jaw + radius * 0.42), y + up * radius * 0.4), radius),
        Label(
            (left + deep / 2, y - 12 if upper else y + 6),
            taped,
            max(TYPE, words.size_pt * TYPE / WORDS_PT),
            INK,
        ),
    ]


def _straight(start: Point, finish: Point) -> tuple[Point, Point, Point]:
    """A straight Bezier piece."""
    third = ((finish[0] - start[0]) / 3, (finish[1] - start[1]) / 3)
    return (
        (start[0] + third[0], start[1] + third[1]),
        (finish[0] - third[0], finish[1] - third[1]),
        finish,
    )
