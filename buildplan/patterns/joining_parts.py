"""The parts of an assembly read: each from its own file or in place, with what is wrong."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from string import ascii_uppercase

from buildplan.language.messages import mark, message
from buildplan.patterns.assembly_keys import Assembly, AssemblyPart
from buildplan.patterns.build import built_as
from buildplan.patterns.parts_of_files import OnePart, from_file, plain
from buildplan.patterns.pattern import Around, Joined
from buildplan.source.balloons import Balloon
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, one_of, shown
from buildplan.source.suggestions import Put, Remedy, Suggestion, TakeOut, by_hand, within

AT: Path = ("build", "assembly")
MOST_JOINTS = 6_000

JoinInner = Callable[[Assembly, Around], Joined[Assembly]]


@dataclass(frozen=True)
class PartsRead:
    """The parts of an assembly, each once for each time that it is built and with its build in
    place; the joints of each by its own labels, the balloons of all, and what is wrong."""

    parts: tuple[AssemblyPart, ...]
    joints: tuple[Collection[str], ...]
    balloons: Mapping[str, Balloon]
    mistakes: tuple[Mistake, ...]

    @cached_property
    def labels(self) -> Mapping[str, str]:
        """The part of every joint, the joint called as in the whole."""
        return {
            f"{part.name}.{joint}": part.name
            for part, joints in zip(self.parts, self.joints, strict=True)
            for joint in joints
        }


def part_names(part: AssemblyPart) -> list[str]:
    """What a part is called each time that it is built."""
    if part.repeat == 1:
        return [part.name]
    return [f"{part.name}{number + 1}" for number in range(part.repeat)]


def read_parts(assembly: Assembly, around: Around, join: JoinInner) -> PartsRead:
    """The parts of an assembly; `join` joins those of one that is a part itself."""
    parts: list[AssemblyPart] = []
    joints: list[Collection[str]] = []
    balloons = around.balloons
    mistakes = [*_names_taken(assembly), *_carried(assembly)]
    for i, part in enumerate(assembly.parts):
        if sum(map(len, joints)) > MOST_JOINTS:
            break
        at: Path = (*AT, "parts", i)
        wrong = [*_itself(part, at)]
        if not wrong:
            inner = replace(around, balloons=balloons)
            one = (
                from_file(part, at, inner)
                if part.design is not None
                else _inline(part, at, inner, join)
            )
            balloons, wrong = one.balloons, [*one.mistakes]
            if one.part is not None:
                alone = {"repeat": 1, "to_next": []}
                known = around.joints(plain(one.part.build))
                for name in part_names(part):
                    parts.append(one.part.model_copy(update={**alone, "name": name}))
                    joints.append(known.labels if known is not None else ())
        mistakes += wrong
    read = PartsRead(tuple(parts), tuple(joints), balloons, tuple(mistakes))
    count = sum(map(len, joints))
    if count <= MOST_JOINTS:
        return read
    too_many = Mistake(
        FileKind.TOO_MANY_JOINTS,
        AT,
        # parts beyond are not looked at
        message("this assembly has {count} joints or more", count=count),
        by_hand(
            message("a piece of this pattern may have {count}; make it smaller", count=MOST_JOINTS)
        ),
    )
    return replace(read, mistakes=(*read.mistakes, too_many))


def _names_taken(assembly: Assembly) -> Iterator[Mistake]:
    taken: set[str] = set()
    for i, part in enumerate(assembly.parts):
        for name in part_names(part):
            if name in taken:
                yield Mistake(
                    FileKind.NAME_TAKEN,
                    (*AT, "parts", i, "name"),
                    message("there is a part {part} already", part=name),
                    _a_name_of_its_own(assembly, i),
                )
            taken.add(name)


def _a_name_of_its_own(assembly: Assembly, i: int) -> Suggestion:
    """Another name for a part: the first letter that is no part's."""
    words = (message("give each part a name of its own"),)
    taken = {name for part in assembly.parts for name in part_names(part)}
    free = next((letter for letter in ascii_uppercase if letter not in taken), None)
    if free is None or assembly.parts[i].repeat > 1:
        return Suggestion(words)
    change = Put((*AT, "parts", i, "name"), free)
    return Suggestion(words, (Remedy(message("write {right}", right=f"name: {free}"), (change,)),))


