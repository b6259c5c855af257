"""Starts for a piece that is only a graph: places for its joints from how far apart they are.

Joints k links apart are asked to lie the length of those links apart (Kruskal's stress, brought
down by majorisation, de Leeuw 1977; Gansner, Koren and North 2004), which opens a piece as wide
as it goes.
"""

from __future__ import annotations

import numpy as np
from scipy import sparse
from scipy.sparse.csgraph import connected_components, dijkstra
from scipy.spatial.distance import pdist, squareform

from buildplan.shape.bodies import LinkBodies
from buildplan.shape.model import FloatArray

FLATTENED = np.array([1.0, 1.0, 0.0])
PIVOTS = 60  # joints from which distances are taken in a large piece
MANY = 500  # joints beyond which all distances between them would take too long


def path_lengths_m(bodies: LinkBodies) -> FloatArray:
    """Least length of links between every two joints, (joints, joints); inf between parts."""
    graph = _graph(bodies, bodies.length_m)
    return np.asarray(dijkstra(graph, directed=False))


def _graph(bodies: LinkBodies, weight: FloatArray) -> sparse.csr_array:
    i, j = bodies.ends.T.astype(np.int32)  # the numbers that every scipy takes here
    shape = (bodies.joints, bodies.joints)
    return sparse.csr_array((weight, (i, j)), shape=shape)


def _from_pivots(bodies: LinkBodies) -> FloatArray:
    """Classical scaling from the distances to a few joints only (Brandes and Pich 2006).

    Pivots are taken one after another, each the joint farthest from those before.
    """
    graph = _graph(bodies, bodies.length_m)
    columns: list[FloatArray] = []
    pivot, nearest = 0, np.full(bodies.joints, np.inf)
    for _ in range(min(PIVOTS, bodies.joints)):
        columns.append(np.asarray(dijkstra(graph, directed=False, indices=pivot)))
        nearest = np.minimum(nearest, columns[-1])
        pivot = int(nearest.argmax())
    squared = np.column_stack(columns) ** 2
    centred = squared - squared.mean(axis=0) - squared.mean(axis=1)[:, None] + squared.mean()
    _, axes = np.linalg.eigh(centred.T @ centred)
    places = centred @ axes[:, ::-1][:, :3]
    drawn = np.linalg.norm(places[bodies.ends[:, 0]] - places[bodies.ends[:, 1]], axis=1)
    # linked joints that are as far as one another from every pivot: no force would part them
    one = np.unique(bodies.ends[drawn < 1e-9 * drawn.mean(), 1])
    places[one] += 1e-3 * drawn.mean() * np.random.default_rng(1).standard_normal((len(one), 3))
    return np.asarray(places * float(bodies.length_m.mean() / max(drawn.mean(), 1e-12)))


def _classical(distance: FloatArray) -> FloatArray:
    """Classical scaling of a distance matrix to three dimensions (Torgerson 1952)."""
    squared = distance**2
    centred = squared - squared.mean(axis=0) - squared.mean(axis=1)[:, None] + squared.mean()
    values, vectors = np.linalg.eigh(-0.5 * centred)
    places = np.zeros((len(distance), 3))
    kept = min(3, len(distance))
    places[:, :kept] = (vectors * np.sqrt(np.maximum(values, 0)))[:, ::-1][:, :kept]
    return places


def _majorised(places: FloatArray, distance: FloatArray, rounds: int = 60) -> FloatArray:
    """Bring the stress of `places` down (SMACOF, weights 1 / distance^2)."""
    weight = np.where(distance > 0, 1 / np.maximum(distance, 1e-12) ** 2, 0.0)
    across = np.diag(weight.sum(axis=1)) - weight
    # across has the constant vector as its only null vector: its pseudo-inverse by a rank-one shift
    inverse = np.linalg.inv(across + 1.0 / len(places)) - 1.0 / len(places)
    for _ in range(rounds):
        apart = squareform(pdist(places))
        ratio = weight * distance / np.maximum(apart, 1e-9)
        np.fill_diagonal(ratio, 0.0)
        moved = inverse @ ((np.diag(ratio.sum(axis=1)) - ratio) @ places)
        done = np.abs(moved - places).max() < 1e-4 * distance.max()
        places = moved
        if done:
            break
    return places


def is_flat(positions_m: FloatArray) -> bool:
    """Whether all joints lie in the plane z = 0."""
    return bool(np.ptp(positions_m[:, 2]) < 1e-9)


def spread_starts(bodies: LinkBodies, count: int, chance: np.random.Generator) -> list[FloatArray]:
    """`count` starts (joints, 3) of a bare graph, the first without chance."""
    parts, _ = connected_components(_graph(bodies, bodies.length_m), directed=False)
    if bodies.joints > MANY and parts == 1:
        return [_from_pivots(bodies)]
    distance = _all_distances_m(bodies)
    far = float(distance.max())
    shaken = 1e-3 * float(bodies.length_m.mean())
    laid = _classical(distance) + shaken * chance.standard_normal((bodies.joints, 3))
    first = _majorised(laid, distance)
    others = (0.5 * far * chance.standard_normal((bodies.joints, 3)) for _ in range(count - 1))
    return [first, *(_majorised(start, distance) for start in others)]


def can_lie_flat(bodies: LinkBodies) -> bool:
    """Whether the graph can be drawn in a plane without two links that cross: those of a piece that
    lies flat would lie in one another where they do. A test of planarity, which takes no longer
    than the graph is large (Brandes 2009)."""
    import networkx as nx  # takes as long to import as most shapes to find

    graph = nx.Graph(map(tuple, bodies.ends.tolist()))
    return bool(nx.check_planarity(graph)[0])


def flat_start(bodies: LinkBodies) -> FloatArray:
    """A start (joints, 3) in the plane z = 0."""
    parts, _ = connected_components(_graph(bodies, bodies.length_m), directed=False)
    if bodies.joints > MANY and parts == 1:
        return np.asarray(_from_pivots(bodies) * FLATTENED)
    distance = _all_distances_m(bodies)
    return _majorised(_classical(distance) * FLATTENED, distance)


def _all_distances_m(bodies: LinkBodies) -> FloatArray:
    """Least lengths of links between joints; parts that nothing joins are put well apart."""
    distance = path_lengths_m(bodies)
    far = float(distance[np.isfinite(distance)].max())
    return np.where(np.isfinite(distance), distance, 1.5 * far)
