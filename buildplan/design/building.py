"""From a design to its framework."""

from __future__ import annotations

from collections.abc import Mapping

from buildplan.design.model import Design
from buildplan.framework.model import Framework
from buildplan.patterns.build import Build
from buildplan.patterns.colour_order import ColouredPart, ColourOrder
from buildplan.patterns.colouring import coloured
from buildplan.patterns.extra_balloons import with_own_extras
from buildplan.patterns.palette import balloon_type
from buildplan.patterns.pattern import Making
from buildplan.patterns.registry import pattern_of

METRES_PER_UNIT: Mapping[str, float] = {"in": 0.0254, "cm": 0.01}


def build_framework(design: Design) -> Framework:
    """Build the framework of a design that has been read and checked, in its colours."""
    scale = METRES_PER_UNIT[design.units]
    balloons = {key: balloon_type(key, b, scale) for key, b in design.balloons.items()}

    def built(build: Build, colours: Mapping[ColouredPart, ColourOrder]) -> Framework:
        pattern, keys = pattern_of(build)
        plain: Framework = pattern.build(keys, Making(design.name, balloons, scale, built))
        return coloured(with_own_extras(plain, pattern, keys), build, colours)

    return built(design.build, design.colour_pattern)
