"""The operations of steps as work that can be shared: what the same hands do in one go, what each
needs first, how long it takes and who can do it."""

from __future__ import annotations

from collections.abc import Collection, Hashable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import fsum

from buildplan.sequence.labour import operation_minutes
from buildplan.sequence.model import Kind, Operation, Step
from buildplan.sequence.network import INFLATE, TIE, Activity
from buildplan.sequence.scheduling import Person

# Kinds that a helper can do who does not tie.
WITHOUT_TYING = frozenset(
    {Kind.SIZE, Kind.TAG, Kind.LAY, Kind.INSPECT, Kind.TURN_OVER, Kind.STAND_UP}
)


# Kinds whose makings can be carried to the site.
PORTABLE = frozenset({Kind.SIZE, Kind.PAIR, Kind.TIE_OFF, Kind.CHAIN})


# What two do at a joint of a course that comes on others: one holds, one locks. That they take half
# the time of one is from memory.
HELD, HANDS = frozenset({Kind.JOIN, Kind.LOCK}), 2


# What is done to the chains of a course before they are laid.
BEFORE_LAYING = frozenset({Kind.CLOSE_RING, Kind.TAG})


@dataclass(frozen=True)
class Work:
    """Operations that the same hands do in one go, and the number of the step that stands for
    the work they belong with (the first of two that are taken together). `piece` is empty when
    only one is built, `place` tells the equal parts of an assembly apart. `after` are the ids of
    works that come before it though it does not need what they make."""

    operations: tuple[Operation, ...]
    steps: tuple[int, ...]
    block: int
    piece: str
    after: tuple[str, ...] = ()
    place: str = ""

    @property
    def kind(self) -> Kind:
        """What decides where it is done and by whom: the last of its operations."""
        return self.operations[-1].kind

    @property
    def id(self) -> str:
        """The id of the last of its operations."""
        return self.operations[-1].id

    @property
    def step(self) -> int:
        """The number of the step that it ends in."""
        return self.steps[-1]

    @property
    def people(self) -> int:
        """How many it takes."""
        return max(operation.people for operation in self.operations)

    @property
    def portable(self) -> bool:
        """Whether what it makes can be carried."""
        return self.kind in PORTABLE


def works_of(steps: Sequence[Step], everyone_ties: bool, piece_of: Mapping[int, str]) -> list[Work]:
    """Operations put together where the same hands do them in one go: two balloons are sized
    and tied at once (unless somebody else inflates), a brace is settled by whoever tied it."""
    step_of = {op.id: step for step in steps for op in step.operations}
    maker = {thing: op for step in steps for op in step.operations for thing in op.makes}
    fused = {Kind.SETTLE: Kind.BRACE}
    if everyone_ties:
        fused |= {Kind.PAIR: Kind.SIZE, Kind.TIE_OFF: Kind.SIZE}
    before = {
        op.id: tuple(maker[t] for t in op.needs if maker[t].kind is fused.get(op.kind))
        for step in steps
        for op in step.operations
    }
    # sizing belongs with the tying it is for, whoever does it
    tied_in = {
        thing: step.number
        for step in steps
        for op in step.operations
        if op.kind in (Kind.PAIR, Kind.TIE_OFF)
        for thing in op.needs
    }
    place_of = _places(steps)
    swallowed = {one.id for ones in before.values() for one in ones}
    works = []
    for step in steps:
        for op in step.operations:
            if op.id not in swallowed:
                operations = (*before[op.id], op)
                numbers = tuple(dict.fromkeys(step_of[one.id].number for one in operations))
                block = tied_in.get(op.makes[0], step.number)
                piece = piece_of.get(step.number, "")
                works.append(
                    Work(operations, numbers, block, piece, place=place_of.get(step.number, ""))
                )
    last: dict[str, int] = {}  # by piece, the last step that ties balloons off alone
    for work in works:
        if work.kind is Kind.TIE_OFF:
            last[work.piece] = max(last.get(work.piece, 0), work.block)
    return sorted(
        works,
        key=lambda work: (
            (max(work.block, last.get(work.piece, 0)), True)
            if _is_a_lock(work)
            else (work.block, False)
        ),
    )


def _is_a_lock(work: Work) -> bool:
    """Whether work ties the rounds of a lock: those come after every balloon of a chain."""
    return work.kind in (Kind.SIZE, Kind.PAIR) and bool(work.operations[-1].locks)


def _places(steps: Sequence[Step]) -> Mapping[int, str]:
    """Which of some equal parts a step builds, by its number: people stay where they are."""
    part_of = {step.number: step.part for step in steps}
    found: dict[int, str] = {}
    for step in steps:
        if step.repeats is not None:
            found[step.repeats] = part_of[step.repeats]
            found[step.number] = step.part
    return found


