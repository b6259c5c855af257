"""One balloon in its place: the stamps that draw it."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

from buildplan.drawing.looks import body_length, quantised_aspect, shows_end
from buildplan.drawing.marks import Look, Mark, Stamp

FloatArray = npt.NDArray[np.float64]


def link_stamps(
    look: Look,
    far: FloatArray,
    near: FloatArray,
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
    along = near - far
    drawn = float(np.hypot(along[0], along[1]))
    cosine, sine = (along / drawn) if drawn > 1e-6 else (1.0, 0.0)
    aspect = quantised_aspect(length, drawn / true_length if true_length > 0 else 0.0)
    # what the steps of foreshortening leave over, so that every end meets its joint
    stretch = float(np.clip(drawn / (aspect * diameter), 0.8, 1.25)) if aspect > 0.3 else 1.0
    x, y = (near + far) / 2
    d, s = diameter, diameter * stretch
    turned = (s * cosine, s * sine, -d * sine, d * cosine)
    link = _as(look, "link", aspect=aspect, length=length, near=near_end)
    marks: list[Mark] = [Stamp(link, _matrix(*turned, x, y))]
    if look.state != "outline":
        extra = d * (body_length(length, aspect) - 1)
        matrix = (d + extra * cosine**2, extra * cosine * sine, d + extra * sine**2)
        marks.append(
            Stamp(_as(look, "body"), _matrix(matrix[0], matrix[1], matrix[1], matrix[2], x, y))
        )
        if look.state == "new" and pattern:
            marks.append(Stamp(_as(look, "pattern", pattern=pattern), _matrix(d, 0, 0, d, x, y)))
        if shows_end(length, aspect):
            end = _as(look, "end", near=near_end)
            marks.append(
                Stamp(end, _matrix(d * cosine, d * sine, -d * sine, d * cosine, near[0], near[1]))
            )
    return marks


def round_stamps(
    look: Look, joint: FloatArray, centre: FloatArray, diameter: float, pattern: int = 0
) -> list[Mark]:
    """The stamps of one round, its knot towards the joint."""
    toward = joint - centre
    length = float(np.hypot(toward[0], toward[1]))
    c, s = (toward / length * diameter) if length > 1e-6 else (diameter, 0.0)
    x, y = centre
    marks: list[Mark] = [Stamp(_as(look, "round"), _matrix(c, s, -s, c, x, y))]
    if look.state != "outline":
        marks.append(Stamp(_as(look, "body"), _matrix(diameter, 0, 0, diameter, x, y)))
        if look.state == "new" and pattern:
            sign = _as(look, "pattern", pattern=pattern)
            marks.append(Stamp(sign, _matrix(diameter, 0, 0, diameter, x, y)))
    return marks


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
    )


def _matrix(*values: float) -> tuple[float, float, float, float, float, float]:
    a, b, c, d, e, f = (round(float(value), 3) for value in values)
    return (a, b, c, d, e, f)
