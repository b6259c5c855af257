"""Outlines and shading of balloons, against geometry worked out another way."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import Point, Polygon
from shapely.ops import unary_union

from buildplan.drawing.colours import to_oklab
from buildplan.drawing.marks import Circle, Curve, Look
from buildplan.drawing.outlines import (
    body_length,
    inscribed_length,
    outline,
    profile,
    quantised_aspect,
    quantised_length,
    shows_end,
)
from buildplan.drawing.shading import FINISHES, dark_line, lit_region, paled
from buildplan.drawing.symbols import PATTERNS, look_marks

LENGTHS = st.floats(1.0, 2.0).map(quantised_length)


def outline_polygon(length: float, aspect: float) -> Polygon:
    upper = outline(length, aspect, points=121)
    return Polygon(np.vstack([upper, upper[::-1] * [1, -1]])).buffer(0)


@given(LENGTHS, st.floats(0, 1))
def test_outline_is_as_wide_as_the_gauge(length: float, foreshortening: float) -> None:
    upper = outline(length, quantised_aspect(length, foreshortening))
    assert 2 * np.max(upper[:, 1]) == pytest.approx(1.0, abs=0.004)


@given(LENGTHS)
def test_seen_from_the_side_it_reaches_from_knot_to_knot(length: float) -> None:
    upper = outline(length, length)
    assert upper[-1, 0] - upper[0, 0] == pytest.approx(length, abs=1e-6)
    assert abs(upper[0, 1]) < 0.06


@given(LENGTHS)
def test_seen_end_on_it_is_a_circle(length: float) -> None:
    upper = outline(length, 0.0)
    assert np.hypot(upper[:, 0], upper[:, 1]) == pytest.approx(np.full(len(upper), 0.5), abs=0.004)


@pytest.mark.parametrize("foreshortening", [0.2, 0.5, 0.8, 0.95])
def test_outline_is_the_union_of_projected_circles(foreshortening: float) -> None:
    # another way: shapely's union of the ellipses to which the circles project
    length = 1.15
    sine = np.sqrt(1 - foreshortening**2)
    t, r = profile(length)
    circles = [
        affinity.translate(affinity.scale(Point(0, 0).buffer(1, 64), x * sine, x), s, 0)
        for s, x in zip(t[::2] * foreshortening, r[::2], strict=True)
    ]
    wanted, drawn = unary_union(circles), outline_polygon(length, length * foreshortening)
    assert drawn.symmetric_difference(wanted).area < 0.01 * wanted.area


@given(LENGTHS)
def test_inscribed_ellipsoid_lies_inside(length: float) -> None:
    t, r = profile(length)
    half = inscribed_length(length) / 2
    inside = np.abs(t) < half
    assert np.all(0.5 * np.sqrt(1 - (t[inside] / half) ** 2) <= r[inside] + 0.002)


@given(LENGTHS, st.floats(0, 1))
def test_shading_stays_inside_the_outline(length: float, foreshortening: float) -> None:
    aspect = quantised_aspect(length, foreshortening)
    body = affinity.scale(Point(0, 0).buffer(0.5, 64), body_length(length, aspect), 1)
    assert body.difference(outline_polygon(length, aspect)).area < 0.004


@pytest.mark.parametrize("level", [-0.3, 0.0, 0.4])
def test_lit_region_meets_the_light_at_its_level(level: float) -> None:
    light = np.array([-0.46, 0.56, 0.69]) / np.linalg.norm([-0.46, 0.56, 0.69])
    region = lit_region(level, 1.0)
    assert region is not None
    radius = np.hypot(region[:, 0], region[:, 1])
    normal = np.column_stack([region, np.sqrt(np.clip(1 - radius**2, 0, None))])
    at_rim = radius > 0.99
    assert normal[~at_rim] @ light == pytest.approx(np.full(np.sum(~at_rim), level), abs=0.02)
    assert np.all(normal[at_rim] @ light > level - 0.06)


@given(st.floats(0.5, 3), st.floats(0, 1))
def test_looks_come_in_few_steps(length: float, foreshortening: float) -> None:
    step = quantised_length(length)
    assert abs(quantised_aspect(step, foreshortening) / step - foreshortening) <= 1 / 18 + 1e-3


def test_every_look_can_be_drawn() -> None:
    for state in ("new", "done", "outline"):
        for form in ("link", "end", "round", "body"):
            assert look_marks(Look(form, "#1F5F8B", state, near="neck"))
    signs = [look_marks(Look("pattern", "#1F5F8B", "new", pattern=i)) for i in range(PATTERNS)]
    assert signs[0] == ()
    assert len(set(signs)) == PATTERNS


def test_every_finish_looks_different() -> None:
    looks = [look_marks(Look("body", "#1F5F8B", "new", finish=finish)) for finish in FINISHES]
    assert len(set(looks)) == len(FINISHES)


def test_outline_state_has_no_filling() -> None:
    for form in ("link", "end", "round"):
        for mark in look_marks(Look(form, "#1F5F8B", "outline")):
            assert mark.ink.fill is None


def test_neck_and_tail_are_told_apart() -> None:
    full = Look("link", "#1F5F8B", "new", aspect=1.15, near="neck")
    turned = Look("link", "#1F5F8B", "new", aspect=1.15, near="tail")
    assert look_marks(full) != look_marks(turned)
    end_on = [look_marks(Look("end", "#1F5F8B", "new", near=end)) for end in ("neck", "tail")]
    assert end_on[0] != end_on[1]


def test_near_knot_is_drawn_once() -> None:
    """Over the body when it points at the viewer, in the outline when it does not."""
    counts = []
    for foreshortening in (0.0, 1.0):
        aspect = quantised_aspect(1.15, foreshortening)
        marks = look_marks(Look("link", "#1F5F8B", "new", aspect=aspect))
        knots = sum(isinstance(mark, Curve | Circle) for mark in marks) - 1
        counts.append(knots + shows_end(1.15, aspect))
    assert counts == [2, 2]


@pytest.mark.parametrize("colour", ["#1F5F8B", "#F7F3E8", "#000000", "#FFFFFF", "#C8102E"])
def test_new_stands_out_from_what_stands_in_grey(colour: str) -> None:
    # Oklab's lightness, as a grey printer would show it: the outline of what is new is much
    # darker than anything of what stands already
    assert to_oklab(dark_line(colour))[0] < 0.4
    assert to_oklab(paled(colour))[0] > 0.73
