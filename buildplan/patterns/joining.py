"""Joining the parts of an assembly: every part inline, once for each time it is built, all their
balloons in one palette, all ties spelled out, so that nothing after this knows of other files."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import combinations

from buildplan.language.messages import Message, message, message_count
from buildplan.patterns.assembly_keys import Assembly
from buildplan.patterns.joining_parts import AT, PartsRead, read_parts
from buildplan.patterns.joining_ties import TiesRead, meant_joint, read_ties
from buildplan.patterns.pattern import Around, Joined
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, listed, nearest, shown
from buildplan.source.suggestions import Put, Remedy, Suggestion, by_hand, change


def join_parts(assembly: Assembly, around: Around) -> Joined[Assembly]:
    """The assembly with its parts inline, the balloons of all, and every mistake in them."""
    read = read_parts(assembly, around, join_parts)
    if read.mistakes:
        return Joined(assembly, read.balloons, read.mistakes)
    ties = read_ties(assembly, read)
    mistakes = ties.mistakes or (*_loose(assembly, read, ties), *_foot(read, around))
    # every part by itself may be more than a file may list
    whole = Assembly.model_construct(
        parts=list(read.parts), ties=list(ties.ties), lock=assembly.lock
    )
    return Joined(whole, read.balloons, tuple(mistakes))


def _loose(assembly: Assembly, read: PartsRead, ties: TiesRead) -> Iterator[Mistake]:
    """Whether ties, and what parts are set on and between, hold all parts together."""
    names = [part.name for part in read.parts]
    beside: dict[str, set[str]] = {name: set() for name in names}
    carried = [(part.name, *part.carried_by) for part in read.parts]
    for together in (*ties.beside, *carried):
        for one, other in combinations(together, 2):
            beside[one].add(other)
            beside[other].add(one)
    reached = _reached(names[0], beside)
    loose = [name for name in names if name not in reached]
    if not loose:
        return
    given = [part.name for part in assembly.parts]
    places = [given.index(name) for name in loose if name in given]
    ways = tuple(
        Remedy(
            message("set {part} on another part: {right}", part=given[i], right=f"on: {names[0]}"),
            (Put((*AT, "parts", i, "on"), names[0]),),
        )
        for i in places[:1]
        if len(loose) == 1
    )
    yield Mistake(
        FileKind.LOOSE_PART,
        AT,
        message_count(
            "nothing ties part {parts} to part {first}",
            "nothing ties parts {parts} to part {first}",
            len(loose),
            parts=listed(loose),
            first=names[0],
        ),
        Suggestion(tuple(_how_to_tie(any(name not in given for name in loose))), ways),
    )


def _how_to_tie(repeated: bool) -> Iterator[Message]:
    """What may hold loose parts; `repeated` where some of them are one part, built again."""
    if repeated:
        yield message(
            "say in to_next what ties each to the next: a joint of the one and a joint of the next,"
            " to_next: [[A1, B1]]; or give each a name of its own in place of repeat, and its"
            " place: behind, in_front_of, left_of or right_of"
        )
    yield message(
        "say what each stands on (on: its part), between which two it is tied (between: [one,"
        " other]) or which it is beside (right_of: its part), or list ties; buildplan check"
        " --joints names the joints of each part"
    )


def _reached(first: str, beside: Mapping[str, set[str]]) -> set[str]:
    reached, waiting = {first}, [first]
    while waiting:
        for name in sorted(beside[waiting.pop()] - reached):
            reached.add(name)
            waiting.append(name)
    return reached


def _foot(read: PartsRead, around: Around) -> Iterator[Mistake]:
    given = around.stand_on
    for i, label in enumerate([given] if isinstance(given, str) else given or []):
        if label not in read.labels:
            at: Path = ("stand_on",) if isinstance(given, str) else ("stand_on", i)
            guess = nearest(label, read.labels)
            yield Mistake(
                FileKind.NO_SUCH_JOINT,
                at,
                message("there is no joint {joint}", joint=shown(label)),
                change(meant_joint(guess), Put(at, guess))
                if guess
                else by_hand(message("name it as its part, a dot and its label")),
            )
