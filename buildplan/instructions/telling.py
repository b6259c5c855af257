"""The steps of a piece put into words."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from buildplan.design.measures import Units
from buildplan.framework.model import Framework
from buildplan.instructions import (
    assembling,
    chaining,
    closing,
    courses,
    finishing,
    joining,
    laying,
    preparing,
    singles,
    turning,
)
from buildplan.instructions.coming import coming
from buildplan.instructions.context import Context
from buildplan.instructions.model import NO_FIGURES, Figures, StepWords, TurnWords, Wording
from buildplan.instructions.read_back import LIKE_PART, MIRRORED_PART
from buildplan.instructions.stages import part_of_step
from buildplan.instructions.ways import ways_told
from buildplan.language.phrases import number_ranges, sentences
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Step, Turn
from buildplan.sequence.piece import PieceIndex

MOST_NEEDED = 3  # steps that are all named
FEWEST_ACTS = 3  # so many things to do, and they are told one by one

_Tell = Callable[[Context, Step], Wording]
_Rows = Callable[[Context, Step, Turn], TurnWords]

_TOLD: Mapping[Kind, tuple[_Tell, _Rows]] = {
    Kind.PAIR: (preparing.pair, preparing.pair_rows),
    Kind.TIE_OFF: (preparing.tie_off, preparing.tie_off_rows),
    Kind.CHAIN: (chaining.chain, chaining.chain_rows),
    Kind.CLOSE_RING: (closing.close, closing.close_rows),
    Kind.TAG: (closing.tag, closing.tag_rows),
    Kind.LAY: (laying.lay, laying.lay_rows),
    Kind.BRACE: (assembling.brace, assembling.brace_rows),
    Kind.SINGLE: (singles.single, singles.single_rows),
    Kind.JOIN: (joining.join, joining.join_rows),
    Kind.TURN_OVER: (turning.turn_over, turning.turned_rows),
    Kind.INSPECT: (finishing.inspect, joining.nothing_particular),
    Kind.STAND_UP: (finishing.stand_up, joining.nothing_particular),
}


def tell_steps(
    steps: Sequence[Step],
    framework: Framework,
    units: Units,
    voice: Voice,
    figures: Figures = NO_FIGURES,
) -> tuple[StepWords, ...]:
    """What each step of a piece says, in the order of the steps.

    Gauges are told in `units`; `figures` are what a tape should say on the way, where the shape of
    the piece is known.
    """
    context = Context(PieceIndex(framework), steps, units, voice, figures)
    return tuple(_told(context, step) for step in steps)


def _told(context: Context, step: Step) -> StepWords:
    tell, tell_rows = _TOLD[step.kind]
    if step.kind is Kind.LAY and step.operations[0].course:
        tell, tell_rows = courses.lay_course, courses.coming_rows
    said = tell(context, step)
    intro, again = _how_many(context, step), _again(context, step)
    apart = len(said.acts) >= FEWEST_ACTS and not again
    return StepWords(
        number=step.number,
        title=said.title,
        text=sentences(intro, again or said.text, _side_work(context, step)),
        turns=tuple(tell_rows(context, step, turn) for turn in step.turns),
        check=said.check,
        intro=intro if apart else "",
        acts=said.acts if apart else (),
        as_in=said.as_in if step.repeats is None else (step.repeats,),
    )


def _again(context: Context, step: Step) -> str:
    """What is said of a step that was told of an equal part or its mirror image, or nothing."""
    if step.repeats is None:
        return ""
    first, part_at = context.steps[step.repeats - 1], context.framework.part_at
    here, there = (
        next(part for op in one.operations for part in map(part_at, op.joints) if part)
        for one in (step, first)
    )
    told: dict[str, str | int] = {"part": here.name, "first": there.name, "step": first.number}
    if here.mirrored != there.mirrored:
        mirrored = context.voice.say(
            MIRRORED_PART,
            **told,
        )
        laid = step.kind is Kind.LAY or bool(coming(context, step))
        return sentences(mirrored, ways_told(context, here.framework.chains) if laid else "")
    return context.voice.say(
        LIKE_PART,
        **told,
    )


def _how_many(context: Context, step: Step) -> str:
    """How many equal parts are built, with the first step of the first of them."""
    framework, voice = context.framework, context.voice
    part = part_of_step(framework, step)
    if part is None or part_of_step(framework, context.steps[step.number - 2]) is part:
        return ""
    again = [one for one in context.steps if one.repeats == step.number]
    others = [other for one in again if (other := part_of_step(framework, one)) is not None]
    alike = [part.name, *(one.name for one in others if one.mirrored == part.mirrored)]
    if len(alike) == 1:
        return ""
    return voice.say_count(
        "Parts {parts} are alike: this one is built here, the other from step {step} on, or by"
        " somebody else at the same time.",
        "Parts {parts} are alike: this one is built here, the others from step {step} on, or by"
        " others at the same time.",
        len(alike) - 1,
        parts=voice.listed(alike),
        step=again[0].number,
    )


def _side_work(context: Context, step: Step) -> str:
    """Which steps take up work that goes on beside the main line; of many the first."""
    if step.side_work is None:
        return ""
    needed = [one.number for one in context.steps if step.number in one.needs]
    if len(needed) > MOST_NEEDED:
        return context.voice.say("Needed from step {step} on.", step=needed[0])
    if len(needed) == 1:
        return context.voice.say("Needed in step {step}.", step=needed[0])
    return context.voice.say("Needed in steps {steps}.", steps=number_ranges(context.voice, needed))
