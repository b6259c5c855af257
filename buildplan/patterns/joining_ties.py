"""The ties of an assembly read: those that the file lists, and those from each part to the next."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from buildplan.language.messages import Message, mark, message, message_count
from buildplan.patterns.assembly_keys import Assembly, PartsTie, TieByBalloon
from buildplan.patterns.joining_parts import AT, PartsRead, part_names
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, listed, nearest, one_of, shown
from buildplan.source.suggestions import Put, Remedy, Suggestion, by_hand


@dataclass(frozen=True)
class TiesRead:
    """The ties of an assembly, joints called as in the whole; the parts that each ties; and what
    is wrong."""

    ties: tuple[PartsTie, ...]
    beside: tuple[tuple[str, ...], ...]
    mistakes: tuple[Mistake, ...]


@dataclass(frozen=True)
class _Asked:
    """A tie as the file gives it, its joints as in the whole, and its place in the file."""

    tie: PartsTie
    joints: tuple[str, ...]
    at: Path


def read_ties(assembly: Assembly, read: PartsRead) -> TiesRead:
    """The ties of an assembly whose parts have been read."""
    ties: list[PartsTie] = []
    beside: list[tuple[str, ...]] = []
    mistakes: list[Mistake] = []
    taken: set[str] = set()
    for asked in _asked(assembly):
        if isinstance(asked, Mistake):
            mistakes.append(asked)
            continue
        wrong = [*_unknown(asked, read)] or [*_cannot_meet(asked, read, taken)]
        mistakes += wrong
        if wrong:
            continue
        if isinstance(asked.tie, TieByBalloon):
            ties.append(asked.tie.model_copy(update={"joints": list(asked.joints)}))
        else:
            ties.append(list(asked.joints))
            taken.update(asked.joints)
        beside.append(tuple(read.labels[joint] for joint in asked.joints))
    return TiesRead(tuple(ties), tuple(beside), tuple(mistakes))


def joints_of_tie(tie: PartsTie) -> list[str]:
    """The joints that a tie names."""
    return tie.joints if isinstance(tie, TieByBalloon) else tie


def _asked(assembly: Assembly) -> Iterator[_Asked | Mistake]:
    for i, part in enumerate(assembly.parts):
        for j, tie in enumerate(part.to_next):
            at: Path = (*AT, "parts", i, "to_next", j)
            own = joints_of_tie(tie)
            if len(own) != 2:
                yield Mistake(
                    FileKind.TWO_JOINTS_TO_NEXT,
                    at,
                    message_count(
                        "to_next names {number} joint", "to_next names {number} joints", len(own)
                    ),
                    by_hand(message("name two: a joint of the one, and one of the next")),
                )
                continue
            for one, following in pairwise(part_names(part)):
                yield _Asked(tie, (f"{one}.{own[0]}", f"{following}.{own[1]}"), at)
    for j, tie in enumerate(assembly.ties):
        yield _Asked(tie, tuple(joints_of_tie(tie)), (*AT, "ties", j))


def _unknown(asked: _Asked, read: PartsRead) -> Iterator[Mistake]:
    parts = [part.name for part in read.parts]
    for position, joint in enumerate(asked.joints):
        if joint in read.labels:
            continue
        part = next((name for name in parts if joint.startswith(f"{name}.")), None)
        if part is None:
            yield Mistake(
                FileKind.NO_SUCH_PART,
                asked.at,
                message("{joint} names no part", joint=shown(joint)),
                by_hand(
                    message(
                        "write a part's name, a dot and its joint; the parts are {names}",
                        names=listed(parts),
                    )
                ),
            )
            continue
        its = [label for label, name in read.labels.items() if name == part]
        guess = nearest(joint, its)
        names = listed(label.removeprefix(f"{part}.") for label in its)
        yield Mistake(
            FileKind.NO_SUCH_JOINT,
            asked.at,
            message(
                "part {part} has no joint {joint}",
                part=part,
                joint=shown(joint.removeprefix(f"{part}.")),
            ),
            Suggestion(
                (message("its joints are {names}", names=names),),
                (Remedy(meant_joint(guess), (Put(_end(asked, position), guess),)),)
                if guess and "to_next" not in asked.at
                else (),
            ),
        )


def _end(asked: _Asked, position: int) -> Path:
    """Where the file names one of the joints of a tie."""
    by_balloon = isinstance(asked.tie, TieByBalloon)
    return (*asked.at, "joints", position) if by_balloon else (*asked.at, position)


def meant_joint(label: str) -> Message:
    """Whether another joint was meant."""
    return message("did you mean {guess}?", guess=label)


def _cannot_meet(asked: _Asked, read: PartsRead, taken: set[str]) -> Iterator[Mistake]:
    twice = _same_part(asked.joints, read)
    if twice is not None:
        yield Mistake(
            FileKind.SAME_PART_TWICE,
            asked.at,
            message(
                "{joints} cannot meet: part {part} has two of them",
                joints=listed(asked.joints),
                part=twice,
            ),
            by_hand(message("tie joints of different parts")),
        )
        return
    if isinstance(asked.tie, TieByBalloon):
        key, at = asked.tie.balloon, (*asked.at, "balloon")
        links = [name for name, one in read.balloons.items() if one.is_strut]
        if key not in links:
            yield Mistake(
                FileKind.NO_SUCH_BALLOON,
                at,
                message("there is no link balloon {key}", key=shown(key)),
                one_of(key, links, mark("the link balloons are: {names}"), at),
            )
        return
    again = next((joint for joint in asked.joints if joint in taken), None)
    if again is not None:
        yield Mistake(
            FileKind.TIED_ALREADY,
            asked.at,
            message("{joint} is tied to other joints already", joint=again),
            by_hand(message("name all joints that meet at one place in one tie")),
        )


def _same_part(joints: Sequence[str], read: PartsRead) -> str | None:
    """A part that two of the joints are of."""
    parts = [read.labels[joint] for joint in joints]
    return next((part for part in parts if parts.count(part) > 1), None)
