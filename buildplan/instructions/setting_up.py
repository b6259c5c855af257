"""Telling how parts come to where they are tied: which stand where, and which go on top."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from buildplan.design.measures import length_words
from buildplan.instructions.context import Context
from buildplan.sequence.model import Kind, Step


def put_on_floor(context: Context, step: Step) -> Iterator[str]:
    """How the parts that stand on the floor come to their places before the first are tied, each
    thing a sentence; nothing where parts are tied as they lie."""
    voice, told = context.voice, context.figures.set_up
    first = next(other for other in context.steps if is_tying(other))
    if told is None or step.number != first.number:
        return
    yield from _turned_up(context, [part for part in told.standing if part in told.lying])
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
    """How the parts that a step is the first to tie come up from the floor, each thing a sentence;
    nothing where parts are tied as they lie."""
    voice, told = context.voice, context.figures.set_up
    if told is None:
        return
    tying = [other for other in context.steps[: step.number] if is_tying(other)]
    tied = [{*context.parts_at(other.of_kind(Kind.JOIN))} for other in tying]
    new = tied[-1].difference(*tied[:-1])
    lifted = [part for part in told.lifted if part in new]
    yield from _turned_up(context, [part for part in lifted if part in told.lying])
    if lifted:
        yield voice.say_count(
            "Lift part {parts} to its place, upright.",
            "Lift parts {parts} to their places, upright, in this order.",
            len(lifted),
            parts=voice.listed(lifted),
        )


def _turned_up(context: Context, lying: list[str]) -> Iterator[str]:
    """How parts that were built lying come up on their feet."""
    voice = context.voice
    if lying:
        yield voice.say_count(
            "Part {parts} was built lying: turn it up on its foot, its front to the front.",
            "Parts {parts} were built lying: turn each up on its foot, its front to the front.",
            len(lying),
            parts=voice.listed(lying),
        )


def is_tying(step: Step) -> bool:
    """Whether a step ties parts to one another."""
    return step.kind is Kind.JOIN and len(step.of_kind(Kind.JOIN)[0].joints) > 1
