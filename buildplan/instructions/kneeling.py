"""Telling where the one who ties braces kneels, what is held up meanwhile, from which side a tube
is closed, and which locks wait.

All of it is common practice of the trade, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from itertools import pairwise

from buildplan.framework.chain_roles import INNER
from buildplan.framework.model import Brace, Framework
from buildplan.instructions.company import chains_lifted
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters
from buildplan.instructions.moves import Hand
from buildplan.sequence.model import Access, Kind, Step
from buildplan.shape.tied_parts import part_of

FAR = 4  # braces on, a joint that waits is easily forgotten
TUBE = 3  # chains at least, of what has an inside


def kneeling(context: Context, step: Step) -> Iterator[str]:
    """Where the one who ties braces kneels, as all close-ups of braces are seen from there."""
    if context.teacher(Hand.SETTLE, step) is not None:
        return
    laid = context.framework.built_with(step.operations[0].joints[0])
    if any(long.role == INNER for long in laid.chains):
        yield context.voice.say(
            "Kneel on the outer side, beside the loose chains, and face the brace."
        )
    else:
        yield context.voice.say("Kneel beside the loose chains and face the brace.")


def closing(context: Context, braces: Sequence[Brace]) -> Iterator[str]:
    """Where to kneel at the last brace of a tube that closes, and that the first brace needs no
    more where their corner's short brace comes before it."""
    own = _closed(context, braces)
    if own is not None and len(own.chains) >= TUBE:
        if part_of(context.framework, braces[-1].section[0]) in context.figures.closed_inside:
            yield context.voice.say("Here the tube closes: kneel in its open middle.")
        else:
            yield context.voice.say("Here the tube closes: kneel outside it, at the gap.")
    if own is not None and _closes_first(own, braces[-1]):
        yield context.voice.say("Beyond, brace {brace} stands whole.", brace=own.braces[0].number)


def locked_from_outside(context: Context, braces: Sequence[Brace]) -> Iterator[str]:
    """How a lock is laid where a tube is closed, so that no hand gets inside it."""
    own = _closed(context, braces)
    if own is not None and len(own.chains) >= TUBE and context.framework.locks:
        yield context.voice.say(
            "No hand gets inside: lay each lock's knot on from outside, lead a round in through one"
            " gap, out through the other; twist there."
        )


def closes(context: Context, braces: Sequence[Brace]) -> bool:
    """Whether braces are the last of a tube that closes with them."""
    own = _closed(context, braces)
    return own is not None and len(own.chains) >= TUBE


def _closed(context: Context, braces: Sequence[Brace]) -> Framework | None:
    """What braces are the last of, if it closes with them."""
    own = context.framework.built_with(braces[-1].section[0])
    last = own.closed and braces[-1].section == own.braces[-1].section
    return own if last else None


def _closes_first(own: Framework, brace: Brace) -> bool:
    """Whether the brace that closes a tube shares balloons with the first one, and corners before
    it shared theirs with the brace before them."""
    theirs = set(own.braces[0].links)
    before = any(
        set(other.shared) & set(earlier.links) for earlier, other in pairwise(own.braces[:-1])
    )
    return before and bool(theirs.intersection(brace.shared))


def lifted(context: Context, brace: Brace) -> Iterator[str]:
    """How the chains that lie on others come up, and for how long somebody holds them."""
    letters = chains_lifted(context, brace)
    if letters:
        yield context.voice.say_count(
            "Somebody lifts chain {letters} a balloon high there until two braces hold it up.",
            "Somebody lifts chains {letters} a balloon high there until two braces hold them up.",
            len(letters),
            letters=chain_letters(context.voice, letters),
        )


def waiting(context: Context, step: Step) -> list[str]:
    """What is said of joints whose lock waits for a brace of a later step: of those that wait for
    long, and the first time of others. The row of locks of that brace names each."""
    voice = context.voice
    turned = step.ways.get(Access.TURNED, ())
    later, far = _later(context, step)
    told = sorted(later if later.keys() <= far or not _waited_before(context, step) else far)
    waits = [
        voice.say(
            "Lock {joints} with brace {brace}.", joints=voice.listed(later[number]), brace=number
        )
        for number in told
    ]
    if far:
        waits.append(voice.say("Until then a strip of latex holds each."))
    if turned:
        waits.append(
            voice.say(
                "Lock {joints} later, with the piece turned over.", joints=voice.listed(turned)
            )
        )
    return waits


def _waited_before(context: Context, step: Step) -> bool:
    """Whether the lock of a joint of an earlier step waits, and not for long."""
    before = (one for one in context.steps[: step.number - 1] if one.kind is Kind.BRACE)
    return any(waits.keys() - far for waits, far in map(partial(_later, context), before))


def held_for_long(context: Context, step: Step) -> bool:
    """Whether a strip of latex holds joints of a step whose lock waits for a brace that is far
    on."""
    return step.kind is Kind.BRACE and bool(_later(context, step)[1])


def _later(context: Context, step: Step) -> tuple[Mapping[int, list[str]], set[int]]:
    """The joints of a step whose lock waits for a brace of a later one, by its number, and those
    numbers that are far on."""
    heads = step.of_kind(Kind.BRACE)
    last, turned = heads[-1].brace, step.ways.get(Access.TURNED, ())
    later: dict[int, list[str]] = {}
    for joint in (joint for head in heads for joint in head.joints if joint not in turned):
        number = context.lock_waits_for[joint]
        if number > last:
            later.setdefault(number, []).append(joint)
    return later, {number for number in later if number > last + FAR}
