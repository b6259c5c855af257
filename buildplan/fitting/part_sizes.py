"""Parts of an assembly built wider, narrower, higher or otherwise: what may mend how they meet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import ceil
from typing import Any

from buildplan.evaluation.measured import Measured
from buildplan.language.messages import listing, message
from buildplan.patterns.assembly_keys import PLACES
from buildplan.shape.reaching import off_the_middle, reaches
from buildplan.source.suggestions import Put, Remedy

Data = Mapping[str, Any]

AT = ("build", "assembly")
WIDTHS: Mapping[str, str] = {"wall": "across", "arch": "span"}  # what says how wide a part is
HEIGHTS: Mapping[str, str] = {"column": "rings", "wall": "up"}  # and how high

FEET = (5, 4, 3)  # joints that the foot of a globe or of a solid has, the usual first
AROUND = "around"


def parts_of(data: Data) -> Sequence[Data]:
    """The parts of an assembly, as its file has them."""
    found: Sequence[Data] = data["build"]["assembly"]["parts"]
    return found


def carriers_of(part: Data) -> list[str]:
    """The parts that a part says it is set on, between or beside."""
    given: Any = next((part[key] for key in PLACES if part.get(key)), [])
    return [given] if isinstance(given, str) else list(given)


def as_wide(data: Data, piece: Measured) -> Iterator[Remedy]:
    """What carries a word made as wide as the word is: the part that was set down last."""
    lengths = [one.tie_to_tie_m for one in piece.framework.balloons.values()]
    for reach in reaches(piece.framework, piece.shape):
        # as many on either side: what is in its middle stays there
        more = 2 * ceil(max(reach.left_m, reach.right_m) / max(lengths))
        yield from _wider(data, reach.carriers, more)


def odd_or_even(data: Data, piece: Measured) -> Iterator[Remedy]:
    """What stands off the middle, or what carries it, a balloon wider."""
    for one in off_the_middle(piece.framework, piece.shape):
        if one.far:
            continue
        yield from _wider(data, (*one.carriers, one.name), 1)


def _wider(data: Data, names: Sequence[str], more: int) -> Iterator[Remedy]:
    """Parts of those names so many balloons wider, the last first."""
    for i, part in reversed(list(enumerate(parts_of(data)))):
        for pattern, key in WIDTHS.items():
            now = _key_of(part, pattern, key)
            if part["name"] not in names or not isinstance(now, int):
                continue
            right = f"{key}: {now + more}"
            words = message("make part {part} wider: {right}", part=part["name"], right=right)
            wider = Put((*AT, "parts", i, "build", pattern, key), now + more)
            yield Remedy(words, (wider,))


def of_one_height(data: Data) -> Iterator[Remedy]:
    """What carries a part together built as high as the highest of it, or as the lowest: else the
    lower hangs in the air."""
    for part in parts_of(data):
        names = carriers_of(part) if isinstance(part.get("on"), list) else []
        for pattern, key in HEIGHTS.items():
            found = {
                i: _key_of(one, pattern, key)
                for i, one in enumerate(parts_of(data))
                if one["name"] in names
            }
            given = {i: height for i, height in found.items() if isinstance(height, int)}
            if len(given) < len(names) or len(set(given.values())) < 2:
                continue
            for height in (max(given.values()), min(given.values())):
                words = message(
                    "build {parts} of one height: {right}",
                    parts=listing(names),
                    right=f"{key}: {height}",
                )
                puts = (
                    Put((*AT, "parts", i, "build", pattern, key), height)
                    for i, now in given.items()
                    if now != height
                )
                yield Remedy(words, tuple(puts))


def _key_of(part: Data, pattern: str, key: str) -> object:
    """The value of a key of a part's pattern that is given in place, or None."""
    keys = (part.get("build") or {}).get(pattern)
    return keys.get(key) if isinstance(keys, Mapping) else None


def as_its_foot(data: Data) -> Iterator[Remedy]:
    """A column that carries one part alone of as many balloons around as the foot of that may have:
    as many as a column that stands on it; a globe stands on five joints, a solid on three or
    four."""
    for i, part in enumerate(parts_of(data)):
        now = _key_of(part, "column", AROUND)
        carried = [one for one in parts_of(data) if one.get("on") == part["name"]]
        if now is None or len(carried) != 1:
            continue
        foot = _key_of(carried[0], "column", AROUND)
        for around in dict.fromkeys((*([foot] if isinstance(foot, int) else []), *FEET)):
            if around != now:
                words = message(
                    "build {part} of other rings, on which {other} stands: {right}",
                    part=part["name"],
                    other=carried[0]["name"],
                    right=f"{AROUND}: {around}",
                )
                put = Put((*AT, "parts", i, "build", "column", AROUND), around)
                yield Remedy(words, (put,))


def columns_of_four(data: Data) -> Iterator[Remedy]:
    """Columns that carry others built four balloons around: a beam then lies on all four joints of
    their tops, and on two of most others."""
    carriers = {name for part in parts_of(data) for name in carriers_of(part)}
    found = {
        part["name"]: Put((*AT, "parts", i, "build", "column", AROUND), 4)
        for i, part in enumerate(parts_of(data))
        if part["name"] in carriers and (part.get("build") or {}).get("column")
        if part["build"]["column"].get(AROUND) != 4
    }
    if found:
        words = message(
            "build what carries it, {parts}, four balloons around: {right}",
            parts=listing([*found]),
            right="around: 4",
        )
        yield Remedy(words, tuple(found.values()))
