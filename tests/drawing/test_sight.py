"""What is covered and what is seen."""

from dataclasses import replace

import numpy as np
import pytest
from drawn_pieces import BALLOONS, LINK, brace_scene, straight_tube
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point

from buildplan.drawing.bodies import lock_centres, outward
from buildplan.drawing.camera import CAMERAS, angle_between_deg
from buildplan.drawing.closeup import (
    APART,
    ENOUGH_SEEN,
    Work,
    closeup_camera,
    closeup_cameras,
    fewest_cameras,
    shown_by_one,
)
from buildplan.drawing.scene import Scene
from buildplan.drawing.visibility import (
    behind_new,
    disc_samples,
    in_front_of_new,
    joints_m,
    lens_share,
    sight_of,
    visible_share,
)
from buildplan.framework.listed import build_listed
from buildplan.framework.model import Lock

FRONT = CAMERAS["front"]


@given(st.floats(0, 3), st.floats(0.2, 1), st.floats(0.2, 1))
def test_lens_share_is_that_of_two_discs(apart: float, own: float, other: float) -> None:
    one, two = Point(0, 0).buffer(own, 128), Point(apart, 0).buffer(other, 128)
    share = float(lens_share(np.array(apart), np.array(own), np.array(other)))
    assert share == pytest.approx(one.intersection(two).area / one.area, abs=0.002)


def test_disc_samples_are_even() -> None:
    samples = disc_samples(400)
    assert np.max(np.hypot(*samples.T)) < 1
    assert np.mean(np.hypot(*samples.T) < 0.5) == pytest.approx(0.25, abs=0.02)
    assert np.mean(samples, axis=0) == pytest.approx([0, 0], abs=0.02)


def test_only_existing_work_in_front_is_seen_through() -> None:
    scene = brace_scene()
    bodies = scene.bodies
    through, painted = in_front_of_new(bodies, FRONT, joints_m(scene, []), LINK)
    depth = bodies.centre @ FRONT.axes[2]
    assert not np.any(through & bodies.is_new)
    names = {bodies.names[i] for i in np.flatnonzero(through)}
    # of the chains only A and B lie in front; they hide the ends of the links that go back
    assert names
    assert all(name[0] in "AB" for name in names)
    assert np.all(painted <= depth)
    assert painted[~through] == pytest.approx(depth[~through])


def test_existing_work_never_covers_much_of_what_is_new() -> None:
    for name in ("front", "back", "side", "top", "corner"):
        assert sight_of(brace_scene(), CAMERAS[name]).existing_share < 0.06


def test_new_links_in_a_row_hide_each_other_from_the_front() -> None:
    # of the brace's four links one lies behind another and is hidden whole
    share = visible_share(brace_scene(), FRONT)
    assert 0.4 < share < 0.75


def test_back_joints_lie_behind_the_new_brace() -> None:
    scene = brace_scene()
    bodies = scene.bodies
    assert not np.any(behind_new(bodies, FRONT, joints_m(scene, ["A2", "B2"])))
    middle = (scene.shape.at["C2"] + scene.shape.at["D2"]) / 2
    assert behind_new(bodies, FRONT, middle[None, :])[0]


@pytest.mark.parametrize("brace", [0, 1, 3])
def test_closeup_shows_the_brace_and_its_joints_apart(brace: int) -> None:
    scene = brace_scene(5, brace)
    joints = scene.framework.braces[brace].section
    camera = closeup_camera(scene, joints)
    sight = sight_of(scene, camera, joints)
    assert sight.share >= 0.8
    assert sight.joints_share == 1
    assert sight.spread >= APART
    assert angle_between_deg(FRONT, camera) <= 75


def test_closeup_keeps_a_camera_that_serves() -> None:
    scene = brace_scene()
    joints = scene.framework.braces[1].section
    camera = closeup_camera(scene, joints)
    assert closeup_camera(scene, joints, near=camera) is camera


def test_a_second_camera_shows_what_the_first_does_not() -> None:
    scene = brace_scene(6, 1)
    more = frozenset(link for b in scene.framework.braces[1:6] for link in b.links)
    scene = replace(scene, new_links=more)
    joints = [joint for b in scene.framework.braces[1:6] for joint in b.section]
    first, second = closeup_cameras(scene, joints)
    sights = [sight_of(scene, camera, joints) for camera in (first, second)]
    both = np.maximum(sights[0].seen, sights[1].seen)
    assert np.mean(both) > sights[0].share + 0.05
    assert np.sum(sights[0].joint_seen | sights[1].joint_seen) > np.sum(sights[0].joint_seen)


def test_one_camera_is_enough_for_one_brace() -> None:
    scene = brace_scene()
    assert len(closeup_cameras(scene, scene.framework.braces[1].section)) == 1


def test_works_that_follow_one_another_keep_one_view() -> None:
    scenes = [brace_scene(6, brace) for brace in range(1, 6)]
    works = [
        Work(scene, scene.framework.braces[i].section) for i, scene in enumerate(scenes, start=1)
    ]
    cameras = fewest_cameras(works)
    assert len(set(cameras)) == 1
    for work, camera in zip(works, cameras, strict=True):
        assert camera is not None
        sight = sight_of(work.scene, camera, work.joints)
        assert sight.share >= ENOUGH_SEEN
        assert sight.joints_share == 1


def test_a_work_that_no_view_shows_has_none() -> None:
    scene = brace_scene(6, 1)
    braces = scene.framework.braces[1:6]
    more = replace(scene, new_links=frozenset(link for b in braces for link in b.links))
    crowded = Work(more, tuple(joint for b in braces for joint in b.section))
    plain = Work(scene, braces[0].section)
    assert not shown_by_one(crowded)
    assert [c is None for c in fewest_cameras([plain, crowded, plain])] == [False, True, False]


def test_nothing_new_is_wholly_seen() -> None:
    framework, shape = straight_tube()
    scene = Scene(framework, shape, done_links=frozenset(framework.link))
    assert visible_share(scene, FRONT) == 1.0


def test_locks_hug_their_joint_from_outside() -> None:
    framework, shape = straight_tube()
    middle = np.mean(shape.positions_m, axis=0)
    radius = BALLOONS["lock"].gauge_m / 2
    away = dict(zip(shape.joints, outward(framework, shape), strict=True))
    pairs = lock_centres(framework, shape)
    for lock, centres in zip(framework.locks, pairs, strict=True):
        here, out = shape.at[lock.joint], away[lock.joint]
        assert np.linalg.norm(out) == pytest.approx(1)
        assert out @ (here - middle) > 0
        assert np.all((centres - here) @ out > 0)
        assert np.linalg.norm(centres[0] - centres[1]) == pytest.approx(2 * radius, rel=0.1)
        # across the chain, so that both lie in the valley between its balloons
        assert (centres[0] - centres[1])[0] == pytest.approx(0, abs=1e-9)


def test_locks_need_no_chain() -> None:
    # listed joint by joint, two links end to end: no direction is given across them
    framework = build_listed("two", BALLOONS, ["J", "K", "L"], [("J", "K", "long")], "lock")
    framework = replace(framework, locks=(Lock("K", "lock"),), links=())
    _, shape = straight_tube(1)
    at = np.array([(0.0, 0, 0), (0, 0, 0), (0, 0, 0)])
    shape = replace(shape, joints=("J", "K", "L"), positions_m=at)
    assert np.all(np.isfinite(lock_centres(framework, shape)))
