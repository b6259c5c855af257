"""Telling how parts come to where they are tied: which stand where, and which go on top."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from buildplan.design.measures import length_words
from buildplan.instructions.context import Context
from buildplan.instructions.model import SetUp
from buildplan.sequence.model import Kind, Step


def _set_up(context: Context, step: Step) -> SetUp | None:
    """How parts come together, in the first step that ties some; None in a later step, or where
    parts are tied as they lie."""
    first = next(other for other in context.steps if is_tying(other))
    return context.figures.set_up if step.number == first.number else None


def put_on_floor(context: Context, step: Step) -> Iterator[str]:
    """How the parts that stand on the floor come to their places, each thing a sentence."""
    voice, told = context.voice, _set_up(context, step)
    if told is None:
        return
    if told.apart_m:
        apart = [
            voice.say(
                "{one} to {other} {length}",
                one=one,
                other=other,
                length=length_words(length_m, context.units),
            )
            for (one, other), length_m in zip(pairwise(told.standing), told.apart_m, strict=True)
        ]
        yield voice.say(
            "Set parts {parts} upright on the floor, from left to right as seen from the front;"
            " from middle to middle: {distances}.",
            parts=voice.listed(list(told.standing)),
            distances=voice.listed(apart),
        )
    else:
        yield voice.say("Set part {part} upright on the floor.", part=told.standing[0])
    for part in told.standing:
        if told.front.get(part):
            yield voice.say(
                "Turn part {part} so that {joints} face the front.",
                part=part,
                joints=voice.listed(list(told.front[part])),
            )


def lifted_on(context: Context, step: Step) -> Iterator[str]:
    """How parts that were built lying come up, and others on top, each thing a sentence."""
    voice, told = context.voice, _set_up(context, step)
    if told is None:
        return
    if told.lying:
        yield voice.say_count(
            "Part {parts} was built lying: turn it up on its foot, its front to the front.",
            "Parts {parts} were built lying: turn each up on its foot, its front to the front.",
            len(told.lying),
            parts=voice.listed(list(told.lying)),
        )
    if told.lifted:
        yield voice.say_count(
            "Lift part {parts} on top, upright.",
            "Lift parts {parts} on top, upright, in this order.",
            len(told.lifted),
            parts=voice.listed(list(told.lifted)),
        )


def is_tying(step: Step) -> bool:
    """Whether a step ties parts to one another."""
    return step.kind is Kind.JOIN and len(step.of_kind(Kind.JOIN)[0].joints) > 1
