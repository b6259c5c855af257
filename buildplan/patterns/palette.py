"""The balloons of a design file as a framework has them, in metres."""

from __future__ import annotations

from buildplan.framework.balloon_kinds import BALLOON_KINDS
from buildplan.framework.model import BalloonType
from buildplan.source.balloons import Balloon
from buildplan.source.lengths import tie_to_tie


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
