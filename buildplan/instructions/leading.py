"""How the short chains of braces are led along their joints, and which step has told it: a way that
is new is told in full, one that is known where it was told."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from buildplan.framework.cells import STRAIGHT
from buildplan.framework.ends import End
from buildplan.framework.model import Brace
from buildplan.instructions.context import Context
from buildplan.instructions.moves import Corner, Lead, Move, lead_of
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Step


def leads_of(context: Context, braces: Iterable[Brace]) -> Iterable[Lead]:
    """How the short chains of braces are led, each way once."""
    return dict.fromkeys(lead_of(context.framework, c) for one in braces for c in one.chains)


def lead_words(voice: Voice, lead: Lead) -> str:
    """How a short chain is led along the joints of its row."""
    if lead.closed and lead.first is lead.last:
        return voice.say(
            "Pinch one end at the first joint of its row, lead the other along it, outside the"
            " chains, knot on knot, and back; tie its two free tails together. Locks hold the"
            " others."
        )
    if lead.closed:
        return voice.say(
            "Pinch one end at the first joint of its row, lead the other along it, outside the"
            " chains, knot on knot, and back; tie its free tail and its closed neck"
            " together."
        )
    first, last = _end(voice, lead.first), _end(voice, lead.last)
    if lead.over:
        return voice.say(
            "Tie its {first_end} into the first joint of its row, lead it over the joints between,"
            " knot on knot, and tie its {last_end} into the last.",
            first_end=first,
            last_end=last,
        )
    return voice.say(
        "Tie its {first_end} into the first joint of its row and its {last_end} into the last.",
        first_end=first,
        last_end=last,
    )


def _end(voice: Voice, end: End) -> str:
    """A free end of a short chain."""
    return voice.say("closed neck") if end is End.NECK else voice.say("free tail")


def is_new_corner(context: Context, step: Step) -> bool:
    """Whether a step finishes a corner of a kind that is new, whose brace is told in full: it is
    led by other joints than at the corners before."""
    turning = (Corner(kind) for kind in step.cells if kind != STRAIGHT)
    return any(context.teacher(corner, step) is None for corner in turning)


def is_told_in_full(context: Context, step: Step, braces: Sequence[Brace]) -> bool:
    """Whether a step is the first to lead a short chain so, which takes many words."""
    return is_new_corner(context, step) or any(
        context.teacher(lead, step) is None for lead in leads_of(context, braces)
    )


def where_taught(context: Context, step: Step, leads: Iterable[Lead]) -> tuple[int, ...]:
    """The steps to look up: at a corner of a known kind the one that shows that corner, whose
    braces are led so too; and any that a way of leading rests on besides."""
    if is_new_corner(context, step):
        return ()
    corner = _taught(context, step, (Corner(kind) for kind in step.cells if kind != STRAIGHT))
    shown = {
        lead
        for number in corner
        for op in context.steps[number - 1].of_kind(Kind.BRACE)
        for lead in leads_of(context, [context.piece.framework.brace[op.brace]])
    }
    known = corner | _taught(context, step, (lead for lead in leads if lead not in shown))
    return tuple(sorted(known))


def is_named_before(context: Context, step: Step, known: tuple[int, ...]) -> bool:
    """Whether an earlier step has named the same steps to look up: twice is enough."""
    earlier = context.steps[max(known) : step.number - 1]
    return any(_known(context, other) == known for other in earlier if other.kind is Kind.BRACE)


def _known(context: Context, step: Step) -> tuple[int, ...]:
    braces = [context.piece.framework.brace[op.brace] for op in step.of_kind(Kind.BRACE)]
    return where_taught(context, step, leads_of(context, braces))


def _taught(context: Context, step: Step, moves: Iterable[Move]) -> set[int]:
    """The steps before `step` that teach moves."""
    found = (context.teacher(move, step) for move in moves)
    return {number for number in found if number is not None}
