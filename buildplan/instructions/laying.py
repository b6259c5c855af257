"""Telling the closing of rings, the tagging of joints, and the laying of the chains."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.framework.chain_roles import INNER, Layer
from buildplan.framework.model import Framework, LongChain
from buildplan.instructions import names, rows
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import balloons, chain_letters, neck_knots, tail_knots
from buildplan.instructions.measuring import rings_across
from buildplan.instructions.model import RowWords, TurnWords, Wording
from buildplan.instructions.ways import ways_told
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.model import Step, Turn

# --- closing rings --------------------------------------------------------------------------


def close(context: Context, step: Step) -> Wording:
    """Closing rings."""
    voice = context.voice
    chains = [context.long_of(operation) for operation in step.operations]
    letters = [long.letter for long in chains]
    if all(context.piece.counts_along(long) for long in chains):
        how, check = _tie_ends(voice, chains), _ring_check(voice, chains)
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
        return Wording(
            title,
            voice.say(
                "Go along each chain from one end, knot by knot, and tag every knot and every free"
                " end with the names of its row in their order. A name may come more than once:"
                " those knots are brought together later."
            ),
            voice.say("Every knot and every free end has a tag."),
        )
    return Wording(
        title,
        sentences(
            _start_counting(voice, chains),
            voice.say(
                "Tag every joint of the rows. To find one without a tag, count on from the tag"
                " before it."
            ),
        ),
        _tag_check(voice, chains),
    )


def _start_counting(voice: Voice, chains: Sequence[LongChain]) -> str:
    closed = {long.chain.closed for long in chains}
    if len(closed) > 1:
        return voice.say(
            "Count the knots of each chain from joint 1: the closing knot of a ring, a tail at the"
            " end of an open chain."
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
        return voice.say(
            "Even numbers are neck knots. The knots just before joint 1 are {joints}.",
            joints=lasts,
        )
    return voice.say("Even numbers are neck knots. The far ends are {joints}.", joints=lasts)


def tag_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Chain A: A1, A5, A10`."""
    name = names.chain_name(context.voice, context.long_of(turn.operations[0]).letter)
    return TurnWords(name, (rows.at_joints(context.voice, name, turn.joints),))


# --- laying ---------------------------------------------------------------------------------


def lay(context: Context, step: Step) -> Wording:
    """Laying the long chains, those at the back first; of an assembly, those of one part."""
    joint = step.operations[0].joints[0]
    laid = context.framework.built_with(joint)
    part = context.framework.part_at(joint)
    first = part is None or part is context.framework.parts[0]
    return Wording(
        title=_lay_title(context.voice, laid, part.name if part else ""),
        text=sentences(_floor(context.voice, first), *_laid(context, laid)),
        check=_lay_check(context.voice, laid),
    )


def _floor(voice: Voice, first: bool) -> str:
    if first:
        return voice.say("Clear and sweep a floor larger than the piece.")
    return voice.say("Put the parts that are built where nobody needs the floor.")


def _lay_title(voice: Voice, laid: Framework, part: str) -> str:
    if not laid.braces:
        letters = chain_letters(voice, [long.letter for long in laid.chains])
        if part:
            return voice.say_count(
                "Part {part}: lay out chain {letters}",
                "Part {part}: lay out chains {letters}",
                len(laid.chains),
                part=part,
                letters=letters,
            )
        return voice.say_count(
            "Lay out chain {letters}",
            "Lay out chains {letters}",
            len(laid.chains),
            letters=letters,
        )
    if part:
        if laid.closed:
            return voice.say("Part {part}: lay the rings in place", part=part)
        return voice.say("Part {part}: lay the chains in place", part=part)
    if laid.closed:
        return voice.say("Lay the rings in place")
    return voice.say("Lay the chains in place")


def _laid(context: Context, laid: Framework) -> list[str]:
    """How chains are laid, each thing to do a sentence."""
    voice = context.voice
    if not laid.braces:
        return [
            voice.say(
                "Lay the chains down in the order of their letters, loosely, so that knots of the"
                " same name come near one another."
            )
        ]
    over = _lies_on(laid)
    order = voice.listed([_placed(voice, long, over) for long in _lowest_first(laid)])
    flat = [_lay_flat(voice, laid, order)]
    if laid.closed:
        flat.append(voice.say("Inner chains go inside the outer ones."))
    if _is_outline(laid):
        on_one_another = [
            voice.say("{front} on {back}", front=joint, back=laid.mirror[joint])
            for joint in _firsts(laid)
            if joint in over
        ]
        joints = voice.listed(on_one_another)
        said = voice.say("Lay joint on joint: {joints}, and so on round each ring.", joints=joints)
        return [*flat, said, ways_told(context, laid.chains)]
    together = voice.listed(_firsts(laid))
    return [
        *flat,
        voice.say("Bring joints {joints} together.", joints=together),
        ways_told(context, laid.chains),
    ]


def _lay_flat(voice: Voice, laid: Framework, order: str) -> str:
    layers = any(_layer(long) == 0 for long in laid.chains)
    if laid.closed and layers:
        return voice.say("Lay the rings flat, the back ones first: {order}.", order=order)
    if laid.closed:
        return voice.say("Lay the rings flat, in this order: {order}.", order=order)
    if layers:
        return voice.say("Lay the chains flat, the back ones first: {order}.", order=order)
    return voice.say("Lay the chains flat, in this order: {order}.", order=order)


def _firsts(laid: Framework) -> list[str]:
    return [long.chain.joints[0] for long in laid.chains]


def _lies_on(laid: Framework) -> dict[str, str]:
    """By the first joint of a front chain, the letter of the chain that it lies on."""
    letter = {joint: long.letter for long in laid.chains for joint in long.chain.joints}
    return {
        long.chain.joints[0]: letter[laid.mirror[long.chain.joints[0]]]
        for long in laid.chains
        if laid.mirror and long.layer is Layer.FRONT
    }


def _is_outline(laid: Framework) -> bool:
    """Whether front and back are alike all along, as of a letter."""
    return bool(laid.mirror) and not laid.cells


def _lowest_first(laid: Framework) -> list[LongChain]:
    return sorted(laid.chains, key=lambda long: (_layer(long), long.role == INNER))


def _layer(long: LongChain) -> int:
    """0 for what lies underneath, 2 for what lies on top."""
    return {Layer.BACK: 0, None: 1, Layer.FRONT: 2}[long.layer]


def _placed(voice: Voice, long: LongChain, over: dict[str, str]) -> str:
    """Where one chain is laid: `A (outer front) on top of D`."""
    where, on = voice.tell(long.where), over.get(long.chain.joints[0])
    if on:
        return voice.say(
            "{letter} ({place}) on top of {other}", letter=long.letter, place=where, other=on
        )
    return voice.say("{letter} ({place})", letter=long.letter, place=where)


def _lay_check(voice: Voice, laid: Framework) -> str:
    if not laid.braces:
        return voice.say_count(
            "{number} chain on the floor, every tag in sight.",
            "{number} chains on the floor, every tag in sight.",
            len(laid.chains),
        )
    if _is_outline(laid):
        return voice.say(
            "Every joint of the front lies on its joint of the back, and no chain is twisted."
        )
    return voice.say(
        "Joints {joints} lie together, and no chain is twisted.",
        joints=voice.listed(_firsts(laid)),
    )


def lay_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Together: A1, B1, C1, D1`, where they are brought together."""
    joints = turn.operations[0].joints
    if not context.framework.built_with(joints[0]).braces:
        return TurnWords("", ())
    together: RowWords = rows.at_joints(context.voice, context.voice.say("Together"), joints)
    return TurnWords("", (together,))
