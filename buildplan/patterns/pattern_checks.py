"""What columns, walls, solids, globes and arches must agree on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from pydantic import ValidationError

from buildplan.framework.naming import numbered
from buildplan.language.messages import Value, mark, message
from buildplan.patterns.keys import Build, Column, Letters, Solid, Wall
from buildplan.patterns.lettering import GLYPHS, HEIGHTS, can_draw, letter_joints
from buildplan.patterns.pattern_joints import (
    GLOBE_JOINTS,
    column_joints,
    solid_joints,
    wall_joints,
)
from buildplan.source.kinds import FileKind
from buildplan.source.mistake import Mistake, Path, listed
from buildplan.source.partial_validation import list_in, mapping_in
from buildplan.source.suggestions import Put, Suggestion, TakeOut, Way, by_hand, change

PATTERNS = tuple(Build.model_fields)
MOST_JOINTS = 6000


class Use(NamedTuple):
    """A key of a pattern that names a balloon: of which kind, and for what, as a marked message."""

    key: str
    kind: str
    use: str


A_LONG_CHAIN, A_BRACE, A_STRUT = mark("a long chain"), mark("a brace"), mark("a strut")
USES: Mapping[str, tuple[Use, ...]] = {
    "column": (Use("ring", "link", mark("a ring")), Use("between", "link", mark("a zigzag"))),
    "wall": (
        Use("row", "link", mark("a row")),
        Use("upright", "link", mark("an upright")),
        Use("between", "link", mark("what is between two layers")),
    ),
    "solid": (Use("edge", "link", mark("an edge")),),
    "globe": (Use("long", "link", A_STRUT), Use("short", "link", A_STRUT)),
    "arch": (Use("long", "link", A_LONG_CHAIN), Use("brace", "link", A_BRACE)),
    "letters": (
        Use("long", "link", mark("an outline")),
        Use("brace", "link", A_BRACE),
        Use("bar", "link", mark("a bar")),
    ),
    "assembly": (),
}
LOCK = Use("lock", "round", mark("a lock"))


def pattern_joints(build: Mapping[str, object]) -> list[str] | None:
    """The joints of a column, wall, solid or globe; None for anything else, and for one that is
    not written rightly."""
    try:
        if build.get("column") is not None:
            return column_joints(Column.model_validate(build["column"]))
        if build.get("wall") is not None:
            return wall_joints(Wall.model_validate(build["wall"]))
        if build.get("letters") is not None:
            letters = Letters.model_validate(build["letters"])
            right = letters.cells is not None and not _undrawn(letters.text, letters.cells)
            return letter_joints(letters.text, letters.cells) if letters.cells and right else None
        if build.get("solid") is not None:
            return solid_joints(Solid.model_validate(build["solid"]))
    except ValidationError:
        return None
    return numbered(GLOBE_JOINTS) if build.get("globe") is not None else None


def check_patterns(build: Mapping[str, object]) -> Iterator[Mistake]:
    """Every disagreement in the patterns that are neither tube nor graph."""
    named = [name for name in USES if build.get(name) is not None and name != "arch"]
    joints = pattern_joints(build)
    if joints is not None and len(joints) > MOST_JOINTS:
        yield Mistake(
            FileKind.TOO_MANY_JOINTS,
            ("build", named[0]),
            message("this {pattern} has {count} joints", pattern=named[0], count=len(joints)),
            by_hand(
                message(
                    "a piece of this pattern may have {count}; make it smaller", count=MOST_JOINTS
                )
            ),
        )
    wall = mapping_in(build.get("wall"))
    if wall:
        yield from _check_wall(wall)
    letters = mapping_in(build.get("letters"))
    if letters:
        yield from _check_letters(letters)


def _undrawn(text: str, cells: int) -> list[str]:
    """The characters of a text that cannot be had so many cells high, each once."""
    return [one for one in dict.fromkeys(text) if one != " " and not can_draw(one, cells)]


def _check_letters(letters: Mapping[str, object]) -> Iterator[Mistake]:
    at = ("build", "letters")
    text, cells = letters.get("text"), letters.get("cells")
    if (cells is None) == (letters.get("height") is None):
        yield Mistake(
            FileKind.CELLS_OR_HEIGHT,
            at,
            message("letters give neither cells nor a height")
            if cells is None
            else message("letters give their height twice over"),
            change(
                message(
                    "add {cells}; or height: a length",
                    cells=message("cells: {numbers}", numbers=listed(map(str, HEIGHTS), "or")),
                ),
                Put((*at, "cells"), HEIGHTS[1]),
            )
            if cells is None
            else Suggestion(
                ways=tuple(
                    Way(message("take {key} out", key=key), (TakeOut((*at, key)),))
                    for key in ("height", "cells")
                )
            ),
        )
    if isinstance(text, str) and cells in HEIGHTS:
        for one in _undrawn(text, int(str(cells))):
            if one in GLYPHS:
                yield Mistake(
                    FileKind.LETTER_TOO_LOW,
                    (*at, "cells"),
                    message(
                        "{letter} cannot be had {cells} cells high: its stems would run into one "
                        "another",
                        letter=one,
                        cells=str(cells),
                    ),
                    change(
                        message("make the letters {cells} cells high or more", cells=HEIGHTS[1]),
                        Put((*at, "cells"), HEIGHTS[1]),
                    ),
                )


def _check_wall(wall: Mapping[str, object]) -> Iterator[Mistake]:
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
                by_hand(
                    message(
                        "keep one cell at each side and above: the wall is {across} by {up} cells",
                        across=str(across),
                        up=str(up),
                    )
                ),
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


def _add_balloon(at: Path, key: object) -> Suggestion:
    """A suggestion to name a balloon at `at`: that of `key`, where it is one."""
    if not isinstance(key, str):
        return by_hand(message("add {key}, with the key of its balloon", key=str(at[-1])))
    return change(message("add {right}", right=f"{at[-1]}: {key}"), Put(at, key))


def pattern_words() -> Value:
    """The patterns in words."""
    return listed(PATTERNS, "or")
