"""The figures that steps quote, for whoever builds to check against."""

from __future__ import annotations

from buildplan.framework.model import Framework
from buildplan.instructions.model import Figures, Span
from buildplan.sequence.directions import directions
from buildplan.shape.calibration import ring_checks
from buildplan.shape.model import Shape


def told_figures(framework: Framework, shape: Shape) -> Figures:
    """How wide each ring is, laid round on the floor, and which way the numbers of chains run."""
    rings = {
        ring.chain: Span(ring.outside_m, ring.low_m, ring.high_m) for ring in ring_checks(framework)
    }
    return Figures(rings=rings, ways=directions(framework, shape))
