"""An outline as a raster, and what cells cover of it: how growing figures are measured."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from math import floor

import numpy as np
import numpy.typing as npt
from scipy.ndimage import distance_transform_edt
from shapely import Polygon, contains_xy

from buildplan.fitting.cells import EDGE_AT_BODY
from buildplan.fitting.measuring import PER_LINK_FARTHER
from buildplan.fitting.outline import ComplexArray, FloatArray, Outline

PER_LINK = 8  # pixels in the length of a link
BEYOND = 1.5  # how far the raster goes beyond the outline, in links
MOST_COVERED = 4.0  # by a cell, in squares of a link: a square with its bodies takes 3.3
CELLS_AT_FIRST = 256  # that there is room for
ROUND = 4  # segments of a quarter circle round a body
PER_CELL = 0.0008  # worth of a cell, in overlap: what covers no more is left out

# a cell is put on the raster to so many parts of a pixel, so that few of its shapes are ever drawn;
# what lies between two of them goes, in every process, to the same
FINER, HALFWAY, DIGITS = 4, 0.5 + 1e-6, 6
SHAPES = 4096  # that are kept: 24 directions and kinds, each at 16 places, and some outlines

BoolArray = npt.NDArray[np.bool_]
IntArray = npt.NDArray[np.int_]


@lru_cache(maxsize=SHAPES)
def _covered(corners: tuple[complex, ...], radius: float) -> tuple[IntArray, IntArray]:
    """The rows and columns of the pixels, each with its middle halfway, that a cell covers whose
    corners are given and whose bodies have a radius, in pixels."""
    body = Polygon([(corner.real, corner.imag) for corner in corners]).buffer(radius, ROUND)
    left, low, right, top = (floor(edge) for edge in body.bounds)
    columns, rows = np.meshgrid(np.arange(left, right + 1), np.arange(low, top + 1))
    covered = contains_xy(body, columns + 0.5, rows + 0.5)
    return rows[covered], columns[covered]


class Raster:
    """The pixels of an outline, and how often each is covered.

    Of every cell that may be laid the pixels that it covers with its bodies are kept, by their
    numbers, in two rows: those of the outline and those besides. The rows are filled up with the
    number of a pixel that there is not.
    """

    def __init__(self, outline: Outline, link_m: float, gauge_m: float) -> None:
        self._pixel_m, self._radius_m = link_m / PER_LINK, EDGE_AT_BODY * gauge_m / 2
        left, low, right, top = outline.region.bounds
        edge = BEYOND * link_m
        self._left, self._low = left - edge, low - edge
        x = np.arange(self._left, right + edge, self._pixel_m) + self._pixel_m / 2
        y = np.arange(self._low, top + edge, self._pixel_m) + self._pixel_m / 2
        self._x, self._y = np.meshgrid(x, y)
        self.inside: BoolArray = contains_xy(outline.region, self._x, self._y)
        self._nowhere = self.inside.size
        self._often: IntArray = np.append(np.zeros(self.inside.size, int), 1)
        self._bare: BoolArray = self._often == 0
        most = round(MOST_COVERED * PER_LINK**2)
        self._pixels: IntArray = np.full((CELLS_AT_FIRST, 2, most), self._nowhere)
        self._footprints = 0
        self._area = int(self.inside.sum())
        self._from_outline: FloatArray = distance_transform_edt(~self.inside)
        self._height = outline.height_m / self._pixel_m
        self.within, self.beyond = 0, 0  # pixels covered, of the outline and besides

    def footprint(self, corners: ComplexArray) -> int | None:
        """The number of the pixels that a cell covers whose corners lie at places in metres; None
        beyond the raster."""
        places = (corners - complex(self._left, self._low)) / self._pixel_m
        steps = FINER * complex(places[0])
        step_x, step_y = floor(steps.real + HALFWAY), floor(steps.imag + HALFWAY)
        first = complex(step_x % FINER, step_y % FINER) / FINER
        shape = np.round(places - places[0] + first, DIGITS).tolist()
        rows, columns = _covered(tuple(shape), round(self._radius_m / self._pixel_m, DIGITS))
        rows, columns = rows + step_y // FINER, columns + step_x // FINER
        if min(rows.min(), columns.min()) < 0:
            return None
        if rows.max() >= self.inside.shape[0] or columns.max() >= self.inside.shape[1]:
            return None
        pixels = rows * self.inside.shape[1] + columns
        within = self.inside.ravel()[pixels]
        number, self._footprints = self._footprints, self._footprints + 1
        if number == len(self._pixels):
            more = np.full_like(self._pixels, self._nowhere)
            self._pixels = np.concatenate([self._pixels, more])
        for row, some in enumerate((pixels[within], pixels[~within])):
            self._pixels[number, row, : len(some)] = some
        return number

    def brings(self, footprints: Sequence[int]) -> IntArray:
        """Pixels that each would cover anew, of the outline and besides, (footprints, 2)."""
        return np.asarray(np.count_nonzero(self._bare[self._pixels[footprints]], axis=2))

    def put(self, footprint: int) -> None:
        """Cover what a cell covers."""
        within, beyond = self.brings([footprint])[0].tolist()
        self.within, self.beyond = self.within + within, self.beyond + beyond
        pixels = self._pixels[footprint]
        self._often[pixels] += 1  # the one that there is not once, there and back
        self._bare[pixels] = False

    def take(self, footprint: int) -> None:
        """Cover it no more."""
        pixels = self._pixels[footprint]
        self._often[pixels] -= 1
        self._bare[pixels] = self._often[pixels] == 0
        within, beyond = self.brings([footprint])[0].tolist()
        self.within, self.beyond = self.within - within, self.beyond - beyond

    @property
    def _uncovered(self) -> BoolArray:
        return self._bare[:-1].reshape(self.inside.shape)

    def overlap(self) -> float:
        """Area of the intersection over that of the union."""
        return self.within / (self._area + self.beyond)

    def overlaps(self, within: IntArray, beyond: IntArray) -> FloatArray:
        """The same with so many pixels more, of the outline and besides."""
        return np.asarray((self.within + within) / (self._area + self.beyond + beyond))

    def off_height(self) -> float:
        """How far its height is off that of the outline, over that."""
        rows = np.flatnonzero(~self._uncovered.all(axis=1))
        height = (rows[-1] - rows[0] + 1) / self._height if len(rows) else 0.0
        return float(abs(height - 1))

    def far(self) -> float:
        """What it is marked down by for the largest distance between its edge and the outline's."""
        bare = self._uncovered
        from_piece, covered = distance_transform_edt(bare), ~bare
        far = max(
            float(from_piece[self.inside].max()), float(self._from_outline[covered].max(initial=0))
        )
        return PER_LINK_FARTHER * far / PER_LINK

    def widest(self, count: int) -> Sequence[complex]:
        """The middle of the outline's pixels that lie deepest in it, some from all over it."""
        depth = distance_transform_edt(self.inside)
        ridge = np.argwhere((depth > PER_LINK / 2) & self.inside)
        order = np.argsort(-depth[tuple(ridge.T)], kind="stable")
        rows = ridge[order[:: max(1, len(order) // count)]][:count]
        return [complex(self._x[y, x], self._y[y, x]) for y, x in rows]
