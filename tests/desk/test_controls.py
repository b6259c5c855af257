"""Every key that a design file may have has its control on the desk.

The keys are taken from the JSON Schema of the file, walked by its keywords as JSON Schema Core,
draft 2020-12, defines them (`properties`, `patternProperties`, `anyOf` ...), and not from what the
controls are made from.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any, cast
from urllib.parse import unquote
from xml.etree.ElementTree import fromstring

import pytest
import yaml

from buildplan.design.checks import check
from buildplan.design.model import Design
from buildplan.design.reading import joined_data
from buildplan.design.schema import design_schema
from buildplan.desk.controls import controls_of
from buildplan.desk.course_tiles import courses_of
from buildplan.desk.key_words import KEYS, KEYS_OF, PATTERN_NAMES
from buildplan.desk.outline import outline_of
from buildplan.desk.whole_file import WholeFile
from buildplan.language.voice import Voice
from buildplan.patterns.registry import PATTERNS
from buildplan.shape.constants import CONSTANTS
from buildplan.source.colour_names import NAMES, hex_of
from buildplan.source.file_changes import changed_data
from buildplan.source.suggestions import Put

DESIGNS = Path(__file__).parents[2] / "designs"
SCHEMA = design_schema()
DEFS = SCHEMA["$defs"]
FORMS = 6  # more than any value has
ENGLISH = Voice()
At = tuple[str | int, ...]


def _resolved(node: dict[str, Any]) -> dict[str, Any]:
    while "$ref" in node:
        node = DEFS[node["$ref"].rsplit("/", 1)[1]]
    return node


def _forms(node: dict[str, Any]) -> list[dict[str, Any]]:
    """A value's forms, unions taken apart, without that of nothing."""
    node = _resolved(node)
    inner = node.get("anyOf") or (node.get("oneOf") if "properties" not in node else None)
    if not inner:
        return [] if node.get("type") == "null" else [node]
    return [form for one in inner for form in _forms(one)]


def _value(node: dict[str, Any], turn: int, pattern: str, at: At, seen: list[At]) -> Any:
    """A value with every key that it may have, in one of its forms; notes each key's place."""
    forms = _forms(node)
    form = forms[turn % len(forms)]
    if "properties" in form:
        return _keys(form, turn, pattern, at, seen)
    if form.get("type") == "array":
        return [_value(form["items"], turn, pattern, (*at, 0), seen)]
    if form.get("type") == "object":
        return _mapping(form, turn, pattern, at, seen)
    if "enum" in form:
        return form["enum"][0]
    return {"string": "A1", "boolean": True}.get(form.get("type", ""), form.get("const", 1))


def _mapping(form: dict[str, Any], turn: int, pattern: str, at: At, seen: list[At]) -> Any:
    key = form.get("propertyNames", {}).get("enum", ["own"])[0]
    patterns = form.get("patternProperties")
    inner = next(iter(patterns.values())) if patterns else form["additionalProperties"]
    seen.append((*at, key))
    return {key: _value(inner, turn, pattern, (*at, key), seen)}


def _keys(form: dict[str, Any], turn: int, pattern: str, at: At, seen: list[At]) -> Any:
    names = form["properties"]
    if set(names) == set(PATTERNS):  # of `build`: one, and in a part another that has no parts
        names = {pattern if at == ("build",) else "tube": None}
    made = {}
    for name in names:
        if name == "cells" and "repeat" in form["properties"]:
            continue  # of a group of the course, which is a strip: see below
        seen.append((*at, name))
        if name != "course":
            place = (*at, name)
            made[name] = _value(form["properties"][name], turn, pattern, place, seen)
    return made


def _paths(controls: list[dict[str, Any]]) -> Iterator[At]:
    for control in controls:
        yield tuple(control["path"])
        yield from _paths(control.get("items", []))


