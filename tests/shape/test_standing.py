"""Standing, wind and sizes against handbooks, standards and reference libraries."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.spatial import ConvexHull
from shape_pieces import arch, frame, graph, star, tube
from shapely.geometry import MultiPoint, Point
from shapely.ops import unary_union

from buildplan.language.voice import Voice
from buildplan.shape.bodies import LinkBodies, bodies_of
from buildplan.shape.constants import CONSTANTS, constants_with
from buildplan.shape.finding import Settings, find_shape
from buildplan.shape.standing import (
    body_volume_m3,
    floor_level_m,
    hull_corners,
    latex_kg,
    patches_below,
    tip_lean,
)
from buildplan.shape.wind import (
    beaufort,
    dynamic_pressure_pa,
    outline_towards,
    tip_speed_m_per_s,
    worst_wind,
)


def lone_body(axis: tuple[float, float, float], height: float) -> tuple[LinkBodies, np.ndarray]:
    """One link of radius 0.1 and length 0.3 whose middle is at `height`."""
    along = 0.15 * np.array(axis) / np.linalg.norm(axis)
    middle = np.array([0, height, 0])
    bodies = LinkBodies(
        2,
        np.array([[0, 1]]),
        np.array([0.3]),
        np.array([0.1]),
        np.zeros((0, 3), int),
    )
    return bodies, np.stack([middle - along, middle + along])


def test_ellipsoid_volume() -> None:
    # V = 4/3 pi a b c: a = b = 0.05, c = 0.15 m gives 1.5708 litres; a sphere is the limit
    assert body_volume_m3(0.05, 0.30) == pytest.approx(1.570796e-3, rel=1e-6)
    assert body_volume_m3(0.1, 0.2) == pytest.approx(4 / 3 * np.pi * 0.1**3)


def test_tip_angle_closed_form() -> None:
    # atan(b / h): b = 0.30 m, h = 1.00 m gives 16.699 degrees
    square = np.array([(-0.3, -0.3), (0.3, -0.3), (0.3, 0.3), (-0.3, 0.3)])
    assert tip_lean(square, np.zeros(2), 1.0) == pytest.approx(16.699, abs=1e-3)
    assert tip_lean(square, np.array([0.31, 0]), 1.0) < 0


@pytest.mark.parametrize("seed", range(5))
def test_the_foot_against_shapely(seed: int) -> None:
    points = np.random.default_rng(seed).standard_normal((30, 2))
    centre = points.mean(axis=0)
    hull = MultiPoint(points).convex_hull
    assert hull_corners(points) == pytest.approx(points[ConvexHull(points).vertices])
    assert {tuple(p) for p in hull_corners(points)} == set(hull.exterior.coords)
    least = hull.exterior.distance(Point(centre))
    assert tip_lean(points, centre, 2.0) == pytest.approx(np.degrees(np.arctan2(least, 2.0)))


def test_a_patch_is_the_section_of_the_spheroid() -> None:
    # lying spheroid a = 0.1, c = 0.15 cut at half its radius: half axes times sqrt(1 - 1/4)
    bodies, places = lone_body((1, 0, 0), 0.1)
    patches = patches_below(bodies, places, 0.05)
    assert np.sort(np.linalg.norm(patches.spans_m[0], axis=0)) == pytest.approx(
        np.sqrt(0.75) * np.array([0.1, 0.15])
    )
    # leaning, every point of the outline lies on the spheroid
    bodies, places = lone_body((1, 1, 0.3), 0.13)
    around = patches_below(bodies, places, 0.02).outline_m()
    axis = bodies.axes(places)[0]
    point = np.column_stack([around[:, 0], np.full(len(around), 0.02), around[:, 1]])
    offset = point - bodies.midpoints_m(places)[0]
    along = offset @ axis
    across = np.linalg.norm(offset - along[:, None] * axis, axis=1)
    assert (along / 0.15) ** 2 + (across / 0.1) ** 2 == pytest.approx(1)


def test_the_floor_carries_the_weight() -> None:
    bodies, places = lone_body((1, 0, 0.2), 0.1)
    level = floor_level_m(bodies, places, load_n=5.0, over_pressure_pa=2500.0)
    assert patches_below(bodies, places, level).area_m2 * 2500 == pytest.approx(5.0)


def test_dynamic_pressure() -> None:
    # ASCE 7-16 eq. 26.10-1.SI writes 0.613 V^2; values for factors of 1
    for speed, pressure in ((3.3, 6.68), (5.4, 17.88), (7.9, 38.26), (10, 61.30), (13.8, 116.7)):
        assert dynamic_pressure_pa(speed, 1.226) == pytest.approx(pressure, rel=1e-3)


def test_tipping_speed() -> None:
    # v = sqrt(W b / (0.613 Cd A h)); 2 kg, b 0.3 m, Cd 1.2, A 0.5 m2, h 1 m gives 4.000 m/s
    speed = tip_speed_m_per_s(2 * 9.80665, 0.3, 1.226, 1.2, 0.5, 1.0)
    assert speed == pytest.approx(4.000, abs=5e-4)
    assert beaufort(speed) == 3


@pytest.mark.parametrize(
    ("speed", "force"),
    # Beaufort scale, http://www.meteothes.gr/wxbeaufort-en.html
    [(0.2, 0), (0.3, 1), (1.5, 1), (1.6, 2), (3.3, 2), (3.4, 3), (5.4, 3), (5.5, 4), (7.9, 4),
     (8.0, 5), (10.7, 5), (10.8, 6), (13.9, 7), (17.2, 8), (20.8, 9), (24.5, 10), (28.5, 11),
     (32.6, 11), (32.7, 12)],
)  # fmt: skip
def test_beaufort(speed: float, force: int) -> None:
    assert beaufort(speed) == force


def test_drag_lies_between_the_published_bounds() -> None:
    # NASA Glenn: flat plate 1.28; Aeronautical Engineer's Data Book fig. 5.13(b): infinite cylinder
    # across the flow 1.20, sphere at most 0.5. A chain of spheroids is blunter than a sphere.
    assert 0.5 < CONSTANTS["drag"].low <= CONSTANTS["drag"].value <= 1.28


def test_drawn_area_against_shapely() -> None:
    piece = frame()
    bodies, places = bodies_of(piece), find_shape(piece).positions_m
    outline = outline_towards(bodies, places, np.pi / 2)
    middle, axis = bodies.midpoints_m(places), bodies.axes(places)
    angle = np.linspace(0, 2 * np.pi, 200, endpoint=False)
    ellipses = []
    for m, a, r, c in zip(middle, axis, bodies.radius_m, bodies.length_m / 2, strict=True):
        # outline of a spheroid by its support function in each direction of the screen
        direction = np.column_stack([np.cos(angle), np.sin(angle), np.zeros(200)])
        along = direction @ a
        reach = np.sqrt(r**2 + (c**2 - r**2) * along**2)
        edge = (r**2 * direction + (c**2 - r**2) * along[:, None] * a) / reach[:, None]
        ellipses.append(MultiPoint(m[:2] + edge[:, :2]).convex_hull)
    union = unary_union(ellipses)
    assert outline.area_m2 == pytest.approx(union.area, rel=0.01)
    assert outline.height_m == pytest.approx(union.centroid.y, rel=0.01)


def test_the_worst_wind_blows_on_the_broad_side() -> None:
    piece = frame()
    shape = find_shape(piece)
    worst = worst_wind(
        bodies_of(piece),
        shape.positions_m,
        shape.standing.foot_polygon_m,
        shape.standing.centre_of_mass_m,
    )
    along = worst.edge_m[1] - worst.edge_m[0]
    assert abs(along[0]) > 10 * abs(along[1])
    assert worst.reach_m < 0.2


def test_latex_goes_with_the_printed_size_and_can_be_given() -> None:
    balloon = star().balloons["long"]
    assert latex_kg(balloon, CONSTANTS) == pytest.approx(0.0035)
    assert latex_kg(balloon, constants_with({"link_12_in_g": 4.0})) == pytest.approx(0.004)
    with pytest.raises(KeyError):
        constants_with({"no such thing": 1.0})


def test_mass_is_that_of_the_counted_balloons() -> None:
    piece = star()
    shape = find_shape(piece, settings=Settings(constants=constants_with({"over_pressure": 1e-3})))
    # 320 links and 320 rounds in 160 locks
    assert shape.mass_kg == pytest.approx(320 * 0.0035 + 320 * 0.0009, rel=1e-3)


def test_a_column_stands_on_its_first_section_and_an_arch_on_both() -> None:
    column = tube(["straight"] * 6, closed=False)
    shape = find_shape(column)
    assert shape.standing.feet == ("A1", "B1", "C1", "D1")
    assert shape.height_m > 2.5 * shape.width_m
    both = find_shape(arch()).standing.feet
    assert {"A1", "A26"} <= set(both)


@pytest.mark.parametrize(("left", "right"), [(4, 6), (5, 4)])
def test_an_arch_with_unlike_legs_comes_down_on_both(left: int, right: int) -> None:
    """Set with its ends level on the whole, one of them hangs: it goes over until that is down."""
    top = ["straight", "fan"] * 2 + ["straight", "fan_in"] * 2 + ["straight", "fan"] * 2
    shape = find_shape(tube(["straight"] * left + top + ["straight"] * right, closed=False))
    assert shape.standing.stands
    assert len(shape.standing.feet_m) == 2
    assert np.ptp(shape.standing.feet_m[:, 0]) > 0.5 * shape.width_m


def test_a_piece_that_hangs_over_its_foot_does_not_stand() -> None:
    hook = tube(["straight"] * 3 + ["fan"] + ["straight"] * 6, closed=False)
    shape = find_shape(hook)
    assert not shape.standing.stands
    assert any("does not stand" in Voice().tell(problem.message) for problem in shape.problems)


def test_a_tetrahedron_rests_on_a_face() -> None:
    pairs = [(i, j) for i in range(4) for j in range(i)]
    shape = find_shape(graph(4, pairs))
    heights = np.sort(shape.positions_m[:, 1])
    assert heights[:3] == pytest.approx(heights[0], abs=1e-6)
    assert len(shape.standing.feet) == 3
