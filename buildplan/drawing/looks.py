"""How balloons look: outlines, light and shade, as marks in units of the body's diameter.

A link balloon is a surface of revolution, a round body drawn in to the knot at each end. Its
outline is the envelope of its projected circles. Light comes from the upper left of the
page whichever way a balloon lies, so light and shade are a form of their own ("body") that is
stretched to the body's outline but never turned.
"""

from __future__ import annotations

from functools import lru_cache
from math import log

import numpy as np
import numpy.typing as npt

from buildplan.drawing.colours import luminance, mix, shade
from buildplan.drawing.marks import Circle, Curve, Ink, Look, Path, Point, Polyline

FloatArray = npt.NDArray[np.float64]

# Drawn proportions of a sized link, in body diameters (from memory, for looks only).
NECK_RADIUS = 0.045
NECK_LENGTH = 0.03
FORESHORTENING_STEPS = 9
LENGTH_STEP = 0.05
LINE_STEPS = (0.012, 0.018, 0.026, 0.038, 0.055)
DONE_LINE = "#8A9AA8"
OUTLINE_LINE = "#7C8B99"
PATTERNS = 7

_LIGHT = np.array([-0.46, 0.56, 0.69]) / np.linalg.norm([-0.46, 0.56, 0.69])


# --- the outline ---------------------------------------------------------------------------


def profile(length: float, samples: int = 401) -> tuple[FloatArray, FloatArray]:
    """Distances t along the axis from the centre and radii r there, in body diameters."""
    t = np.linspace(-length / 2, length / 2, samples)
    along = np.clip(np.abs(t) / (length / 2 - NECK_LENGTH), 0, 1)
    body = 0.5 * (1 - along**2.3) ** 0.66
    return t, np.sqrt(body**2 + NECK_RADIUS**2 * along**8)


def outline(length: float, aspect: float, points: int = 33) -> FloatArray:
    """The upper half of a link's outline, (points, 2), from its left end to its right.

    The circle of radius r at t projects to an ellipse about (t cos e, 0) with half-axes
    r sin e along the axis and r across, e being the axis' tilt out of the view plane.
    """
    cosine = min(1.0, aspect / length)
    sine = float(np.sqrt(1 - cosine**2))
    t, r = profile(length)
    reach = float(np.max(t * cosine + r * sine))
    x = -reach * np.cos(np.linspace(0, np.pi, points))
    if sine < 1e-6:
        y = np.interp(x, t, r)
    else:
        across = 1 - ((x[:, None] - t * cosine) / (r * sine)) ** 2
        y = np.max(r * np.sqrt(np.clip(across, 0, None)), axis=1)
    return np.column_stack([x, y])


@lru_cache(maxsize=64)
def inscribed_length(length: float) -> float:
    """Length of the longest ellipsoid of the body's diameter that fits inside a link."""
    t, r = profile(length)
    beyond = (r < 0.499) & (np.abs(t) > 0.05)
    return float(2 * np.min(np.abs(t[beyond]) / np.sqrt(1 - (2 * r[beyond]) ** 2)))


@lru_cache(maxsize=1024)
def body_length(length: float, aspect: float) -> float:
    """Drawn length of that ellipsoid when the link is foreshortened to `aspect`."""
    cosine = min(1.0, aspect / length)
    full = inscribed_length(length)
    return float(np.sqrt((full * cosine) ** 2 + 1 - cosine**2))


@lru_cache(maxsize=256)
def quantised_length(length: float) -> float:
    """`length` over diameter, on the steps in which looks are made."""
    return round(min(60, max(16, round(length / LENGTH_STEP))) * LENGTH_STEP, 4)


def quantised_aspect(length: float, foreshortening: float) -> float:
    """Drawn length over diameter, on the steps in which looks are made."""
    step = round(min(1.0, max(0.0, foreshortening)) * FORESHORTENING_STEPS)
    return round(length * step / FORESHORTENING_STEPS, 4)


def quantised_line(width: float) -> float:
    """The nearest of the outline widths in which looks are made."""
    return min(LINE_STEPS, key=lambda step: abs(log(step / width)))


def smooth(points: FloatArray, ink: Ink, closed: bool = True) -> Curve:
    """A smooth curve through points (Catmull and Rom 1974, as Bezier curves)."""
    count = len(points)
    if closed:
        before, after = np.roll(points, 1, axis=0), np.roll(points, -1, axis=0)
    else:
        before = np.vstack([points[:1], points[:-1]])
        after = np.vstack([points[1:], points[-1:]])
    slope = (after - before) / 6
    pieces = []
    for i in range(count if closed else count - 1):
        j = (i + 1) % count
        first, second = points[i] + slope[i], points[j] - slope[j]
        pieces.append((_point(first), _point(second), _point(points[j])))
    return Curve(_point(points[0]), tuple(pieces), ink, closed)


def _point(value: FloatArray) -> Point:
    return (round(float(value[0]), 4), round(float(value[1]), 4))


def _link_curve(length: float, aspect: float, ink: Ink) -> Curve:
    upper = outline(length, aspect)
    lower = upper[-2:0:-1] * np.array([1.0, -1.0])
    return smooth(np.vstack([upper, lower]), ink)


