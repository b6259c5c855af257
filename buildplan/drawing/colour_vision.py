"""How colours look to eyes that see fewer of them, and in grey print; how far apart they are.

Machado, Oliveira, Fernandes, "A Physiologically-based Model for Simulation of Color Vision
Deficiency", IEEE TVCG 15(6), 2009: matrices for severity 1, on linear sRGB (from memory, checked
against colorspacious in the tests). CIELAB and its colour difference: CIE 15 (CIE 1976, white
point D65).
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.colours import from_linear, linear

# Colours nearer than this in one kind of sight (CIE 1976 difference; in grey, of lightness L*)
# may be taken for one another across a picture. A threshold of our own.
CONFUSABLE = 20.0

_VISIONS: Mapping[str, FloatArray] = MappingProxyType(
    {
        "full colour": np.eye(3),
        "protanopia": np.array(
            [
                [0.152286, 1.052583, -0.204868],
                [0.114503, 0.786281, 0.099216],
                [-0.003882, -0.048116, 1.051998],
            ]
        ),
        "deuteranopia": np.array(
            [
                [0.367322, 0.860646, -0.227968],
                [0.280085, 0.672501, 0.047413],
                [-0.011820, 0.042940, 0.968881],
            ]
        ),
        "tritanopia": np.array(
            [
                [1.255528, -0.076749, -0.178779],
                [-0.078411, 0.930809, 0.147602],
                [0.004733, 0.691367, 0.303900],
            ]
        ),
    }
)
VISIONS = tuple(_VISIONS)

# sRGB to XYZ (IEC 61966-2-1), each row over the white point's X, Y or Z.
_TO_XYZ = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
_TO_XYZ = _TO_XYZ / _TO_XYZ.sum(axis=1, keepdims=True)


@lru_cache(maxsize=4096)
def seen_as(colour: str, vision: str) -> str:
    """A colour as eyes of one of `VISIONS` see it."""
    return from_linear(_VISIONS[vision] @ linear(colour))


@lru_cache(maxsize=4096)
def _lab(colour: str) -> tuple[float, float, float]:
    ratio = _TO_XYZ @ linear(colour)
    low = ratio <= (6 / 29) ** 3
    x, y, z = np.where(low, ratio / (3 * (6 / 29) ** 2) + 4 / 29, np.cbrt(ratio))
    return float(116 * y - 16), float(500 * (x - y)), float(200 * (y - z))


def lightness(colour: str) -> float:
    """CIE lightness L*, 0 to 100: the grey that the colour prints as."""
    return _lab(colour)[0]


def difference(first: str, second: str) -> float:
    """CIE 1976 colour difference."""
    return float(np.linalg.norm(np.subtract(_lab(first), _lab(second))))


def confusable(first: str, second: str) -> bool:
    """Whether two colours come close to one another in grey print or in any kind of sight."""
    if abs(lightness(first) - lightness(second)) < CONFUSABLE:
        return True
    return any(
        difference(seen_as(first, vision), seen_as(second, vision)) < CONFUSABLE
        for vision in VISIONS
    )
