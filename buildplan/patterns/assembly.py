"""The assembly: parts set on or beside one another and tied at named joints."""

from __future__ import annotations

from buildplan.framework.assembly import Spacer, build_assembly
from buildplan.framework.model import Framework, Part
from buildplan.language.messages import mark, message
from buildplan.patterns.assembly_keys import Assembly, TieByBalloon
from buildplan.patterns.joining import join_parts
from buildplan.patterns.pattern import (
    LOCK,
    AllOf,
    Given,
    Joints,
    JointsOf,
    Making,
    Pattern,
    Uncoloured,
)
from buildplan.source.partial_validation import list_in, mapping_in


def _joints(given: Given, of_part: JointsOf) -> Joints | None:
    """Those of its parts, if all are inline, each once."""
    found: list[str] = []
    for part in map(mapping_in, list_in(given.get("parts"))):
        known = of_part(mapping_in(part.get("build")))
        if known is None or part.get("repeat", 1) != 1:
            return None
        found += [f"{part.get('name')}.{joint}" for joint in known.labels]
    return Joints(found, message("those of its parts"))


def _built(assembly: Assembly, making: Making) -> Framework:
    """The framework of an assembly whose parts are all inline."""
    parts = []
    for part in assembly.parts:
        assert part.build is not None, "the parts of a design that was read are inline"
        stand_on = part.stand_on or ()
        parts.append(
            Part(
                name=part.name,
                framework=making.part(part.build, part.colour_pattern),
                mirrored=part.mirrored,
                stand_on=(stand_on,) if isinstance(stand_on, str) else tuple(stand_on),
                on=part.places.get("on", ()),
            )
        )
    by_balloon = [tie for tie in assembly.ties if isinstance(tie, TieByBalloon)]
    return build_assembly(
        making.name,
        making.balloons,
        parts,
        [tie for tie in assembly.ties if not isinstance(tie, TieByBalloon)],
        [Spacer(tie.joints[0], tie.joints[1], tie.balloon) for tie in by_balloon],
        assembly.lock,
    )


PATTERN = Pattern(
    name="assembly",
    about=mark("parts tied to one another"),
    keys=Assembly,
    uses=(LOCK,),
    joints=_joints,
    build=_built,
    colours=Uncoloured(
        mark("an assembly has no long chains to lay a colour pattern along"),
        mark("give its parts balloons of other colours instead"),
    ),
    more_cells=AllOf(mark("the parts of an assembly would no longer meet where they are tied")),
    most_joints=0,
    join=join_parts,
)
