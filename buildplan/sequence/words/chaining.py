"""Sentences of the chains: long ones, and the short ones that braces are made of."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.grammar import count_word, number_ranges, sentences
from buildplan.language.speaking import say, say_count
from buildplan.sequence.words.grammar import (
    Wording,
    balloons,
    chain_letters,
    neck_knots,
    pairs,
    tail_knots,
)

# an order of colours that the rows give
OF_ITS_ROWS = "of its rows"


def long_chains(letters: Sequence[str], length: int, colour_order: str, run_pairs: int) -> Wording:
    """Tying long chains from pairs, tail to tail.

    `colour_order` is empty when all balloons are the same, and OF_ITS_ROWS when the rows give it;
    `run_pairs` is the number of pairs tied into a run before the runs are tied together (0: all in
    one go).
    """
    count, (whole_pairs, odd) = len(letters), divmod(length, 2)
    return Wording(
        title=say_count(
            "Make {number} chain of {length}: {letters}",
            "Make {number} chains of {length}: {letters}",
            count,
            length=length,
            letters=chain_letters(letters),
        ),
        text=sentences(
            *_long_chain(count, whole_pairs, bool(odd)),
            _runs(whole_pairs, run_pairs),
            _colour_order(colour_order),
        ),
        check=_chain_check(count, length),
    )


def _long_chain(count: int, whole_pairs: int, odd: bool) -> list[str]:
    """How each of `count` long chains is tied."""
    if not whole_pairs:
        return [
            say_count(
                "Take one balloon that was tied off alone.",
                "For each, take one balloon that was tied off alone.",
                count,
            )
        ]
    if whole_pairs == 1:
        made = say_count("Take one pair.", "For each, take one pair.", count)
    else:
        made = say_count(
            "Tie {pairs} pairs in a row, tail to tail, with a double knot.",
            "For each, tie {pairs} pairs in a row, tail to tail, with a double knot.",
            count,
            pairs=whole_pairs,
        )
    if not odd:
        return [made]
    return [
        made,
        say(
            "Tie the tail of a balloon that was tied off alone to the last free tail; its closed"
            " neck stays free."
        ),
    ]


def _chain_check(count: int, length: int) -> str:
    whole_pairs, odd = divmod(length, 2)
    ends = say("one free tail and one free neck") if odd else say("a free tail at either end")
    return say_count(
        "The chain has {balloons}, {neck_knots} and {tail_knots}, {ends}.",
        "Each chain has {balloons}, {neck_knots} and {tail_knots}, {ends}.",
        count,
        balloons=balloons(length),
        neck_knots=neck_knots(whole_pairs),
        tail_knots=tail_knots(max(whole_pairs - 1 + odd, 0)),
        ends=ends,
    )


def _colour_order(order: str) -> str:
    if order == OF_ITS_ROWS:
        return say("Keep to the order of colours that the rows give, from the first joint on.")
    return say("Keep to the order of colours, from joint 1: {order}.", order=order) if order else ""


def _runs(whole_pairs: int, run_pairs: int) -> str:
    if not run_pairs:
        return ""
    full, over = divmod(whole_pairs, run_pairs)
    runs = say_count(
        "{number} run of {pairs}", "{number} runs of {pairs}", full, pairs=pairs(run_pairs)
    )
    if over:
        return say(
            "To keep count, first tie {runs} and one of {pairs}, then tie the runs together.",
            runs=runs,
            pairs=pairs(over),
        )
    return say("To keep count, first tie {runs}, then tie the runs together.", runs=runs)


def short_chains(count: int, length: int, colour: str, braces: Sequence[int]) -> Wording:
    """Tying the short chains that are led round as braces."""
    chains = chains_of(count, length, colour)
    if length % 2:
        check = say_count(
            "{number} chain, with one tail and one closed neck free.",
            "{number} chains, each with one tail and one closed neck free.",
            count,
        )
    else:
        check = say_count(
            "{number} chain, with both end tails free.",
            "{number} chains, each with both end tails free.",
            count,
        )
    return Wording(
        title=say("Make {chains}", chains=chains),
        text=sentences(
            *_short_chain(length),
            say_count(
                "Make {chains}, for brace {braces}.",
                "Make {chains}, for braces {braces}.",
                len(braces),
                chains=chains,
                braces=number_ranges(braces),
            ),
        ),
        check=check,
    )


def stock(count: int, length: int, order: str) -> Wording:
    """Tying chains that are all alike, to be taken one by one later."""
    whole_pairs, odd = divmod(length, 2)
    made = chains_in_order(count, length, order)
    return Wording(
        title=say("Make {chains}", chains=made),
        text=sentences(*_long_chain(count, whole_pairs, bool(odd))),
        check=_chain_check(count, length),
    )


def chains_in_order(count: int, length: int, order: str) -> str:
    """`10 chains of 4 (all leaf green)`."""
    return say_count(
        "{number} chain of {length} ({order})",
        "{number} chains of {length} ({order})",
        count,
        length=length,
        order=order,
    )


def chains_of(count: int, length: int, colour: str) -> str:
    """`30 chains of four ivory balloons`."""
    return say_count(
        "{number} chain of {length} {colour} balloons",
        "{number} chains of {length} {colour} balloons",
        count,
        length=count_word(length),
        colour=colour,
    )


def _short_chain(length: int) -> list[str]:
    """How a short chain is tied."""
    whole_pairs, odd = divmod(length, 2)
    if whole_pairs == 1:
        return [
            say(
                "Tie a balloon that was tied off alone to a pair, tail to tail, with a double knot;"
                " its closed neck stays free."
            )
        ]
    return [
        say(
            "Tie {pairs} pairs in a row, tail to tail, with a double knot.",
            pairs=count_word(whole_pairs),
        ),
        say("Tie one balloon that was tied off alone to the end by its tail.") if odd else "",
    ]
