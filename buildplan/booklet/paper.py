"""Sheets of paper and the grid on them, in points (1/72 inch)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

POINTS_PER_MM = 72 / 25.4


def mm(length_mm: float) -> float:
    """Millimetres in points."""
    return length_mm * POINTS_PER_MM


@dataclass(frozen=True)
class Paper:
    """A sheet, upright. `left`, `right`, `top` and `bottom` are the edges of the type area."""

    name: str
    width: float
    height: float
    margin: float = mm(15)

    @property
    def left(self) -> float:
        """Left edge of the type area."""
        return self.margin

    @property
    def right(self) -> float:
        """Right edge of the type area."""
        return self.width - self.margin

    @property
    def top(self) -> float:
        """Top edge of the type area, below the running head."""
        return self.height - mm(24)

    @property
    def bottom(self) -> float:
        """Bottom edge of the type area, above the running foot."""
        return mm(20)

    @property
    def measure(self) -> float:
        """Width of the type area."""
        return self.right - self.left


# A4: ISO 216, 210 x 297 mm. US Letter: ANSI/ASME Y14.1 size A, 8.5 x 11 in (from memory).
PAPERS: Mapping[str, Paper] = {
    "a4": Paper("A4", mm(210), mm(297)),
    "letter": Paper("Letter", 8.5 * 72, 11 * 72),
}
