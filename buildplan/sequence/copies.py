"""Equal parts of an assembly, and the steps in which a part is built as one before it."""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import replace

from buildplan.framework.model import Chain, Framework, Part
from buildplan.sequence.grouping import Group
from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.work_names import Name

# Work that is done before a part's chains are laid.
BEFORE = frozenset({Kind.SIZE, Kind.PAIR, Kind.TIE_OFF, Kind.CHAIN, Kind.CLOSE_RING, Kind.TAG})


def equal_parts(framework: Framework) -> Mapping[str, str]:
    """The name of each part that is like an earlier one in everything but its name, or is its
    mirror image, with the name of the first such."""
    first: dict[Hashable, str] = {}
    names = {part.name: first.setdefault(_make(part), part.name) for part in framework.parts}
    return {name: other for name, other in names.items() if name != other}


def _make(part: Part) -> Hashable:
    """What a part is made of and how, its name and its numbers in the whole apart."""
    own, start = part.framework, len(part.name) + 1

    def chain(one: Chain) -> Hashable:
        return tuple(joint[start:] for joint in one.joints), one.closed

    return (
        tuple(
            (one.balloon, one.role, one.start[start:], one.finish[start:], one.start_end)
            for one in own.links
        ),
        tuple(chain(long.chain) for long in own.chains),
        tuple(tuple(map(chain, brace.chains)) for brace in own.braces),
        tuple((lock.joint[start:], lock.balloon) for lock in own.locks),
        own.extras and tuple(sorted(link[start:] for link in own.extras)),
    )


def side_by_side(framework: Framework, ordered: Sequence[Operation]) -> tuple[Operation, ...]:
    """Operations in their order, where equal parts wait for nothing of one another: as many people
    can build them at the same time. What waits for the last of them waits for them all."""
    part_of = {operation.id: _part_at(framework, operation) for operation in ordered}
    made_at = {thing: part_of[one.id] for one in ordered for thing in one.makes}
    equal = equal_parts(framework)
    laid: dict[str, Operation] = {}
    waited: dict[str, list[Name]] = {}  # for what a part would have waited, were it no equal one
    found = []
    for operation in ordered:
        part = part_of[operation.id]
        own = [thing for thing in operation.needs if made_at[thing] in ("", part)]
        others = [thing for thing in operation.needs if made_at[thing] not in ("", part)]
        others += [late for thing in others for late in waited.get(made_at[thing], ())]
        if part and operation.kind is Kind.LAY and part not in laid:
            laid[part] = operation
            first = laid.get(equal.get(part, ""))
            if first is not None:
                waited[part] = others
                there = part_of[first.id]
                others = [thing for thing in first.needs if made_at[thing] not in ("", there)]
        needs = tuple(dict.fromkeys((*own, *others)))
        found.append(operation if needs == operation.needs else replace(operation, needs=needs))
    return tuple(found)


def _part_at(framework: Framework, operation: Operation) -> str:
    """The name of the part at which an operation is on the piece; empty of what is made before, or
    ties parts to one another."""
    if operation.kind in BEFORE:
        return ""
    parts = [framework.part_at(joint) for joint in operation.joints]
    names = {part.name for part in parts if part is not None}
    return names.pop() if len(names) == 1 else ""


def repeated(framework: Framework, groups: Sequence[Group]) -> Mapping[int, int]:
    """The number of each step that does again, joint for joint, what an earlier one does at an
    equal part, with the number of that one."""
    equal = equal_parts(framework)
    steps: dict[str, list[int]] = {}
    for number, group in enumerate(groups, 1):
        part = part_built(framework, group)
        if part:
            steps.setdefault(part, []).append(number)
    found: dict[int, int] = {}
    for name, other in equal.items():
        ours, theirs = steps.get(name, []), steps.get(other, [])
        if [_work(groups[n - 1]) for n in ours] == [_work(groups[n - 1]) for n in theirs]:
            found.update(zip(ours, theirs, strict=True))
    return found


def part_built(framework: Framework, group: Group) -> str:
    """The name of the part that a step on the piece is at; empty of what ties parts or comes before
    them."""
    on_it = (Kind.LAY, Kind.JOIN)  # a corner that is brought together brings nothing, nor a lock
    if not any(operation.adds or operation.kind in on_it for operation in group.operations):
        return ""
    if group.kind not in (Kind.LAY, Kind.BRACE, Kind.SINGLE, Kind.JOIN, Kind.TURN_OVER):
        return ""
    parts = {
        part.name
        for operation in group.operations
        for joint in operation.joints
        if (part := framework.part_at(joint)) is not None
    }
    return parts.pop() if len(parts) == 1 else ""


def _work(group: Group) -> Hashable:
    """What hands do in a step, whatever the joints are called."""

    def act(operation: Operation) -> Hashable:
        return operation.kind, len(operation.links), len(operation.joints), operation.up

    return group.kind, group.cells, tuple(tuple(map(act, turn)) for turn in group.turns)
