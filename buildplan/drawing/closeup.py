"""The camera of a close-up: one that shows the new work and its joints apart, near the front."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

import numpy as np

from buildplan.drawing.bodies import Bodies, Scene, link_length_m
from buildplan.drawing.camera import CAMERAS, Camera, angle_between_deg, turned
from buildplan.drawing.visibility import Sight, behind_new, joints_m, sight_of_bodies, spread_of

ENOUGH_SEEN = 0.8
# Joints nearer to one another on the page, in link lengths, are not told apart well.
APART = 0.35
TURNS_DEG = (-60.0, -45.0, -30.0, -15.0, 0.0, 15.0, 30.0, 45.0, 60.0)
# A close-up is never seen from further round than this, counted from the front.
FURTHEST_DEG = 75.0
# What a second close-up must add; about a fifth of the new work or of the joints.
WORTH_A_SECOND = 0.35
# Only bodies this near to the joints, in link lengths, are asked what they cover.
REACH = 3.0


def closeup_camera(scene: Scene, joints: Sequence[str], near: Camera = CAMERAS["front"]) -> Camera:
    """The camera that shows the new work and the joints best, turned from `near` no further
    than it pays.

    It is `near` itself when that already shows enough of the new work and every joint, apart
    from the others; so pass the last step's camera to keep the view as long as it serves.
    """
    look = _Looking(scene, joints)
    found = look.at(near)
    if _serves(found):
        return near
    return max(_cameras_about(near), key=lambda camera: _worth(look.at(camera), near, camera))


def closeup_cameras(
    scene: Scene, joints: Sequence[str], near: Camera = CAMERAS["front"]
) -> tuple[Camera, ...]:
    """One camera, or two when one cannot show enough.

    The first is `closeup_camera`'s. When new work hides new work or a joint from it, a
    second shows best what the first does not.
    """
    look = _Looking(scene, joints)
    first = closeup_camera(scene, joints, near)
    found = look.at(first)
    if found.share >= ENOUGH_SEEN and found.joints_share == 1:
        return (first,)

    def worth(camera: Camera) -> float:
        other = look.at(camera)
        both = replace(
            other,
            seen=np.maximum(found.seen, other.seen),
            joint_seen=found.joint_seen | other.joint_seen,
        )
        return _worth(both, near, camera)

    second = max(_cameras_about(near), key=worth)
    return (first, second) if worth(second) > worth(first) + WORTH_A_SECOND else (first,)


@dataclass(frozen=True, eq=False)
class Work:
    """What a close-up is to show: the new work of a scene, and the joints where hands work."""

    scene: Scene
    joints: tuple[str, ...]

    @cached_property
    def look(self) -> _Looking:
        """What cameras show of it."""
        return _Looking(self.scene, self.joints)


def shown_by_one(work: Work) -> bool:
    """Whether there is one camera that shows enough of the work and every joint apart."""
    return any(map(work.look.served_by, _cameras_about(CAMERAS["front"])))


def fewest_cameras(works: Sequence[Work]) -> tuple[Camera | None, ...]:
    """Cameras for works that follow one another, with as few changes as can be; None for a
    work that no one camera shows well enough.

    Each camera serves as long a run of works as any does (which makes the fewest runs), and
    of those that serve it, it is the one nearest to the front.
    """
    found: list[Camera | None] = []
    run: list[Camera] = []
    length = 0

    def end_run() -> None:
        if run:
            best = min(run, key=lambda camera: angle_between_deg(CAMERAS["front"], camera))
            found.extend([best] * length)

    candidates = _cameras_about(CAMERAS["front"])
    for work in works:
        serving = list(filter(work.look.served_by, run))
        if serving:
            run, length = serving, length + 1
            continue
        end_run()
        run = list(filter(work.look.served_by, candidates))
        length = 1
        if not run:
            found.append(None)
    end_run()
    return tuple(found)


class _Looking:
    """What cameras show of one scene's work about some joints; each is asked once."""

    def __init__(self, scene: Scene, joints: Sequence[str]) -> None:
        self._bodies = _bodies_near(scene, joints)
        self._ties = joints_m(scene, joints)
        self._link_m = link_length_m(scene.framework)
        self._found: dict[Camera, Sight] = {}

    def at(self, camera: Camera) -> Sight:
        if camera not in self._found:
            sight = sight_of_bodies(self._bodies, camera, self._ties, self._link_m)
            self._found[camera] = sight
        return self._found[camera]

    def served_by(self, camera: Camera) -> bool:
        """Whether a camera shows enough; what is found out soonest is asked first."""
        if spread_of(camera, self._ties, self._link_m) < APART:
            return False
        if np.any(behind_new(self._bodies, camera, self._ties)):
            return False
        return _serves(self.at(camera))


def _serves(sight: Sight) -> bool:
    return sight.share >= ENOUGH_SEEN and sight.joints_share == 1 and sight.spread >= APART


def _worth(sight: Sight, near: Camera, camera: Camera) -> float:
    return (
        2.0 * _serves(sight)
        + 2.0 * min(sight.share, 0.95)
        - 6.0 * max(0.0, ENOUGH_SEEN - sight.share)
        + 2.0 * sight.joints_share
        + 1.5 * min(sight.spread, APART) / APART
        - 0.03 * sight.outlined
        - angle_between_deg(near, camera) / 80
        - angle_between_deg(CAMERAS["front"], camera) / 120
    )


@lru_cache(maxsize=64)
def _cameras_about(near: Camera) -> tuple[Camera, ...]:
    """Cameras turned from `near`, itself first."""
    cameras = [near]
    for over in TURNS_DEG:
        for across in TURNS_DEG:
            camera = turned(near, across, over)
            if angle_between_deg(CAMERAS["front"], camera) <= FURTHEST_DEG:
                cameras.append(camera)
    return tuple(cameras)


def _bodies_near(scene: Scene, joints: Sequence[str]) -> Bodies:
    """The scene's bodies near the joints; all of them when no joint is given."""
    bodies = scene.bodies
    if not joints:
        return bodies
    apart = np.linalg.norm(bodies.centre[:, None] - joints_m(scene, joints)[None], axis=2)
    return bodies.some(np.min(apart, axis=1) < REACH * link_length_m(scene.framework))
