"""The rows of a step as they are printed: joints at which alike things meet share one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from buildplan.instructions import rows
from buildplan.instructions.context import Context
from buildplan.instructions.grammar import chain_letters, joint_names, names_in_runs
from buildplan.instructions.model import TurnWords
from buildplan.instructions.read_back import COLOURED_ROW, FREE_ENDS, KNOTS, THEN_LOCKED
from buildplan.language.phrases import clauses
from buildplan.sequence.model import Kind, Turn

FEWEST = 2  # joints that share a row of what meets at each in turn


@dataclass(frozen=True)
class _Meeting:
    """What meets at a joint: how often each chain passes and ends there, the balloons that are
    chains by themselves, and the links that are tied in."""

    joint: str
    passing: Mapping[str, int]
    ends: Mapping[str, int]
    balloons: tuple[str, ...]
    brought: tuple[str, ...]
    colour: str
    locked: bool

    @property
    def shape(self) -> tuple[object, ...]:
        """What is the same at joints that can share a row."""
        times = sorted(self.passing.values()), sorted(self.ends.values())
        counts = len(self.balloons), len(self.brought), self.colour, self.locked
        return (tuple(times[0]), tuple(times[1]), *counts)


def printed(context: Context, turns: Sequence[Turn], told: Sequence[TurnWords]) -> Iterator[str]:
    """The rows of turns: `Joints B1 to B6, one after another: knots of chain B and chain J; then
    lock it` where the same meets at each, and what meets there in turn where it is alike. Joints
    between which others come are named so: `Joints B1 and B8, as they come`."""
    both = [
        (_meeting(context, turn), words)
        for turn, words in zip(turns, told, strict=True)
        if words.name
    ]
    alike: dict[object, list[int]] = {}
    for place, (meeting, _) in enumerate(both):
        alike.setdefault(place if meeting is None else meeting.shape, []).append(place)
    rows_at: dict[int, list[str]] = {}
    for places in alike.values():
        met = [one for one in (both[place][0] for place in places) if one is not None]
        shared = list(_shared(context, met, places[-1] - places[0] == len(places) - 1))
        for place in places:
            rows_at[place] = [] if shared else list(both[place][1].lines)
        rows_at[places[0]] = shared or rows_at[places[0]]
    for place in sorted(rows_at):
        yield from rows_at[place]


def _meeting(context: Context, turn: Turn) -> _Meeting | None:
    """What meets at the joint of a turn that brings chains together; None of another."""
    head = turn.operations[0]
    if head.kind is not Kind.JOIN or len(head.joints) > 1:
        return None
    (joint,) = head.joints
    passing, ends = context.piece.passing[joint]
    alone = context.piece.alone
    return _Meeting(
        joint,
        passing,
        {letter: times for letter, times in ends.items() if letter not in alone},
        tuple(alone[letter] for letter in ends if letter in alone),
        tuple(head.links),
        context.balloons_of(head.links),
        bool(turn.of_kind(Kind.LOCK)),
    )


def _shared(context: Context, met: Sequence[_Meeting], in_a_row: bool) -> Iterator[str]:
    """The row of joints that are alike, and one of the balloons that are tied in there; nothing
    where they are too few. `in_a_row` says that no other joint comes between them."""
    if len(met) < FEWEST:
        return
    voice = context.voice
    knots = _things(context, [one.passing for one in met])
    chains = _things(context, [one.ends for one in met])
    balloons = [one.balloons for one in met]
    same = len({(*one.passing, "", *one.ends, "", *one.balloons) for one in met}) == 1
    if knots is None or chains is None:
        return
    if any(len(one) > 1 for one in balloons):
        return
    joints = [one.joint for one in met]
    free = [[one] for group in chains for one in group]
    if any(balloons):
        links = names_in_runs(voice, [link for one in balloons for link in one], joints)
        free.append([voice.say("balloons {links}, one at each in turn", links=links)])
    # what is the same at all of them is named together, each thing that differs by itself
    parts = [
        voice.say_count(*message, 1 if same and len(one) == 1 else 2, chains=voice.listed(one))
        for message, things in ((KNOTS, knots), (FREE_ENDS, free))
        for one in things
        if one
    ]
    names = {"joints": joint_names(voice, joints), "words": clauses(voice, parts)}
    said = (
        voice.say("Joints {joints}, one after another: {words}", **names)
        if in_a_row
        else voice.say("Joints {joints}, as they come: {words}", **names)
    )
    yield voice.say(THEN_LOCKED, joint=said) if met[0].locked else said
    brought = [context.framework.link[link] for one in met for link in one.brought]
    if brought:
        ways = [rows.along((link.tail, link.neck)) for link in brought]
        name = voice.say("Balloons, tail first")
        yield voice.say(COLOURED_ROW, name=name, colour=met[0].colour, words=clauses(voice, ways))


def _things(context: Context, at_each: Sequence[Mapping[str, int]]) -> list[list[str]] | None:
    """Chains that pass or end at each of some joints, as they are told together: those of all of
    them with one that differs from joint to joint; more that differ, each by itself. None where
    there are not as many at each, or one comes several times."""
    voice, first = context.voice, at_each[0]
    common = [
        letter
        for letter, times in first.items()
        if all(one.get(letter) == times for one in at_each)
    ]
    rest = [[letter for letter in one if letter not in common] for one in at_each]
    told = [rows.passes(voice, letter, first[letter]) for letter in common]
    if len({len(one) for one in rest}) > 1:
        return None
    if any(one[own] != 1 for one, letters in zip(at_each, rest, strict=True) for own in letters):
        return None
    in_turn = [
        voice.say("chains {letters}, one at each in turn", letters=chain_letters(voice, letters))
        for letters in zip(*rest, strict=True)
    ]
    if len(in_turn) < 2:
        return [[*told, *in_turn]]
    return [*([told] if told else []), *([one] for one in in_turn)]
