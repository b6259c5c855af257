"""What the keys of a wall must agree on: its layers, and the room about its openings."""

from __future__ import annotations

from collections.abc import Iterator

from buildplan.language.messages import message
from buildplan.patterns.pattern import Given, Whole
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.suggestions import Put, Remedy, Suggestion, by_hand, change


def check_wall(wall: Given, whole: Whole) -> Iterator[Mistake]:
    """Every disagreement of a wall's keys, given as plain data."""
    if wall.get("layers") == 2 and wall.get("between") is None:
        yield Mistake(
            FileKind.KEY_MISSING,
            ("build", "wall"),
            message("a wall of two layers names no balloon between them"),
            _add_balloon(("build", "wall", "between"), wall.get("upright")),
        )
    across, up = wall.get("across"), wall.get("up")
    boxes: list[tuple[int, int, int, int]] = []
    for i, given in enumerate(list_in(wall.get("openings"))):
        opening = mapping_in(given)
        numbers = [opening.get(key) for key in ("along", "up", "wide", "high")]
        if not all(type(n) is int for n in [*numbers, across, up]):
            continue
        left, low, wide, high = (int(str(n)) for n in numbers)
        at = ("build", "wall", "openings", i)
        inside = (
            left >= 1 and left + wide <= int(str(across)) - 1 and low + high <= int(str(up)) - 1
        )
        if not inside:
            yield Mistake(
                FileKind.OPENING_AT_EDGE,
                at,
                message("this opening leaves no cell of the wall beside it or above it"),
                _room_about(at, wall, (left, low, wide, high)),
            )
        for other in boxes:
            if (
                left <= other[2]
                and other[0] <= left + wide
                and low <= other[3]
                and other[1] <= low + high
            ):
                yield Mistake(
                    FileKind.OPENINGS_MEET,
                    at,
                    message("this opening meets another"),
                    by_hand(message("leave at least one cell between two openings")),
                )
                break
        boxes.append((left, low, left + wide, low + high))


def _room_about(at: Path, wall: Given, opening: tuple[int, int, int, int]) -> Suggestion:
    """A suggestion of a wall that has a cell at each side of an opening and above it."""
    left, low, wide, high = opening
    along = max(left, 1)
    across, up = max(wall["across"], along + wide + 1), max(wall["up"], low + high + 1)
    right = f"across: {across}, up: {up}" + (f", along: {along}" if along != left else "")
    puts = [Put((*at[:2], "across"), across), Put((*at[:2], "up"), up)]
    return Suggestion(
        (
            message(
                "keep one cell at each side and above: the wall is {across} by {up} cells",
                across=str(wall["across"]),
                up=str(wall["up"]),
            ),
        ),
        (
            Remedy(
                message("make room for it: {right}", right=right),
                (*puts, *([Put((*at, "along"), along)] if along != left else [])),
            ),
        ),
    )


def _add_balloon(at: Path, key: object) -> Suggestion:
    """A suggestion to name a balloon at `at`: that of `key`, where it is one."""
    if not isinstance(key, str):
        return by_hand(message("add {key}, with the key of its balloon", key=str(at[-1])))
    return change(message("add {right}", right=f"{at[-1]}: {key}"), Put(at, key))
