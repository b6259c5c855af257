"""From a design to its framework."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.design.model import Design
from buildplan.framework.assembly import Spacer, build_assembly
from buildplan.framework.listed import build_listed
from buildplan.framework.model import BalloonType, Framework, Part
from buildplan.framework.tube import LAYOUTS, TubeCell, TubePlan, build_tube
from buildplan.patterns.arch import arch_tube
from buildplan.patterns.colouring import coloured
from buildplan.patterns.column import build_column
from buildplan.patterns.course import expand_course
from buildplan.patterns.keys import Assembly, ExtraBalloon, TieByBalloon, Tube
from buildplan.patterns.lettering import cells_high
from buildplan.patterns.letters import build_letters
from buildplan.patterns.solid import build_globe, build_solid
from buildplan.patterns.wall import build_wall
from buildplan.source.balloons import Balloon
from buildplan.source.lengths import tie_to_tie

METRES_PER_UNIT: Mapping[str, float] = {"in": 0.0254, "cm": 0.01}


def balloon_type(key: str, balloon: Balloon, metres_per_unit: float) -> BalloonType:
    """A balloon of the file in metres."""
    length, within = tie_to_tie(balloon)
    return BalloonType(
        key=key,
        kind=balloon.kind,
        nominal_m=balloon.nominal * metres_per_unit,
        gauge_m=balloon.inflate_to * metres_per_unit,
        tie_to_tie_m=length * metres_per_unit,
        tie_within=within,
        colour=balloon.colour.upper(),
        label=balloon.label,
        finish=balloon.finish,
    )


def _tube_plan(tube: Tube) -> TubePlan:
    letters = [lane.letter for lane in LAYOUTS[tube.chains]]
    by_letter: dict[str, str] = (
        dict(tube.long.items())
        if isinstance(tube.long, dict)
        else dict.fromkeys(letters, tube.long)
    )
    return TubePlan(
        closed=tube.closed,
        long={letter: [by_letter[letter]] for letter in letters},
        brace=tube.brace,
        single=tube.single,
        lock=tube.lock,
        extra=[
            (one.joints[0], one.joints[1], one.balloon)
            if isinstance(one, ExtraBalloon)
            else (one[0], one[1], tube.brace)
            for one in tube.extra
        ],
        course=[TubeCell(cell.name, cell.outer, cell.inner) for cell in expand_course(tube)],
    )


def build_framework(design: Design) -> Framework:
    """Build the framework of a design that has been read and checked, in its colours."""
    return coloured(_plain(design), design.build, design.colour_pattern)


def _plain(design: Design) -> Framework:
    """The framework with each part all of its one balloon."""
    scale = METRES_PER_UNIT[design.units]
    balloons = {key: balloon_type(key, b, scale) for key, b in design.balloons.items()}
    build, name = design.build, design.name
    tube = arch_tube(build.arch) if build.arch is not None else build.tube
    if tube is not None:
        return build_tube(name, balloons, _tube_plan(tube))
    if build.column is not None:
        return build_column(name, balloons, build.column)
    if build.wall is not None:
        return build_wall(name, balloons, build.wall)
    if build.solid is not None:
        return build_solid(name, balloons, build.solid)
    if build.globe is not None:
        return build_globe(name, balloons, build.globe)
    if build.letters is not None:
        link, _ = tie_to_tie(design.balloons[build.letters.long])
        return build_letters(name, balloons, build.letters, cells_high(build.letters, link))
    if build.assembly is not None:
        return _assembly(design, build.assembly, balloons)
    graph = build.graph
    assert graph is not None, "a checked design has exactly one pattern"
    listed = [(b.from_, b.to, b.balloon) for b in graph.balloons]
    return build_listed(name, balloons, graph.joints, listed, graph.lock)


def _assembly(design: Design, assembly: Assembly, balloons: Mapping[str, BalloonType]) -> Framework:
    """The framework of an assembly whose parts are all inline."""
    parts = []
    for part in assembly.parts:
        own = {"build": part.build, "colour_pattern": part.colour_pattern}
        stand_on = part.stand_on or ()
        parts.append(
            Part(
                name=part.name,
                framework=build_framework(design.model_copy(update=own)),
                mirrored=part.mirrored,
                stand_on=(stand_on,) if isinstance(stand_on, str) else tuple(stand_on),
            )
        )
    by_balloon = [tie for tie in assembly.ties if isinstance(tie, TieByBalloon)]
    return build_assembly(
        design.name,
        balloons,
        parts,
        [tie for tie in assembly.ties if not isinstance(tie, TieByBalloon)],
        [Spacer(tie.joints[0], tie.joints[1], tie.balloon) for tie in by_balloon],
        assembly.lock,
    )
