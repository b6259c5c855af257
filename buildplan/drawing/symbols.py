"""How balloons look: the forms that every picture stamps, in units of the body's diameter.

Outlines are turned along the balloon; light and shade are a form of their own ("body") that is
stretched to the outline but never turned, so that light always falls from the upper left.
"""

from __future__ import annotations

from functools import lru_cache
from math import log

import numpy as np

from buildplan.drawing.colours import contrast, mix
from buildplan.drawing.curves import ellipse, round_point
from buildplan.drawing.marks import Circle, Ink, Look, PathMark, Polyline
from buildplan.drawing.outlines import link_curve, shows_end
from buildplan.drawing.shading import (
    body_tones,
    dark_line,
    dimmed,
    done_tones,
    faint,
    paled,
    rim_tone,
)

DONE_LINE = "#8A9AA8"
FAR_LINE = "#C3CCD4"
OUTLINE_LINE = "#7C8B99"
PATTERNS = 7
LINE_STEPS = (0.012, 0.018, 0.026, 0.038, 0.055)


@lru_cache(maxsize=4096)
def quantised_line(width: float) -> float:
    """The nearest of the outline widths in which looks are made."""
    return min(LINE_STEPS, key=lambda step: abs(log(step / width)))


def _body(look: Look) -> tuple[PathMark, ...]:
    colour = dimmed(look.colour, look.tone)
    if look.state == "far":
        return ()
    return done_tones(colour) if look.state == "done" else body_tones(colour, look.finish)


def _fill_and_line(look: Look) -> tuple[str | None, str]:
    if look.state == "outline":
        return None, OUTLINE_LINE
    colour = dimmed(look.colour, look.tone)
    if look.state == "far":
        return faint(colour), FAR_LINE
    if look.state == "done":
        return paled(colour), DONE_LINE
    return rim_tone(colour, look.finish), dark_line(colour)


def _knot(x: float, out: float, kind: str, ink: Ink) -> list[PathMark]:
    """The tied end at (x, 0); `out` is +1 or -1, away from the body.

    A neck ends in its rolled rim, wider than the neck and hollow; a tail in a plain nub.
    """
    marks: list[PathMark] = []
    if kind == "neck":
        marks.append(ellipse((x + 0.085 * out, 0.0), 0.024, 0.082, 0.0, ink))
        marks.append(ellipse((x + 0.055 * out, 0.0), 0.045, 0.05, 0.0, ink))
    elif kind == "tail":
        marks.append(ellipse((x + 0.065 * out, 0.0), 0.06, 0.042, 0.0, ink))
    marks.append(ellipse((x, 0.0), 0.05, 0.066, 0.0, ink))
    return marks


def _other(near: str) -> str:
    return {"neck": "tail", "tail": "neck"}.get(near, "")


def _link(look: Look) -> tuple[PathMark, ...]:
    fill, line = _fill_and_line(look)
    ink = Ink(fill=fill, stroke=line, width=look.line)
    marks: list[PathMark] = []
    if look.state != "outline":
        marks += _knot(-look.aspect / 2, -1, _other(look.near), ink)
        if not shows_end(look.length, look.aspect):
            marks += _knot(look.aspect / 2, 1, look.near, ink)
    marks.append(link_curve(look.length, look.aspect, ink))
    return tuple(marks)


def _end(look: Look) -> tuple[PathMark, ...]:
    """The near end seen over the body: a pucker where the neck draws in, then the knot."""
    fill, line = _fill_and_line(look)
    fine = Ink(stroke=line, width=round(look.line * 0.55, 4))
    marks: list[PathMark] = []
    if look.state != "outline":
        for k in range(7):
            angle = 2 * np.pi * k / 7 + 0.3
            ray = np.array([np.cos(angle), np.sin(angle)])
            marks.append(Polyline((round_point(ray * 0.07), round_point(ray * 0.135)), fine))
    ink = Ink(fill=fill, stroke=line, width=round(look.line * 0.8, 4))
    if look.near == "neck":
        marks.append(Circle((0.0, 0.0), 0.085, ink))
        marks.append(Circle((0.0, 0.0), 0.045, ink))
    else:
        marks.append(Circle((0.0, 0.0), 0.06, ink))
    return tuple(marks)


def _round(look: Look) -> tuple[PathMark, ...]:
    fill, line = _fill_and_line(look)
    ink = Ink(fill=fill, stroke=line, width=look.line)
    knot = ellipse((0.53, 0.0), 0.055, 0.075, 0.0, ink)
    return (knot, Circle((0.0, 0.0), 0.5, ink))


def _pattern(look: Look) -> tuple[PathMark, ...]:
    black, white = (contrast(look.colour, end) for end in ("#000000", "#FFFFFF"))
    tone = mix(look.colour, "#000000" if black > white else "#FFFFFF", 0.7)
    line = Ink(stroke=tone, width=0.05)
    solid = Ink(fill=tone)
    third = 0.13 * float(np.sqrt(3)) / 2
    # nothing round in the middle: it would look like an eye
    signs: dict[int, tuple[PathMark, ...]] = {
        1: (Polyline(((-0.1, -0.1), (0.1, 0.1)), line),),
        2: (Polyline(((0.0, 0.13), (-third, -0.065), (third, -0.065)), solid, closed=True),),
        3: (
            Polyline(((-0.14, 0.0), (0.14, 0.0)), line),
            Polyline(((0.0, -0.14), (0.0, 0.14)), line),
        ),
        4: (Polyline(((-0.1, -0.1), (0.1, -0.1), (0.1, 0.1), (-0.1, 0.1)), line, closed=True),),
        5: (
            Polyline(((-0.14, 0.06), (0.14, 0.06)), line),
            Polyline(((-0.14, -0.06), (0.14, -0.06)), line),
        ),
        6: (Polyline(((-0.14, 0.08), (0.0, -0.08), (0.14, 0.08)), line),),
    }
    return signs.get(look.pattern, ())


@lru_cache(maxsize=4096)
def look_marks(look: Look) -> tuple[PathMark, ...]:
    """The marks of a look, back to front, in units of the body's diameter."""
    forms = {"link": _link, "end": _end, "round": _round, "body": _body, "pattern": _pattern}
    return forms[look.form](look)
