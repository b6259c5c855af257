"""Solids by their edges, and the globe of two lengths that an icosahedron makes.

Corners are given by their coordinates (Coxeter, Regular Polytopes, 3.7; from memory); two are
joined where they lie the shortest distance apart.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import combinations, permutations, product

import numpy as np
import numpy.typing as npt

from buildplan.framework.listed import build_listed
from buildplan.framework.model import BalloonType, Framework
from buildplan.framework.naming import numbered
from buildplan.patterns.keys import Globe, Solid

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


def corners_and_edges(shape: str) -> tuple[FloatArray, list[tuple[int, int]]]:
    """Corners (n, 3) of a solid, and the pairs of them that its edges join."""
    corners = np.array(_corners(shape), dtype=float)
    apart = np.linalg.norm(corners[:, None] - corners[None], axis=2)
    edge = apart[apart > 1e-9].min()
    pairs = combinations(range(len(corners)), 2)
    return corners, [(i, j) for i, j in pairs if apart[i, j] < 1.001 * edge]


def build_solid(name: str, balloons: Mapping[str, BalloonType], solid: Solid) -> Framework:
    """Build the framework of a solid."""
    corners, edges = corners_and_edges(solid.shape)
    joints = numbered(len(corners))
    listed = [(joints[i], joints[j], solid.edge) for i, j in edges]
    return build_listed(name, balloons, joints, listed, solid.lock)


def globe_edges() -> tuple[int, list[tuple[int, int, bool]]]:
    """How many joints a globe has, and its struts: two joints, and whether it is a long one.

    The long struts join the middles of two edges of a face, the short ones a corner and the
    middle of an edge: 0.618 and 0.546 of the radius (two-frequency geodesic sphere).
    """
    corners, edges = corners_and_edges("icosahedron")
    middle = {edge: len(corners) + i for i, edge in enumerate(edges)}
    struts = [(end, middle[edge], False) for edge in edges for end in edge]
    for a, b, c in combinations(range(len(corners)), 3):
        sides = [(a, b), (b, c), (a, c)]
        if all(side in middle for side in sides):
            struts += [(middle[one], middle[two], True) for one, two in combinations(sides, 2)]
    return len(corners) + len(edges), struts


def build_globe(name: str, balloons: Mapping[str, BalloonType], globe: Globe) -> Framework:
    """Build the framework of a globe."""
    count, struts = globe_edges()
    joints = numbered(count)
    listed = [(joints[i], joints[j], globe.long if long else globe.short) for i, j, long in struts]
    return build_listed(name, balloons, joints, listed, globe.lock)
