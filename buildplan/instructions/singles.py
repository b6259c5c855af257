"""Telling the singles: at a corner, along a spur, by themselves, or between two parts."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.framework.chain_roles import Layer
from buildplan.framework.model import Cell
from buildplan.instructions import names, rows
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters
from buildplan.instructions.locking import done, getting_at, how_to_lock, locks_rows
from buildplan.instructions.model import Doing, RowWords, TurnWords, Wording
from buildplan.instructions.moves import Hand, between_parts
from buildplan.instructions.read_back import TAKE_SINGLE
from buildplan.instructions.setting_up import put_on_floor, ties_what_stands
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.model import Kind, Operation, Step, Turn
from buildplan.sequence.rounds import spur_of
from buildplan.shape.lying import laid_in_figure

# --- with a brace ---------------------------------------------------------------------------


def at_corner(context: Context, step: Step, in_full: bool) -> Iterator[str]:
    """The singles that belong to the corner of a brace; `in_full` where the corner is new, which
    names the step that taught them."""
    voice, singles = context.voice, step.of_kind(Kind.SINGLE)
    if not singles:
        return
    taught = context.teacher(Hand.SINGLE, step)
    colour = _colour_of(context, step)
    if colour is None:
        yield _take_in_row(voice)
    elif taught is None or _single_before(context, step) != colour:
        yield voice.say(TAKE_SINGLE, colour=colour)
    if taught is None:
        yield _across(voice)
    elif in_full:
        yield voice.say("Tie in the single as in step {step}.", step=taught)


def _colour_of(context: Context, step: Step) -> str | None:
    """What the balloons of a step's singles are called, None where they differ: then each row
    tells."""
    called = {name for op in step.of_kind(Kind.SINGLE) for name in context.names_of(op.links)}
    return called.pop() if len(called) == 1 else None


def _single_before(context: Context, step: Step) -> str | None:
    """What the balloon of the last single before a step is called, None where rows told it."""
    for earlier in reversed(context.steps[: step.number - 1]):
        if earlier.of_kind(Kind.SINGLE):
            return _colour_of(context, earlier)
    return None


def _take_in_row(voice: Voice) -> str:
    return voice.say("Take one balloon that was tied off alone, in the colour of the row.")


def _across(voice: Voice) -> str:
    return voice.say(
        "Tie its tail into the first joint of its row and its closed neck into the second, straight"
        " across."
    )


# --- by themselves --------------------------------------------------------------------------


def single(context: Context, step: Step) -> Wording:
    """Singles that come apart from a brace: along a spur, across joints, or between two parts."""
    voice, heads = context.voice, step.of_kind(Kind.SINGLE)
    spur = spur_of(context.piece, heads[0])
    if spur is not None:
        return _spur(context, step, spur)
    links = [op.links[0] for op in heads]
    apart = between_parts(context.piece, heads[0])
    parts = voice.listed(context.parts_at(heads))
    beside = _beside(context, step, parts)
    tying = sentences(*_tying_in(context, step, apart), *_held_up(context, step))
    lifted = _lifted_for_the_back(voice) if is_first_lifted(context, step) else ""
    acts = (
        *([Doing(beside)] if beside else []),
        Doing(tying, Kind.SINGLE),
        *([Doing(lifted, Kind.LAY)] if lifted else []),
    )
    return Wording(
        title=voice.say("Tie parts {parts} together", parts=parts)
        if apart
        else voice.say_count(
            "Single {singles}", "Singles {singles}", len(links), singles=voice.listed(links)
        ),
        text=sentences(beside if apart else "", tying, lifted),
        acts=acts if apart and is_first_beside_locks(context, step) else (),
        check=done(
            context,
            step,
            voice.say("Both its ends are tied in, and it is straight.")
            if len(links) == 1
            else _all_straight(voice),
        ),
    )


def _beside(context: Context, step: Step, parts: str) -> str:
    """How two parts come to lie, or to stand, where singles tie them together."""
    voice, told = context.voice, context.figures.set_up
    if told is None or not ties_what_stands(context, step):
        return voice.say("Lay parts {parts} side by side as in the finished view.", parts=parts)
    joined = context.parts_at(step.of_kind(Kind.SINGLE))
    up = [part for part in joined if part in told.lifted]
    held = voice.say(
        "Somebody holds {parts} where the finished view has it, both hands round joints, until all"
        " rows of this step are tied.",
        parts=voice.listed(up),
    )
    return sentences(*put_on_floor(context, step), held if up else "")


def _held_up(context: Context, step: Step) -> Iterator[str]:
    """That the chains on top of a part that only singles hold apart come up as these are tied."""
    own = context.framework.built_with(step.of_kind(Kind.SINGLE)[0].joints[0])
    joints = {joint for operation in step.of_kind(Kind.SINGLE) for joint in operation.joints}
    if own.braces or not laid_in_figure(own) or not joints <= set(own.joints):
        return
    letters = [long.letter for long in own.chains if long.layer is Layer.FRONT]
    yield context.voice.say_count(
        "Lift chain {letters} there, a balloon high, as you tie.",
        "Lift chains {letters} there, a balloon high, as you tie.",
        len(letters),
        letters=chain_letters(context.voice, letters),
    )


def is_first_beside_locks(context: Context, step: Step) -> bool:
    """Whether a step is the first to tie singles in at joints that are locked already."""
    if not _is_by_itself(context, step) or step.locks:
        return False
    return not any(_locks_alike(other, step) for other in _by_themselves(context, step))


def is_first_lifted(context: Context, step: Step) -> bool:
    """Whether a step is the first to have parts that lie lifted for what is tied at their backs."""
    if not _is_by_itself(context, step) or not _lifts_parts(context, step):
        return False
    return not any(_lifts_parts(context, other) for other in _by_themselves(context, step))


def _lifts_parts(context: Context, step: Step) -> bool:
    apart = between_parts(context.piece, step.of_kind(Kind.SINGLE)[0])
    return bool(step.behind) and apart and not ties_what_stands(context, step)


def _all_straight(voice: Voice) -> str:
    return voice.say("Both ends of each are tied in, and each is straight.")


def _tying_in(context: Context, step: Step, apart: bool) -> Iterator[str]:
    """How singles are tied in: where the first like them is told, if one was before."""
    voice, heads = context.voice, step.of_kind(Kind.SINGLE)
    colour = context.balloons_of([op.links[0] for op in heads])
    alike = [other for other in _by_themselves(context, step) if _locks_alike(other, step)]
    taught = [one for one in alike if between_parts(context.piece, one.operations[0]) == apart]
    if not taught or _single_before(context, step) != colour:
        yield voice.say(TAKE_SINGLE, colour=colour)
    if taught:
        yield voice.say("As in step {step}.", step=taught[0].number)
        return
    yield _across(voice)
    yield from how_to_lock(context, step) if step.locks else [_beside_locks(voice)]


def _lifted_for_the_back(voice: Voice) -> str:
    """How the joints at the back are got at where parts that lie are tied to one another."""
    return voice.say(
        "Then, for the joints at the back, somebody lifts both parts there, and you tie from"
        " beneath."
    )


def _by_themselves(context: Context, step: Step) -> Iterator[Step]:
    """Steps before one that tie singles by themselves, and not along a spur."""
    for other in context.steps[: step.number - 1]:
        if _is_by_itself(context, other):
            yield other


def _is_by_itself(context: Context, step: Step) -> bool:
    return step.kind is Kind.SINGLE and spur_of(context.piece, step.operations[0]) is None


def _locks_alike(one: Step, other: Step) -> bool:
    return bool(one.locks) == bool(other.locks)


def _beside_locks(voice: Voice) -> str:
    return voice.say(
        "The joints are locked already: push a round of the lock aside, lead the end once round the"
        " joint beneath both its rounds, and knot it twice, close beside the lock."
    )


# --- along a spur ---------------------------------------------------------------------------


def _spur(context: Context, step: Step, spur: Cell) -> Wording:
    """The rungs between the two rails of a spur, and what goes across it."""
    voice, piece = context.voice, context.piece
    heads = step.of_kind(Kind.SINGLE)
    first = next(
        other
        for other in context.steps
        if other.kind is Kind.SINGLE and spur_of(piece, other.operations[0]) is not None
    )
    rails = list(dict.fromkeys(piece.letter[joint] for joint in spur.skipped))
    colour = _colour_of(context, step)
    told = []
    if first is step:
        told.append(
            voice.say(
                "Chains {chains} are the rails of a ladder that goes out and comes back.",
                chains=chain_letters(voice, rails),
            )
        )
    if colour is None:
        told.append(_take_in_row(voice))
    elif first is step or _single_before(context, step) != colour:
        told.append(voice.say(TAKE_SINGLE, colour=colour))
    if first is step:
        told.append(_across(voice))
        told.append(voice.say("Tie the rungs from one end of the ladder to the other."))
        if any(op.links[0] in context.framework.extras for op in heads):
            told.append(voice.say("Then tie the balloons that go across it, in front and behind."))
    else:
        told.append(voice.say("As in step {step}.", step=first.number))
    return Wording(
        title=_spur_name(voice, spur),
        text=sentences(*told, *getting_at(context, step), *how_to_lock(context, step)),
        check=done(context, step, _all_straight(voice)),
    )


def _spur_name(voice: Voice, spur: Cell) -> str:
    return voice.say(
        "The spur between braces {first} and {second}", first=spur.first, second=spur.second
    )


# --- their rows -----------------------------------------------------------------------------


def single_rows(context: Context, step: Step, turn: Turn) -> TurnWords:
    """`Single: A5 – D5`, or those of a spur, each so; and their locks."""
    voice, found = context.voice, turn.of_kind(Kind.SINGLE)
    if len(found) == 1:
        name = names.single_name(voice, found[0].links[0])
        said = [single_row(context, step, found[0], names.single_row(voice))]
    else:
        spur = spur_of(context.piece, found[0])
        name = _spur_name(voice, spur) if spur else names.single_row(voice)
        said = [single_row(context, step, one, names.single_row(voice)) for one in found]
    return TurnWords(name, (*said, *locks_rows(context, turn)))


def single_row(context: Context, step: Step, operation: Operation, name: str) -> RowWords:
    """`Single: A5 – D5`, with its colour where the singles of a step differ."""
    colour = context.balloons_of(operation.links) if _colour_of(context, step) is None else ""
    return rows.row(context.voice, name, rows.along(operation.joints), colour)
