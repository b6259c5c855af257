"""An arch is a tube: the course that its legs and its span ask for."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.patterns.keys import Arch, CourseItem, Repeat, Tube


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


def as_tube(build: Mapping[str, object]) -> Mapping[str, object]:
    """The plain data of a file's `build`, an arch that is right written as the tube it is."""
    try:
        arch = Arch.model_validate(build.get("arch"))
    except ValueError:
        return build
    return {"tube": arch_tube(arch).model_dump()}
