"""One balloon in its place: the stamps that draw it."""

from __future__ import annotations

from functools import lru_cache
from math import hypot

import numpy as np
import numpy.typing as npt

from buildplan.drawing.marks import Look, Mark, Point, Stamp
from buildplan.drawing.outlines import body_length, quantised_aspect, shows_end

PaperPoint = Point | npt.NDArray[np.float64]

# Existing bodies smaller than this on paper get no light and shade: it would not be seen.
SHADED_FROM_PT = 3.5


def link_stamps(
    look: Look,
    far: PaperPoint,
    near: PaperPoint,
    true_length: float,
    diameter: float,
    length: float,
    near_end: str = "",
    pattern: int = 0,
) -> list[Mark]:
    """The stamps of one link balloon, drawn from its far knot to its near knot (points).

    `true_length` is the distance between the knots in space, in points; `length` the
    balloon's tie-to-tie length over its diameter.
    """
    x0, y0, x1, y1 = float(far[0]), float(far[1]), float(near[0]), float(near[1])
    drawn = hypot(x1 - x0, y1 - y0)
    cosine, sine = ((x1 - x0) / drawn, (y1 - y0) / drawn) if drawn > 1e-6 else (1.0, 0.0)
    aspect = quantised_aspect(length, drawn / true_length if true_length > 0 else 0.0)
    # what the steps of foreshortening leave over, so that every end meets its joint
    stretch = min(1.25, max(0.8, drawn / (aspect * diameter))) if aspect > 0.3 else 1.0
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    d, s = diameter, diameter * stretch
    link = _as(look, "link", aspect, length, near_end)
    marks: list[Mark] = [Stamp(link, (s * cosine, s * sine, -d * sine, d * cosine, x, y))]
    if look.state in ("outline", "far"):
        return marks
    if look.state == "new" or diameter >= SHADED_FROM_PT:
        extra = d * (body_length(length, aspect) - 1)
        skew = extra * cosine * sine
        body = _as(look, "body")
        marks.append(Stamp(body, (d + extra * cosine**2, skew, skew, d + extra * sine**2, x, y)))
        if shows_end(length, aspect):
            end = _as(look, "end", near=near_end)
            marks.append(Stamp(end, (d * cosine, d * sine, -d * sine, d * cosine, x1, y1)))
    return marks + _sign(look, pattern, d, x, y)


def round_stamps(
    look: Look, joint: PaperPoint, centre: PaperPoint, diameter: float, pattern: int = 0
) -> list[Mark]:
    """The stamps of one round, its knot towards the joint."""
    d, x, y = diameter, float(centre[0]), float(centre[1])
    toward_x, toward_y = float(joint[0]) - x, float(joint[1]) - y
    length = hypot(toward_x, toward_y)
    c, s = (toward_x / length * d, toward_y / length * d) if length > 1e-6 else (d, 0.0)
    marks: list[Mark] = [Stamp(_as(look, "round"), (c, s, -s, c, x, y))]
    if look.state in ("outline", "far"):
        return marks
    if look.state == "new" or diameter >= SHADED_FROM_PT:
        marks.append(Stamp(_as(look, "body"), (d, 0.0, 0.0, d, x, y)))
    return marks + _sign(look, pattern, d, x, y)


def _sign(look: Look, pattern: int, diameter: float, x: float, y: float) -> list[Mark]:
    if look.state != "new" or not pattern:
        return []
    return [Stamp(_as(look, "pattern", pattern=pattern), (diameter, 0.0, 0.0, diameter, x, y))]


@lru_cache(maxsize=4096)
def link_look(colour: str, state: str, tone: int, line: float, finish: str) -> Look:
    """The look of a link balloon of which nothing else is known yet."""
    return Look("link", colour, state, tone=tone, line=line, finish=finish)


@lru_cache(maxsize=4096)
def _as(
    look: Look,
    form: str,
    aspect: float = 1.0,
    length: float = 1.0,
    near: str = "",
    pattern: int = 0,
) -> Look:
    """The look of another form of the same balloon; what the form does not use is left at
    its plain value, so that equal looks are one."""
    outlined = form in ("link", "end", "round")
    return Look(
        form,
        look.colour,
        look.state,
        aspect=aspect,
        pattern=pattern,
        length=length,
        near=near,
        tone=look.tone if form != "pattern" else 0,
        line=look.line if outlined else 0.0,
        finish=look.finish if form != "pattern" else "standard",
    )
