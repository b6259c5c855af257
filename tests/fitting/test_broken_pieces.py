"""Pieces of every pattern, broken as people break them: whatever way of mending `check` names is
followed by a program that knows nothing else, and the problem is gone.

The pieces are our own. What breaks them is drawn at random from a seed, the same on every run; the
seeds are those of pieces that break where the shape has to be solved to tell what mends it.
"""

from __future__ import annotations

import json
import random
from collections.abc import Iterator
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
import yaml
from conftest import Call

from buildplan.source.file_changes import changed_text
from buildplan.source.suggestions import Change, Put, Rename, TakeOut

BALLOONS: dict[str, Any] = {
    "a": {"kind": "link", "nominal": 12, "inflate_to": 8, "colour": "navy", "label": "navy"},
    "b": {"kind": "link", "nominal": 12, "inflate_to": 7, "colour": "ivory", "label": "ivory"},
    "l": {"kind": "round", "nominal": 5, "inflate_to": 3.5, "colour": "gold", "label": "gold"},
}
LOCKED = {"lock": "l"}
COLUMN = {"column": {"around": 4, "rings": 3, "ring": "a", "between": "a", **LOCKED}}
BEAM = {"across": 7, "up": 1, "layers": 2, "row": "a", "upright": "a", "between": "a", **LOCKED}
WALL = {**BEAM, "across": 4, "up": 3, "openings": [{"along": 1, "up": 0, "wide": 2, "high": 1}]}
TUBE = {"closed": True, "chains": 4, "long": "a", "brace": "a", "single": "a", **LOCKED}
RING = {"tube": {**TUBE, "course": [{"repeat": 4, "cells": ["straight", "tip"]}]}}
GRAPH = {
    "joints": list("PQRS"),
    "balloons": [
        {"from": one, "to": other, "balloon": "a"} for one, other in combinations("PQRS", 2)
    ],
    **LOCKED,
}
PIECES: dict[str, dict[str, Any]] = {
    "tube": RING,
    "column": COLUMN,
    "wall": {"wall": WALL},
    "arch": {"arch": {"kind": "square", "leg": 2, "span": 2, "long": "a", "brace": "a", **LOCKED}},
    "solid": {"solid": {"shape": "octahedron", "edge": "a", **LOCKED}},
    "globe": {"globe": {"long": "a", "short": "b", **LOCKED}},
    "letters": {"letters": {"text": "L", "cells": 5, "long": "a", "brace": "a", **LOCKED}},
    "graph": {"graph": GRAPH},
    "assembly": {
        "assembly": {
            "parts": [
                {"name": "L", "build": COLUMN},
                {"name": "R", "build": COLUMN},
                {"name": "B", "on": ["L", "R"], "build": {"wall": BEAM}},
            ],
            **LOCKED,
        }
    },
}


def design(build: dict[str, Any], **keys: Any) -> dict[str, Any]:
    whole = {"buildplan": 1, "name": "Trial", "units": "in", "balloons": BALLOONS, "build": build}
    copied: dict[str, Any] = json.loads(json.dumps({**whole, **keys}))
    return copied


def values(
    found: Any, at: tuple[str | int, ...] = ()
) -> Iterator[tuple[tuple[str | int, ...], Any]]:
    """Every value of a file, with its place."""
    if isinstance(found, dict | list):
        for key, one in found.items() if isinstance(found, dict) else enumerate(found):
            yield from values(one, (*at, key))
    if at:
        yield at, found


