"""Telling which pairs go into which chain, of chains that are tied in one step."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from buildplan.instructions.context import Context
from buildplan.sequence.model import Step


def pairs_of_each(context: Context, step: Step) -> Iterator[str]:
    """Which pairs each chain takes, where it takes other pairs than the one before it."""
    voice, sorts = context.voice, dict[str, Counter[tuple[str, ...]]]()
    for operation in step.operations:
        called = context.names_of(operation.links)
        pairs = Counter(tuple(sorted(set(called[n : n + 2]))) for n in range(0, len(called) - 1, 2))
        sorts[context.long_of(operation).letter] = pairs
    if len({tuple(sorted(pairs.items())) for pairs in sorts.values()}) < 2:
        return
    for letter, pairs in sorts.items():
        told = [
            voice.say_count(
                "{number} pair of {colours}",
                "{number} pairs of {colours}",
                number,
                colours=voice.listed(list(colours_of)),
            )
            for colours_of, number in pairs.items()
        ]
        yield voice.say("Chain {letter} takes {pairs}.", letter=letter, pairs=voice.listed(told))
