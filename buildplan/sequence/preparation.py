"""Operations up to the laying of the chains."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

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
    for long in framework.chains:
        yield Operation(
            id=f"chain {long.letter}",
            kind=Kind.CHAIN,
            stage=Stage.CHAIN,
            needs=prepared(f"chain {long.letter}", long.chain),
            makes=(f"chain {long.letter}",),
            links=long.chain.links,
            joints=walk(long.chain),
            knots=chain_knots(framework, long.chain),
            adds=True,
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


def closing(framework: Framework) -> Iterator[Operation]:
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
            )


def _built(long: LongChain) -> str:
    return f"ring {long.letter}" if long.chain.closed else f"chain {long.letter}"


def tagging(framework: Framework) -> Iterator[Operation]:
    """Tag joint 1 and every fifth where joints count along their chains; else every joint."""
    counted = all(counts_along(long) for long in framework.chains)
    for long in framework.chains:
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
        )


def laying(framework: Framework, part: str = "", after: Sequence[str] = ()) -> Operation:
    """The laying of a piece's chains, or of those of a part that is built `after` another."""
    of = f" {part}" if part else ""
    return Operation(
        id=f"lay{of}",
        kind=Kind.LAY,
        stage=Stage.CLOSE_RINGS,
        needs=(*(f"tags {long.letter}" for long in framework.chains), *after),
        makes=(f"laid{of}",),
        joints=tuple(long.chain.joints[0] for long in framework.chains),
    )
