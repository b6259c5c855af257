"""Replay: the steps alone rebuild the piece, and steps that lie are refused.

Longer than 300 lines for its list of lies.
"""

import copy
import json
import random
import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sequence_pieces import STAR, listed, listed_pieces, tube, tubes

from buildplan.framework.counts import multigraph
from buildplan.framework.model import Framework
from buildplan.sequence import replay as replay_module
from buildplan.sequence import replay_acts, replay_state
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.replay import Replayed, ReplayError, replay
from buildplan.sequence.steps import plan_steps

Steps = list[dict[str, Any]]

# every kind of cell, a closing share, an odd ring, two colours
EVERYTHING = tube(
    ["straight", "tip", "fan", "fan_in", "2,1", "straight", "straight", "dip"],
    closed=True,
    long=["long", "other"],
)
SOLID = listed([(f"v{a}", f"v{b}", "long") for a, b in nx.icosahedral_graph().edges()])


def plain(framework: Framework, limit: int = 16) -> Steps:
    read: Steps = json.loads(json.dumps(steps_as_json(plan_steps(framework, limit))))
    return read


def edges(graph: nx.MultiGraph) -> list[Any]:
    return sorted(
        (key, sorted((one, other)), sorted(data.items()))
        for one, other, key, data in graph.edges(keys=True, data=True)
    )


def assert_is(replayed: Replayed, framework: Framework) -> None:
    assert edges(replayed.graph) == edges(multigraph(framework))
    assert replayed.locks == {lock.joint: lock.balloon for lock in framework.locks}


@settings(max_examples=120)
@given(tubes(), st.sampled_from((1, 8, 16, 60)))
def test_a_tube_is_rebuilt_edge_for_edge(framework: Framework, limit: int) -> None:
    assert_is(replay(plain(framework, limit)), framework)


@settings(max_examples=120)
@given(listed_pieces())
def test_a_listed_piece_is_rebuilt_edge_for_edge(framework: Framework) -> None:
    assert_is(replay(plain(framework)), framework)


@pytest.mark.parametrize("framework", [tube(STAR, closed=True), EVERYTHING, SOLID])
def test_chosen_pieces_are_rebuilt(framework: Framework) -> None:
    assert_is(replay(plain(framework)), framework)


def test_the_reader_shares_no_code_with_the_sequencer() -> None:
    for module in (replay_module, replay_acts, replay_state):
        source = Path(str(module.__file__)).read_text(encoding="utf-8")
        own = re.findall(r"^(?:from|import) (buildplan\S*)", source, re.MULTILINE)
        assert set(own) <= {
            "buildplan.sequence.replay_acts",
            "buildplan.sequence.replay_state",
        }


# --- steps that lie -----------------------------------------------------------------------


def renumbered(steps: Sequence[dict[str, Any]]) -> Steps:
    """`steps` numbered afresh in their new order, references to other steps kept right, so
    that a refusal is about the work and not about numbers."""
    new = {step["number"]: place for place, step in enumerate(steps, 1)}
    result = copy.deepcopy(list(steps))
    for place, step in enumerate(result, 1):
        step["number"] = place
        step["needs"] = [new[n] for n in step["needs"] if new.get(n, place) < place]
    return result


def without_names(steps: Steps) -> Steps:
    """Steps whose operations do not say what they need and make: only what hands find on the
    floor can refuse them."""
    result = copy.deepcopy(steps)
    for step in result:
        for turn in step["turns"]:
            for operation in turn["operations"]:
                operation["needs"] = operation["makes"] = []
    return result


TOLD = [plain(EVERYTHING, 1), plain(SOLID, 1), without_names(plain(EVERYTHING, 1))]
TOLD.append(without_names(plain(SOLID, 1)))


def test_what_lies_on_the_floor_is_enough() -> None:
    assert_is(replay(without_names(plain(EVERYTHING))), EVERYTHING)
    assert_is(replay(without_names(plain(SOLID))), SOLID)


@pytest.mark.parametrize("steps", TOLD)
def test_no_step_can_be_left_out(steps: Steps) -> None:
    for place in range(len(steps)):
        with pytest.raises(ReplayError):
            replay(renumbered(steps[:place] + steps[place + 1 :]))


@pytest.mark.parametrize("steps", TOLD)
def test_no_step_can_be_done_twice(steps: Steps) -> None:
    for place in range(len(steps)):
        if steps[place]["kind"] != "tag":  # a second tag does no harm
            with pytest.raises(ReplayError):
                replay(renumbered([*steps[: place + 1], *steps[place:]]))


@pytest.mark.parametrize(
    ("framework", "steps"), list(zip([EVERYTHING, SOLID] * 2, TOLD, strict=True))
)
def test_steps_in_any_other_order_are_refused_or_come_to_the_same(
    framework: Framework, steps: Steps
) -> None:
    rng = random.Random(5)
    refused = 0
    for _ in range(60):
        order = list(range(len(steps)))
        moved = order.pop(rng.randrange(len(order)))
        order.insert(rng.randrange(len(order)), moved)
        try:
            assert_is(replay(renumbered([steps[i] for i in order])), framework)
        except ReplayError:
            refused += 1
    assert refused > 30


@pytest.mark.parametrize("framework", [EVERYTHING, SOLID])
def test_steps_change_places_only_where_it_does_no_harm(framework: Framework) -> None:
    """Two neighbours swapped either come to the same piece, or are refused; where one needs
    the other they are refused."""
    steps = plain(framework, limit=1)
    refused = 0
    for place in range(len(steps) - 1):
        swapped = [*steps[:place], steps[place + 1], steps[place], *steps[place + 2 :]]
        if steps[place]["number"] in steps[place + 1]["needs"]:
            refused += 1
            with pytest.raises(ReplayError):
                replay(renumbered(swapped))
        else:
            assert_is(replay(renumbered(swapped)), framework)
    assert refused > len(steps) / 2


def test_no_operation_can_be_left_out() -> None:
    steps = plain(EVERYTHING)
    for step in steps:
        for turn in step["turns"]:
            for place in range(len(turn["operations"])):
                kept = turn["operations"]
                turn["operations"] = kept[:place] + kept[place + 1 :]
                with pytest.raises(ReplayError):
                    replay(steps)
                turn["operations"] = kept


def test_no_knot_can_be_left_out_or_tied_by_the_wrong_end() -> None:
    steps = plain(EVERYTHING)
    for step in steps:
        for turn in step["turns"]:
            for operation in turn["operations"]:
                whole = operation["knots"]
                for place, knot in enumerate(whole):
                    operation["knots"] = whole[:place] + whole[place + 1 :]
                    with pytest.raises(ReplayError):
                        replay(steps)
                    operation["knots"] = whole
                    for end in knot["ends"]:
                        right = end[1]
                        end[1] = "tail" if right == "neck" else "neck"
                        with pytest.raises(ReplayError):
                            replay(steps)
                        end[1] = right


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


def test_nothing_at_all_is_no_piece() -> None:
    with pytest.raises(ReplayError, match="never stood up"):
        replay([])
