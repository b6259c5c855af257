"""An outline as a raster, and what cells cover of it: how growing figures are measured."""

from __future__ import annotations

from collections.abc import Sequence

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

BoolArray = npt.NDArray[np.bool_]
IntArray = npt.NDArray[np.int_]


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
        body = Polygon(np.column_stack([corners.real, corners.imag])).buffer(self._radius_m, ROUND)
        left, low, right, top = body.bounds
        first_x, last_x = self._columns(left - self._left), self._columns(right - self._left) + 1
        first_y, last_y = self._columns(low - self._low), self._columns(top - self._low) + 1
        if min(first_x, first_y) < 0:
            return None
        if last_y > self.inside.shape[0] or last_x > self.inside.shape[1]:
            return None
        window = slice(first_y, last_y), slice(first_x, last_x)
        rows, columns = np.nonzero(contains_xy(body, self._x[window], self._y[window]))
        pixels = (rows + first_y) * self.inside.shape[1] + columns + first_x
        within = self.inside.ravel()[pixels]
        number, self._footprints = self._footprints, self._footprints + 1
        if number == len(self._pixels):
            more = np.full_like(self._pixels, self._nowhere)
            self._pixels = np.concatenate([self._pixels, more])
        for row, some in enumerate((pixels[within], pixels[~within])):
            self._pixels[number, row, : len(some)] = some
        return number

    def _columns(self, length_m: float) -> int:
        return int(np.floor(length_m / self._pixel_m))

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
