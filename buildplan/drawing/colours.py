"""Colours as `#RRGGBB`: mixing, shading, and how they print in grey."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from buildplan.drawing.arrays import FloatArray

# Oklab, a space in which equal steps look about equal: Ottosson, "A perceptual color space
# for image processing", 2020 (matrices from memory, checked by a round trip in the tests).
_TO_LMS = np.array(
    [
        [0.4122214708, 0.5363325363, 0.0514459929],
        [0.2119034982, 0.6806995451, 0.1073969566],
        [0.0883024619, 0.2817188376, 0.6299787005],
    ]
)
_TO_LAB = np.array(
    [
        [0.2104542553, 0.7936177850, -0.0040720468],
        [1.9779984951, -2.4285922050, 0.4505937099],
        [0.0259040371, 0.7827717662, -0.8086757660],
    ]
)


def linear(colour: str) -> FloatArray:
    """Linear sRGB of `colour`, each 0 to 1 (IEC 61966-2-1)."""
    value = np.array([int(colour[i : i + 2], 16) for i in (1, 3, 5)]) / 255
    return np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4)


def from_linear(light: FloatArray) -> str:
    """The colour of linear sRGB values, clipped to what sRGB holds."""
    clipped = np.clip(light, 0, 1)
    value = np.where(clipped <= 0.0031308, clipped * 12.92, 1.055 * clipped ** (1 / 2.4) - 0.055)
    return "#" + "".join(f"{round(v * 255):02X}" for v in value)


def to_oklab(colour: str) -> FloatArray:
    """Lightness (0 to 1), a and b of `colour`."""
    return np.asarray(_TO_LAB @ np.cbrt(_TO_LMS @ linear(colour)))


def from_oklab(lab: FloatArray) -> str:
    """The colour of `lab`, clipped to what sRGB holds."""
    return from_linear(np.linalg.inv(_TO_LMS) @ (np.linalg.inv(_TO_LAB) @ lab) ** 3)


@lru_cache(maxsize=4096)
def mix(first: str, second: str, share: float) -> str:
    """`first` with `share` (0 to 1) of `second` mixed in."""
    return from_oklab(to_oklab(first) * (1 - share) + to_oklab(second) * share)


@lru_cache(maxsize=4096)
def shade(colour: str, amount: float) -> str:
    """`colour` in more light (`amount` up to 1, white) or less (down to -1, black).

    Shadows keep their hue and grow a little richer, as rubber's do: ivory goes to tan, not
    to grey.
    """
    lab = to_oklab(colour)
    if amount >= 0:
        return from_oklab(np.array([lab[0] + (1 - lab[0]) * amount, *lab[1:] * (1 - amount)]))
    kept = 1 + amount
    chroma = float(np.hypot(lab[1], lab[2]))
    # pale rubber goes warm in shadow: its faint hue is told more, by at most 0.035
    wanted = chroma * kept**0.5 * (1 - 0.9 * amount - 9 * amount * max(0.0, lab[0] - 0.8) / 0.2)
    told = min(wanted, chroma + 0.035) / chroma if chroma > 1e-4 else 0.0
    return from_oklab(np.array([lab[0] * kept, *lab[1:] * told]))


def luminance(colour: str) -> float:
    """Relative luminance, 0 to 1 (WCAG 2.2, "relative luminance")."""
    return float(np.array([0.2126, 0.7152, 0.0722]) @ linear(colour))


def contrast(first: str, second: str) -> float:
    """Contrast ratio, 1 to 21 (WCAG 2.2, "contrast ratio")."""
    low, high = sorted((luminance(first), luminance(second)))
    return (high + 0.05) / (low + 0.05)
