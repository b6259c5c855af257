"""What is written when a value is begun anew, and when it is to have another form."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, get_args, get_origin

from buildplan.desk.key_words import (
    A_RANGE,
    ENDS,
    IN_TURN,
    KEYS,
    ONE_FOR_ALL,
    ONE_FOR_EACH,
    ONE_VALUE,
    PATTERN_NAMES,
    WITH_A_BALLOON,
    WITHOUT_A_BALLOON,
)
from buildplan.desk.value_kinds import ValueKind, is_balloon, keys_of
from buildplan.desk.whole_file import WholeFile
from buildplan.patterns.assembly_keys import AssemblyPart, TieByBalloon
from buildplan.patterns.colour_order import ColourPattern
from buildplan.patterns.course import INNER_CHAINS, OUTER_CHAINS
from buildplan.patterns.extra_keys import ExtraBalloon
from buildplan.patterns.registry import PATTERNS
from buildplan.patterns.wall import Opening
from buildplan.source.balloons import Balloon
from buildplan.source.mistake import Path
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.values import ConstantRange, FileModel

ABOUT = 0.1  # a range to begin with, about its value
USUAL_LENGTH: Mapping[str, float] = {"in": 12, "cm": 30}
# common practice, no source: a link of 12 inches is sized to 8
USUAL_BALLOON: Mapping[str, Mapping[str, float]] = {
    "in": {"nominal": 12, "inflate_to": 8},
    "cm": {"nominal": 30, "inflate_to": 20},
}
ANY_TEXT = "..."  # where some text must stand
# What a part of a pattern begins with, small enough to be seen at once.
PART_BEGINNINGS: Mapping[str, Mapping[str, object]] = {
    "column": {"around": 4, "rings": 3},
    "arch": {"kind": "square", "leg": 2, "span": 6},
    "wall": {"across": 4, "up": 3, "layers": 2},
    "letters": {"text": "A", "cells": 5},
    "globe": {},
    "solid": {"shape": "cube"},
}
OTHERS = frozenset({"between", "brace", "upright", "short"})
PART_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def template(kind: ValueKind, at: Path, whole: WholeFile) -> object:
    """A value of a kind to begin with, as right as it can be."""
    if kind.bare is AssemblyPart:
        return _part("column", at, whole)
    if kind.bare is Opening:
        return {
            "along": 1,
            "up": 0,
            "wide": 2,
            "high": 2,
        }  # the least that is seen: a small doorway
    if kind.bare is Balloon:
        return {"kind": "link", **USUAL_BALLOON[whole.units], "colour": "ivory", "label": "ivory"}
    if kind.control == "group":
        keys = [key for key in keys_of(kind.bare) if not key.optional]
        return {key.name: template(key.kinds[0], (*at, key.name), whole) for key in keys}
    if is_balloon(kind):
        return whole.first_balloon(at)
    if kind.control == "joints":
        return _joints(kind, whole)
    if kind.choices:
        return kind.choices[0]
    return _plain_value(kind, at, whole)


def _plain_value(kind: ValueKind, at: Path, whole: WholeFile) -> object:
    low, high = kind.limits
    match kind.control:
        case "list":
            inner = ValueKind("choice", *_inner(kind))
            return (
                [whole.first_balloon(at), whole.first_balloon(at, other=True)][: int(low or 1)]
                if is_balloon(inner)
                else []
            )
        case "map":
            return {whole.first_balloon(at): 1} if at and "colour_pattern" in at else {}
        case "flag":
            return True
        case "colour":
            return "ivory"
        case "size":
            return USUAL_LENGTH[whole.units]
        case "whole" | "number":
            least = 1 if low is None or low < 1 <= (high or 1) else low
            return int(least) if float(least).is_integer() else least
    return ANY_TEXT if low else ""


def _inner(kind: ValueKind) -> tuple[Any, tuple[Any, ...]]:
    found = get_args(kind.bare)[0]
    return get_args(found)[0], tuple(get_args(found)[1:])


def _joints(kind: ValueKind, whole: WholeFile) -> object:
    labels = list(whole.joints) or ["A1", "A2"]
    return [labels[0], labels[-1]] if get_origin(kind.bare) is list else labels[0]


def parts_to_add(at: Path, whole: WholeFile) -> list[dict[str, object]]:
    """Parts that an assembly can have one more of, by what they are, each with a name of its own;
    `at` is the place that it would stand at."""
    return [
        {"label": whole.voice.say_whole(PATTERN_NAMES[name]), "value": _part(name, at, whole)}
        for name in PART_BEGINNINGS
    ]


def _part(name: str, at: Path, whole: WholeFile) -> dict[str, object]:
    """A small part of a pattern, beside those that there are."""
    parts = list_in(mapping_in(mapping_in(whole.data.get("build")).get("assembly")).get("parts"))
    taken = {str(mapping_in(part).get("name")) for part in parts}
    letter = next((letter for letter in PART_LETTERS if letter not in taken), "P")
    build = (*at, "build", name)
    model: type[FileModel] = PATTERNS[name].keys
    keys: dict[str, object] = {
        key.name: PART_BEGINNINGS[name].get(key.name)
        or template(key.kinds[0], (*build, key.name), whole)
        for key in keys_of(model)
        if not key.optional or key.name in OTHERS or key.name in PART_BEGINNINGS[name]
    }
    for key in OTHERS & keys.keys():  # of another colour than what they are tied to
        keys[key] = whole.first_balloon((*build, key), other=True)
    return {"name": letter, "build": {name: keys}}


def forms_of(
    kinds: Sequence[ValueKind], value: object, at: Path, whole: WholeFile
) -> Iterator[dict[str, object]]:
    """The other forms that a value can be given, each with what it would be then."""
    if at == ("stand_on",):
        yield from _ends(value, whole)
    if len(kinds) < 2 or value is None:
        return
    for label, other in _others(kinds, value, at, whole):
        yield {"label": whole.voice.say_whole(label), "value": other}


def _ends(value: object, whole: WholeFile) -> Iterator[dict[str, object]]:
    """The ends that an open tube can stand on."""
    tube = mapping_in(whole.data.get("build")).get("tube")
    if tube is None or mapping_in(tube).get("closed") is True:
        return
    for end, words in ENDS.items():
        if end != value:
            yield {"label": whole.voice.say_whole(words), "value": end}


def _others(
    kinds: Sequence[ValueKind], value: object, at: Path, whole: WholeFile
) -> Iterator[tuple[str, object]]:
    bare = {kind.bare for kind in kinds if isinstance(kind.bare, type)}
    if any(get_origin(kind.bare) is dict for kind in kinds) and at[-1] == "long":
        yield from _long_chains(value, at, whole)
    elif bare & {ExtraBalloon, TieByBalloon}:
        yield from _ties(value, at, whole)
    elif ConstantRange in bare:
        yield from _constant(value)
    elif ColourPattern in bare:
        yield from _colours(value, at, whole)


def _long_chains(value: object, at: Path, whole: WholeFile) -> Iterator[tuple[str, object]]:
    if isinstance(value, str):
        tube: Any = whole.data
        for step in at[:-1]:
            tube = tube[step]
        count = tube.get("chains")
        letters = sorted((*OUTER_CHAINS.get(count, ("A",)), *INNER_CHAINS.get(count, ("B",))))
        yield ONE_FOR_EACH, dict.fromkeys(letters, value)
    elif mapping_in(value):
        yield ONE_FOR_ALL, next(iter(mapping_in(value).values()))


def _ties(value: object, at: Path, whole: WholeFile) -> Iterator[tuple[str, object]]:
    if isinstance(value, list):
        key = whole.first_balloon((*at, "balloon"))
        yield WITH_A_BALLOON, {"joints": value[:2], "balloon": key}
    else:
        yield WITHOUT_A_BALLOON, list_in(mapping_in(value).get("joints"))


def _constant(value: object) -> Iterator[tuple[str, object]]:
    if isinstance(value, int | float):
        low, high = (float(f"{value * share:.3g}") for share in (1 - ABOUT, 1 + ABOUT))
        yield A_RANGE, {"value": value, "low": low, "high": high}
    elif "value" in mapping_in(value):
        yield ONE_VALUE, mapping_in(value)["value"]


def _colours(value: object, at: Path, whole: WholeFile) -> Iterator[tuple[str, object]]:
    """An order of colours as stripes, a spiral, a fade or one in turn."""
    now, given = "", mapping_in(value)
    keys = [one for one in list_in(value) if isinstance(one, str)]
    for name in ("stripes", "spiral", "fade"):
        if given.get(name) is not None:
            now = name
            keys = list(given[name]) if isinstance(given[name], dict | list) else keys
    keys = list(dict.fromkeys(keys)) or [whole.first_balloon(at)]
    pair = keys if len(keys) > 1 else [*keys, whole.first_balloon(at, other=True)]
    counts = dict.fromkeys(pair, 2)
    if not isinstance(value, list):
        yield IN_TURN, keys
    for name, made in (("stripes", counts), ("spiral", counts), ("fade", pair[:10])):
        if name != now:
            yield KEYS[name], {name: made}
