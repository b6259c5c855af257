"""The lay-out of braced chains: both pictures lie as the piece does, and say where joint 1 is."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from functools import cache

import numpy as np
import pytest
from diagram_pieces import assert_inside, assert_readable, pieces, star

from buildplan.drawing.bodies import finished
from buildplan.drawing.floor_plan import floor_plan
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.laid_out import LaidChains, laid_layers
from buildplan.drawing.marks import Circle, Curve, Picture, Point, Polyline
from buildplan.drawing.taped_lines import TAPED
from buildplan.drawing.way_round import WAY
from buildplan.framework.corners import corner_joints, landmarks, tagged_joints
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.shape.finding import find_shape
from buildplan.shape.model import Shape

OPEN = next(name for name, one in pieces().items() if one.braces and not one.closed)


@cache
def _built(name: str) -> tuple[Framework, Shape]:
    framework = star() if name == "star" else pieces()[name]
    return framework, find_shape(framework)


def _layers(name: str) -> Picture:
    framework, shape = _built(name)
    return laid_layers(framework, shape.at, 230.0, 260.0, Voice())


def _above(name: str) -> Picture:
    framework, shape = _built(name)
    laid = LaidChains(framework, {joint: shape.at[joint][:2] for joint in framework.joints})
    return floor_plan(laid, finished(framework, shape), 520.0, 400.0, "cm", Voice(), "Laid.")


def _arrows(picture: Picture) -> list[tuple[Point, Point]]:
    """The two ends of each arrow in the colour of the way of the hands."""
    found = []
    for mark in picture.marks:
        if isinstance(mark, Curve) and mark.ink.stroke == WAY:
            found.append((mark.start, mark.pieces[-1][2]))
    return found


@pytest.mark.parametrize("name", ["star", OPEN])
@pytest.mark.parametrize("drawn", [_layers, _above])
def test_each_drawn_chain_has_an_arrow_from_its_joint_1(
    name: str, drawn: Callable[[str], Picture]
) -> None:
    """It begins nearer to joint 1 than it ends, and ends nearer to a joint further along."""
    framework, shape = _built(name)
    picture = drawn(name)
    arrows = _arrows(picture)
    assert len(arrows) == (len(framework.chains) if drawn is _layers else 2)
    spots = [mark.centre for mark in picture.marks if isinstance(mark, Circle)]
    for start, finish in arrows:
        nearest = min(spots, key=lambda spot: float(np.hypot(*np.subtract(spot, start))))
        away = [float(np.hypot(*np.subtract(nearest, end))) for end in (start, finish)]
        assert away[0] < away[1]
    # the arrow on the page runs as joints 1 to 4 do on the floor, seen from above
    long = next(one for one in framework.chains if one.letter == "A")
    first, later = (shape.at[long.chain.joints[i]][:2] for i in (0, 3))
    runs = [np.subtract(finish, start) for start, finish in arrows]
    squeezed = (later - first) * (1.0, 0.5 if drawn is _layers else 1.0)
    cosines = [run @ squeezed / np.linalg.norm(run) / np.linalg.norm(squeezed) for run in runs]
    assert max(cosines) > 0.9


def test_joint_1_lies_at_one_place_in_both_pictures() -> None:
    """At the same share of the figure's width, from the left: one lay-out, not two."""
    framework, shape = _built("star")
    xs = np.array([shape.at[joint][0] for joint in framework.joints])
    true = (shape.at["A1"][0] - xs.min()) / np.ptp(xs)
    for picture in (_layers("star"), _above("star")):
        corners = [box for joint in ("A5", "A21") for box in label_boxes(_above("star"))[joint]]
        assert corners
        (tag,) = label_boxes(picture)["A1"]
        dots = [mark.centre for mark in picture.marks if isinstance(mark, Circle)]
        dot = min(dots, key=lambda at: abs(at[0] - (tag[0] + tag[2]) / 2) + abs(at[1] - tag[1]))
        bodies = [mark.matrix[4] for mark in picture.marks if hasattr(mark, "matrix")]
        share = (dot[0] - min(bodies)) / (max(bodies) - min(bodies))
        assert share == pytest.approx(true, abs=0.06)


def test_the_corners_of_the_star_are_named_and_are_its_corners() -> None:
    """A five-pointed star has five points, furthest from its middle, and five notches, nearest
    to it (plane geometry)."""
    framework, shape = _built("star")
    front = [one for one in framework.chains if one.letter in "AB"]
    corners = corner_joints(framework, front)
    middle = np.mean([shape.at[joint][:2] for joint in framework.joints], axis=0)
    away = {
        joint: float(np.linalg.norm(shape.at[joint][:2] - middle)) for joint in framework.joints
    }
    points = sorted((j for j in away if j[0] == "A"), key=away.__getitem__)[-5:]
    notches = sorted((j for j in away if j[0] == "B"), key=away.__getitem__)[:5]
    assert set(corners) == {*points, *notches}
    assert set(corners) <= set(label_boxes(_above("star")))


def test_what_a_tape_finds_between_the_points_of_a_star() -> None:
    """Five times the side of a regular pentagon, 1 / 0.8507 of the way from the middle to a point
    (Machinery's Handbook, 31st ed., p. 82, R/S of 5 sides), and each line as long as its figure on
    the scale of the plan."""
    _, shape = _built("star")
    picture = _above("star")
    found = dict(re.findall(r"(A\d+ – A\d+): (\d+) cm", picture.alt))
    assert list(found) == [f"A{n} – A{(n + 8) % 40}" for n in (5, 13, 21, 29, 37)]
    points = [shape.at[f"A{n}"][:2] for n in (5, 13, 21, 29, 37)]
    away = np.mean(np.linalg.norm(np.array(points) - np.mean(points, axis=0), axis=1))
    for metres in found.values():
        assert float(metres) / 100 == pytest.approx(away / 0.8507, rel=0.02)
    lines = [one for one in picture.marks if isinstance(one, Polyline) and one.ink == TAPED]
    assert len(lines) == 10  # from point to point and from notch to notch
    lengths = sorted(math.dist(*line.points) for line in lines)
    metres = sorted(float(one) for one in re.findall(r" – [AB]\d+: (\d+) cm", picture.alt))
    scales = [points / metre for points, metre in zip(lengths, metres, strict=True)]
    assert max(scales) == pytest.approx(min(scales), rel=0.02)


def test_every_corner_that_the_plan_names_has_a_tag() -> None:
    """And from one tag to the next are never more than five balloons."""
    for name in ("star", OPEN):
        framework, _ = _built(name)
        for long in framework.chains:
            tags = set(tagged_joints(framework, long))
            assert set(landmarks(framework, [long])[long.letter]) <= tags
            gaps = "".join("x" if joint in tags else "-" for joint in long.chain.joints)
            assert gaps[0] == "x"
            assert "-----" not in gaps


@pytest.mark.parametrize("name", ["star", OPEN])
@pytest.mark.parametrize("drawn", [_layers, _above])
def test_the_lay_out_is_readable(name: str, drawn: Callable[[str], Picture]) -> None:
    picture = drawn(name)
    assert_inside(picture)
    assert_readable(picture)