def _carried(assembly: Assembly) -> Iterator[Mistake]:
    """What is wrong with what parts are said to be set on or beside."""
    names = [name for part in assembly.parts for name in part_names(part)]
    for i, part in enumerate(assembly.parts):
        at: Path = (*AT, "parts", i)
        key, *others_given = part.places or ("on",)
        if others_given:
            yield _two_places(part, at)
        elif part.carried_by and part.repeat > 1:
            yield Mistake(
                FileKind.ONE_PLACE_FOR_SEVERAL,
                (*at, key),
                message("part {part} is built several times, and has one place", part=part.name),
                by_hand(message("list each by itself, with a place of its own")),
            )
        elif part.lower and key != "between":
            yield Mistake(
                FileKind.LOWER_ALONE,
                (*at, "lower"),
                message("part {part} is between no two others, and so not lower", part=part.name),
                Suggestion(
                    ways=(
                        Remedy(message("take {key} out", key="lower"), (TakeOut((*at, "lower")),)),
                    )
                ),
            )
        others = [name for name in names if name not in part_names(part)]
        for j, name in enumerate(part.carried_by):
            listed = isinstance(getattr(part, key), list)
            place: Path = (*at, key, j) if listed else (*at, key)
            if name not in others:
                yield Mistake(
                    FileKind.NO_SUCH_PART,
                    place,
                    message("{part} names no other part", part=shown(name)),
                    one_of(name, others, mark("the other parts are: {names}"), place),
                )
            elif name in part.carried_by[:j]:
                yield Mistake(
                    FileKind.LISTED_TWICE,
                    place,
                    message("part {part} is named twice here", part=name),
                    by_hand(message("name two different parts")),
                )


def _two_places(part: AssemblyPart, at: Path) -> Mistake:
    given = tuple(part.places)
    ways = []
    for kept in given:
        others = [one for one in given if one != kept]
        words = message("take {key} out", key=", ".join(others))
        ways.append(Remedy(words, tuple(TakeOut((*at, one)) for one in others)))
    return Mistake(
        FileKind.ON_OR_BETWEEN,
        at,
        message(
            "part {part} has both {one} and {other}: it can be set at one place alone",
            part=part.name,
            one=given[0],
            other=given[1],
        ),
        Suggestion(ways=tuple(ways)),
    )


def _itself(part: AssemblyPart, at: Path) -> Iterator[Mistake]:
    """What is wrong with a part by itself."""
    if (part.design is None) == (part.build is None):
        yield Mistake(
            FileKind.DESIGN_OR_BUILD,
            at,
            message("part {part} gives neither a design nor a build", part=part.name)
            if part.design is None
            else message("part {part} gives two of itself", part=part.name),
            by_hand(message("give either design: its file, or build: its pattern")),
        )
    elif part.repeat == 1 and part.to_next:
        yield Mistake(
            FileKind.NO_NEXT_PART,
            (*at, "to_next"),
            message(
                "there is one part {part}, and to_next ties it to the next of them",
                part=part.name,
            ),
            Suggestion(
                ways=(
                    Remedy(
                        message("add {right} or more", right="repeat: 2"),
                        (Put((*at, "repeat"), 2),),
                    ),
                    Remedy(message("take {key} out", key="to_next"), (TakeOut((*at, "to_next")),)),
                )
            ),
        )


# --- a part in place ----------------------------------------------------------------------


def _inline(part: AssemblyPart, at: Path, around: Around, join: JoinInner) -> OnePart:
    """A part whose pattern is given in place, checked as a design of its own would be."""
    given = {
        "balloons": {key: one.model_dump() for key, one in around.balloons.items()},
        "build": plain(part.build),
        "colour_pattern": {
            key: one if isinstance(one, list) else one.model_dump(exclude_unset=True)
            for key, one in part.colour_pattern.items()
        },
        "stand_on": part.stand_on,
    }
    mistakes = [one for one in around.check(given) if one.at[:1] != ("balloons",)]
    if mistakes:
        return OnePart(None, around.balloons, _of_part(at, mistakes))
    assert part.build is not None, "asked for before"
    assembly = part.build.keys_of(Assembly)
    if assembly is None:
        return OnePart(part, around.balloons, ())
    whole = join(assembly, replace(around, stand_on=None))
    if whole.mistakes:
        return OnePart(None, around.balloons, _of_part(at, whole.mistakes))
    build = built_as("assembly", whole.keys)
    return OnePart(part.model_copy(update={"build": build}), whole.balloons, ())


def _of_part(at: Path, mistakes: Iterable[Mistake]) -> tuple[Mistake, ...]:
    """Mistakes of a part, at their places in the whole file."""
    return tuple(
        Mistake(one.kind, (*at, *one.at), one.message, within(at, one.suggestion))
        for one in mistakes
    )
