"""Pieces whose finished shape is known beforehand.

Circumradii of the regular solids, edge a: tetrahedron a sqrt 6 / 4, cube a sqrt 3 / 2, octahedron
a sqrt 2 / 2, dodecahedron a (sqrt 3 + sqrt 15) / 4, icosahedron a sqrt(10 + 2 sqrt 5) / 4
(http://getit.forumotion.com/t44-facts-about-regular-polygons-and-polyhedra; standard formulas).
Circumradius of the regular polygon: Machinery's Handbook, 31st ed., p. 82.
"""

from __future__ import annotations

from itertools import pairwise

import networkx as nx
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shape_pieces import design, graph, star, tube

from buildplan.design.building import build_framework
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.shape.finding import find_shape
from buildplan.shape.model import Shape

LINK_M = 8 * 0.0254 * 1.15
S = "straight"


def listed(piece: nx.Graph) -> Framework:
    numbered = nx.convert_node_labels_to_integers(piece)
    return graph(numbered.number_of_nodes(), list(numbered.edges))


def radii(shape: Shape) -> np.ndarray:
    from_middle = shape.positions_m - shape.positions_m.mean(axis=0)
    return np.asarray(np.linalg.norm(from_middle, axis=1))


SOLIDS = {
    "tetrahedron": (nx.tetrahedral_graph(), 6**0.5 / 4),
    "cube": (nx.cubical_graph(), 3**0.5 / 2),
    "octahedron": (nx.octahedral_graph(), 2**0.5 / 2),
    "dodecahedron": (nx.dodecahedral_graph(), (3**0.5 + 15**0.5) / 4),
    "icosahedron": (nx.icosahedral_graph(), (10 + 2 * 5**0.5) ** 0.5 / 4),
}


@pytest.mark.parametrize("name", SOLIDS)
def test_regular_solids_from_their_bare_graphs(name: str) -> None:
    piece, ratio = SOLIDS[name]
    shape = find_shape(listed(piece))
    assert shape.converged
    # crowded joints stretch their links by less than 1 %
    assert radii(shape) == pytest.approx(ratio * LINK_M, rel=0.01)
    assert np.ptp(radii(shape)) < 1e-4 * LINK_M
    assert not shape.problems


def test_a_block_of_three_by_four_by_two_is_a_box() -> None:
    shape = find_shape(listed(nx.grid_graph([3, 4, 2])))
    spread = np.linalg.svd(shape.positions_m - shape.positions_m.mean(axis=0), compute_uv=False)
    box = np.array([(x, y, z) for x in range(4) for y in range(3) for z in range(2)], float)
    exact = np.linalg.svd((box - box.mean(axis=0)) * LINK_M, compute_uv=False)
    assert spread == pytest.approx(exact, rel=0.02)
    assert not shape.problems


def test_two_rings_joined_are_alike_and_apart() -> None:
    twelve = nx.disjoint_union(nx.cycle_graph(12), nx.cycle_graph(12))
    shape = find_shape(listed(nx.contracted_nodes(twelve, 0, 12)))
    knot = shape.positions_m[0]
    one, other = shape.positions_m[1:12] - knot, shape.positions_m[12:] - knot
    # the same ring twice, on either side of the knot
    from_knot = [np.sort(np.linalg.norm(ring, axis=1)) for ring in (one, other)]
    assert from_knot[0] == pytest.approx(from_knot[1], abs=1e-4)
    assert one.mean(axis=0) @ other.mean(axis=0) < 0
    assert shape.largest_strain < 1e-3
    # 3 j - 6 - b: bars alone leave it loose
    assert shape.mechanisms == 3 * 23 - 6 - 24
    assert not shape.problems


@pytest.mark.parametrize(("points", "straights"), [(5, 1), (6, 4), (7, 2), (8, 3), (9, 6), (12, 2)])
def test_stars_have_as_many_equal_points_as_asked(points: int, straights: int) -> None:
    piece = star(points, straights)
    shape = find_shape(piece)
    assert shape.converged
    assert shape.largest_strain < 0.01
    assert not shape.problems
    outer = np.array([shape.at[joint][:2] for joint in piece.chains[0].chain.joints])
    middle = (outer - outer.mean(axis=0)) @ [1, 1j]
    step = len(outer) // points
    # a point on: the same place one n-th of a turn clockwise
    turned = middle * np.exp(-2j * np.pi / points)
    assert np.abs(np.roll(middle, -step) - turned).max() < 1e-3 * np.abs(middle).max()


