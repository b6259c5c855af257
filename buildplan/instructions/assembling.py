"""Telling the braces, with their singles and their locks.

What hands do is taught in the first step that has it; a later one says where to look it up, and
what is different.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from buildplan.framework.cells import STRAIGHT
from buildplan.framework.model import Brace
from buildplan.instructions import corners, names, rows, singles
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import as_in_steps, colours
from buildplan.instructions.kneeling import (
    closing,
    kneeling,
    lifted,
    locked_from_outside,
    waiting,
)
from buildplan.instructions.leading import (
    is_named_before,
    is_new_corner,
    is_told_in_full,
    lead_words,
    leads_of,
    where_taught,
)
from buildplan.instructions.locking import done, getting_at, how_to_lock, locks_rows
from buildplan.instructions.measuring import sides_along
from buildplan.instructions.model import Doing, TurnWords, Wording
from buildplan.instructions.moves import Hand, lead_of
from buildplan.instructions.read_back import TAKE_CHAIN, TAKE_ONE, TAKE_PAIR
from buildplan.language.messages import mark
from buildplan.language.phrases import count_word, number_ranges, sentences
from buildplan.language.voice import Voice
from buildplan.sequence.colour_order import colour_runs
from buildplan.sequence.model import Kind, Step, Turn

FREE_END = mark("Where a chain ends, tie its free end round the brace's knot, then lock.")


def brace(context: Context, step: Step) -> Wording:
    """One brace, or several equal ones."""
    voice = context.voice
    braces = [context.piece.framework.brace[op.brace] for op in step.of_kind(Kind.BRACE)]
    corner = [kind for kind in step.cells if kind != STRAIGHT]
    numbers = number_ranges(voice, [one.number for one in braces])
    if corner:
        title = voice.say_count(
            "Brace {braces}, at {cells}",
            "Braces {braces}, at {cells}",
            len(braces),
            braces=numbers,
            cells=voice.listed([voice.tell(kind.words.one) for kind in corner]),
        )
    else:
        title = voice.say_count("Brace {braces}", "Braces {braces}", len(braces), braces=numbers)
    acts = _acts(context, step, braces)
    known = where_taught(context, step, leads_of(context, braces))
    return Wording(
        title=title,
        text=sentences(*(act.said for act in acts)) or as_in_steps(context.voice, known),
        acts=acts if is_told_in_full(context, step, braces) else (),
        check=done(
            context,
            step,
            *corners.between_braces(context, step),
            *sides_along(context, step.of_kind(Kind.BRACE)),
        ),
        as_in=known,
    )


def _acts(context: Context, step: Step, braces: Sequence[Brace]) -> tuple[Doing, ...]:
    """What hands do, one thing after another: where to go on, the brace, its singles, its locks."""
    told = (
        (
            (
                *kneeling(context, step),
                *_lifting(context, step, braces[0]),
                *closing(context, braces),
                *corners.taught(context, step),
                *_numbered(context, step),
            ),
            None,
        ),
        (_moves(context, step, braces), Kind.BRACE),
        (_settled(context, step, braces[0]), Kind.BRACE),
        (singles.at_corner(context, step, is_new_corner(context, step)), Kind.SINGLE),
        (
            (
                *how_to_lock(context, step),
                *getting_at(context, step),
                *locked_from_outside(context, braces),
            ),
            Kind.LOCK,
        ),
        (waiting(context, step), None),
    )
    acts = (Doing(sentences(*said), kind) for said, kind in told)
    return tuple(act for act in acts if act.said)


def _numbered(context: Context, step: Step) -> Iterator[str]:
    """A word of warning where a brace first has another number than its joints."""
    if _numbers_differ(context, step) and not any(
        _numbers_differ(context, one) for one in context.steps[: step.number - 1]
    ):
        yield context.voice.say("Brace numbers are not joint numbers: go by the row.")


def _numbers_differ(context: Context, step: Step) -> bool:
    braces = [context.framework.brace[op.brace] for op in step.of_kind(Kind.BRACE)]
    return any(
        context.place[context.piece.letter[joint]][joint] + 1 != one.number
        for one in braces
        for joint in one.section
    )


def _moves(context: Context, step: Step, braces: Sequence[Brace]) -> Iterator[str]:
    """How the short chains are tied in: whole where it is new, else where it was taught."""
    voice = context.voice
    leads = leads_of(context, braces)
    taught = [context.teacher(lead, step) for lead in leads]
    colour = _colour_of(context, braces)
    told: list[str] = []
    for chain in braces[0].chains:
        lead, length = lead_of(context.framework, chain), len(chain.links)
        if colour is None:
            told.append(_take_in_row(voice, length))
        elif (
            _last_taken(context, step, length) != colour
            or None in taught
            or is_new_corner(context, step)
        ):
            told.append(_take(voice, length, colour))
        if context.teacher(lead, step) is None or is_new_corner(context, step):
            told.append(lead_words(voice, lead))
    once = dict.fromkeys(told)
    yield from once
    if len(once) < len(told):
        yield voice.say("The row names more than one: tie in each so.")
    if any(one.shared for one in braces) and context.teacher(Hand.SHARE, step) is None:
        yield voice.say("Where the row names a shared balloon, no new balloon is tied.")
    known = where_taught(context, step, leads)
    turns = any(kind != STRAIGHT for kind in step.cells)
    if known and (turns or not is_named_before(context, step, known)):
        yield as_in_steps(context.voice, known)


def _lifting(context: Context, step: Step, brace: Brace) -> Iterator[str]:
    """How chains come up off those below them, before the first brace is led round them."""
    if context.teacher(Hand.SETTLE, step) is None:
        yield from lifted(context, brace)


def _settled(context: Context, step: Step, brace: Brace) -> Iterator[str]:
    """How a brace comes to lie, where that is new."""
    if context.teacher(Hand.SETTLE, step) is None:
        if brace.passes_joints:
            yield context.voice.say(
                "Settle the brace until knot lies on knot and the nozzles cross."
            )
        if has_free_ends(context, brace):
            yield context.voice.say(FREE_END)


def has_free_ends(context: Context, brace: Brace) -> bool:
    """Whether long chains begin or end at a brace, so that no knot of theirs is there."""
    chains = [long.chain for long in context.framework.chains if not long.chain.closed]
    ends = {joint for chain in chains for joint in (chain.joints[0], chain.joints[-1])}
    return bool(ends.intersection(brace.section))


def _last_taken(context: Context, step: Step, length: int) -> str | None:
    """The colour of the last short chain of so many balloons before a step, None where each row
    told its own."""
    for earlier in reversed(context.steps[: step.number - 1]):
        braces = [context.piece.framework.brace[op.brace] for op in earlier.of_kind(Kind.BRACE)]
        if any(len(chain.links) == length for one in braces for chain in one.chains):
            return _colour_of(context, braces)
    return None


def _colour_of(context: Context, braces: Sequence[Brace]) -> str | None:
    """What the balloons of braces are called, None where they differ: then each row tells."""
    called = {name for one in braces for name in context.names_of(one.links)}
    return called.pop() if len(called) == 1 else None


def _take(voice: Voice, length: int, colour: str) -> str:
    """What a brace is tied from."""
    if length == 1:
        return voice.say(TAKE_ONE, colour=colour)
    if length == 2:
        return voice.say(TAKE_PAIR, colour=colour)
    return voice.say(TAKE_CHAIN, length=count_word(voice, length), colour=colour)


def _take_in_row(voice: Voice, length: int) -> str:
    if length == 1:
        return voice.say("Take one balloon that was tied off alone, in the colour of the row.")
    if length == 2:
        return voice.say("Take a pair in the colour of the row.")
    return voice.say(
        "Take a chain of {length} in the colour of the row.", length=count_word(voice, length)
    )


def brace_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Brace 3: A3 – B3 – C3 – D3 – A3`, its singles (`Single: A5 – D5`), its locks."""
    voice, piece = context.voice, context.piece
    head = turn.operations[0]
    one = piece.framework.brace[head.brace]
    braces = [piece.framework.brace[op.brace] for op in step.of_kind(Kind.BRACE)]
    name = names.head_name(voice, piece, head)
    colour = _row_colour(context, one) if _colour_of(context, braces) is None else ""
    ways = [(chain.joints, chain.closed) for chain in one.chains]
    said = [rows.brace(voice, name, colour, ways, one.shared)]
    for operation in turn.operations:
        if operation.kind is Kind.SINGLE:
            said.append(singles.single_row(context, step, operation, names.single_row(voice)))
    return TurnWords(name, (*said, *locks_rows(context, turn)))


def _row_colour(context: Context, one: Brace) -> str:
    """The colour of a brace, or of its balloons in their order."""
    runs, over = colour_runs(context.names_of(one.links))
    return runs[0][1] if len(runs) == 1 else colours(context.voice, runs, over)
