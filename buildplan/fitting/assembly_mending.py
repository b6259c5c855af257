"""What may mend an assembly: ties swapped, a part set on another, one balloon more."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations
from pathlib import Path
from typing import Any

from buildplan.evaluation.measured import Measured, measure
from buildplan.framework.assembly import outer_part
from buildplan.language.messages import Message, listing, message
from buildplan.shape.constants import constants_with
from buildplan.shape.finding import Settings, shapes_of_parts
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.retying import retied
from buildplan.shape.stiffness import stiffening_brace
from buildplan.source.kinds import FileKind
from buildplan.source.problems import ProblemKind
from buildplan.source.suggestions import Change, Put, Remedy, TakeOut

Data = Mapping[str, Any]

AT = ("build", "assembly")
OF_PLACES = (FileKind.LOOSE_PART, ShapeKind.NOTHING_MEETS)
OF_TIES = (ShapeKind.TIES_CANNOT_MEET, ShapeKind.READS_BACKWARDS)
OF_ASSEMBLIES = (*OF_PLACES, *OF_TIES, ShapeKind.FOLDS)
MOST_PLACES = 6  # places of a part that are tried: each takes as long as a check
FITS = 0.06  # how far a further balloon may be longer or shorter than the place for it


def assembly_ways(kind: ProblemKind, data: Data, folder: Path) -> Iterator[Remedy]:
    """Ways that a problem of an assembly may have; none of them is tried yet."""
    if kind is FileKind.LOOSE_PART:
        yield from _places(data, _loose(data))
    elif kind is ShapeKind.NOTHING_MEETS:
        yield from _places(data, [one["name"] for one in _parts(data) if _carried(one)])
    elif kind in OF_TIES:
        yield from _not_mirrored(data)
        yield from _swapped(data, measure(data, folder))
        yield from _on_in_place_of_ties(data)
    elif kind is ShapeKind.FOLDS:
        yield from _one_more_balloon(data, measure(data, folder))


def _parts(data: Data) -> Sequence[Data]:
    found: Sequence[Data] = data["build"]["assembly"]["parts"]
    return found


def _ties(data: Data) -> Sequence[Any]:
    return data["build"]["assembly"].get("ties") or ()


def _carried(part: Data) -> bool:
    return part.get("on") is not None or part.get("between") is not None


def _joints(tie: Any) -> list[str]:
    return list(tie["joints"] if isinstance(tie, Mapping) else tie)


# --- places -------------------------------------------------------------------------------


def _loose(data: Data) -> list[str]:
    """The parts, once built, that no tie names and that are set on nothing."""
    tied = {outer_part(joint) for tie in _ties(data) for joint in _joints(tie)}
    named = {name for part in _parts(data) for name in _carriers(part)}
    return [
        part["name"]
        for part in _parts(data)
        if part["name"] not in tied | named and not _carried(part) and part.get("repeat", 1) == 1
    ]


def _carriers(part: Data) -> list[str]:
    given = part.get("on") or part.get("between") or []
    return [given] if isinstance(given, str) else list(given)


def _places(data: Data, names: Sequence[str]) -> Iterator[Remedy]:
    """Other places of the last of some parts: on another, across two, or between two."""
    if not names:
        return
    parts = _parts(data)
    own = next(i for i in reversed(range(len(parts))) if parts[i]["name"] in names)
    others = [part["name"] for part in parts[:own] if part.get("repeat", 1) == 1]
    at = (*AT, "parts", own)
    clear = [TakeOut((*at, key)) for key in ("on", "between") if parts[own].get(key) is not None]
    found: list[tuple[str, Any]] = [("on", name) for name in reversed(others)]
    for pair in combinations(others, 2):
        found += [("on", list(pair)), ("between", list(pair))]
    for key, place in found[:MOST_PLACES]:
        if parts[own].get(key) == place:
            continue
        right = f"{key}: {place}" if isinstance(place, str) else f"{key}: [{', '.join(place)}]"
        kept = [one for one in clear if one.at[-1] != key]
        words = message("give part {part} its place: {right}", part=parts[own]["name"], right=right)
        yield Remedy(words, (*kept, Put((*at, key), place)))


# --- ties ---------------------------------------------------------------------------------


def _not_mirrored(data: Data) -> Iterator[Remedy]:
    for i, part in enumerate(_parts(data)):
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
    for i, part in reversed(list(enumerate(_parts(data)))):
        of_it = [
            (j, _joints(tie))
            for j, tie in enumerate(_ties(data))
            if any(outer_part(joint) == part["name"] for joint in _joints(tie))
        ]
        others = {outer_part(joint) for _, joints in of_it for joint in joints} - {part["name"]}
        names = [one["name"] for one in _parts(data)[:i] if one["name"] in others]
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


# --- stiffness ----------------------------------------------------------------------------


def _one_more_balloon(data: Data, piece: Measured) -> Iterator[Remedy]:
    """The one balloon more between two parts that stiffens the whole most, by itself and with its
    twin of the other side; sized to fit where no link of the piece does."""
    constants = constants_with(piece.design.constants)
    extra = stiffening_brace(piece.framework, piece.shape, constants)
    if extra is None:
        return
    joints = [place.partition("+")[0] for place in extra.joints]
    if outer_part(joints[0]) == outer_part(joints[1]):
        return
    mirror = piece.framework.mirror
    twins = [mirror.get(joint, joint) for joint in joints]
    key, sized = _balloon_for(data, piece, extra.length_m)
    for pairs in ([joints], [joints, twins]):
        if len(pairs) > 1 and sorted(twins) == sorted(joints):
            return
        ties = [{"joints": pair, "balloon": key} for pair in pairs]
        words = message(
            "tie one more balloon ({balloon}) between each of {joints}",
            balloon=_told(key, sized),
            joints=listing([message("{one} and {other}", one=a, other=b) for a, b in pairs]),
        )
        yield Remedy(words, (*sized, Put((*AT, "ties"), [*_ties(data), *ties])))


def _balloon_for(data: Data, piece: Measured, length_m: float) -> tuple[str, tuple[Put, ...]]:
    """The key of a link of that length; where there is none, of one that is added by a change."""
    links = {key: one for key, one in piece.framework.balloons.items() if one.kind.is_strut}
    key, near = min(links.items(), key=lambda item: abs(item[1].tie_to_tie_m - length_m))
    if abs(length_m / near.tie_to_tie_m - 1) <= FITS or key not in data["balloons"]:
        return key, ()
    given = dict(data["balloons"][key])
    gauge = round(given["inflate_to"] * length_m / near.tie_to_tie_m, 1)
    for measured in ("tie_to_tie", "chain_of_ten"):
        given.pop(measured, None)
    name = "extra"
    while name in data["balloons"]:
        name += " more"
    sized = {**given, "inflate_to": min(gauge, given["nominal"])}
    return name, (Put(("balloons", name), sized),)


def _told(key: str, sized: Sequence[Put]) -> Message | str:
    """What a balloon is called: its key, and what it is sized to where it is added."""
    if not sized:
        return key
    given = sized[0].value
    assert isinstance(given, dict), "a balloon is added with its keys"
    return message("{key}, sized to {gauge}", key=key, gauge=f"{given['inflate_to']:g}")
