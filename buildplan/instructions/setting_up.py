"""Telling how parts come to where they are tied: which stand where, and which go on top."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from itertools import pairwise

from buildplan.design.measures import length_words
from buildplan.instructions.context import Context
from buildplan.instructions.model import LiesAt, SharedKnots
from buildplan.language.messages import mark
from buildplan.sequence.model import Kind, Operation, Step

ABREAST = mark(
    "Set parts {parts} upright on the floor where the piece will stand, from left to right"
    " as seen from the front; from middle to middle: {distances}."
)
IN_DEPTH = mark(
    "Set parts {parts} upright on the floor where the piece will stand, one behind the other, from"
    " the back to the front; from middle to middle: {distances}."
)


def put_on_floor(context: Context, step: Step) -> Iterator[str]:
    """How the parts that stand on the floor come to their places before the first are tied, each
    thing a sentence; nothing where parts are tied as they lie."""
    voice, told = context.voice, context.figures.set_up
    if told is None or any(
        ties_what_stands(context, one) for one in context.steps[: step.number - 1]
    ):
        return
    for part in told.standing:
        yield from _turned_up(context, [part] if part in told.lying else [])
    if told.apart_m:
        apart = [
            voice.say(
                "{one} to {other} {length}",
                one=one,
                other=other,
                length=length_words(length_m, context.units),
            )
            for (one, other), length_m in zip(pairwise(told.standing), told.apart_m, strict=True)
        ]
        yield voice.say(
            IN_DEPTH if told.in_depth else ABREAST,
            parts=voice.listed(list(told.standing)),
            distances=voice.listed(apart),
        )
    else:
        yield voice.say(
            "Set part {part} upright on the floor where the piece will stand.",
            part=told.standing[0],
        )
    for part in told.standing:
        if told.front.get(part) and part not in told.lying:  # that has its front to the front
            yield voice.say(
                "Turn part {part} so that {joints} face the front.",
                part=part,
                joints=voice.listed(list(told.front[part])),
            )


def lifted_on(context: Context, step: Step) -> Iterator[str]:
    """How the parts that a step is the first to tie come up from the floor, each thing a sentence;
    nothing where parts are tied as they lie. What is tied together already comes up as one."""
    voice, told = context.voice, context.figures.set_up
    for parts in comes_up(context, step):
        if told and told.rising.intersection(parts) and _has_tags(context):
            yield voice.say(
                "Before they come up take off their tags, at the back by lifting the edge, but"
                " those of joints that are tied to other parts: tear what a lock holds off beside"
                " it."
            )
        if told and set(parts) <= set(told.lying):
            yield _turned_and_lifted(context, step, parts)
            continue
        yield from _turned_up(context, [one for one in parts if told and one in told.lying])
        yield voice.say_count(
            "{people} people take part {parts} at both sides, both hands round joints, never by one"
            " balloon, lift it to its place, upright, and hold it there until its last tie is"
            " locked; one more ties and locks.",
            "{people} people take parts {parts}, tied together by now, at both sides, both hands"
            " round joints, never by one balloon, lift them to their place, upright, and hold them"
            " there until their last tie is locked; one more ties and locks.",
            len(parts),
            people=step.of_kind(Kind.JOIN)[0].people - 1,
            parts=voice.listed(list(parts)),
        )


def pairs_first(context: Context, step: Step) -> Iterator[str]:
    """That the locks of ties lie in place before parts come down on them, and what holds them
    there until then: a sentence for all that comes up together."""
    for parts in comes_up(context, step):
        yield from _pairs_below(context, step, parts)


def _pairs_below(context: Context, step: Step, parts: tuple[str, ...]) -> Iterator[str]:
    last = _last_tying(context, step, frozenset(parts))
    ties = [other for other in context.steps[step.number - 1 : last] if is_tying(other)]
    tied = dict.fromkeys(part for other in ties for part in context.parts_at(_locked(other)))
    later = [one for one in context.steps[step.number :] if is_tying(one)]
    above = {part for one in later for block in comes_up(context, one) for part in block}
    below = [part for part in tied if part not in {*parts, *above}]
    if below:
        yield context.voice.say(
            "Now lay the pair of rounds of each tie at its joint of {parts}, knot inside, a round"
            " out at either side: later hands may not get inside. The rounds are wider than the"
            " gaps and hold it there until the part above lies on it.",
            parts=context.voice.listed(below),
        )


def _locked(step: Step) -> tuple[Operation, ...]:
    """The ties of a step that locks hold."""
    return step.of_kind(Kind.JOIN) if step.locks else ()


def _turned_and_lifted(context: Context, step: Step, parts: tuple[str, ...]) -> str:
    """How parts that were built lying are turned up, lifted and held by the same hands."""
    return context.voice.say_count(
        "Part {parts} was built lying. {people} people take it at both sides, both hands round"
        " joints beside those that are tied, never by one balloon, turn it up, its front to the"
        " front, lift it to its place and bear it until its last tie is locked: nothing else does."
        " One more ties and locks.",
        "Parts {parts}, tied together by now, were built lying. {people} people take them at both"
        " sides, both hands round joints beside those that are tied, never by one balloon, turn"
        " them up, their front to the front, lift them to their place and bear them until their"
        " last tie is locked: nothing else does. One more ties and locks.",
        len(parts),
        people=step.of_kind(Kind.JOIN)[0].people - 1,
        parts=context.voice.listed(list(parts)),
    )


def comes_up(context: Context, step: Step) -> Iterator[tuple[str, ...]]:
    """The parts that a step is the first to tie and that are lifted for it, those that are tied
    together already as one."""
    told = context.figures.set_up
    if told is None:
        return
    blocks = _blocks(context, step)
    seen = {part for other in _tying(context, step)[:-1] for part in _at(context, other)}
    for part in [part for part in told.lifted if part in _at(context, step)]:
        block = next((one for one in blocks if part in one), frozenset({part}))
        if not block & seen:
            seen |= block
            yield tuple(one.name for one in context.framework.parts if one.name in block)


def ties_of(context: Context, parts: Collection[str], gone: Collection[str]) -> list[str]:
    """The names of the ties that hold parts, lifted as one, to others; without those to parts that
    are `gone`."""
    found = []
    for tie in context.framework.ties:
        held = {part.name for part in map(context.framework.part_at, tie.joints) if part}
        others = held.difference(parts)
        if held != others and others.difference(gone):
            found.append(tie.name)
    return found


def _last_tying(context: Context, step: Step, block: frozenset[str]) -> int:
    """The number of the last of the steps, one after another from `step`, that tie a block of
    parts to what stands."""
    last = step.number
    for other in context.steps[step.number :]:
        if not is_tying(other) or not block & _at(context, other):
            break
        last = other.number
    return last


def _tying(context: Context, step: Step) -> list[Step]:
    """The steps up to one, and it, that tie parts to one another."""
    return [other for other in context.steps[: step.number] if is_tying(other)]


def _at(context: Context, step: Step) -> frozenset[str]:
    """The names of the parts that a step ties."""
    return frozenset(context.parts_at(step.of_kind(Kind.JOIN)))


def _blocks(context: Context, step: Step) -> list[frozenset[str]]:
    """The parts that balloons between them hold together before a step."""
    blocks: list[frozenset[str]] = []
    for other in context.steps[: step.number - 1]:
        for single in other.of_kind(Kind.SINGLE):
            tied = frozenset(context.parts_at([single]))
            if len(tied) > 1:
                met = [block for block in blocks if block & tied]
                blocks = [block for block in blocks if not block & tied]
                blocks.append(tied.union(*met))
    return blocks


def high_up(context: Context, step: Step) -> Iterator[str]:
    """What is said of joints that are tied out of reach from the floor, or from a step stool."""
    voice, told = context.voice, context.figures.set_up
    if told is None:
        return
    names, reached_high = _ties_at(context, step), high_ties(context, step)
    high = [name for name in reached_high if name not in told.higher]
    if high == names and len(names) > 1:
        yield voice.say(
            "The joints tied here are high: work from a steady step stool, and have somebody"
            " hold it."
        )
    elif high:
        yield voice.say_count(
            "{joints} is high: work from a steady step stool, and have somebody hold it.",
            "{joints} are high: work from a steady step stool, and have somebody hold it.",
            len(high),
            joints=voice.listed(high),
        )
    higher = [name for name in names if name in told.higher]
    if higher:
        yield voice.say(
            "Out of reach from a step stool: {joints}. Work from a ladder or platform that is made"
            " for it, as your local rules ask.",
            joints=voice.listed(higher),
        )
    if reached_high and _has_tags(context):
        yield voice.say("Before you come down take off the tags up there that are needed no more.")


def _has_tags(context: Context) -> bool:
    return any(step.of_kind(Kind.TAG) for step in context.steps)


def high_ties(context: Context, step: Step) -> list[str]:
    """The names of the ties of a step that are out of reach from the floor."""
    told = context.figures.set_up
    return [name for name in _ties_at(context, step) if told and name in told.high]


def _ties_at(context: Context, step: Step) -> list[str]:
    return [context.framework.tie_of[op.joints[0]].name for op in step.of_kind(Kind.JOIN)]


def lie_together(context: Context, step: Step) -> Iterator[str]:
    """Which balloons lie where, of those that two parts have between the same two knots, the first
    time that they lie so."""
    told = set()
    for other in _tying(context, step)[:-1]:
        told |= {one.placed for one in context.figures.shared if _ties(context, other, one)}
    for one in context.figures.shared:
        if _ties(context, step, one) and one.placed not in told:
            told.add(one.placed)
            yield context.voice.say(LIE[one.placed], other=one.other, part=one.part)


def _ties(context: Context, step: Step, shared: SharedKnots) -> bool:
    return {shared.other, shared.part} <= _at(context, step)


# What is said of balloons of two parts between the same two knots.
LIE: Mapping[LiesAt, str] = {
    LiesAt.ON_TOP: mark(
        "Where both parts have a balloon between the same two joints both stay, that of part {part}"
        " on top of that of part {other}."
    ),
    LiesAt.RIGHT: mark(
        "Where both parts have a balloon between the same two joints both stay, that of part {part}"
        " at the right of that of part {other}, as seen from the front."
    ),
    LiesAt.IN_FRONT: mark(
        "Where both parts have a balloon between the same two joints both stay, that of part {part}"
        " in front of that of part {other}."
    ),
}


def _turned_up(context: Context, lying: list[str]) -> Iterator[str]:
    """How parts that were built lying come up on their feet."""
    voice = context.voice
    if lying:
        yield voice.say_count(
            "Part {parts} was built lying: turn it up on its foot, its front to the front.",
            "Parts {parts} were built lying: turn them up together on their foot, their front to"
            " the front.",
            len(lying),
            parts=voice.listed(lying),
        )


def ties_what_stands(context: Context, step: Step) -> bool:
    """Whether a step ties parts to one another, by knots or by balloons between them, of which some
    stand on the floor already."""
    told = context.figures.set_up
    if told is None or step.kind not in (Kind.JOIN, Kind.SINGLE):
        return False
    parts = context.parts_at(step.of_kind(step.kind))
    return len(parts) > 1 and not set(told.standing).isdisjoint(parts)


def is_tying(step: Step) -> bool:
    """Whether a step ties parts to one another."""
    return step.kind is Kind.JOIN and len(step.of_kind(Kind.JOIN)[0].joints) > 1
