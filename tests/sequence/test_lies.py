"""Replay refuses steps that lie, and names the step."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import networkx as nx
import pytest
from sequence_pieces import STAR, tube
from told_steps import EVERYTHING, Steps, plain, renumbered, without_names

from buildplan.sequence.replay import ReplayError, replay


def edges(graph: nx.MultiGraph) -> list[Any]:
    return sorted(
        (key, sorted((one, other)), sorted(data.items()))
        for one, other, key, data in graph.edges(keys=True, data=True)
    )


def first(steps: Steps, kind: str) -> dict[str, Any]:
    operation: dict[str, Any] = next(
        operation
        for step in steps
        for turn in step["turns"]
        for operation in turn["operations"]
        if operation["kind"] == kind
    )
    return operation


def step_of(steps: Steps, kind: str, place: int = 0) -> dict[str, Any]:
    return [step for step in steps if step["kind"] == kind][place]


def _gap(steps: Steps) -> None:
    steps[3]["number"] = 99


def _later_need(steps: Steps) -> None:
    steps[3]["needs"].append(steps[5]["number"])


def _wrong_count(steps: Steps) -> None:
    step_of(steps, "brace")["adds"]["cross"] += 1


def _other_balloon(steps: Steps) -> None:
    first(steps, "size")["balloon"] = "other"


def _other_joint(steps: Steps) -> None:
    step = step_of(steps, "brace")
    step["turns"][0]["operations"][0]["knots"][0]["joint"] = "A2"


def _no_such_joint(steps: Steps) -> None:
    first(steps, "lock")["locks"] = ["Z9"]


def _crossed_order(steps: Steps) -> None:
    joints = first(steps, "brace")["joints"]
    joints[0], joints[1] = joints[1], joints[0]


def _chain_in_wrong_order(steps: Steps) -> None:
    links = first(steps, "chain")["links"]
    links[0], links[5] = links[5], links[0]


def _ring_of_two_chains(steps: Steps) -> None:
    closing = step_of(steps, "close ring")
    one, other = (turn["operations"][0]["knots"][0] for turn in closing["turns"][:2])
    one["ends"][1], other["ends"][1] = other["ends"][1], one["ends"][1]


def _late_locks(steps: Steps) -> None:
    brace = next(s for s in steps if s["kind"] == "brace" and s["times"] > 1)
    one, other = (turn["operations"] for turn in brace["turns"][:2])
    late = [operation for operation in one if operation["kind"] == "lock"]
    one[:] = [operation for operation in one if operation["kind"] != "lock"]
    other += late
    for turn in brace["turns"]:
        turn["joints"] = [joint for op in turn["operations"] for joint in op["joints"]]
    steps[:] = without_names(steps)


def _unknown_kind(steps: Steps) -> None:
    first(steps, "lay")["kind"] = "juggle"


def _unnamed_joint(steps: Steps) -> None:
    step_of(steps, "brace")["turns"][0]["joints"].pop()


def _stood_up_alone(steps: Steps) -> None:
    first(steps, "stand up")["people"] = 1


def _brace_before_laying(steps: Steps) -> None:
    lay = step_of(steps, "lay")["number"]
    steps.insert(lay - 1, steps.pop(lay))
    steps[:] = renumbered(without_names(steps))


@pytest.mark.parametrize(
    ("lie", "message"),
    [
        (_gap, "without gaps"),
        (_later_need, "not an earlier one"),
        (_wrong_count, "but handles"),
        (_other_balloon, "but handles"),
        (_other_joint, "A2|not at"),
        (_no_such_joint, "Z9"),
        (_crossed_order, "not next to each other"),
        (_chain_in_wrong_order, "not tied to each other"),
        (_ring_of_two_chains, "no chain's end|not of one chain"),
        (_late_locks, "must be locked before the next brace"),
        (_unknown_kind, "nobody knows how"),
        (_unnamed_joint, "names other joints"),
        (_brace_before_laying, "no joint"),
        (_stood_up_alone, "nobody stands a piece up alone"),
    ],
)
def test_a_lie_is_refused(lie: Callable[[Steps], None], message: str) -> None:
    steps = plain(tube(STAR, closed=True))
    lie(steps)
    with pytest.raises(ReplayError, match=message):
        replay(steps)


def test_the_refusal_names_the_step() -> None:
    steps = plain(EVERYTHING)
    brace = step_of(steps, "brace", 2)
    brace["turns"][0]["operations"][0]["knots"].pop()
    with pytest.raises(ReplayError) as refusal:
        replay(steps)
    assert refusal.value.step == brace["number"]
