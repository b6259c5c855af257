"""Whether a closed course comes round, and if not, what would bring it round."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from buildplan.design.course import CourseCell, cell_of
from buildplan.design.mistake import Mistake, Path
from buildplan.design.turning import (
    FULL_TURN_DEG,
    SideLengths,
    comes_round,
    course_turn,
    fan_turn_deg,
    inner_gauge_that_closes,
)

Counts = Mapping[CourseCell, int]

MOST_CELLS_TO_ADD = 12


def check_coming_round(counts: Counts, lengths: SideLengths, at: Path) -> Iterator[Mistake]:
    """The mistake that a closed course of so many of each cell makes, if it does not turn
    360 degrees within tolerance. `at` is where the course stands in the file."""
    if comes_round(counts, lengths):
        return
    turn = course_turn(counts, lengths)
    short_deg = turn.shortfall_deg()
    side, link = ("outer", lengths.outer) if short_deg > 0 else ("inner", lengths.inner)
    balloons = f"{abs(short_deg) / fan_turn_deg(link, lengths.brace):.1f}".removesuffix(".0")
    least, most = round(turn.least_deg), round(turn.most_deg)
    turns = f"turns {most} degrees" if least == most else f"can turn {least} to {most} degrees"
    yield Mistake(
        at,
        f"the course {turns} and a closed tube must turn {FULL_TURN_DEG:.0f}: the {side} side "
        f"is about {balloons} balloon{'' if balloons == '1' else 's'} short",
        _what_would_do(counts, lengths, short_deg),
    )


def _what_would_do(counts: Counts, lengths: SideLengths, short_deg: float) -> str:
    """Changes that would bring the course round; each has been tried on it."""
    mirrored = {cell_of((cell.inner, cell.outer)): count for cell, count in counts.items()}
    if comes_round(mirrored, lengths):
        return "it bends the wrong way: swap fan with fan_in, and tip with dip"
    ways = []
    bend, corner = ("fan", "tip") if short_deg > 0 else ("fan_in", "dip")
    for name in (bend, corner):
        for number in range(1, MOST_CELLS_TO_ADD + 1):
            if comes_round(_with(counts, name, number), lengths):
                ways.append(f"add {_cells(number, name)}")
                break
    against = cell_of("fan_in" if short_deg > 0 else "fan")
    for number in range(1, counts.get(against, 0) + 1):
        if comes_round(_with(counts, against.name, -number), lengths):
            ways.append(f"take out {_cells(number, against.name)}")
            break
    gauge = inner_gauge_that_closes(counts, lengths)
    if gauge is not None and gauge <= lengths.inner_nominal:
        now = f"{lengths.inner_gauge:.4g}"
        ways.append(f"size the balloons of the inner chains to {gauge:.3g} instead of {now}")
    if not ways:
        return "fan and tip bend inward, fan_in and dip outward: change how many there are"
    return ", or ".join(ways)


def _cells(number: int, name: str) -> str:
    return f"{number} {name} cell{'' if number == 1 else 's'}"


def _with(counts: Counts, name: str, number: int) -> dict[CourseCell, int]:
    cell = cell_of(name)
    return {**counts, cell: counts.get(cell, 0) + number}
