"""Bulk, ballast, speeds and balloons in a crew's words."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence

from buildplan.design.measures import Units, load_words
from buildplan.evaluation.ballast import sand_l, water_l
from buildplan.language.voice import Voice
from buildplan.shape.constants import Constant
from buildplan.source.runs import runs_words

LITRES_PER_CUBIC_FOOT = 28.316846592


def bulk_words(volume_m3: float, units: Units, voice: Voice) -> str:
    """Bulk in the reader's units, rounded up: `12 cu ft` or `340 L`."""
    return all_bulk_words([volume_m3], units, voice)


def all_bulk_words(volumes_m3: Iterable[float], units: Units, voice: Voice) -> str:
    """Bulk of several things: the sum of what is told of each, so that a list adds up."""
    told = sum(_rounded_up(volume_m3, units) for volume_m3 in volumes_m3)
    if units == "in":
        return voice.say("{volume} cu ft", volume=told)
    return voice.say("{volume} L", volume=told)


def _rounded_up(volume_m3: float, units: Units) -> int:
    """Whole cubic feet, or tens of litres."""
    litres = volume_m3 * 1000
    if units == "in":
        return math.ceil(litres / LITRES_PER_CUBIC_FOOT)
    return math.ceil(litres / 10) * 10


def joints_words(labels: Sequence[str], voice: Voice) -> str:
    """Joints in few words: `A24 to A32, D24 and D25`."""
    return voice.tell(runs_words(labels))


def mass_words(mass_kg: float, voice: Voice, places: int = 1) -> str:
    """Ballast, of equal loads at several places all of them together."""
    return voice.tell(load_words(mass_kg, places))


def filled_words(mass_kg: float, constants: Mapping[str, Constant], voice: Voice) -> str:
    """Ballast by what it fills: `12 L of water, or 8 L of dry sand`."""
    return voice.say(
        "{water} L of water or {sand} L of dry sand",
        water=water_l(mass_kg),
        sand=sand_l(mass_kg, constants),
    )
