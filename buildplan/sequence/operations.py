"""Every act of work that a framework takes, with what it needs and what it makes.

Two rules of the work decide the order along the piece:

- Brace by brace, each locked before the next, so that nothing wanders.
- A joint takes one lock. Where the very next brace is tied into a joint too, its lock waits
  for that brace, so that the lock holds all that is tied there. A brace that comes back to
  a joint later (the last brace of a closed tube may share with the first) is tied into the
  joint beside its lock.

A skipped joint's single follows once the braces on both sides of it are locked.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from buildplan.framework.model import Brace, Chain, End, Framework, LongChain
from buildplan.sequence.model import Kind, Knot, Operation, Stage

TAG_EVERY = 5


def operations(framework: Framework) -> tuple[Operation, ...]:
    """All operations of `framework`, in an order of no meaning (see `ordering.in_order`)."""
    made = [
        *_preparing(framework),
        *_chaining(framework),
        *_closing(framework),
        *_tagging(framework),
        _laying(framework),
        *_assembling(framework),
    ]
    return (*made, *_finishing(made))


def walk(chain: Chain) -> tuple[str, ...]:
    """Joints along `chain`, the first again at the end of a ring."""
    return (*chain.joints, chain.joints[0]) if chain.closed else chain.joints


def short_chains(brace: Brace) -> tuple[tuple[str, Chain], ...]:
    """The chains a brace brings, each with its name."""
    if len(brace.chains) == 1:
        return ((f"brace {brace.number}", brace.chains[0]),)
    return tuple((f"brace {brace.number} part {i + 1}", c) for i, c in enumerate(brace.chains))


def takes_tying(chain: Chain) -> bool:
    """Whether a short chain is more than a pair or one balloon, which are ready as they are."""
    return len(chain.links) > 2


def _all_chains(framework: Framework) -> Iterator[tuple[str, Chain]]:
    """Every chain, long or short, with its name."""
    yield from ((f"chain {long.letter}", long.chain) for long in framework.chains)
    for brace in framework.braces:
        yield from short_chains(brace)


def _pair_names(name: str, chain: Chain) -> tuple[str, ...]:
    """Names of a chain's pairs; the chain's own name keeps them apart whatever joints are
    called."""
    return tuple(f"pair {i + 1} of {name}" for i in range(len(chain.pairs)))


def _preparing(framework: Framework) -> Iterator[Operation]:
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
    for name, chain in _all_chains(framework):
        names = _pair_names(name, chain)
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


def _prepared(name: str, chain: Chain) -> tuple[str, ...]:
    """Names of the pairs and the odd balloon that a chain is tied from."""
    odd = () if chain.odd is None else (f"tied off {chain.odd}",)
    return (*_pair_names(name, chain), *odd)


def _chain_knots(framework: Framework, chain: Chain) -> tuple[Knot, ...]:
    """Knots between pairs: those that the pairs do not have already, closing knot apart."""
    joints = walk(chain)
    knots = []
    for i in range(1, len(chain.links) - 1, 2):
        before, after = chain.links[i], chain.links[i + 1]
        ends = ((before, _finish_end(framework, before)), (after, framework.link[after].start_end))
        knots.append(Knot(joints[i + 1], ends))
    return tuple(knots)


def _finish_end(framework: Framework, link_id: str) -> End:
    return End.TAIL if framework.link[link_id].start_end is End.NECK else End.NECK


def _closing_knot(framework: Framework, chain: Chain) -> Knot:
    last, first = chain.links[-1], chain.links[0]
    ends = ((last, _finish_end(framework, last)), (first, framework.link[first].start_end))
    return Knot(chain.joints[0], ends)


def _chaining(framework: Framework) -> Iterator[Operation]:
    """Tie the long chains; tie the short chains of the braces, ready to be led round."""
    for long in framework.chains:
        yield Operation(
            id=f"chain {long.letter}",
            kind=Kind.CHAIN,
            stage=Stage.CHAIN,
            needs=_prepared(f"chain {long.letter}", long.chain),
            makes=(f"chain {long.letter}",),
            links=long.chain.links,
            joints=walk(long.chain),
            knots=_chain_knots(framework, long.chain),
            adds=True,
        )
    for brace in framework.braces:
        for name, chain in short_chains(brace):
            if takes_tying(chain):
                yield Operation(
                    id=f"chain for {name}",
                    kind=Kind.CHAIN,
                    stage=Stage.CHAIN,
                    needs=_prepared(name, chain),
                    makes=(f"chain for {name}",),
                    links=chain.links,
                    joints=walk(chain),
                    knots=_chain_knots(framework, chain),
                )


def _closing(framework: Framework) -> Iterator[Operation]:
    for long in framework.chains:
        if long.chain.closed:
            yield Operation(
                id=f"close {long.letter}",
                kind=Kind.CLOSE_RING,
                stage=Stage.CLOSE_RINGS,
                needs=(f"chain {long.letter}",),
                makes=(f"ring {long.letter}",),
                joints=(long.chain.joints[0],),
                knots=(_closing_knot(framework, long.chain),),
            )


def _built(long: LongChain) -> str:
    return f"ring {long.letter}" if long.chain.closed else f"chain {long.letter}"


def counts_along(long: LongChain) -> bool:
    """Whether the chain's joints are called by its letter and counted along it: A1, A2, ..."""
    return all(j == f"{long.letter}{i}" for i, j in enumerate(long.chain.joints, 1))


