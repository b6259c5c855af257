"""What comes in with a step of a piece that is built course on course: which chains, and whether
they begin it."""

from __future__ import annotations

from buildplan.framework.model import LongChain
from buildplan.instructions.context import Context
from buildplan.instructions.moves import Hand, way_on
from buildplan.sequence.laid import RoundCourse, round_course
from buildplan.sequence.model import Kind, Step


def coming(context: Context, step: Step) -> list[LongChain]:
    """The chains that come in with a step."""
    return [context.long_of(operation) for operation in step.of_kind(Kind.TAG)]


def is_first(context: Context, step: Step) -> bool:
    """Whether a step lays the first chains of the piece, or of its part."""
    laid = step.of_kind(Kind.LAY)
    if not laid:
        return False
    part = context.framework.part_at(laid[0].joints[0])
    return not any(
        context.framework.part_at(operation.joints[0]) is part
        for earlier in context.steps[: step.number - 1]
        for operation in earlier.of_kind(Kind.LAY)
    )


def is_last(context: Context, step: Step) -> bool:
    """Whether a step lays the last chains of the piece, or of its part."""
    part = context.framework.part_at(step.of_kind(Kind.LAY)[0].joints[0])
    return not any(
        context.framework.part_at(operation.joints[0]) is part
        for later in context.steps[step.number :]
        for operation in later.of_kind(Kind.LAY)
    )


def is_flat(context: Context, step: Step) -> bool:
    """Whether what a step works on is built lying on its back."""
    part = context.framework.part_at(step.of_kind(Kind.LAY)[0].joints[0])
    return (part.name if part else "") in context.figures.flat


def way_on_of(context: Context, step: Step) -> Hand:
    """How the course of a step comes on those of its part before it."""
    earlier = context.steps[: step.number - 1]
    standing = [one for other in earlier for one in coming(context, other)]
    return way_on(coming(context, step), standing, is_flat(context, step))


def round_of(context: Context, step: Step) -> RoundCourse | None:
    """The ring and the zigzags of a step, if it brings nothing else in."""
    earlier = context.steps[: step.number - 1]
    return round_course(coming(context, step), [c for one in earlier for c in coming(context, one)])


def part_begun(context: Context, step: Step) -> str:
    """The part whose first course a step is; empty for another."""
    part = context.framework.part_at(step.of_kind(Kind.LAY)[0].joints[0])
    return part.name if part is not None and is_first(context, step) else ""


def joined_as(context: Context, step: Step) -> tuple[int, ...]:
    """The steps that taught how joints are brought together and, where chains come in, how they
    are set on what is built: a step that did both is enough."""
    joined = context.teacher(Hand.JOIN, step)
    if joined is None:
        return ()
    if not coming(context, step) or is_first(context, step):
        return (joined,)
    brought = context.teacher(way_on_of(context, step), step)
    if brought is None:
        return (joined,)
    both = Kind.JOIN in context.steps[brought - 1].kinds
    return (brought,) if both else tuple(sorted({joined, brought}))
