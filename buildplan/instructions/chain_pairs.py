"""Telling which pairs go into which chain, of chains that are tied in one step."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise

from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.sequence.model import Step

MOST_CHAINS = 3  # of which it is told which way round their pairs come
ALL_ALIKE = mark("All the others lie the same way round.")
IN_TURN = mark("Every second of them is turned round.")
AS_THE_ROW = mark("Turn the others as the row has them.")


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


def turned_pairs(context: Context, step: Step) -> Iterator[str]:
    """Which way round pairs of two colours come into each of a few chains."""
    if len(step.operations) > MOST_CHAINS:
        return
    voice, alike = context.voice, dict[tuple[str, str], list[str]]()
    for operation in step.operations:
        called = context.names_of(operation.links)
        pairs = [called[n : n + 2] for n in range(0, len(called) - 1, 2)]
        begun = [first for first, second in pairs if first != second]
        if len(begun) < 2:
            continue
        in_turn = all(one != other for one, other in pairwise(begun))
        way = ALL_ALIKE if len({*begun}) == 1 else IN_TURN if in_turn else AS_THE_ROW
        alike.setdefault((way, begun[0]), []).append(context.long_of(operation).letter)
    for (way, colour), letters in alike.items():
        first = voice.say_count(
            "On chain {letters} the first pair of two colours has {colour} first.",
            "On chains {letters} the first pair of two colours has {colour} first.",
            len(letters),
            letters=chain_letters(voice, letters),
            colour=colour,
        )
        yield sentences(first, voice.say(way))
