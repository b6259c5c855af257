"""Operations on the laid chains: braces, singles, joints, and the locks of each.

Two rules of the work decide the order along the piece:

- Brace by brace, each locked before the next, so that nothing wanders.
- A joint takes one lock, and the lock holds all that is tied there: where a later brace is tied
  into a joint too (the next one, or the one that closes a ring), its lock waits for that brace.

A skipped joint's single is tied with the second of the braces on its two sides, and locked with
that brace.

The parts of an assembly are built one after another, each from the laying of its chains to its
last lock; then they are tied to one another.
"""

from __future__ import annotations

from collections.abc import Generator, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from buildplan.framework.model import Brace, Framework, Tie
from buildplan.sequence.chains import closing_knot, prepared, short_chains, takes_tying
from buildplan.sequence.model import Kind, Knot, Operation, Stage
from buildplan.sequence.preparation import laying


@dataclass(frozen=True)
class Joins:
    """Joints where long chains meet, in the order of joining them: those joined with the front
    up, and those joined once the piece is turned over."""

    front_up: tuple[str, ...]
    back_up: tuple[str, ...] = ()


def assembling(framework: Framework, joins: Joins, lifters: int) -> Iterator[Operation]:
    """The laying of the chains; then heads (a brace, a single, a join), each followed by its
    locks, a brace by its settling first; each head needs all that was made after the head before
    it."""
    if not framework.parts:
        laid = laying(framework)
        yield laid
        yield from _worked(framework, _heads(framework, joins, lifters), laid.makes)
        return
    done: tuple[str, ...] = ()
    for part in framework.parts:
        own = part.framework
        laid = laying(own, part.name, done)
        yield laid
        heads = _heads(own, _joins_of(own, joins), lifters, part.name)
        done = yield from _worked(own, heads, laid.makes)
    yield from _worked(framework, _tying(framework, lifters), done)


def _joins_of(part: Framework, joins: Joins) -> Joins:
    own = set(part.joints)
    front, back = (
        tuple(joint for joint in joints if joint in own)
        for joints in (joins.front_up, joins.back_up)
    )
    return Joins(front, back)


@dataclass(frozen=True)
class _Head:
    """A head, what is tied in with it before anything is locked, and the joints to be locked
    then."""

    operation: Operation
    locked: tuple[str, ...] = ()
    singles: tuple[Operation, ...] = ()


def _worked(
    framework: Framework, heads: Iterable[_Head], before: tuple[str, ...]
) -> Generator[Operation, None, tuple[str, ...]]:
    """Heads with what follows each; returns what the last of it makes."""
    for head in heads:
        operation = head.operation
        yield replace(operation, needs=tuple(dict.fromkeys((*before, *operation.needs))))
        last = operation
        if operation.kind is Kind.BRACE:
            last = _settling(operation)
            yield last
        for single in head.singles:
            yield replace(single, needs=(*last.makes, *single.needs))
            last = single
        locks = [_lock(joint, last) for joint in head.locked if joint in framework.lock_at]
        yield from locks
        before = tuple(lock.id for lock in locks) or last.makes
    return before


def _tying(framework: Framework, lifters: int) -> Iterator[_Head]:
    """Balloons between parts, then joints of parts brought together; ties of the same parts one
    after another."""
    within = {link for part in framework.parts for link in part.framework.link}
    for link_id in framework.singles:
        if link_id not in within:
            yield _Head(_single(framework, link_id))
    place = {part.name: i for i, part in enumerate(framework.parts)}

    def parts(tie: Tie) -> list[int]:
        found = (framework.part_at(joint) for joint in tie.joints)
        return sorted((place[part.name] for part in found if part is not None), reverse=True)

    for tie in sorted(framework.ties, key=parts):
        tied = Operation(
            id=f"tie {tie.name}",
            kind=Kind.JOIN,
            stage=Stage.BRACE,
            needs=(),
            makes=(f"tie {tie.name}",),
            joints=tie.joints,
            people=lifters,
        )
        yield _Head(tied, (tie.name,))


def _heads(framework: Framework, joins: Joins, lifters: int, part: str = "") -> Iterator[_Head]:
    """Braces along the piece, singles once their cell stands, then joins; and the joints to
    be locked after each."""
    locked_after: dict[int, list[str]] = {}
    for joint, number in lock_waits_for(framework).items():
        locked_after.setdefault(number, []).append(joint)
    singles_after = _singles_after(framework)
    for brace in framework.braces:
        singles = [_single(framework, link) for link in singles_after.get(brace.number, ())]
        ends = [joint for single in singles for joint in single.joints]
        locked = (*locked_after.get(brace.number, ()), *ends)
        yield _Head(_brace(framework, brace), locked, tuple(singles))
    for link_id in singles_after.get(0, ()):
        single = _single(framework, link_id)
        # what the design adds one by one is tied into joints that are locked already
        yield _Head(single, () if link_id in framework.extras else single.joints)
    free_ends = _free_ends(framework)
    front, back = ("front", "back") if joins.back_up else ("", "")
    for joint in joins.front_up:
        yield _Head(_join(framework, joint, free_ends.get(joint, ()), front), (joint,))
    if joins.back_up:
        yield _Head(_turning_over(lifters, part))
    for joint in joins.back_up:
        yield _Head(_join(framework, joint, free_ends.get(joint, ()), back), (joint,))


def _singles_after(framework: Framework) -> Mapping[int, list[str]]:
    """Singles by the number of the brace after which they can be tied (0: at the end)."""
    cell_of = {joint: cell for cell in framework.cells for joint in cell.skipped}
    after: dict[int, list[str]] = {}
    for link_id in framework.singles:
        extra = link_id in framework.extras
        cell = None if extra else cell_of.get(framework.link[link_id].start)
        number = 0 if cell is None else max(cell.first, cell.second)
        after.setdefault(number, []).append(link_id)
    return after


def lock_waits_for(framework: Framework) -> Mapping[str, int]:
    """For each joint that braces reach, the number of the brace after which it is locked: the
    last that is tied into it."""
    return {joint: brace.number for brace in framework.braces for joint in _reached(brace)}


def _reached(brace: Brace) -> tuple[str, ...]:
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
        up=after.up,
    )


def _brace(framework: Framework, brace: Brace) -> Operation:
    name = f"brace {brace.number}"
    needs: list[str] = []
    for chain_name, chain in short_chains(brace):
        needs += [f"chain for {chain_name}"] if takes_tying(chain) else prepared(chain_name, chain)
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


def _single(framework: Framework, link_id: str) -> Operation:
    link = framework.link[link_id]
    ends = (link.start, link.finish)
    return Operation(
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


def _turning_over(lifters: int, part: str) -> Operation:
    of = f" {part}" if part else ""
    return Operation(
        id=f"turn over{of}",
        kind=Kind.TURN_OVER,
        stage=Stage.BRACE,
        needs=(),
        makes=(f"turned over{of}",),
        people=lifters,
    )


def _join(framework: Framework, joint: str, free: Sequence[str], up: str) -> Operation:
    return Operation(
        id=f"join {joint}",
        kind=Kind.JOIN,
        stage=Stage.BRACE,
        needs=(),
        makes=(f"join {joint}",),
        joints=(joint,),
        knots=tuple(_tie_in(framework, link_id, joint) for link_id in free),
        up=up,
    )
