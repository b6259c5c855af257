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
from buildplan.sequence import work_names as names
from buildplan.sequence.chains import closing_knot, prepared, short_chains, takes_tying
from buildplan.sequence.courses import (
    JointCourse,
    WorkOrder,
    built_pieces,
    in_courses,
    loose_chains,
)
from buildplan.sequence.model import Kind, Knot, Operation, Stage
from buildplan.sequence.preparation import coming_in, laying
from buildplan.sequence.work_names import Name


def assembling(framework: Framework, order: WorkOrder, lifters: int) -> Iterator[Operation]:
    """Part by part the laying of the chains; then heads (a brace, a single, a join), each followed
    by its locks, a brace by its settling first; each head needs all that was made after the head
    before it. What has no braces comes in course by course."""
    done: tuple[Name, ...] = ()
    courses = 0
    for name, own in built_pieces(framework):
        if not in_courses(own):
            laid = laying(own, name, done)
            yield laid
            done = yield from _worked(own, _heads(own, order.later, lifters, name), laid.makes)
            continue
        joints = [joint for course in order.courses[name] for joint in course.joints]
        put_off = [joint for joint in joints if joint in order.later]
        loose = _loose(own, [*(joint for joint in joints if joint not in order.later), *put_off])
        for number, course in enumerate(order.courses[name], courses + 1):
            if course.chains:
                laid = coming_in(own, number, course.chains, done)
                yield laid
                done = laid.makes
            heads = _joins(own, course, number, loose, order.later)
            done = yield from _worked(own, heads, done)
        done = yield from _worked(own, _joins_later(own, put_off, loose, lifters, name), done)
        courses += len(order.courses[name])
    if framework.parts:
        yield from _worked(framework, _tying(framework, lifters), done)


@dataclass(frozen=True)
class _Head:
    """A head, what is tied in with it before anything is locked, and the joints to be locked
    then."""

    operation: Operation
    locked: tuple[str, ...] = ()
    singles: tuple[Operation, ...] = ()
    up: str = ""


def _worked(
    framework: Framework, heads: Iterable[_Head], before: tuple[Name, ...]
) -> Generator[Operation, None, tuple[Name, ...]]:
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
        locks = [
            replace(
                _lock(joint, last),
                joints=(joint,) if joint in framework.links_at else operation.joints,
                up=head.up,
                course=operation.course,
            )
            for joint in head.locked
            if joint in framework.lock_at
        ]
        yield from locks
        before = tuple(thing for lock in locks for thing in lock.makes) or last.makes
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
            id=names.tie(tie.name),
            kind=Kind.JOIN,
            stage=Stage.BRACE,
            needs=(),
            makes=(names.tie(tie.name),),
            joints=tie.joints,
            people=lifters,
        )
        yield _Head(tied, (tie.name,))


def _heads(framework: Framework, later: frozenset[str], lifters: int, part: str) -> Iterator[_Head]:
    """Braces along the piece, with the singles of the cells that they finish, and the joints to be
    locked after each; then, with the piece turned over, the locks of `later` joints."""
    locked_after: dict[int, list[str]] = {}
    for joint, number in lock_waits_for(framework).items():
        locked_after.setdefault(number, []).append(joint)
    singles_after = _singles_after(framework)
    put_off: list[str] = []
    up = "front" if later.intersection(framework.joints) else ""
    for brace in framework.braces:
        singles = [_single(framework, link) for link in singles_after.get(brace.number, ())]
        ends = [joint for single in singles for joint in single.joints]
        locked = list(dict.fromkeys((*locked_after.get(brace.number, ()), *ends)))
        put_off += [joint for joint in locked if joint in later]
        now = tuple(joint for joint in locked if joint not in later)
        yield _Head(_brace(framework, brace), now, tuple(singles), up)
    for link_id in singles_after.get(0, ()):
        single = _single(framework, link_id)
        # what the design adds one by one is tied into joints that are locked already
        locked = [] if link_id in framework.extras else list(single.joints)
        put_off += [joint for joint in locked if joint in later]
        yield _Head(single, tuple(joint for joint in locked if joint not in later), up=up)
    if put_off:
        yield _Head(_turning_over(lifters, part), tuple(put_off), up="back")


def _joins(
    framework: Framework, course: JointCourse, number: int, loose: _Loose, later: frozenset[str]
) -> Iterator[_Head]:
    """The joints of a course, but those for which the piece is turned over."""
    up = "front" if later.intersection(framework.joints) else ""
    for joint in course.joints:
        if joint not in later:
            yield _Head(replace(_join(framework, joint, loose, up), course=number), (joint,), up=up)


def _joins_later(
    framework: Framework, joints: Sequence[str], loose: _Loose, lifters: int, part: str
) -> Iterator[_Head]:
    """The joints for which the piece is turned over, after all others."""
    if joints:
        yield _Head(_turning_over(lifters, part))
    for joint in joints:
        yield _Head(_join(framework, joint, loose, "back"), (joint,), up="back")


def _singles_after(framework: Framework) -> Mapping[int, list[str]]:
    """Singles by the number of the brace with which they are tied: the one that finishes their
    cell, or else the later of the nearest two along the chain."""
    cell_of = {joint: cell for cell in framework.cells for joint in cell.skipped}
    after: dict[int, list[str]] = {}
    for link_id in framework.singles:
        if link_id in framework.extras:
            after.setdefault(0, []).append(link_id)
            continue
        joint = framework.link[link_id].start
        cell = cell_of.get(joint)
        number = max(cell.first, cell.second) if cell else _braced_about(framework, joint)
        after.setdefault(number, []).append(link_id)
    return after


def _braced_about(framework: Framework, joint: str) -> int:
    """The later of the braces that are next to a joint along its chain, each when it first
    comes; the last brace where a chain ends before one."""
    first: dict[str, int] = {}
    for brace in framework.braces:
        for reached in _reached(brace):
            first.setdefault(reached, brace.number)
    chain = next(long.chain for long in framework.chains if joint in long.chain.joints)
    place, count = chain.joints.index(joint), len(chain.joints)
    numbers = []
    for way in (1, -1):
        walked = (chain.joints[(place + way * step) % count] for step in range(1, count))
        numbers.append(next((first[other] for other in walked if other in first), 0))
    return max(numbers) or (framework.braces[-1].number if framework.braces else 0)


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
        id=names.settle(brace.brace),
        kind=Kind.SETTLE,
        stage=Stage.BRACE,
        needs=brace.makes,
        makes=(names.settled(brace.brace),),
        joints=brace.joints,
        brace=brace.brace,
    )


def _lock(joint: str, after: Operation) -> Operation:
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


def _brace(framework: Framework, brace: Brace) -> Operation:
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
        joints=_reached(brace),
        knots=tuple(_brace_knots(framework, brace)),
        adds=True,
        brace=brace.number,
    )


def _single(framework: Framework, link_id: str) -> Operation:
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
class _Loose:
    """By joint, the links with which open chains end there, and those among them that are first
    brought in there (chains of one balloon)."""

    ends: Mapping[str, Sequence[str]]
    brought: Mapping[str, Sequence[str]]


def _loose(framework: Framework, joints: Sequence[str]) -> _Loose:
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
    return _Loose(ends, brought)


def _turning_over(lifters: int, part: str) -> Operation:
    return Operation(
        id=names.turn_over(part),
        kind=Kind.TURN_OVER,
        stage=Stage.BRACE,
        needs=(),
        makes=(names.turned_over(part),),
        people=lifters,
    )


def _join(framework: Framework, joint: str, loose: _Loose, up: str) -> Operation:
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
