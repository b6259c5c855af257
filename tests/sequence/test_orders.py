"""The orders that hands would choose, over random pieces: ring on ring, row on row, a part as it
is built alone whatever stands beside it. Common practice, no source."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import numpy as np
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from sequence_pieces import BALLOONS, tube

from buildplan.design.building import build_framework
from buildplan.evaluation.seating import read_whole
from buildplan.framework.assembly import Spacer, build_assembly
from buildplan.framework.model import Framework, Part
from buildplan.patterns.column import Column, build_column
from buildplan.patterns.wall import Wall, build_wall
from buildplan.sequence.copies import equal_parts
from buildplan.sequence.model import Kind, Operation, Step
from buildplan.sequence.ordering import natural
from buildplan.sequence.reach import find_reach
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape


@st.composite
def columns(draw: st.DrawFn) -> Framework:
    """Columns of three to six joints round."""
    keys = Column(
        around=draw(st.integers(3, 6)),
        rings=draw(st.integers(2, 5)),
        ring=draw(st.sampled_from(("long", "other"))),
        between="cross",
        lock="lock",
    )
    return build_column("Post", BALLOONS, keys)


@st.composite
def walls(draw: st.DrawFn) -> Framework:
    """Walls of one layer."""
    keys = Wall(
        across=draw(st.integers(2, 5)),
        up=draw(st.integers(2, 4)),
        layers=1,
        row="long",
        upright="cross",
        lock="lock",
    )
    return build_wall("Wall", BALLOONS, keys)


@st.composite
def tubes_beside(draw: st.DrawFn) -> Framework:
    """Tubes, open, with corners or not; no two corners leave an inner chain without balloons."""
    cells = st.sampled_from(("straight", "fan", "tip"))
    framework = tube(["straight", *draw(st.lists(cells, min_size=2, max_size=5))])
    assume(all(brace.links for brace in framework.braces))
    return framework


PARTS = st.lists(st.one_of(columns(), walls(), tubes_beside()), min_size=2, max_size=4)


def joined(steps: tuple[Step, ...]) -> list[str]:
    """The joints of one part that are brought together, in order."""
    return [joint for (joint,) in (op.joints for op in _works(steps, Kind.JOIN) if _alone(op))]


def _alone(operation: Operation) -> bool:
    return len(operation.joints) == 1


def _works(steps: tuple[Step, ...], kind: Kind) -> list[Operation]:
    return [op for step in steps for op in step.operations if op.kind is kind]


def level(joint: str) -> str:
    """The ring or row of a joint, as its letter says."""
    return joint.rstrip("0123456789")


@settings(max_examples=30, deadline=None)
@given(st.one_of(columns(), walls()))
def test_level_on_level_and_each_joint_locked_before_the_next(framework: Framework) -> None:
    steps = plan_steps(framework)
    joints = joined(steps)
    assert set(joints) == set(framework.joints)
    at = {letter: n for n, letter in enumerate(dict.fromkeys(map(level, joints)))}
    assert list(at) == sorted(at, key=natural)
    for one, other in pairwise(joints):
        assert at[level(one)] < at[level(other)] or natural(one) < natural(other)
    done = [op for step in steps for op in step.operations if op.kind in (Kind.JOIN, Kind.LOCK)]
    for before, after in pairwise(done):
        if after.kind is Kind.LOCK:
            assert after.locks == before.joints
        elif before.kind is Kind.JOIN:  # two balloons at the corner of a wall need no lock
            assert not set(before.joints) & set(framework.lock_at)
    assert {joint for op in done for joint in op.locks} == set(framework.lock_at)


@settings(max_examples=25, deadline=None)
@given(PARTS)
def test_a_part_is_built_as_it_is_alone_whatever_stands_beside_it(parts: list[Framework]) -> None:
    named = dict(zip("LMNR", parts, strict=False))
    ends = [f"{name}.{own.joints[-1]}" for name, own in named.items()]
    whole = build_assembly(
        "Whole",
        BALLOONS,
        [Part(name, own) for name, own in named.items()],
        [],
        [Spacer(one, other, "long") for one, other in pairwise(ends)],
        "lock",
    )
    steps = plan_steps(whole)
    built = joined(steps)
    for name, own in named.items():
        here = [joint for joint in built if joint.startswith(f"{name}.")]
        alone = plan_steps(own)
        assert here == [f"{name}.{joint}" for joint in joined(alone)]
        braces = [op for op in _works(steps, Kind.BRACE) if op.joints[0].startswith(f"{name}.")]
        assert [[j.split(".")[1] for j in op.joints] for op in braces] == [
            list(op.joints) for op in _works(alone, Kind.BRACE)
        ]
    # parts are tied once all stand
    tied = min(n for n, step in enumerate(steps) if step.kind is Kind.SINGLE and _ties(whole, step))
    assert not any(step.kind in (Kind.BRACE, Kind.JOIN) for step in steps[tied:])
    # an equal part is told once
    again = {step.number for step in steps if step.repeats is not None}
    for copy, first in equal_parts(whole).items():
        own_steps = [s for s in steps if _part_of(s) == copy and s.kind is not Kind.SINGLE]
        assert own_steps
        assert {step.number for step in own_steps} <= again, (copy, first)


def _part_of(step: Step) -> str:
    """The one part that work on the piece is of, or nothing."""
    kinds = (Kind.BRACE, Kind.JOIN)
    works = (op for op in step.operations if op.kind in kinds)
    names = {joint.split(".")[0] for op in works for joint in op.joints}
    return names.pop() if len(names) == 1 else ""


def _ties(whole: Framework, step: Step) -> bool:
    """Whether singles go from part to part."""
    heads = [op for op in step.operations if op.kind is Kind.SINGLE]
    return any(whole.part_at(op.joints[0]) is not whole.part_at(op.joints[1]) for op in heads)


ENTRANCE = """\
buildplan: 1
name: Entrance
units: in
balloons:
  green: {kind: link, nominal: 12, inflate_to: 8, colour: leaf green, label: leaf green}
  lock: {kind: round, nominal: 5, inflate_to: 3.5, colour: gold, label: gold}
