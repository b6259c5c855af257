"""Telling the courses in which a piece without braces is built: the chains that come in, and the
joints that are brought together then."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.framework.model import LongChain
from buildplan.instructions import names, rows
from buildplan.instructions.chaining import chain_rows_of
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters, joint_names
from buildplan.instructions.measuring import rings_across
from buildplan.instructions.model import TurnWords, Wording
from buildplan.instructions.moves import Hand
from buildplan.instructions.ways import ways_told
from buildplan.language.voice import Voice
from buildplan.sequence.chains import walk
from buildplan.sequence.laid import RoundCourse, round_course, row_of
from buildplan.sequence.model import Kind, Step, Turn
from buildplan.sequence.work_names import long_chain


def coming(context: Context, step: Step) -> list[LongChain]:
    """The chains that come in with a step."""
    return [context.long_of(operation) for operation in step.of_kind(Kind.TAG)]


def is_first(context: Context, step: Step) -> bool:
    """Whether a step lays the first chains of the piece, or of its part."""
    (laid,) = step.of_kind(Kind.LAY)
    part = context.framework.part_at(laid.joints[0])
    return not any(
        context.framework.part_at(operation.joints[0]) is part
        for earlier in context.steps[: step.number - 1]
        for operation in earlier.of_kind(Kind.LAY)
    )


def lay_course(context: Context, step: Step) -> Wording:
    """Chains that come in and meet nothing."""
    voice, letters = context.voice, _letters(context, step)
    part = _part(context, step)
    count = len(coming(context, step))
    return Wording(
        title=voice.say_count(
            "Part {part}: lay chain {letters}",
            "Part {part}: lay chains {letters}",
            count,
            part=part,
            letters=letters,
        )
        if part
        else voice.say_count("Lay chain {letters}", "Lay chains {letters}", count, letters=letters),
        text=" ".join(bringing_in(context, step)),
        check=voice.say("Every tag is in sight, and no chain is twisted."),
    )


def course_title(context: Context, step: Step, joints: Sequence[str]) -> str:
    """The heading of a step that brings chains in and joins them."""
    voice, part, count = context.voice, _part(context, step), len(coming(context, step))
    told = {"letters": _letters(context, step), "joints": joint_names(voice, joints)}
    if part:
        return voice.say_count(
            "Part {part}: lay chain {letters}, join {joints}",
            "Part {part}: lay chains {letters}, join {joints}",
            count,
            part=part,
            **told,
        )
    if is_first(context, step):
        return voice.say_count(
            "Lay chain {letters}, join {joints}",
            "Lay chains {letters}, join {joints}",
            count,
            **told,
        )
    if _is_flat(context, step):
        return voice.say_count(
            "Lay chain {letters} next, join {joints}",
            "Lay chains {letters} next, join {joints}",
            count,
            **told,
        )
    return voice.say_count(
        "Set chain {letters} on, join {joints}",
        "Set chains {letters} on, join {joints}",
        count,
        **told,
    )


def bringing_in(context: Context, step: Step) -> list[str]:
    """How chains come in: whole where it is new, else where it was taught."""
    way = ways_told(context, coming(context, step))
    if context.teacher(Hand.BRING_IN, step) is not None and way == _told_last(context, step):
        way = ""
    return [*_taking(context, step), *_placing(context, step), *([way] if way else [])]


def _taking(context: Context, step: Step) -> list[str]:
    """How chains are taken from those that were made, closed and tagged."""
    voice, taught = context.voice, context.teacher(Hand.BRING_IN, step)
    if taught is not None:
        if taught == context.teacher(Hand.JOIN, step) and step.kind is not Kind.LAY:
            return []
        return [voice.say("Take the chains of the rows as in step {step}.", step=taught)]
    told = [voice.say("Take one chain for each row.")]
    closed = [long.chain for long in coming(context, step) if long.chain.closed]
    if any(chain.odd is not None for chain in closed):
        told.append(_close_ends(voice))
    elif closed:
        told.append(_close_tails(voice))
    told.append(
        voice.say("Tag its knots with the names of its row, in their order.")
        if len(closed) == len(coming(context, step))
        else voice.say("Tag its knots and free ends with the names of its row, in their order.")
    )
    return told


def _placing(context: Context, step: Step) -> list[str]:
    """Where chains are laid on the floor or set on what is built."""
    voice, taught = context.voice, context.teacher(Hand.BRING_IN, step)
    if is_first(context, step):
        parts = context.framework.part_at(step.of_kind(Kind.LAY)[0].joints[0])
        aside = voice.say("Put the parts that are built where nobody needs the floor.")
        return [
            *([aside] if parts and taught is not None else []),
            voice.say("Clear and sweep a floor larger than the piece, and lay the chains."),
            *_laid(context, step),
            *_built_lying(context, step),
        ]
    if context.teacher(Hand.SET_ON, step) is not None:
        return []
    if _is_flat(context, step):
        return [
            voice.say(
                "Lay the chains in their place at the head of what is built, those of the front on "
                "top."
            )
        ]
    return [_set_on(context, step)]


def _round(context: Context, step: Step) -> RoundCourse | None:
    """The ring and the zigzags of a step, if it brings nothing else in."""
    earlier = context.steps[: step.number - 1]
    return round_course(coming(context, step), [c for one in earlier for c in coming(context, one)])


def _laid(context: Context, step: Step) -> list[str]:
    """Where the first chains of a piece lie to one another."""
    course, row = _round(context, step), row_of(coming(context, step))
    if course is not None and course.up is not None:
        told = context.voice.say(
            "Chain {ring} lies flat, chain {zigzag} round it: every second knot at the knot of"
            " {ring} with its name, the others pointing outwards.",
            ring=course.ring.letter,
            zigzag=course.up.letter,
        )
    elif row is not None:
        told = context.voice.say(
            "Chain {row} lies along the foot, every other chain up from the joint where it begins.",
            row=row.letter,
        )
    else:
        return []
    return [told]


def _set_on(context: Context, step: Step) -> str:
    """Where chains come on what is built."""
    voice, course = context.voice, _round(context, step)
    if course is None or course.down is None:
        return voice.say("Set the chains in their place on what is built.")
    return voice.say(
        "Lift the free knots of chain {below}: chain {ring} comes on them, each knot on the one"
        " with its name.",
        below=course.down.letter,
        ring=course.ring.letter,
    )


def _is_flat(context: Context, step: Step) -> bool:
    """Whether what a step works on is built lying on its back."""
    part = context.framework.part_at(step.of_kind(Kind.LAY)[0].joints[0])
    return (part.name if part else "") in context.figures.flat


def _built_lying(context: Context, step: Step) -> list[str]:
    """Which side is up, of what is built lying on its back; from where the pictures see what is
    not."""
    voice, part = context.voice, _part(context, step)
    if not _is_flat(context, step):
        outside = voice.say("The pictures show each joint from outside the piece.")
        return [outside] if context.teacher(Hand.BRING_IN, step) is None else []
    how = (
        voice.say("Part {part} is built lying on its back, front up, from foot to head.", part=part)
        if part
        else voice.say("The piece is built lying on its back, front up, from foot to head.")
    )
    return [how, voice.say("The pictures look down on it; its head is at the top.")]


def _told_last(context: Context, step: Step) -> str:
    """What the last step before `step` that brought chains in said of their numbers; a course
    whose numbers run as those of the one below says nothing of them."""
    for earlier in reversed(context.steps[: step.number - 1]):
        told = ways_told(context, coming(context, earlier))
        if told:
            return told
    return ""


def _close_ends(voice: Voice) -> str:
    return voice.say(
        "Close a chain whose row ends where it begins into a ring: tie its two free ends together"
        " there, without a twist."
    )


def _close_tails(voice: Voice) -> str:
    return voice.say(
        "Close a chain whose row ends where it begins into a ring: tie its two free tails together"
        " there, without a twist."
    )


def new_widths(context: Context, step: Step) -> list[str]:
    """How wide the rings are that come in, where none that came before was as wide. Chains that go
    up and down between rings are laid round nowhere."""

    def rings(one: Step) -> list[str]:
        counted = (long for long in coming(context, one) if context.piece.counts_along(long))
        return [long.letter for long in counted if long.letter in context.figures.rings]

    widths = context.figures.rings
    before = {widths[letter] for one in context.steps[: step.number - 1] for letter in rings(one)}
    return rings_across(context, [one for one in rings(step) if widths[one] not in before])


def _letters(context: Context, step: Step) -> str:
    return chain_letters(context.voice, [long.letter for long in coming(context, step)])


def _part(context: Context, step: Step) -> str:
    """The part whose first course a step is; empty for another."""
    part = context.framework.part_at(step.of_kind(Kind.LAY)[0].joints[0])
    return part.name if part is not None and is_first(context, step) else ""


def coming_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Chain B: 4 balloons (all leaf green), joints B1 – B2 – B3 – B4 – B1`."""
    long = context.long_of(turn.operations[0])
    maker = context.maker[long_chain(long.letter)]
    name = names.chain_name(context.voice, long.letter)
    if len(maker.turns) > 1:  # its colours were told when it was tied
        return TurnWords(name, (rows.at_joints(context.voice, name, walk(long.chain)),))
    (tied,) = (op for op in maker.operations if op.chain == long.letter and op.kind is Kind.CHAIN)
    return chain_rows_of(context, tied, None)
