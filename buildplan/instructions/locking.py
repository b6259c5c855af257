"""Telling the locks, how joints are got at, and what to count when a step is done."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.instructions import rows
from buildplan.instructions.coming import coming, is_first, round_of
from buildplan.instructions.context import Context
from buildplan.instructions.folding import is_closed_last, is_narrow
from buildplan.instructions.model import RowWords
from buildplan.instructions.moves import Hand
from buildplan.instructions.read_back import (
    TAKE_LOCK,
    TAKE_LOCK_LYING,
    TAKE_LOCK_OF_ONE_LAYER,
    THESE_ROUNDS,
)
from buildplan.language.phrases import sentences
from buildplan.language.voice import Voice
from buildplan.sequence.laid import is_regular, lies_alone
from buildplan.sequence.model import Access, Kind, Step, Turn
from buildplan.shape.tied_parts import part_of
from buildplan.source.runs import runs_words

# What the reader of words looks for: the rounds of the locks.


def how_to_lock(context: Context, step: Step) -> Iterator[str]:
    """How what a step ties is locked, where that is new, and that each is locked in its turn."""
    voice = context.voice
    if not step.locks:
        return
    if context.teacher(lock_move(context, step), step) is None:
        yield voice.say(_taking(context, step), colour=context.lock_name(step.locks[0]))
        yield from _lying(context, step)
        if _taking(context, step) is TAKE_LOCK and _meets_oddly(context, step):
            yield voice.say(
                "Where an odd number of balloons meets no gap is opposite another: take the two in"
                " which the pictures have the rounds."
            )
        if _is_at_brace(context, step):
            yield voice.say(
                "From inside the piece lay its knot on the joint, a round out through each of two"
                " gaps, opposite or nearly. Outside, twist the two rounds past each other by two"
                " half turns, until both sit tight."
            )
        if step.kind is Kind.BRACE:
            yield voice.say(
                "A tied brace grips the chains; pinch what slips. Lock each brace at once."
            )
        elif step.times > 1 and context.teacher(Hand.LOCK_LYING, step) is None:
            yield voice.say("Lock each before you go on to the next.")
    elif _rounds_before(context, step) != context.lock_name(step.locks[0]):
        yield voice.say(THESE_ROUNDS, colour=context.lock_name(step.locks[0]))
    earlier = context.steps[: step.number - 1]
    for words in _sides(context, step):
        if not any(words in _sides(context, other) for other in earlier):
            yield words


def lock_move(context: Context, step: Step) -> Hand:
    """The move by which the joints of a step are locked: those of the first ring as they lie, those
    of braces from inside to either side of the long chain."""
    if step.kind is Kind.BRACE:
        return Hand.LOCK_AT_BRACE
    lying = bool(coming(context, step)) and is_first(context, step) and _rises(context, step)
    return Hand.LOCK_LYING if lying else Hand.LOCK


def _rises(context: Context, step: Step) -> bool:
    """Whether a step brings in a ring with a zigzag that comes up from it, and nothing else."""
    course = round_of(context, step)
    return course is not None and lies_alone(course, context.framework)


def _meets_oddly(context: Context, step: Step) -> bool:
    """Whether an odd number of balloons meets at a joint that a step locks."""
    return any(len(context.framework.links_at.get(joint, ())) % 2 for joint in step.locks)


def _is_at_brace(context: Context, step: Step) -> bool:
    """Whether a step locks joints of braces that go round an inside."""
    return step.kind is Kind.BRACE and not _is_of_one_layer(context, step)


def _is_of_one_layer(context: Context, step: Step) -> bool:
    """Whether a step locks joints of a part that has no inside."""
    return part_of(context.framework, step.locks[0]) in context.figures.one_layer


def _taking(context: Context, step: Step) -> str:
    """The message that says which lock is taken, and for most how it is laid."""
    lying = lock_move(context, step) is Hand.LOCK_LYING
    if lying or _is_at_brace(context, step) or is_narrow(context, step):
        return TAKE_LOCK_LYING
    return TAKE_LOCK_OF_ONE_LAYER if _is_of_one_layer(context, step) else TAKE_LOCK


def _lying(context: Context, step: Step) -> Iterator[str]:
    """How the lock of a joint of the first ring is laid, which lies flat: from on top."""
    course = round_of(context, step)
    if lock_move(context, step) is Hand.LOCK_LYING and course is not None and course.up is not None:
        yield context.voice.say(
            "Lay its knot on top of the joint: one round goes down in the middle of ring {ring},"
            " the other between the two balloons of chain {zigzag}. Lift the joint, twist the two"
            " rounds past each other underneath by two half turns, until both sit tight, and lay it"
            " down: underneath will be the outside.",
            ring=course.ring.letter,
            zigzag=course.up.letter,
        )


def _sides(context: Context, step: Step) -> Iterator[str]:
    """Where the outside is of a first course, which lies on the floor; and how a lock is laid where
    what closes leaves no way in."""
    if not step.of_kind(Kind.LOCK):
        return
    voice = context.voice
    if part_of(context.framework, step.locks[0]) in context.figures.flat:
        yield voice.say(
            "The back is underneath: lift each joint off the floor to get at it, then lay it"
            " down as it was."
        )
        return
    if _is_of_one_layer(context, step):
        return
    if not coming(context, step):
        yield from [_from_outside(voice)] if is_closed_last(context, step) else []
        return
    course = round_of(context, step)
    if is_first(context, step):
        if not _rises(context, step):
            yield voice.say(
                "What lies on the floor will be the outside: lift each joint to twist there, then"
                " lay it down as it was."
            )
    elif course is not None and is_regular(course, context.framework):
        yield voice.say(
            "One round goes out above the ring, the other below it; where a zigzag is, between its"
            " two balloons."
        )
        if is_narrow(context, step):
            yield _from_outside(voice)
    elif is_closed_last(context, step):
        yield _from_outside(voice)


def _from_outside(voice: Voice) -> str:
    """How a lock is laid where what closes leaves no way in."""
    return voice.say(
        "Where no hand gets inside any more lay the knot of the lock on the joint from outside,"
        " lead one round in through a gap and out through the gap opposite, and twist the two"
        " past each other there."
    )


def _rounds_before(context: Context, step: Step) -> str:
    """What the rounds of the last lock before a step are called."""
    for earlier in reversed(context.steps[: step.number - 1]):
        locks = earlier.of_kind(Kind.LOCK)
        if locks:
            return context.lock_name(locks[-1].locks[0])
    return ""


def locks_rows(context: Context, turn: Turn) -> list[RowWords]:
    """`Locks: A3, B3, C3, D3`, where a turn has any."""
    joints = [joint for op in turn.operations if op.kind is Kind.LOCK for joint in op.locks]
    if not joints:
        return []
    return [rows.at_joints(context.voice, context.voice.say("Locks"), joints)]


def getting_behind(context: Context, step: Step) -> Iterator[str]:
    """How the joints at the back are got at, where they are new."""
    voice = context.voice
    if step.behind and not any(other.behind for other in context.steps[: step.number - 1]):
        yield (
            voice.say(
                "Joints at the back lie on the floor: raise the brace on one knee; one hand lays"
                " the lock inside, the other twists underneath."
            )
            if step.kind is Kind.BRACE
            else voice.say("Kneel down to the joints at the back and reach in low.")
        )


def getting_at(context: Context, step: Step) -> Iterator[str]:
    """How joints that are not on top are got at."""
    voice = context.voice
    yield from getting_behind(context, step)
    for way, joints in step.ways.items():
        listed = voice.tell(runs_words(joints))
        match way:
            case Access.LIFTED:
                yield voice.say_count(
                    "{joints} faces the floor: have somebody lift the piece there.",
                    "{joints} face the floor: have somebody lift the piece there.",
                    len(joints),
                    joints=listed,
                )
            case Access.ON_ITS_SIDE:
                yield voice.say(
                    "For {joints} stand the piece on its side; somebody holds it.", joints=listed
                )
            case Access.STOOL:
                yield voice.say_count(
                    "{joints} is high: work from a steady step stool, and have somebody hold it.",
                    "{joints} are high: work from a steady step stool, and have somebody hold it.",
                    len(joints),
                    joints=listed,
                )
            case Access.LADDER:
                yield voice.say(
                    "Out of reach from a step stool: {joints}. Work from a ladder or platform that"
                    " is made for it, as your local rules ask.",
                    joints=listed,
                )
            case Access.NONE:
                yield voice.say_count(
                    "{joints} is hard to reach: have somebody press the balloons there apart.",
                    "{joints} are hard to reach: have somebody press the balloons there apart.",
                    len(joints),
                    joints=listed,
                )


def done(context: Context, step: Step, *checks: str) -> str:
    """The check of a step on the piece: what it says itself, and how far the work has come."""
    voice = context.voice
    locking = (Hand.LOCK, Hand.LOCK_LYING, Hand.LOCK_AT_BRACE)
    first = step.locks and all(context.teacher(move, step) is None for move in locking)
    return sentences(
        voice.say("Pull each lock gently: its rounds spring back, no joint slips.")
        if first
        else "",
        *checks,
        _so_far(context, step),
    )


def _so_far(context: Context, step: Step) -> str:
    voice = context.voice
    made, total = context.progress(step.kind, step)
    if context.framework.parts and step.kind is Kind.JOIN:
        return _joined_so_far(context, step)
    locked, locks = context.progress(Kind.LOCK, step)
    if not step.locks:
        return _heads_so_far(voice, step.kind, made, total)
    values = {"done": made, "total": total, "locked": locked, "locks": locks}
    if step.kind is Kind.BRACE:
        last = context.framework.brace[step.of_kind(Kind.BRACE)[-1].brace].number
        if made == last != total and not _is_first(context, step):  # the title says it
            return voice.say("{locked}/{locks} locks.", **values)
        return voice.say("{done}/{total} braces, {locked}/{locks} locks.", **values)
    if step.kind is Kind.SINGLE:
        return voice.say("{done}/{total} singles, {locked}/{locks} locks.", **values)
    return voice.say("{done}/{total} joints, {locked}/{locks} locks.", **values)


def _is_first(context: Context, step: Step) -> bool:
    """Whether no step before one is of its kind."""
    return all(other.kind is not step.kind for other in context.steps[: step.number - 1])


def _joined_so_far(context: Context, step: Step) -> str:
    """How many joints of a part are done, or how many ties between parts."""
    voice = context.voice
    parts = context.parts_at(step.of_kind(Kind.JOIN))
    done, total = context.joined(step)
    locked, locks = context.progress(Kind.LOCK, step)
    values: dict[str, str | int] = {"done": done, "total": total}
    if step.locks:
        values |= {"locked": locked, "locks": locks}
    if len(parts) > 1:
        if not step.locks:
            return voice.say("{done}/{total} ties between parts.", **values)
        return voice.say("{done}/{total} ties between parts, {locked}/{locks} locks.", **values)
    values["part"] = parts[0]
    if not step.locks:
        return voice.say("Part {part}: {done}/{total} joints.", **values)
    return voice.say("Part {part}: {done}/{total} joints; in all {locked}/{locks} locks.", **values)


def _heads_so_far(voice: Voice, kind: Kind, made: int, total: int) -> str:
    if kind is Kind.BRACE:
        return voice.say("{done}/{total} braces.", done=made, total=total)
    if kind is Kind.SINGLE:
        return voice.say("{done}/{total} singles.", done=made, total=total)
    return voice.say("{done}/{total} joints.", done=made, total=total)
