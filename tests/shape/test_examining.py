"""How pieces give, sag and stand in wind: properties that hold whatever the constants."""

from __future__ import annotations

from itertools import combinations, product

import numpy as np
import pytest
from awkward_pieces import tube
from shape_pieces import arch, frame, graph, star

from buildplan.design.building import build_framework
from buildplan.shape.bodies import bodies_of
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.examining import examine
from buildplan.shape.finding import find_shape
from buildplan.shape.locking import locks
from buildplan.shape.model import Examination, Shape
from buildplan.shape.softness import folds, rigid_modes, softest_modes
from buildplan.shape.springs import energy_and_gradient, stiffness_matrix
from buildplan.shape.stiffness import locked, stiffening_braces, unlocked


@pytest.fixture(scope="module")
def examined() -> dict[str, tuple[Shape, Examination]]:
    found = {}
    for name, piece in {"star": star(), "frame": frame(), "arch": arch()}.items():
        shape = find_shape(piece)
        found[name] = (shape, examine(piece, shape, gust_m_per_s=5.0))
    return found


def test_a_star_folds_until_its_joints_are_locked(
    examined: dict[str, tuple[Shape, Examination]],
) -> None:
    # what a trial showed: with struts and crowding alone a star folds out of its plane
    stiffness = examined["star"][1].stiffness
    assert stiffness.folds > 0
    assert stiffness.crowded.stiffness_n_per_m < 0
    assert stiffness.folds_locked == 0
    assert stiffness.locked.stiffness_n_per_m > 0


def test_its_soft_mode_leaves_the_plane(examined: dict[str, tuple[Shape, Examination]]) -> None:
    motion = examined["star"][1].stiffness.locked.motion
    assert np.abs(motion[:, 2]).max() > 5 * np.abs(motion[:, 0]).max()


@pytest.mark.parametrize("name", ["star", "frame", "arch"])
def test_ranges_hold_their_values_and_name_what_they_rest_on(
    examined: dict[str, tuple[Shape, Examination]], name: str
) -> None:
    _, found = examined[name]
    assert found.wind.ballast is not None
    assert found.sag is not None
    for figure in (found.mass, found.tip_angle, found.sag, found.wind.tips_at, found.wind.ballast):
        assert figure.low <= figure.value <= figure.high
        assert set(figure.rests_on) <= set(CONSTANTS)
        assert figure.rests_on


def test_an_arch_sags_a_little_under_its_weight(
    examined: dict[str, tuple[Shape, Examination]],
) -> None:
    shape, found = examined["arch"]
    assert found.sag is not None
    assert 0 < found.sag.value < 0.05 * shape.height_m


def test_ballast_balances_the_gust(examined: dict[str, tuple[Shape, Examination]]) -> None:
    # at the speed that tips it, no ballast is needed; moments about the foot's edge
    piece = frame()
    shape, found = examined["frame"]
    calm = examine(piece, shape, gust_m_per_s=found.wind.tips_at.value)
    assert calm.wind.ballast is not None
    assert calm.wind.ballast.value == pytest.approx(0, abs=1e-6)
    double = examine(piece, shape, gust_m_per_s=2 * found.wind.tips_at.value)
    assert double.wind.ballast is not None
    # drag goes with the square: four times the weight must stand there
    # three times its own mass below its centre of mass, a little more where its arm is shorter
    three = 3 * double.wind.ballast_factor * found.mass.value
    assert double.wind.ballast.value == pytest.approx(three, rel=1e-6)
    assert double.wind.ballast_factor == pytest.approx(1, rel=0.01)


def test_locks_resist_a_change_of_angle_by_their_torque() -> None:
    """One joint, two links, bent by a small angle: energy = 1/2 torque angle^2."""
    for degrees in (60.0, 120.0, 180.0):
        piece = graph(3, [(0, 1), (1, 2)])
        bodies = bodies_of(piece)
        link = bodies.length_m[0]

        def bent(angle: float, link: float = link) -> np.ndarray:
            arm = link * np.array([np.cos(angle), np.sin(angle), 0])
            return np.array([(link, 0, 0), (0, 0, 0), arm])

        held = locks(bodies, bent(np.radians(degrees)), [1], CONSTANTS)
        turn = 1e-4
        energy, _ = energy_and_gradient(held, bent(np.radians(degrees) - turn))
        torque = CONSTANTS["lock_stiffness"].value
        # in one line the two springs of a flat joint do not arise: two links only
        assert energy == pytest.approx(0.5 * torque * turn**2, rel=1e-3)


def test_locks_hold_a_flat_joint_in_its_plane() -> None:
    piece = graph(5, [(0, 1), (0, 2), (0, 3), (0, 4)])
    bodies = bodies_of(piece)
    link = bodies.length_m[0]
    cross = link * np.array([(0, 0, 0), (1, 0, 0), (0, 1, 0), (-1, 0, 0), (0, -1, 0)], float)
    held = stiffness_matrix(locks(bodies, cross, [0], CONSTANTS), cross)
    # lifting one arm out of the plane costs energy
    lift = np.zeros(15)
    lift[3 * 1 + 2] = 1
    assert lift @ held @ lift > 0.1 * CONSTANTS["lock_stiffness"].value / link**2
    rigid = rigid_modes(cross)
    assert np.abs(held @ rigid[:, 3:]).max() < 1e-6 * np.abs(held.toarray()).max()


