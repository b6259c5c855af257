"""Operations up to the laying of the chains."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from buildplan.framework.corners import tagged_joints
from buildplan.framework.ends import End
from buildplan.framework.model import Framework, LongChain
from buildplan.sequence import work_names as names
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
from buildplan.sequence.work_names import Name


def preparing(framework: Framework) -> Iterator[Operation]:
    """Size every balloon; tie pairs; tie off what has no partner; tie rounds two by two."""
    for link in framework.links:
        yield Operation(
            id=names.size_link(link.id),
            kind=Kind.SIZE,
            stage=Stage.SIZE,
            needs=(),
            makes=(names.sized(link.id),),
            links=(link.id,),
            balloon=link.balloon,
        )
    for lock in framework.locks:
        yield Operation(
            id=names.size_rounds(lock.joint),
            kind=Kind.SIZE,
            stage=Stage.SIZE,
            needs=(),
            makes=(names.rounds(lock.joint),),
            locks=(lock.joint,),
            balloon=lock.balloon,
        )
    odd = list(framework.singles)
    for name, chain in all_chains(framework):
        pairs = pair_names(name, chain)
        for i, pair in enumerate(chain.pairs):
            joint = chain.joints[2 * i + 1]
            yield Operation(
                id=pairs[i],
                kind=Kind.PAIR,
                stage=Stage.PAIR,
                needs=tuple(names.sized(link) for link in pair),
                makes=(pairs[i],),
                links=pair,
                joints=(joint,),
                knots=(Knot(joint, tuple((link, End.NECK) for link in pair)),),
            )
        if chain.odd is not None:
            odd.append(chain.odd)
    for link_id in odd:
        yield Operation(
            id=names.tie_off(link_id),
            kind=Kind.TIE_OFF,
            stage=Stage.PAIR,
            needs=(names.sized(link_id),),
            makes=(names.tied_off(link_id),),
            links=(link_id,),
        )
    for lock in framework.locks:
        yield Operation(
            id=names.pair_rounds(lock.joint),
            kind=Kind.PAIR,
            stage=Stage.PAIR,
            needs=(names.rounds(lock.joint),),
            makes=(names.twin_rounds(lock.joint),),
            locks=(lock.joint,),
        )


def chaining(framework: Framework) -> Iterator[Operation]:
    """Tie the long chains; tie the short chains of the braces, ready to be led round."""
    loose = _loose(framework)
    for long in (long for long in framework.chains if long.letter not in loose):
        yield Operation(
            id=names.long_chain(long.letter),
            kind=Kind.CHAIN,
            stage=Stage.CHAIN,
            needs=prepared(names.long_chain(long.letter), long.chain),
            makes=(names.long_chain(long.letter),),
            links=long.chain.links,
            joints=walk(long.chain),
            knots=chain_knots(framework, long.chain),
            adds=not in_courses(framework.built_with(long.chain.joints[0])),
            chain=long.letter,
        )
    for brace in framework.braces:
        for name, chain in short_chains(brace):
            if takes_tying(chain):
                yield Operation(
                    id=names.short_chain(name),
                    kind=Kind.CHAIN,
                    stage=Stage.CHAIN,
                    needs=prepared(name, chain),
                    makes=(names.short_chain(name),),
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
                id=names.close_ring(long.letter),
                kind=Kind.CLOSE_RING,
                stage=Stage.CLOSE_RINGS,
                needs=(names.long_chain(long.letter),),
                makes=(names.ring(long.letter),),
                joints=(long.chain.joints[0],),
                knots=(closing_knot(framework, long.chain),),
                course=course_of.get(long.letter, 0),
                chain=long.letter,
            )


def _built(long: LongChain) -> Name:
    return names.ring(long.letter) if long.chain.closed else names.long_chain(long.letter)


def tagging(framework: Framework, course_of: Mapping[str, int]) -> Iterator[Operation]:
    """Tag joint 1, corners and every fifth between them where joints count along their chains;
    else every joint."""
    counted = all(counts_along(long) for long in framework.chains)
    loose = _loose(framework)
    for long in (long for long in framework.chains if long.letter not in loose):
        joints = tagged_joints(framework, long) if counted else long.chain.joints
        yield Operation(
            id=names.tag(long.letter),
            kind=Kind.TAG,
            stage=Stage.CLOSE_RINGS,
            needs=(_built(long),),
            makes=(names.tags(long.letter),),
            joints=joints,
            course=course_of.get(long.letter, 0),
            chain=long.letter,
        )


def laying(framework: Framework, part: str = "", after: Sequence[Name] = ()) -> Operation:
    """The laying of the chains of a piece with braces, or of those of a part that is built
    `after` another."""
    return Operation(
        id=names.lay(part),
        kind=Kind.LAY,
        stage=Stage.CLOSE_RINGS,
        needs=(*(names.tags(long.letter) for long in framework.chains), *after),
        makes=(names.laid(part),),
        joints=tuple(long.chain.joints[0] for long in framework.chains),
    )


def coming_in(
    framework: Framework, number: int, letters: Sequence[str], after: Sequence[Name]
) -> Operation:
    """The laying of the chains that come in for a course, in reach of what stands."""
    chains = [long for long in framework.chains if long.letter in letters]
    return Operation(
        id=names.lay_course(number),
        kind=Kind.LAY,
        stage=Stage.BRACE,
        needs=(*(names.tags(long.letter) for long in chains), *after),
        makes=(names.laid_course(number),),
        links=tuple(link for long in chains for link in long.chain.links),
        joints=tuple(dict.fromkeys(long.chain.joints[0] for long in chains)),
        adds=True,
        course=number,
    )
