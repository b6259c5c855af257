"""Parts that are tied to one another, drawn a little apart: what is tied to what is then seen, and
that the lock comes round both."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import combinations

import numpy as np

from buildplan.drawing.arrays import FloatArray
from buildplan.drawing.bodies import Bodies, Scene, link_length_m, straight_bodies
from buildplan.drawing.camera import Camera, turned
from buildplan.framework.locks import Tie
from buildplan.framework.model import Framework
from buildplan.shape.model import Shape
from buildplan.shape.tied_parts import part_of, way_apart

# How far apart, in link lengths: a lock stands between. For looks only.
APART = 1.5
# Parts that lie one before the other, as the viewer looks, are seen from so far round. Ours.
ASIDE_DEG, ONE_BEFORE_THE_OTHER = 55.0, 0.7
AS_LOW_M = 0.05  # joints that are no higher than that are told to be as low. Ours.


def parts_apart(scene: Scene, ties: Sequence[Tie], camera: Camera) -> Scene:
    """A scene about `ties` with their parts apart, each the way that it goes on from there, the
    new locks at the lower, seen from `camera` left and right of the way."""
    framework = scene.framework
    shape = _moved(framework, scene.shape, ties)
    bodies = straight_bodies(framework, shape)
    for tie in ties:
        if tie.name in framework.lock_at:
            bodies = _lock_below(bodies, shape, tie, camera)
    if scene.every_body is not None:
        near = set(zip(scene.every_body.names, scene.every_body.is_link, strict=True))
        kept = [one in near for one in zip(bodies.names, bodies.is_link, strict=True)]
        bodies = bodies.some(np.array(kept, dtype=bool))
    return replace(in_their_colours(scene, ties), shape=shape, every_body=bodies)


def seat_beside(scene: Scene, ties: Sequence[Tie], camera: Camera) -> Camera:
    """The camera, or one further round where it would see parts that come apart one behind the
    other."""
    toward = camera.axes[2]
    aways = _aways(scene.framework, scene.shape, ties).values()
    far = APART * link_length_m(scene.framework)
    if all(abs(float(away @ toward)) < ONE_BEFORE_THE_OTHER * far for away in aways):
        return camera
    return replace(turned(camera, ASIDE_DEG, 0.0), name=camera.name)


def parts_tied(framework: Framework, shape: Shape, tie: Tie, patterns: Mapping[str, int]) -> Scene:
    """The parts that meet at a tie, as they are once it is locked: its lock new, theirs and all
    other balloons pale."""
    parts = {part_of(framework, joint) for joint in tie.joints}
    own = [part.framework for part in framework.parts if part.name in parts]
    scene = Scene(
        framework,
        shape,
        done_links=frozenset(link for one in own for link in one.link),
        new_locks=frozenset({tie.name}) & framework.lock_at.keys(),
        done_locks=frozenset(joint for one in own for joint in one.lock_at),
        patterns=patterns,
    )
    return in_their_colours(scene, [tie])


def in_their_colours(scene: Scene, ties: Sequence[Tie]) -> Scene:
    """A scene with the balloons that end at the joints of `ties` in their colours, as what is
    new."""
    framework = scene.framework
    meet = {link for tie in ties for joint in tie.joints for link in framework.links_at[joint]}
    shown = frozenset(meet & scene.done_links)
    return replace(
        scene,
        new_links=scene.new_links | shown,
        done_links=scene.done_links - shown,
        far_links=scene.far_links - shown,
    )


def _moved(framework: Framework, shape: Shape, ties: Sequence[Tie]) -> Shape:
    """A shape in which each joint has a place of its own, those of the parts that are tied at
    `ties` apart from where the lowest, or the one furthest left or back, stays."""
    away = _aways(framework, shape, ties)
    here = {joint: shape.at[joint] for joint in framework.joints}
    for part in framework.parts:
        if part.name in away:
            here |= {joint: here[joint] + away[part.name] for joint in part.framework.joints}
    own = {
        tie.name: np.asarray(np.mean([here[joint] for joint in tie.joints], axis=0))
        for tie in framework.ties
    }
    places = here | own
    return replace(
        shape, joints=tuple(places), positions_m=np.array(list(places.values())), tied={}
    )


def _aways(framework: Framework, shape: Shape, ties: Sequence[Tie]) -> dict[str, FloatArray]:
    """How far each part that is tied at `ties` is moved, (3,) metres."""
    names = list(dict.fromkeys(part_of(framework, joint) for tie in ties for joint in tie.joints))
    stays = names[0]
    for name in names[1:]:
        if float(np.sum(way_apart(framework, shape, stays, name))) < 0:
            stays = name
    # the lowest stays, unless others would then come to lie nearer to one another
    found = [_aways_from(framework, shape, one, names) for one in (stays, *names)]
    aways = max(found, key=_nearest)
    return {name: APART * link_length_m(framework) * away for name, away in aways.items()}


def _aways_from(
    framework: Framework, shape: Shape, stays: str, names: Sequence[str]
) -> dict[str, FloatArray]:
    """How far the other parts are moved from one, (3,), in parts of `APART`: each the way that it
    goes on from there, those of one way beside one another."""
    ways = {name: way_apart(framework, shape, stays, name) for name in names if name != stays}
    found = {}
    for name, way in ways.items():
        alike = [one for one in ways if one != name and np.array_equal(ways[one], way)]
        aside = [way_apart(framework, shape, one, name) / 2 for one in alike]
        found[name] = np.asarray(np.sum([way, *aside], axis=0))
    return found


def _nearest(aways: Mapping[str, FloatArray]) -> float:
    """How near to one another parts come to lie, one of which stays."""
    places = [np.zeros(3), *aways.values()]
    return min(
        round(float(np.linalg.norm(one - other)), 6) for one, other in combinations(places, 2)
    )


def _lock_below(bodies: Bodies, shape: Shape, tie: Tie, camera: Camera) -> Bodies:
    """The rounds of a tie's lock on both sides of the lower of its joints, of those that are as low
    of the one in the middle, where they lie before the others come to it."""
    rows = np.flatnonzero((bodies.names == tie.name) & ~bodies.is_link)
    way = shape.at[tie.joints[-1]] - shape.at[tie.joints[0]]
    across = np.cross(way, np.asarray(camera.direction, dtype=float))
    across = across / max(float(np.linalg.norm(across)), 1e-9)
    places = np.array([shape.at[joint] for joint in tie.joints])
    low = places[places[:, 1] < places[:, 1].min() + AS_LOW_M]
    off = np.linalg.norm(low - places.mean(axis=0), axis=1)
    middle = low[int(np.argmin(off))]
    centre, first, second = (array.copy() for array in (bodies.centre, bodies.first, bodies.second))
    for row, side in zip(rows.tolist(), (-1, 1), strict=True):
        first[row] = middle
        centre[row] = middle + side * bodies.radius[row] * across
        second[row] = 2 * centre[row] - middle
    return replace(bodies, centre=centre, first=first, second=second)
