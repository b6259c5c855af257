"""What to do when a balloon of the finished piece bursts, worked out from its knots.

A link balloon hangs in one knot at each end. The lock there is opened, what is left of the
balloon is taken out of its knots, a new one is sized and tied in with the same partners, and the
locks are closed. Nothing else is undone.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from buildplan.framework.ends import End
from buildplan.framework.model import Framework, Link
from buildplan.sequence.model import Kind, Knot, Step

Knots = Mapping[tuple[str, End], Knot]


class Deed(StrEnum):
    """What hands do in an act of a repair."""

    OPEN = "open"
    UNDO = "undo"
    SIZE = "size"
    CLOSE = "close"
    TIE = "tie"
    LOCK = "lock"


@dataclass(frozen=True)
class Act:
    """One act of a repair. `joint` is where; `link` and `end` are the neighbour whose end is in
    the same knot, empty where the knot holds the burst balloon's end alone."""

    deed: Deed
    joint: str = ""
    own_end: End | None = None
    link: str = ""
    end: End | None = None


@dataclass(frozen=True)
class AlikeRepairs:
    """Link balloons that are replaced in the same way, whatever their joints, in the order of the
    framework; `acts` are those of the first."""

    links: tuple[str, ...]
    acts: tuple[Act, ...]


def knots_by_end(steps: Sequence[Step]) -> Knots:
    """The knot that holds each balloon end: the last one that was tied with it."""
    return {
        end: knot
        for step in steps
        for operation in step.operations
        for knot in operation.knots
        if operation.links or operation.kind in (Kind.CLOSE_RING, Kind.JOIN)
        for end in knot.ends
    }


def repairs(framework: Framework, steps: Sequence[Step]) -> Mapping[str, tuple[Act, ...]]:
    """The acts that replace each link balloon of a finished piece, in order, by its id."""
    knots = knots_by_end(steps)
    return {link.id: tuple(_replace(framework, knots, link)) for link in framework.links}


def lock_repair(joint: str) -> tuple[Act, ...]:
    """The acts that replace a lock of which a round burst: its knots stay tied."""
    return (Act(Deed.OPEN, joint), Act(Deed.SIZE), Act(Deed.LOCK, joint))


def ways_of(found: Mapping[str, Sequence[Act]]) -> tuple[AlikeRepairs, ...]:
    """The ways of repair there are, that of most balloons first."""
    alike: dict[tuple[object, ...], list[str]] = {}
    for link, acts in found.items():
        form = tuple((act.deed, act.own_end, act.end) for act in acts)
        alike.setdefault(form, []).append(link)
    ways = [AlikeRepairs(tuple(links), tuple(found[links[0]])) for links in alike.values()]
    return tuple(sorted(ways, key=lambda way: -len(way.links)))


def _replace(framework: Framework, knots: Knots, link: Link) -> Iterator[Act]:
    ends = (End.NECK, End.TAIL)
    places = list(dict.fromkeys(framework.place(_joint(link, end)) for end in ends))
    locked = [place for place in places if place in framework.lock_at]
    for place in locked:
        yield Act(Deed.OPEN, place)
    for end in ends:
        yield from _knot_acts(Deed.UNDO, knots, link, end)
    yield Act(Deed.SIZE)
    if not _partners(knots, link, End.NECK):
        yield Act(Deed.CLOSE, link.neck, End.NECK)
    for end in ends:
        yield from _knot_acts(Deed.TIE, knots, link, end)
    for place in locked:
        yield Act(Deed.LOCK, place)


def _knot_acts(deed: Deed, knots: Knots, link: Link, end: End) -> Iterator[Act]:
    joint = _joint(link, end)
    partners = _partners(knots, link, end)
    if not partners:
        yield Act(deed, joint, end)
    for other, its_end in partners:
        yield Act(deed, joint, end, other, its_end)


def _partners(knots: Knots, link: Link, end: End) -> tuple[tuple[str, End], ...]:
    """The other ends in the knot that holds an end of a link."""
    knot = knots.get((link.id, end))
    if knot is None:
        return ()
    return tuple((other, its) for other, its in knot.ends if (other, its) != (link.id, end))


def _joint(link: Link, end: End) -> str:
    return link.neck if end is End.NECK else link.tail
