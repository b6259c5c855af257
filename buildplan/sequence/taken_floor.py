"""Floor that is taken: on which small squares nobody can kneel or stand, and from when on.

In a large piece most of the floor is taken, by many bodies at once. What lies wholly under one of
them, and what lies under none, is told here for all joints together, so that only the squares in
which a body ends are looked at body by body.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from buildplan.shape.model import FloatArray, IntArray

SQUARE_M = 0.05
_AT_ONCE = 2000  # bodies whose squares are worked out together


@dataclass(frozen=True)
class TakenFloor:
    """Squares of the floor, `shape` of them from `origin_m`, and by headrooms since when what
    hangs lower takes each of them `wholly`, under one body, or `partly`; never is infinite."""

    origin_m: FloatArray
    shape: IntArray
    wholly: dict[float, FloatArray]
    partly: dict[float, FloatArray]

    def taken_and_free(
        self, spots_m: FloatArray, headroom_m: float, now: float
    ) -> tuple[npt.NDArray[np.bool_], npt.NDArray[np.bool_]]:
        """Which spots (n, 2) are surely taken `now` by what hangs lower than `headroom_m`, and
        which are surely free of it. What is taken under less headroom is taken under more."""
        place = np.floor((spots_m - self.origin_m) / SQUARE_M).astype(int)
        outside = ((place < 0) | (place >= self.shape)).any(axis=1)
        place[outside] = 0
        number = place @ [self.shape[1], 1]
        less = [each for each in self.wholly if each <= headroom_m]
        more = [each for each in self.partly if each >= headroom_m]
        taken = self.wholly[max(less)][number] <= now if less else np.zeros(len(spots_m), bool)
        free = self.partly[min(more)][number] > now if more else np.zeros(len(spots_m), bool)
        return taken & ~outside, free | outside


def taken_floor(
    starts_m: FloatArray,
    runs_m: FloatArray,
    kept_m: FloatArray,
    lowest_m: FloatArray,
    when: FloatArray,
    headrooms_m: Sequence[float],
) -> TakenFloor:
    """The floor under bodies that run (n, 2) from `starts_m` (n, 2), seen from above, keep `kept_m`
    (n,) about them free, hang down to `lowest_m` (n,) and come at `when` (n,)."""
    ends = starts_m + runs_m
    origin = np.minimum(starts_m, ends).min(axis=0) - kept_m.max() - SQUARE_M
    far = np.maximum(starts_m, ends).max(axis=0) + kept_m.max() + SQUARE_M
    shape = np.ceil((far - origin) / SQUARE_M).astype(int)
    half = SQUARE_M / 2**0.5  # the farthest that a square goes from its middle

    def since(kept: FloatArray) -> dict[float, FloatArray]:
        squares, bodies = _squares_within(starts_m - origin, runs_m, kept, shape)
        found = {}
        for headroom in (*headrooms_m, np.inf):
            low = lowest_m[bodies] < headroom
            found[headroom] = np.full(int(shape.prod()), np.inf)
            np.minimum.at(found[headroom], squares[low], when[bodies[low]])
        return found

    return TakenFloor(origin, shape, since(kept_m - half), since(kept_m + half))


def _squares_within(
    starts_m: FloatArray, runs_m: FloatArray, kept_m: FloatArray, shape: IntArray
) -> tuple[IntArray, IntArray]:
    """The squares whose middles lie within `kept_m` of a body, and of which: side by side."""
    reach = np.linalg.norm(runs_m, axis=1) / 2 + kept_m
    most = int(np.ceil(reach.max() / SQUARE_M)) + 1
    line = np.arange(-most, most + 1)
    window = np.stack(np.meshgrid(line, line, indexing="ij"), axis=-1).reshape(-1, 2)
    run_squares = np.maximum((runs_m * runs_m).sum(axis=1), 1e-9)
    found = list[tuple[IntArray, IntArray]]()
    for at in range(0, len(starts_m), _AT_ONCE):
        these = slice(at, at + _AT_ONCE)
        start, run = starts_m[these], runs_m[these]
        place = np.floor((start + run / 2) / SQUARE_M).astype(int)[:, None] + window
        off = (place + 0.5) * SQUARE_M - start[:, None]
        share = np.einsum("nwi,ni->nw", off, run) / run_squares[these, None]
        off -= np.clip(share, 0.0, 1.0)[..., None] * run[:, None]
        within = np.einsum("nwi,nwi->nw", off, off) <= (kept_m[these] ** 2)[:, None]
        within &= (kept_m[these] > 0)[:, None] & ((place >= 0) & (place < shape)).all(axis=2)
        body, which = np.nonzero(within)
        found.append((place[body, which] @ [shape[1], 1], body + at))
    return (
        np.concatenate([squares for squares, _ in found]),
        np.concatenate([bodies for _, bodies in found]),
    )
