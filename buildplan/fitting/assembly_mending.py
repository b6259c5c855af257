"""What may mend an assembly: ties swapped, a part set on another, another course of a part."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations
from pathlib import Path
from typing import Any

from buildplan.evaluation.measured import Measured, first_mistake, measure
from buildplan.evaluation.off_the_floor import FloorKind
from buildplan.fitting.apart import tied_by_balloons
from buildplan.fitting.near_courses import COURSE_TRIALS, OF_THE_COURSE, near_courses
from buildplan.fitting.part_sizes import (
    AT,
    Data,
    as_its_foot,
    as_wide,
    carriers_of,
    columns_of_four,
    odd_or_even,
    of_one_height,
    parts_of,
)
from buildplan.framework.assembly import outer_part
from buildplan.language.messages import listing, message
from buildplan.patterns.assembly_keys import PLACES
from buildplan.shape.constants import constants_with
from buildplan.shape.finding import Settings, shapes_of_parts
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.retying import retied
from buildplan.shape.seat_places import SIDES
from buildplan.source.kinds import FileKind
from buildplan.source.problems import ProblemKind
from buildplan.source.suggestions import Change, Put, Remedy, Suggestion, TakeOut, within

OF_PLACES = (FileKind.LOOSE_PART, ShapeKind.NOTHING_MEETS, ShapeKind.SAME_PLACE)
OF_TIES = (ShapeKind.TIES_CANNOT_MEET, ShapeKind.READS_BACKWARDS)
OF_ASSEMBLIES = (*OF_PLACES, *OF_TIES, *OF_THE_COURSE)
# what a part may do that meets those beside it or below it otherwise than it could
OF_BETWEEN = (
    ShapeKind.DOES_NOT_FIT,
    ShapeKind.DOES_NOT_CLOSE,
    ShapeKind.NOT_AS_DRAWN,
    ShapeKind.RUNS_INTO_ITSELF,
    ShapeKind.DOES_NOT_STAND,
    ShapeKind.FOLDS,
    ShapeKind.DOES_NOT_HOLD_ITSELF,
)
# what a beam that too few joints hold may do
OF_A_BEAM = (
    ShapeKind.NOT_AS_DRAWN,
    ShapeKind.FOLDS,
    ShapeKind.DOES_NOT_STAND,
    ShapeKind.DOES_NOT_HOLD_ITSELF,
)
# what may come of columns of two heights beneath one part
OF_UNEVEN = (*OF_A_BEAM, ShapeKind.RUNS_INTO_ITSELF, FloorKind.OFF_THE_FLOOR)
MOST_PLACES = 6  # places of a part that are tried: each takes as long as a check


def assembly_ways(kind: ProblemKind, data: Data, folder: Path) -> Iterator[Remedy]:
    """Ways that a problem of an assembly may have; none of them is tried yet."""
    if kind is FileKind.LOOSE_PART:
        yield from _places(data, _loose(data))
    elif kind in (ShapeKind.NOTHING_MEETS, ShapeKind.SAME_PLACE):
        if kind is ShapeKind.SAME_PLACE:
            yield from _other_sides(data)
        yield from _places(data, [one["name"] for one in parts_of(data) if _carried(one)])
    elif kind in OF_TIES:
        yield from _not_mirrored(data)
        yield from _swapped(data, measure(data, folder))
        yield from _on_in_place_of_ties(data)
    elif kind in OF_THE_COURSE:
        yield from _courses_of_parts(data)
    elif kind is ShapeKind.REACHES_PAST:
        yield from as_wide(data, measure(data, folder))
    elif kind is ShapeKind.OFF_THE_MIDDLE:
        yield from odd_or_even(data, measure(data, folder))
    if kind in OF_UNEVEN:
        yield from of_one_height(data)
    if kind in OF_A_BEAM:
        yield from columns_of_four(data)
    if kind in OF_BETWEEN:
        yield from as_its_foot(data)
        yield from tied_by_balloons(data, folder)
        yield from _across_or_between(data)


def _ties(data: Data) -> Sequence[Any]:
    return data["build"]["assembly"].get("ties") or ()


def _carried(part: Data) -> bool:
    return any(part.get(key) is not None for key in PLACES)


def _joints(tie: Any) -> list[str]:
    return list(tie["joints"] if isinstance(tie, Mapping) else tie)


# --- places -------------------------------------------------------------------------------


def _loose(data: Data) -> list[str]:
    """The parts, once built, that no tie names and that are set on nothing."""
    tied = {outer_part(joint) for tie in _ties(data) for joint in _joints(tie)}
    named = {name for part in parts_of(data) for name in carriers_of(part)}
    return [
        part["name"]
        for part in parts_of(data)
        if part["name"] not in tied | named and not _carried(part) and part.get("repeat", 1) == 1
    ]


def _places(data: Data, names: Sequence[str]) -> Iterator[Remedy]:
    """Other places of the last of some parts: on another, across two, or between two."""
    if not names:
        return
    parts = parts_of(data)
    own = next(i for i in reversed(range(len(parts))) if parts[i]["name"] in names)
    others = [part["name"] for part in parts[:own] if part.get("repeat", 1) == 1]
    found: list[tuple[str, Any]] = [("on", name) for name in reversed(others)]
    for pair in combinations(others, 2):
        found += [("on", list(pair)), ("between", list(pair))]
    for key, place in found[:MOST_PLACES]:
        yield from _placed(data, parts[own]["name"], key, place)


def _other_sides(data: Data) -> Iterator[Remedy]:
    """What is tied beside a part set on other sides of it, what was set down last first."""
    for part in reversed(parts_of(data)):
        for key in (one for one in SIDES if part.get(one) is not None):
            for side in (one for one in SIDES if one != key):
                yield from _placed(data, part["name"], side, part[key])


def _placed(data: Data, name: str, key: str, place: str | list[str]) -> Iterator[Remedy]:
    """A part set at a place of that key, unless it is so already."""
    own = next(i for i, part in enumerate(parts_of(data)) if part["name"] == name)
    part, at = parts_of(data)[own], (*AT, "parts", own)
    if part.get(key) == place:
        return
    right = f"{key}: {place}" if isinstance(place, str) else f"{key}: [{', '.join(place)}]"
    others = [one for one in PLACES if one != key and part.get(one) is not None]
    clear = [TakeOut((*at, other)) for other in others]
    words = message("give part {part} its place: {right}", part=name, right=right)
    yield Remedy(words, (*clear, Put((*at, key), place)))


def _across_or_between(data: Data) -> Iterator[Remedy]:
    """What is tied between two parts set across them, and the other way round."""
    for part in parts_of(data):
        if part.get("between") is not None:
            yield from _placed(data, part["name"], "on", list(part["between"]))
        elif isinstance(part.get("on"), list) and len(part["on"]) == 2:
            yield from _placed(data, part["name"], "between", list(part["on"]))


# --- ties ---------------------------------------------------------------------------------


def _not_mirrored(data: Data) -> Iterator[Remedy]:
    for i, part in enumerate(parts_of(data)):
        if part.get("mirrored"):
            words = message("take {key} out of part {part}", key="mirrored", part=part["name"])
            yield Remedy(words, (TakeOut((*AT, "parts", i, "mirrored")),))


def _swapped(data: Data, piece: Measured) -> Iterator[Remedy]:
    """The same ties with what they bring together in another order."""
    settings = Settings(constants=constants_with(piece.design.constants))
    better = retied(piece.framework, shapes_of_parts(piece.framework, settings))
    if not better:
        return
    changes: list[Change] = []
    now: dict[str, str] = {}
    for i, tie in enumerate(_ties(data)):
        joints = _joints(tie)
        own = next((joint for joint in joints if joint in better), None)
        if own is None or len(joints) != 2:
            continue
        other = 1 - joints.index(own)
        place = ("joints", other) if isinstance(tie, Mapping) else (other,)
        changes.append(Put((*AT, "ties", i, *place), better[own]))
        now[joints[other]] = better[own]
    if len(changes) < len(better):
        return
    if all(now.get(other) == one for one, other in now.items()):
        swaps = [
            message("{one} with {other}", one=one, other=other)
            for place, (one, other) in enumerate(now.items())
            if other not in [*now][:place]
        ]
        yield Remedy(message("swap {swaps} in the ties", swaps=listing(swaps)), tuple(changes))
    else:
        meet = [message("{one} to {other}", one=own, other=other) for own, other in better.items()]
        yield Remedy(message("tie {joints}", joints=listing(meet)), tuple(changes))


def _on_in_place_of_ties(data: Data) -> Iterator[Remedy]:
    """A part set on the others that it is tied to, in place of all its ties to them."""
    for i, part in reversed(list(enumerate(parts_of(data)))):
        of_it = [
            (j, _joints(tie))
            for j, tie in enumerate(_ties(data))
            if any(outer_part(joint) == part["name"] for joint in _joints(tie))
        ]
        others = {outer_part(joint) for _, joints in of_it for joint in joints} - {part["name"]}
        names = [one["name"] for one in parts_of(data)[:i] if one["name"] in others]
        if not names or _carried(part) or len(names) < len(others):
            continue
        place: str | list[str] = names[0] if len(names) == 1 else names
        gone = {j for j, _ in of_it}
        left = [tie for j, tie in enumerate(_ties(data)) if j not in gone]
        right = f"on: {place}" if isinstance(place, str) else f"on: [{', '.join(place)}]"
        words = message(
            "give part {part} its place in place of its ties: {right}",
            part=part["name"],
            right=right,
        )
        yield Remedy(words, (Put((*AT, "parts", i, "on"), place), Put((*AT, "ties"), left)))


# --- courses ------------------------------------------------------------------------------

OF_A_PIECE = ("buildplan", "name", "units", "balloons", "constants")  # what a part is built with


def _courses_of_parts(data: Data) -> Iterator[Remedy]:
    """The nearest course that closes, of each part that is a closed tube given in place and does
    not close by itself."""
    for i, part in enumerate(parts_of(data)):
        tube = (part.get("build") or {}).get("tube")
        if not isinstance(tube, Mapping) or not tube.get("closed"):
            continue
        alone = {**{key: data[key] for key in OF_A_PIECE if key in data}, "build": part["build"]}
        if first_mistake(alone) is None and not measure(alone).shape.problems:
            continue
        for near in near_courses(alone, 1, COURSE_TRIALS):
            (way,) = within((*AT, "parts", i), Suggestion(ways=(near.way,))).ways
            words = message("in part {part}: {change}", part=part["name"], change=way.words)
            yield Remedy(words, way.changes)
