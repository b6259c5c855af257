"""How many people each step takes, as its words have it: who holds, lifts or presses apart while
another ties, and who lifts the piece."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from buildplan.framework.chain_roles import Layer
from buildplan.framework.model import Brace
from buildplan.instructions.coming import coming, is_first, is_flat
from buildplan.instructions.context import Context
from buildplan.instructions.folding import folds_up
from buildplan.instructions.setting_up import high_ties, is_tying
from buildplan.language.phrases import number_ranges
from buildplan.language.voice import Voice
from buildplan.sequence.model import Access, Kind, Step
from buildplan.shape.tied_parts import part_of

# What joints are got at with somebody's help.
HELPED = frozenset({Access.LIFTED, Access.ON_ITS_SIDE, Access.STOOL, Access.LADDER, Access.NONE})
HIGH = frozenset({Access.STOOL, Access.LADDER})
HELD_UNTIL = 2  # braces from which on what stands holds up the chains (common practice, no source)


def people_of_steps(context: Context) -> tuple[int, ...]:
    """How many people each step takes, in their order: 1 where the words ask for nobody else."""
    upright: set[str] = set()  # parts, "" for a whole piece, of which somebody holds what stands
    found = []
    for step in context.steps:
        laid = step.of_kind(Kind.LAY) and coming(context, step)
        if laid and not is_first(context, step) and not is_flat(context, step):
            upright.add(_part(context, step))
        held = step.kind is Kind.JOIN and _part(context, step) in upright
        two = (
            held
            or folds_up(context, step)
            or bool(HELPED & step.ways.keys())
            or _is_lifted_for(context, step)
            or _is_begun_beside(context, step)
            or (step.kind is Kind.SINGLE and bool(step.behind) and _ties_parts(context, step))
        )
        # of two who work at a joint one stands on what somebody else has to hold
        three = held and bool(HIGH & step.ways.keys())
        most = max(operation.people for operation in step.operations)
        most += is_tying(step) and bool(high_ties(context, step))  # who holds what one stands on
        found.append(max(1 + two + three, most))
    return tuple(found)


def _part(context: Context, step: Step) -> str:
    laid = (*step.of_kind(Kind.LAY), *step.operations)[0]
    return part_of(context.framework, laid.joints[0])


def _is_begun_beside(context: Context, step: Step) -> bool:
    """Whether a step begins a part after the first, for which two carry aside what is built."""
    laid, parts = step.of_kind(Kind.LAY), context.framework.parts
    if not laid or not parts:
        return False
    begun = {_part(context, other) for other in context.steps[: step.number - 1] if _lays(other)}
    return bool(begun) and _part(context, step) not in begun


def _lays(step: Step) -> bool:
    return bool(step.of_kind(Kind.LAY))


def _ties_parts(context: Context, step: Step) -> bool:
    """Whether the balloons of a step go from part to part, which both are lifted for."""
    return len(set(context.parts_at(step.of_kind(Kind.SINGLE)))) > 1


def _is_lifted_for(context: Context, step: Step) -> bool:
    """Whether somebody lifts chains that lie on others for the braces of a step: for the first of
    a part, which hold up those of the next."""
    braces = [context.framework.brace[op.brace] for op in step.of_kind(Kind.BRACE)]
    if not braces or not chains_lifted(context, braces[0]):
        return False
    first = context.framework.built_with(braces[0].section[0]).braces[:HELD_UNTIL]
    return braces[0].number in {one.number for one in first}


def chains_lifted(context: Context, brace: Brace) -> list[str]:
    """The letters of the chains that somebody lifts off others until braces hold them up."""
    laid = context.framework.built_with(brace.section[0])
    return [long.letter for long in laid.chains if long.layer is Layer.FRONT]


def people_words(voice: Voice, steps: Sequence[Step], people: Sequence[int]) -> str:
    """How many people some steps take: `2`, or `1 for step 13, 2 for steps 14 to 17`."""
    if len(set(people)) == 1:
        return voice.whole(people[0])
    return voice.listed(list(_by_number(voice, steps, people)))


def _by_number(voice: Voice, steps: Sequence[Step], people: Sequence[int]) -> Iterator[str]:
    for number, run in groupby(zip(people, steps, strict=True), key=lambda one: one[0]):
        numbers = [step.number for _, step in run]
        yield voice.say_count(
            "{people} for step {steps}",
            "{people} for steps {steps}",
            len(numbers),
            people=number,
            steps=number_ranges(voice, numbers),
        )
