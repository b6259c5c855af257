"""A part of an assembly that is a design file of its own: read, and held against the whole."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from buildplan.language.messages import message
from buildplan.patterns.assembly_keys import AssemblyPart
from buildplan.patterns.build import Build
from buildplan.patterns.pattern import Around, PartFile
from buildplan.source.balloons import Balloon
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, key_in_words, shown
from buildplan.source.problems import DesignProblemsError, UnreadableDesignError, as_message
from buildplan.source.suggestions import by_hand


@dataclass(frozen=True)
class OnePart:
    """A part with its build in place (None where it cannot be read), and the balloons so far."""

    part: AssemblyPart | None
    balloons: Mapping[str, Balloon]
    mistakes: tuple[Mistake, ...]


def plain(build: Build | None) -> Mapping[str, object]:
    """The build of a part as plain data, as a file gives it."""
    assert build is not None, "a part that was read has a build"
    return build.model_dump(by_alias=True, exclude_none=True)


def from_file(part: AssemblyPart, at: Path, around: Around) -> OnePart:
    """A part from its design file, its balloons brought into the palette."""
    at = (*at, "design")
    try:
        own = around.read(str(part.design))
    except UnreadableDesignError as error:
        if error.problem.kind is FileKind.PARTS_TOO_DEEP:
            raise  # it is told once, of the outermost
        problem = as_message(error.problem, error.file)
        right = message("name a design file, as seen from this one's folder")
        mistake = Mistake(FileKind.PART_UNREADABLE, at, problem, by_hand(right))
        return OnePart(None, around.balloons, (mistake,))
    except DesignProblemsError as error:
        return OnePart(None, around.balloons, (_has_problems(part, at, error),))
    update = {
        "build": own.build,
        "colour_pattern": own.colour_pattern,
        "stand_on": part.stand_on if part.stand_on is not None else own.stand_on,
        "design": None,
    }
    whole = part.model_copy(update=update)
    mistakes = (*_unlike(part, own, at, around), *_check_stand_on(whole, at, around))
    return OnePart(whole, {**own.balloons, **around.balloons}, mistakes)


def _has_problems(part: AssemblyPart, at: Path, error: DesignProblemsError) -> Mistake:
    problem = as_message(error.problems[0], error.file)
    if len(error.problems) > 1:
        problem = message(
            "part {part} has {count} mistakes, first {problem}",
            part=part.name,
            count=len(error.problems),
            problem=problem,
        )
    first = by_hand(message("mend that file first"))
    return Mistake(FileKind.PART_HAS_PROBLEMS, at, problem, first)


def _unlike(part: AssemblyPart, own: PartFile, at: Path, around: Around) -> Iterator[Mistake]:
    """What the file of a part has otherwise than the whole."""
    if own.units != around.units:
        yield Mistake(
            FileKind.OTHER_UNITS,
            at,
            message(
                "part {part} is measured in {units}, and this design in {others}",
                part=part.name,
                units=own.units,
                others=around.units,
            ),
            by_hand(message("use the same unit in both files")),
        )
    for key, balloon in own.balloons.items():
        ours = around.balloons.get(key, balloon)
        if ours.kind != balloon.kind:
            yield Mistake(
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


def _check_stand_on(part: AssemblyPart, at: Path, around: Around) -> Iterator[Mistake]:
    """Joints that the assembly gives a part of another file to stand on."""
    joints, given = around.joints(plain(part.build)), part.stand_on
    for label in [given] if isinstance(given, str) else given or []:
        if joints is not None and label not in joints.labels:
            yield Mistake(
                FileKind.NO_SUCH_JOINT,
                (*at[:-1], "stand_on"),
                message("part {part} has no joint {joint}", part=part.name, joint=shown(label)),
                by_hand(message("its joints are {names}", names=joints.words)),
            )