def broken(data: dict[str, Any], seed: str) -> dict[str, Any]:
    """One thing of a design made otherwise: a number doubled or halved, a name mistyped, a thing
    taken away or doubled."""
    drawn = random.Random(seed)
    at, value = drawn.choice([one for one in values(data) if one[0][0] in ("balloons", "build")])
    holder: Any = data
    for step in at[:-1]:
        holder = holder[step]
    key: Any = at[-1]
    match value:
        case bool():
            holder[key] = not value
        case int() | float():
            holder[key] = drawn.choice([value * 2, value + 1, max(1, value // 2)])
        case str() if key not in ("colour", "label"):
            holder[key] = drawn.choice([f"{value}x", value.swapcase(), "b"])
        case _ if isinstance(key, int) and drawn.random() < 0.5:
            holder.insert(key, value)
        case _:
            del holder[key]
    return data


def made(change: dict[str, Any]) -> Change:
    """A change of a file, from what `check --json` prints."""
    match change:
        case {"take_out": True}:
            return TakeOut(tuple(change["at"]))
        case {"rename": key}:
            return Rename(tuple(change["at"]), key)
    return Put(tuple(change["at"]), change["put"], change.get("last"))


def checked(call: Call, file: Path, text: str) -> list[dict[str, Any]]:
    """What `check` finds wrong with a file of that text, and what it cautions of."""
    file.write_text(text, "utf-8")
    status, out, _ = call("check", file, "--json")
    if status == 2:  # no design at all: told on one line, with nothing to follow
        return []
    found = json.loads(out)
    return [*found["problems"], *found.get("cautions", [])]


def alike(one: dict[str, Any], other: dict[str, Any]) -> bool:
    return (one["kind"], one["path"]) == (other["kind"], other["path"])


def follow_all(call: Call, file: Path, data: dict[str, Any]) -> int:
    """Follow every way that is named, each by itself; how many there were."""
    text = yaml.safe_dump(data, sort_keys=False)
    problems = checked(call, file, text)
    ways = [(problem, way) for problem in problems for way in problem["changes"]]
    for problem, way in ways:
        mended, _ = changed_text(text, [made(one) for one in way["changes"]])
        left = [one for one in checked(call, file, mended) if alike(one, problem)]
        before = [one for one in problems if alike(one, problem)]
        assert len(left) < len(before), (way["text"], problem["text"], data)
    return len(ways)


@pytest.mark.parametrize("pattern", PIECES)
@pytest.mark.parametrize("seed", range(3))
def test_whatever_way_is_named_for_a_broken_piece_mends_it(
    call: Call, tmp_path: Path, pattern: str, seed: int
) -> None:
    follow_all(call, tmp_path / "piece.yaml", broken(design(PIECES[pattern]), f"{pattern}{seed}"))


def with_small(key: str, gauge: float, build: dict[str, Any]) -> dict[str, Any]:
    """A design with the balloon `b` in another size, used where `key` names one."""
    text = json.dumps(build).replace(f'"{key}": "a"', f'"{key}": "b"')
    data = design(json.loads(text))
    data["balloons"]["b"]["inflate_to"] = gauge
    return data


SHEET = {"wall": {"across": 2, "up": 9, "layers": 1, "row": "a", "upright": "a", **LOCKED}}
TWO_LETTERS = {"letters": {**PIECES["letters"]["letters"], "text": "LO", "bar": "a"}}
# an entrance whose beam lies on two joints of each column
OF_THREE = json.loads(json.dumps(PIECES["assembly"]).replace('"around": 4', '"around": 3'))
OF_THREE["assembly"]["parts"].append({"name": "S", "on": "B", "build": PIECES["letters"]})
# a letter that is too narrow to stand across two columns, and can be tied between them
NARROW = json.loads(json.dumps(PIECES["assembly"]))
NARROW["assembly"]["parts"][2]["build"] = PIECES["letters"]
# a word set on its beam back to front
BACKWARDS = json.loads(json.dumps(PIECES["assembly"]))
BACKWARDS["assembly"]["parts"].append(
    {"name": "S", "on": "B", "mirrored": True, "build": PIECES["letters"]}
)
UNLIKE = design(RING, colour_pattern={"A": ["a", "a", "b"]})
# what is wrong with it, and the piece: wrong only where it is solved
WRONG_SHAPES = {
    "does-not-fit": with_small("row", 3.7, {"wall": {**WALL, "up": 2, "openings": []}}),
    "does-not-close": with_small("between", 3.7, COLUMN),
    "folds": with_small("long", 6, TWO_LETTERS),
    "nothing-meets": with_small("ring", 4, PIECES["assembly"]),
    "does-not-hold-itself": design(SHEET),
    "does-not-stand": design(OF_THREE),
    "runs-into-itself": design(NARROW),
    "unlike-back": UNLIKE,
    "reads-backwards": design(BACKWARDS),
}


@pytest.mark.parametrize("kind", WRONG_SHAPES)
def test_a_way_is_found_where_only_the_solved_piece_tells(
    call: Call, tmp_path: Path, kind: str
) -> None:
    data = WRONG_SHAPES[kind]
    problems = checked(call, tmp_path / "piece.yaml", yaml.safe_dump(data))
    assert kind in [one["kind"] for one in problems]
    assert follow_all(call, tmp_path / "piece.yaml", data)


def test_a_wide_sheet_between_columns_is_set_across_them_and_narrower(
    call: Call, tmp_path: Path
) -> None:
    """Neither change alone holds it: what is told makes both, and they are tried together."""
    column = {"column": {**COLUMN["column"], "rings": 9}}
    sheet = {"wall": {**SHEET["wall"], "across": 6, "up": 6}}
    parts = [{"name": one, "build": column} for one in "LR"]
    data = design(
        {"assembly": {"parts": [*parts, {"name": "W", "between": ["L", "R"], "build": sheet}]}}
    )
    data["build"]["assembly"] |= LOCKED
    sizes = {"link": (30, 20), "round": (13, 9)}
    data |= {
        "units": "cm",
        "balloons": {
            key: {**one, "nominal": sizes[one["kind"]][0], "inflate_to": sizes[one["kind"]][1]}
            for key, one in data["balloons"].items()
        },
    }
    file = tmp_path / "sheet.yaml"
    (folds,) = [one for one in checked(call, file, yaml.safe_dump(data)) if one["kind"] == "folds"]
    ways = [[made(one) for one in way["changes"]] for way in folds["changes"]]
    assert ways
    for way in ways:
        values = {one.at[-1]: one.value for one in way if isinstance(one, Put)}
        assert values["on"] == ["L", "R"]
        assert values["across"] in (3, 4, 5)
    assert follow_all(call, file, data) >= len(ways)
