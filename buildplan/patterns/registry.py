"""The registry of patterns: every one there is, in the order in which they are told."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, TypeVar

from pydantic import Field
from pydantic.fields import FieldInfo

from buildplan.language.messages import Value, message
from buildplan.patterns import (
    arch,
    assembly,
    column,
    figure,
    globe,
    graph,
    letters,
    solid,
    tube,
    wall,
)
from buildplan.patterns.assembly_keys import Assembly, AssemblyPart
from buildplan.patterns.build import Build as Build
from buildplan.patterns.colour_order import COLOURED_PARTS
from buildplan.patterns.extra_balloons import check_own_extras
from buildplan.patterns.pattern import Given, Joints, Pattern, Whole
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, listed
from buildplan.source.partial_validation import mapping_in
from buildplan.source.suggestions import by_hand
from buildplan.source.values import FileModel

Form = TypeVar("Form", bound=FileModel)

MODULES = (tube, column, wall, solid, globe, arch, graph, letters, figure, assembly)
PATTERNS: dict[str, Pattern[Any]] = {}
# what has a build in it, and is read anew when patterns come or go
_holders: list[type[FileModel]] = [Build, AssemblyPart, Assembly]


def register(*patterns: Pattern[Any]) -> None:
    """Let files name these patterns. Raises ValueError for a name that is taken."""
    for pattern in patterns:
        if pattern.name in PATTERNS:
            raise ValueError(f"there is a pattern {pattern.name} already")
        PATTERNS[pattern.name] = pattern
        keys: Any = pattern.keys | None
        about = FieldInfo.from_annotated_attribute(keys, Field(None, description=pattern.about))
        Build.__pydantic_fields__[pattern.name] = about
    _rebuild()


def holding(model: type[Form]) -> type[Form]:
    """A class decorator: the model has a build in it."""
    _holders.append(model)
    return model


def _rebuild() -> None:
    """Let what has a build read the patterns that there are now: each is part of the others."""
    COLOURED_PARTS.clear()
    for pattern in PATTERNS.values():
        COLOURED_PARTS.update(dict.fromkeys(pattern.coloured_parts))
    made = [model for model in _holders if model.__pydantic_complete__]
    for model in made:
        for part in ("core_schema", "validator", "serializer"):
            if f"__pydantic_{part}__" in model.__dict__:
                delattr(model, f"__pydantic_{part}__")
    for model in made:  # the others will be when they are first needed
        model.model_rebuild(force=True)


register(*(module.PATTERN for module in MODULES))


def pattern_of(build: Build) -> tuple[Pattern[Any], Any]:
    """The pattern of a build that has been checked, and its keys."""
    name, keys = build.given
    return PATTERNS[name], keys


def patterns_in(build: Given) -> Iterator[tuple[Pattern[Any], Given]]:
    """The patterns that plain data of a file's `build` gives, and what it gives for each."""
    for name, pattern in PATTERNS.items():
        if build.get(name) is not None:
            yield pattern, mapping_in(build[name])


def joints_of(build: Given) -> Joints | None:
    """The joints of a piece, from plain data of a file's `build`; None if they cannot be told."""
    for pattern, given in patterns_in(build):
        return pattern.joints(given, joints_of)
    return None


def check_patterns(build: Given, whole: Whole) -> Iterator[Mistake]:
    """Every disagreement within the patterns of a file's `build`, which is plain data."""
    for pattern, given in patterns_in(build):
        joints = pattern.joints(given, joints_of) if pattern.most_joints else None
        if joints is not None and len(joints.labels) > pattern.most_joints:
            yield Mistake(
                FileKind.TOO_MANY_JOINTS,
                ("build", pattern.name),
                message(
                    "this {pattern} has {count} joints",
                    pattern=pattern.name,
                    count=len(joints.labels),
                ),
                by_hand(
                    message(
                        "a piece of this pattern may have {count}; make it smaller",
                        count=pattern.most_joints,
                    )
                ),
            )
        mistakes = list(pattern.check(given, whole))
        yield from mistakes or check_own_extras(pattern, given, whole)


def pattern_words() -> Value:
    """The patterns in words."""
    return listed(PATTERNS, "or")
