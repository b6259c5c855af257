"""Solids by their edges, and the globe of two lengths that an icosahedron makes.

Corners are given by their coordinates (Coxeter, Regular Polytopes, 3.7; from memory); two are
joined where they lie the shortest distance apart.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import combinations, permutations, product
from typing import Literal

import numpy as np
import numpy.typing as npt
from pydantic import Field, ValidationError

from buildplan.framework.listed import build_listed
from buildplan.framework.model import BalloonType, Framework
from buildplan.framework.naming import numbered
from buildplan.language.messages import mark
from buildplan.patterns.extra_keys import Extras, extras_field
from buildplan.patterns.pattern import (
    EXTRA,
    LOCK,
    AllOf,
    Given,
    Joints,
    JointsOf,
    Making,
    Pattern,
    Uncoloured,
    link,
)
from buildplan.patterns.pattern_joints import first_to_last
from buildplan.source.values import FileModel, Key

SolidName = Literal[
    "tetrahedron",
    "cube",
    "octahedron",
    "dodecahedron",
    "icosahedron",
    "cuboctahedron",
    "truncated tetrahedron",
]


class Solid(FileModel):
    """A solid by its edges, one link balloon each."""

    shape: SolidName = Field(description=mark("which solid: its name in geometry"))
    edge: Key = Field(description=mark("the link balloon of the edges"))
    lock: Key = Field(description=mark("the round balloon of the locks"))
    extra: Extras = extras_field()


FloatArray = npt.NDArray[np.float64]
GOLDEN = (1 + 5**0.5) / 2


def _signed(*corner: float) -> Iterator[tuple[float, ...]]:
    """The corner with every choice of signs."""
    yield from product(*((-value, value) if value else (value,) for value in corner))


def _turned(*corner: float) -> Iterator[tuple[float, ...]]:
    """The corner with its coordinates moved round, with every choice of signs."""
    x, y, z = corner
    for moved in ((x, y, z), (z, x, y), (y, z, x)):
        yield from _signed(*moved)


def _corners(shape: str) -> list[tuple[float, ...]]:
    if shape == "tetrahedron":
        return [corner for corner in _signed(1, 1, 1) if np.prod(corner) > 0]
    if shape == "cube":
        return list(_signed(1, 1, 1))
    if shape == "octahedron":
        return list(_turned(1, 0, 0))
    if shape == "dodecahedron":
        return [*_signed(1, 1, 1), *_turned(0, 1 / GOLDEN, GOLDEN)]
    if shape == "icosahedron":
        return list(_turned(0, 1, GOLDEN))
    if shape == "cuboctahedron":
        return list(_turned(0, 1, 1))
    moved = {one for corner in _signed(3, 1, 1) for one in permutations(corner)}
    return sorted(corner for corner in moved if np.prod(corner) > 0)


# A solid of no more levels than this is a face and what closes over it: it needs no courses. Ours.
FEW_LEVELS = 2


def corners_and_edges(shape: str) -> tuple[FloatArray, list[tuple[int, int]]]:
    """Corners (n, 3) of a solid, and the pairs of them that its edges join; the corners of its
    foot come first (see `foot_of`), those of each level after those of the level below."""
    corners = np.array(_corners(shape), dtype=float)
    foot = foot_of(corners, _edges(corners))
    corners = corners[level_by_level(corners, _edges(corners), foot)]
    return corners, _edges(corners)


def _edges(corners: FloatArray) -> list[tuple[int, int]]:
    apart = np.linalg.norm(corners[:, None] - corners[None], axis=2)
    edge = apart[apart > 1e-9].min()
    pairs = combinations(range(len(corners)), 2)
    return [(i, j) for i, j in pairs if apart[i, j] < 1.001 * edge]


def foot_of(corners: FloatArray, edges: Sequence[tuple[int, int]]) -> list[int]:
    """The face that a solid stands on: one with the most corners."""
    import networkx as nx  # takes long to import, and a solid is one of many patterns

    planar, embedding = nx.check_planarity(nx.Graph(edges))
    assert planar, "solids without holes are"
    seen: set[tuple[int, int]] = set()
    faces = [
        sorted(embedding.traverse_face(a, b, mark_half_edges=seen))
        for a, b in sorted(embedding.edges)
        if (a, b) not in seen
    ]
    return min(faces, key=lambda face: (-len(face), face))


def _levels(edges: Sequence[tuple[int, int]], foot: Sequence[int]) -> Mapping[int, int]:
    """How many edges each corner is from `foot`."""
    import networkx as nx

    found: Mapping[int, int]
    found = nx.multi_source_dijkstra_path_length(nx.Graph(edges), set(foot), weight=None)
    return found


def level_by_level(
    corners: FloatArray, edges: Sequence[tuple[int, int]], foot: Sequence[int]
) -> list[int]:
    """The corners by how many edges they are from `foot`, and in each level in the order round
    the line from the middle of the solid to that of the foot."""
    levels = _levels(edges, foot)
    down = corners[list(foot)].mean(axis=0) - corners.mean(axis=0)
    down = down / np.linalg.norm(down)
    off = corners - corners.mean(axis=0)
    off = off - np.outer(off @ down, down)
    across = next(one for one in off if np.linalg.norm(one) > 1e-9)
    turn = np.arctan2(off @ np.cross(down, across), off @ across).round(6) % (2 * np.pi)
    return sorted(range(len(corners)), key=lambda i: (levels[i], turn[i]))


def build_solid(name: str, balloons: Mapping[str, BalloonType], solid: Solid) -> Framework:
    """Build the framework of a solid; one of more than a few levels goes course by course."""
    corners, edges = corners_and_edges(solid.shape)
    joints = numbered(len(corners))
    listed = [(joints[i], joints[j], solid.edge) for i, j in edges]
    foot = foot_of(corners, edges)
    levels = _levels(edges, foot)
    few = max(levels.values()) < FEW_LEVELS
    standing = () if few else [joints[i] for i in foot]
    return build_listed(name, balloons, joints, listed, solid.lock, standing)


# vertices; Euler's formula ties them to edges and faces
SOLID_JOINTS: Mapping[str, int] = {
    "tetrahedron": 4,
    "cube": 8,
    "octahedron": 6,
    "dodecahedron": 20,
    "icosahedron": 12,
    "cuboctahedron": 12,
    "truncated tetrahedron": 12,
}


def solid_joints(solid: Solid) -> list[str]:
    """The joints of a solid."""
    return numbered(SOLID_JOINTS[solid.shape])


def _joints(given: Given, of_part: JointsOf) -> Joints | None:
    try:
        return first_to_last(solid_joints(Solid.model_validate(given)))
    except ValidationError:
        return None


def _built(solid: Solid, making: Making) -> Framework:
    return build_solid(making.name, making.balloons, solid)


PATTERN = Pattern(
    name="solid",
    about=mark("a regular or half-regular solid by its edges"),
    keys=Solid,
    uses=(link("edge", mark("an edge")), LOCK, EXTRA),
    joints=_joints,
    build=_built,
    colours=Uncoloured(
        mark("a solid has no long chains to lay a colour pattern along"),
        mark("name another balloon in edge"),
    ),
    more_cells=AllOf(mark("a solid has one balloon to an edge, and no cells to add")),
    extra_as="edge",
)
