"""Pieces of every pattern, broken as people break them: whatever way of mending `check` names is
followed by a program that knows nothing else, and the problem is gone.

The pieces are our own. What breaks them is drawn at random from a seed, the same on every run; the
seeds are those of pieces that break where the shape has to be solved to tell what mends it.
"""

from __future__ import annotations

import json
import random
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from conftest import Call
from trial_pieces import PIECES, design

from buildplan.source.file_changes import changed_text
from buildplan.source.suggestions import Change, Put, Rename, TakeOut


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