def ellipse(centre: Point, half_x: float, half_y: float, turn: float, ink: Ink) -> Curve:
    """An ellipse as four Bezier curves, its x half-axis turned by `turn` radians."""
    k = 0.5522847498  # circle by cubic curves, largest error 0.03 %
    c, s = float(np.cos(turn)), float(np.sin(turn))

    def at(x: float, y: float) -> Point:
        x, y = x * half_x, y * half_y
        return (round(centre[0] + c * x - s * y, 4), round(centre[1] + s * x + c * y, 4))

    pieces = (
        (at(1, k), at(k, 1), at(0, 1)),
        (at(-k, 1), at(-1, k), at(-1, 0)),
        (at(-1, -k), at(-k, -1), at(0, -1)),
        (at(k, -1), at(1, -k), at(1, 0)),
    )
    return Curve(at(1, 0), pieces, ink, closed=True)


# --- light and shade -----------------------------------------------------------------------


def lit_region(level: float, radius: float, points: int = 24) -> FloatArray | None:
    """Outline of the part of a sphere's disc where the light falls at cosine >= `level`.

    Shape (points, 2). None when it is a whole ellipse and `_lit_ellipse` draws it exactly.
    """
    flat = float(np.hypot(_LIGHT[0], _LIGHT[1]))
    if level >= flat:
        return None
    angles = np.linspace(0, 2 * np.pi, points, endpoint=False)
    rays = np.column_stack([np.cos(angles), np.sin(angles)])
    steps = np.linspace(0, 2, 801)
    spots = _LIGHT[:2] + steps[None, :, None] * rays[:, None, :]
    height = 1 - np.sum(spots**2, axis=2)
    inside = height >= 0
    cosine = spots @ _LIGHT[:2] + np.sqrt(np.clip(height, 0, None)) * _LIGHT[2]
    lit = inside & (cosine >= level)
    last = np.argmin(lit, axis=1)
    reach = steps[np.maximum(last - 1, 0)]
    return np.asarray((_LIGHT[:2] + reach[:, None] * rays) * radius)


def _lit(level: float, radius: float, fill: str) -> Curve:
    region = lit_region(level, radius)
    if region is not None:
        return smooth(region, Ink(fill=fill))
    flat = float(np.hypot(_LIGHT[0], _LIGHT[1]))
    turn = float(np.arctan2(_LIGHT[1], _LIGHT[0]))
    wide = float(np.sqrt(1 - level**2)) * radius
    centre = (_LIGHT[0] * level * radius, _LIGHT[1] * level * radius)
    return ellipse(centre, wide * float(np.sqrt(1 - flat**2)), wide, turn, Ink(fill=fill))


def _glow(fill: tuple[str, ...], radius: float) -> list[Path]:
    """Light that comes through the rubber on the side away from the lamp."""
    turn = float(np.arctan2(-_LIGHT[1], -_LIGHT[0]))
    marks: list[Path] = []
    for i, colour in enumerate(fill):
        out = radius * (0.60 + 0.03 * i)
        centre = (out * float(np.cos(turn)), out * float(np.sin(turn)))
        long, wide = radius * (0.60 - 0.15 * i), radius * (0.26 - 0.06 * i)
        marks.append(ellipse(centre, wide, long, turn, Ink(fill=colour)))
    return marks


def dimmed(colour: str, tone: int) -> str:
    """The colour of a balloon that lies deep in the picture."""
    return shade(colour, -0.04 * tone) if tone else colour


def paled(colour: str) -> str:
    """The colour of a balloon that stands already: near white, its own hue still told."""
    return mix(colour, "#FFFFFF", 0.74 if luminance(colour) < 0.5 else 0.62)


def dark_line(colour: str) -> str:
    """The outline of a new balloon: nearly black, with the balloon's hue."""
    return mix(shade(colour, -0.72), "#1A1A1A", 0.55)


def _body(look: Look) -> tuple[Path, ...]:
    colour = dimmed(look.colour, look.tone)
    if look.state == "done":
        pale = paled(colour)
        return (
            _lit(0.30, 0.475, mix(pale, "#FFFFFF", 0.25)),
            _lit(0.75, 0.475, mix(pale, "#FFFFFF", 0.5)),
        )
    light = luminance(colour)
    deepest, brightest = (-0.26, 0.34) if light < 0.5 else (-0.20, 0.5)
    levels = np.array([-0.4, -0.22, -0.04, 0.13, 0.28, 0.42, 0.54, 0.65, 0.74, 0.82, 0.89, 0.95])
    amounts = np.interp(levels, [-0.4, 0.5, 1.0], [deepest, 0.0, brightest])
    marks: list[Path] = []
    for i, (level, amount) in enumerate(zip(levels, amounts, strict=True)):
        marks.append(_lit(float(level), 0.488, shade(colour, round(float(amount), 3))))
        if i == 1:
            base = deepest * 0.62
            marks += _glow((shade(colour, base), shade(colour, base * 0.6)), 0.488)
    turn = float(np.arctan2(_LIGHT[1], _LIGHT[0])) + np.pi / 2
    spot = (-0.165, 0.215)
    for share, size in ((0.35, 1.0), (0.7, 0.72), (0.95, 0.45)):
        tone = mix(shade(colour, brightest), "#FFFFFF", share)
        marks.append(ellipse(spot, 0.105 * size, 0.062 * size, turn, Ink(fill=tone)))
    return tuple(marks)


