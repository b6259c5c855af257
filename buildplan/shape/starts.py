"""Starts for a piece that is only a graph: places for its joints from how far apart they are.

Joints k links apart are asked to lie the length of those links apart (Kruskal's stress, brought
down by majorisation, de Leeuw 1977; Gansner, Koren and North 2004), which opens a piece as wide
as it goes.
"""

from __future__ import annotations

import numpy as np
from scipy import sparse
from scipy.sparse.csgraph import connected_components, dijkstra
from scipy.spatial.distance import cdist, pdist, squareform

from buildplan.shape.bodies import LinkBodies
from buildplan.shape.model import FloatArray, IntArray

FLATTENED = np.array([1.0, 1.0, 0.0])
IN_SPACE = np.ones(3)
PIVOTS = 60  # joints from which distances are taken in a large piece
ROUNDS = 30  # of a large piece's majorisation: more bring it no nearer to rest (measured)
SHORTEST_M = 1e-12
MANY = 500  # joints beyond which all distances between them would take too long


def path_lengths_m(bodies: LinkBodies) -> FloatArray:
    """Least length of links between every two joints, (joints, joints); inf between parts."""
    graph = _graph(bodies, bodies.length_m)
    return np.asarray(dijkstra(graph, directed=False))


def _graph(bodies: LinkBodies, weight: FloatArray) -> sparse.csr_array:
    i, j = bodies.ends.T.astype(np.int32)  # the numbers that every scipy takes here
    shape = (bodies.joints, bodies.joints)
    return sparse.csr_array((weight, (i, j)), shape=shape)


def _from_pivots(bodies: LinkBodies, axes: FloatArray) -> FloatArray:
    """Classical scaling from the distances to a few joints only (Brandes and Pich 2006), along
    those of three axes that are 1 and not 0, then brought nearer to these distances."""
    pivots, distance = _pivots(bodies)
    squared = distance**2
    centred = squared - squared.mean(axis=0) - squared.mean(axis=1)[:, None] + squared.mean()
    _, wide = np.linalg.eigh(centred.T @ centred)
    places = centred @ wide[:, ::-1][:, :3]
    drawn = np.linalg.norm(places[bodies.ends[:, 0]] - places[bodies.ends[:, 1]], axis=1)
    # linked joints that are as far as one another from every pivot: no force would part them
    one = np.unique(bodies.ends[drawn < 1e-9 * drawn.mean(), 1])
    places[one] += 1e-3 * drawn.mean() * np.random.default_rng(1).standard_normal((len(one), 3))
    places *= axes * float(bodies.length_m.mean() / max(drawn.mean(), 1e-12))
    return _majorised_from_pivots(bodies, places, pivots, distance)


def _pivots(bodies: LinkBodies) -> tuple[IntArray, FloatArray]:
    """A few joints, one after another, each the farthest from those before, and the least length
    of links from every joint to each of them, (joints, pivots)."""
    graph = _graph(bodies, bodies.length_m)
    pivots, columns = list[int](), list[FloatArray]()
    pivot, nearest = 0, np.full(bodies.joints, np.inf)
    for _ in range(min(PIVOTS, bodies.joints)):
        pivots.append(pivot)
        columns.append(np.asarray(dijkstra(graph, directed=False, indices=pivot)))
        nearest = np.minimum(nearest, columns[-1])
        pivot = int(nearest.argmax())
    return np.array(pivots), np.column_stack(columns)


def _majorised_from_pivots(
    bodies: LinkBodies, places: FloatArray, pivots: IntArray, distance: FloatArray
) -> FloatArray:
    """Bring down the stress of links, and of all joints with the pivots alone.

    Weights are 1 / distance^2; a pivot's is that of as many joints as lie about it, half as far
    from it at most and nearer to it than to any other (the sparse stress model of Ortmann,
    Klimenta and Brandes, Journal of Graph Algorithms and Applications 21, 2017, 791-821; from
    memory). Each round moves every joint to where the others together ask it to be.
    """
    own = distance.argmin(axis=1)
    stands_for = np.column_stack(
        [
            np.searchsorted(np.sort(distance[own == one, one]), distance[:, one] / 2, side="right")
            for one in range(len(pivots))
        ]
    )
    weight = np.where(distance > 0, stands_for / np.maximum(distance, SHORTEST_M) ** 2, 0.0)
    pulled = weight * distance
    link_weight = 1 / bodies.length_m**2
    beside = _graph(bodies, link_weight)
    beside = sparse.csr_array(beside + beside.T)
    i, j = bodies.ends.T
    links = np.arange(len(i))
    at_ends = sparse.csr_array(
        (
            np.concatenate([link_weight, -link_weight]) * np.tile(bodies.length_m, 2),
            (np.concatenate([i, j]), np.concatenate([links, links])),
        ),
        shape=(bodies.joints, len(links)),
    )
    asked = (weight.sum(axis=1) + beside.sum(axis=1))[:, None]
    for _ in range(ROUNDS):
        along = places[i] - places[j]
        along /= np.maximum(np.linalg.norm(along, axis=1), SHORTEST_M)[:, None]
        ratio = pulled / np.maximum(cdist(places, places[pivots]), SHORTEST_M)
        target = beside @ places + at_ends @ along + (weight - ratio) @ places[pivots]
        places = (target + ratio.sum(axis=1)[:, None] * places) / asked
    return np.asarray(places)


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
        return [_from_pivots(bodies, IN_SPACE)]
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
        return _from_pivots(bodies, FLATTENED)
    distance = _all_distances_m(bodies)
    return _majorised(_classical(distance) * FLATTENED, distance)


def _all_distances_m(bodies: LinkBodies) -> FloatArray:
    """Least lengths of links between joints; parts that nothing joins are put well apart."""
    distance = path_lengths_m(bodies)
    far = float(distance[np.isfinite(distance)].max())
    return np.where(np.isfinite(distance), distance, 1.5 * far)
