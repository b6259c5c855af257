"""Operations up to the laying of the chains."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from buildplan.framework.model import End, Framework, LongChain
from buildplan.sequence.chains import (
    all_chains,
    chain_knots,
    closing_knot,
    counts_along,
    pair_names,
    prepared,
    short_chains,
    takes_tying,
    walk,
)
from buildplan.sequence.courses import built_pieces, in_courses, loose_chains
from buildplan.sequence.model import Kind, Knot, Operation, Stage

TAG_EVERY = 5


def preparing(framework: Framework) -> Iterator[Operation]:
    """Size every balloon; tie pairs; tie off what has no partner; tie rounds two by two."""
    for link in framework.links:
        yield Operation(
            id=f"size link {link.id}",
            kind=Kind.SIZE,
            stage=Stage.SIZE,
            needs=(),
            makes=(f"sized {link.id}",),
            links=(link.id,),
            balloon=link.balloon,
        )
    for lock in framework.locks:
        yield Operation(
            id=f"size rounds {lock.joint}",
            kind=Kind.SIZE,
            stage=Stage.SIZE,
            needs=(),
            makes=(f"rounds {lock.joint}",),
            locks=(lock.joint,),
            balloon=lock.balloon,
        )
    odd = list(framework.singles)
    for name, chain in all_chains(framework):
        names = pair_names(name, chain)
        for i, pair in enumerate(chain.pairs):
            joint = chain.joints[2 * i + 1]
            yield Operation(
                id=names[i],
                kind=Kind.PAIR,
                stage=Stage.PAIR,
                needs=tuple(f"sized {link}" for link in pair),
                makes=(names[i],),
                links=pair,
                joints=(joint,),
                knots=(Knot(joint, tuple((link, End.NECK) for link in pair)),),
            )
        if chain.odd is not None:
            odd.append(chain.odd)
    for link_id in odd:
        yield Operation(
            id=f"tie off {link_id}",
            kind=Kind.TIE_OFF,
            stage=Stage.PAIR,
            needs=(f"sized {link_id}",),
            makes=(f"tied off {link_id}",),
            links=(link_id,),
        )
    for lock in framework.locks:
        yield Operation(
            id=f"pair rounds {lock.joint}",
            kind=Kind.PAIR,
            stage=Stage.PAIR,
            needs=(f"rounds {lock.joint}",),
            makes=(f"twin rounds {lock.joint}",),
            locks=(lock.joint,),
        )


def chaining(framework: Framework) -> Iterator[Operation]:
    """Tie the long chains; tie the short chains of the braces, ready to be led round."""
    loose = _loose(framework)
    for long in (long for long in framework.chains if long.letter not in loose):
        yield Operation(
            id=f"chain {long.letter}",
            kind=Kind.CHAIN,
            stage=Stage.CHAIN,
            needs=prepared(f"chain {long.letter}", long.chain),
            makes=(f"chain {long.letter}",),
            links=long.chain.links,
            joints=walk(long.chain),
            knots=chain_knots(framework, long.chain),
            adds=not in_courses(framework.built_with(long.chain.joints[0])),
        )
    for brace in framework.braces:
        for name, chain in short_chains(brace):
            if takes_tying(chain):
                yield Operation(
                    id=f"chain for {name}",
                    kind=Kind.CHAIN,
                    stage=Stage.CHAIN,
                    needs=prepared(name, chain),
                    makes=(f"chain for {name}",),
                    links=chain.links,
                    joints=walk(chain),
                    knots=chain_knots(framework, chain),
                )


def _loose(framework: Framework) -> frozenset[str]:
    return frozenset(c for _, own in built_pieces(framework) for c in loose_chains(own))


def closing(framework: Framework, course_of: Mapping[str, int]) -> Iterator[Operation]:
    """Close the rings; `course_of` says for which course, where a piece is built so."""
    for long in framework.chains:
        if long.chain.closed:
            yield Operation(
                id=f"close {long.letter}",
                kind=Kind.CLOSE_RING,
                stage=Stage.CLOSE_RINGS,
                needs=(f"chain {long.letter}",),
                makes=(f"ring {long.letter}",),
                joints=(long.chain.joints[0],),
                knots=(closing_knot(framework, long.chain),),
                course=course_of.get(long.letter, 0),
            )


def _built(long: LongChain) -> str:
    return f"ring {long.letter}" if long.chain.closed else f"chain {long.letter}"


def tagging(framework: Framework, course_of: Mapping[str, int]) -> Iterator[Operation]:
    """Tag joint 1 and every fifth where joints count along their chains; else every joint."""
    counted = all(counts_along(long) for long in framework.chains)
    loose = _loose(framework)
    for long in (long for long in framework.chains if long.letter not in loose):
        joints = long.chain.joints
        if counted:
            joints = tuple(j for i, j in enumerate(joints, 1) if i == 1 or i % TAG_EVERY == 0)
        yield Operation(
            id=f"tag {long.letter}",
            kind=Kind.TAG,
            stage=Stage.CLOSE_RINGS,
            needs=(_built(long),),
            makes=(f"tags {long.letter}",),
            joints=joints,
            course=course_of.get(long.letter, 0),
        )


def laying(framework: Framework, part: str = "", after: Sequence[str] = ()) -> Operation:
    """The laying of the chains of a piece with braces, or of those of a part that is built
    `after` another."""
    of = f" {part}" if part else ""
    return Operation(
        id=f"lay{of}",
        kind=Kind.LAY,
        stage=Stage.CLOSE_RINGS,
        needs=(*(f"tags {long.letter}" for long in framework.chains), *after),
        makes=(f"laid{of}",),
        joints=tuple(long.chain.joints[0] for long in framework.chains),
    )


def coming_in(
    framework: Framework, number: int, letters: Sequence[str], after: Sequence[str]
) -> Operation:
    """The laying of the chains that come in for a course, in reach of what stands."""
    chains = [long for long in framework.chains if long.letter in letters]
    return Operation(
        id=f"lay course {number}",
        kind=Kind.LAY,
        stage=Stage.BRACE,
        needs=(*(f"tags {long.letter}" for long in chains), *after),
        makes=(f"laid course {number}",),
        links=tuple(link for long in chains for link in long.chain.links),
        joints=tuple(dict.fromkeys(long.chain.joints[0] for long in chains)),
        adds=True,
        course=number,
    )
