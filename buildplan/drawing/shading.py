"""Light and shade of a balloon's body, as about ten stepped tones.

Light comes from the upper left of the page whichever way a balloon lies. Tones are bounded by
lines of equal light on a sphere, which are ellipses seen from the front.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.colours import luminance, mix, shade
from buildplan.drawing.curves import ellipse, smooth
from buildplan.drawing.marks import Curve, Ink, PathMark

_LIGHT = np.array([-0.46, 0.56, 0.69]) / np.linalg.norm([-0.46, 0.56, 0.69])
_TURN = float(np.arctan2(_LIGHT[1], _LIGHT[0]))
_RADIUS = 0.488
_LEVELS = (-0.4, -0.22, -0.04, 0.13, 0.28, 0.42, 0.54, 0.65, 0.74, 0.82, 0.89, 0.95)


@dataclass(frozen=True)
class Finish:
    """How a surface takes light.

    `ramp` gives (cosine of the light, change of tone) from shadow to light, for colours
    that are dark and that are light. `gleams` are the steps of the highlight (share of
    white, size); `glow` says how much light comes through the rubber on the far side;
    `tint` thins the colour with white.
    """

    dark_ramp: tuple[tuple[float, float], ...]
    light_ramp: tuple[tuple[float, float], ...]
    gleams: tuple[tuple[float, float], ...]
    glow: float
    tint: float = 0.0


_GLOSS = ((0.35, 1.0), (0.7, 0.72), (0.95, 0.45))
FINISHES: dict[str, Finish] = {
    "standard": Finish(
        dark_ramp=((-0.4, -0.26), (0.5, 0.0), (1.0, 0.34)),
        light_ramp=((-0.4, -0.20), (0.5, 0.0), (1.0, 0.5)),
        gleams=_GLOSS,
        glow=1.0,
    ),
    "matt": Finish(
        dark_ramp=((-0.4, -0.22), (0.6, 0.0), (1.0, 0.10)),
        light_ramp=((-0.4, -0.17), (0.6, 0.0), (1.0, 0.2)),
        gleams=(),
        glow=0.0,
    ),
    "pearl": Finish(
        dark_ramp=((-0.4, -0.24), (0.2, 0.0), (0.6, 0.16), (1.0, 0.55)),
        light_ramp=((-0.4, -0.18), (0.2, 0.0), (0.6, 0.3), (1.0, 0.8)),
        gleams=((0.3, 2.1), (0.5, 1.6), (0.7, 1.1), (0.85, 0.7)),
        glow=1.6,
    ),
    "metallic": Finish(
        dark_ramp=((-0.4, -0.46), (0.1, -0.3), (0.45, -0.16), (0.7, 0.14), (1.0, 0.72)),
        light_ramp=((-0.4, -0.4), (0.1, -0.27), (0.45, -0.14), (0.7, 0.16), (1.0, 0.85)),
        gleams=_GLOSS,
        glow=2.2,
    ),
    "clear": Finish(
        dark_ramp=((-0.4, -0.24), (0.0, -0.08), (0.3, 0.2), (0.7, 0.3), (1.0, 0.36)),
        light_ramp=((-0.4, -0.26), (0.0, -0.13), (0.3, -0.02), (0.7, 0.04), (1.0, 0.1)),
        gleams=((0.5, 1.15), (0.9, 0.85), (1.0, 0.55)),
        glow=2.0,
        tint=0.35,
    ),
}


@lru_cache(maxsize=64)
def lit_region(level: float, radius: float, points: int = 24) -> FloatArray | None:
    """Outline of the part of a sphere's disc where the light falls at cosine >= `level`.

    Shape (points, 2), not to be written to. None when it is a whole ellipse and `lit` draws it
    exactly.
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
    found = np.asarray((_LIGHT[:2] + reach[:, None] * rays) * radius)
    found.flags.writeable = False
    return found


def lit(level: float, radius: float, fill: str) -> Curve:
    """The part of a sphere's disc where the light falls at cosine >= `level`, filled."""
    region = lit_region(level, radius)
    if region is not None:
        return smooth(region, Ink(fill=fill))
    flat = float(np.hypot(_LIGHT[0], _LIGHT[1]))
    turn = _TURN
    wide = float(np.sqrt(1 - level**2)) * radius
    centre = (_LIGHT[0] * level * radius, _LIGHT[1] * level * radius)
    return ellipse(centre, wide * float(np.sqrt(1 - flat**2)), wide, turn, Ink(fill=fill))


def _glow(fill: tuple[str, ...], radius: float) -> list[PathMark]:
    """Light that comes through the rubber on the side away from the lamp."""
    turn = float(np.arctan2(-_LIGHT[1], -_LIGHT[0]))
    marks: list[PathMark] = []
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


def faint(colour: str) -> str:
    """The colour of a balloon that stands further off: a hint of its own."""
    return mix(paled(colour), "#FFFFFF", 0.6)


def dark_line(colour: str) -> str:
    """The outline of a new balloon: nearly black, with the balloon's hue."""
    return mix(shade(colour, -0.72), "#1A1A1A", 0.55)


def body_tones(colour: str, finish: str) -> tuple[PathMark, ...]:
    """A body in full colour, from shadow to highlight."""
    how = FINISHES[finish]
    colour = thinned(colour, finish)
    ramp = np.array(how.dark_ramp if luminance(colour) < 0.5 else how.light_ramp)
    amounts = [round(float(a), 3) for a in np.interp(_LEVELS, ramp[:, 0], ramp[:, 1])]
    marks: list[PathMark] = []
    for i, (level, amount) in enumerate(zip(_LEVELS, amounts, strict=True)):
        marks.append(lit(level, _RADIUS, shade(colour, amount)))
        if i == 1 and how.glow:
            deep = ramp[0, 1]
            tones = [round(float(deep * (1 - share * how.glow)), 3) for share in (0.38, 0.63)]
            marks += _glow(tuple(shade(colour, tone) for tone in tones), _RADIUS)
    spot = (-0.165, 0.215)
    for share, size in how.gleams:
        tone = mix(shade(colour, round(float(ramp[-1, 1]), 3)), "#FFFFFF", share)
        gleam = Ink(fill=tone)
        marks.append(ellipse(spot, 0.105 * size, 0.062 * size, _TURN + np.pi / 2, gleam))
    return tuple(marks)


def done_tones(colour: str) -> tuple[PathMark, ...]:
    """A body that stands already: nearly flat."""
    pale = paled(colour)
    return (
        lit(0.30, 0.475, mix(pale, "#FFFFFF", 0.25)),
        lit(0.75, 0.475, mix(pale, "#FFFFFF", 0.5)),
    )


def rim_tone(colour: str, finish: str) -> str:
    """The tone of necks, and of the rim where a body turns away."""
    thin = thinned(colour, finish)
    return shade(thin, -0.33 if luminance(thin) < 0.5 else -0.26)


def thinned(colour: str, finish: str) -> str:
    """The colour as it shows where the rubber lets light through."""
    tint = FINISHES[finish].tint
    return mix(colour, "#FFFFFF", tint) if tint else colour
