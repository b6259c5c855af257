"""Steps: numbering, counts, grouping."""

import json
import re

import pytest
from hypothesis import given, settings
from sequence_pieces import STAR, listed, listed_pieces, told, tube, tubes

from buildplan.framework.cells import DIP, FAN, STRAIGHT, TIP
from buildplan.framework.counts import balloon_counts
from buildplan.framework.model import Framework
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.model import Kind, Stage, Step
from buildplan.sequence.operations import operations
from buildplan.sequence.steps import plan_steps


def assert_sound(framework: Framework, steps: tuple[Step, ...]) -> None:
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))
    added = dict.fromkeys(framework.balloons, 0)
    prepared = dict.fromkeys(framework.balloons, 0)
    for step in steps:
        assert all(0 < needed < step.number for needed in step.needs)
        assert len(step.turns) in (1, step.times)
        for key, count in step.adds.items():
            added[key] += count
        if Kind.SIZE in step.kinds:
            for key, count in step.prepares.items():
                prepared[key] += count
    assert added == balloon_counts(framework) == prepared
    told = [op.id for step in steps for op in step.operations]
    assert sorted(told) == sorted(op.id for op in operations(framework))


@settings(max_examples=60)
@given(tubes())
def test_steps_of_tubes_are_sound(framework: Framework) -> None:
    assert_sound(framework, plan_steps(framework))


@settings(max_examples=60)
@given(listed_pieces())
def test_steps_of_listed_pieces_are_sound(framework: Framework) -> None:
    assert_sound(framework, plan_steps(framework))


def test_the_seven_stages_come_up_in_their_order() -> None:
    """Issue 2 names the seven stages; design.md gives their order."""
    steps = plan_steps(tube(STAR, closed=True))
    assert list(dict.fromkeys(op.stage for step in steps for op in step.operations)) == list(Stage)


@settings(max_examples=40)
@given(tubes())
def test_a_brace_its_singles_and_its_locks_are_one_turn(framework: Framework) -> None:
    for step in plan_steps(framework):
        for turn in step.turns if step.kind is Kind.BRACE else ():
            brace, settling, *others = (operation.kind for operation in turn.operations)
            assert (brace, settling) == (Kind.BRACE, Kind.SETTLE)
            singles = others.count(Kind.SINGLE)
            assert others == [Kind.SINGLE] * singles + [Kind.LOCK] * (len(others) - singles)


@settings(max_examples=40)
@given(tubes())
def test_a_corner_brings_its_own_single(framework: Framework) -> None:
    """A joint that no brace reaches is held in the step of the brace that ends its cell."""
    step_of = {link: step for step in plan_steps(framework) for link in step.links if step.adds}
    for cell in framework.cells:
        last = framework.brace[max(cell.first, cell.second)]
        for link in framework.singles:
            if framework.link[link].start in cell.skipped:
                assert step_of[link] is step_of[last.links[0]]


@settings(max_examples=40)
@given(tubes())
def test_two_balloons_are_sized_and_tied_in_one_go(framework: Framework) -> None:
    for step in plan_steps(framework):
        if Kind.SIZE in step.kinds:
            assert step.kind in (Kind.PAIR, Kind.TIE_OFF)
            tied = [op for op in step.operations if op.kind is step.kind]
            sized = {thing for op in step.operations if op.kind is Kind.SIZE for thing in op.makes}
            assert sized == {thing for op in tied for thing in op.needs}


@pytest.mark.parametrize("limit", [1, 4, 8, 16, 100])
def test_no_brace_step_brings_more_than_the_limit(limit: int) -> None:
    for step in plan_steps(tube(STAR, closed=True), new_parts_limit=limit):
        if step.kind is Kind.BRACE:
            assert step.times == 1 or len(step.links) <= limit
            assert step.times == 1 or len(step.locks) <= max(limit, 4 * step.times)


