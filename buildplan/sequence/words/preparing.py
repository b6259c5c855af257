"""Sentences of sizing, of tying pairs, and of balloons without a partner."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.language.grammar import capital, listed, number_ranges, sentences
from buildplan.language.speaking import say, say_count
from buildplan.sequence.words.grammar import (
    Wording,
    chain_letters,
    locks,
    pairs,
)


def _against_the_gauge(gauge: str) -> str:
    return say(
        "Inflate each a little past {gauge}, hold it in the {gauge} gauge and let air out"
        " until it just slips through.",
        gauge=gauge,
    )


def _all_sized(gauge: str, count: int) -> str:
    return say(
        "Each just touches both sides of the {gauge} gauge. {count} sized in all.",
        gauge=gauge,
        count=count,
    )


def side_work(first: int) -> str:
    """Work that goes on beside the main line, until the step that first needs it."""
    return say(
        "This is side work: others can do it meanwhile. Step {step} is the first to need it.",
        step=first,
    )


def size_links(
    count: int, name: str, nominal: str, gauge: str, pair_steps: Sequence[int]
) -> Wording:
    """Sizing link balloons of one kind."""
    return Wording(
        title=say_count(
            "Size {number} {colour} link balloon to {gauge}",
            "Size {number} {colour} link balloons to {gauge}",
            count,
            colour=name,
            gauge=gauge,
        ),
        text=sentences(
            say_count(
                "Take {number} {colour} link balloon ({nominal}).",
                "Take {number} {colour} link balloons ({nominal}).",
                count,
                colour=name,
                nominal=nominal,
            ),
            _against_the_gauge(gauge),
            say_count(
                "Size two, tie them as step {steps} says, then size the next two.",
                "Size two, tie them as steps {steps} say, then size the next two.",
                len(pair_steps),
                steps=number_ranges(pair_steps),
            ),
        ),
        check=_all_sized(gauge, count),
    )


def size_rounds(
    count: int, name: str, nominal: str, gauge: str, pair_steps: Sequence[int]
) -> Wording:
    """Sizing the rounds of the locks."""
    return Wording(
        title=say_count(
            "Size {number} {colour} round to {gauge}",
            "Size {number} {colour} rounds to {gauge}",
            count,
            colour=name,
            gauge=gauge,
        ),
        text=sentences(
            say_count(
                "Take {number} {colour} round ({nominal}).",
                "Take {number} {colour} rounds ({nominal}).",
                count,
                colour=name,
                nominal=nominal,
            ),
            _against_the_gauge(gauge),
            say_count(
                "Size two and tie them together at once (step {steps}).",
                "Size two and tie them together at once (steps {steps}).",
                len(pair_steps),
                steps=number_ranges(pair_steps),
            ),
        ),
        check=_all_sized(gauge, count),
    )


def _neck_to_neck() -> str:
    return say("Wrap the two necks round each other twice and tie them together, neck to neck.")


def _take_two(names: Sequence[str]) -> str:
    if names[0] == names[1]:
        return say("Take two sized {colour} balloons.", colour=names[0])
    return say(
        "Take one sized {colour} balloon and one sized {other} balloon.",
        colour=names[0],
        other=names[1],
    )


def pair_links(count: int, names: Sequence[str], long: bool) -> Wording:
    """Tying pairs of link balloons, for the long chains or for the braces."""
    if long:
        made = say_count(
            "{number} pair for the long chains", "{number} pairs for the long chains", count
        )
    else:
        made = say_count("{number} pair for the braces", "{number} pairs for the braces", count)
    return Wording(
        title=say("Tie {pairs}", pairs=made),
        text=sentences(_take_two(names), _neck_to_neck(), say("Make {pairs}.", pairs=made)),
        check=say(
            "{pairs}, {balloons} balloons. Both tails of each are free.",
            pairs=pairs(count),
            balloons=count * 2,
        ),
    )


def pair_rounds(count: int, name: str) -> Wording:
    """Tying rounds two by two: each pair is a lock."""
    return Wording(
        title=say("Tie {locks}", locks=locks(count)),
        text=sentences(
            say("Take two sized {colour} rounds.", colour=name),
            _neck_to_neck(),
            say("This pair of rounds is a lock. Make {locks}.", locks=locks(count)),
        ),
        check=say("{locks}, {rounds} rounds, two and two.", locks=locks(count), rounds=count * 2),
    )


def tie_off(
    count: int, name: str, for_chains: Sequence[str], for_braces: int, singles: int
) -> Wording:
    """Closing the necks of link balloons that have no partner."""
    uses = []
    if for_chains:
        uses.append(
            say_count(
                "{number} ends chain {letters}",
                "{number} end chains {letters} (one each)",
                len(for_chains),
                letters=chain_letters(for_chains),
            )
        )
    if for_braces:
        uses.append(say_count("{number} goes into a brace", "{number} go into braces", for_braces))
    if singles:
        uses.append(say_count("{number} is a single", "{number} are singles", singles))
    return Wording(
        title=say_count(
            "Tie off {number} {colour} balloon alone",
            "Tie off {number} {colour} balloons alone",
            count,
            colour=name,
        ),
        text=sentences(
            say_count("This balloon has no partner.", "These balloons have no partner.", count),
            say_count(
                "Close the neck of the sized balloon with a knot of its own.",
                "Close the neck of each sized balloon with a knot of its own.",
                count,
            ),
            f"{capital(listed(uses))}.",
        ),
        check=say_count(
            "{number} {colour} balloon closed, neck and tail free to tie.",
            "{number} {colour} balloons closed, neck and tail free to tie.",
            count,
            colour=name,
        ),
    )
