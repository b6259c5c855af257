"""The controls of a design: one for every key of the file, made from the definitions that the
file is read and its schema is written by."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, get_args, get_origin

from babel import Locale

from buildplan.design.model import Design
from buildplan.desk.key_words import (
    CHOICES,
    ITEM,
    ITEMS,
    KEYS,
    KEYS_OF,
    MAPS,
    PATTERN_NAMES,
)
from buildplan.desk.palette import colour_as_data
from buildplan.desk.value_forms import forms_of, parts_to_add, template
from buildplan.desk.value_kinds import (
    FileKey,
    ValueKind,
    is_balloon,
    keys_of,
    kinds_of,
    of_form,
)
from buildplan.desk.whole_file import WholeFile
from buildplan.evaluation.figures import FINISHES
from buildplan.language.voice import Voice
from buildplan.patterns.assembly_keys import AssemblyPart
from buildplan.patterns.build import Build
from buildplan.source.mistake import Path
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.values import FileModel, Minutes

MOST_ITEMS = 120  # of a list: what is longer is changed in the file
KILOGRAMS, MINUTES = "kg", "min"  # symbols of the SI and beside it, the same in every language
# What is told with the signs of the file is told to those who write it; here there are controls.
FILE_SIGNS = frozenset("{[`#")
Control = dict[str, Any]


@dataclass(frozen=True)
class _Place:
    """A place of the file that is to have a control: where, in which class of keys, and what is
    known of it there."""

    path: Path
    model: str
    key: FileKey
    label: str
    value: object

    @property
    def name(self) -> str:
        return f"{self.model}.{self.key.name}"


def controls_of(data: object, voice: Voice) -> list[Control]:
    """The controls of a design file, given as plain data, as a tree."""
    return list(_group(Design, mapping_in(data), (), WholeFile(mapping_in(data), voice)))


def _group(
    model: type[FileModel], given: Mapping[str, Any], at: Path, whole: WholeFile
) -> Iterator[Control]:
    """The controls of the keys of one mapping. Of `build` only the pattern that is given."""
    for key in keys_of(model):
        if model is Build and key.name not in given:
            continue
        name = f"{model.__name__}.{key.name}"
        label = PATTERN_NAMES.get(key.name) if model is Build else None
        label = label or KEYS_OF.get(name) or KEYS.get(key.name) or key.name
        place = _Place(
            (*at, key.name), model.__name__, key, whole.voice.say_whole(label), given.get(key.name)
        )
        yield _control(place, whole)


def _control(place: _Place, whole: WholeFile) -> Control:
    key, value = place.key, place.value
    kind = of_form(key.kinds, value)
    made: Control = {
        "path": list(place.path),
        "key": str(place.path[-1]),
        "label": place.label,
        "help": "" if FILE_SIGNS & set(key.about) else whole.voice.say_whole(key.about),
        "kind": kind.control,
        "value": value,
        "text": _text(value),
        "default": _plain(key.default),
        "optional": key.optional,
    }
    made |= _OF_KIND.get(kind.control, _of_number)(place, kind, whole)
    forms = list(forms_of(key.kinds, value, place.path, whole))
    if forms:
        made["forms"] = forms
    return made


def _plain(default: object) -> object:
    return default if isinstance(default, str | int | float | bool) else None


def _text(value: object) -> str:
    if isinstance(value, list):
        return ", ".join(map(str, value))
    if value is None or isinstance(value, bool | dict):
        return ""
    return f"{value:g}" if isinstance(value, float) and abs(value) < 1e6 else str(value)


def _of_number(place: _Place, kind: ValueKind, whole: WholeFile) -> Control:
    low, high = kind.limits
    made: Control = {}
    if kind.control in ("number", "whole", "size") or get_origin(kind.bare) is list:
        made |= {"low": low} if low is not None else {}
        made |= {"high": high} if high is not None else {}
    unit = _unit(place, kind, whole)
    return made | ({"unit": unit} if unit else {})


def _unit(place: _Place, kind: ValueKind, whole: WholeFile) -> str:
    if kind.control == "size":
        return "" if isinstance(place.value, str) else whole.units
    if place.name == "GivenBase.weight":
        return KILOGRAMS
    return MINUTES if kind.names(Minutes) else ""


def _of_choice(place: _Place, kind: ValueKind, whole: WholeFile) -> Control:
    if is_balloon(kind):
        found: list[dict[str, Any]] = [*whole.balloon_choices(place.path)]
    else:
        words = CHOICES.get(place.name, {})
        found = [
            {"value": one, "label": _choice(place, str(one), words, whole.voice)}
            for one in kind.choices
        ]
    chosen = next((one["label"] for one in found if one["value"] == place.value), None)
    return {"choices": found} | ({"text": chosen} if chosen else {})


def _choice(place: _Place, one: str, words: Mapping[str, str], voice: Voice) -> str:
    if place.name == "Balloon.finish" and one in FINISHES:
        return voice.tell(FINISHES[one])
    return voice.say_whole(words[one]) if one in words else one


def _of_colour(place: _Place, kind: ValueKind, whole: WholeFile) -> Control:
    return colour_as_data(place.value, whole)


def _of_group(place: _Place, kind: ValueKind, whole: WholeFile) -> Control:
    items = list(_group(kind.bare, mapping_in(place.value), place.path, whole))
    if not place.key.optional or place.value is not None or kind.bare is Build:
        return {"items": items}
    return {"items": items, "add": template(kind, place.path, whole)}


def _of_map(place: _Place, kind: ValueKind, whole: WholeFile) -> Control:
    of_key, of_value = map(kinds_of, get_args(kind.bare))
    words = _key_words(place, of_key[0], whole)
    items = [
        _item(place, of_value, name, words.get(name, name), value, whole)
        for name, value in mapping_in(place.value).items()
    ]
    made: Control = {"items": items, "add": template(of_value[0], (*place.path, ""), whole)}
    if words:
        made["choices"] = [{"value": name, "label": label} for name, label in words.items()]
    return made


def _key_words(place: _Place, kind: ValueKind, whole: WholeFile) -> Mapping[str, str]:
    """The keys that a mapping may have, where they are a few, and what they are called."""
    name = str(place.path[-1])
    if name == "balloons":
        return {}
    if is_balloon(kind):
        return {one["value"]: one["label"] for one in whole.balloon_choices(place.path)}
    if name == "translations":
        return {code: _language(code, whole.voice) for code in map(str, kind.choices)}
    words = MAPS.get(name, {})
    parts = whole.coloured_parts(place.path) if name == "colour_pattern" else kind.choices
    return {
        one: whole.voice.say_whole(words[one]) if one in words else one for one in map(str, parts)
    }


def _language(code: str, voice: Voice) -> str:
    return Locale.parse(code).get_display_name(voice.locale) or code


def _of_list(place: _Place, kind: ValueKind, whole: WholeFile) -> Control:
    of_item = kinds_of(get_args(kind.bare)[0])
    given = list_in(place.value)
    items = [
        _item(place, of_item, i, _item_label(place, i, value, whole.voice), value, whole)
        for i, value in enumerate(given[:MOST_ITEMS])
    ]
    made: Control = {"items": items, "add": template(of_item[0], (*place.path, len(given)), whole)}
    if of_item[0].bare is AssemblyPart:
        made["adds"] = parts_to_add((*place.path, len(given)), whole)
    if len(given) > MOST_ITEMS:
        made["more"] = len(given) - MOST_ITEMS
    low, high = kind.limits
    return made | {"low": low or 0} | ({"high": high} if high is not None else {})


def _item_label(place: _Place, i: int, value: object, voice: Voice) -> str:
    name = mapping_in(value).get("name")
    if isinstance(name, str):
        return name
    return voice.say(ITEMS.get(str(place.path[-1]), ITEM), number=i + 1)


def _item(
    place: _Place,
    kinds: Sequence[ValueKind],
    step: str | int,
    label: str,
    value: object,
    whole: WholeFile,
) -> Control:
    """One item of a list or of a mapping: what it is for is said where they all are."""
    key = FileKey(place.key.name, tuple(kinds), False, None, "")
    return _control(
        replace(place, path=(*place.path, step), key=key, label=label, value=value), whole
    )


_OF_KIND = {
    "choice": _of_choice,
    "colour": _of_colour,
    "group": _of_group,
    "map": _of_map,
    "list": _of_list,
}
