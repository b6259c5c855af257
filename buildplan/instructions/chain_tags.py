"""How chains that wait for their course are told apart by tags, and at which end those are."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from buildplan.framework.ends import End
from buildplan.instructions.context import Context
from buildplan.language.phrases import sentences
from buildplan.sequence.grouping import is_for_courses
from buildplan.sequence.model import Kind, Operation, Step
from buildplan.shape.tied_parts import part_of


def waiting_tags(context: Context, step: Step) -> str:
    """How chains that wait for their course are told apart until then; said of the first."""
    waiting = [
        other
        for other in context.steps[: step.number]
        if other.kind is Kind.CHAIN and is_for_courses(context.piece, other.operations[0])
    ]
    if waiting[:1] != [step]:
        return ""
    voice = context.voice
    told = [_lettered(context)]
    if any(len(set(context.names_of(one.links))) > 1 for w in _all_waiting(context) for one in w):
        told.append(voice.say("Where a row gives an order of colours, that is its first joint."))
    if any(_begins_at_tail(context, one) for ops in _all_waiting(context) for one in ops):
        told.append(voice.say("Of a chain with a closed neck tag the tail: its first joint."))
    if context.piece.alone:
        told.append(voice.say("Balloons that are tied in one by one go without."))
    return sentences(*told)


def _lettered(context: Context) -> str:
    """Which chains get their letter: all, or of an assembly those of the parts that have courses
    while others are laid out ring by ring."""
    voice, framework = context.voice, context.framework
    waiting = [one for operations in _all_waiting(context) for one in operations]
    of = [part_of(framework, context.long_of(one).chain.joints[0]) for one in waiting]
    parts = list(dict.fromkeys(of))
    if {*parts} >= {part.name for part in framework.parts}:
        return voice.say("Tag one end of every chain with its letter, here and below.")
    return voice.say_count(
        "Tag one end of every chain of part {parts} with its letter, here and below.",
        "Tag one end of every chain of parts {parts} with its letter, here and below.",
        len(parts),
        parts=voice.listed(parts),
    )


def _begins_at_tail(context: Context, making: Operation) -> bool:
    """Whether a chain that stays open has a tail at its first joint and a neck at its last."""
    chain, link = context.long_of(making).chain, context.piece.framework.link
    ends = [link[chain.links[n]].end_at(chain.joints[n]) for n in (0, -1)]
    return not chain.closed and ends == [End.TAIL, End.NECK]


def _all_waiting(context: Context) -> Iterator[Sequence[Operation]]:
    """The operations of each step that ties chains which wait for their course."""
    for step in context.steps:
        if step.kind is Kind.CHAIN and is_for_courses(context.piece, step.operations[0]):
            yield step.operations
