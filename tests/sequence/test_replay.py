"""Replay: the steps alone rebuild the piece, and no part of them can be left out."""

import random
import re
from pathlib import Path
from typing import Any

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sequence_pieces import STAR, listed_pieces, tube, tubes
from told_steps import EVERYTHING, SOLID, Steps, plain, renumbered, without_names

from buildplan.framework.counts import multigraph
from buildplan.framework.model import Framework
from buildplan.sequence import replay as replay_module
from buildplan.sequence import replay_acts, replay_state
from buildplan.sequence.replay import Replayed, ReplayError, replay


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


def test_nothing_at_all_is_no_piece() -> None:
    with pytest.raises(ReplayError, match="never stood up"):
        replay([])
