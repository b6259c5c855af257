"""Lengths and colours as people write them, made what the rest of the program reads.

A length may carry its unit (`12 in`, `30 cm`, `3 1/2"`, `6 ft 3 in`): it is then converted to
the file's, whose own may be called otherwise (`inches`). A
colour may be a name: of CSS, of our own, or the label of another balloon of the file; a balloon
without a label is then called so.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from math import fsum
from typing import Any

from buildplan.source.almost_numbers import unit_named
from buildplan.source.colour_names import HEX, hex_of

# exact: the international inch is 25.4 mm
INCHES: Mapping[str, float] = {
    "in": 1.0,
    "inch": 1.0,
    "inches": 1.0,
    '"': 1.0,
    "ft": 12.0,
    "'": 12.0,
    "mm": 1 / 25.4,
    "cm": 1 / 2.54,
    "m": 100 / 2.54,
}
LENGTH_WORDS = (
    r"^ *(([0-9]+) *(ft|') *)?([0-9]+([.,][0-9]+)?|([0-9]+ +)?[0-9]+/[1-9][0-9]*)"
    r' *(in|inch|inches|"|ft|\'|mm|cm|m) *$'
)
_LENGTH_KEYS = ("nominal", "inflate_to", "tie_to_tie", "tie_to_tie_within", "chain_of_ten")
PLACES = 4  # decimal places of a converted length


def length_in(text: str, units: object) -> float | None:
    """A length with its unit, in the units `in` or `cm`; None where it is not written so."""
    found = re.match(LENGTH_WORDS, text)
    if found is None or units not in ("in", "cm"):
        return None
    feet, unit = found[2], found[7]
    if feet and INCHES[unit] != INCHES["in"]:
        return None  # nothing but inches follows feet
    inches = fsum(map(_number, found[4].split())) * INCHES[unit] + 12 * int(feet or 0)
    return round(inches / INCHES[str(units)], PLACES)


def _number(text: str) -> float:
    upper, _, lower = text.partition("/")
    return float(upper.replace(",", ".")) / (float(lower) if lower else 1.0)


def in_file_words(data: object) -> object:
    """The content of a design file with its lengths in the file's units and its colours in hex
    digits, as far as they can be told. What cannot is left for the checks."""
    if not isinstance(data, dict):
        return data
    made = {**data, **units_in(data)}
    units, balloons = made.get("units"), data.get("balloons")
    if isinstance(balloons, dict):
        labels = _labelled(balloons.values())
        made["balloons"] = {
            key: _balloon(one, units, labels) if isinstance(one, dict) else one
            for key, one in balloons.items()
        }
    if isinstance(data.get("base"), dict):
        made["base"] = _with_lengths(data["base"], ("width", "depth"), units)
    if isinstance(data.get("build"), dict):
        made["build"] = _build(data["build"], units)
    if isinstance(data.get("brand"), dict):
        made["brand"] = with_colours(data["brand"], ("colour", "accent"))
    return made


def units_in(data: Mapping[str, Any]) -> Mapping[str, str]:
    """The units of a file's content as the rest of the program has them, `in` or `cm`: nothing
    where it names none, or none that are either."""
    given = data.get("units")
    named = unit_named(given.strip(" .")) if isinstance(given, str) else ""
    return {"units": named} if named in ("in", "cm") else {}


def _labelled(balloons: Iterable[object]) -> Mapping[str, str]:
    """The colours that balloons of the file give in hex digits, by their labels."""
    return {
        str(one["label"]).strip().lower(): one["colour"]
        for one in balloons
        if isinstance(one, dict)
        and isinstance(one.get("label"), str)
        and isinstance(one.get("colour"), str)
        and re.fullmatch(HEX, one["colour"])
    }


def _balloon(given: dict[str, Any], units: object, labels: Mapping[str, str]) -> dict[str, Any]:
    made = with_colours(_with_lengths(given, _LENGTH_KEYS, units), ("colour",), labels)
    return _called(given.get("colour"), made)


def _called(colour: object, made: dict[str, Any]) -> dict[str, Any]:
    """What a balloon without a label is called: by its colour, where that is a name."""
    if "label" in made or not isinstance(colour, str) or re.match(" *#|[ \\n]*$", colour):
        return made
    return {**made, "label": " ".join(colour.split())}


def _with_lengths(given: dict[str, Any], keys: Iterable[str], units: object) -> dict[str, Any]:
    made = dict(given)
    for key in keys:
        if isinstance(made.get(key), str):
            length = length_in(made[key], units)
            made[key] = made[key] if length is None else length
    return made


def with_colours(
    given: dict[str, Any], keys: Iterable[str], labels: Mapping[str, str] | None = None
) -> dict[str, Any]:
    """Keys with a colour by name made its hex digits."""
    made = dict(given)
    for key in keys:
        if isinstance(made.get(key), str):
            name = made[key].strip()
            made[key] = (labels or {}).get(name.lower()) or hex_of(name) or made[key]
    return made


def _build(build: dict[str, Any], units: object) -> dict[str, Any]:
    made = dict(build)
    if isinstance(made.get("letters"), dict):
        made["letters"] = _with_lengths(made["letters"], ("height",), units)
    assembly = made.get("assembly")
    if isinstance(assembly, dict) and isinstance(assembly.get("parts"), list):
        parts = [
            {**part, "build": _build(part["build"], units)}
            if isinstance(part, dict) and isinstance(part.get("build"), dict)
            else part
            for part in assembly["parts"]
        ]
        made["assembly"] = {**assembly, "parts": parts}
    return made