def test_runs_of_braces_are_cut_evenly() -> None:
    steps = plan_steps(tube(["straight"] * 5), new_parts_limit=16)
    assert [step.times for step in steps if step.kind is Kind.BRACE] == [3, 3]


def test_equal_chains_are_told_once() -> None:
    steps = plan_steps(tube(STAR, closed=True))
    long = [step for step in steps if step.kind is Kind.CHAIN and step.adds]
    assert [step.times for step in long] == [4]
    made = [turn.operations[0].id for turn in long[0].turns]
    assert made == ["chain A", "chain B", "chain C", "chain D"]


def test_chains_that_differ_are_told_apart() -> None:
    framework = tube(["straight"] * 4, by_letter={"B": ["other"]})
    long = [s for s in plan_steps(framework) if s.kind is Kind.CHAIN and s.adds]
    assert [[turn.operations[0].id[-1] for turn in step.turns] for step in long] == [
        ["A", "C", "D"],
        ["B"],
    ]


def test_a_cell_that_is_not_straight_is_a_step_of_its_own() -> None:
    steps = plan_steps(tube(["straight", "straight", "tip", "straight", "fan", "dip"]))
    special = [s for s in steps if s.kind is Kind.BRACE and s.cells != (STRAIGHT,)]
    assert [(step.cells, step.times) for step in special] == [
        ((TIP,), 1),
        ((FAN,), 1),
        ((DIP,), 1),
    ]


def test_steps_that_ask_for_the_same_moves_say_so() -> None:
    steps = plan_steps(tube(STAR, closed=True))
    tips = [s for s in steps if s.kind is Kind.BRACE and s.cells == (TIP,)]
    assert tips[0].alike is None
    assert [step.alike for step in tips[1:]] == [tips[0].number] * 4


def test_what_the_laying_does_not_wait_for_is_side_work() -> None:
    steps = plan_steps(tube(STAR, closed=True))
    words = [said for _, said in told(tube(STAR, closed=True))]
    laying = next(step for step in steps if step.kind is Kind.LAY)
    for step in steps:
        if step.side_work is None:
            continue
        first = steps[step.side_work - 1]
        assert first.side_work is None
        assert first.number > laying.number > step.number
        users = [other for other in steps if step.number in other.needs]
        assert first.number == min(user.side_work or user.number for user in users)
        named = re.search(r"Needed (?:in|from) steps? ([^.]+)\.", words[step.number - 1].text)
        assert named
        told_users = [int(number) for number in re.findall(r"\d+", named[1])]
        assert told_users[0] == min(user.number for user in users)
        if len(users) in (2, 3):
            assert len(told_users) > 1
            assert told_users[-1] == max(user.number for user in users)
    ring_work = [step for step in steps if step.adds.get("long") or step.prepares.get("long")]
    assert all(step.side_work is None for step in ring_work)
    assert {s.kind for s in steps if s.side_work} >= {Kind.PAIR, Kind.TIE_OFF}


def test_json_is_plain_and_keeps_every_count() -> None:
    framework = tube(STAR, closed=True)
    steps = plan_steps(framework)
    read = json.loads(json.dumps(steps_as_json(steps)))
    assert read == steps_as_json(steps)
    for step, plain in zip(steps, read, strict=True):
        assert plain["number"] == step.number
        assert plain["stage"] == step.stage
        assert plain["adds"] == dict(step.adds)
        assert plain["needs"] == list(step.needs)
        assert plain["times"] == step.times


def test_the_same_piece_gives_the_same_steps() -> None:
    assert plan_steps(tube(STAR, closed=True)) == plan_steps(tube(STAR, closed=True))


def test_labels_of_a_listed_piece_may_be_anything() -> None:
    """A joint called like one of our own names must not be taken for it."""
    odd = ["lock A1", "rounds A1", "tie off", "A1", "1 of chain A", "brace 3"]
    ties = [(a, b, "long") for i, a in enumerate(odd) for b in odd[i + 1 :]]
    framework = listed(ties)
    assert_sound(framework, plan_steps(framework))
