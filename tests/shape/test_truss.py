"""The pin-jointed solver against published trusses and an independent program."""

from __future__ import annotations

import numpy as np
import pytest
from truss import MechanismError, solve_truss

Bars = list[tuple[int, int]]


def stiffnesses(points: np.ndarray, bars: np.ndarray, ea: np.ndarray | float) -> np.ndarray:
    return np.asarray(ea / np.linalg.norm(points[bars[:, 0]] - points[bars[:, 1]], axis=1))


def dome() -> tuple[np.ndarray, np.ndarray]:
    """Levy and Spillers, Analysis of Geometrically Nonlinear Structures, 2nd ed., section 2.4.2;
    model as in pystran (tests/unittests_space_truss.py)."""
    points = np.array(
        [
            (0, 0, 3.2346),
            (4.92125, 8.5239, 2.4472), (-4.92125, 8.5239, 2.4472), (-9.8425, 0, 2.4472),
            (-4.92125, -8.5239, 2.4472), (4.92125, -8.5239, 2.4472), (9.8425, 0, 2.4472),
            (0, 19.685, 0), (-17.0472, 9.8425, 0), (-17.0472, -9.8425, 0),
            (0, -19.685, 0), (17.0472, -9.8425, 0), (17.0472, 9.8425, 0),
        ]
    )  # fmt: skip
    numbered = [(1, k) for k in range(2, 8)]
    numbered += [(6, 12), (7, 12), (7, 13), (2, 13), (2, 8), (3, 8), (3, 9), (4, 9), (4, 10)]
    numbered += [(5, 10), (5, 11), (6, 11), (2, 3), (3, 4), (4, 5), (5, 6), (6, 7), (7, 2)]
    return points, np.array(numbered) - 1


def test_the_dome_sinks_at_its_crown_as_published() -> None:
    points, bars = dome()
    held = np.zeros(points.shape, bool)
    held[7:] = True
    load = np.zeros(points.shape)
    load[0, 2] = -220.46
    found = solve_truss(bars, points, stiffnesses(points, bars, 3e7 * 0.0155), held, load)
    assert found.displacements_m[0, 2] == pytest.approx(-0.20641184, abs=1e-8)
    assert found.reactions_n.sum(axis=0) == pytest.approx(-load.sum(axis=0), abs=1e-9)
    # six-fold: every bar of a kind carries alike (worked out apart)
    assert found.tension_n[:6] == pytest.approx(-460.76, abs=0.01)
    assert found.tension_n[18:] == pytest.approx(351.115, abs=0.01)
    assert found.tension_n[6:18] == pytest.approx(-93.395, abs=0.01)


def test_the_two_bar_closed_form() -> None:
    # pmackenz/FEM.edu, truss03: uy = -5.09116882 = -L / EA with EA = 10
    points = np.array([(0, 0, 0), (72, 0, 0), (36, 36, 0)], float)
    bars = np.array([(0, 2), (1, 2)])
    held = np.ones((3, 3), bool)
    held[2, :2] = False
    load = np.zeros((3, 3))
    load[2, 1] = -1
    found = solve_truss(bars, points, stiffnesses(points, bars, 10.0), held, load)
    assert found.displacements_m[2, 1] == pytest.approx(-5.09116882, abs=1e-8)
    assert found.tension_n == pytest.approx(-np.sqrt(0.5))


def test_the_five_node_textbook_truss() -> None:
    # McGuire, Gallagher and Ziemian, Matrix Structural Analysis, 2nd ed., Example 5.4 (model seen
    # in an open example file; the figures were worked out apart and close in equilibrium)
    points = np.array([(2, 4, 8), (0, 0, 0), (8, 0, 0), (8, 6, 0), (0, 6, 0)], float)
    bars = np.array([(0, 1), (0, 2), (0, 3), (0, 4)])
    held = np.ones((5, 3), bool)
    held[0] = False
    load = np.zeros((5, 3))
    load[0] = (200, 600, -800)
    axial = stiffnesses(points, bars, 2e8 * np.array([0.02, 0.03, 0.04, 0.03]))
    found = solve_truss(bars, points, axial, held, load)
    assert found.displacements_m[0] * 1000 == pytest.approx((0.17787, 2.72196, -0.48652), abs=1e-5)
    assert found.tension_n == pytest.approx((350.067, 306.645, -800.253, -748.363), abs=1e-3)
    assert found.reactions_n[1] == pytest.approx((-76.391, -152.782, -305.563), abs=1e-3)
    assert found.reactions_n[3] == pytest.approx((-470.828, -156.943, 627.770), abs=1e-3)


