"""The operations on the laid chains, one by one: braces, singles, joints, locks, turning over."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from buildplan.framework.model import Brace, Framework
from buildplan.sequence import work_names as names
from buildplan.sequence.chains import closing_knot, prepared, short_chains, takes_tying
from buildplan.sequence.courses import (
    loose_chains,
)
from buildplan.sequence.model import Kind, Knot, Operation, Stage
from buildplan.sequence.work_names import Name


def reached_by(brace: Brace) -> tuple[str, ...]:
    """The joints that the chains of a brace come to, each once."""
    return tuple(dict.fromkeys(joint for chain in brace.chains for joint in chain.joints))


def _tie_in(framework: Framework, link_id: str, joint: str) -> Knot:
    return Knot(joint, ((link_id, framework.link[link_id].end_at(joint)),))


def _brace_knots(framework: Framework, brace: Brace) -> Iterator[Knot]:
    for chain in brace.chains:
        if chain.closed:
            yield closing_knot(framework, chain)
        else:
            yield _tie_in(framework, chain.links[0], chain.joints[0])
            yield _tie_in(framework, chain.links[-1], chain.joints[-1])


def settling_work(brace: Operation) -> Operation:
    """The settling of a brace that is tied."""
    return Operation(
        id=names.settle(brace.brace),
        kind=Kind.SETTLE,
        stage=Stage.BRACE,
        needs=brace.makes,
        makes=(names.settled(brace.brace),),
        joints=brace.joints,
        brace=brace.brace,
    )


def lock_work(joint: str, after: Operation) -> Operation:
    """The locking of a joint, once `after` is done."""
    return Operation(
        id=names.lock(joint),
        kind=Kind.LOCK,
        stage=Stage.LOCK_JOINTS,
        needs=(*after.makes, names.twin_rounds(joint)),
        makes=(names.lock(joint),),
        locks=(joint,),
        joints=(joint,),
        adds=True,
    )


def brace_work(framework: Framework, brace: Brace) -> Operation:
    """The tying of a brace to the piece."""
    name = names.brace(brace.number)
    needs: list[Name] = []
    for chain_name, chain in short_chains(brace):
        needs += (
            [names.short_chain(chain_name)] if takes_tying(chain) else prepared(chain_name, chain)
        )
    return Operation(
        id=name,
        kind=Kind.BRACE,
        stage=Stage.BRACE,
        needs=tuple(needs),
        makes=(name,),
        links=brace.links,
        joints=reached_by(brace),
        knots=tuple(_brace_knots(framework, brace)),
        adds=True,
        brace=brace.number,
    )


def single_work(framework: Framework, link_id: str) -> Operation:
    """The tying of a single to the piece by both its ends."""
    link = framework.link[link_id]
    ends = (link.start, link.finish)
    return Operation(
        id=names.single(link_id),
        kind=Kind.SINGLE,
        stage=Stage.BRACE,
        needs=(names.tied_off(link_id),),
        makes=(names.single(link_id),),
        links=(link_id,),
        joints=ends,
        knots=tuple(_tie_in(framework, link_id, joint) for joint in ends),
        adds=True,
    )


@dataclass(frozen=True)
class LooseEnds:
    """By joint, the links with which open chains end there, and those among them that are first
    brought in there (chains of one balloon)."""

    ends: Mapping[str, Sequence[str]]
    brought: Mapping[str, Sequence[str]]


def loose_ends(framework: Framework, joints: Sequence[str]) -> LooseEnds:
    """`joints` are all that are joined, in that order."""
    place = {joint: number for number, joint in enumerate(joints)}
    alone = loose_chains(framework)
    ends: dict[str, list[str]] = {}
    brought: dict[str, list[str]] = {}
    for long in (long for long in framework.chains if not long.chain.closed):
        chain = long.chain
        ends.setdefault(chain.joints[0], []).append(chain.links[0])
        ends.setdefault(chain.joints[-1], []).append(chain.links[-1])
        if long.letter in alone:
            brought.setdefault(min(chain.joints, key=place.__getitem__), []).append(chain.links[0])
    return LooseEnds(ends, brought)


def turning_over_work(lifters: int, part: str) -> Operation:
    """The turning over of a part, or of the whole piece."""
    return Operation(
        id=names.turn_over(part),
        kind=Kind.TURN_OVER,
        stage=Stage.BRACE,
        needs=(),
        makes=(names.turned_over(part),),
        people=lifters,
    )


def join_work(framework: Framework, joint: str, loose: LooseEnds, up: str) -> Operation:
    """The bringing together of the knots of a joint, and of the free ends that come to it."""
    brought = tuple(loose.brought.get(joint, ()))
    return Operation(
        id=names.join(joint),
        kind=Kind.JOIN,
        stage=Stage.BRACE,
        needs=tuple(names.tied_off(link) for link in brought),
        makes=(names.join(joint),),
        links=brought,
        joints=(joint,),
        knots=tuple(_tie_in(framework, link_id, joint) for link_id in loose.ends.get(joint, ())),
        adds=bool(brought),
        up=up,
    )
