"""A state of the work as bodies in space: link balloons and the rounds of locks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from buildplan.framework.model import Framework
from buildplan.shape.model import Shape

FloatArray = npt.NDArray[np.float64]
BoolArray = npt.NDArray[np.bool_]


@dataclass(frozen=True)
class Scene:
    """What is in a picture: a piece, its shape, what is new and what stands already.

    Links are named by id, locks by joint; what is named nowhere is not drawn. `patterns`
    gives balloon keys the number of their sign (`Look.pattern`).
    """

    framework: Framework
    shape: Shape
    new_links: frozenset[str] = frozenset()
    done_links: frozenset[str] = frozenset()
    new_locks: frozenset[str] = frozenset()
    done_locks: frozenset[str] = frozenset()
    patterns: Mapping[str, int] = field(default_factory=dict)


def finished(
    framework: Framework, shape: Shape, patterns: Mapping[str, int] | None = None
) -> Scene:
    """The whole piece, every part in full colour."""
    return Scene(
        framework,
        shape,
        new_links=frozenset(framework.link),
        new_locks=frozenset(framework.lock_at),
        patterns=patterns or {},
    )


@dataclass(frozen=True)
class Bodies:
    """The bodies of a scene, one row each; links first, in the framework's order.

    `names` are link ids, and joints for the rounds of a lock (two rows each). `first` and
    `second` (n, 3) are a link's two knots, a round's joint and the point across its centre
    from there; `centre` (n, 3) is the middle. Lengths are metres.
    """

    names: tuple[str, ...]
    balloons: tuple[str, ...]
    is_link: BoolArray
    is_new: BoolArray
    first: FloatArray
    second: FloatArray
    centre: FloatArray
    radius: FloatArray

    def some(self, kept: BoolArray) -> Bodies:
        """The bodies for which `kept` (n,) is true."""
        rows = np.flatnonzero(kept)
        return Bodies(
            names=tuple(self.names[i] for i in rows),
            balloons=tuple(self.balloons[i] for i in rows),
            is_link=self.is_link[rows],
            is_new=self.is_new[rows],
            first=self.first[rows],
            second=self.second[rows],
            centre=self.centre[rows],
            radius=self.radius[rows],
        )


def outward(framework: Framework, shape: Shape, joint: str) -> FloatArray:
    """Unit vector at a joint that points away from what the joint is tied to."""
    here = shape.at[joint]
    links = (framework.link[name] for name in framework.links_at[joint])
    others = [shape.at[link.finish if link.start == joint else link.start] for link in links]
    away = here - np.mean(others, axis=0) if others else np.zeros(3)
    if np.linalg.norm(away) < 1e-6:
        away = here - np.mean(shape.positions_m, axis=0)
    if np.linalg.norm(away) < 1e-6:
        away = np.array([0.0, 0.0, 1.0])
    return np.asarray(away / np.linalg.norm(away))


def lock_centres(framework: Framework, shape: Shape, joint: str, radius_m: float) -> FloatArray:
    """Centres (2, 3) of the two rounds of a lock: they hug the joint from outside, side by
    side across the chain, in the valley between its balloons."""
    here, away = shape.at[joint], outward(framework, shape, joint)
    chain = [
        framework.link[name]
        for name in framework.links_at[joint]
        if framework.link[name].role == "chain"
    ]
    along = np.zeros(3)
    if chain:
        one, other = chain[0], chain[-1]
        ends = [link.finish if link.start == joint else link.start for link in (one, other)]
        along = shape.at[ends[1]] - shape.at[ends[0]]
        if np.linalg.norm(along) < 1e-6:
            along = shape.at[ends[0]] - here
    across = np.cross(away, along)
    if np.linalg.norm(across) < 1e-6:
        across = np.cross(away, [0.0, 0.0, 1.0])
    if np.linalg.norm(across) < 1e-6:
        across = np.cross(away, [0.0, 1.0, 0.0])
    across = across / np.linalg.norm(across)
    middle = here + away * radius_m * 0.75
    return np.array([middle - across * radius_m * 0.96, middle + across * radius_m * 0.96])


def scene_bodies(scene: Scene) -> Bodies:
    """Every body that the scene shows."""
    framework, shape = scene.framework, scene.shape
    links = [
        link
        for link in framework.links
        if link.id in scene.new_links or link.id in scene.done_links
    ]
    locks = [
        lock
        for lock in framework.locks
        if lock.joint in scene.new_locks or lock.joint in scene.done_locks
    ]
    names, keys, new, first, second, radius = [], [], [], [], [], []
    for link in links:
        names.append(link.id)
        keys.append(link.balloon)
        new.append(link.id in scene.new_links)
        first.append(shape.at[link.start])
        second.append(shape.at[link.finish])
        radius.append(framework.balloons[link.balloon].gauge_m / 2)
    for lock in locks:
        half = framework.balloons[lock.balloon].gauge_m / 2
        joint = shape.at[lock.joint]
        for centre in lock_centres(framework, shape, lock.joint, half):
            names.append(lock.joint)
            keys.append(lock.balloon)
            new.append(lock.joint in scene.new_locks)
            first.append(joint)
            second.append(2 * centre - joint)
            radius.append(half)
    one, two = np.array(first).reshape(-1, 3), np.array(second).reshape(-1, 3)
    return Bodies(
        names=tuple(names),
        balloons=tuple(keys),
        is_link=np.arange(len(names)) < len(links),
        is_new=np.array(new, dtype=bool),
        first=one,
        second=two,
        centre=(one + two) / 2,
        radius=np.array(radius, dtype=float),
    )


def link_length_m(framework: Framework) -> float:
    """The longest tie-to-tie length among the piece's link balloons."""
    kinds = framework.balloons.values()
    return max((kind.tie_to_tie_m for kind in kinds if kind.kind == "link"), default=0.2)
