"""The stretch of an outline that is searched for a course. Lengths are in long links."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from buildplan.fitting.cells import Sizes
from buildplan.fitting.outline import ComplexArray, Outline, Symmetry, evenly

PER_LINK = 8  # samples of the outline in the length of a link
MARGIN = round(2.5 * PER_LINK)  # samples beyond each end


@dataclass(frozen=True)
class Track:
    """The stretch of outline that is searched: samples beyond both its ends, where it begins and
    how many samples it is long, in links, with the poses that its ends ask for."""

    samples: ComplexArray
    length: int
    centre: complex
    start_direction: float
    end_direction: float


def track_along(outline: Outline, symmetry: Symmetry, link_m: float) -> Track:
    """The samples, beginning on the first mirror axis, or without one where it is straightest."""
    parts = symmetry.fold * (2 if symmetry.mirrors else 1)
    perimeter = float(np.abs(np.diff(np.append(outline.points, outline.points[0]))).sum()) / link_m
    length = max(6, round(perimeter / parts * PER_LINK))
    samples = evenly(outline.points / link_m, length * parts)
    centre = symmetry.centre / link_m
    if symmetry.mirrors:
        first, second = symmetry.mirrors
        aside = (samples - centre) * np.exp(-1j * first)
        # sampling afresh from where the axis cuts the outline
        begin = int(np.argmin(np.where(aside.real > 0, np.abs(aside.imag), np.inf)))
    else:
        first = second = 0.0
        begin = _straightest(samples)
    samples = np.roll(samples, -begin)
    if not symmetry.mirrors:
        tangent = samples[1] - samples[-1]
        first = float(np.angle(tangent)) + np.pi / 2
        second = first - 2 * np.pi / symmetry.fold
    around = np.concatenate([samples[-MARGIN:], samples, samples, samples])
    return Track(around[: MARGIN + length + 9 * PER_LINK], length, centre, first, second)


def start_direction(outline: Outline, symmetry: Symmetry, sizes: Sizes) -> float:
    """Which way is out where courses along `outline` begin, radians."""
    return track_along(outline, symmetry, sizes.long_m).start_direction


def _straightest(samples: ComplexArray) -> int:
    """The sample about which the outline bends least within two links."""
    ahead = np.roll(samples, -PER_LINK) - samples
    bend = np.abs(np.angle(ahead / np.roll(ahead, PER_LINK)))
    window = np.ones(PER_LINK) / PER_LINK
    spread = np.convolve(np.concatenate([bend[-PER_LINK:], bend, bend[:PER_LINK]]), window, "same")
    return int(np.argmin(spread[PER_LINK:-PER_LINK].round(3)))
