"""The ballast that holds a piece, by weight and by what it fills."""

from __future__ import annotations

import math

from buildplan.shape.holding import ADVISED_KG, DRAUGHT_M_PER_S
from buildplan.shape.model import Examination

# Against people who brush past, even where the air is still: as much as a base that is advised.
LEAST_BALLAST_KG = ADVISED_KG
STILL_AIR_M_PER_S = 0.05
# Water, exact enough; dry sand poured loosely (from memory: 1.4 to 1.6).
WATER_KG_PER_L, SAND_KG_PER_L = 1.0, 1.5


def ballast_kg(found: Examination, gust_m_per_s: float = DRAUGHT_M_PER_S) -> float:
    """Ballast on the foot that holds a gust, at the safe end of the estimate, in all its places.

    Drag's moment goes with the square of the speed and just tips the piece, of mass m with what
    it is tied to, at the speed v0; so ballast at the same arm is m ((v / v0)^2 - 1), and more
    where its arm is less. None where something that does not fall over holds it, or a base that
    is heavy enough for a draught.
    """
    return ballast_each_kg(found, gust_m_per_s) * len(found.wind.ballast_at)


def ballast_each_kg(found: Examination, gust_m_per_s: float = DRAUGHT_M_PER_S) -> float:
    """The ballast at each of its places, in half kilograms begun."""
    wind, places = found.wind, len(found.wind.ballast_at)
    if not places:
        return 0.0
    tips_at = max(wind.tips_at.low, STILL_AIR_M_PER_S)
    needed = wind.standing_kg * ((gust_m_per_s / tips_at) ** 2 - 1) * wind.ballast_factor
    return math.ceil(round(2 * max(LEAST_BALLAST_KG, needed) / places, 6)) / 2


def water_l(mass_kg: float) -> int:
    """Whole litres of water that weigh so much."""
    return math.ceil(mass_kg / WATER_KG_PER_L)


def sand_l(mass_kg: float) -> int:
    """Whole litres of dry sand that weigh so much."""
    return math.ceil(round(mass_kg / SAND_KG_PER_L, 6))
