"""Pictures that are drawn when their page is: to set a page takes their sizes alone."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from buildplan.drawing.marks import Picture


@dataclass(frozen=True, eq=False)
class Undrawn:
    """A picture that is still to be drawn, and its size, in points."""

    width: float
    height: float
    draw: Callable[[], Picture]


Showable = Picture | Undrawn


def drawn(picture: Showable) -> Picture:
    """The picture itself."""
    return picture.draw() if isinstance(picture, Undrawn) else picture
