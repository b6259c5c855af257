"""Colour swatches that do not rely on colour."""

from __future__ import annotations

from buildplan.drawing.marks import Circle, Ink, Picture
from buildplan.framework.model import BalloonType


def swatch(balloon: BalloonType, letter: str, size: float = 20) -> Picture:
    """The balloon as it is drawn in pictures, small."""
    radius = size / 2
    return Picture(
        size,
        size,
        (Circle((radius, radius), radius - 1, Ink(balloon.colour, "#1A1A1A", 0.8)),),
        f"Colour {letter}: {balloon.label}, a {balloon.kind} balloon.",
    )
