"""Where ballast goes, and that it holds about every edge of the foot: statics, moments about an
edge (any textbook of statics)."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from scipy.spatial import ConvexHull

from buildplan.evaluation.ballast import ballast_each_kg, ballast_kg
from buildplan.evaluation.evaluating import Evaluation, evaluate
from buildplan.evaluation.seating import read_whole
from buildplan.shape.constants import CONSTANTS

DESIGNS = Path(__file__).parents[2] / "designs"
# a moon that leans out over one side of its foot; a long foot; parts that stand each for itself
NAMES = ("gallery/evening_moon", "picture_frame", "gallery/portal")


@pytest.fixture(scope="module", params=NAMES)
def piece(request: pytest.FixtureRequest) -> Evaluation:
    design = read_whole(DESIGNS / f"{request.param}.yaml")
    return evaluate(design, design.units, 12)


def test_ballast_lies_on_feet_a_few_at_most(piece: Evaluation) -> None:
    places = piece.examination.wind.ballast_at
    assert set(places) <= set(piece.shape.standing.feet)
    assert 1 <= len(places) <= 8


def test_the_point_that_a_solid_stands_on_takes_none() -> None:
    """Its bag would lie beyond the balloons of the others (common practice, no source); what is
    tied to the other corners of a square has its middle where the point is."""
    design = read_whole(DESIGNS / "gallery/lamp_octahedron.yaml")
    found = evaluate(design, design.units, 12)
    feet, at = found.shape.standing.feet, found.shape.at
    point = min(feet, key=lambda joint: float(at[joint][1]))
    places = found.examination.wind.ballast_at
    assert {*feet} - {*places} == {point}
    middle = np.mean([at[joint] for joint in places], axis=0)
    assert np.hypot(*(middle - at[point])[[0, 2]]) < 0.01


@pytest.mark.parametrize("gust", [2.0, 4.0])
def test_moments_about_every_edge_balance_the_gust(piece: Evaluation, gust: float) -> None:
    """The gust's moment is at most (v / v0)^2 times what just tips the bare piece about that edge;
    its own weight and the ballast, where they are, hold it."""
    found, standing = piece.examination, piece.shape.standing
    at = np.array([piece.shape.at[joint] for joint in found.wind.ballast_at])[:, [0, 2]]
    each = ballast_each_kg(found, gust)
    mass, tips_at = found.mass.low, found.wind.tips_at.low
    for *normal, offset in ConvexHull(standing.foot_polygon_m).equations:
        own = -(np.dot(normal, standing.centre_of_mass_m[[0, 2]]) + offset)
        held = mass * own + each * sum(-(np.dot(normal, place) + offset) for place in at)
        assert held >= mass * own * (gust / tips_at) ** 2 - 1e-9


def test_what_is_tied_at_each_is_half_kilograms_and_adds_up(piece: Evaluation) -> None:
    found = piece.examination
    each = ballast_each_kg(found)
    assert float(2 * each).is_integer()
    assert ballast_kg(found) == each * len(found.wind.ballast_at)
    assert ballast_kg(found) >= CONSTANTS["least_ballast"].value


def test_no_bag_is_tied_to_the_middle_of_a_foot() -> None:
    """A globe stands on a joint of five balloons and the five about it."""
    design = read_whole(DESIGNS / "gallery" / "reading_globe.yaml")
    piece = evaluate(design, design.units, 12)
    assert set(piece.shape.standing.feet) == {f"P{number}" for number in range(1, 7)}
    assert set(piece.examination.wind.ballast_at) == {f"P{number}" for number in range(2, 7)}
