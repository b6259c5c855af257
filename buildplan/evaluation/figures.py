"""Figures as a person would say them."""

from __future__ import annotations

import math

from buildplan.design.measures import Units, length_words
from buildplan.framework.balloon_kinds import BalloonKind
from buildplan.framework.model import BalloonType
from buildplan.language.grammar import decimal
from buildplan.language.speaking import say, say_in, spoken_voice
from buildplan.shape.model import Estimate
from buildplan.shape.wind import beaufort

# international avoirdupois pound, exact by the 1959 agreement
KG_PER_LB = 0.45359237
METRES_PER_MILE = 1609.344
M3_PER_CUBIC_FOOT = 0.3048**3


def kind_word(kind: BalloonKind) -> str:
    """What a kind of balloon is called: `link`, `round`."""
    return spoken_voice().tell(kind.words.called)


def finish_word(finish: str) -> str:
    """What a finish is called."""
    words = {
        "standard": say_in("finish of a balloon", "standard"),
        "pearl": say_in("finish of a balloon", "pearl"),
        "metallic": say_in("finish of a balloon", "metallic"),
        "clear": say_in("finish of a balloon", "clear"),
        "matt": say_in("finish of a balloon", "matt"),
    }
    return words[finish]


def nominal_words(balloon: BalloonType, units: Units) -> str:
    """A balloon's nominal size and kind: `12 in link`."""
    return say(balloon.kind.words.sized, size=length_words(balloon.nominal_m, units))


def quarter_hours(minutes: float) -> int:
    """Quarter hours begun, one at least."""
    # rounded first: 2 h of work added up from many operations are not 2 h and a hair
    return max(1, math.ceil(round(minutes, 6) / 15))


def minutes_words(minutes: float) -> str:
    """Time as a person would say it, to the quarter hour above."""
    hours, rest = divmod(quarter_hours(minutes), 4)
    if not hours:
        return say("{minutes} min", minutes=rest * 15)
    if not rest:
        return say("{hours} h", hours=hours)
    return say("{hours} h {minutes} min", hours=hours, minutes=rest * 15)


def weight_words(mass_kg: float) -> str:
    """Weight in kilograms and pounds."""
    return say("{kg} kg ({lb} lb)", kg=decimal(mass_kg, 1), lb=decimal(mass_kg / KG_PER_LB, 1))


def estimate_words(estimate: Estimate, decimals: int, unit: str) -> str:
    """An estimate with its range: `5.4 degrees (5.3 to 5.7)`."""
    value, low, high = (
        decimal(figure, decimals) for figure in (estimate.value, estimate.low, estimate.high)
    )
    return say("{value} {unit} ({low} to {high})", value=value, unit=unit, low=low, high=high)


def air_words(volume_m3: float, pump_minutes: float, units: Units) -> str:
    """Air in a piece and how long a pump runs for it: `2.5 cubic metres, 5 min of pump`."""
    minutes = max(1, round(pump_minutes))
    if units == "in":
        volume = decimal(volume_m3 / M3_PER_CUBIC_FOOT, 0)
        return say("{volume} cubic feet, {minutes} min of pump", volume=volume, minutes=minutes)
    volume = decimal(volume_m3, 1)
    return say("{volume} cubic metres, {minutes} min of pump", volume=volume, minutes=minutes)


def speed_words(speed_m_per_s: float, units: Units) -> str:
    """The speed of wind: miles or kilometres an hour, and its number on Beaufort's scale."""
    if units == "in":
        speed = say("{speed} mph", speed=round(speed_m_per_s / METRES_PER_MILE * 3600))
    else:
        speed = say("{speed} km/h", speed=round(speed_m_per_s * 3.6))
    return say("{speed} (Beaufort {force})", speed=speed, force=beaufort(speed_m_per_s))
