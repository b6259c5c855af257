"""The numbered steps of a piece."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable

from buildplan.design.measures import Units
from buildplan.framework.counts import BALLOONS_PER_LOCK
from buildplan.framework.model import Framework
from buildplan.language.grammar import sentences
from buildplan.sequence.grouping import groups
from buildplan.sequence.model import Operation, Step, Turn
from buildplan.sequence.operations import operations
from buildplan.sequence.ordering import in_order
from buildplan.sequence.piece import Piece
from buildplan.sequence.plan import Plan
from buildplan.sequence.reach import Reach
from buildplan.sequence.telling import row, wording
from buildplan.sequence.words.preparing import side_work


def plan_steps(
    framework: Framework,
    new_parts_limit: int = 16,
    units: Units = "in",
    reach: Reach | None = None,
) -> tuple[Step, ...]:
    """The steps that build `framework`, in order, numbered from 1.

    No step of braces brings more than `new_parts_limit` links (one brace may). Gauges are
    told in `units`. With `reach` (see `reach.find_reach`), steps also say how to get at joints
    that are hard to reach.
    """
    piece = Piece(framework)
    ordered = in_order(operations(framework) if reach is None else reach.operations)
    plan = Plan(piece, groups(piece, ordered, new_parts_limit), units, reach)
    first_of: dict[Hashable, int] = {}
    steps = []
    for number, group in enumerate(plan.groups, 1):
        said = wording(plan, number)
        turns = tuple(_turn(plan, number, turn) for turn in group.turns)
        like = first_of.setdefault((group.kind, group.shape), number)
        steps.append(
            Step(
                number=number,
                stage=group.stage,
                kind=group.kind,
                title=said.title,
                text=_with_side_work(plan, number, said.text),
                check=said.check,
                times=group.times,
                turns=turns,
                needs=plan.needs(number),
                adds=_balloons(framework, group.operations, adds=True),
                prepares=_balloons(framework, group.operations, adds=False),
                cells=group.cells,
                alike=like if like != number else None,
                side_work=plan.side_work.get(number),
            )
        )
    return tuple(steps)


def _with_side_work(plan: Plan, number: int, text: str) -> str:
    first = plan.side_work.get(number)
    return text if first is None else sentences(text, side_work(first))


def _turn(plan: Plan, number: int, turn: tuple[Operation, ...]) -> Turn:
    name, said = row(plan, number, turn)
    joints = tuple(dict.fromkeys(joint for operation in turn for joint in operation.joints))
    return Turn(name=name, joints=joints, operations=turn, words=said)


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
