"""Bulk, ballast, speeds and balloons in a crew's words."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from buildplan.booklet.common.book import Book
from buildplan.design.measures import Units
from buildplan.evaluation.ballast import DRAUGHT_M_PER_S, ballast_kg, sand_l, water_l
from buildplan.evaluation.figures import KG_PER_LB, speed_words
from buildplan.language.voice import Voice

LITRES_PER_CUBIC_FOOT = 28.316846592
MOST_TOLD = 12  # joints and runs of joints that are named one by one


def bulk_words(volume_m3: float, units: Units, voice: Voice) -> str:
    """Bulk in the reader's units, rounded up: `12 cu ft` or `340 L`."""
    litres = volume_m3 * 1000
    if units == "in":
        return voice.say("{volume} cu ft", volume=math.ceil(litres / LITRES_PER_CUBIC_FOOT))
    return voice.say("{volume} L", volume=math.ceil(litres / 10) * 10)


def joints_words(labels: Sequence[str], voice: Voice) -> str:
    """Joints in few words: `A24 to A32, D24 and D25`; three or more in a row are joined up, and of
    very many the rest are counted."""
    runs: list[list[str]] = []
    for label in sorted(labels, key=_chain_and_number):
        if runs and _follows(runs[-1][-1], label):
            runs[-1].append(label)
        else:
            runs.append([label])
    parts: list[str] = []
    told = 0
    for run in runs:
        if len(parts) >= MOST_TOLD:
            break
        parts += [_run(run, voice)] if len(run) > 2 else run
        told += len(run)
    if told == len(labels):
        return voice.listed(parts)
    return voice.say("{joints} and {count} more", joints=", ".join(parts), count=len(labels) - told)


def _chain_and_number(label: str) -> tuple[int, str, int]:
    name = label.rstrip("0123456789")
    return len(name), name, int(label[len(name) :] or 0)


def _run(labels: Sequence[str], voice: Voice) -> str:
    return voice.say("{first} to {last}", first=labels[0], last=labels[-1])


def _follows(before: str, label: str) -> bool:
    one, other = (re.fullmatch(r"(.*?)(\d+)", text) for text in (before, label))
    if one is None or other is None or one[1] != other[1]:
        return False
    return int(other[2]) == int(one[2]) + 1


def mass_words(mass_kg: float, voice: Voice) -> str:
    """Ballast, in half kilograms and whole pounds: `13.5 kg (30 lb)`."""
    kg = voice.decimal(mass_kg, 0 if mass_kg == round(mass_kg) else 1)
    return voice.say("{kg} kg ({lb} lb)", kg=kg, lb=math.ceil(mass_kg / KG_PER_LB))


def filled_words(mass_kg: float, voice: Voice) -> str:
    """Ballast by what it fills: `12 L of water, or 8 L of dry sand`."""
    return voice.say(
        "{water} L of water or {sand} L of dry sand", water=water_l(mass_kg), sand=sand_l(mass_kg)
    )


def ballast_words(book: Book) -> str:
    """What holds the piece indoors, for the load list."""
    voice = book.voice
    gust = speed_words(DRAUGHT_M_PER_S, book.units, voice)
    mass = mass_words(ballast_kg(book.examination), voice)
    return voice.say("{mass} in all, for a draught of {gust} (estimate)", mass=mass, gust=gust)
