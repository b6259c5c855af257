"""The person at a brace: one whose arms are as long as they are, on knees that are on the floor."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from drawn_pieces import brace_scene

from buildplan.drawing.eye import eyes_for
from buildplan.drawing.kneeling_figure import Posed, kneeling
from buildplan.drawing.kneeling_place import FEET_M, HIPS_AWAY_M, kneeling_at
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.panel import Panel
from buildplan.drawing.person_at_work import hands_at, person_tying, person_under
from buildplan.drawing.seat import FROM_ABOVE, open_end_seat
from buildplan.drawing.way_round import TiedRow

UP, AHEAD = np.array([0.0, 0.0, 1.0]), np.array([0.0, 1.0, 0.0])
FLOOR = np.zeros(3)


def arms(figure: Posed) -> list[np.ndarray]:
    """Shoulder, elbow and hand (3, 3) of either arm."""
    return [group[0].points for group in figure.groups if group[0].points.shape == (3, 3)][-2:]


@pytest.mark.parametrize("ahead_m", [0.5, 0.75, 0.85])
def test_hands_are_where_the_work_is_and_arms_keep_their_length(ahead_m: float) -> None:
    """An arm of somebody 1.70 m tall is about 0.58 m from shoulder to palm (from memory)."""
    hands = np.array([[-0.1, ahead_m, 0.3], [0.1, ahead_m, 0.3]])
    figure = kneeling(FLOOR, AHEAD, UP, hands)
    assert figure.hands == pytest.approx(hands)
    for arm in arms(figure):
        assert np.linalg.norm(np.diff(arm, axis=0), axis=1) == pytest.approx([0.29, 0.29])
    lowest = figure.points[:, 2].min()
    assert 0 < lowest < 0.05


def test_hands_out_of_reach_are_as_near_as_arms_are_long() -> None:
    hands = np.array([[-0.1, 2.0, 0.3], [0.1, 2.0, 0.3]])
    figure = kneeling(FLOOR, AHEAD, UP, hands)
    for arm in arms(figure):
        assert np.linalg.norm(arm[2] - arm[0]) < 0.58
        assert np.all(arm[2, 1] < hands[:, 1])


def first_brace() -> Panel:
    scene = brace_scene()
    brace = scene.framework.braces[1]
    row = TiedRow(brace.section, True)
    camera = open_end_seat(scene.framework, scene.shape, brace)
    return Panel(scene, camera, brace.section, (row,), below=frozenset({"C2", "D2"}))


def test_the_right_hand_is_at_the_outer_chain() -> None:
    """As the close-ups have it from the open end: A upper right, B upper left (pictures.md)."""
    panel = first_brace()
    assert hands_at(panel, panel.scene) == ("B2", "A2")


def test_what_hands_hold_is_named() -> None:
    panel = first_brace()
    size = (170.0, 120.0)
    tying = person_tying(panel.scene, panel, size, "", "", ("A3", "B3"))
    assert set(label_boxes(tying)) == {"A2", "B2", "A3", "B3"}
    under = person_under(panel.scene, panel, ("C2", "D2"), size, "below", "")
    assert set(label_boxes(under)) == {"C2", "D2", "below"}


@pytest.mark.parametrize(("size", "exact"), [((300.0, 300.0), True), ((90.0, 70.0), False)])
def test_where_the_floor_is_free_one_kneels_at_the_seat(
    size: tuple[float, float], exact: bool
) -> None:
    """The way to the hips is that of the close-up; they are as far away as they are, where the map
    is large enough to show a person at true size."""
    panel = first_brace()
    scene = replace(panel.scene, done_links=frozenset(), done_locks=frozenset())
    (eye,) = eyes_for(scene, FROM_ABOVE, size, [panel])
    assert eye.kneeling is not None
    assert eye.kneeler is not None
    middle = np.mean([scene.shape.at[joint] for joint in panel.joints], axis=0)
    away = np.array(panel.camera.direction) * (1.0, 1.0, 0.0)
    away /= np.linalg.norm(away)
    far = eye.kneeling.hips - middle
    assert far / np.linalg.norm(far) == pytest.approx(away)
    if exact:
        assert far == pytest.approx(HIPS_AWAY_M * away)
    at, work = np.array(eye.kneeler.at), np.array(eye.kneeler.work)
    feet = at + FEET_M * eye.kneeler.scale * (at - work) / np.linalg.norm(at - work)
    assert np.all((feet > 0) & (feet < size))


@pytest.mark.parametrize("size", [(300.0, 300.0), (90.0, 70.0)])
def test_the_sign_on_a_map_is_on_the_side_where_the_person_kneels(
    size: tuple[float, float],
) -> None:
    """What lies there moves both aside alike: on a large map to the same place."""
    panel = first_brace()
    (eye,) = eyes_for(panel.scene, FROM_ABOVE, size, [panel])
    assert eye.kneeling is not None
    middle = np.mean([panel.scene.shape.at[joint] for joint in panel.joints], axis=0)
    person = kneeling_at(panel.scene.bodies, middle, panel.camera, UP)
    seat = np.array(panel.camera.direction) * (1.0, 1.0, 0.0)
    assert person.toward @ seat < np.linalg.norm(seat)
    assert eye.kneeling.toward @ person.toward > 0.7
    if size[0] > 200.0:
        assert eye.kneeling.hips == pytest.approx(person.hips)