@pytest.mark.parametrize("chains", [2, 3, 4])
def test_a_ring_with_a_smaller_inner_chain_is_round(chains: int) -> None:
    """24 trapezoids that come round exactly: Lo - Li = 2 w sin(pi / 24), w the section's width."""
    width = LINK_M if chains != 3 else LINK_M * 0.75**0.5
    inner = LINK_M - 2 * width * np.sin(np.pi / 24)
    letters = {2: "AB", 3: "ABC", 4: "ABCD"}[chains]
    inside = {2: "B", 3: "B", 4: "BC"}[chains]
    made = design(
        {
            "tube": {
                "closed": True,
                "chains": chains,
                "long": {x: "small" if x in inside else "long" for x in letters},
                "brace": "cross",
                "lock": "lock",
                "course": [{"repeat": 24, "cells": [S]}],
            }
        }
    )
    small = made.balloons["small"].model_copy(update={"tie_to_tie": inner / 0.0254})
    made = made.model_copy(update={"balloons": {**made.balloons, "small": small}})
    piece = build_framework(made)
    shape = find_shape(piece)
    outer = np.array([shape.at[joint][:2] for joint in piece.chains[0].chain.joints])
    radius = np.linalg.norm(outer - outer.mean(axis=0), axis=1)
    # crowding beside the smaller links spreads them a little
    assert radius == pytest.approx(3.8306 * LINK_M, rel=0.01)
    assert shape.closes
    assert not shape.problems


@pytest.mark.parametrize("corners", [3, 4, 5, 6])
def test_frames_with_a_tip_at_each_corner_are_regular(corners: int) -> None:
    piece = tube([{"repeat": corners, "cells": [S, S, S, S, "tip"]}])
    shape = find_shape(piece)
    inner = np.array([shape.at[joint][:2] for joint in piece.chains[1].chain.joints])
    corner = inner[[(4 * k + 4) % len(inner) for k in range(corners)]]
    radius = np.linalg.norm(corner - corner.mean(axis=0), axis=1)
    assert np.ptp(radius) < 1e-3 * radius.mean()
    sides = [np.linalg.norm(a - b) for a, b in pairwise([*corner, corner[0]])]
    assert radius == pytest.approx(np.mean(sides) / (2 * np.sin(np.pi / corners)), rel=1e-3)


def test_short_links_with_long_braces_keep_their_lengths() -> None:
    piece = tube([{"repeat": 4, "cells": [S] * 5 + ["tip"]}], long="small")
    shape = find_shape(piece)
    assert shape.largest_strain < 0.01
    for link in piece.links:
        apart = np.linalg.norm(shape.at[link.start] - shape.at[link.finish])
        assert apart == pytest.approx(piece.balloons[link.balloon].tie_to_tie_m, rel=0.01)


def test_a_back_unlike_the_front_is_reported_and_twists() -> None:
    piece = tube(
        [S] * 6,
        closed=False,
        long={"A": "long", "B": "long", "C": "small", "D": "small"},
    )
    shape = find_shape(piece)
    assert not shape.mirrored
    assert any("does not mirror" in Voice().tell(problem.message) for problem in shape.problems)
    # longer links in front: the column leans back, its links as long as they should be
    assert shape.largest_strain < 0.02
    assert find_shape(tube([S] * 6, closed=False)).mirrored


CELLS = st.sampled_from([S, S, S, "fan", "fan_in", "tip", "dip", (2, 1), (1, 2)])


@settings(max_examples=25)
@given(st.lists(CELLS, min_size=1, max_size=9), st.sampled_from([2, 3, 4]))
def test_any_open_course_comes_to_rest_or_says_why(course: list[object], chains: int) -> None:
    piece = tube(
        [list(cell) if isinstance(cell, tuple) else cell for cell in course],
        chains=chains,
        closed=False,
    )
    shape = find_shape(piece)
    assert np.isfinite(shape.positions_m).all()
    assert shape.converged or shape.problems
    assert shape.closes or shape.problems
    for joint, twin in piece.mirror.items():
        assert shape.at[twin] == pytest.approx(shape.at[joint] * [1, 1, -1], abs=1e-9)
