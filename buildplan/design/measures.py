"""Lengths as people write them: inches with fractions, centimetres to a half."""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction
from math import ceil
from typing import Literal

from buildplan.language.messages import Decimal, Message, message
from buildplan.language.told import ToldError
from buildplan.language.voice import ENGLISH, Voice

Units = Literal["in", "cm"]

METRES_PER_INCH = 0.0254
KG_PER_LB = 0.45359237
SMALL_KG = 5.0  # a pound more or less is felt in what weighs less
NOT_FELT = 0.01  # of a load
INCHES_PER_FOOT = 12
EXACTLY = 4e-3  # quarters of an inch that a gauge may be off by for each inch, and be called whole


def length_words(length_m: float, units: Units) -> Message:
    """A gauge or another short length: `3 1/2 in` to the nearest quarter, or `20.5 cm` to the
    nearest half. Nothing is rounded down to no length at all."""
    if units == "cm":
        halves = max(1, round(length_m * 100 * 2))
        return message("{length} cm", length=Decimal(halves / 2, halves % 2))
    quarters = max(1, round(length_m / METRES_PER_INCH * 4))
    whole, rest = divmod(Fraction(quarters, 4), 1)
    parts = [str(whole)] if whole or not rest else []
    return message("{length} in", length=" ".join([*parts, *([str(rest)] if rest else [])]))


def gauged_words(gauge_m: float, units: Units) -> Message:
    """The size that a balloon is brought to, as steps and the cut-out of its gauge say it:
    `3 1/2 in` where it is whole quarters, else `3.4 in`, or `20.3 cm` to the millimetre."""
    if units == "cm":
        millimetres = max(1, round(gauge_m * 1000))
        return message("{length} cm", length=Decimal(millimetres / 10, int(millimetres % 10 > 0)))
    inches = gauge_m / METRES_PER_INCH
    if abs(inches * 4 - round(inches * 4)) <= EXACTLY * inches:
        return length_words(gauge_m, units)
    hundredths = max(1, round(inches * 100))
    places = next(n for n in range(3) if not hundredths % 10 ** (2 - n))
    return message("{length} in", length=Decimal(hundredths / 100, places))


def units_read(voice: Voice, of_file: Units) -> Units:
    """The units of pages in a language: metric in all but English, which is read in both and keeps
    to those of the file (Unicode CLDR, measurementData: US, and GB but for heights)."""
    return of_file if voice.language == ENGLISH else "cm"


def nominal_number(nominal_m: float, units: Units) -> float:
    """The size that a balloon is sold by, in inches, or in whole centimetres as the trade rounds it
    (common practice, no source)."""
    return nominal_m / METRES_PER_INCH if units == "in" else max(1, round(nominal_m * 100))


def nominal_words(nominal_m: float, units: Units) -> Message:
    """The size that a balloon is sold by: `12 in`, or `30 cm`; one that is no quarter of an inch is
    sold by whole inches too, as 30 cm are (common practice, no source)."""
    if units == "in":
        inches = nominal_m / METRES_PER_INCH
        if abs(inches * 4 - round(inches * 4)) > EXACTLY * inches:
            return message("{length} in", length=max(1, round(inches)))
        return length_words(nominal_m, units)
    return message("{length} cm", length=Decimal(nominal_number(nominal_m, units), 0))


def size_words(length_m: float, units: Units) -> Message:
    """The size of a piece: `6 ft 4 in` to the nearest inch, or `1.93 m` to the centimetre."""
    if units == "cm":
        return message("{length} m", length=Decimal(length_m, 2))
    feet, inches = divmod(round(length_m / METRES_PER_INCH), INCHES_PER_FOOT)
    if not feet:
        return message("{length} in", length=inches)
    if not inches:
        return message("{feet} ft", feet=feet)
    return message("{feet} ft {inches} in", feet=feet, inches=inches)


def side_words(length_m: float, units: Units) -> Message:
    """A side of something small, as it is cut: `24 in` or `60 cm`."""
    if units == "cm":
        return message("{length} cm", length=Decimal(length_m * 100, 0))
    return message("{length} in", length=Decimal(length_m / METRES_PER_INCH, 0))


def load_words(mass_kg: float, places: int = 1) -> Message:
    """Ballast or a base, in kilograms and whole pounds: `13.5 kg (30 lb)`, a small one in tenths
    of one: `1.5 kg (3.3 lb)`; of equal loads at several places all of them together, so that the
    pounds of each add up to it."""
    lb = load_lb(mass_kg, places)
    return message("{kg} kg ({lb} lb)", kg=_shortest(mass_kg), lb=_shortest(lb))


def load_lb(mass_kg: float, places: int = 1) -> float:
    """The pounds that are told of equal loads at several places, all of them together: of each the
    nearest, as whoever reckons it again finds them, but up where whole ones would be too little by
    more than a hundredth."""
    each = mass_kg / places / KG_PER_LB
    if mass_kg / places < SMALL_KG:
        return places * round(10 * each) / 10
    return places * max(round(each), ceil(each * (1 - NOT_FELT)))


def _shortest(value: float) -> Decimal:
    return Decimal(value, 0 if value == round(value) else 1)


# International mile and hour, exact.
METRES_PER_SECOND: Mapping[str, float] = {"km/h": 1 / 3.6, "mph": 1609.344 / 3600, "m/s": 1.0}
# above the strongest gust that was ever measured, 113.2 m/s (WMO, Barrow Island 1996; from memory)
FASTEST_M_PER_S = 120.0


def parse_speed(text: str) -> float:
    """Metres per second of a speed such as `25km/h`, `15 mph` or `7m/s`.

    Raises ToldError for anything else.
    """
    found = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*(km/h|mph|m/s)\s*", text)
    speed = 0.0 if found is None else float(found[1]) * METRES_PER_SECOND[found[2]]
    if not 0 < speed <= FASTEST_M_PER_S:
        raise ToldError(
            message("{text} is not a speed; write it like 25km/h, 15mph or 7m/s", text=repr(text))
        )
    return speed


def speed_words(speed_m_per_s: float, units: Units) -> Message:
    """A speed in the reader's units: `4 mph` or `7 km/h`; one that is hardly any `under 1 mph`."""
    unit = "mph" if units == "in" else "km/h"
    speed = round(speed_m_per_s / METRES_PER_SECOND[unit])
    said = (
        message("{speed} mph", speed=max(speed, 1))
        if unit == "mph"
        else message("{speed} km/h", speed=max(speed, 1))
    )
    return said if speed else message("under {speed}", speed=said)
