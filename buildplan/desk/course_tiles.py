"""The course of a tube as tiles: each cell with its picture, and how far all of it turns."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from buildplan.desk.tile_pictures import TileColours, tile_picture
from buildplan.desk.whole_file import WholeFile
from buildplan.framework.cells import CELL_KINDS, CellKind
from buildplan.language.messages import Message, message, message_count
from buildplan.patterns.assembly_keys import AssemblyPart
from buildplan.patterns.closure import short_side_words
from buildplan.patterns.course import INNER_CHAINS, OUTER_CHAINS, cell_counts, cell_of
from buildplan.patterns.joining_parts import part_names
from buildplan.patterns.tube_keys import Tube
from buildplan.patterns.tube_lengths import side_lengths
from buildplan.patterns.turning import (
    FULL_TURN_DEG,
    CourseTurn,
    SideLengths,
    cell_turn,
    comes_round,
    course_turn,
)
from buildplan.source.balloons import Balloon
from buildplan.source.mistake import Path
from buildplan.source.partial_validation import Salvaged, list_in, mapping_in, salvage
from buildplan.source.trade_words import in_file_words

MOST_ADVANCE = 20
MOST_CELLS = 20_000  # as many balloons a tube may take, and each cell has one at least
Data = dict[str, object]


@dataclass(frozen=True)
class _TiledTube:
    """A tube of the file, as far as it is right: what its tiles are told by."""

    at: Path
    tube: Salvaged[Tube]
    lengths: SideLengths | None
    colours: TileColours
    whole: WholeFile


def courses_of(whole: WholeFile) -> tuple[Data | None, list[Data]]:
    """The course of a design that is a tube, else None; and those of its parts that are tubes."""
    data = mapping_in(in_file_words(whole.data))
    build = mapping_in(data.get("build"))
    own = _course(("build", "tube"), build, data, whole, [])
    parts = list_in(mapping_in(build.get("assembly")).get("parts"))
    of_parts = [
        _course(
            ("build", "assembly", "parts", i, "build", "tube"),
            mapping_in(mapping_in(part).get("build")),
            {**data, "colour_pattern": mapping_in(part).get("colour_pattern")},
            whole,
            _built_as(mapping_in(part)),
        )
        for i, part in enumerate(parts)
    ]
    return own, [one for one in of_parts if one is not None]


def _built_as(part: Mapping[str, Any]) -> list[str]:
    """What a part is called each time that it is built, as far as the file is right."""
    known = salvage(AssemblyPart, part)
    return part_names(known.part) if known.right("name", "repeat") else []


def _course(
    at: Path,
    build: Mapping[str, Any],
    data: Mapping[str, Any],
    whole: WholeFile,
    built_as: list[str],
) -> Data | None:
    """The course of a tube that is `built_as` these parts, or is the whole piece."""
    given = build.get("tube")
    if not isinstance(given, dict) or not isinstance(given.get("course"), list):
        return None
    tube = salvage(Tube, given)
    balloons = {key: salvage(Balloon, one) for key, one in mapping_in(data.get("balloons")).items()}
    course = _TiledTube(
        (*at, "course"),
        tube,
        _lengths(tube, balloons, mapping_in(data.get("colour_pattern"))),
        _colours(tube, balloons),
        whole,
    )
    return {
        "path": list(course.at),
        "parts": built_as,
        "tiles": list(_tiles(given["course"], course.at, course, _first_cell(tube))),
        "kinds": [_kind(kind, course) for kind in CELL_KINDS.values()],
        **_turning(course),
    }


def _first_cell(tube: Salvaged[Tube]) -> list[int]:
    """The number of the first cell; none where the course is wrong, or too long to be built."""
    if not tube.right("course"):
        return []
    return [1] if sum(cell_counts(tube.part.course).values()) <= MOST_CELLS else []


def _lengths(
    tube: Salvaged[Tube], balloons: Mapping[str, Salvaged[Balloon]], colours: Mapping[str, object]
) -> SideLengths | None:
    if not tube.right("closed", "chains", "long", "brace", "course"):
        return None
    if isinstance(tube.part.long, dict) and not {
        *OUTER_CHAINS[tube.part.chains],
        *INNER_CHAINS[tube.part.chains],
    } <= set(tube.part.long):
        return None
    return side_lengths(tube.part, balloons, colours, _advances(tube.part))


def _advances(tube: Tube) -> tuple[int, int]:
    counts = cell_counts(tube.course)
    return (
        sum(count * cell.outer for cell, count in counts.items()),
        sum(count * cell.inner for cell, count in counts.items()),
    )


def _colours(tube: Salvaged[Tube], balloons: Mapping[str, Salvaged[Balloon]]) -> TileColours:
    """The colours of the outer and the inner chains and of the braces, as far as they are known."""

    def colour(key: object, usual: str) -> str:
        one = balloons.get(key) if isinstance(key, str) else None
        return one.part.colour if one is not None and one.right("colour") else usual

    usual = TileColours()
    long = getattr(tube.part, "long", None)
    chains = getattr(tube.part, "chains", 4)
    outer, inner = (
        long.get(letters[chains][0]) if isinstance(long, dict) else long
        for letters in (OUTER_CHAINS, INNER_CHAINS)
    )
    return TileColours(
        colour(outer, usual.outer),
        colour(inner, usual.inner),
        colour(getattr(tube.part, "brace", None), usual.brace),
    )


def _tiles(
    items: list[object], at: Path, course: _TiledTube, begins: Sequence[int]
) -> Iterator[Data]:
    """The tiles of a list of the file that `begins` with these cells of the course, one for each
    time that it is laid, none if cells cannot be counted; what is no cell is a tile too, with its
    text."""
    done = 0
    for i, item in enumerate(items):
        path, size = (*at, i), _size(item)
        starts = [begin + done for begin in begins]
        done += size
        if isinstance(item, dict):
            cells, repeat = list_in(item.get("cells")), _repeat(item)
            inner = [start + turn for start in starts for turn in range(0, size, size // repeat)]
            yield {
                **_tile(path, None, course, []),
                "repeat": repeat,
                "tiles": list(_tiles(cells, (*path, "cells"), course, inner)),
            }
        else:
            yield _tile(path, item, course, starts)


def _repeat(group: Mapping[str, object]) -> int:
    repeat = group.get("repeat", 1)
    return repeat if isinstance(repeat, int) else 1


def _size(item: object) -> int:
    """How many cells an item of the list is."""
    if not isinstance(item, dict):
        return 1
    return _repeat(item) * sum(_size(one) for one in list_in(item.get("cells")))


def _tile(path: Path, item: object, course: _TiledTube, cells: list[int]) -> Data:
    cell = _cell(item)
    told = {} if cell is None else _kind(cell, course)
    label = "" if item is None else str(item)
    return {
        "label": label,
        "picture": "",
        "outer": None,
        "inner": None,
        "turns": "",
        **told,
        "path": list(path),
        "cell": item,
        "cells": cells,
        "repeat": 1,
        "tiles": [],
    }


def _cell(item: object) -> CellKind | None:
    if isinstance(item, str):
        return CELL_KINDS.get(item)
    if isinstance(item, list) and len(item) == 2 and all(_is_advance(one) for one in item):
        return cell_of(item)
    return None


def _is_advance(one: object) -> bool:
    return isinstance(one, int) and not isinstance(one, bool) and 0 <= one <= MOST_ADVANCE


def _kind(cell: CellKind, course: _TiledTube) -> Data:
    """A kind of cell as a tile of the course would be."""
    voice = course.whole.voice
    own = cell.name not in CELL_KINDS
    called = voice.tell(cell.words.called)
    return {
        "cell": [cell.outer, cell.inner] if own else cell.name,
        "label": f"{called} {cell.outer}, {cell.inner}" if own else called,
        "outer": cell.outer,
        "inner": cell.inner,
        "turns": "" if course.lengths is None else _turn_words(cell, course.lengths, course.whole),
        "picture": tile_picture(cell.outer, cell.inner, course.colours),
    }


def _turn_words(cell: CellKind, lengths: SideLengths, whole: WholeFile) -> str:
    turn = cell_turn(cell, lengths)
    return whole.voice.tell(_turns(turn))


def _turns(turn: CourseTurn) -> Message:
    least, most = round(turn.least_deg), round(turn.most_deg)
    if least == most:
        return message("turns {most} degrees", most=most)
    return message("can turn {least} to {most} degrees", least=least, most=most)


def _closing(turn: CourseTurn, fits: bool) -> Message:
    """As `_turns`, of a course that must come round."""
    least, most, full = round(turn.least_deg), round(turn.most_deg), round(FULL_TURN_DEG)
    if least == most:
        return message("turns {most} of {full} degrees", most=most, full=full)
    if fits:
        return message("can come round: its corners give as far as it needs")
    return message(
        "can turn {least} to {most} of {full} degrees", least=least, most=most, full=full
    )


def _turning(course: _TiledTube) -> Data:
    """How far it turns, and how its two sides are to each other, in figures and in words."""
    tube, lengths, voice = course.tube, course.lengths, course.whole.voice
    if lengths is None:
        return {"turn": None, "sides": [], "short": ""}
    counts = cell_counts(tube.part.course)
    turn = course_turn(counts, lengths)
    closed = tube.part.closed
    fits = comes_round(counts, lengths)
    needed = round(FULL_TURN_DEG) if closed else None
    words = _closing(turn, fits) if closed else _turns(turn)
    outer, inner = _advances(tube.part)
    sides = [
        message_count("outer side: {number} balloon", "outer side: {number} balloons", outer),
        message_count("inner side: {number} balloon", "inner side: {number} balloons", inner),
    ]
    short = (
        "" if fits or not closed else voice.tell(short_side_words(lengths, turn.shortfall_deg()))
    )
    return {
        "turn": {
            "least_deg": round(turn.least_deg, 1),
            "most_deg": round(turn.most_deg, 1),
            "needed_deg": needed,
            "fits": fits if closed else True,
            "words": voice.tell(words),
        },
        "sides": [voice.tell(one) for one in sides],
        "short": short,
    }