@pytest.mark.parametrize("pattern", PATTERNS)
def test_every_key_of_the_schema_has_its_control(pattern: str) -> None:
    for turn in range(FORMS):
        seen: list[At] = []
        data = _value(SCHEMA, turn, pattern, (), seen)
        assert set(seen) - set(_paths(controls_of(data, ENGLISH))) == set()


def test_the_walk_of_the_schema_comes_to_every_key_there_is() -> None:
    seen: list[At] = []
    for pattern in PATTERNS:
        for turn in range(FORMS):
            _value(SCHEMA, turn, pattern, (), seen)
    every = {name for one in (*DEFS.values(), SCHEMA) for name in one["properties"]}
    assert every - {at[-1] for at in seen} == set()


def test_every_key_has_a_word_of_its_own() -> None:
    models = {**DEFS, "Design": SCHEMA}
    del models["Build"]
    unnamed = {
        f"{model}.{name}"
        for model, one in models.items()
        for name in one["properties"]
        if name not in KEYS and f"{model}.{name}" not in KEYS_OF
    }
    assert unnamed == set()
    assert set(PATTERN_NAMES) == set(PATTERNS)


def _by_path(text: str, language: str = "en") -> dict[At, dict[str, Any]]:
    def flat(controls: list[Any]) -> Iterator[tuple[At, dict[str, Any]]]:
        for one in controls:
            yield tuple(one["path"]), one
            yield from flat(one.get("items", []))

    return dict(flat(list(cast(Any, outline_of(text, Voice(language))["controls"]))))


STAR = (DESIGNS / "reading_star.yaml").read_text()


def test_controls_say_what_the_file_says() -> None:
    found = _by_path(STAR)
    given = yaml.safe_load(STAR)
    for path, control in found.items():
        value = given
        for step in path:
            value = None if value is None else value.get(step)
        assert control["value"] == value
    size = found["balloons", "long", "inflate_to"]
    assert (size["kind"], size["text"], size["unit"]) == ("size", "8", "in")
    assert found["build", "tube", "closed"]["kind"] == "flag"
    assert found["crew",]["low"] == 1
    assert found["crew",]["optional"]
    labels = [one["label"] for one in found["prices",]["choices"]]
    assert labels == ["deep blue", "ivory, 12 in", "ivory, 5 in"]
    # a place that names a link balloon offers no rounds, and the other way about
    of = {name: found["build", "tube", name]["choices"] for name in ("brace", "lock")}
    assert [one["value"] for one in of["brace"]] == ["long", "cross"]
    assert [one["value"] for one in of["lock"]] == ["lock"]


def test_controls_speak_the_language_of_the_reader() -> None:
    english, spanish = _by_path(STAR), _by_path(STAR, "es")
    assert english.keys() == spanish.keys()
    same = [path for path in english if english[path]["label"] == spanish[path]["label"]]
    # names that the file gives itself, and words that both languages write alike
    assert {path[0] for path in same} <= {"balloons", "pack_prices", "pack_sizes", "translations"}


def test_what_is_begun_anew_or_given_another_form_is_right() -> None:
    """What is added, and each other form of a value, is taken by the reader of files."""
    tried = 0
    for file in ("reading_star.yaml", "gallery/doorway_wall.yaml", "gallery/portal.yaml"):
        text = (DESIGNS / file).read_text()
        for path, control in _by_path(text).items():
            for form in control.get("forms", []):
                changed = changed_data(yaml.safe_load(text), [Put(path, form["value"])])
                Design.model_validate(changed)
                tried += 1
            if control["kind"] == "list" and control["key"] != "parts":
                added = [*(control["value"] or []), control["add"]]
                Design.model_validate(changed_data(yaml.safe_load(text), [Put(path, added)]))
                tried += 1
    assert tried > 3


def _course(cells: list[object], closed: bool = True) -> dict[str, Any]:
    data = yaml.safe_load(STAR)
    data["build"]["tube"] |= {"course": cells, "closed": closed}
    own, parts = courses_of(WholeFile(data, ENGLISH))
    assert own is not None
    assert parts == []
    return own


