"""How hard a fit is looked for: a budget counted in courses laid and shapes solved.

Nothing here is a time, so that the same effort ends in the same design on any machine.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Effort:
    """What may be spent on one gauge.

    Of every search the likeliest `courses` are laid, and the best `first` of them solved. Then, in
    `rounds`, each of the `kept` best is changed until `tries` changes of it have been solved. At
    last the `judged` best are judged as every file is. Where none of them is good, figures of cells
    are grown from `roots` places in `changes` changes each, and from the best `grown_on` of those
    again in `longer` times as many. Where the outline cannot be had well, at most `taller` larger
    heights are tried in strides, each with a quick search, and three below the first that will do.
    """

    courses: int
    first: int
    rounds: int
    kept: int
    tries: int
    judged: int
    taller: int
    roots: int
    changes: int
    grown_on: int
    longer: int

    def most_solved(self, searches: int) -> int:
        """Shapes solved with one gauge at most; `searches` is how many the outline asks for."""
        return searches * self.first + self.rounds * self.kept * self.tries + RESIZED * self.judged

    def most_changes(self, gauges: int) -> int:
        """Changes of figures at most, with so many gauges."""
        return gauges * self.changes * (self.roots + self.grown_on * self.longer)

    def most_laid(self, searches: int) -> int:
        """Courses laid with one gauge at most."""
        return searches * self.courses + self.rounds * self.kept * self.tries * LAID_PER_TRY


LAID_PER_TRY = 8  # changes laid at most for each that is solved
RESIZED = 2  # shapes solved at most for each that is judged, at gauges that bring it to its height

EFFORTS: Mapping[str, Effort] = {
    "quick": Effort(
        courses=24,
        first=6,
        rounds=1,
        kept=2,
        tries=6,
        judged=2,
        taller=2,
        roots=10,
        changes=20,
        grown_on=2,
        longer=4,
    ),
    "usual": Effort(
        courses=50,
        first=14,
        rounds=4,
        kept=3,
        tries=9,
        judged=3,
        taller=4,
        roots=40,
        changes=30,
        grown_on=10,
        longer=5,
    ),
    "long": Effort(
        courses=120,
        first=40,
        rounds=20,
        kept=6,
        tries=16,
        judged=6,
        taller=8,
        roots=120,
        changes=60,
        grown_on=40,
        longer=10,
    ),
}
USUAL, QUICK = EFFORTS["usual"], EFFORTS["quick"]


@dataclass(frozen=True)
class Spent:
    """Courses laid and shapes solved so far."""

    laid: int = 0
    solved: int = 0

    def __add__(self, other: Spent) -> Spent:
        return Spent(self.laid + other.laid, self.solved + other.solved)
