"""Figures as a person would say them."""

from __future__ import annotations

# international avoirdupois pound, exact by the 1959 agreement
KG_PER_LB = 0.45359237


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
