"""What to do when a balloon of the finished piece bursts, worked out from its knots.

A link balloon hangs in one knot at each end. The lock there is opened, what is left of the
balloon is taken out of its knots, a new one is sized and tied in with the same partners, and the
locks are closed. Nothing else is undone, and one end at a time, so that the piece holds.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from buildplan.framework.model import End, Framework, Link
from buildplan.screen.model import ActData
from buildplan.sequence.model import Kind, Knot, Step

Knots = Mapping[tuple[str, End], Knot]


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


def repairs(framework: Framework, steps: Sequence[Step]) -> Mapping[str, tuple[ActData, ...]]:
    """The acts that replace each link balloon of a finished piece, in order, by its id."""
    knots = knots_by_end(steps)
    return {link.id: tuple(_replace(framework, knots, link)) for link in framework.links}


def _replace(framework: Framework, knots: Knots, link: Link) -> Iterator[ActData]:
    ends = (End.NECK, End.TAIL)
    places = list(dict.fromkeys(framework.place(_joint(link, end)) for end in ends))
    locked = [place for place in places if place in framework.lock_at]
    for place in locked:
        yield ActData(act="open", joint=place)
    for end in ends:
        yield from _knot_acts("undo", knots, link, end)
    yield ActData(act="size", joint="")
    if not _partners(knots, link, End.NECK):
        yield ActData(act="close", joint=link.neck, own_end="neck")
    for end in ends:
        yield from _knot_acts("tie", knots, link, end)
    for place in locked:
        yield ActData(act="lock", joint=place)


def _knot_acts(act: str, knots: Knots, link: Link, end: End) -> Iterator[ActData]:
    joint = _joint(link, end)
    partners = _partners(knots, link, end) or (("", ""),)
    for other, its_end in partners:
        yield ActData.model_validate(
            {"act": act, "joint": joint, "own_end": str(end), "link": other, "end": str(its_end)}
        )


def _partners(knots: Knots, link: Link, end: End) -> tuple[tuple[str, str], ...]:
    """The other ends in the knot that holds an end of a link."""
    knot = knots.get((link.id, end))
    if knot is None:
        return ()
    return tuple((other, str(its)) for other, its in knot.ends if (other, its) != (link.id, end))


def _joint(link: Link, end: End) -> str:
    return link.neck if end is End.NECK else link.tail
