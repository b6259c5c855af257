"""The ballast that holds a piece, by weight and by what it fills."""

from __future__ import annotations

import math
from collections.abc import Mapping

from buildplan.shape.constants import Constant
from buildplan.shape.model import Examination

STILL_AIR_M_PER_S = 0.05
WATER_KG_PER_L = 1.0  # exact enough


def ballast_kg(found: Examination, gust_m_per_s: float | None = None) -> float:
    """Ballast on the foot that holds a gust, at the safe end of the estimate, in all its places;
    where none is said a draught indoors. No less than what holds against people who brush past,
    even where the air is still.

    Drag's moment goes with the square of the speed and just tips the piece, of mass m with what
    it is tied to, at the speed v0; so ballast at the same arm is m ((v / v0)^2 - 1), and more
    where its arm is less. None where something that does not fall over holds it, or a base that
    is heavy enough for a draught.
    """
    return ballast_each_kg(found, gust_m_per_s) * len(found.wind.ballast_at)


def ballast_each_kg(found: Examination, gust_m_per_s: float | None = None) -> float:
    """The ballast at each of its places, in half kilograms begun."""
    wind, places = found.wind, len(found.wind.ballast_at)
    if not places:
        return 0.0
    tips_at = max(wind.tips_at.low, STILL_AIR_M_PER_S)
    gust = wind.draught_m_per_s if gust_m_per_s is None else gust_m_per_s
    needed = wind.standing_kg * ((gust / tips_at) ** 2 - 1) * wind.ballast_factor
    return math.ceil(round(2 * max(wind.least_ballast_kg, needed) / places, 6)) / 2


def water_l(mass_kg: float) -> int:
    """Whole litres of water that weigh so much."""
    return math.ceil(mass_kg / WATER_KG_PER_L)


def sand_l(mass_kg: float, constants: Mapping[str, Constant]) -> int:
    """Whole litres of dry sand that weigh so much."""
    return math.ceil(round(mass_kg / constants["dry_sand"].value, 6))
