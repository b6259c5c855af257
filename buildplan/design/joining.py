"""Joining the parts of an assembly: each read, and what they must agree on.

A design comes in as the file says it and goes out with every part inline, once for each time it is
built, and with all balloons in one palette, so that nothing after this knows of other files.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path as FilePath

from buildplan.design.checks import check
from buildplan.design.model import Design
from buildplan.language.messages import Message, mark, message, message_count
from buildplan.patterns.assembly_keys import Assembly, AssemblyPart, PartsTie, TieByBalloon
from buildplan.patterns.build import Build, built_as
from buildplan.patterns.registry import joints_of
from buildplan.source.balloons import Balloon
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import (
    Mistake,
    Path,
    key_in_words,
    listed,
    nearest,
    one_of,
    shown,
)
from buildplan.source.problems import DesignProblemsError, UnreadableDesignError, as_message
from buildplan.source.suggestions import Put, Suggestion, TakeOut, Way, by_hand, change, within

AT: Path = ("build", "assembly")
MOST_JOINTS = 20_000

Read = Callable[[FilePath], Design]


@dataclass
class _Joining:
    """What has been found so far; `labels` gives the part of every joint of the whole."""

    balloons: dict[str, Balloon]
    parts: list[AssemblyPart] = field(default_factory=list)
    ties: list[PartsTie] = field(default_factory=list)
    labels: dict[str, str] = field(default_factory=dict)
    tied: dict[str, Path] = field(default_factory=dict)
    beside: dict[str, set[str]] = field(default_factory=dict)


def join_parts(
    design: Design, folder: FilePath, read: Read, known_constants: Collection[str] | None = None
) -> tuple[Design, list[Mistake]]:
    """`design` with its assembly's parts inline, and every mistake in them; a design of another
    pattern as it is. `read` reads the design of a part, and raises as `read_design` does."""
    assembly = design.build.keys_of(Assembly)
    if assembly is None:
        return design, []
    found = _Joining(dict(design.balloons))
    mistakes = list(_read_parts(found, design, assembly, folder, read, known_constants))
    if not mistakes:
        mistakes = list(_tie_parts(found, assembly))
    if not mistakes:
        mistakes = [*_check_whole(found), *_check_foot(found, design)]
    # every part by itself may be more than a file may list
    whole = Assembly.model_construct(parts=found.parts, ties=found.ties, lock=assembly.lock)
    update = {"build": built_as("assembly", whole), "balloons": found.balloons}
    return design.model_copy(update=update), mistakes


# --- parts --------------------------------------------------------------------------------


def _read_parts(
    found: _Joining,
    design: Design,
    assembly: Assembly,
    folder: FilePath,
    read: Read,
    known_constants: Collection[str] | None,
) -> Iterator[Mistake]:
    names: dict[str, int] = {}
    for i, part in enumerate(assembly.parts):
        at = (*AT, "parts", i)
        if (part.design is None) == (part.build is None):
            yield Mistake(
                FileKind.DESIGN_OR_BUILD,
                at,
                message("part {part} gives neither a design nor a build", part=part.name)
                if part.design is None
                else message("part {part} gives two of itself", part=part.name),
                by_hand(message("give either design: its file, or build: its pattern")),
            )
            continue
        for name in _names(part):
            if name in names:
                yield Mistake(
                    FileKind.NAME_TAKEN,
                    (*at, "name"),
                    message("there is a part {part} already", part=name),
                    by_hand(message("give each part a name of its own")),
                )
            names[name] = i
        if part.repeat == 1 and part.to_next:
            yield Mistake(
                FileKind.NO_NEXT_PART,
                (*at, "to_next"),
                message(
                    "there is one part {part}, and to_next ties it to the next of them",
                    part=part.name,
                ),
                Suggestion(
                    ways=(
                        Way(
                            message("add {right} or more", right="repeat: 2"),
                            (Put((*at, "repeat"), 2),),
                        ),
                        Way(message("take {key} out", key="to_next"), (TakeOut((*at, "to_next")),)),
                    )
                ),
            )
        whole, mistakes = (
            _from_file(found, design, part, at, folder, read)
            if part.design is not None
            else _inline(found, design, part, at, folder, read, known_constants)
        )
        yield from mistakes
        if whole is None:
            continue
        joints = joints_of(_plain(whole.build))
        labels = joints.labels if joints is not None else ()
        for name in _names(part):
            found.parts.append(whole.model_copy(update={"name": name}))
            found.labels.update({f"{name}.{joint}": name for joint in labels})
    if len(found.labels) > MOST_JOINTS:
        yield Mistake(
            FileKind.TOO_MANY_JOINTS,
            AT,
            message("this assembly has {count} joints", count=len(found.labels)),
            by_hand(message("a piece may have {count}; repeat fewer times", count=MOST_JOINTS)),
        )


def _names(part: AssemblyPart) -> list[str]:
    if part.repeat == 1:
        return [part.name]
    return [f"{part.name}{number + 1}" for number in range(part.repeat)]


def _plain(build: Build | None) -> Mapping[str, object]:
    assert build is not None, "a part that was read has a build"
    return build.model_dump(by_alias=True, exclude_none=True)


def _from_file(
    found: _Joining, design: Design, part: AssemblyPart, at: Path, folder: FilePath, read: Read
) -> tuple[AssemblyPart | None, list[Mistake]]:
    """A part from its design file, its balloons brought into the palette."""
    at = (*at, "design")
    try:
        own = read(folder / str(part.design))
    except UnreadableDesignError as error:
        problem = as_message(error.problem, error.file)
        right = message("name a design file, as seen from this one's folder")
        return None, [Mistake(FileKind.PART_UNREADABLE, at, problem, by_hand(right))]
    except DesignProblemsError as error:
        problem = as_message(error.problems[0], error.file)
        if len(error.problems) > 1:
            problem = message(
                "part {part} has {count} mistakes, first {problem}",
                part=part.name,
                count=len(error.problems),
                problem=problem,
            )
        return None, [
            Mistake(
                FileKind.PART_HAS_PROBLEMS, at, problem, by_hand(message("mend that file first"))
            )
        ]
    mistakes = []
    if own.units != design.units:
        mistakes.append(
            Mistake(
                FileKind.OTHER_UNITS,
                at,
                message(
                    "part {part} is measured in {units}, and this design in {others}",
                    part=part.name,
                    units=own.units,
                    others=design.units,
                ),
                by_hand(message("use the same unit in both files")),
            )
        )
    for key, balloon in own.balloons.items():
        ours = found.balloons.setdefault(key, balloon)
        if ours.kind != balloon.kind:
            mistakes.append(
                Mistake(
                    FileKind.OTHER_KIND_OF_BALLOON,
                    at,
                    message(
                        "the balloon {key} of part {part} is a {kind}, and here it is a {ours}",
                        key=key_in_words(key),
                        part=part.name,
                        kind=balloon.kind,
                        ours=ours.kind,
                    ),
                    by_hand(message("give one of them another key")),
                )
            )
    stand_on = part.stand_on if part.stand_on is not None else own.stand_on
    update = {"build": own.build, "colour_pattern": own.colour_pattern, "stand_on": stand_on}
    whole = part.model_copy(update={**update, "design": None, "repeat": 1, "to_next": []})
    return whole, [*mistakes, *_check_stand_on(whole, at)]


def _check_stand_on(part: AssemblyPart, at: Path) -> Iterator[Mistake]:
    """Joints that the assembly gives a part of another file to stand on."""
    joints = joints_of(_plain(part.build))
    given = part.stand_on
    for label in [given] if isinstance(given, str) else given or []:
        if joints is not None and label not in joints.labels:
            yield Mistake(
                FileKind.NO_SUCH_JOINT,
                (*at[:-1], "stand_on"),
                message("part {part} has no joint {joint}", part=part.name, joint=shown(label)),
                by_hand(message("its joints are {names}", names=joints.words)),
            )


def _inline(
    found: _Joining,
    design: Design,
    part: AssemblyPart,
    at: Path,
    folder: FilePath,
    read: Read,
    known_constants: Collection[str] | None,
) -> tuple[AssemblyPart | None, list[Mistake]]:
    """A part whose pattern is given in place, checked as a design of its own would be."""
    given = {
        "balloons": {key: one.model_dump() for key, one in found.balloons.items()},
        "build": _plain(part.build),
        "colour_pattern": {
            key: one if isinstance(one, list) else one.model_dump(exclude_unset=True)
            for key, one in part.colour_pattern.items()
        },
        "stand_on": part.stand_on,
    }
    mistakes = [
        Mistake(one.kind, (*at, *one.at), one.message, within(at, one.suggestion))
        for one in check(given, known_constants)
        if one.at[:1] != ("balloons",)
    ]
    if mistakes:
        return None, mistakes
    build = part.build
    assert build is not None, "asked for before"
    if build.keys_of(Assembly) is not None:
        inner = design.model_copy(update={"build": build, "balloons": found.balloons})
        whole, more = join_parts(inner, folder, read, known_constants)
        if more:
            return None, [
                Mistake(one.kind, (*at, *one.at), one.message, within(at, one.suggestion))
                for one in more
            ]
        build = whole.build
        found.balloons.update(whole.balloons)
    return part.model_copy(update={"build": build, "repeat": 1, "to_next": []}), []


# --- ties ---------------------------------------------------------------------------------


def _tie_parts(found: _Joining, assembly: Assembly) -> Iterator[Mistake]:
    for i, part in enumerate(assembly.parts):
        names = _names(part)
        for j, tie in enumerate(part.to_next):
            at = (*AT, "parts", i, "to_next", j)
            own = _joints(tie)
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
            for one, following in pairwise(names):
                yield from _tie(found, [f"{one}.{own[0]}", f"{following}.{own[1]}"], tie, at)
    for j, tie in enumerate(assembly.ties):
        yield from _tie(found, _joints(tie), tie, (*AT, "ties", j))


def _joints(tie: PartsTie) -> list[str]:
    return tie.joints if isinstance(tie, TieByBalloon) else tie


def _tie(found: _Joining, joints: Sequence[str], tie: PartsTie, at: Path) -> Iterator[Mistake]:
    mistakes = [*_unknown(found, joints, tie, at)]
    if not mistakes:
        mistakes = [*_cannot_meet(found, joints, tie, at)]
    if mistakes:
        yield from mistakes
        return
    if isinstance(tie, TieByBalloon):
        found.ties.append(tie.model_copy(update={"joints": list(joints)}))
    else:
        found.ties.append(list(joints))
        found.tied.update(dict.fromkeys(joints, at))
    parts = [found.labels[joint] for joint in joints]
    for part in parts:
        found.beside.setdefault(part, set()).update(parts)


def _unknown(found: _Joining, joints: Sequence[str], tie: PartsTie, at: Path) -> Iterator[Mistake]:
    parts = [part.name for part in found.parts]
    for position, joint in enumerate(joints):
        if joint in found.labels:
            continue
        part = next((name for name in parts if joint.startswith(f"{name}.")), None)
        if part is None:
            yield Mistake(
                FileKind.NO_SUCH_PART,
                at,
                message("{joint} names no part", joint=shown(joint)),
                by_hand(
                    message(
                        "write a part's name, a dot and its joint; the parts are {names}",
                        names=listed(parts),
                    )
                ),
            )
            continue
        its = [label for label, name in found.labels.items() if name == part]
        guess = nearest(joint, its)
        names = listed(label.removeprefix(f"{part}.") for label in its)
        yield Mistake(
            FileKind.NO_SUCH_JOINT,
            at,
            message(
                "part {part} has no joint {joint}",
                part=part,
                joint=shown(joint.removeprefix(f"{part}.")),
            ),
            Suggestion(
                (message("its joints are {names}", names=names),),
                (Way(_meant_joint(guess), (Put(_end(tie, at, position), guess),)),)
                if guess and "to_next" not in at
                else (),
            ),
        )


def _end(tie: PartsTie, at: Path, position: int) -> Path:
    """Where the file names the joint at `position` of the tie at `at`."""
    return (*at, "joints", position) if isinstance(tie, TieByBalloon) else (*at, position)


def _meant_joint(label: str) -> Message:
    return message("did you mean {guess}?", guess=label)


def _cannot_meet(
    found: _Joining, joints: Sequence[str], tie: PartsTie, at: Path
) -> Iterator[Mistake]:
    parts = [found.labels[joint] for joint in joints]
    if len(set(parts)) < len(parts):
        twice = next(part for part in parts if parts.count(part) > 1)
        yield Mistake(
            FileKind.SAME_PART_TWICE,
            at,
            message(
                "{joints} cannot meet: part {part} has two of them",
                joints=listed(joints),
                part=twice,
            ),
            by_hand(message("tie joints of different parts")),
        )
        return
    if isinstance(tie, TieByBalloon):
        key = tie.balloon
        links = [name for name, one in found.balloons.items() if one.is_strut]
        if key not in links:
            yield Mistake(
                FileKind.NO_SUCH_BALLOON,
                (*at, "balloon"),
                message("there is no link balloon {key}", key=shown(key)),
                one_of(key, links, mark("the link balloons are: {names}"), (*at, "balloon")),
            )
        return
    for joint in joints:
        if joint in found.tied:
            yield Mistake(
                FileKind.TIED_ALREADY,
                at,
                message("{joint} is tied to other joints already", joint=joint),
                by_hand(message("name all joints that meet at one place in one tie")),
            )
            return


def _check_whole(found: _Joining) -> Iterator[Mistake]:
    """Whether ties hold all parts together."""
    names = [part.name for part in found.parts]
    reached, waiting = {names[0]}, [names[0]]
    while waiting:
        for name in sorted(found.beside.get(waiting.pop(), ())):
            if name not in reached:
                reached.add(name)
                waiting.append(name)
    loose = [name for name in names if name not in reached]
    if loose:
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
            by_hand(message("add a tie, such as {right}", right=f"[{names[0]}.A1, {loose[0]}.A1]")),
        )


def _check_foot(found: _Joining, design: Design) -> Iterator[Mistake]:
    given = design.stand_on
    for i, label in enumerate([given] if isinstance(given, str) else given or []):
        if label not in found.labels:
            at: Path = ("stand_on",) if isinstance(given, str) else ("stand_on", i)
            guess = nearest(label, found.labels)
            yield Mistake(
                FileKind.NO_SUCH_JOINT,
                at,
                message("there is no joint {joint}", joint=shown(label)),
                change(_meant_joint(guess), Put(at, guess))
                if guess
                else by_hand(message("name it as its part, a dot and its label")),
            )