build:
  assembly:
    parts:
      - name: L
        build: &post {column: {around: 4, rings: 3, ring: green, between: green, lock: lock}}
      - {name: R, build: *post}
      - name: B
        on: [L, R]
        build:
          wall:
            {across: 5, up: 1, layers: 2, row: green, upright: green, between: green, lock: lock}
      - name: S
        on: B
        build: {letters: {text: I, cells: 5, long: green, brace: green, lock: lock}}
    lock: lock
"""


def test_columns_with_letters_above_them_go_ring_by_ring(tmp_path: Path) -> None:
    """On the solved shape: an entrance with letters once went up a column line by line."""
    file = tmp_path / "entrance.yaml"
    file.write_text(ENTRANCE, "utf-8")
    framework = build_framework(read_whole(file))
    shape = find_shape(framework)
    steps = plan_steps(framework, reach=find_reach(framework, shape))
    built = joined(steps)
    for post in "LR":
        rings = [f"{post}.{ring}{n}" for ring in "ABC" for n in range(1, 5)]
        assert [joint for joint in built if joint.startswith(f"{post}.")] == rings
    beam = [joint for joint in built if joint.startswith("B.")]
    heights = [shape.at[joint][1] for joint in beam]
    low = (min(heights) + max(heights)) / 2
    assert [high > low for high in heights] == sorted(high > low for high in heights)
    for row in (beam[n : n + 6] for n in range(0, len(beam), 6)):
        assert len({level(joint) for joint in row}) == 1
        along = [shape.at[joint][0] for joint in row]
        assert np.all(np.diff(along) > 0)
    assert {step.repeats for step in steps if step.repeats is not None}
