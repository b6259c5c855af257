"""Telling what a corner asks for, and what a wrong joint there would look like."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from buildplan.framework.cells import STRAIGHT
from buildplan.framework.model import Brace, Cell, LongChain
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters, joint_names
from buildplan.instructions.moves import Corner, Hand
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Step


def taught(context: Context, step: Step) -> Iterator[str]:
    """The joints that a corner leaves out, and what the long chains do at one of a kind that is
    new. At one that is known the row of a single names the joints that it is tied to."""
    voice = context.voice
    for cell in _cells(context, step):
        is_new = cell.kind != STRAIGHT and context.teacher(Corner(cell.kind), step) is None
        if is_new:
            yield from _goes(context, cell)
        if cell.skipped and (is_new or not set(cell.skipped) <= _tied_by_singles([step])):
            yield voice.say("No brace reaches {joints}.", joints=_skipped(voice, cell))
            if not cell.kind.is_spur:  # nobody holds them meanwhile
                yield voice.say_count("It lies free.", "They lie free.", len(cell.skipped))
        if is_new:
            yield voice.tell(cell.kind.words.effect or "")


def _cells(context: Context, step: Step) -> list[Cell]:
    braces = [context.piece.framework.brace[op.brace] for op in step.of_kind(Kind.BRACE)]
    return [cell for brace in braces for cell in context.piece.cells_at(brace)]


def _skipped(voice: Voice, cell: Cell) -> str:
    """The joints that a cell leaves out; those of a spur from where to where."""
    return joint_names(voice, cell.skipped) if cell.kind.is_spur else voice.listed(cell.skipped)


def _goes(context: Context, cell: Cell) -> Iterator[str]:
    """How far the chains of either side go on, those that go equally far together."""
    voice = context.voice
    before, after = (context.framework.brace[n] for n in (cell.first, cell.second))
    by_count: dict[int, list[LongChain]] = {}
    for long, count in _between(context, before, after).items():
        by_count.setdefault(count, []).append(context.long[long])
    for count, chains in sorted(by_count.items(), reverse=True):
        start, end = (
            voice.listed(
                [joint for c in chains for joint in c.chain.joints if joint in one.section]
            )
            for one in (before, after)
        )
        if count:
            yield voice.say_count(
                "Go on by {number} balloon from {joints} to {after}.",
                "Go on by {number} balloons from {joints} to {after}.",
                count,
                joints=start,
                after=end,
            )
        else:
            yield voice.say("Stay at {joints}.", joints=start)


def _between(context: Context, before: Brace, after: Brace) -> Mapping[str, int]:
    """How many balloons of each long chain lie between two braces, by its letter."""
    found = {}
    for long in context.framework.built_with(before.section[0]).chains:
        place = context.place[long.letter]
        starts = [place[joint] for joint in before.section if joint in place]
        ends = [place[joint] for joint in after.section if joint in place]
        if len(starts) == 1 and len(ends) == 1:
            count = abs(ends[0] - starts[0])
            around = len(long.chain.links) - count
            found[long.letter] = min(count, around) if long.chain.closed else count
    return found


def between_braces(context: Context, step: Step) -> list[str]:
    """What lies between the braces of a step and those before them: a brace at a wrong joint does
    not have it."""
    cells = _cells(context, step)
    brace = context.framework.brace
    pairs = [(brace[cell.first], brace[cell.second]) for cell in cells]
    counts = [_between(context, *pair) for pair in pairs]
    alike = {count for found in counts for count in found.values()}
    if len(alike) == 1 and context.teacher(Hand.SETTLE, step) is not None:
        return [
            context.voice.say_count(
                "{number} balloon between braces.",
                "{number} balloons between braces.",
                alike.pop(),
            )
        ]
    if len(alike) == 1:
        return [
            context.voice.say_count(
                "Each chain has {number} balloon between braces.",
                "Each chain has {number} balloons between braces.",
                alike.pop(),
            )
        ]
    corners = {Corner(cell.kind) for cell in cells if cell.kind != STRAIGHT}
    known = all(context.teacher(corner, step) is not None for corner in corners)
    voice = context.voice
    told = [_uneven(context, found) for found in counts]
    if known and len(told) == 1:
        return [voice.say("Between braces: {counts}.", counts=told[0])]
    uneven = [
        voice.say(
            "Between braces {before} and {brace}: {counts}.",
            before=before.number,
            brace=after.number,
            counts=found,
        )
        for (before, after), found in zip(pairs, told, strict=True)
    ]
    if any(cell.kind.is_spur for cell in cells):
        return uneven  # what its joints carry comes after the brace
    return uneven if known else [*uneven, *bare(context, [step])]


def _uneven(context: Context, counts: Mapping[str, int]) -> str:
    """The balloons of each chain between two braces, chains of the same count together."""
    voice, by_count = context.voice, dict[int, list[str]]()
    for letter, count in counts.items():
        by_count.setdefault(count, []).append(letter)
    told = []
    for count, letters in sorted(by_count.items(), reverse=True):
        chains = chain_letters(voice, letters)
        if count:
            told.append(
                voice.say_count(
                    "{chains} {number} balloon", "{chains} {number} balloons", count, chains=chains
                )
            )
        else:
            told.append(voice.say("{chains} none", chains=chains))
    return ", ".join(told)


def bare(context: Context, steps: Sequence[Step]) -> Iterator[str]:
    """Joints that steps skip, which carry no brace."""
    voice = context.voice
    cells = [cell for step in steps for cell in _cells(context, step)]
    skipped: Sequence[str] = [joint for cell in cells for joint in cell.skipped]
    if not skipped:
        return
    joints = voice.listed(skipped)
    if set(skipped) <= _tied_by_singles(steps):
        yield voice.say_count(
            "{joints} carries only its single.",
            "{joints} carry only their single.",
            len(skipped),
            joints=joints,
        )
    else:
        yield voice.say_count(
            "{joints} carries nothing.", "{joints} carry nothing.", len(skipped), joints=joints
        )


def _tied_by_singles(steps: Sequence[Step]) -> set[str]:
    return {j for step in steps for op in step.of_kind(Kind.SINGLE) for j in op.joints}
