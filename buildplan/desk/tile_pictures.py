"""The picture of a cell on its tile: its balloons from the front, the outer side up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import atan2, cos, degrees, hypot, pi, sin
from urllib.parse import quote

SIDE = 100.0
MIDDLE, RADIUS = SIDE / 2, 37.0
ALONG, ACROSS = 0.94, 0.52  # of a balloon, to the way between its knots
KNOT = 3.2
EDGE, KNOT_COLOUR = "#3A3A3A", "#2A2A2A"


@dataclass(frozen=True)
class TileColours:
    """The colours of the balloons of a tile, as hex digits."""

    outer: str = "#5E86A8"
    inner: str = "#5E86A8"
    brace: str = "#E9E2CF"


Point = tuple[float, float]


@lru_cache(maxsize=512)
def tile_picture(outer: int, inner: int, colours: TileColours) -> str:
    """A cell in which the chains advance so far, as an SVG in an address of its own (`data:`)."""
    shapes = "".join(_shapes(outer, inner, colours))
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {SIDE:g} {SIDE:g}">{shapes}</svg>'
    return f"data:image/svg+xml,{quote(svg, safe=' =/:')}"


def _shapes(outer: int, inner: int, colours: TileColours) -> Iterator[str]:
    corners = _corners(outer, inner)
    ways = [*zip(corners, (*corners[1:], corners[0]), strict=True)]
    kinds = [colours.outer] * outer + [colours.brace] + [colours.inner] * inner + [colours.brace]
    for (start, end), colour in zip(ways, kinds, strict=True):
        yield _balloon(start, end, colour)
    for x, y in corners:
        yield f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{KNOT:g}" fill="{KNOT_COLOUR}"/>'


def _corners(outer: int, inner: int) -> list[Point]:
    """The joints round a cell, from the first of the outer side on: all its balloons alike, so
    that it is a regular polygon, the middle of its outer side up."""
    count = outer + inner + 2
    step = 2 * pi / count
    radius = RADIUS if count > 2 else RADIUS * 0.8
    first = pi / 2 + outer * step / 2
    spots = [first - i * step for i in range(count)]
    corners = [(MIDDLE + radius * cos(a), MIDDLE - radius * sin(a)) for a in spots]
    low, high = min(y for _, y in corners), max(y for _, y in corners)
    return [(x, y + MIDDLE - (low + high) / 2) for x, y in corners]


def _balloon(start: Point, end: Point, colour: str) -> str:
    (x1, y1), (x2, y2) = start, end
    length, turned = hypot(x2 - x1, y2 - y1), degrees(atan2(y2 - y1, x2 - x1))
    return (
        f'<ellipse rx="{length * ALONG / 2:.1f}" ry="{length * ACROSS / 2:.1f}" fill="{colour}" '
        f'stroke="{EDGE}" stroke-width="1.5" transform="translate({(x1 + x2) / 2:.1f} '
        f'{(y1 + y2) / 2:.1f}) rotate({turned:.1f})"/>'
    )
