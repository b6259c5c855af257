"""Which balloons of a framework colours are laid along together, place by place."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from buildplan.framework.model import Framework
from buildplan.patterns.colour_patterns import RunPlace


@dataclass(frozen=True)
class ColourRun:
    """Balloons that a pattern is laid along together: the links at each place, all of one
    balloon. `length` and `closed` are as for `lay_colours`."""

    places: Sequence[RunPlace]
    links: Sequence[Sequence[str]]
    length: int
    closed: bool = False


def tube_runs(framework: Framework, part: str) -> Iterator[ColourRun]:
    """The braces of a tube, each of one colour, or its long chains."""
    if part != "brace":
        yield from _long_chains(framework, part)
        return
    numbers = range(len(framework.braces))
    yield ColourRun(
        [RunPlace(number) for number in numbers],
        [brace.links for brace in framework.braces],
        len(numbers),
        framework.closed,
    )


def _long_chains(framework: Framework, part: str) -> Iterator[ColourRun]:
    """Each chain by itself: its balloons along it, and how far round the tube it runs."""
    for number, long in enumerate(framework.chains):
        if part in ("long", long.letter):
            links, turn = long.chain.links, Fraction(number, len(framework.chains))
            places = [RunPlace(along, turn) for along in range(len(links))]
            yield ColourRun(places, [[link] for link in links], len(links), long.chain.closed)
