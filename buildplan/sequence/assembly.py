"""Operations on the laid chains: braces, singles, joints, and the locks of each.

Two rules of the work decide the order along the piece:

- Brace by brace, each locked before the next, so that nothing wanders.
- A joint takes one lock, and the lock holds all that is tied there: where a later brace is tied
  into a joint too (the next one, or the one that closes a ring), its lock waits for that brace.

A skipped joint's single is tied with the second of the braces on its two sides, and locked with
that brace; those of a spur together after it.

The parts of an assembly are built one after another, each from the laying of its chains to its
last lock; then they are tied to one another.
"""

from __future__ import annotations

from collections.abc import Generator, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from buildplan.framework.chain_roles import Layer
from buildplan.framework.locks import Tie
from buildplan.framework.model import Framework
from buildplan.sequence import work_names as names
from buildplan.sequence.courses import (
    JointCourse,
    WorkOrder,
    built_pieces,
    in_courses,
)
from buildplan.sequence.model import Kind, Operation, Stage
from buildplan.sequence.piece_work import (
    LooseEnds,
    brace_work,
    join_work,
    lock_work,
    loose_ends,
    reached_by,
    settling_work,
    single_work,
    turning_over_work,
)
from buildplan.sequence.preparation import coming_in, laying
from buildplan.sequence.spurs import singles_in_cells
from buildplan.sequence.work_names import Name
from buildplan.shape.tied_parts import part_of


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
        loose = loose_ends(
            own, [*(joint for joint in joints if joint not in order.later), *put_off]
        )
        for number, course in enumerate(order.courses[name], courses + 1):
            if course.chains:
                laid = coming_in(own, number, course.chains, done)
                yield laid
                done = laid.makes
            heads = _joins(own, course, number, loose, order.later)
            done = yield from _worked(own, heads, done)
        done = yield from _worked(own, _joins_later(own, put_off, loose, lifters, name), done)
        added = [_Head(single_work(own, link)) for link in own.singles]
        done = yield from _worked(own, added, done)
        courses += len(order.courses[name])
    if framework.parts:
        yield from _worked(framework, _tying(framework, order.at_ties or lifters), done)


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
            last = settling_work(operation)
            yield last
        for single in head.singles:
            yield replace(single, needs=(*last.makes, *single.needs))
            last = single
        locks = [
            replace(
                lock_work(joint, last),
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


def _tying(framework: Framework, people: int) -> Iterator[_Head]:
    """Balloons between parts, then joints of parts brought together; ties of the same parts one
    after another."""
    for link_id in _between_parts(framework):
        yield _Head(single_work(framework, link_id))
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
            people=people,
        )
        yield _Head(tied, (tie.name,))


def _between_parts(framework: Framework) -> list[str]:
    """The singles from part to part, those of two parts together, and of these the ones at the back
    last: parts that lie are lifted for them once."""
    within = {link for part in framework.parts for link in part.framework.link}
    back = {
        joint
        for long in framework.chains
        if long.layer is Layer.BACK
        for joint in long.chain.joints
    }
    two: dict[frozenset[str], list[str]] = {}
    for link_id in framework.singles:
        if link_id not in within:
            joints = framework.link[link_id].start, framework.link[link_id].finish
            parts = frozenset(part_of(framework, joint) for joint in joints)
            two.setdefault(parts, []).append(link_id)

    def at_back(link_id: str) -> bool:
        return framework.link[link_id].start in back

    return [link_id for links in two.values() for link_id in sorted(links, key=at_back)]


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
        own, *spurs = _by_spur(framework, singles_after.get(brace.number, ()))
        heads = [[brace_work(framework, brace), *own], *spurs]
        for head, *singles in heads:
            first = locked_after.get(brace.number, ()) if head.kind is Kind.BRACE else head.joints
            ends = [joint for single in singles for joint in single.joints]
            locked = list(dict.fromkeys((*first, *ends)))
            put_off += [joint for joint in locked if joint in later]
            now = tuple(joint for joint in locked if joint not in later)
            yield _Head(head, now, tuple(singles), up)
    for link_id in singles_after.get(0, ()):
        single = single_work(framework, link_id)
        # what the design adds one by one is tied into joints that are locked already
        locked = [] if link_id in framework.extras else list(single.joints)
        put_off += [joint for joint in locked if joint in later]
        yield _Head(single, tuple(joint for joint in locked if joint not in later), up=up)
    if put_off:
        yield _Head(turning_over_work(lifters, part), tuple(put_off), up="back")


def _by_spur(framework: Framework, links: Sequence[str]) -> list[list[Operation]]:
    """The singles that are tied with a brace, then those of each spur, the rungs between its two
    rails first."""
    cell_of = singles_in_cells(framework)
    own: list[Operation] = []
    spurs: dict[int, list[Operation]] = {}
    for link in sorted(links, key=lambda link: link in framework.extras):
        cell = cell_of.get(link)
        on_spur = cell is not None and cell.kind.is_spur
        group = spurs.setdefault(cell.number, []) if cell and on_spur else own
        group.append(single_work(framework, link))
    return [own, *spurs.values()]


def _joins(
    framework: Framework, course: JointCourse, number: int, loose: LooseEnds, later: frozenset[str]
) -> Iterator[_Head]:
    """The joints of a course, but those for which the piece is turned over."""
    up = "front" if later.intersection(framework.joints) else ""
    for joint in course.joints:
        if joint not in later:
            yield _Head(
                replace(join_work(framework, joint, loose, up), course=number), (joint,), up=up
            )


def _joins_later(
    framework: Framework, joints: Sequence[str], loose: LooseEnds, lifters: int, part: str
) -> Iterator[_Head]:
    """The joints for which the piece is turned over, after all others."""
    if joints:
        yield _Head(turning_over_work(lifters, part))
    for joint in joints:
        yield _Head(join_work(framework, joint, loose, "back"), (joint,), up="back")


def _singles_after(framework: Framework) -> Mapping[int, list[str]]:
    """Singles by the number of the brace with which they are tied: the one that finishes their
    cell, or else the later of the nearest two along the chain."""
    cell_of = singles_in_cells(framework)
    after: dict[int, list[str]] = {}
    for link_id in framework.singles:
        cell = cell_of.get(link_id)
        if link_id in framework.extras and cell is None:
            after.setdefault(0, []).append(link_id)
            continue
        joint = framework.link[link_id].start
        number = max(cell.first, cell.second) if cell else _braced_about(framework, joint)
        after.setdefault(number, []).append(link_id)
    return after


def _braced_about(framework: Framework, joint: str) -> int:
    """The later of the braces that are next to a joint along its chain, each when it first
    comes; the last brace where a chain ends before one."""
    first: dict[str, int] = {}
    for brace in framework.braces:
        for reached in reached_by(brace):
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
    return {joint: brace.number for brace in framework.braces for joint in reached_by(brace)}