def prepared_first(works: Sequence[Work], built: Collection[str]) -> list[Work]:
    """The works, where pieces of `built` are put together once all that can be is prepared, so
    that nobody goes to and fro between the two."""
    prepared = {
        piece: tuple(work.id for work in works if work.piece == piece and work.portable)
        for piece in built
    }
    return [
        work if work.portable else replace(work, after=prepared.get(work.piece, ()))
        for work in works
    ]


def _laid_before(works: Sequence[Work]) -> Mapping[str, Sequence[str]]:
    """What is laid before somebody closes and tags the chains of a course: those of the course
    before it, so that it is done by whoever is free beside the work, and not all of it at first."""
    lays: dict[tuple[str, str], dict[int, str]] = {}
    for work in works:
        if work.kind is Kind.LAY and any(op.course for op in work.operations):
            lays.setdefault((work.piece, work.place), {})[work.step] = work.id
    found = {}
    for work in works:
        if work.kind in BEFORE_LAYING:
            laid = lays.get((work.piece, work.place), {})
            before = [step for step in laid if step < work.step]
            found[work.id] = [laid[max(before)]] if work.step in laid and before else []
    return found


def _course(work: Work) -> Hashable:
    """The course that work belongs to, of those that are joined joint by joint; None of other
    work."""
    number = work.operations[-1].course
    return (work.piece, work.place, number) if number else None


def _first_courses(works: Sequence[Work]) -> Mapping[tuple[str, str], Hashable]:
    """The first course of each piece, of equal parts of each: it lies on the floor."""
    found: dict[tuple[str, str], Hashable] = {}
    for work in works:
        if _course(work) is not None:
            found.setdefault((work.piece, work.place), _course(work))
    return found


def _part_before(works: Sequence[Work], pairs: int) -> Mapping[str, Sequence[str]]:
    """What is done of one of some equal parts before the next is begun, where there are more of
    them than `pairs` of people: two stay at one until it stands."""
    built: dict[tuple[str, str], list[Work]] = {}
    for work in works:
        if work.place and not work.portable:
            built.setdefault((work.piece, work.place), []).append(work)
    of_courses = [own for own in built.values() if _course(own[-1]) is not None]
    found: dict[str, Sequence[str]] = {}
    for earlier, later in zip(of_courses, of_courses[pairs:], strict=False):
        if earlier[0].piece == later[0].piece:
            last = [one.id for one in earlier if _course(one) == _course(earlier[-1])]
            found |= {one.id: last for one in later}
    return found


def activities_of(
    works: Sequence[Work], crew: Sequence[Person], minutes: Mapping[str, float]
) -> list[Activity]:
    """Works as activities of a network, whose needs are other works.

    One person joins and locks in turn. Two share it: the joints of a course are joined one after
    another, whoever comes behind locks them, and what comes upon the course waits for every lock.
    A course that comes on others is held at each joint: there two work together, in half the time.
    """
    maker = {thing: work for work in works for op in work.operations for thing in op.makes}
    here = {work.id for work in works}
    locks: dict[Hashable, list[str]] = {}
    for work in works:
        if work.kind is Kind.LOCK:
            locks.setdefault(_course(work), []).append(work.id)
    laid_before, able = _laid_before(works), sum(TIE in person.skills for person in crew)
    first = _first_courses(works)
    pairs = able // HANDS
    part_before = _part_before(works, pairs) if pairs else {}
    activities = []
    for work in works:
        held = work.kind in HELD and _course(work) not in {None, *first.values()}
        hands = min(HANDS, able) if held and work.people < HANDS else 1
        needs: list[str] = []
        for made in (maker[t] for op in work.operations for t in op.needs if t in maker):
            if _course(made) not in (None, _course(work)):
                needs += [made.id, *locks.get(_course(made), ())]
            elif made.kind is Kind.LOCK and work.kind is Kind.JOIN and _course(made) is not None:
                needs += [maker[t].id for op in made.operations for t in op.needs if t in maker]
            else:
                needs.append(made.id)
        needs += [
            before
            for before in (
                *work.after,
                *laid_before.get(work.id, ()),
                *part_before.get(work.id, ()),
            )
            if before in here
        ]
        activities.append(
            Activity(
                id=work.id,
                minutes=fsum(operation_minutes(op, minutes) for op in work.operations) / hands,
                needs=tuple(dict.fromkeys(need for need in needs if need != work.id)),
                skill=INFLATE if work.kind in WITHOUT_TYING else TIE,
                people=max(hands, min(work.people, len(crew))),
                block=str(work.block),
                piece=work.piece + work.place,
            )
        )
    return activities
