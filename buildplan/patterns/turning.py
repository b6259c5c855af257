"""How far a course turns, and whether a closed one comes round.

Seen from the front a cell is a polygon: the two braces, the outer links and the inner links
between them. The angle between the two braces is what the cell turns. A run of links along a
side bends where a joint is skipped, so its chord (the straight distance between the braces'
ends) can vary; braces of length b whose ends lie the chords p (outer) and q (inner) apart
form an isosceles trapezoid, which turns 2 asin((p - q) / 2b). Of equal lengths a straight
cell turns 0, a fan 60 (an equilateral triangle), and a tip as much as its rhombus opens.

A closed plane curve that does not cross itself turns 360 degrees in all.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import asin, degrees, radians, sin

from buildplan.patterns.course import CourseCell

FULL_TURN_DEG = 360.0

# Angles between two links that meet at a skipped joint, degrees. Folded closer than this
# their bodies are pressed flat against each other; opened wider, the chain is all but
# straight there and holds no corner. From memory, and generous: form finding has the say.
FOLDED_DEG, OPENED_DEG = 40.0, 150.0

# What a closed course may be out by. Part is fixed: hands never tie to the degree. Part
# grows with the straight cells: a gauge is read to 1/16 inch in 8 (0.8 %), from memory, and
# each straight cell turns with the inner link's length. It never reaches a whole fan, so
# that one fan too few or too many is always told. Strain beyond is form finding's to report.
FIXED_TOLERANCE_DEG = 8.0
GAUGE_READING = 0.008
MOST_TOLERANCE_DEG = 45.0


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
class Turn:
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


def cell_turn(cell: CourseCell, lengths: SideLengths) -> Turn:
    """How far `cell` turns.

    A long run on one side may also belly out like so many fans side by side.
    """
    outer_least, outer_most = _chord(cell.outer, lengths.outer)
    inner_least, inner_most = _chord(cell.inner, lengths.inner)
    limit_deg = OPENED_DEG if max(cell.outer, cell.inner) > 1 else 180.0
    least = _opening_deg(outer_least - inner_most, lengths.brace, limit_deg)
    most = _opening_deg(outer_most - inner_least, lengths.brace, limit_deg)
    fans = cell.outer - cell.inner
    if cell.outer > 2 and fans > 0:
        most = max(most, fans * fan_turn_deg(lengths.outer, lengths.brace))
    if cell.inner > 2 and fans < 0:
        least = min(least, fans * fan_turn_deg(lengths.inner, lengths.brace))
    return Turn(least, most)


def fan_turn_deg(link: float, brace: float) -> float:
    """What a fan of this link turns: 60 degrees when the braces have its length."""
    return _opening_deg(link, brace, 180.0)


def course_turn(counts: Mapping[CourseCell, int], lengths: SideLengths) -> Turn:
    """How far a course with so many of each cell turns."""
    turns = [(count, cell_turn(cell, lengths)) for cell, count in counts.items()]
    return Turn(
        sum(count * turn.least_deg for count, turn in turns),
        sum(count * turn.most_deg for count, turn in turns),
    )


def tolerance_deg(counts: Mapping[CourseCell, int], lengths: SideLengths) -> float:
    """What a closed course may be out by, degrees."""
    straights = sum(count for cell, count in counts.items() if cell.name == "straight")
    by_gauge = degrees(straights * GAUGE_READING * lengths.inner / lengths.brace)
    return min(FIXED_TOLERANCE_DEG + by_gauge, MOST_TOLERANCE_DEG)


def comes_round(counts: Mapping[CourseCell, int], lengths: SideLengths) -> bool:
    """Whether a closed course can turn 360 degrees, within tolerance."""
    shortfall = course_turn(counts, lengths).shortfall_deg()
    return abs(shortfall) <= tolerance_deg(counts, lengths)


def inner_gauge_that_closes(counts: Mapping[CourseCell, int], lengths: SideLengths) -> float | None:
    """The gauge to size the inner links to so that the course makes a full turn, everything
    else left as it is; None when no sensible gauge does. Lengths go with the gauge."""

    def shortfall(inner: float) -> float:
        return course_turn(counts, replace(lengths, inner=inner)).shortfall_deg()

    # a longer inner link always makes a course turn less
    now = shortfall(lengths.inner)
    wrong, right = lengths.inner, lengths.outer * (0.5 if now > 0 else 2.0)
    if shortfall(right) * now > 0:
        return None
    for _ in range(50):
        middle = (wrong + right) / 2
        if shortfall(middle) * now > 0:
            wrong = middle
        else:
            right = middle
    return lengths.inner_gauge * right / lengths.inner
