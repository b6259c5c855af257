"""Outlines that nobody would draw for a tube: spikes like hairs, a coast, a comb, curves that touch
or cross themselves, the flattest and the narrowest there are. As points (n,), y up, in any unit."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import numpy.typing as npt

Points = npt.NDArray[np.complex128]


def _round(count: int) -> Points:
    return np.asarray(np.exp(2j * np.pi * np.arange(count) / count))


def _star(points: int, inner: float) -> Points:
    reach = np.where(np.arange(2 * points) % 2, 1.0, inner)
    return np.asarray(reach * _round(2 * points))


def _spikes(count: int = 9) -> Points:
    found = []
    for middle in 2 * np.pi * np.arange(count) / count:
        found += [0.42 * np.exp(1j * (middle - 0.01)), np.exp(1j * middle)]
        found += [0.42 * np.exp(1j * (middle + turn)) for turn in np.linspace(0.01, 0.6, 7)]
    return np.array(found)


def _coast(rounds: int = 4) -> Points:
    """Koch's curve (1904) about a triangle."""
    edge = np.exp(2j * np.pi * (0.25 + np.arange(3) / 3))[::-1]
    for _ in range(rounds):
        step = (np.roll(edge, -1) - edge) / 3
        peak = edge + step + step * np.exp(1j * np.pi / 3)
        edge = np.column_stack([edge, edge + step, peak, edge + 2 * step]).ravel()
    return np.asarray(edge)


def _spiral() -> Points:
    turn = np.linspace(0.6, 4.5 * np.pi, 280)
    arm = np.exp(1j * turn)
    return np.concatenate([(8 + 7 * turn) * arm, ((7 * turn - 2) * arm)[::-1]])


def _comb(teeth: int = 10) -> Points:
    found = [0j, 2.0 * teeth + 0j]
    for tooth in range(teeth, 0, -1):
        x = 2.0 * tooth
        found += [x + 12j, x - 1 + 12j, x - 1 + 2j, x - 2 + 2j]
    return np.array(found[:-1])


NASTY: Mapping[str, Points] = {
    "spikes": _spikes(),
    "coast": _coast(),
    "circle of 2,000": _round(2000),
    "spiral": _spiral(),
    "comb": _comb(),
    "touching circles": np.concatenate([_round(200) - 1, 1 - _round(200)]),
    "crossing": np.array([0, 1 + 1j, 1, 1j]),
    "pentagram": _round(5)[[0, 2, 4, 1, 3]],
    "star of 24": _star(24, 0.6),
    "deep star of 24": _star(24, 0.25),
    "hair": np.array([0, 1, 1 + 300j, 300j]),
    "strip": np.array([0, 150, 150 + 1j, 1j]),
}
