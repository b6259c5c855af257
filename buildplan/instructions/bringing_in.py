"""Telling how the chains of a course come in: taken, closed, tagged, laid or set on what stands."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.instructions.coming import (
    coming,
    is_first,
    is_flat,
    part_begun,
    round_of,
    way_on_of,
)
from buildplan.instructions.context import Context
from buildplan.instructions.crowns import first_tip, folded_inwards, sorted_tips
from buildplan.instructions.folding import is_narrow
from buildplan.instructions.grammar import chain_letters, joint_names
from buildplan.instructions.laying import ASIDE
from buildplan.instructions.model import Doing
from buildplan.instructions.moves import Hand
from buildplan.instructions.ways import ways_told
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.laid import rows_of
from buildplan.sequence.model import Kind, Step


def bringing_in(context: Context, step: Step) -> list[Doing]:
    """How chains come in, one thing after another: whole where it is new, else where it was
    taught."""
    way = ways_told(context, coming(context, step))
    if context.teacher(Hand.BRING_IN, step) is not None and way == _told_last(context, step):
        way = ""
    placed = sentences(*_placing(context, step), way)
    return [
        *_taking(context, step),
        *_holding(context, step),
        *([Doing(placed, Kind.LAY)] if placed else []),
    ]


def _taking(context: Context, step: Step) -> list[Doing]:
    """How chains are taken from those that were made, closed and tagged."""
    voice = context.voice
    closes = any(long.chain.closed for long in coming(context, step))
    taught = context.teacher(Hand.CLOSE_ROUND if closes else Hand.TAG_ENDS, step)
    if taught is not None and _is_first_set_round(context, step):
        letters = [long.letter for long in coming(context, step)]
        again = voice.say_count(
            "Close chain {letters} into a ring and tag its knots, as in step {step}.",
            "Close chains {letters} into rings and tag their knots, as in step {step}.",
            len(letters),
            letters=chain_letters(voice, letters),
            step=taught,
        )
        return [Doing(again)]
    if taught is not None:
        rings = all(long.chain.closed for long in coming(context, step))
        if rings and not is_flat(context, step) and not is_first(context, step):
            return [Doing(voice.say("Close each chain into a ring and tag it."))]
        if taught == context.teacher(Hand.JOIN, step) and step.kind is not Kind.LAY:
            return []
        if is_flat(context, step) and context.teacher(Hand.LAY_NEXT, step) is not None:
            return []  # the step that it is done as says so
        return [Doing(voice.say("Take the chains of the rows as in step {step}.", step=taught))]
    take = voice.say("Take the chains that this step names.")
    closed = [long.chain for long in coming(context, step) if long.chain.closed]
    every = len(closed) == len(coming(context, step))
    tag = (
        voice.say("Tag its knots with the names of its row, in their order.")
        if every
        else voice.say("Tag its knots and free ends with the names of its row, in their order.")
    )
    if not closed:
        return [Doing(sentences(take, tag), Kind.TAG)]
    close = _close(voice, every=every, odd=any(chain.odd is not None for chain in closed))
    if every:
        return [Doing(sentences(take, close, tag), Kind.CLOSE_RING)]
    return [Doing(sentences(take, close), Kind.CLOSE_RING), Doing(tag, Kind.TAG)]


def _placing(context: Context, step: Step) -> list[str]:
    """Where chains are laid on the floor or set on what is built."""
    voice = context.voice
    if is_first(context, step):
        part = context.framework.part_at(step.of_kind(Kind.LAY)[0].joints[0])
        later = part is not None and part is not context.framework.parts[0]
        return [
            *([voice.say(ASIDE)] if later else []),
            voice.say("Clear and sweep a floor larger than the piece, and lay the chains."),
            *_laid(context, step),
            *_built_lying(context, step),
        ]
    if context.teacher(way_on_of(context, step), step) is not None:
        return []
    if is_flat(context, step):
        return [
            voice.say(
                "Lay the chains in their place at the head of what is built, those of the front on "
                "top. While you work at the back, fold those of the front down over the foot."
            )
        ]
    return [_set_on(context, step)]


def _laid(context: Context, step: Step) -> list[str]:
    """Where the first chains of a piece lie to one another."""
    course, rows = round_of(context, step), rows_of(coming(context, step))
    if course is not None and course.up is not None:
        told = context.voice.say(
            "Chain {ring} lies flat, chain {zigzag} round it: its tail knots at the knots of {ring}"
            " with their names, its neck knots pointing outwards.",
            ring=course.ring.letter,
            zigzag=course.up.letter,
        )
    elif len(rows) > 1:
        told = context.voice.say(
            "Chains {rows} lie along the foot, the other chains up from the joints where they"
            " begin.",
            rows=chain_letters(context.voice, [row.letter for row in rows]),
        )
    elif rows:
        told = context.voice.say(
            "Chain {row} lies along the foot, the other chains up from the joints where they"
            " begin.",
            row=rows[0].letter,
        )
    else:
        return []
    return [told]


def _set_on(context: Context, step: Step) -> str:
    """Where chains come on what is built."""
    voice, course = context.voice, round_of(context, step)
    if course is None or course.down is None:
        told = voice.say(
            "Set the chains on what is built, each knot on the one with its name. Go joint by"
            " joint: lift the knots and free ends that it takes, bring them together, lock it, go"
            " on; the rest hangs."
        )
        around = any(long.chain.closed for long in coming(context, step))
        bowl = voice.say("What lay flat now rises all round, like a bowl.")
        return sentences(told, bowl) if around else told
    set_on = voice.say(
        "Lift the free knots of chain {below}: chain {ring} comes on them, each knot on the one"
        " with its name.",
        below=course.down.letter,
        ring=course.ring.letter,
    )
    if course.up is None or not _is_first_set_round(context, step):
        return set_on
    return sentences(
        set_on,
        voice.say(
            "Chain {zigzag} comes on chain {ring}: every second knot at the knot of {ring} with its"
            " name, the others, {tips}, upwards. Go joint by joint: hold the knot of {below}, on it"
            " that of {ring}, on top that of {zigzag}, lock it, go on round; the rest hangs.",
            below=course.down.letter,
            zigzag=course.up.letter,
            ring=course.ring.letter,
            tips=joint_names(voice, sorted_tips(course)),
        ),
        first_tip(voice, course),
    )


def _is_first_set_round(context: Context, step: Step) -> bool:
    """Whether a step is the first to set chains on what stands: a ring on the tips of a zigzag,
    with a zigzag of its own."""
    course = round_of(context, step)
    if course is None or course.down is None or course.up is None:
        return False
    ways = (Hand.SET_ROUND, Hand.SET_ON)
    return all(context.teacher(way, step) is None for way in ways)


def which_tip(context: Context, step: Step) -> str:
    """What is another in a step than in the one that it is done as: where its zigzag begins."""
    course = round_of(context, step)
    if course is not None and course.up is None and course.down is not None:
        return ""  # a ring that ends a column has nothing of its own
    if is_flat(context, step):
        return ""  # rows next to one another are laid alike
    if course is None or course.up is None:
        return sentences(
            context.voice.say("Go by the rows of this step."), folded_inwards(context, step)
        )
    return "" if _is_first_set_round(context, step) else first_tip(context.voice, course)


def _holding(context: Context, step: Step) -> Sequence[Doing]:
    """Who holds what grows up from the floor, before it is needed for the first time."""
    if is_first(context, step) or is_flat(context, step):
        return ()
    ways = (Hand.SET_ROUND, Hand.SET_ON)
    if any(context.teacher(way, step) is not None for way in ways):
        return ()
    if is_narrow(context, step):
        from_outside = context.voice.say(
            "From now on two work at each joint: one steadies what stands and holds the knots of"
            " the joint together with both hands; the other locks it from outside, for no hand fits"
            " into the ring."
        )
        return (Doing(from_outside, Kind.STAND_UP),)
    told = context.voice.say(
        "From now on two work at each joint: one stands before it, steadies what stands and holds"
        " the knots of the joint together with both hands; the other reaches in over the top and"
        " locks it."
    )
    return (Doing(told, Kind.STAND_UP),)


def _close(voice: Voice, *, every: bool, odd: bool) -> str:
    """How chains are closed into rings: all, or those whose row says so; a chain of an odd number
    of balloons ends in a tail and a closed neck."""
    if every and odd:
        return voice.say(
            "Close each into a ring, without a twist: tie its two free ends together. That knot is"
            " the first of its row."
        )
    if every:
        return voice.say(
            "Close each into a ring, without a twist: tie its two free tails together. That knot is"
            " the first of its row."
        )
    if odd:
        return voice.say(
            "Close a chain whose row ends where it begins into a ring: tie its two free ends"
            " together there, without a twist."
        )
    return voice.say(
        "Close a chain whose row ends where it begins into a ring: tie its two free tails together"
        " there, without a twist."
    )


def seen_from_outside(context: Context, step: Step) -> str:
    """From where the pictures see what is built standing, where it is the first to be."""
    known = context.teacher(Hand.BRING_IN, step) is not None or is_flat(context, step)
    return (
        "" if known else context.voice.say("The pictures show each joint from outside the piece.")
    )


def _built_lying(context: Context, step: Step) -> list[str]:
    """Which side is up, of what is built lying on its back."""
    voice, part = context.voice, part_begun(context, step)
    if not is_flat(context, step):
        return []
    how = (
        voice.say("Part {part} is built lying on its back, front up, from foot to head.", part=part)
        if part
        else voice.say("The piece is built lying on its back, front up, from foot to head.")
    )
    return [
        how,
        voice.say(
            "Kneel at its head, chains that are not joined yet pushed to either side. The pictures"
            " look down on it, its head at the top: turn the page round to see it as you kneel."
        ),
    ]


def _told_last(context: Context, step: Step) -> str:
    """What the last step before `step` that brought chains in said of their numbers; a course
    whose numbers run as those of the one below says nothing of them."""
    for earlier in reversed(context.steps[: step.number - 1]):
        told = ways_told(context, coming(context, earlier))
        if told:
            return told
    return ""