def test_tiles_are_the_cells_of_the_file_in_their_places() -> None:
    tile = _course(["straight", {"repeat": 3, "cells": ["tip", [1, 3]]}])["tiles"]
    assert [one["cell"] for one in tile] == ["straight", None]
    group = tile[1]
    assert group["repeat"] == 3
    assert [one["cell"] for one in group["tiles"]] == ["tip", [1, 3]]
    assert group["tiles"][1]["path"] == ["build", "tube", "course", 1, "cells", 1]
    assert (group["tiles"][1]["outer"], group["tiles"][1]["inner"]) == (1, 3)
    # which cells of the course each is, counted by hand: 1, then three times tip and [1, 3]
    assert [one["cells"] for one in (tile[0], *group["tiles"])] == [[1], [2, 4, 6], [3, 5, 7]]


def test_six_fans_turn_all_round() -> None:
    """Six equilateral triangles about a point fill its four right angles (Euclid, Elements I.32,
    and the tessellation known to Proclus)."""
    turn = _course(["fan"] * 6)["turn"]
    assert (turn["least_deg"], turn["most_deg"], turn["fits"]) == (360, 360, True)
    five = _course(["fan"] * 5)
    assert five["turn"]["words"] == "turns 300 of 360 degrees"
    assert five["short"] == "the outer side is about 1 balloon short"
    assert _course(["fan"] * 5, closed=False)["turn"]["needed_deg"] is None


def test_a_course_that_is_wrong_is_still_shown() -> None:
    tiles = _course(["straight", "strait", 7, [1], {"cells": "fan"}])["tiles"]
    assert [one["label"] for one in tiles] == ["straight", "strait", "7", "[1]", ""]
    assert [bool(one["picture"]) for one in tiles] == [True, False, False, False, False]
    assert not any(one["cells"] for one in tiles)  # they cannot be counted
    endless = {"repeat": 500, "cells": [{"repeat": 500, "cells": ["straight"]}]}
    assert _course([endless])["tiles"][0]["tiles"][0]["tiles"][0]["cells"] == []


def test_every_tile_picture_shows_the_balloons_of_its_cell() -> None:
    for kind in _course(["straight"])["kinds"]:
        head, _, svg = kind["picture"].partition(",")
        assert head == "data:image/svg+xml"
        drawn = fromstring(unquote(svg))
        balloons = drawn.findall("{http://www.w3.org/2000/svg}ellipse")
        assert len(balloons) == kind["outer"] + kind["inner"] + 2  # and a brace on either side


def test_colours_to_choose_are_known_by_name() -> None:
    hexes = [hex_of(name) for name in NAMES]
    assert None not in hexes
    assert len(set(hexes)) == len(hexes)
    colour = _by_path(STAR.replace('"#F7F3E8"', "ivory"))["balloons", "cross", "colour"]
    assert (colour["text"], colour["hex"]) == ("ivory", "#FFFFF0")  # CSS Color 4, section 6.1


@pytest.mark.parametrize("text", ["", "[", "name: [", "42", "build: {tube: 7}", "balloons: 3"])
def test_a_broken_file_has_what_can_be_read_of_it(text: str) -> None:
    outline_of(text, ENGLISH)


def test_every_part_that_can_be_added_is_one_that_can_be_built() -> None:
    """Each kind of part, taken into an assembly, is read without a problem of its own keys."""
    text = (DESIGNS / "gallery/portal.yaml").read_text()
    parts = _by_path(text)["build", "assembly", "parts"]
    assert len(parts["adds"]) > 3
    for one in parts["adds"]:
        name, keys = next(iter(one["value"]["build"].items()))
        alone = {**yaml.safe_load(text), "build": {name: keys}}
        assert not list(check(alone, CONSTANTS)), name
        joined_data(alone, DESIGNS, CONSTANTS)
