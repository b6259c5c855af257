"""Figures as a person would say them."""

from __future__ import annotations

from buildplan.design.measures import Units
from buildplan.shape.model import Estimate

# international avoirdupois pound, exact by the 1959 agreement
KG_PER_LB = 0.45359237
METRES_PER_MILE = 1609.344
# Least mean speed of Beaufort 1, 2, ... at 10 m over flat land, as weather services print
# the scale. A gust is named by it only to be recognised.
BEAUFORT_M_PER_S = (0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7)


def minutes_words(minutes: float) -> str:
    """Time as a person would say it, to the quarter hour above."""
    quarters = max(1, -(-int(minutes) // 15))
    hours, rest = divmod(quarters, 4)
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
