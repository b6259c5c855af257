"""How far a course turns, and whether a closed one comes round.

A closed plane curve that does not cross itself turns 360 degrees in all.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import degrees, fsum

from buildplan.framework.cell_turns import FULL_TURN_DEG as FULL_TURN_DEG
from buildplan.framework.cell_turns import CourseTurn as CourseTurn
from buildplan.framework.cell_turns import SideLengths as SideLengths
from buildplan.framework.cell_turns import fan_turn_deg as fan_turn_deg
from buildplan.framework.cells import STRAIGHT, CellKind

# What a closed course may be out by. Part is fixed: hands never tie to the degree. Part
# grows with the straight cells: a gauge is read to 1/16 inch in 8 (0.8 %), from memory, and
# each straight cell turns with the inner link's length. It never reaches a whole fan, so
# that one fan too few or too many is always told. Strain beyond is form finding's to report.
FIXED_TOLERANCE_DEG = 8.0
GAUGE_READING = 0.008
MOST_TOLERANCE_DEG = 45.0


def cell_turn(cell: CellKind, lengths: SideLengths) -> CourseTurn:
    """How far `cell` turns."""
    return cell.turn(cell.outer, cell.inner, lengths)


def course_turn(counts: Mapping[CellKind, int], lengths: SideLengths) -> CourseTurn:
    """How far a course with so many of each cell turns."""
    turns = [(count, cell_turn(cell, lengths)) for cell, count in counts.items()]
    return CourseTurn(
        fsum(count * turn.least_deg for count, turn in turns),
        fsum(count * turn.most_deg for count, turn in turns),
    )


def tolerance_deg(counts: Mapping[CellKind, int], lengths: SideLengths) -> float:
    """What a closed course may be out by, degrees."""
    straights = sum(count for cell, count in counts.items() if cell == STRAIGHT)
    by_gauge = degrees(straights * GAUGE_READING * lengths.inner / lengths.brace)
    return min(FIXED_TOLERANCE_DEG + by_gauge, MOST_TOLERANCE_DEG)


def comes_round(counts: Mapping[CellKind, int], lengths: SideLengths) -> bool:
    """Whether a closed course can turn 360 degrees, within tolerance."""
    shortfall = course_turn(counts, lengths).shortfall_deg()
    return abs(shortfall) <= tolerance_deg(counts, lengths)


def inner_gauge_that_closes(counts: Mapping[CellKind, int], lengths: SideLengths) -> float | None:
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
