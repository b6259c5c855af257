"""How far a cell turns the course that it is part of.

Seen from the front a cell is a polygon: the two braces, the outer links and the inner links
between them. The angle between the two braces is what the cell turns. A run of links along a
side bends where a joint is skipped, so its chord (the straight distance between the braces'
ends) can vary; braces of length b whose ends lie the chords p (outer) and q (inner) apart
form an isosceles trapezoid, which turns 2 asin((p - q) / 2b). Of equal lengths a straight
cell turns 0, a fan 60 (an equilateral triangle), and a tip as much as its rhombus opens.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, degrees, radians, sin

FULL_TURN_DEG = 360.0

# Angles between two links that meet at a skipped joint, degrees. Folded closer than this
# their bodies are pressed flat against each other; opened wider, the chain is all but
# straight there and holds no corner. From memory, and generous: form finding has the say.
FOLDED_DEG, OPENED_DEG = 40.0, 150.0


@dataclass(frozen=True)
class SideLengths:
    """Mean tie-to-tie lengths of a tube's links, and what the inner ones are sized to now and
    can be sized to at most, in any one unit."""

    outer: float
    inner: float
    brace: float
    inner_gauge: float
    inner_nominal: float


@dataclass(frozen=True)
class CourseTurn:
    """The least and the most that something can turn, degrees; positive bends inward."""

    least_deg: float
    most_deg: float

    def shortfall_deg(self) -> float:
        """What it lacks of a full turn; negative when even its least is too much; else 0."""
        if self.most_deg < FULL_TURN_DEG:
            return FULL_TURN_DEG - self.most_deg
        return min(0.0, FULL_TURN_DEG - self.least_deg)


def _chord(links: int, length: float) -> tuple[float, float]:
    """The least and the most straight distance that `links` in a row span."""
    if links < 2:
        return links * length, links * length
    if links == 2:
        return 2 * length * sin(radians(FOLDED_DEG / 2)), 2 * length * sin(radians(OPENED_DEG / 2))
    return 0.0, links * length


def _opening_deg(chord: float, brace: float, most_deg: float) -> float:
    """Angle between two braces whose ends lie `chord` further apart outside than inside."""
    most = sin(radians(most_deg / 2))
    return degrees(2 * asin(max(-most, min(most, chord / (2 * brace)))))


def polygon_turn(outer: int, inner: int, lengths: SideLengths) -> CourseTurn:
    """How far a cell turns by whose sides the outer chains advance so many links, the inner so
    many.

    A long run on one side may also belly out like so many fans side by side.
    """
    outer_least, outer_most = _chord(outer, lengths.outer)
    inner_least, inner_most = _chord(inner, lengths.inner)
    limit_deg = OPENED_DEG if max(outer, inner) > 1 else 180.0
    least = _opening_deg(outer_least - inner_most, lengths.brace, limit_deg)
    most = _opening_deg(outer_most - inner_least, lengths.brace, limit_deg)
    fans = outer - inner
    if outer > 2 and fans > 0:
        most = max(most, fans * fan_turn_deg(lengths.outer, lengths.brace))
    if inner > 2 and fans < 0:
        least = min(least, fans * fan_turn_deg(lengths.inner, lengths.brace))
    return CourseTurn(least, most)


def fan_turn_deg(link: float, brace: float) -> float:
    """What a fan of this link turns: 60 degrees when the braces have its length."""
    return _opening_deg(link, brace, 180.0)
