"""An outline to be matched: a closed curve in the plane, its size, and its symmetry.

The plane is that of complex numbers, x + iy, y up. Outlines run clockwise, as courses do.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
import numpy.typing as npt
from scipy.spatial import cKDTree
from shapely import Polygon, get_coordinates, unary_union

from buildplan.language.messages import Message, message
from buildplan.language.told import ToldError

ComplexArray = npt.NDArray[np.complex128]
FloatArray = npt.NDArray[np.float64]

SAMPLES = 720
# how far the outline and its image may differ and still count as alike, of its height
ALIKE = 0.012
MOST_FOLD = 12


class OutlineError(ToldError):
    """An outline that cannot be used: what is wrong with it, and what would be right."""

    def __init__(self, fault: Message, mend: Message) -> None:
        super().__init__(message("{fault}; {mend}", fault=fault, mend=mend))


@dataclass(frozen=True)
class Symmetry:
    """How an outline repeats itself about `centre`.

    `mirrors` are the directions, radians, of two neighbouring rays of mirror axes, the second
    clockwise of the first; empty, there is no mirror axis. `fold` is how many times over it
    repeats in a full turn.
    """

    centre: complex
    fold: int
    mirrors: tuple[float, float] | tuple[()]


@dataclass(frozen=True)
class Drawn:
    """What a drawing holds: its largest closed curve as points in any unit, y up, the holes in it,
    and how many closed curves there are besides."""

    points: ComplexArray
    holes: tuple[ComplexArray, ...] = ()
    left_out: int = 0


@dataclass(frozen=True)
class Outline:
    """A closed curve that does not cross itself, as points (n,) in metres, clockwise.

    `holes` are closed curves within it, and `left_out` is how many other closed curves the drawing
    has: the piece follows neither.
    """

    name: str
    points: ComplexArray
    holes: tuple[ComplexArray, ...] = ()
    left_out: int = 0

    @cached_property
    def region(self) -> Polygon:
        """What the outline encloses, holes filled."""
        return enclosed(self.points)

    @cached_property
    def region_with_holes(self) -> Polygon:
        """What the outline encloses, holes left open."""
        holes = unary_union([enclosed(hole).buffer(0) for hole in self.holes])
        return self.region.difference(holes)

    @property
    def height_m(self) -> float:
        """From its lowest point to its highest."""
        return float(np.ptp(self.points.imag))

    def scaled(self, factor: float) -> Outline:
        """The outline and its holes so many times as large."""
        holes = tuple(hole * factor for hole in self.holes)
        return replace(self, points=self.points * factor, holes=holes)

    def sampled(self, count: int) -> ComplexArray:
        """`count` points evenly spaced along it, from its first point on."""
        return evenly(self.points, count)


def enclosed(points: ComplexArray) -> Polygon:
    """The polygon through `points`."""
    return Polygon(np.column_stack([points.real, points.imag]))


def ring_points(region: Polygon) -> ComplexArray:
    """The outer edge of a region as points."""
    x, y = get_coordinates(region.exterior)[:-1].T
    return np.asarray(x + 1j * y)


def evenly(points: ComplexArray, count: int) -> ComplexArray:
    """`count` points evenly spaced along the closed polygon through `points`."""
    ring = np.append(points, points[0])
    reached = np.concatenate([[0.0], np.cumsum(np.abs(np.diff(ring)))])
    at = np.linspace(0, reached[-1], count, endpoint=False)
    return np.asarray(np.interp(at, reached, ring.real) + 1j * np.interp(at, reached, ring.imag))


def outline_of(
    name: str,
    points: Sequence[complex] | ComplexArray,
    height_m: float,
    holes: Sequence[ComplexArray] = (),
    left_out: int = 0,
) -> Outline:
    """The outline through `points`, scaled to `height_m`, standing on y = 0 about x = 0.

    Raises OutlineError for fewer than three points, no area, or a curve that crosses itself.
    """
    given = np.asarray(points, dtype=np.complex128)
    kept = given[np.abs(given - np.roll(given, 1)) > 1e-9 * max(1e-12, float(np.ptp(given.real)))]
    if len(kept) < 3 or np.ptp(kept.imag) <= 0 or np.ptp(kept.real) <= 0:
        raise OutlineError(
            message("the outline encloses no area"), message("draw a closed curve round an area")
        )
    factor = height_m / np.ptp(kept.imag)
    foot = 0.5 * (kept.real.min() + kept.real.max()) + 1j * kept.imag.min()
    kept = (kept - foot) * factor
    region = enclosed(kept)
    if not region.is_valid:
        raise OutlineError(
            message("the outline {name} crosses or touches itself", name=name),
            message("join its parts into one simple closed path"),
        )
    clockwise = kept[::-1] if region.exterior.is_ccw else kept
    return Outline(name, clockwise, tuple((hole - foot) * factor for hole in holes), left_out)


def _distance(first: ComplexArray, second: ComplexArray) -> float:
    tree = cKDTree(np.column_stack([first.real, first.imag]))
    return float(tree.query(np.column_stack([second.real, second.imag]))[0].max())


def symmetry_of(outline: Outline) -> Symmetry:
    """The symmetry of an outline: its mirror axes through its centroid, and its fold."""
    points = outline.sampled(SAMPLES)
    centroid = outline.region.centroid
    centre = complex(centroid.x, centroid.y)
    about, near = points - centre, ALIKE * outline.height_m
    fold = max(
        n
        for n in range(1, MOST_FOLD + 1)
        if n == 1 or _distance(about, about * np.exp(2j * np.pi / n)) <= near
    )
    # mirror axes are looked for upright first, so that a piece is the same left and right
    for step in range(180):
        axis = np.pi / 2 + step * np.pi / 180
        if _distance(about, np.conj(about * np.exp(-1j * axis)) * np.exp(1j * axis)) <= near:
            # the lower end of the axis, so that the course begins at the foot
            first = axis + np.pi
            return Symmetry(centre, fold, (first, first - np.pi / fold))
    return Symmetry(centre, fold, ())
