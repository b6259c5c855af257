"""The joints of a course as a table: at each the chains that have a knot there and the free ends
that are tied in, tail or neck."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from buildplan.framework.model import LongChain
from buildplan.instructions.context import Context
from buildplan.language.messages import mark
from buildplan.language.phrases import runs_told
from buildplan.sequence.model import Kind, Turn

NOTHING = "–"
APART = 10**6  # between the numbers of balloons of different sorts
# whether several are told of together, and whether their tails are at the joint named first
TAIL_AT = {
    (False, True): mark("Balloon {links} ({colour}): tail at the joint named first"),
    (False, False): mark("Balloon {links} ({colour}): tail at the joint named second"),
    (True, True): mark("Balloons {links} ({colour}): tail at the joint named first"),
    (True, False): mark("Balloons {links} ({colour}): tail at the joint named second"),
}


@dataclass(frozen=True)
class JointTable:
    """The heads of the columns, and a row for each joint in its turn: its place and name, what has
    a knot there, what ends there."""

    head: tuple[str, str, str]
    rows: tuple[tuple[str, str, str], ...]


def joint_table(context: Context, turns: Sequence[Turn]) -> JointTable | None:
    """The table of the turns that join chains; None where the same chains meet at each, none of
    them with an end, where some joints are locked and others not, or several come together: those
    are told in lines."""
    joins = [turn for turn in turns if turn.operations[0].kind is Kind.JOIN]
    heads = [turn.operations[0] for turn in joins]
    locked = {bool(turn.of_kind(Kind.LOCK)) for turn in joins}
    if len(locked) != 1 or any(len(head.joints) > 1 for head in heads):
        return None
    joints = [head.joints[0] for head in heads]
    met = {tuple(sorted(context.piece.passing[joint][0].items())) for joint in joints}
    ends = [tuple(_ends(context, joint)) for joint in joints]
    if len(met) == 1 and not any(ends):
        return None
    voice = context.voice
    first = voice.say("Joint, then lock") if True in locked else voice.say("Joint")
    return JointTable(
        (first, voice.say("Knots of chains"), voice.say("Free ends")),
        tuple(
            (f"{place} {joint}", _knots(context, joint), ", ".join(told) or NOTHING)
            for place, (joint, told) in enumerate(zip(joints, ends, strict=True), 1)
        ),
    )


def balloons_between(context: Context, turns: Sequence[Turn]) -> Iterator[str]:
    """`Balloons P2-P7 and P4-P11 (leaf green): tail at the joint named first`: those that are tied
    in with joints of some turns, a line for each colour and end."""
    found: dict[tuple[str, bool], list[str]] = {}
    for turn in turns:
        head = turn.operations[0]
        for id_ in head.links if head.kind is Kind.JOIN else ():
            link = context.framework.link[id_]
            first = id_.startswith(f"{link.tail}-")
            found.setdefault((context.names_of([id_])[0], first), []).append(id_)
    voice = context.voice
    for (colour, first), ids in found.items():
        runs = runs_told(voice, ids, _counting(ids))
        told = {"links": voice.listed(runs), "colour": colour}
        yield voice.say(TAIL_AT[len(ids) > 1, first], **told)


def _counting(ids: Sequence[str]) -> list[int]:
    """A number for each balloon, so that numbers go on by one where both its joints count on by
    one: A1-I1, A2-I2 ..."""
    sorts: dict[tuple[str, ...], int] = {}
    found = []
    for place, id_ in enumerate(ids):
        ends = [re.fullmatch(r"(.*?)(\d+)", end) for end in id_.partition("-")[::2]]
        if None in ends:
            found.append(-2 * place - 1)
            continue
        (one, first), (other, second) = (end.groups() for end in ends if end)
        sort = (one, other, str(int(second) - int(first)))
        found.append(sorts.setdefault(sort, len(sorts)) * APART + int(first))
    return found


def _knots(context: Context, joint: str) -> str:
    passing, _ = context.piece.passing[joint]
    return ", ".join(passing.elements()) or NOTHING


def _ends(context: Context, joint: str) -> Iterator[str]:
    """The free ends at a joint: those that are tails, those that are necks."""
    voice, piece = context.voice, context.piece
    tails, necks = list[str](), list[str]()
    for letter in piece.passing[joint][1]:
        for id_ in _end_links(context.long[letter], joint):
            ends = necks if piece.framework.link[id_].neck == joint else tails
            ends.append(piece.alone.get(letter, letter))
    if tails:
        told = ", ".join(tails)
        yield voice.say_count("{ends} (tail)", "{ends} (tails)", len(tails), ends=told)
    if necks:
        told = ", ".join(necks)
        yield voice.say_count("{ends} (neck)", "{ends} (necks)", len(necks), ends=told)


def _end_links(long: LongChain, joint: str) -> Iterator[str]:
    """The balloons whose free end, at the start or the finish of a chain, is at a joint."""
    chain = long.chain
    if chain.joints[0] == joint:
        yield chain.links[0]
    if chain.joints[-1] == joint:
        yield chain.links[-1]
