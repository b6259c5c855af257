"""How high a column is while it grows: what its steps tell whoever holds a tape to it."""

from __future__ import annotations

from pathlib import Path

import pytest
from sequence_pieces import balloon

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.evaluation.told_figures import told_figures
from buildplan.framework.chain_roles import RING
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.patterns.column import Column, build_column
from buildplan.sequence.model import Access
from buildplan.sequence.reach import find_reach
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape

GALLERY = Path(__file__).parents[2] / "designs" / "gallery"
# A square antiprism of edge 1 is 2 ** (-1/4) high (Johnson, Convex polyhedra with regular faces,
# 1966; from memory). Soft balloons crowd one another a little apart.
RISE, CROWDED = 2**-0.25, 0.1


def test_each_ring_is_told_so_high_above_the_floor() -> None:
    balloons = {key: balloon(key) for key in ("ring", "between")}
    balloons["lock"] = balloon("lock", "round", gauge_m=0.0889)
    keys = Column(around=4, rings=4, ring="ring", between="between", lock="lock")
    framework = build_column("Column", balloons, keys)
    figures = told_figures(framework, find_shape(framework), "in")
    edge, lying = balloons["ring"].tie_to_tie_m, balloons["ring"].gauge_m / 2
    assert list(figures.heights) == ["B", "C", "D"]
    for ring, span in enumerate(figures.heights.values(), start=1):
        assert span.low_m <= span.length_m <= span.high_m
        assert span.length_m - lying == pytest.approx(ring * RISE * edge, rel=CROWDED)
    steps = plan_steps(framework)
    told = tell_steps(steps, framework, "in", Voice(), figures)
    checks = [one.check for one in told if "above the floor" in one.check]
    assert [check.split("knots of ring ")[1][0] for check in checks] == ["B", "C", "D"]


def test_a_hand_on_the_floor_comes_down_inside_over_no_more_than_a_metre_and_a_half() -> None:
    """How high somebody reaches over and down is from memory."""
    balloons = {key: balloon(key) for key in ("ring", "between")}
    balloons["lock"] = balloon("lock", "round", gauge_m=0.0889)
    keys = Column(around=4, rings=9, ring="ring", between="between", lock="lock")
    framework = build_column("Column", balloons, keys)
    shape = find_shape(framework)
    ways = find_reach(framework, shape).ways
    low = {joint for joint, way in ways.items() if way is Access.DIRECT}
    ends = [(link.start, link.finish) for link in framework.links]
    over = {joint for pair in ends if not low.isdisjoint(pair) for joint in pair}
    assert max(shape.at[joint][1] for joint in over) <= 1.5
    stool = {joint for joint, way in ways.items() if way is Access.STOOL}
    assert stool | low == set(framework.joints)
    assert stool


def test_a_ring_is_measured_only_where_it_is_level() -> None:
    """Of an icosahedron that lies on a face the middle knots are at two heights by turns, which
    part the way up by the golden section (Coxeter, Regular Polytopes, 1973, 3.7; from memory)."""
    framework = build_framework(read_design(GALLERY / "lamp_icosahedron.yaml"))
    shape = find_shape(framework)
    heights = told_figures(framework, shape, "in").heights
    floor = min(shape.at[joint][1] for joint in framework.joints)
    lying = framework.balloons["edge"].gauge_m / 2
    whole = max(place[1] for place in shape.at.values()) - floor
    uneven, level = [], set()
    for long in framework.chains:
        knots = [shape.at[joint][1] - floor + lying for joint in long.chain.joints]
        if long.letter in heights:
            span = heights[long.letter]
            assert span.low_m <= min(knots)
            assert max(knots) <= span.high_m
            level.add(long.letter)
        elif long.role == RING:
            uneven.append(max(knots) - min(knots))
    assert level
    assert uneven == pytest.approx([0.0, whole * (5**0.5 - 2)], rel=CROWDED, abs=1e-6)
