"""Pictures as lists of marks: every part once, nearer later, new apart from old."""

import numpy as np
import pytest
from drawn_pieces import GAUGE, LINK, brace_scene, straight_tube

from buildplan.drawing.camera import CAMERAS, turned
from buildplan.drawing.framing import view_of
from buildplan.drawing.marks import Circle, Look, Picture, Stamp
from buildplan.drawing.scene import (
    body_marks,
    finished,
    finished_picture,
    finished_words,
    step_picture,
)
from buildplan.drawing.stamps import link_stamps
from buildplan.language.voice import Voice

VIEWS = ["front", "back", "side", "top", "corner"]


def stamps(picture: Picture, form: str, *states: str) -> list[Stamp]:
    return [
        mark
        for mark in picture.marks
        if isinstance(mark, Stamp)
        and mark.look.form == form
        and (not states or mark.look.state in states)
    ]


@pytest.mark.parametrize("view", VIEWS)
def test_finished_view_has_every_balloon_once(view: str) -> None:
    framework, shape = straight_tube()
    picture = finished_picture(framework, shape, CAMERAS[view], 300, 200)
    assert len(stamps(picture, "link")) == len(framework.links)
    assert len(stamps(picture, "round")) == 2 * len(framework.locks)
    assert len(stamps(picture, "body")) == len(framework.links) + 2 * len(framework.locks)
    assert {mark.look.state for mark in stamps(picture, "link")} == {"new"}
    assert view in finished_words(framework, CAMERAS[view], Voice())


def test_step_has_every_balloon_once_filled_and_new_ones_in_full() -> None:
    scene = brace_scene()
    picture = step_picture(scene, CAMERAS["front"], 300, 200)
    assert len(stamps(picture, "link", "new")) == len(scene.new_links)
    assert len(stamps(picture, "link", "done")) == len(scene.done_links)
    assert len(stamps(picture, "round", "done")) == 2 * len(scene.done_locks)
    assert not stamps(picture, "body", "outline")


@pytest.mark.parametrize(("across", "over"), [(7, 11), (-40, 23), (100, -31)])
def test_nearer_bodies_are_painted_later(across: float, over: float) -> None:
    framework, shape = straight_tube()
    scene = finished(framework, shape)
    view = view_of(scene, turned(CAMERAS["front"], across, over), 300, 200)
    bodies = scene.bodies
    flat, depth = view.place(bodies.centre)
    painted = []
    for mark in body_marks(scene, view, 300, 200):
        if isinstance(mark, Stamp) and mark.look.form in ("link", "round"):
            away = np.linalg.norm(flat - np.array(mark.matrix[4:]), axis=1)
            # at this angle no two bodies have their middles at one place of the page
            assert np.sum(away < 0.01) == 1
            painted.append(depth[np.argmin(away)])
    assert len(painted) == len(depth)
    assert np.all(np.diff(painted) >= -1e-6)


def test_link_stamp_takes_the_look_to_its_joints() -> None:
    far, near = np.array([10.0, 20.0]), np.array([17.0, 41.0])
    drawn = float(np.linalg.norm(near - far))
    look = Look("link", "#1F5F8B", "new")
    link, *_ = link_stamps(look, far, near, drawn * 1.1, 20.0, LINK / GAUGE)
    assert isinstance(link, Stamp)
    a, b, c, d, e, f = link.matrix
    half = link.look.aspect / 2
    assert (a * half + e, b * half + f) == pytest.approx(tuple(near), abs=0.01)
    assert (-a * half + e, -b * half + f) == pytest.approx(tuple(far), abs=0.01)
    # across the axis the body keeps its gauge
    assert np.hypot(c, d) == pytest.approx(20.0, abs=0.01)


def test_light_is_never_turned() -> None:
    framework, shape = straight_tube()
    picture = finished_picture(framework, shape, CAMERAS["corner"], 300, 200)
    for mark in stamps(picture, "body"):
        a, b, c, d, _, _ = mark.matrix
        # symmetric and positive: a stretch, without a turn
        assert b == pytest.approx(c)
        assert min(np.linalg.eigvalsh([[a, b], [c, d]])) > 0


def test_piece_keeps_its_place_from_step_to_step() -> None:
    places = []
    for brace in (1, 2):
        scene = brace_scene(4, brace)
        view = view_of(scene, CAMERAS["front"], 300, 200, scene.shape.joints)
        places.append(view.place(scene.shape.positions_m)[0])
    assert places[0] == pytest.approx(places[1])


def test_depth_is_told_by_tone_in_finished_views() -> None:
    framework, shape = straight_tube(8)
    picture = finished_picture(framework, shape, CAMERAS["side"], 300, 200)
    tones = [mark.look.tone for mark in stamps(picture, "link")]
    assert tones[0] == 3
    assert tones[-1] == 0


def test_signs_are_drawn_where_asked() -> None:
    framework, shape = straight_tube()
    picture = finished_picture(framework, shape, CAMERAS["front"], 300, 200, patterns={"cross": 2})
    crosses = [link for link in framework.links if link.balloon == "cross"]
    assert len(stamps(picture, "pattern")) == len(crosses)


def test_ends_are_shown_large_and_left_out_small() -> None:
    scene = brace_scene()
    large = step_picture(scene, CAMERAS["front"], 900, 400)
    small = step_picture(scene, CAMERAS["front"], 100, 80)
    assert {mark.look.near for mark in stamps(large, "link", "new")} == {"neck", "tail"}
    assert {mark.look.near for mark in stamps(small, "link")} == {""}


def test_same_scene_same_picture() -> None:
    pictures = [
        step_picture(brace_scene(), CAMERAS["corner"], 300, 200, labels=["A2", "B2"])
        for _ in range(2)
    ]
    assert pictures[0] == pictures[1]


@pytest.mark.parametrize("joints", [("A1",), ("A1", "D5"), ("C5", "D5"), ("A3", "B3", "C3", "D3")])
@pytest.mark.parametrize("size", [(108.0, 132.0), (60.0, 60.0), (300.0, 90.0)])
def test_the_ring_round_a_place_stays_within_the_picture(
    joints: tuple[str, ...], size: tuple[float, float]
) -> None:
    picture = step_picture(brace_scene(), CAMERAS["front"], *size, place=joints)
    ring = picture.marks[-1]
    assert isinstance(ring, Circle)
    for at, side in zip(ring.centre, size, strict=True):
        assert ring.radius <= at <= side - ring.radius