def test_logan_space_truss() -> None:
    # Logan, A First Course in the Finite Element Method, 4th ed., Example 3.8 (from memory; the
    # book rounds, hence 2 %)
    points = np.array([(72, 0, 0), (0, 36, 0), (0, 36, 72), (0, 0, -48)], float)
    bars = np.array([(0, 1), (0, 2), (0, 3)])
    held = np.ones((4, 3), bool)
    held[0, [0, 2]] = False
    load = np.zeros((4, 3))
    load[0, 2] = -1000
    axial = stiffnesses(points, bars, 1.2e6 * np.array([0.302, 0.729, 0.187]))
    found = solve_truss(bars, points, axial, held, load)
    assert found.displacements_m[0, [0, 2]] == pytest.approx((-0.072, -0.264), rel=0.02)


def test_a_mechanism_is_refused() -> None:
    square = np.array([(0, 0, 0), (1, 0, 0), (1, 1, 0), (0, 1, 0)], float)
    bars = np.array([(0, 1), (1, 2), (2, 3), (3, 0)])
    held = np.zeros((4, 3), bool)
    held[:2] = True
    held[:, 2] = True
    load = np.zeros((4, 3))
    load[2, 0] = 1
    with pytest.raises(MechanismError):
        solve_truss(bars, square, np.ones(4), held, load)


def test_against_pynite_on_a_triangulated_framework() -> None:
    """PyNiteFEA, an independent program: forces and displacements to 1e-6."""
    pynite = pytest.importorskip("Pynite")
    chance = np.random.default_rng(5)
    # an octet-like block: every pair of joints within reach is tied, so that nothing is loose
    grid = np.array([(x, y, z) for x in range(3) for y in range(3) for z in range(3)], float)
    points = grid + 0.15 * chance.uniform(-1, 1, grid.shape)
    apart = np.linalg.norm(points[:, None] - points[None], axis=2)
    bars = np.argwhere(np.triu(apart < 1.75, 1))
    axial = stiffnesses(points, bars, 1000.0 * 0.01)
    held = np.zeros(points.shape, bool)
    held[grid[:, 2] == 0] = True
    load = np.where(held, 0.0, chance.uniform(-1, 1, points.shape))

    model = pynite.FEModel3D()
    model.add_material("skin", 1000.0, 400.0, 0.25, 1.0)
    model.add_section("link", 0.01, 1e-9, 1e-9, 1e-9)
    for k, (x, y, z) in enumerate(points):
        model.add_node(f"J{k}", x, y, z)
        model.def_support(f"J{k}", *held[k], True, True, True)
        for axis, direction in enumerate(("FX", "FY", "FZ")):
            model.add_node_load(f"J{k}", direction, load[k, axis])
    for k, (i, j) in enumerate(bars):
        model.add_member(f"M{k}", f"J{i}", f"J{j}", "skin", "link")
        model.def_releases(f"M{k}", Ryi=True, Rzi=True, Ryj=True, Rzj=True)
    model.analyze_linear(check_stability=False)

    found = solve_truss(bars, points, axial, held, load)
    theirs = np.array(
        [
            [getattr(model.nodes[f"J{k}"], axis)["Combo 1"] for axis in ("DX", "DY", "DZ")]
            for k in range(len(points))
        ]
    )
    assert found.displacements_m == pytest.approx(theirs, abs=1e-6 * np.abs(theirs).max())
    # PyNite counts compression positive
    tension = np.array([-model.members[f"M{k}"].axial(0.0) for k in range(len(bars))])
    assert found.tension_n == pytest.approx(tension, abs=1e-6 * np.abs(tension).max())
