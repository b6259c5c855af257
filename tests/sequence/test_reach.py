"""Where hands can get."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from sequence_pieces import listed, tube

from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.sequence import reach
from buildplan.sequence.assembly import Joins, meeting_joints
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.model import Kind
from buildplan.sequence.operations import operations
from buildplan.sequence.ordering import in_order
from buildplan.sequence.reach import (
    Hands,
    Reach,
    Way,
    find_reach,
    lifters,
    sweep,
    ways_to_joints,
)
from buildplan.sequence.replay import ReplayError, replay
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape
from buildplan.shape.model import Shape, Standing

PITCH_M = 0.2032 * 1.15

# cannot bend down: reaches from above only
STIFF = Hands(upper_arm=0.10, shoulders=((0.60, 0.25),))


def net(*sizes: int) -> tuple[Framework, Shape]:
    """A square net of joints (along x, along y, in depth), a pitch apart, ready in place."""
    places = list(itertools.product(*(range(size) for size in sizes)))
    name = {place: "j" + ".".join(map(str, place)) for place in places}
    ties = []
    for place in places:
        for axis in range(len(sizes)):
            beyond = tuple(p + (i == axis) for i, p in enumerate(place))
            if beyond in name:
                ties.append((name[place], name[beyond], "long"))
    framework = listed(ties)
    at = {name[place]: np.array([*place, 0.0][:3]) * PITCH_M for place in places}
    return framework, shape_of(framework, np.array([at[joint] for joint in framework.joints]))


def shape_of(framework: Framework, positions_m: np.ndarray) -> Shape:
    width, height, depth = np.ptp(positions_m, axis=0)
    standing = Standing(True, (), np.zeros((0, 2)), np.zeros(3), 10.0)
    return Shape(
        joints=framework.joints,
        positions_m=positions_m,
        converged=True,
        iterations=1,
        residual_n=0.0,
        largest_strain=0.0,
        closes=True,
        width_m=float(width),
        height_m=float(height),
        depth_m=float(depth),
        mass_kg=1.0,
        mechanisms=0,
        self_stresses=0,
        standing=standing,
        problems=(),
    )


def test_a_net_on_the_floor_is_in_reach_if_it_is_built_from_one_end() -> None:
    framework, shape = net(10, 10)
    found = find_reach(framework, shape)
    assert set(found.ways.values()) == {Way.DIRECT}
    assert found.problems == ()


def test_the_middle_of_a_wide_net_is_out_of_reach_if_it_comes_last() -> None:
    framework, shape = net(14, 14)
    middle = "j7.7"
    order = [joint for joint in meeting_joints(framework) if joint != middle]
    planned = in_order(operations(framework, Joins((*order, middle))))
    ways = ways_to_joints(framework, shape, planned)
    assert ways[middle] is Way.NONE
    assert ways["j0.1"] is Way.DIRECT


def test_what_no_hand_reaches_is_a_problem_that_names_the_joints() -> None:
    framework, shape = net(3, 3)
    (problem,) = find_reach(framework, shape, Hands(shoulders=((3.0, 0.0),))).problems
    assert set(problem.joints) == set(meeting_joints(framework))
    assert "no hand can reach" in Voice().tell(problem.message)


def test_a_brace_is_not_turned_over_for() -> None:
    """A back that can be got at from above only: no order helps, and the joints are named."""
    framework = tube(["straight"] * 3)
    at = {}
    for number in range(1, 5):
        for letter, (x, z) in zip("ABCD", ((0, 1), (1, 1), (1, 0), (0, 0)), strict=True):
            at[f"{letter}{number}"] = np.array([x, number, z]) * PITCH_M
    shape = shape_of(framework, np.array([at[joint] for joint in framework.joints]))
    assert find_reach(framework, shape).problems == ()
    (problem,) = find_reach(framework, shape, STIFF).problems
    assert {joint[0] for joint in problem.joints} == {"C", "D"}
    assert "turned over" in Voice().tell(problem.message)


def test_joints_are_swept_from_end_to_end() -> None:
    framework, shape = net(6, 3)
    swept = sweep(framework, shape, framework.joints)
    across = [shape.at[joint][0] for joint in swept]
    assert across == sorted(across)
    assert sorted(swept) == sorted(framework.joints)


@pytest.fixture
def turned(monkeypatch: pytest.MonkeyPatch) -> tuple[Framework, Reach, set[str]]:
    """A cube whose joints on the floor are said to be out of reach from above."""
    framework, shape = net(2, 2, 2)
    # depth is towards the viewer: depth 0 lies on the floor
    below = {joint for joint in framework.joints if joint.endswith(".0")}
    ways = {j: Way.TURNED if j in below else Way.DIRECT for j in framework.joints}
    monkeypatch.setattr(reach, "ways_to_joints", lambda *_: ways)
    return framework, find_reach(framework, shape), below


def test_joints_below_come_after_one_turning_over(
    turned: tuple[Framework, Reach, set[str]],
) -> None:
    _, found, below = turned
    assert found.problems == ()
    ordered = in_order(found.operations)
    (turning,) = (i for i, op in enumerate(ordered) if op.kind is Kind.TURN_OVER)
    for place, op in enumerate(ordered):
        if op.kind in (Kind.JOIN, Kind.LOCK):
            assert (place > turning) == (op.joints[0] in below)


def test_what_is_below_cannot_be_tied_before_the_turning(
    turned: tuple[Framework, Reach, set[str]],
) -> None:
    framework, _, _ = turned
    steps = steps_as_json(plan_steps(framework, reach=find_reach(framework, net(2, 2, 2)[1])))
    assert len(replay(steps).locks) == 8
    (turning,) = (step for step in steps if step["kind"] == "turn over")
    assert turning["text"].startswith("Two people take hold")
    turning["turns"][0]["operations"][0]["kind"] = "tag"  # makes the same, but turns nothing
    with pytest.raises(ReplayError, match="out of reach, below"):
        replay(steps)


def test_a_tube_lies_flat_all_the_time_and_only_its_tip_is_lifted() -> None:
    """The inner joint at the back of a tip has balloons on all sides but the floor's."""
    framework = tube(["straight", "straight", "tip", "straight", "straight"])
    shape = find_shape(framework)
    found = find_reach(framework, shape)
    assert {joint for joint, way in found.ways.items() if way is Way.LIFTED} == {"C3"}
    assert set(found.ways.values()) == {Way.DIRECT, Way.LIFTED}
    assert found.problems == ()
    steps = plan_steps(framework, reach=found)
    assert not any(step.kind is Kind.TURN_OVER for step in steps)
    told = {step.kind for step in steps if "C3 faces the floor" in step.text}
    assert told == {Kind.BRACE}


def test_a_bigger_piece_takes_more_people_to_lift() -> None:
    """Common practice, no source: nobody lifts alone."""
    assert lifters(net(2, 2)[1]) == 2
    assert lifters(net(20, 4)[1]) == 3
    framework, shape = net(20, 4)
    last = plan_steps(framework, reach=find_reach(framework, shape))[-1]
    assert last.operations[0].people == 3
    assert last.text.startswith("Three people or more")
