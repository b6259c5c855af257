"""What is covered and what is seen."""

from dataclasses import replace

import numpy as np
import pytest
from drawn_pieces import BALLOONS, brace_scene, straight_tube

from buildplan.drawing.bodies import lock_centres, outward
from buildplan.drawing.camera import CAMERAS, project
from buildplan.drawing.visibility import (
    behind_new,
    behind_what_is_new,
    joints_m,
)
from buildplan.framework.listed import build_listed
from buildplan.framework.locks import Lock

FRONT = CAMERAS["front"]


@pytest.mark.parametrize("name", ["front", "back", "side", "top", "corner"])
def test_what_stands_is_painted_behind_all_that_it_would_cover(name: str) -> None:
    scene, camera = brace_scene(), CAMERAS[name]
    bodies = scene.bodies
    painted = behind_what_is_new(bodies, camera)
    flat, depth = project(camera, bodies.centre)
    assert painted[bodies.is_new] == pytest.approx(depth[bodies.is_new])
    assert np.all(painted <= depth)
    for old in np.flatnonzero(~bodies.is_new):
        for new in np.flatnonzero(bodies.is_new):
            if np.linalg.norm(flat[old] - flat[new]) < bodies.radius[old] + bodies.radius[new]:
                assert painted[old] <= depth[new]


def test_back_joints_lie_behind_the_new_brace() -> None:
    scene = brace_scene()
    bodies = scene.bodies
    assert not np.any(behind_new(bodies, FRONT, joints_m(scene, ["A2", "B2"])))
    middle = (scene.shape.at["C2"] + scene.shape.at["D2"]) / 2
    assert behind_new(bodies, FRONT, middle[None, :])[0]


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
