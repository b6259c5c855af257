"""Two ways at once, for a piece that is broken at two places in like manner: each of them mends
one, and neither the piece."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from buildplan.language.messages import message
from buildplan.source.suggestions import Remedy

MOST_TOGETHER = 4  # ways of which two are tried together: each trial takes as long as a check


def both_ways(ways: Sequence[Remedy]) -> Iterator[Remedy]:
    """Every two of some ways that change different things of a file, as one; the first first."""
    for one, other in combinations(ways[:MOST_TOGETHER], 2):
        if {change.at for change in one.changes} & {change.at for change in other.changes}:
            continue
        words = message("{one}, and {other}", one=one.words, other=other.words)
        yield Remedy(words, (*one.changes, *other.changes))
