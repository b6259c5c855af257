"""Telling the laying of the chains."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.framework.chain_roles import INNER, Layer
from buildplan.framework.model import Framework, LongChain
from buildplan.instructions import rows
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters
from buildplan.instructions.model import RowWords, TurnWords, Wording
from buildplan.instructions.ways import ways_told
from buildplan.language.messages import mark
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.model import Step, Turn
from buildplan.shape.lying import laid_in_figure

# What is built already is carried out of the way.
ASIDE = mark(
    "Two carry what is built aside, both hands round joints, and lay it down where nobody walks:"
    " left standing it may fall over."
)


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


def laid_by_plan(context: Context, step: Step) -> str:
    """How chains are laid by a plan of the floor, without what the plan shows: how far the chains
    lie apart, which way their numbers run."""
    joint = step.operations[0].joints[0]
    laid, part = context.framework.built_with(joint), context.framework.part_at(joint)
    first = part is None or part is context.framework.parts[0]
    order = context.voice.listed([_placed(context.voice, long) for long in _lowest_first(laid)])
    return sentences(
        _floor(context.voice, first),
        _lay_flat(context.voice, laid, order),
        *_joint_on_joint(context.voice, laid, _lies_on(laid)),
    )


def _floor(voice: Voice, first: bool) -> str:
    if first:
        return voice.say("Clear and sweep a floor larger than the piece.")
    return voice.say(ASIDE)


def _lay_title(voice: Voice, laid: Framework, part: str) -> str:
    if not laid_in_figure(laid):
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
    if not laid_in_figure(laid):
        return [
            voice.say(
                "Lay the chains down in the order of their letters, loosely, so that knots of the"
                " same name come near one another."
            )
        ]
    over = _lies_on(laid)
    order = voice.listed([_placed(voice, long) for long in _lowest_first(laid)])
    flat = [_lay_flat(voice, laid, order)]
    if context.framework.parts:
        flat.append(
            voice.say(
                "They lie in the figure of the finished part, front up: from its foot, its left is"
                " at your left."
            )
        )
    return [*flat, *_on_one_another(voice, laid, over), ways_told(context, laid.chains)]


def _on_one_another(voice: Voice, laid: Framework, over: dict[str, str]) -> Iterator[str]:
    """Which joints lie on which, and how far apart those are that do not."""
    yield from _joint_on_joint(voice, laid, over)
    if not _is_outline(laid):
        above = [long.chain.joints[0] for long in laid.chains if long.layer is not Layer.BACK]
        yield voice.say("{joints} lie a balloon apart.", joints=voice.listed(above))


def _joint_on_joint(voice: Voice, laid: Framework, over: dict[str, str]) -> Iterator[str]:
    """Which joints lie on which."""
    pairs = [
        voice.say("{front} on {back}", front=joint, back=laid.mirror[joint])
        for joint in _firsts(laid)
        if joint in over
    ]
    if pairs:
        joints = voice.listed(pairs)
        yield (
            voice.say("Lay joint on joint: {joints}, and so on round each ring.", joints=joints)
            if laid.closed
            else voice.say("Lay joint on joint: {joints}, and so on to the end.", joints=joints)
        )


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


def _placed(voice: Voice, long: LongChain) -> str:
    """Where one chain is laid: `A (outer front)`."""
    return voice.say("{letter} ({place})", letter=long.letter, place=voice.tell(long.where))


def _lay_check(voice: Voice, laid: Framework) -> str:
    if not laid_in_figure(laid):
        return voice.say_count(
            "{number} chain on the floor, every tag in sight.",
            "{number} chains on the floor, every tag in sight.",
            len(laid.chains),
        )
    if _lies_on(laid):
        return voice.say(
            "Every joint of the front lies on its joint of the back, or has rolled off beside it;"
            " no chain is twisted."
        )
    return voice.say("No chain is twisted.")


def lay_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Together: A1, B1, C1, D1`, where they are brought together."""
    joints = turn.operations[0].joints
    if not laid_in_figure(context.framework.built_with(joints[0])):
        return TurnWords("", ())
    together: RowWords = rows.at_joints(context.voice, context.voice.say("Together"), joints)
    return TurnWords("", (together,))
