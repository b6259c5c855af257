"""What a piece needs to be carried through a door, and what goes through a piece."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import numpy as np
import pytest

from buildplan.design.reading import read_design
from buildplan.evaluation.evaluating import Evaluation, evaluate
from buildplan.evaluation.measured import measure
from buildplan.evaluation.passing import Door, Ease, bag_passes, parse_door, passage, ways
from buildplan.evaluation.passing_words import opening_caution, way_lines
from buildplan.language.told import ToldError
from buildplan.language.voice import Voice
from buildplan.shape.carrying import Carried, CarriedAs, DoorOpening, parts, walk_through, whole
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.model import FloatArray

DESIGNS = Path(__file__).parents[2] / "designs"

A_HAND = CONSTANTS["door_room"].value


@cache
def piece(name: str) -> Evaluation:
    design = read_design(DESIGNS / name)
    return evaluate(design, design.units, 12)


def skins_m(carried: Carried) -> FloatArray:
    """Points (n, 3) on the skins of all balloons, by their parametric form."""
    turn, tilt = np.meshgrid(np.linspace(0, 2 * np.pi, 24), np.linspace(0, np.pi, 25))
    found = []
    for middle, axis, r, c in zip(
        carried.middles_m, carried.axes, carried.radius_m, carried.half_m, strict=True
    ):
        first = np.cross(axis, [0.3, 0.5, 0.8])
        first /= np.linalg.norm(first)
        second = np.cross(axis, first)
        ring = np.multiply.outer(np.sin(tilt) * np.cos(turn), first)
        ring = r * (ring + np.multiply.outer(np.sin(tilt) * np.sin(turn), second))
        found.append(middle + ring + c * np.multiply.outer(np.cos(tilt), axis))
    return np.concatenate([points.reshape(-1, 3) for points in found])


def test_nothing_is_in_the_way_of_what_is_said_to_go_through() -> None:
    """The rectangle is looked for on the outlines' own ellipses; here it is checked against points
    on the skins."""
    gate = piece("walk_through_gate.yaml")
    opening = walk_through(gate.framework, gate.shape)
    assert opening is not None
    points = skins_m(whole(gate.framework, gate.shape))
    middle = 0.0  # the gate is the same on both sides
    near = points[np.abs(points[:, 0] - middle) < opening.width_m / 2 - 0.01]
    assert near[:, 1].min() > opening.height_m - 0.01
    wider = points[np.abs(points[:, 0] - middle) < opening.width_m / 2 + 0.04]
    assert wider[:, 1].min() < opening.height_m, "a wider one would touch"
    assert near[:, 1].min() <= opening.highest_m
    over = points[np.abs(points[:, 0] - middle) < 0.02]
    assert over[:, 1].min() == pytest.approx(opening.highest_m, abs=0.05)


@pytest.mark.parametrize("name", ["picture_frame.yaml", "gallery/slim_column.yaml"])
def test_nobody_walks_through_what_has_no_way_through(name: str) -> None:
    assert walk_through(piece(name).framework, piece(name).shape) is None


def ball(r: float, c: float, axis: tuple[float, float, float]) -> Carried:
    return Carried("", np.zeros((1, 3)), np.array([axis]), np.array([r]), np.array([c]))


@pytest.mark.parametrize(
    ("width", "height", "fit", "way"),
    [
        (0.9, 2.2, Ease.EASILY, CarriedAs.UPRIGHT),
        (0.9, 1.9, Ease.EASILY, CarriedAs.ON_ITS_SIDE),
        (0.50, 0.60, Ease.TIGHTLY, CarriedAs.ON_ITS_SIDE),
        (0.39, 3.0, Ease.NOT, CarriedAs.UPRIGHT),
    ],
)
def test_a_post_goes_through_upright_or_on_its_side(
    width: float, height: float, fit: Ease, way: CarriedAs
) -> None:
    """A spheroid of 0.4 by 0.4 by 2.0 m."""
    post = ball(0.2, 1.0, (0.0, 1.0, 0.0))
    found = passage(post, Door("", width, height), A_HAND)
    assert (found.fit, found.pose.way) == (fit, way)


def test_a_lift_must_be_deep_enough() -> None:
    post = ball(0.2, 1.0, (0.0, 1.0, 0.0))
    assert passage(post, Door("lift", 0.9, 1.9, 1.4), A_HAND).fit is Ease.NOT
    assert passage(post, Door("lift", 0.9, 2.4, 1.4), A_HAND).fit is Ease.EASILY
    # upright it has 20 cm free above it, and 25 at each side
    assert passage(post, Door("lift", 0.9, 2.4, 1.4), 0.25).fit is Ease.TIGHTLY


def test_what_does_not_go_through_whole_may_go_in_its_parts() -> None:
    portal = piece("gallery/portal.yaml")
    assert [one.name for one in parts(portal.framework, portal.shape)] == ["L", "R", "T"]
    doors = [Door("wide", 2.0, 2.1), Door("hatch", 0.95, 1.2), Door("slot", 0.3, 0.3)]
    wide, hatch, slot = ways(portal, doors)
    assert wide.piece.fit is Ease.EASILY
    assert hatch.piece.fit is slot.piece.fit is Ease.NOT
    assert hatch.in_parts
    assert not slot.in_parts
    lines = way_lines([wide, hatch, slot], "cm", Voice())
    assert "Yes, as it stands" in lines[0]
    assert "In its parts, L, R and T" in lines[1]
    assert "In its bags" in lines[2]


def test_narrow_and_low_openings_are_told() -> None:
    """2010 ADA Standards for Accessible Design: 404.2.3, 32 in clear; 307.4, 80 in of headroom."""
    told = [
        opening_caution(DoorOpening(width, height, height), "in", Voice())
        for width, height in ((0.80, 2.2), (0.82, 2.0), (0.82, 2.04), (0.67, 1.3))
    ]
    assert "404.2.3" in told[0]
    assert "307.4" in told[1]
    assert not told[2]
    assert "404.2.3" in told[3]
    assert "307.4" in told[3]


@pytest.mark.parametrize(("leg", "tells"), [(4, False), (6, True), (10, True)])
def test_an_opening_that_a_child_walks_into_is_told(leg: int, tells: bool) -> None:
    """An arch of legs so many balloons high, 0.23 m each."""
    link = {"kind": "link", "nominal": 12, "inflate_to": 8, "colour": "#1F5F8B", "label": "navy"}
    lock = {**link, "kind": "round", "nominal": 5, "inflate_to": 3.5}
    arch = {"kind": "square", "leg": leg, "span": 6, "long": "a", "brace": "a", "lock": "k"}
    found = measure(
        {
            "buildplan": 1,
            "name": "Trial",
            "units": "in",
            "balloons": {"a": link, "k": lock},
            "build": {"arch": arch},
        }
    )
    assert (walk_through(found.framework, found.shape) is not None) is tells


@pytest.mark.parametrize(
    ("text", "door"),
    [
        ("90x205cm", Door("", 0.90, 2.05)),
        ("36in x 80in", Door("", 0.9144, 2.032)),
        ("Front door = 0,9m x 2.05m", Door("Front door", 0.9, 2.05)),
    ],
)
def test_doors_as_people_write_them(text: str, door: Door) -> None:
    read = parse_door(text)
    assert read.name == door.name
    assert (read.width_m, read.height_m) == pytest.approx((door.width_m, door.height_m), abs=1e-4)


@pytest.mark.parametrize("text", ["90", "90x205", "wide", "90cm x", "=90x205"])
def test_what_is_no_door_is_told(text: str) -> None:
    with pytest.raises(ToldError, match="is no door"):
        parse_door(text)


def test_bags_go_end_first() -> None:
    assert bag_passes((0.9, 0.6, 0.6), Door("", 0.6, 2.0))
    assert not bag_passes((0.9, 0.6, 0.6), Door("", 0.55, 2.0))
