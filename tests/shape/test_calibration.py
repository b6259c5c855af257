"""What to measure, and how sizes move, against handbook and gas law."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shape_pieces import frame, star, tube

from buildplan.shape.calibration import (
    at_gauge_step,
    at_warmth,
    circle_radius_m,
    ring_checks,
    warmth_factor,
)
from buildplan.shape.finding import find_shape


@pytest.mark.parametrize(
    ("sides", "ratio"),
    # Machinery's Handbook, 31st ed., p. 82, column R/S
    [(3, 0.5774), (4, 0.7071), (5, 0.8507), (6, 1.0), (8, 1.3066), (12, 1.9319), (48, 7.6449)],
)
def test_equal_sides_lie_on_the_handbook_circle(sides: int, ratio: float) -> None:
    assert circle_radius_m([2.0] * sides) == pytest.approx(2 * ratio, abs=1e-4)


def test_a_right_triangle_lies_on_its_hypotenuse() -> None:
    # Thales: the circle's diameter is the hypotenuse
    assert circle_radius_m([3, 4, 5]) == pytest.approx(2.5)


@given(st.lists(st.floats(0.1, 0.4), min_size=3, max_size=12))
def test_a_triangle_or_more_lies_on_its_circle(sides: list[float]) -> None:
    if 2 * max(sides) >= sum(sides) * 0.999:
        return
    radius = circle_radius_m(sides)
    half = np.arcsin(np.minimum(np.array(sides) / (2 * radius), 1))
    longest = int(np.argmax(sides))
    rest = np.delete(half, longest).sum()
    assert rest == pytest.approx(half[longest]) or rest == pytest.approx(np.pi - half[longest])


def test_sides_that_do_not_close_are_refused() -> None:
    with pytest.raises(ValueError, match="do not close"):
        circle_radius_m([1, 1, 5])
    with pytest.raises(ValueError, match="do not close"):
        circle_radius_m([1, 1])


def test_rings_of_the_star() -> None:
    checks = ring_checks(star())
    assert [check.chain for check in checks] == ["A", "B", "C", "D"]
    link = 8 * 0.0254 * 1.15
    # the circle through the knots of a polygon of 40 such sides; balloons lie over its middles
    circle = link / np.sin(np.pi / 40)
    inner = np.sqrt(circle**2 - link**2)
    assert checks[0].outside_m == pytest.approx(inner + 8 * 0.0254)
    assert checks[0].low_m < checks[0].outside_m < checks[0].high_m
    assert not checks[0].measured


def test_an_open_tube_has_no_rings() -> None:
    assert ring_checks(tube(["straight"] * 3, closed=False)) == ()


@pytest.mark.parametrize(
    ("warm", "percent"),
    # ideal gas at constant pressure, V2 / V1 = T2 / T1: 20 to 35 C, 20 to 0 C
    [(35, 5.117), (0, -6.822)],
)
def test_warmth_by_charles(warm: float, percent: float) -> None:
    assert 100 * (warmth_factor(20, warm) ** 3 - 1) == pytest.approx(percent, abs=1e-3)


def test_a_gauge_step_moves_the_height_in_proportion() -> None:
    piece = frame()
    shape = find_shape(piece)
    change = at_gauge_step(piece, shape.height_m, 0.5 * 0.0254)
    assert change.height_m / shape.height_m == pytest.approx(8.5 / 8)
    assert at_warmth(shape.height_m, 20, 35).height_m > shape.height_m
