"""Telling the courses in which a piece without braces is built: the chains that come in, and the
joints that are brought together then."""

from __future__ import annotations

from collections.abc import Sequence

from buildplan.instructions import names, rows
from buildplan.instructions.bringing_in import bringing_in
from buildplan.instructions.chaining import chain_rows_of
from buildplan.instructions.coming import coming, is_first, is_flat, part_begun
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters, joint_names
from buildplan.instructions.measuring import rings_across
from buildplan.instructions.model import TurnWords, Wording
from buildplan.language.phrases import sentences
from buildplan.sequence.chains import walk
from buildplan.sequence.model import Kind, Step, Turn
from buildplan.sequence.work_names import long_chain


def lay_course(context: Context, step: Step) -> Wording:
    """Chains that come in and meet nothing."""
    voice, letters = context.voice, _letters(context, step)
    part = part_begun(context, step)
    count = len(coming(context, step))
    acts = bringing_in(context, step)
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
        text=sentences(*(act.said for act in acts)),
        check=voice.say("Every tag is in sight, and no chain is twisted."),
        acts=tuple(acts),
    )


def course_title(context: Context, step: Step, joints: Sequence[str]) -> str:
    """The heading of a step that brings chains in and joins them."""
    voice, part, count = context.voice, part_begun(context, step), len(coming(context, step))
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
    if is_flat(context, step):
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


def new_widths(context: Context, step: Step) -> list[str]:
    """How wide the rings are that come in, where none that came before was as wide. Chains that go
    up and down between rings are laid round nowhere."""

    def rings(one: Step) -> list[str]:
        counted = (long for long in coming(context, one) if context.piece.counts_along(long))
        return [long.letter for long in counted if long.letter in context.figures.rings]

    coming_in, widths = rings(step), context.figures.rings
    if not coming_in:
        return []
    before = {widths[letter] for one in context.steps[: step.number - 1] for letter in rings(one)}
    return rings_across(context, [one for one in coming_in if widths[one] not in before])


def _letters(context: Context, step: Step) -> str:
    return chain_letters(context.voice, [long.letter for long in coming(context, step)])


def coming_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Chain B: 4 balloons (all leaf green), joints B1 – B2 – B3 – B4 – B1`."""
    long = context.long_of(turn.operations[0])
    maker = context.maker[long_chain(long.letter)]
    name = names.chain_name(context.voice, long.letter)
    if len(maker.turns) > 1:  # its colours were told when it was tied
        return TurnWords(name, (rows.at_joints(context.voice, name, walk(long.chain)),))
    (tied,) = (op for op in maker.operations if op.chain == long.letter and op.kind is Kind.CHAIN)
    return chain_rows_of(context, tied, None)
