"""Which steps fold up what hangs, and which of them close a piece so that no hand gets inside."""

from __future__ import annotations

from buildplan.instructions.coming import coming, is_first, is_last, round_of
from buildplan.instructions.context import Context
from buildplan.sequence.laid import is_regular, lets_a_hand_in
from buildplan.sequence.model import Kind, Step
from buildplan.shape.tied_parts import part_of


def folds_up(context: Context, step: Step) -> bool:
    """Whether a step brings together what hangs on what stands, and nothing else comes in."""
    if step.kind is not Kind.JOIN or coming(context, step) or len(step.operations[0].joints) > 1:
        return False
    own = context.framework.built_with(step.operations[0].joints[0])
    name = part_of(context.framework, own.joints[0])
    return not own.braces and name not in {*context.figures.flat, *context.figures.one_layer}


def is_closed_last(context: Context, step: Step) -> bool:
    """Whether a step closes a piece or part, after which no hand gets inside: not with a ring on
    the zigzag below it, which leaves the top open."""
    if not coming(context, step):
        if not folds_up(context, step):
            return False
        own = {*context.framework.built_with(step.operations[0].joints[0]).joints}
        later = [op for one in context.steps[step.number :] for op in one.of_kind(Kind.JOIN)]
        return not any(len(op.joints) == 1 and op.joints[0] in own for op in later)
    course = round_of(context, step)
    regular = course is not None and is_regular(course, context.framework)
    return is_last(context, step) and not is_first(context, step) and not regular


def is_narrow(context: Context, step: Step) -> bool:
    """Whether a step sets a ring on what stands that no hand fits into."""
    course = round_of(context, step)
    if course is None or is_first(context, step) or not is_regular(course, context.framework):
        return False
    return not lets_a_hand_in(course.ring, context.framework, context.figures.hand_m)
