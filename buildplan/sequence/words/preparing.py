"""Sentences of sizing, of tying pairs, and of balloons without a partner."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from buildplan.language.grammar import capital, listed, sentences
from buildplan.language.speaking import say, say_count
from buildplan.sequence.words.grammar import (
    Wording,
    chain_letters,
    locks,
    pairs,
)


@dataclass(frozen=True)
class Sized:
    """Balloons of one kind that are sized: how many, what they are called, from what size as
    bought, and to which gauge."""

    count: int
    name: str
    nominal: str
    gauge: str


def _against_the_gauge(gauge: str) -> str:
    return say(
        "Inflate each a little past {gauge}, hold it in the {gauge} gauge and let air out"
        " until it just slips through.",
        gauge=gauge,
    )


def side_work(first: int) -> str:
    """Work that goes on beside the main line, until the step that first needs it."""
    return say(
        "This is side work: others can do it meanwhile. Step {step} is the first to need it.",
        step=first,
    )


def _neck_to_neck() -> str:
    return say("Wrap the two necks round each other twice and tie them together, neck to neck.")


def _take_links(sized: Sized) -> str:
    return say_count(
        "Take {number} {colour} link balloon ({nominal}).",
        "Take {number} {colour} link balloons ({nominal}).",
        sized.count,
        colour=sized.name,
        nominal=sized.nominal,
    )


def _passes_the_gauge(sized: Sequence[Sized]) -> str:
    gauges = list(dict.fromkeys(one.gauge for one in sized))
    return say("Each just touches both sides of the {gauge} gauge.", gauge=listed(gauges))


def pair_links(count: int, names: Sequence[str], long: bool, sized: Sequence[Sized]) -> Wording:
    """Sizing link balloons and tying them in pairs, for the long chains or for the braces."""
    if long:
        made = say_count(
            "{number} pair for the long chains", "{number} pairs for the long chains", count
        )
    else:
        made = say_count("{number} pair for the braces", "{number} pairs for the braces", count)
    together = (
        say("Size two and tie them together at once:")
        if names[0] == names[1]
        else say(
            "Size one {colour} balloon and one {other} balloon and tie them together at once:",
            colour=names[0],
            other=names[1],
        )
    )
    gauges = dict.fromkeys(one.gauge for one in sized)
    return Wording(
        title=say("Size and tie {pairs}", pairs=made),
        text=sentences(
            *(_take_links(one) for one in sized),
            *(_against_the_gauge(gauge) for gauge in gauges),
            together,
            _neck_to_neck(),
        ),
        check=sentences(
            _passes_the_gauge(sized),
            say(
                "{pairs}, {balloons} balloons. Both tails of each are free.",
                pairs=pairs(count),
                balloons=count * 2,
            ),
        ),
    )


def pair_rounds(count: int, sized: Sized) -> Wording:
    """Sizing rounds and tying them two by two: each pair is a lock."""
    return Wording(
        title=say("Size and tie {locks}", locks=locks(count)),
        text=sentences(
            say_count(
                "Take {number} {colour} round ({nominal}).",
                "Take {number} {colour} rounds ({nominal}).",
                sized.count,
                colour=sized.name,
                nominal=sized.nominal,
            ),
            _against_the_gauge(sized.gauge),
            say("Size two and tie them together at once:"),
            _neck_to_neck(),
            say("This pair of rounds is a lock. Make {locks}.", locks=locks(count)),
        ),
        check=sentences(
            _passes_the_gauge([sized]),
            say("{locks}, {rounds} rounds, two and two.", locks=locks(count), rounds=count * 2),
        ),
    )


def tie_off(
    count: int, sized: Sized, for_chains: Sequence[str], for_braces: int, singles: int
) -> Wording:
    """Sizing link balloons that have no partner, and closing their necks."""
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
            "Size {number} {colour} balloon and tie it off alone",
            "Size {number} {colour} balloons and tie each off alone",
            count,
            colour=sized.name,
        ),
        text=sentences(
            _take_links(sized),
            _against_the_gauge(sized.gauge),
            say_count("This balloon has no partner.", "These balloons have no partner.", count),
            say_count(
                "Close the neck of the sized balloon with a knot of its own.",
                "Close the neck of each sized balloon with a knot of its own.",
                count,
            ),
            f"{capital(listed(uses))}.",
        ),
        check=sentences(
            _passes_the_gauge([sized]),
            say_count(
                "{number} {colour} balloon closed, neck and tail free to tie.",
                "{number} {colour} balloons closed, neck and tail free to tie.",
                count,
                colour=sized.name,
            ),
        ),
    )
