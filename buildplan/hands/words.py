"""What hands make of a piece, in words."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.design.measures import length_words, size_words
from buildplan.evaluation.evaluating import Evaluation
from buildplan.hands.forecast import forecast, height_of, narrowest
from buildplan.hands.log import LogError
from buildplan.hands.model import (
    BodyWidth,
    ChainOfTen,
    Factor,
    Give,
    Hands,
    Pace,
    RingAcross,
    StandingHeight,
    TieLength,
    TimedWork,
)
from buildplan.language.messages import Message, message_in
from buildplan.language.voice import Voice
from buildplan.sequence.labour import MINUTES
from buildplan.sequence.model import Kind

# A measurement that leaves more than this of the range is not worth its while.
LEFT = 0.9
MOST_TOLD = 20  # bad rows of a log, each on a line
EACH: dict[Kind, Message] = {
    Kind.SIZE: message_in("minutes of work", "sizing a balloon"),
    Kind.PAIR: message_in("minutes of work", "tying a pair"),
    Kind.TIE_OFF: message_in("minutes of work", "tying off a balloon"),
    Kind.CHAIN: message_in("minutes of work", "a knot of a chain"),
    Kind.CLOSE_RING: message_in("minutes of work", "closing a ring"),
    Kind.TAG: message_in("minutes of work", "tagging a joint"),
    Kind.LAY: message_in("minutes of work", "laying out the piece"),
    Kind.BRACE: message_in("minutes of work", "tying in a brace"),
    Kind.SETTLE: message_in("minutes of work", "settling the knots of a brace"),
    Kind.SINGLE: message_in("minutes of work", "tying in a single"),
    Kind.JOIN: message_in("minutes of work", "bringing together a joint"),
    Kind.TURN_OVER: message_in("minutes of work", "turning the piece over"),
    Kind.LOCK: message_in("minutes of work", "a lock"),
    Kind.INSPECT: message_in("minutes of work", "looking the piece over"),
    Kind.STAND_UP: message_in("minutes of work", "standing the piece up"),
}


def height_lines(hands: Hands, piece: Evaluation, voice: Voice) -> Iterator[str]:
    """How high a piece will stand, and what to measure to know it better. `piece` has been worked
    out with these hands."""
    hands = hands.taken_for_granted
    found = forecast(hands, height_of(piece))
    said = {
        "height": size_words(found.value_m, piece.units),
        "low": size_words(found.low_m, piece.units),
        "high": size_words(found.high_m, piece.units),
    }
    if piece.falls:
        yield voice.say("{height} where something holds it up ({low} to {high})", **said)
    else:
        yield voice.say("{height} as it stands ({low} to {high})", **said)
    best = narrowest(hands, piece)
    if best is None or best.then_m > LEFT * best.now_m:
        return
    now, then = (length_words(length, piece.units) for length in (best.now_m, best.then_m))
    if isinstance(best.candidate.measurement, ChainOfTen):
        yield voice.say(
            "a chain of ten {colour} links, measured, tells it to {then} either way (now {now})",
            colour=piece.framework.balloons[best.candidate.which].label,
            then=then,
            now=now,
        )
    else:
        yield voice.say(
            "ring {ring}, measured on the floor, tells it to {then} either way (now {now})",
            ring=best.candidate.which,
            then=then,
            now=now,
        )


def _per_cent(factor: Factor, voice: Voice) -> dict[str, str]:
    shares = {"value": factor.value, "low": factor.low, "high": factor.high}
    return {name: voice.decimal(100 * value, 1) for name, value in shares.items()}


def _minutes(hands: Hands, kind: Kind, voice: Voice) -> str:
    found, usual = hands.factor({Pace(): 1.0, Pace(kind): 1.0}), MINUTES[kind]
    return voice.say(
        "{work}: {value} min ({low} to {high}; {usual} is taken for granted)",
        work=EACH[kind],
        value=voice.decimal(usual * found.value, 2),
        low=voice.decimal(usual * found.low, 2),
        high=voice.decimal(usual * found.high, 2),
        usual=voice.decimal(usual, 2),
    )


def learned_lines(hands: Hands, voice: Voice) -> Iterator[str]:
    """What was learned, a line each."""
    kinds = {type(one) for one in hands.measurements}
    number = len(hands.measurements)
    yield voice.say_count("From {number} measurement:", "From {number} measurements:", number)
    if kinds - {TimedWork}:
        shares = _per_cent(hands.factor({TieLength(): 1.0}), voice)
        yield voice.say(
            "links are {value} % as long between their knots as is taken for granted "
            "({low} to {high})",
            **shares,
        )
    if kinds & {RingAcross, StandingHeight}:
        shares = _per_cent(hands.factor({BodyWidth(): 1.0}), voice)
        yield voice.say("balloons are {value} % as wide as their gauge ({low} to {high})", **shares)
    if StandingHeight in kinds:
        shares = _per_cent(hands.factor({Give(): 1.0}), voice)
        yield voice.say(
            "the built piece is {value} % as stiff as is taken for granted ({low} to {high})",
            **shares,
        )
    worked = dict.fromkeys(one.kind for one in hands.measurements if isinstance(one, TimedWork))
    for kind in worked:
        yield _minutes(hands, kind, voice)


def bad_rows(error: LogError, log: str, voice: Voice) -> list[str]:
    """What is wrong with a log, a line each; of very many the first."""
    lines = [f"{log}:{row.line}: {voice.tell(row.why)}" for row in error.rows[:MOST_TOLD]]
    more = len(error.rows) - len(lines)
    if more:
        lines.append(voice.say_count("and {number} row more", "and {number} rows more", more))
    return lines
