"""Where hands can get."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sequence_pieces import BALLOONS, STAR, listed, tube

from buildplan.design.reading import read_design
from buildplan.evaluation.evaluating import evaluate
from buildplan.framework.model import Framework
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.patterns.column import Column, build_column
from buildplan.patterns.letter_frames import build_letters
from buildplan.patterns.letter_keys import Letters
from buildplan.sequence import reach
from buildplan.sequence.courses import JointCourse, WorkOrder, order_of
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.hand_reach import HandReach, Posture, hands_with
from buildplan.sequence.model import Access, Kind
from buildplan.sequence.operations import operations
from buildplan.sequence.ordering import in_order
from buildplan.sequence.reach import ReachKind, find_reach, lifters, ways_to_joints
from buildplan.sequence.replay import ReplayError, replay
from buildplan.sequence.steps import plan_steps
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.finding import find_shape
from buildplan.shape.model import Shape, Standing

DESIGNS = Path(__file__).parents[2] / "designs"
PITCH_M = 0.2032 * 1.15

# cannot bend down: reaches from above only
HIGH = (Posture(0.60, 0.25, 0.8),)
STIFF = HandReach(upper_arm=0.10, kneeling=HIGH, standing=HIGH, yielding=0.9)


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


def test_a_net_on_the_floor_is_in_reach_if_it_is_built_row_on_row() -> None:
    framework, shape = net(10, 10)
    found = find_reach(framework, shape)
    assert set(found.ways.values()) == {Access.DIRECT}
    assert found.cautions == ()


def test_the_middle_of_a_wide_net_is_out_of_reach_from_the_floor_if_it_comes_last() -> None:
    framework, shape = net(14, 14)
    middle = "j7.7"
    order = order_of(framework, shape.at)
    (courses,) = order.courses.values()
    others = [
        replace(course, joints=tuple(joint for joint in course.joints if joint != middle))
        for course in courses
    ]
    last = WorkOrder({"": (*others, JointCourse((middle,), ()))})
    ways = ways_to_joints(framework, shape, in_order(operations(framework, last)))
    assert ways[middle] in (Access.LIFTED, Access.ON_ITS_SIDE)
    assert ways["j0.1"] is Access.DIRECT


def test_what_no_hand_reaches_is_a_caution_that_names_the_joints() -> None:
    framework, shape = net(3, 3)
    far = (Posture(9.0, 0.25, 9.5),)
    found = find_reach(framework, shape, HandReach(kneeling=far, standing=far))
    (caution,) = found.cautions
    (course_joints,) = order_of(framework, shape.at).courses.values()
    assert set(caution.joints) == {joint for course in course_joints for joint in course.joints}
    assert caution.kind == "out-of-reach"
    steps = plan_steps(framework, reach=found)
    joining = next(step.number for step in steps if step.kind is Kind.JOIN)
    assert "hard to reach" in tell_steps(steps, framework, "in", Voice())[joining - 1].text
    replay(steps_as_json(steps))


def block() -> tuple[Framework, Shape]:
    """Three braces of four, lying, with a back that is at the floor."""
    framework = tube(["straight"] * 3)
    at = {}
    for number in range(1, 5):
        for letter, (x, z) in zip("ABCD", ((0, 1), (1, 1), (1, 0), (0, 0)), strict=True):
            at[f"{letter}{number}"] = np.array([x, number, z]) * PITCH_M
    return framework, shape_of(framework, np.array([at[joint] for joint in framework.joints]))


def test_lifting_brings_what_faces_the_floor_nearer() -> None:
    """Somebody who cannot bend down reaches the back once an edge is lifted, or the piece stands
    on its side; nobody turns it over for that."""
    framework, shape = block()
    assert set(find_reach(framework, shape).ways.values()) == {Access.DIRECT}
    found = find_reach(framework, shape, STIFF)
    back = {way for joint, way in found.ways.items() if joint[0] in "CD"}
    assert back <= {Access.LIFTED, Access.ON_ITS_SIDE}
    assert found.cautions == ()


@pytest.fixture
def turned(monkeypatch: pytest.MonkeyPatch) -> Callable[[Framework, set[str]], None]:
    """Joints of a piece are said to be reached only with it turned over."""

    def say(framework: Framework, below: set[str]) -> None:
        ways = {j: Access.TURNED if j in below else Access.DIRECT for j in framework.joints}
        monkeypatch.setattr(reach, "ways_to_joints", lambda *_: ways)

    return say


@pytest.mark.parametrize("pattern", ["cube", "tube", "ring"])
def test_what_is_below_is_locked_after_one_turning_over(
    pattern: str, turned: Callable[[Framework, set[str]], None]
) -> None:
    if pattern == "cube":
        framework, shape = net(2, 2, 2)
        # depth is towards the viewer: depth 0 lies on the floor
        below = {joint for joint in framework.joints if joint.endswith(".0")}
    else:
        framework = tube(STAR if pattern == "ring" else ["straight", "tip", "straight"] * 2)
        shape = find_shape(framework)
        below = {"C2", "D4", "C4"}
    turned(framework, below)
    found = find_reach(framework, shape)
    assert found.cautions == ()
    ordered = in_order(found.operations)
    (turning,) = (i for i, op in enumerate(ordered) if op.kind is Kind.TURN_OVER)
    locked = {op.joints[0]: i for i, op in enumerate(ordered) if op.kind is Kind.LOCK}
    assert {joint for joint, place in locked.items() if place > turning} == below
    steps = steps_as_json(plan_steps(framework, reach=found))
    assert len(replay(steps).locks) == len(framework.locks)
    (step,) = (step for step in steps if step["kind"] == "turn over")
    turning_over = step["turns"][0]["operations"][0]
    people, turning_over["people"] = turning_over["people"], 1
    with pytest.raises(ReplayError, match="nobody turns a piece over alone"):
        replay(steps)
    turning_over |= {"people": people, "kind": "tag"}  # makes the same, but turns nothing
    with pytest.raises(ReplayError, match="out of reach, below"):
        replay(steps)


def test_a_tube_lies_flat_all_the_time_and_is_never_turned_over() -> None:
    framework = tube(["straight", "straight", "tip", "straight", "straight"])
    found = find_reach(framework, find_shape(framework))
    assert set(found.ways.values()) <= {Access.DIRECT, Access.LIFTED}
    steps = plan_steps(framework, reach=found)
    assert not any(step.kind is Kind.TURN_OVER for step in steps)
    lifted = [joint for joint, way in found.ways.items() if way is Access.LIFTED]
    words = tell_steps(steps, framework, "in", Voice())
    assert all(any(f"{j} face" in said.text for said in words) for j in lifted)


@pytest.mark.parametrize("outer", [22])
def test_a_closed_tube_of_22_and_16_joints_is_built_on_a_floor(outer: int) -> None:
    """One person routinely builds it so (common practice, no source)."""
    framework = tube(["straight"] * 16 + ["tip"] * 3, closed=True)
    assert len(framework.chains[0].chain.joints) == outer
    assert len(framework.chains[1].chain.joints) == 16
    found = find_reach(framework, find_shape(framework))
    assert found.cautions == ()
    assert not any(operation.kind is Kind.TURN_OVER for operation in found.operations)


@settings(max_examples=10, deadline=None)
@given(
    st.lists(
        st.sampled_from(("straight", "straight", "fan", "fan_in", "tip", "dip")),
        min_size=10,
        max_size=24,
    )
)
def test_what_bends_both_ways_is_never_refused(course: list[str]) -> None:
    """Whatever the hands, there is an order, and the replay builds it."""
    framework = tube(course)
    found = find_reach(framework, find_shape(framework))
    assert set(found.ways) == set(framework.joints) or framework.singles
    replay(steps_as_json(plan_steps(framework, reach=found)))


# Bends of one side, how many such sides come round (fans turn 60 degrees, tips about 90).
ROUND = (
    (("fan", "fan", "fan", "fan_in"), 3),
    (("tip", "tip", "dip"), 4),
    (("fan", "fan_in", "fan"), 6),
    (("fan", "fan", "fan", "fan", "fan_in"), 2),
)


@pytest.mark.parametrize(("bends", "sides"), ROUND)
@settings(max_examples=2, deadline=None)
@given(st.lists(st.integers(1, 3), min_size=5, max_size=5))
def test_closed_tubes_that_bend_both_ways_are_in_reach_without_turning_over(
    bends: tuple[str, ...], sides: int, straights: list[int]
) -> None:
    """One person routinely builds them on a floor (common practice, no source)."""
    runs = zip(straights, bends, strict=False)
    side = [cell for straight, bend in runs for cell in (*["straight"] * straight, bend)]
    framework = tube(side * sides, closed=True)
    found = find_reach(framework, find_shape(framework))
    assert found.cautions == ()
    assert not any(operation.kind is Kind.TURN_OVER for operation in found.operations)


@pytest.mark.parametrize(
    ("text", "cells"), [*((letter, 7) for letter in "BEMRW"), ("M", 9), ("W", 9)]
)
def test_letters_are_in_reach_without_turning_over(text: str, cells: int) -> None:
    """Common practice, no source: letters of this size lie on the floor while they are built."""
    letters = {"text": text, "long": "long", "brace": "cross", "bar": "cross", "lock": "lock"}
    read = Letters.model_validate({**letters, "cells": cells})
    framework = build_letters(text, BALLOONS, read, cells)
    found = find_reach(framework, find_shape(framework))
    assert found.cautions == ()
    assert not any(operation.kind is Kind.TURN_OVER for operation in found.operations)


def test_a_design_may_say_how_far_its_hands_reach(tmp_path: Path) -> None:
    """What hardly anybody could build is a caution that names joints, and no problem."""
    text = (DESIGNS / "gallery" / "reading_globe.yaml").read_text()
    usual = evaluate(read_design(DESIGNS / "gallery" / "reading_globe.yaml"), "in", 16)
    short = tmp_path / "short.yaml"
    short.write_text(text + "constants: {forearm: 0.10, upper_arm: 0.05, lean: 0.02}\n")
    found = evaluate(read_design(short, CONSTANTS), "in", 16)
    kinds = {caution.kind: caution.joints for caution in found.examination.cautions}
    assert ReachKind.OUT_OF_REACH not in {one.kind for one in usual.examination.cautions}
    assert set(kinds[ReachKind.OUT_OF_REACH]) <= set(found.framework.joints)
    assert ReachKind.OUT_OF_REACH not in {problem.kind for problem in found.facts.problems}
    assert hands_with(CONSTANTS) == HandReach()


def test_a_column_is_built_standing_and_its_top_from_a_stool() -> None:
    rings = 14
    column = build_column(
        "Post", BALLOONS, Column(around=4, rings=rings, ring="long", between="cross", lock="lock")
    )
    shape = find_shape(column)
    found = find_reach(column, shape)
    assert shape.height_m > 2.2
    high = {joint for joint, way in found.ways.items() if way is Access.STOOL}
    low = {joint for joint, way in found.ways.items() if way is Access.DIRECT}
    assert high
    assert low
    assert min(shape.at[joint][1] for joint in high) > max(shape.at[joint][1] for joint in low)
    steps = plan_steps(column, reach=found)
    words = tell_steps(steps, column, "in", Voice())
    told = [step for step in steps if "step stool" in words[step.number - 1].text]
    assert {joint for step in told for joint in step.locks} >= high
    assert Access.LADDER in found.ways.values()  # not balloons pressed apart: it is too high
    assert "ladder or platform" in words[-3].text
    assert not found.cautions


def test_a_bigger_piece_takes_more_people_to_lift() -> None:
    """Common practice, no source: nobody lifts alone."""
    framework, shape = net(20, 4)
    assert lifters(net(2, 2)[1], HandReach()) == 2
    assert [lifters(shape, HandReach(lifter=each)) for each in (1.5, 6.0)] == [3, 2]
    steps = plan_steps(framework, reach=find_reach(framework, shape))
    assert steps[-1].operations[0].people == 3
    assert "3 people or more" in tell_steps(steps, framework, "in", Voice())[-1].text