def test_a_found_shape_stays_at_rest_when_it_is_locked() -> None:
    piece = star()
    shape = find_shape(piece)
    bodies = bodies_of(piece)
    springs = locked(piece, bodies, shape.positions_m, CONSTANTS, CONSTANTS)
    _, force = energy_and_gradient(springs, shape.positions_m)
    assert np.abs(force).max() < 1e-5


def test_softest_modes_against_a_dense_solver() -> None:
    piece = arch()
    shape = find_shape(piece)
    bodies = bodies_of(piece)
    matrix = stiffness_matrix(unlocked(bodies, shape.positions_m, CONSTANTS), shape.positions_m)
    mass = np.full(bodies.joints, 0.01)
    values, modes, floor = softest_modes(matrix, mass, shape.positions_m)
    dense = np.linalg.eigvalsh(matrix.toarray()) / 0.01
    elastic = np.sort(dense)[6:]  # the six rigid motions cost nothing
    assert values[:3] == pytest.approx(elastic[:3], rel=1e-6)
    assert np.abs(rigid_modes(shape.positions_m).T @ modes[:, 0]).max() < 1e-6 * len(modes)
    assert floor <= dense.min()
    assert folds(matrix) == folds(matrix, 0.01 * floor) == 0


@pytest.mark.parametrize("links", [1, 2, 3])
def test_links_in_a_line_are_as_stiff_as_beads_on_springs(links: int) -> None:
    """What lies in a line does not turn about it: five rigid motions, not six. Along it n beads of
    mass m on springs k have w = 4 k / m sin2(j pi / 2 n), j = 1 to n - 1 (French, Vibrations and
    Waves, chapter 5, with both ends free; from memory)."""
    beads = links + 1
    piece = graph(beads, [(one, one + 1) for one in range(links)])
    shape, bodies = find_shape(piece), bodies_of(piece)
    springs = unlocked(bodies, shape.positions_m, CONSTANTS)
    matrix = stiffness_matrix(springs, shape.positions_m)
    values, _, _ = softest_modes(matrix, np.full(beads, 0.01), shape.positions_m)
    sines = np.sin(np.arange(1, beads) * np.pi / (2 * beads))
    along = 4 * CONSTANTS["strut_stiffness"].value / 0.01 * sines**2
    assert values[-links:] == pytest.approx(along)
    across = values[:-links]  # it bends both ways at each joint but the last two, with no force
    assert across == pytest.approx(np.zeros(2 * (links - 1)), abs=1e-6)
    assert examine(piece, shape).stiffness.folds == 0


def test_ways_to_fold_that_lie_close_together_are_told_apart(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """A long strip of two chains folds in many ways, each as readily as the next: they are told
    from nearer by where they are not from farther off, and agree with a dense solver."""
    strip = build_framework(tube(100, 2))
    shape, bodies = find_shape(strip), bodies_of(strip)
    springs = unlocked(bodies, shape.positions_m, CONSTANTS)
    matrix = stiffness_matrix(springs, shape.positions_m)
    mass = np.full(bodies.joints, 0.01)
    dense = np.linalg.eigvalsh(matrix.toarray()) / 0.01
    assert dense[11] < 0
    monkeypatch.setattr("buildplan.shape.softness.ROUNDS", 1)
    values, _, floor = softest_modes(matrix, mass, shape.positions_m)
    assert values == pytest.approx(dense[:12], rel=1e-6)
    assert 1.01 * dense[0] < floor <= dense[0] * (1 - 1e-6)


def test_the_best_extra_brace_of_a_cube_is_a_diagonal_of_a_face() -> None:
    """A cube of bars shears in its faces (6 mechanisms); a face's diagonal stops one of them."""
    corners = list(product((0, 1), repeat=3))
    pairs = [
        (i, j)
        for i, j in combinations(range(8), 2)
        if sum(a != b for a, b in zip(corners[i], corners[j], strict=True)) == 1
    ]
    cube = graph(8, pairs)
    extra = stiffening_braces(cube, find_shape(cube))[0]
    assert extra.gain is not None
    assert extra.gain > 1.01
    link = cube.balloons["long"].tie_to_tie_m
    assert extra.length_m == pytest.approx(2**0.5 * link, rel=1e-2)


def test_no_single_balloon_stiffens_a_square_that_folds_over_its_diagonal() -> None:
    square = graph(4, [(0, 1), (1, 2), (2, 3), (3, 0)])
    assert stiffening_braces(square, find_shape(square)) == ()


def test_an_estimate_rests_only_on_what_moves_it(
    examined: dict[str, tuple[Shape, Examination]],
) -> None:
    mass = examined["star"][1].mass
    assert set(mass.rests_on) == {"link_12_in_g", "round_5_in_g", "over_pressure"}


def test_two_rings_tied_at_one_joint_are_reported_as_loose() -> None:
    rings = [(i, (i + 1) % 6) for i in range(6)]
    rings += [(0, 6), (6, 7), (7, 8), (8, 9), (9, 10), (10, 0)]
    piece = graph(11, rings)
    shape = find_shape(piece)
    assert shape.mechanisms == 3 * 11 - 6 - 12
    assert shape.converged
