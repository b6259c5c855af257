"""Figures as a person would say them."""

from __future__ import annotations

import math
from collections.abc import Mapping

from buildplan.design.measures import KG_PER_LB, Units, speed_words
from buildplan.instructions.times import duration
from buildplan.language.messages import Message, message_in
from buildplan.language.voice import Voice
from buildplan.shape.model import Estimate
from buildplan.shape.wind import beaufort

# international avoirdupois pound, exact by the 1959 agreement
M3_PER_CUBIC_FOOT = 0.3048**3


FINISHES: Mapping[str, Message] = {
    "standard": message_in("finish of a balloon", "standard"),
    "pearl": message_in("finish of a balloon", "pearl"),
    "metallic": message_in("finish of a balloon", "metallic"),
    "clear": message_in("finish of a balloon", "clear"),
    "matt": message_in("finish of a balloon", "matt"),
}
"""What each finish is called."""


def quarter_hours(minutes: float) -> int:
    """Quarter hours begun, one at least."""
    # rounded first: 2 h of work added up from many operations are not 2 h and a hair
    return max(1, math.ceil(round(minutes, 6) / 15))


def minutes_words(minutes: float, voice: Voice) -> str:
    """Time as a person would say it, to the quarter hour above."""
    return duration(voice, quarter_hours(minutes) * 15)


def weight_words(mass_kg: float, voice: Voice) -> str:
    """An estimated weight in kilograms, and in the pounds that so many kilograms are: `0.9 kg
    (2.0 lb)`."""
    told = round(mass_kg, 1)
    kg, lb = voice.decimal(told, 1), voice.decimal(told / KG_PER_LB, 1)
    return voice.say("{kg} kg ({lb} lb)", kg=kg, lb=lb)


def estimate_words(estimate: Estimate, decimals: int, unit: str, voice: Voice) -> str:
    """An estimate with its range: `5.4 degrees (5.3 to 5.7)`."""
    value, low, high = (
        voice.decimal(figure, decimals) for figure in (estimate.value, estimate.low, estimate.high)
    )
    return voice.say("{value} {unit} ({low} to {high})", value=value, unit=unit, low=low, high=high)


def air_words(volume_m3: float, pump_minutes: float, units: Units, voice: Voice) -> str:
    """Air in a piece and how long a pump runs for it: `2.5 cubic metres, 5 min of pump`."""
    minutes = max(1, round(pump_minutes))
    if units == "in":
        volume = voice.decimal(volume_m3 / M3_PER_CUBIC_FOOT, 0)
        return voice.say(
            "{volume} cubic feet, {minutes} min of pump", volume=volume, minutes=minutes
        )
    volume = voice.decimal(volume_m3, 1)
    return voice.say("{volume} cubic metres, {minutes} min of pump", volume=volume, minutes=minutes)


def wind_words(speed_m_per_s: float, units: Units, voice: Voice) -> str:
    """The speed of wind, and its number on Beaufort's scale."""
    speed = speed_words(speed_m_per_s, units)
    return voice.say("{speed} (Beaufort {force})", speed=speed, force=beaufort(speed_m_per_s))