# --- ends, outlines, signs -----------------------------------------------------------------


def _fill_and_line(look: Look) -> tuple[str | None, str]:
    if look.state == "outline":
        return None, OUTLINE_LINE
    colour = dimmed(look.colour, look.tone)
    if look.state == "done":
        return paled(colour), DONE_LINE
    return shade(colour, -0.33 if luminance(colour) < 0.5 else -0.26), dark_line(colour)


def _knot(x: float, out: float, kind: str, ink: Ink) -> list[Path]:
    """The tied end at (x, 0); `out` is +1 or -1, away from the body.

    A neck ends in its rolled rim, wider than the neck and hollow; a tail in a plain nub.
    """
    marks: list[Path] = []
    if kind == "neck":
        marks.append(ellipse((x + 0.085 * out, 0.0), 0.024, 0.082, 0.0, ink))
        marks.append(ellipse((x + 0.055 * out, 0.0), 0.045, 0.05, 0.0, ink))
    elif kind == "tail":
        marks.append(ellipse((x + 0.065 * out, 0.0), 0.06, 0.042, 0.0, ink))
    marks.append(ellipse((x, 0.0), 0.05, 0.066, 0.0, ink))
    return marks


def _other(near: str) -> str:
    return {"neck": "tail", "tail": "neck"}.get(near, "")


def shows_end(length: float, aspect: float) -> bool:
    """Whether the near knot is seen over the body, so that an "end" has to be stamped."""
    return aspect / length < 0.8


def _link(look: Look) -> tuple[Path, ...]:
    fill, line = _fill_and_line(look)
    ink = Ink(fill=fill, stroke=line, width=look.line)
    marks: list[Path] = []
    if look.state != "outline":
        marks += _knot(-look.aspect / 2, -1, _other(look.near), ink)
        if not shows_end(look.length, look.aspect):
            marks += _knot(look.aspect / 2, 1, look.near, ink)
    marks.append(_link_curve(look.length, look.aspect, ink))
    return tuple(marks)


def _end(look: Look) -> tuple[Path, ...]:
    """The near end seen over the body: a pucker where the neck draws in, then the knot."""
    fill, line = _fill_and_line(look)
    fine = Ink(stroke=line, width=round(look.line * 0.55, 4))
    marks: list[Path] = []
    if look.state != "outline":
        for k in range(7):
            angle = 2 * np.pi * k / 7 + 0.3
            ray = np.array([np.cos(angle), np.sin(angle)])
            marks.append(Polyline((_point(ray * 0.07), _point(ray * 0.135)), fine))
    ink = Ink(fill=fill, stroke=line, width=round(look.line * 0.8, 4))
    if look.near == "neck":
        marks.append(Circle((0.0, 0.0), 0.085, ink))
        marks.append(Circle((0.0, 0.0), 0.045, ink))
    else:
        marks.append(Circle((0.0, 0.0), 0.06, ink))
    return tuple(marks)


def _round(look: Look) -> tuple[Path, ...]:
    fill, line = _fill_and_line(look)
    ink = Ink(fill=fill, stroke=line, width=look.line)
    knot = ellipse((0.53, 0.0), 0.055, 0.075, 0.0, ink)
    return (knot, Circle((0.0, 0.0), 0.5, ink))


def _pattern(look: Look) -> tuple[Path, ...]:
    dark = luminance(look.colour) > 0.3
    tone = mix(look.colour, "#000000" if dark else "#FFFFFF", 0.62)
    line = Ink(stroke=tone, width=0.05)
    solid = Ink(fill=tone)
    third = 0.13 * float(np.sqrt(3)) / 2
    signs: dict[int, tuple[Path, ...]] = {
        1: (Circle((0.0, 0.0), 0.085, solid),),
        2: (Circle((0.0, 0.0), 0.12, line),),
        3: (Polyline(((-0.17, 0.0), (0.17, 0.0)), line),),
        4: (
            Polyline(((-0.14, 0.0), (0.14, 0.0)), line),
            Polyline(((0.0, -0.14), (0.0, 0.14)), line),
        ),
        5: (Polyline(((0.0, 0.13), (-third, -0.065), (third, -0.065)), solid, closed=True),),
        6: (Polyline(((-0.1, -0.1), (0.1, -0.1), (0.1, 0.1), (-0.1, 0.1)), line, closed=True),),
    }
    return signs.get(look.pattern, ())


@lru_cache(maxsize=4096)
def look_marks(look: Look) -> tuple[Path, ...]:
    """The marks of a look, back to front, in units of the body's diameter."""
    forms = {"link": _link, "end": _end, "round": _round, "body": _body, "pattern": _pattern}
    return forms[look.form](look)
