"""The outline of a link balloon, in units of the body's diameter.

The balloon is a surface of revolution, a round body drawn in to the knot at each end. Its
outline is the envelope of its projected circles, made in a few steps of foreshortening so that
each is drawn once in a document.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.curves import smooth
from buildplan.drawing.marks import Curve, Ink

# Drawn proportions of a sized link, in body diameters (from memory, for looks only).
NECK_RADIUS = 0.045
NECK_LENGTH = 0.03
FORESHORTENING_STEPS = 9
LENGTH_STEP = 0.05


def profile(length: float, samples: int = 401) -> tuple[FloatArray, FloatArray]:
    """Distances t along the axis from the centre and radii r there, in body diameters."""
    t = np.linspace(-length / 2, length / 2, samples)
    along = np.clip(np.abs(t) / (length / 2 - NECK_LENGTH), 0, 1)
    body = 0.5 * (1 - along**2.3) ** 0.66
    return t, np.sqrt(body**2 + NECK_RADIUS**2 * along**8)


@lru_cache(maxsize=1024)
def outline(length: float, aspect: float, points: int = 33) -> FloatArray:
    """The upper half of a link's outline, (points, 2), from its left end to its right; not to be
    written to.

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
    found = np.column_stack([x, y])
    found.flags.writeable = False
    return found


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


def link_curve(length: float, aspect: float, ink: Ink) -> Curve:
    """The whole outline as a closed curve."""
    return replace(_bare_curve(length, aspect), ink=ink)


@lru_cache(maxsize=1024)
def _bare_curve(length: float, aspect: float) -> Curve:
    """The whole outline, whatever it is inked with."""
    upper = outline(length, aspect)
    lower = upper[-2:0:-1] * np.array([1.0, -1.0])
    return smooth(np.vstack([upper, lower]), Ink())


def shows_end(length: float, aspect: float) -> bool:
    """Whether the near knot is seen over the body, so that an "end" has to be stamped."""
    return aspect / length < 0.8
