"""The builder's seat: the same joints in the same corners, whichever way the piece turns."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from drawn_pieces import straight_tube

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.drawing.camera import project
from buildplan.drawing.seat import (
    ABOVE_DEG,
    DOWN_DEG,
    LOOKING_DOWN,
    OVER_POLE,
    ROUND_DEG,
    STANDING,
    brace_axes,
    open_end_seat,
    seat_before,
    standing_seat,
)
from buildplan.evaluation.evaluating import resting_shape
from buildplan.evaluation.seating import read_whole

DESIGNS = Path(__file__).parents[2] / "designs"


@pytest.mark.parametrize("brace", range(4))
def test_the_open_end_is_where_the_numbers_run_to(brace: int) -> None:
    """The tube runs along x with A and B at the front (z) and A above B."""
    framework, shape = straight_tube()
    outside, along, front = brace_axes(framework, shape, framework.braces[brace])
    assert outside == pytest.approx([0, 1, 0])
    assert along == pytest.approx([1, 0, 0])
    assert front == pytest.approx([0, 0, 1])


def test_the_seat_has_its_angles() -> None:
    framework, shape = straight_tube()
    camera = open_end_seat(framework, shape, framework.braces[1])
    toward = camera.axes[2]
    assert np.degrees(np.arcsin(toward[2])) == pytest.approx(ABOVE_DEG)
    assert np.degrees(np.arctan2(toward[0], toward[1])) == pytest.approx(ROUND_DEG)


@pytest.mark.parametrize("turn_deg", range(0, 360, 40))
def test_joints_keep_their_corners_however_the_piece_lies(turn_deg: float) -> None:
    framework, shape = straight_tube()
    c, s = np.cos(np.radians(turn_deg)), np.sin(np.radians(turn_deg))
    turn = np.array([(c, s, 0), (-s, c, 0), (0, 0, 1)])
    for brace in framework.braces:
        turned = type(shape)(**{**vars_of(shape), "positions_m": shape.positions_m @ turn})
        camera = open_end_seat(framework, turned, brace)
        spots, _ = project(camera, np.array([turned.at[joint] for joint in brace.section]))
        corners = np.sign(spots - np.mean(spots, axis=0))
        assert corners.tolist() == [[1, 1], [-1, 1], [-1, -1], [1, -1]]


def vars_of(shape: object) -> dict[str, object]:
    fields = shape.__dataclass_fields__  # type: ignore[attr-defined]
    return {name: getattr(shape, name) for name in fields}


def test_standing_work_is_seen_from_outside_and_a_little_above() -> None:
    framework, shape = straight_tube()
    body = framework.joints
    for joint in ("A1", "A5"):
        toward = standing_seat(shape, [joint], body).axes[2]
        assert np.degrees(np.arcsin(toward[1])) == pytest.approx(DOWN_DEG)
        # thin from front to back: one stands before the face that the joint is on
        assert toward[2] > 0.8
        assert toward[0] == pytest.approx(0)
    assert standing_seat(shape, ["D3"], body).axes[2][2] < -0.8


@pytest.mark.parametrize("brace", range(4))
def test_joints_by_themselves_are_seen_from_the_brace_nearest_to_them(brace: int) -> None:
    framework, shape = straight_tube()
    near = framework.braces[brace]
    seat = seat_before(framework, shape, near.section[:2])
    assert seat == open_end_seat(framework, shape, near)


def test_the_pole_of_a_globe_is_seen_from_above_and_all_that_meets_there() -> None:
    design = read_design(DESIGNS / "gallery" / "reading_globe.yaml")
    framework = build_framework(design)
    shape = resting_shape(design, framework)
    heights = {joint: shape.at[joint][1] for joint in framework.joints}
    for pole in (min(heights, key=heights.__getitem__), max(heights, key=heights.__getitem__)):
        seat = seat_before(framework, shape, [pole])
        assert seat.name == OVER_POLE
        links = [framework.link[name] for name in framework.links_at[pole]]
        middles = [(shape.at[one.start] + shape.at[one.finish]) / 2 for one in links]
        flat, _ = project(seat, np.array([*middles, shape.at[pole]]))
        away = flat[:-1] - flat[-1]
        # they lie round it, each in a direction of its own
        turned = np.sort(np.degrees(np.arctan2(away[:, 1], away[:, 0])) % 360)
        gaps = np.diff([*turned, turned[0] + 360])
        assert gaps.max() < 180


@pytest.mark.parametrize(("name", "lies"), [("leo_5", True), ("portal", False)])
def test_parts_are_tied_as_they_lie_or_as_they_stand(name: str, lies: bool) -> None:
    """A word lies on its back while its letters are tied, and one looks down on all of it from one
    side; columns stand."""
    design = read_whole(DESIGNS / "gallery" / f"{name}.yaml")
    framework = build_framework(design)
    shape = resting_shape(design, framework)
    apart: list[tuple[str, ...]] = [
        (link.start, link.finish)
        for link in framework.links
        if framework.part_at(link.start) is not framework.part_at(link.finish)
    ]
    meeting = apart or [tie.joints for tie in framework.ties]
    seats = {seat_before(framework, shape, joints) for joints in meeting}
    assert (seats == {LOOKING_DOWN}) is lies
    assert all(seat.name == STANDING for seat in seats)


ON_COLUMNS = """
buildplan: 1
name: Gate
units: in
balloons:
  link: {kind: link,  nominal: 12, inflate_to: 8,   colour: cream, label: cream}
  lock: {kind: round, nominal: 5,  inflate_to: 3.5, colour: ivory, label: ivory}
build:
  assembly:
    parts:
      - name: L
        build: {column: {around: 4, rings: 3, ring: link, between: link, lock: lock}}
      - name: R
        build: {column: {around: 4, rings: 3, ring: link, between: link, lock: lock}}
      - name: W
        build: {letters: {text: AL, cells: 7, long: link, brace: link, bar: link, lock: lock}}
        on: [L, R]
    lock: lock
"""


def test_letters_are_tied_to_one_another_lying_and_to_columns_standing(tmp_path: Path) -> None:
    file = tmp_path / "gate.yaml"
    file.write_text(ON_COLUMNS, "utf-8")
    design = read_whole(file)
    framework = build_framework(design)
    shape = resting_shape(design, framework)
    for link in framework.links:
        if framework.part_at(link.start) is not framework.part_at(link.finish):
            assert seat_before(framework, shape, (link.start, link.finish)) == LOOKING_DOWN
    assert framework.ties
    for tie in framework.ties:
        seat = seat_before(framework, shape, tie.joints)
        assert seat != LOOKING_DOWN
        assert seat.name == STANDING
