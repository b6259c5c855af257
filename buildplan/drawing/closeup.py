"""The camera of a close-up: one that shows the new work and its joints apart, near the front."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from buildplan.drawing.bodies import Bodies, Scene, link_length_m, scene_bodies
from buildplan.drawing.camera import CAMERAS, Camera, angle_between_deg, turned
from buildplan.drawing.sight import Sight, joints_m, sight_of_bodies

ENOUGH_SEEN = 0.8
# Joints nearer to one another on the page, in link lengths, are not told apart well.
APART = 0.35
TURNS_DEG = (-60.0, -45.0, -30.0, -15.0, 0.0, 15.0, 30.0, 45.0, 60.0)
# A close-up is never seen from further round than this, counted from the front.
FURTHEST_DEG = 75.0
# Only bodies this near to the joints, in link lengths, are asked what they cover.
_REACH = 3.0


def _score(sight: Sight, turn_deg: float) -> float:
    return (
        2.0 * min(sight.share, 0.95)
        + 2.0 * sight.joints_seen
        + 1.5 * min(sight.spread, APART) / APART
        - 0.03 * sight.outlined
        - turn_deg / 80
    )


def closeup_camera(scene: Scene, joints: Sequence[str], near: Camera = CAMERAS["front"]) -> Camera:
    """The camera that shows the new work and the joints best, turned from `near` no further
    than it pays.

    It is `near` itself when that already shows enough of the new work and every joint, apart
    from the others; so pass the last step's camera to keep the view as long as it serves.
    """
    bodies = _bodies_near(scene, joints)
    ties = joints_m(scene, joints)
    link_m = link_length_m(scene.framework)
    found = sight_of_bodies(bodies, near, ties, link_m)
    if found.share >= ENOUGH_SEEN and found.joints_seen == 1 and found.spread >= APART:
        return near
    best, best_score = near, _score(found, 0.0)
    for over in TURNS_DEG:
        for across in TURNS_DEG:
            camera = turned(near, across, over)
            if angle_between_deg(CAMERAS["front"], camera) > FURTHEST_DEG:
                continue
            turn_deg = angle_between_deg(near, camera)
            score = _score(sight_of_bodies(bodies, camera, ties, link_m), turn_deg)
            if score > best_score + 1e-9:
                best, best_score = camera, score
    return best


def _bodies_near(scene: Scene, joints: Sequence[str]) -> Bodies:
    """The scene's bodies near the joints; all of them when no joint is given."""
    bodies = scene_bodies(scene)
    if not joints:
        return bodies
    apart = np.linalg.norm(bodies.centre[:, None] - joints_m(scene, joints)[None], axis=2)
    return bodies.some(np.min(apart, axis=1) < _REACH * link_length_m(scene.framework))
