"""Figures as a person would say them."""

from __future__ import annotations

import math

from buildplan.design.measures import Units
from buildplan.shape.model import Estimate

# international avoirdupois pound, exact by the 1959 agreement
KG_PER_LB = 0.45359237
METRES_PER_MILE = 1609.344
M3_PER_CUBIC_FOOT = 0.3048**3
# Least mean speed of Beaufort 1, 2, ... at 10 m over flat land, as weather services print
# the scale. A gust is named by it only to be recognised.
BEAUFORT_M_PER_S = (0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7)


def quarter_hours(minutes: float) -> int:
    """Quarter hours begun, one at least."""
    # rounded first: 2 h of work added up from many operations are not 2 h and a hair
    return max(1, math.ceil(round(minutes, 6) / 15))


def minutes_words(minutes: float) -> str:
    """Time as a person would say it, to the quarter hour above."""
    hours, rest = divmod(quarter_hours(minutes), 4)
    if not hours:
        return f"{rest * 15} min"
    return f"{hours} h" if not rest else f"{hours} h {rest * 15} min"


def weight_words(mass_kg: float) -> str:
    """Weight in kilograms and pounds."""
    return f"{mass_kg:.1f} kg ({mass_kg / KG_PER_LB:.1f} lb)"


def estimate_words(estimate: Estimate, decimals: int, unit: str) -> str:
    """An estimate with its range: `5.4 degrees (5.3 to 5.7)`."""
    value, low, high = (
        f"{figure:.{decimals}f}" for figure in (estimate.value, estimate.low, estimate.high)
    )
    return f"{value} {unit} ({low} to {high})"


def air_words(volume_m3: float, pump_minutes: float, units: Units) -> str:
    """Air in a piece and how long a pump runs for it: `2.5 cubic metres, 5 min of pump`."""
    volume = f"{volume_m3:.1f} cubic metres"
    if units == "in":
        volume = f"{volume_m3 / M3_PER_CUBIC_FOOT:.0f} cubic feet"
    return f"{volume}, {max(1, round(pump_minutes))} min of pump"


def speed_words(speed_m_per_s: float, units: Units) -> str:
    """The speed of wind: miles or kilometres an hour, and its number on Beaufort's scale."""
    if units == "in":
        speed = f"{speed_m_per_s / METRES_PER_MILE * 3600:.0f} mph"
    else:
        speed = f"{speed_m_per_s * 3.6:.0f} km/h"
    force = sum(speed_m_per_s >= least for least in BEAUFORT_M_PER_S)
    return f"{speed} (Beaufort {force})"


def joined(labels: tuple[str, ...]) -> str:
    """Labels as a list in words: `A1, B1 and C1`."""
    if len(labels) < 2:
        return "".join(labels)
    return f"{', '.join(labels[:-1])} and {labels[-1]}"
