"""Sheets of paper and the grid on them, in points (1/72 inch).

Large print is the same page drawn on a smaller grid and enlarged: `scale` points of the sheet
to one of the grid. Type in pictures is smaller than that of the text; so pictures are drawn for
less room than they get, and enlarged once more: `picture_scale` points of the grid to one of
theirs.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

POINTS_PER_MM = 72 / 25.4


def mm(length_mm: float) -> float:
    """Millimetres in points."""
    return length_mm * POINTS_PER_MM


@dataclass(frozen=True)
class Paper:
    """A sheet. `left`, `right`, `top` and `bottom` are the edges of the type area, whose top is
    `head` below the edge of the sheet and whose bottom is `foot` above it, all in points of the
    grid, which is enlarged `scale` times on the sheet; pictures are enlarged `picture_scale` times
    on the grid. Words in head and foot are `outwards` nearer to the edges than on other paper."""

    name: str
    width: float
    height: float
    margin: float = mm(15)
    scale: float = 1.0
    picture_scale: float = 1.0
    head: float = mm(24)
    foot: float = mm(20)
    outwards: float = 0.0

    @property
    def sheet(self) -> tuple[float, float]:
        """Width and height of the sheet."""
        return self.width * self.scale, self.height * self.scale

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
        return self.height - self.head

    @property
    def bottom(self) -> float:
        """Bottom edge of the type area, above the running foot."""
        return self.foot

    @property
    def measure(self) -> float:
        """Width of the type area."""
        return self.right - self.left


# A4: ISO 216, 210 x 297 mm. US Letter: ANSI/ASME Y14.1 size A, 8.5 x 11 in (from memory).
PAPERS: Mapping[str, Paper] = {
    "a4": Paper("A4", mm(210), mm(297)),
    "letter": Paper("Letter", 8.5 * 72, 11 * 72),
}

# 16 pt is the usual least for large print (from memory); body type is 10 pt, type in pictures 8.
LARGE_PRINT = 16 / 10
LARGE_PICTURES = 16 / 8 / LARGE_PRINT


def landscape(paper: Paper) -> Paper:
    """The same sheet turned."""
    return replace(paper, width=paper.height, height=paper.width)


def high_set(paper: Paper) -> Paper:
    """The same sheet with its type area close under the running head: for pages that should be
    few."""
    return replace(paper, head=paper.head - mm(3))


def large_print(paper: Paper) -> Paper:
    """The same sheet with everything on it enlarged, but for what is free about it."""
    return replace(
        paper,
        width=paper.width / LARGE_PRINT,
        height=paper.height / LARGE_PRINT,
        margin=mm(12) / LARGE_PRINT,
        head=paper.head - mm(3),
        foot=paper.foot - mm(4),
        outwards=mm(2),
        scale=paper.scale * LARGE_PRINT,
        picture_scale=paper.picture_scale * LARGE_PICTURES,
    )


def true_size(paper: Paper) -> Paper:
    """The same sheet with nothing enlarged."""
    whole = PAPERS[paper.name.lower()]
    turned = paper.width > paper.height
    return landscape(whole) if turned else whole
