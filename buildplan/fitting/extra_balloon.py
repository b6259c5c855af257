"""One balloon more where it stiffens a piece most: as each pattern writes it into its file."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import fsum
from typing import Any

from buildplan.design.measures import Units
from buildplan.evaluation.measured import Measured
from buildplan.framework.assembly import outer_part
from buildplan.language.messages import Message, listing, message
from buildplan.patterns.registry import patterns_in
from buildplan.shape.constants import constants_with
from buildplan.shape.model import ExtraBrace
from buildplan.shape.stiffness import stiffening_braces
from buildplan.source.mistake import Path
from buildplan.source.suggestions import Put, Remedy

Data = Mapping[str, Any]
Pair = list[str]

FITS = 0.06  # how far a further balloon may be longer or shorter than the place for it
EXTRA = "extra"


def one_more_balloon(data: Data, piece: Measured | None) -> Iterator[Remedy]:
    """The one balloon more that stiffens the whole most, by itself and with its twin of the other
    side, and the next best; sized to fit where no link of the piece does. Nothing where the
    pattern takes none there.
    """
    if piece is None:
        return
    for _, ways in balloons_more(data, piece):
        yield from ways


def balloons_more(data: Data, piece: Measured) -> Iterator[tuple[ExtraBrace, list[Remedy]]]:
    """The balloons of which one more stiffens a piece most, the best first, and the ways to write
    each into its file: by itself, and with its twin."""
    constants = constants_with(piece.design.constants)
    for extra in stiffening_braces(piece.framework, piece.shape, constants):
        ways = list(_ways(data, piece, extra))
        if ways:
            yield extra, ways


def as_tied(
    data: Data, piece: Measured, held: Sequence[tuple[tuple[str, str], float]]
) -> Remedy | None:
    """Balloons more between pairs of joints that are so many metres apart, and between their
    twins; all of one balloon, of their mean length. None where the file has no place for them."""
    mirror = piece.framework.mirror
    key, sized = _balloon_for(data, piece, fsum(length for _, length in held) / len(held))
    pairs = [list(pair) for pair, _ in held]
    pairs += [twins for pair in pairs if (twins := [mirror[one] for one in pair]) not in pairs]
    put = _tied(data, pairs, key)
    return (
        None
        if put is None
        else Remedy(_words(pairs, _told(key, sized, data["units"])), (*sized, put))
    )


def _ways(data: Data, piece: Measured, extra: ExtraBrace) -> Iterator[Remedy]:
    joints = [place.partition("+")[0] for place in extra.joints]
    mirror = piece.framework.mirror
    twins = [mirror.get(joint, joint) for joint in joints]
    key, sized = _balloon_for(data, piece, extra.length_m)
    for pairs in ([joints], [joints, twins]):
        if len(pairs) > 1 and sorted(twins) == sorted(joints):
            return
        put = _tied(data, pairs, key)
        if put is None:
            return
        yield Remedy(_words(pairs, _told(key, sized, data["units"])), (*sized, put))


def _words(pairs: Sequence[Pair], balloon: Message | str) -> Message:
    if len(pairs) == 1:
        (one, other) = pairs[0]
        return message(
            "tie one more balloon ({balloon}) between {one} and {other}",
            balloon=balloon,
            one=one,
            other=other,
        )
    return message(
        "tie one more balloon ({balloon}) between each of {joints}",
        balloon=balloon,
        joints=listing([message("{one} and {other}", one=a, other=b) for a, b in pairs]),
    )


def _tied(data: Data, pairs: Sequence[Pair], key: str) -> Put | None:
    """Balloons of that key between pairs of joints; None where the file has no place for them."""
    match data["build"]:
        case {"graph": Mapping() as graph}:
            more = [{"from": one, "to": other, "balloon": key} for one, other in pairs]
            return Put(("build", "graph", "balloons"), [*graph["balloons"], *more])
        case {"assembly": Mapping() as assembly}:
            return _tied_in_parts(assembly, pairs, key)
    return _as_extra(data["build"], ("build",), pairs, key)


def _as_extra(build: Data, at: Path, pairs: Sequence[Pair], key: str) -> Put | None:
    """The balloons in the key `extra` of a build's pattern, where it has that."""
    for pattern, keys in patterns_in(build):
        if EXTRA in pattern.keys.model_fields:
            more = [{"joints": pair, "balloon": key} for pair in pairs]
            return Put((*at, pattern.name, EXTRA), [*(keys.get(EXTRA) or ()), *more])
    return None


def _tied_in_parts(assembly: Data, pairs: Sequence[Pair], key: str) -> Put | None:
    """Balloons between parts are ties; those within a part that is given in place are its own."""
    names = {outer_part(joint) for pair in pairs for joint in pair}
    if all(len({outer_part(joint) for joint in pair}) > 1 for pair in pairs):
        ties = [{"joints": pair, "balloon": key} for pair in pairs]
        return Put(("build", "assembly", "ties"), [*(assembly.get("ties") or ()), *ties])
    if len(names) > 1:
        return None
    for i, part in enumerate(assembly["parts"]):
        if part["name"] in names and part.get("build") and part.get("repeat") is None:
            own = [[joint.partition(".")[2] for joint in pair] for pair in pairs]
            at = ("build", "assembly", "parts", i, "build")
            return _as_extra(part["build"], at, own, key)
    return None


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
    name = EXTRA
    while name in data["balloons"]:
        name += " more"
    sized = {**given, "inflate_to": min(gauge, given["nominal"])}
    return name, (Put(("balloons", name), sized),)


def _told(key: str, sized: Sequence[Put], units: Units) -> Message | str:
    """What a balloon is called: its key, and what it is sized to, in the units of its file, where
    it is added."""
    if not sized:
        return key
    given = sized[0].value
    assert isinstance(given, dict), "a balloon is added with its keys"
    return message("{key}, sized to {gauge}", key=key, gauge=f"{given['inflate_to']:g} {units}")
