"""The order of colours along a chain, told as hands can follow it.

A few runs of one colour can be read in one line, and so can a few runs that come over and over.
More than that, as in a fade, is told section by section.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

Runs = list[tuple[int, str]]

MOST_RUNS = 6  # that one line tells; ours
SECTION, MOST_SECTIONS = 8, 10


def runs_of(names: Sequence[str]) -> Runs:
    """Runs of one colour: how many, and what they are called."""
    return [(len(list(same)), name) for name, same in groupby(names)]


def colour_runs(names: Sequence[str]) -> tuple[Runs, bool]:
    """Runs of one colour along a chain, cut to one period when they come over and over: twice
    at least."""
    count = len(names)
    for period in range(1, count // 2 + 1):
        if all(names[i] == names[i % period] for i in range(count)):
            return ([(count, names[0])], False) if period == 1 else (runs_of(names[:period]), True)
    return runs_of(names), False


def is_long(names: Sequence[str]) -> bool:
    """Whether the order is too long for one line."""
    return len(names) > SECTION and len(colour_runs(names)[0]) > MOST_RUNS


def sections(names: Sequence[str]) -> list[tuple[int, int, Sequence[str]]]:
    """A long order in sections: number of the first and of the last balloon of each, from 1, and
    the names in it. A section is a whole number of pairs, and as many as are tied into a run."""
    size = SECTION
    while size * MOST_SECTIONS < len(names):
        size += SECTION
    return [
        (start + 1, min(start + size, len(names)), names[start : start + size])
        for start in range(0, len(names), size)
    ]
