"""Ties worked out for parts that are said to stand on others, or to be tied beside them: joints
that meet where a part comes to lie (`seat_places.py`) are tied."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from buildplan.framework.assembly import is_of_part, outer_part
from buildplan.framework.locks import Tie
from buildplan.framework.model import Framework
from buildplan.language.messages import listing, message
from buildplan.shape.blocks import blocks_of
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import Shape
from buildplan.shape.seat_places import Seat, SeatPlaces
from buildplan.source.problems import Problem
from buildplan.source.suggestions import to_try

# A part that meets another with more of its joints than that lies where the other is. Ours: two
# towers side by side meet with half of theirs.
TAKEN_SHARE = 0.75


@dataclass(frozen=True)
class WorkedOut:
    """The ties of each seat, by its part; and the seats where nothing meets."""

    ties: Mapping[str, tuple[tuple[str, str], ...]]
    problems: tuple[Problem, ...]


def ties_worked_out(
    framework: Framework, shapes: Sequence[Shape], seats: Sequence[Seat]
) -> WorkedOut:
    """The ties of `seats` in an assembly that has all others; `shapes` are those of its parts by
    themselves, upright."""
    blocks = blocks_of(framework, shapes)
    found: dict[str, tuple[tuple[str, str], ...]] = {}
    problems: list[Problem] = []
    for seat in seats:
        scene = SeatPlaces(framework, blocks)
        pairs = tuple(scene.pairs(seat))
        met = {name for name in seat.carriers if any(is_of_part(other, name) for _, other in pairs)}
        met |= _tied_by_hand(framework, seat)
        if len(met) < len(seat.carriers):
            missed = [name for name in seat.carriers if name not in met]
            problems.append(_nothing_meets(seat, missed))
            continue
        if seat.lower and seat.lower > scene.lowest(seat):
            problems.append(_not_so_low(seat, scene.lowest(seat)))
            continue
        also = tuple(scene.also_met(seat, pairs))
        taken = _place_taken(framework, seat, also)
        if taken:
            problems.append(_same_place(seat, taken))
            continue
        pairs = (*pairs, *also)
        found[seat.part] = pairs
        framework = replace(framework, ties=(*framework.ties, *map(Tie, pairs)))
    return WorkedOut(found, tuple(problems))


def _tied_by_hand(framework: Framework, seat: Seat) -> set[str]:
    """The carriers of a part that the file ties it to itself, by a knot or by a balloon."""
    held = [tie.joints for tie in framework.ties]
    held += [(link.start, link.finish) for link in framework.links]
    return {
        name
        for name in seat.carriers
        for joints in held
        if any(is_of_part(joint, seat.part) for joint in joints)
        and any(is_of_part(joint, name) for joint in joints)
    }


def _place_taken(framework: Framework, seat: Seat, also: Sequence[tuple[str, str]]) -> str:
    """The name of another part with which nearly all of a part would lie at one place, as its
    joints that meet others tell; empty if there is none."""
    own = sum(is_of_part(joint, seat.part) for joint in framework.joints)
    met = Counter(outer_part(other) for _, other in also)
    return next((name for name, count in met.items() if count > TAKEN_SHARE * own), "")


def _same_place(seat: Seat, other: str) -> Problem:
    return Problem(
        ShapeKind.SAME_PLACE,
        message("part {part} comes to lie where part {other} is", part=seat.part, other=other),
        to_try(message("set it at another place: beside a part, between two, or across several")),
        path="build.assembly.parts",
    )


def _not_so_low(seat: Seat, lowest: int) -> Problem:
    return Problem(
        ShapeKind.NOT_SO_LOW,
        message(
            "part {part} can be {count} places lower between {others}, no more",
            part=seat.part,
            count=lowest,
            others=listing(seat.carriers),
        ),
        to_try(message("write {right}", right=f"lower: {lowest}")),
        path="build.assembly.parts",
    )


def _nothing_meets(seat: Seat, missed: Sequence[str]) -> Problem:
    return Problem(
        ShapeKind.NOTHING_MEETS,
        message(
            "no joints of part {part} come to meet any of {others}",
            part=seat.part,
            others=listing(missed),
        ),
        to_try(
            message(
                "give parts that meet links of one length, and as many balloons between; or list "
                "their ties, where a balloon may be tied between two joints: {right}",
                right=f"{{joints: [{seat.part}.A1, {missed[0]}.A1], balloon: ...}}",
            )
        ),
        path="build.assembly.parts",
    )