def _tagged_joints(long: LongChain) -> tuple[str, ...]:
    """Joint 1 and every fifth of a chain whose joints count along it; else every joint."""
    joints = long.chain.joints
    if counts_along(long):
        return tuple(j for i, j in enumerate(joints, 1) if i == 1 or i % TAG_EVERY == 0)
    return joints


def _tagging(framework: Framework) -> Iterator[Operation]:
    for long in framework.chains:
        yield Operation(
            id=f"tag {long.letter}",
            kind=Kind.TAG,
            stage=Stage.CLOSE_RINGS,
            needs=(_built(long),),
            makes=(f"tags {long.letter}",),
            joints=_tagged_joints(long),
        )


def _laying(framework: Framework) -> Operation:
    return Operation(
        id="lay",
        kind=Kind.LAY,
        stage=Stage.CLOSE_RINGS,
        needs=tuple(f"tags {long.letter}" for long in framework.chains),
        makes=("laid",),
        joints=tuple(long.chain.joints[0] for long in framework.chains),
    )


def lock_waits_for(framework: Framework) -> Mapping[str, int]:
    """For each joint that braces reach, the number of the brace after which it is locked:
    the last of an unbroken run of braces from the first that reaches it."""
    after: dict[str, int] = {}
    for brace in framework.braces:
        for joint in _reached(brace):
            if after.get(joint, brace.number) >= brace.number - 1:
                after[joint] = brace.number
    return after


def _reached(brace: Brace) -> tuple[str, ...]:
    return tuple(dict.fromkeys(joint for chain in brace.chains for joint in chain.joints))


def _tie_in(framework: Framework, link_id: str, joint: str) -> Knot:
    return Knot(joint, ((link_id, framework.link[link_id].end_at(joint)),))


def _brace_knots(framework: Framework, brace: Brace) -> Iterator[Knot]:
    for chain in brace.chains:
        if chain.closed:
            yield _closing_knot(framework, chain)
        else:
            yield _tie_in(framework, chain.links[0], chain.joints[0])
            yield _tie_in(framework, chain.links[-1], chain.joints[-1])


def _settling(brace: Operation) -> Operation:
    return Operation(
        id=f"settle {brace.id}",
        kind=Kind.SETTLE,
        stage=Stage.BRACE,
        needs=brace.makes,
        makes=(f"settled {brace.id}",),
        joints=brace.joints,
    )


def _lock(joint: str, after: Operation) -> Operation:
    return Operation(
        id=f"lock {joint}",
        kind=Kind.LOCK,
        stage=Stage.LOCK_JOINTS,
        needs=(*after.makes, f"twin rounds {joint}"),
        makes=(f"lock {joint}",),
        locks=(joint,),
        joints=(joint,),
        adds=True,
    )


def _assembling(framework: Framework) -> Iterator[Operation]:
    """Heads (a brace, a single, a join), each followed by its locks, a brace by its settling
    first; each head needs all that was made after the head before it."""
    before: tuple[str, ...] = ("laid",)
    for head, locked in _heads(framework):
        yield replace(head, needs=tuple(dict.fromkeys((*before, *head.needs))))
        last = head
        if head.kind is Kind.BRACE:
            last = _settling(head)
            yield last
        locks = [_lock(joint, last) for joint in locked if joint in framework.lock_at]
        yield from locks
        before = tuple(lock.id for lock in locks) or last.makes


