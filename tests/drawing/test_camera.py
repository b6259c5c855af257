"""Cameras and how they fit a piece into a picture."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from buildplan.drawing.camera import (
    CAMERAS,
    Camera,
    angle_between_deg,
    fit,
    project,
    turned,
)

angles = st.floats(-80, 80)


@given(st.sampled_from(sorted(CAMERAS)), angles, angles)
def test_axes_are_orthonormal_and_right_handed(name: str, across: float, over: float) -> None:
    axes = turned(CAMERAS[name], across, over).axes
    assert axes @ axes.T == pytest.approx(np.eye(3), abs=1e-12)
    assert np.linalg.det(axes) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("name", "right", "up", "toward"),
    [
        ("front", (1, 0, 0), (0, 1, 0), (0, 0, 1)),
        ("back", (-1, 0, 0), (0, 1, 0), (0, 0, -1)),
        ("side", (0, 0, -1), (0, 1, 0), (1, 0, 0)),
        ("top", (1, 0, 0), (0, 0, -1), (0, 1, 0)),
    ],
)
def test_named_views(name: str, right: object, up: object, toward: object) -> None:
    assert CAMERAS[name].axes == pytest.approx(np.array([right, up, toward]))


def test_corner_shows_front_right_and_top() -> None:
    assert np.all(CAMERAS["corner"].axes[2] > 0)
    assert CAMERAS["corner"].axes[1, 1] > 0


def test_projection_and_depth_by_hand() -> None:
    flat, depth = project(CAMERAS["back"], np.array([(1.0, 2.0, 3.0)]))
    assert flat[0] == pytest.approx([-1, 2])
    assert depth[0] == pytest.approx(-3)


@given(angles, st.floats(-60, 60))
def test_turning_is_by_the_angle(across: float, over: float) -> None:
    front = CAMERAS["front"]
    assert angle_between_deg(front, turned(front, across, 0)) == pytest.approx(
        abs(across), abs=1e-4
    )
    assert angle_between_deg(front, turned(front, 0, over)) == pytest.approx(abs(over), abs=1e-4)


points = st.lists(st.tuples(*[st.floats(-5, 5)] * 3), min_size=1, max_size=20)


@given(points, st.floats(0.05, 1), st.floats(100, 500), st.floats(100, 500), angles, angles)
def test_fit_keeps_everything_inside_and_touches_one_side(
    where: list[tuple[float, float, float]],
    radius: float,
    width: float,
    height: float,
    across: float,
    over: float,
) -> None:
    camera = turned(CAMERAS["front"], across, over)
    view = fit(camera, np.array(where), radius, width, height, 10)
    flat, _ = view.place(np.array(where))
    reach = radius * view.scale
    low, high = np.min(flat, axis=0) - reach, np.max(flat, axis=0) + reach
    room = np.array([low[0] - 10, width - 10 - high[0], low[1] - 10, height - 10 - high[1]])
    assert np.min(room) == pytest.approx(0, abs=1e-6)


def test_camera_needs_no_unit_vectors() -> None:
    assert Camera((0, 0, 9), (0, 5, 1)).axes == pytest.approx(CAMERAS["front"].axes)
