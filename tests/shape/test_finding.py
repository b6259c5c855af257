"""Shapes with known answers."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations, product

import numpy as np
import pytest
from shape_pieces import arch, design, frame, graph, star, tube

from buildplan.design.building import build_framework
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.shape.bodies import bodies_of
from buildplan.shape.finding import at_rest, find_shape
from buildplan.shape.model import Shape
from buildplan.shape.starts import can_lie_flat

LINK_M = 8 * 0.0254 * 1.15
# Machinery's Handbook, 31st edition, p. 82, "Formulas and Table for Regular Polygons":
# circumradius over side.
R_OVER_S = {
    3: 0.5774, 4: 0.7071, 5: 0.8507, 6: 1.0000, 7: 1.1524, 8: 1.3066, 9: 1.4619, 10: 1.6180,
    12: 1.9319, 16: 2.5629, 20: 3.1962, 24: 3.8306, 32: 5.1011, 48: 7.6449,
}  # fmt: skip


@pytest.fixture(scope="module")
def shapes() -> dict[str, tuple[Framework, Shape]]:
    pieces = {"star": star(), "frame": frame(), "arch": arch()}
    return {name: (piece, find_shape(piece)) for name, piece in pieces.items()}


def chain_xy(framework: Framework, shape: Shape, letter: str) -> np.ndarray:
    chain = next(long.chain for long in framework.chains if long.letter == letter)
    return np.array([shape.at[joint][:2] for joint in chain.joints])


def angle_deg(apex: np.ndarray, one: np.ndarray, other: np.ndarray) -> float:
    a, b = one - apex, other - apex
    return float(np.degrees(np.arccos(a @ b / np.linalg.norm(a) / np.linalg.norm(b))))


@pytest.mark.parametrize("sides", sorted(R_OVER_S))
def test_a_ring_of_equal_links_is_the_handbook_polygon(sides: int) -> None:
    ring = graph(sides, [(i, (i + 1) % sides) for i in range(sides)])
    shape = find_shape(ring)
    radius = np.linalg.norm(shape.positions_m - shape.positions_m.mean(axis=0), axis=1)
    assert shape.converged
    # a crowded triangle stretches a little; larger rings are exact
    assert radius / LINK_M == pytest.approx(R_OVER_S[sides], rel=2e-2 if sides == 3 else 1e-3)


@pytest.mark.parametrize("name", ["star", "frame", "arch"])
def test_the_demo_pieces_come_to_rest_close_and_stand(
    shapes: dict[str, tuple[Framework, Shape]], name: str
) -> None:
    _, shape = shapes[name]
    assert shape.converged
    assert shape.residual_n < 1e-5
    assert shape.closes
    assert shape.largest_strain < 0.01
    assert shape.standing.stands
    assert not shape.problems


@pytest.mark.parametrize("name", ["star", "frame", "arch"])
def test_the_back_looks_exactly_like_the_front(
    shapes: dict[str, tuple[Framework, Shape]], name: str
) -> None:
    framework, shape = shapes[name]
    for joint, twin in framework.mirror.items():
        assert shape.at[twin] == pytest.approx(shape.at[joint] * [1, 1, -1], abs=1e-9)
    fronts = [shape.at[joint][2] for joint in framework.joints if joint[0] in "AB"]
    assert min(fronts) > 0


@pytest.mark.parametrize("name", ["star", "frame", "arch"])
def test_the_course_runs_clockwise_from_the_front_with_the_outer_chain_outside(
    shapes: dict[str, tuple[Framework, Shape]], name: str
) -> None:
    framework, shape = shapes[name]

    def area(ring: np.ndarray) -> float:  # signed, counter-clockwise positive
        x, y = ring.T
        return 0.5 * float(x @ np.roll(y, -1) - y @ np.roll(x, -1))

    outer, inner = (area(chain_xy(framework, shape, letter)) for letter in "AB")
    assert outer < inner < 0


@pytest.mark.parametrize("name", ["star", "frame", "arch"])
def test_a_piece_stands_on_the_floor_and_looks_the_same_left_and_right(
    shapes: dict[str, tuple[Framework, Shape]], name: str
) -> None:
    framework, shape = shapes[name]
    outer = chain_xy(framework, shape, "A")
    image = outer * [-1, 1]
    nearest = np.linalg.norm(outer[:, None] - image[None], axis=2).min(axis=1)
    assert nearest.max() < 0.01
    assert shape.positions_m[:, 1].min() > 0
    assert shape.positions_m[:, 1].min() < 0.2


def test_the_star_has_five_equal_points(shapes: dict[str, tuple[Framework, Shape]]) -> None:
    framework, shape = shapes["star"]
    outer = chain_xy(framework, shape, "A")
    centre = outer.mean(axis=0)
    # eight joints on, the same place one fifth of a turn clockwise
    fifth = np.radians(-72)
    turn = np.array([[np.cos(fifth), -np.sin(fifth)], [np.sin(fifth), np.cos(fifth)]])
    assert np.roll(outer, -8, axis=0) - centre == pytest.approx((outer - centre) @ turn.T, abs=1e-4)
    radius = np.linalg.norm(outer - centre, axis=1)
    tips = [
        i
        for i in range(40)
        if radius[i] > np.roll(radius, 1)[i] and radius[i] > np.roll(radius, -1)[i]
    ]
    assert [framework.chains[0].chain.joints[i] for i in tips] == ["A5", "A13", "A21", "A29", "A37"]
    assert radius.max() > 1.5 * radius.min()


def test_the_star_stands_on_two_points_with_one_up(
    shapes: dict[str, tuple[Framework, Shape]],
) -> None:
    framework, shape = shapes["star"]
    outer = chain_xy(framework, shape, "A")
    tips = outer[4::8]
    height = np.sort(tips[:, 1])
    assert height[:2] == pytest.approx(height[0], abs=1e-3)
    assert tips[np.argmax(tips[:, 1]), 0] == pytest.approx(0, abs=1e-3)


def test_the_frame_is_square(shapes: dict[str, tuple[Framework, Shape]]) -> None:
    framework, shape = shapes["frame"]
    inner = chain_xy(framework, shape, "B")
    corners = [inner[(6 * k + 6) % 24] for k in range(4)]
    for k in range(4):
        angle = angle_deg(corners[k], corners[k - 1], corners[(k + 1) % 4])
        assert angle == pytest.approx(90, abs=1e-3)
    assert shape.width_m == pytest.approx(shape.height_m, rel=1e-6)
    sides = [np.linalg.norm(corners[k] - corners[k - 1]) for k in range(4)]
    assert np.array(sides) == pytest.approx(6 * LINK_M, rel=5e-3)


def test_the_arch_has_upright_legs_on_the_floor(
    shapes: dict[str, tuple[Framework, Shape]],
) -> None:
    framework, shape = shapes["arch"]
    for section in (framework.braces[0].section, framework.braces[-1].section):
        heights = [shape.at[joint][1] for joint in section]
        assert max(heights) < 0.2
        assert set(section) <= set(shape.standing.feet)
    for first, last in (("A1", "A7"), ("A26", "A20")):
        leg = shape.at[last] - shape.at[first]
        assert np.degrees(np.arctan2(abs(leg[0]), leg[1])) < 2
    assert shape.height_m > 2.2


def test_a_fan_is_an_equilateral_triangle() -> None:
    ring = tube([{"repeat": 6, "cells": ["straight", "straight", "fan"]}])
    shape = find_shape(ring)
    fans = [cell for cell in ring.cells if cell.name == "fan"]
    assert len(fans) == 6
    for cell in fans:
        outer, apex = ring.braces[cell.first - 1].section[:2]
        other = ring.braces[cell.second - 1].section[0]
        # definition of an equilateral triangle; its links keep their length within 0.5 %
        angle = angle_deg(shape.at[apex], shape.at[outer], shape.at[other])
        assert angle == pytest.approx(60, abs=0.5)


def test_asked_feet_are_lowest() -> None:
    piece = star()
    shape = find_shape(piece, stand_on=("A5", "D5"))
    lowest = min(piece.joints, key=lambda joint: shape.at[joint][1])
    assert lowest in {"A5", "D5"}


def test_the_same_piece_twice_is_the_same_to_the_last_bit() -> None:
    one, other = find_shape(frame()), find_shape(frame())
    assert one.positions_m.tobytes() == other.positions_m.tobytes()


def test_a_course_that_cannot_come_round_is_reported() -> None:
    straight = tube([{"repeat": 8, "cells": ["straight"]}])
    shape = find_shape(straight)
    assert not shape.closes
    assert any(
        "does not close" in Voice().tell(problem.message) and problem.joints
        for problem in shape.problems
    )


@pytest.mark.parametrize("layers", [1, 2])
def test_a_wall_rests_where_its_pattern_draws_it(layers: int) -> None:
    """The same graph without its drawing comes to no lower energy from any of its starts."""
    wall = {"across": 5, "up": 4, "layers": layers, "row": "long", "upright": "cross"}
    wall |= {"between": "cross"} if layers == 2 else {}
    opening = {"along": 2, "up": 0, "wide": 2, "high": 2}
    piece = build_framework(design({"wall": wall | {"lock": "lock", "openings": [opening]}}))
    assert set(piece.laid) == set(piece.joints)
    bodies = bodies_of(piece)
    drawn, bare = at_rest(piece, bodies)[0], at_rest(replace(piece, laid={}), bodies)[0]
    assert drawn.energy_j == pytest.approx(bare.energy_j, rel=1e-4)
    assert drawn.iterations < 10


def test_a_thick_block_is_not_tried_lying_flat() -> None:
    """Kuratowski 1930: a graph that holds K5 or K3,3 cannot be drawn without crossings; a cube can,
    the complete graph of five joints and a block of three by three by three cannot."""

    def block(side: int) -> Framework:
        spots = list(product(range(side), repeat=3))
        apart = [(i, j) for i, j in combinations(range(len(spots)), 2)]
        near = [(i, j) for i, j in apart if np.abs(np.subtract(spots[i], spots[j])).sum() == 1]
        return graph(len(spots), near)

    assert can_lie_flat(bodies_of(block(2)))
    assert not can_lie_flat(bodies_of(block(3)))
    assert not can_lie_flat(bodies_of(graph(5, list(combinations(range(5), 2)))))
    bodies = bodies_of(block(3))
    rest = at_rest(block(3), bodies)[0]
    assert np.abs(bodies.strain(rest.positions_m)).max() < 0.01