def _heads(framework: Framework) -> Iterator[tuple[Operation, tuple[str, ...]]]:
    """Braces along the piece, singles once their cell stands, then joins; and the joints to
    be locked after each."""
    locked_after: dict[int, list[str]] = {}
    for joint, number in lock_waits_for(framework).items():
        locked_after.setdefault(number, []).append(joint)
    singles_after = _singles_after(framework)
    for brace in framework.braces:
        yield _brace(framework, brace), tuple(locked_after.get(brace.number, ()))
        for link_id in singles_after.get(brace.number, ()):
            yield _single(framework, link_id)
    for link_id in singles_after.get(0, ()):
        yield _single(framework, link_id)
    free_ends = _free_ends(framework)
    for joint in meeting_joints(framework):
        yield _join(framework, joint, free_ends.get(joint, ())), (joint,)


def _singles_after(framework: Framework) -> Mapping[int, list[str]]:
    """Singles by the number of the brace after which they can be tied (0: at the end)."""
    cell_of = {joint: cell for cell in framework.cells for joint in cell.skipped}
    after: dict[int, list[str]] = {}
    for link_id in framework.singles:
        cell = cell_of.get(framework.link[link_id].start)
        number = 0 if cell is None else max(cell.first, cell.second)
        after.setdefault(number, []).append(link_id)
    return after


def _brace(framework: Framework, brace: Brace) -> Operation:
    name = f"brace {brace.number}"
    needs: list[str] = []
    for chain_name, chain in short_chains(brace):
        needs += [f"chain for {chain_name}"] if takes_tying(chain) else _prepared(chain_name, chain)
    return Operation(
        id=name,
        kind=Kind.BRACE,
        stage=Stage.BRACE,
        needs=tuple(needs),
        makes=(name,),
        links=brace.links,
        joints=_reached(brace),
        knots=tuple(_brace_knots(framework, brace)),
        adds=True,
    )


def _single(framework: Framework, link_id: str) -> tuple[Operation, tuple[str, ...]]:
    link = framework.link[link_id]
    ends = (link.start, link.finish)
    tied = Operation(
        id=f"single {link_id}",
        kind=Kind.SINGLE,
        stage=Stage.BRACE,
        needs=(f"tied off {link_id}",),
        makes=(f"single {link_id}",),
        links=(link_id,),
        joints=ends,
        knots=tuple(_tie_in(framework, link_id, joint) for joint in ends),
        adds=True,
    )
    return tied, ends


def _visits(framework: Framework) -> Mapping[str, list[tuple[int, int]]]:
    """(chain, place along it) of each passing of a joint, joints of all chains."""
    visits: dict[str, list[tuple[int, int]]] = {}
    for index, long in enumerate(framework.chains):
        for place, joint in enumerate(long.chain.joints):
            visits.setdefault(joint, []).append((index, place))
    return visits


def meeting_joints(framework: Framework) -> tuple[str, ...]:
    """Joints that long chains pass more than once, in the order of joining them.

    A joint is joined with the last chain that comes to it, in order along that chain: the
    first chain with itself, then the second with the first, and so on.
    """
    met = {joint: places for joint, places in _visits(framework).items() if len(places) > 1}
    return tuple(sorted(met, key=lambda joint: _first_on_last_chain(met[joint])))


def _first_on_last_chain(places: Sequence[tuple[int, int]]) -> tuple[int, int]:
    last = max(index for index, _ in places)
    return min(place for place in places if place[0] == last)


def _free_ends(framework: Framework) -> Mapping[str, list[str]]:
    """By joint, the links with which open long chains end there."""
    ends: dict[str, list[str]] = {}
    for chain in (long.chain for long in framework.chains if not long.chain.closed):
        ends.setdefault(chain.joints[0], []).append(chain.links[0])
        ends.setdefault(chain.joints[-1], []).append(chain.links[-1])
    return ends


def _join(framework: Framework, joint: str, free: Sequence[str]) -> Operation:
    return Operation(
        id=f"join {joint}",
        kind=Kind.JOIN,
        stage=Stage.BRACE,
        needs=(),
        makes=(f"join {joint}",),
        joints=(joint,),
        knots=tuple(_tie_in(framework, link_id, joint) for link_id in free),
    )


def _finishing(made: Sequence[Operation]) -> Iterator[Operation]:
    needed = {thing for operation in made for thing in operation.needs}
    loose = tuple(thing for op in made for thing in op.makes if thing not in needed)
    yield Operation("inspect", Kind.INSPECT, Stage.FINISH, loose, ("inspected",))
    yield Operation("stand up", Kind.STAND_UP, Stage.FINISH, ("inspected",), ("standing",))
