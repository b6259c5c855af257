"""From a design to its framework."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.design.model import Design
from buildplan.framework.balloon_kinds import BALLOON_KINDS
from buildplan.framework.model import BalloonType, Framework
from buildplan.patterns.build import Build
from buildplan.patterns.colour_order import ColouredPart, ColourOrder
from buildplan.patterns.colouring import coloured
from buildplan.patterns.pattern import Making
from buildplan.patterns.registry import pattern_of
from buildplan.source.balloons import Balloon
from buildplan.source.lengths import tie_to_tie

METRES_PER_UNIT: Mapping[str, float] = {"in": 0.0254, "cm": 0.01}


def balloon_type(key: str, balloon: Balloon, metres_per_unit: float) -> BalloonType:
    """A balloon of the file in metres."""
    length, within = tie_to_tie(balloon)
    return BalloonType(
        key=key,
        kind=BALLOON_KINDS[balloon.kind],
        nominal_m=balloon.nominal * metres_per_unit,
        gauge_m=balloon.inflate_to * metres_per_unit,
        tie_to_tie_m=length * metres_per_unit,
        tie_within=within,
        colour=balloon.colour.upper(),
        label=balloon.label,
        finish=balloon.finish,
    )


def build_framework(design: Design) -> Framework:
    """Build the framework of a design that has been read and checked, in its colours."""
    scale = METRES_PER_UNIT[design.units]
    balloons = {key: balloon_type(key, b, scale) for key, b in design.balloons.items()}

    def built(build: Build, colours: Mapping[ColouredPart, ColourOrder]) -> Framework:
        pattern, keys = pattern_of(build)
        plain: Framework = pattern.build(keys, Making(design.name, balloons, scale, built))
        return coloured(plain, build, colours)

    return built(design.build, design.colour_pattern)
