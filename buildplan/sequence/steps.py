"""The numbered steps of a piece."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterable

from buildplan.framework.counts import BALLOONS_PER_LOCK
from buildplan.framework.model import Framework
from buildplan.sequence.copies import part_built, repeated, side_by_side
from buildplan.sequence.grouping import groups
from buildplan.sequence.model import Access, Kind, Operation, Step, Turn
from buildplan.sequence.operations import operations
from buildplan.sequence.ordering import in_order
from buildplan.sequence.piece import PieceIndex
from buildplan.sequence.plan import StepGroups
from buildplan.sequence.reach import Reach

# Work that hands have to get at joints for.
AT_JOINTS = frozenset({Kind.BRACE, Kind.SETTLE, Kind.SINGLE, Kind.JOIN, Kind.LOCK})


def plan_steps(
    framework: Framework,
    new_parts_limit: int = 16,
    reach: Reach | None = None,
) -> tuple[Step, ...]:
    """The steps that build `framework`, in order, numbered from 1.

    No step of braces brings more than `new_parts_limit` links (one brace may). With `reach` (see
    `reach.find_reach`), steps also know the joints for which the piece has to be lifted.
    """
    piece = PieceIndex(framework)
    ordered = in_order(operations(framework)) if reach is None else reach.operations
    ordered = side_by_side(framework, ordered)
    plan = StepGroups(groups(piece, ordered, new_parts_limit))
    again = repeated(framework, plan.groups)
    first_of: dict[Hashable, int] = {}
    steps = []
    for number, group in enumerate(plan.groups, 1):
        joints = _joints(op for op in group.operations if op.kind in AT_JOINTS)
        ways = _ways(joints, reach)
        otherwise = {joint for found in ways.values() for joint in found}
        behind = (j for j in joints if j in piece.behind and j not in otherwise)
        like = first_of.setdefault((group.kind, group.shape), number)
        steps.append(
            Step(
                number=number,
                stage=group.stage,
                kind=group.kind,
                times=group.times,
                turns=tuple(Turn(_joints(turn), turn) for turn in group.turns),
                needs=plan.needs(number),
                adds=_balloons(framework, group.operations, adds=True),
                prepares=_balloons(framework, group.operations, adds=False),
                cells=group.cells,
                behind=tuple(behind),
                ways=ways,
                alike=like if like != number else None,
                side_work=plan.side_work.get(number),
                repeats=again.get(number),
                part=part_built(framework, group),
            )
        )
    return tuple(steps)


def _joints(operations: Iterable[Operation]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(joint for operation in operations for joint in operation.joints))


def _ways(joints: Iterable[str], reach: Reach | None) -> dict[Access, tuple[str, ...]]:
    """The joints that are got at in each way but the direct one, as far as that is known."""
    known = {} if reach is None else reach.ways
    found: dict[Access, list[str]] = {}
    for joint in joints:
        way = known.get(joint, Access.DIRECT)
        if way is not Access.DIRECT:
            found.setdefault(way, []).append(joint)
    return {way: tuple(joints) for way, joints in found.items()}


def _balloons(framework: Framework, handled: tuple[Operation, ...], adds: bool) -> dict[str, int]:
    """Balloons by key that come into the piece (`adds`) or are made ready, in file order. One
    that a step handles twice (it is sized, then tied) counts once."""
    concerned = [operation for operation in handled if operation.adds is adds]
    links = dict.fromkeys(link for operation in concerned for link in operation.links)
    locks = dict.fromkeys(joint for operation in concerned for joint in operation.locks)
    found = Counter(framework.link[link].balloon for link in links)
    for joint in locks:
        found[framework.lock_at[joint].balloon] += BALLOONS_PER_LOCK
    return {key: found[key] for key in framework.balloons if found[key]}
