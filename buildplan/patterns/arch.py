"""An arch is a tube: the course that its legs and its span ask for."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field, ValidationError

from buildplan.framework.model import Framework
from buildplan.language.messages import mark
from buildplan.patterns import growing
from buildplan.patterns.colour_runs import ColourRun, tube_runs
from buildplan.patterns.extra_keys import Extras, extras_field
from buildplan.patterns.pattern import (
    EXTRA,
    LOCK,
    Colouring,
    Given,
    Joints,
    JointsOf,
    Making,
    Pattern,
    link,
)
from buildplan.patterns.tube import (
    A_BRACE,
    A_LONG_CHAIN,
    TUBE_COLOURS_WORDS,
    TUBE_PARTS,
    joints_of_tube,
    moved_feet,
    tube_framework,
)
from buildplan.patterns.tube_keys import CourseItem, Repeat, Tube
from buildplan.source.suggestions import Put
from buildplan.source.values import FileModel, Key


class Arch(FileModel):
    """An open tube of four chains on two feet."""

    kind: Literal["square", "gabled"] = Field(
        description=mark("square (two sharp corners) or gabled (three bends of about 60 degrees)")
    )
    leg: Annotated[int, Field(ge=1, le=200)] = Field(
        description=mark("how many balloons high each leg is")
    )
    span: Annotated[int, Field(ge=1, le=200)] = Field(
        description=mark("how many balloons the inner chains take from leg to leg")
    )
    long: Key = Field(description=mark("the link balloon of the long chains"))
    brace: Key = Field(description=mark("the link balloon of the braces across the chains"))
    lock: Key = Field(description=mark("the round balloon of the locks"))
    extra: Extras = extras_field()


def arch_tube(arch: Arch) -> Tube:
    """The tube of an arch. A gable divides the span between its two slopes."""
    leg: CourseItem = Repeat(repeat=arch.leg, cells=["straight"])
    course: list[CourseItem]
    if arch.kind == "square":
        course = [leg, "tip", Repeat(repeat=arch.span, cells=["straight"]), "tip", leg]
    else:
        slope: CourseItem = Repeat(repeat=arch.span, cells=["straight"])
        course = [leg, "fan", slope, "fan", slope, "fan", leg]
    return Tube(
        closed=False,
        chains=4,
        long=arch.long,
        brace=arch.brace,
        single=arch.brace,
        lock=arch.lock,
        course=course,
    )


def _as_tube(given: Given) -> Given | None:
    """The plain data of the tube that an arch is; None of one that is not right."""
    try:
        return arch_tube(Arch.model_validate(given)).model_dump()
    except ValidationError:
        return None


def _joints(given: Given, of_part: JointsOf) -> Joints | None:
    tube = _as_tube(given)
    return None if tube is None else joints_of_tube(tube, of_part)


def _built(arch: Arch, making: Making) -> Framework:
    return tube_framework(arch_tube(arch), making)


def _coloured(framework: Framework, arch: Arch, part: str) -> Iterator[ColourRun]:
    yield from tube_runs(framework, part)


def _more_cells(data: Given, factor: float) -> Iterator[Put]:
    yield from growing.counts(data, ("build", "arch"), {"leg": 1, "span": 1}, factor)
    yield from moved_feet(data, _as_tube(data["build"]["arch"]), factor)


PATTERN = Pattern(
    name="arch",
    about=mark("an open tube on two feet"),
    keys=Arch,
    uses=(link("long", A_LONG_CHAIN), link("brace", A_BRACE), LOCK, EXTRA),
    joints=_joints,
    build=_built,
    colours=Colouring(TUBE_PARTS, ("long",), _coloured, TUBE_COLOURS_WORDS),
    more_cells=_more_cells,
    most_joints=0,
    extra_as="brace",
)
