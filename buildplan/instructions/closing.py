"""Telling the closing of rings and the tagging of joints."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.framework.model import LongChain
from buildplan.instructions import names, rows
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import balloons, chain_letters, neck_knots, tail_knots
from buildplan.instructions.measuring import rings_across
from buildplan.instructions.model import TurnWords, Wording
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.model import Step, Turn


def close(context: Context, step: Step) -> Wording:
    """Closing rings."""
    voice = context.voice
    chains = [context.long_of(operation) for operation in step.operations]
    letters = [long.letter for long in chains]
    if all(context.piece.counts_along(long) for long in chains):
        how = sentences(_tie_ends(voice, chains), voice.say("Tag it."))
        check = _ring_check(voice, chains)
    else:
        how = voice.say(
            "Tie its two free ends together with a double knot, at the joint of its row."
        )
        check = _ring_rows_check(voice)
    return Wording(
        title=voice.say_count(
            "Close ring {letters}",
            "Close rings {letters}",
            len(letters),
            letters=chain_letters(voice, letters),
        ),
        text=sentences(
            voice.say_count(
                "Lay the chain out without a twist.",
                "Lay each chain out without a twist.",
                len(letters),
            ),
            how,
        ),
        check=sentences(check, *rings_across(context, letters)),
    )


def _tie_ends(voice: Voice, chains: Sequence[LongChain]) -> str:
    """How the two ends of rings are tied together; the knot is the first of the joints."""
    odd = {long.chain.odd is not None for long in chains}
    if len(odd) > 1:
        return voice.say(
            "Tie its two free ends together, tail to tail, or where a chain ends in a closed neck,"
            " tail to neck, with a double knot: this knot is joint 1."
        )
    if odd == {True}:
        return voice.say(
            "Tie its free tail to its closed neck with a double knot: this knot is joint 1."
        )
    return voice.say("Tie its two free tails together with a double knot: this knot is joint 1.")


def _ring_check(voice: Voice, chains: Sequence[LongChain]) -> str:
    counts = {
        (len(c.links), len(c.pairs), len(c.links) - len(c.pairs))
        for c in (long.chain for long in chains)
    }
    if len(counts) > 1:
        return _ring_rows_check(voice)
    number, necks, tails = counts.pop()
    return voice.say_count(
        "The ring has {balloons}, {neck_knots} and {tail_knots}, and no free end.",
        "Each ring has {balloons}, {neck_knots} and {tail_knots}, and no free end.",
        len(chains),
        balloons=balloons(voice, number),
        neck_knots=neck_knots(voice, necks),
        tail_knots=tail_knots(voice, tails),
    )


def _ring_rows_check(voice: Voice) -> str:
    return voice.say("Each ring has as many balloons as its row says, and no free end.")


def close_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Ring A: closed at A1, 40 balloons`."""
    long = context.long_of(turn.operations[0])
    name = names.ring_name(context.voice, long.letter)
    first, length = long.chain.joints[0], len(long.chain.links)
    return TurnWords(name, (rows.ring(context.voice, name, first, length),))


# --- tagging --------------------------------------------------------------------------------


def tag(context: Context, step: Step) -> Wording:
    """Tagging joints."""
    voice = context.voice
    chains = [context.long_of(operation) for operation in step.operations]
    title = voice.say("Tag the joints")
    if not all(context.piece.counts_along(long) for long in chains):
        return _tag_by_row(voice, title, all(long.chain.closed for long in chains))
    return Wording(
        title,
        sentences(
            _start_counting(voice, chains),
            voice.say(
                "Tag the joints of the rows. To find one without a tag, count on from the tag"
                " before it."
            ),
        ),
        _tag_check(voice, chains),
    )


def _tag_by_row(voice: Voice, title: str, closed: bool) -> Wording:
    """Tagging chains whose joints do not count along them; `closed` ones have no free end."""
    if closed:
        return Wording(
            title,
            voice.say(
                "Go round each ring, knot by knot, and tag every knot with the names of its row in"
                " their order. A name may come more than once: those knots are brought together"
                " later."
            ),
            voice.say("Every knot has a tag."),
        )
    return Wording(
        title,
        voice.say(
            "Go along each chain from one end, knot by knot, and tag every knot and every free"
            " end with the names of its row in their order. A name may come more than once:"
            " those knots are brought together later."
        ),
        voice.say("Every knot and every free end has a tag."),
    )


def _start_counting(voice: Voice, chains: Sequence[LongChain]) -> str:
    closed = {long.chain.closed for long in chains}
    if len(closed) > 1:
        return voice.say(
            "Count the knots of each chain from joint 1: the closing knot of a ring, a tail at the"
            " end of an open chain."
        )
    if closed == {True} and any(long.chain.odd is not None for long in chains):
        # only the one way round comes to necks at even numbers
        return voice.say(
            "Count the knots of each ring from joint 1, its closing knot, the way on which joint 2"
            " is a neck knot."
        )
    if closed == {True}:
        return voice.say("Count the knots of each ring from joint 1, its closing knot.")
    return voice.say("Count the knots of each chain from joint 1, the tail at one end.")


def _tag_check(voice: Voice, chains: Sequence[LongChain]) -> str:
    lasts = voice.listed([long.chain.joints[-1] for long in chains])
    closed = {long.chain.closed for long in chains}
    if len(closed) > 1:
        return voice.say("Even numbers are neck knots. The last joints are {joints}.", joints=lasts)
    if closed == {True}:
        return voice.say("Even numbers are neck knots. Before joint 1: {joints}.", joints=lasts)
    return voice.say("Even numbers are neck knots. The far ends are {joints}.", joints=lasts)


def tag_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Chain A: A1, A5, A10`."""
    name = names.chain_name(context.voice, context.long_of(turn.operations[0]).letter)
    return TurnWords(name, (rows.at_joints(context.voice, name, turn.joints),))
