"""Colours to choose by name: what balloons come in, and what a file's own colour is called."""

from __future__ import annotations

import re

from buildplan.desk.whole_file import WholeFile
from buildplan.language.voice import Voice
from buildplan.source.colour_names import HEX, NAMES, hex_of


def palette(voice: Voice) -> list[dict[str, str]]:
    """The colours to choose from, as the page shows them."""
    return [
        {"value": value, "name": voice.say(name), "hex": hex_of(value) or ""}
        for value, name in NAMES.items()
    ]


def colour_as_data(value: object, whole: WholeFile) -> dict[str, str]:
    """A colour of the file: its hex digits as far as it has any, and what it is called."""
    if not isinstance(value, str) or not value.strip():
        return {}
    name = value.strip()
    found = name if re.fullmatch(HEX, name) else hex_of(name) or _of_label(name, whole)
    if found is None:
        return {}
    return {"hex": found.upper(), "text": _called(name, found, whole.voice)}


def _of_label(name: str, whole: WholeFile) -> str | None:
    for balloon in whole.balloons.values():
        label, colour = balloon.get("label"), balloon.get("colour")
        if isinstance(label, str) and isinstance(colour, str) and label.lower() == name.lower():
            return colour if re.fullmatch(HEX, colour) else hex_of(colour)
    return None


def _called(name: str, found: str, voice: Voice) -> str:
    """The name that the file gives, or for plain digits that of the nearest to choose from."""
    if not re.fullmatch(HEX, name):
        words = NAMES.get(" ".join(name.lower().split()))
        return voice.say(words) if words else name
    nearest = min(NAMES, key=lambda one: _apart(hex_of(one) or "", found))
    words = voice.say(NAMES[nearest])
    if _apart(hex_of(nearest) or "", found) == 0:
        return words
    return voice.say("about {colour}", colour=words)


def _apart(one: str, other: str) -> float:
    """How far two colours are apart for the eye: weighted by how high the red is, an old and
    plain measure (T. Riemersma, Colour metric; from memory)."""
    if not one:
        return float("inf")
    (r1, g1, b1), (r2, g2, b2) = (
        tuple(int(each[i : i + 2], 16) for i in (1, 3, 5)) for each in (one, other)
    )
    red = (r1 + r2) / 2
    return (
        (2 + red / 256) * (r1 - r2) ** 2
        + 4 * (g1 - g2) ** 2
        + (2 + (255 - red) / 256) * (b1 - b2) ** 2
    )
