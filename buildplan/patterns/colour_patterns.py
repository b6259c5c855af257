"""Colour patterns: which balloon lies where in a run of balloons along the piece.

A run is told by the place of each of its balloons: how far along the piece it lies, as a whole
number from 0, and how far round it, in turns. Stripes go by the one, a spiral by both, and a
fade by the one and by what has been laid before.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate
from math import floor

from buildplan.patterns.colour_order import ColourOrder, ColourPattern


@dataclass(frozen=True)
class RunPlace:
    """Where a balloon lies: `along` the piece, a whole number from 0, and `turn` round it, in
    turns, anticlockwise as seen from where it goes to."""

    along: int
    turn: Fraction = Fraction(0)


def lay_colours(
    order: ColourOrder, run: Sequence[RunPlace], length: int, closed: bool = False
) -> list[str]:
    """The balloon at each place of a run that goes on to `length` places along the piece and,
    when `closed`, round to its beginning. `order` must have been checked."""
    if isinstance(order, list):
        return [order[place.along % len(order)] for place in run]
    if order.fade is not None:
        return _fade(order.fade, run, length, goes_back(order, closed))
    counts = order.stripes or order.spiral or {}
    shift = 0 if order.spiral is None else pitch(order) * (-1 if order.direction == "left" else 1)
    return [_stripe(counts, place.along - shift * place.turn) for place in run]


def period(order: ColourOrder) -> int | None:
    """How many places along the piece it takes before the colours come again; a fade never
    repeats."""
    if isinstance(order, list):
        return len(order)
    counts = order.stripes or order.spiral
    return sum(counts.values()) if counts else None


def pitch(order: ColourPattern) -> int:
    """How many places along the piece a spiral takes for one turn round it."""
    return order.pitch or period(order) or 0


def goes_back(order: ColourPattern, closed: bool) -> bool:
    """Whether a fade returns to its first colour: round a ring it does, unless told not to."""
    return closed if order.there_and_back is None else order.there_and_back


def keys_of(order: ColourOrder) -> list[str]:
    """The balloons that a pattern names, each once."""
    if isinstance(order, list):
        return list(dict.fromkeys(order))
    return list(dict.fromkeys([*(order.stripes or {}), *(order.spiral or {}), *(order.fade or [])]))


def _stripe(counts: dict[str, int], at: Fraction) -> str:
    """The stripe that `at`, in places, lies in."""
    place = floor(at) % sum(counts.values())
    ends = accumulate(counts.values())
    return next(key for key, end in zip(counts, ends, strict=True) if place < end)


def _fade(colours: Sequence[str], run: Sequence[RunPlace], length: int, back: bool) -> list[str]:
    """All of the first colour at one end, all of the last at the other, and between them ever
    more of the next: error diffusion (after Floyd and Steinberg 1976) along the run.

    Each place takes, of the two colours that it lies between, the one further behind its due, so
    that no count is ever a whole balloon from it. There and back, what comes back mirrors what
    has been laid.
    """
    half = (length + 1) // 2 if back else length
    owed = dict.fromkeys(colours, Fraction(0))
    laid: list[str] = []
    going: dict[int, list[str]] = {}
    for place in run:
        coming_back = place.along >= half
        along = length - 1 - place.along if coming_back else place.along
        if coming_back and going.get(along):
            laid.append(going[along].pop())
            continue
        way = Fraction(along * (len(colours) - 1), max(half - 1, 1))
        before = min(floor(way), len(colours) - 2)
        one, other = colours[before : before + 2]
        owed[one] += 1 - (way - before)
        owed[other] += way - before
        chosen = max(one, other, key=owed.__getitem__)
        owed[chosen] -= 1
        laid.append(chosen)
        going.setdefault(along, []).append(chosen)
    return laid
