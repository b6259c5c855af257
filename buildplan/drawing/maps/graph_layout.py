"""Where the joints of a piece that is listed joint by joint lie on its map.

A piece whose graph is planar and well connected is laid out by Tutte's method ("How to draw a
graph", 1963): its longest face is the frame, every other joint lies at the mean of its
neighbours, and no two lines cross. Others are laid out with line lengths near the graph
distances (Kamada and Kawai 1989).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache

import networkx as nx
import numpy as np

from buildplan.drawing.marks import Point
from buildplan.framework.model import Framework

Layout = dict[str, Point]
Ties = tuple[tuple[str, str], ...]
CLEAR = 6.0  # bare paper between two discs


def layouts(framework: Framework) -> Iterator[Layout]:
    """Ways to lay the graph out, the best to read first; a map is tried in several sizes, and each
    way is worked out once."""
    ties = tuple((link.start, link.finish) for link in framework.links)
    for way in (_flat, _by_distance, _by_springs):
        layout = way(framework.joints, ties)
        if layout is not None:
            yield layout


def _graph(joints: tuple[str, ...], ties: Ties) -> nx.Graph:
    graph = nx.Graph()
    graph.add_nodes_from(joints)
    graph.add_edges_from(ties)
    return graph


@lru_cache(maxsize=8)
def _flat(joints: tuple[str, ...], ties: Ties) -> Layout | None:
    graph = _graph(joints, ties)
    planar, embedding = nx.check_planarity(graph)
    if planar and len(graph) > 3 and nx.is_connected(graph):
        return _tutte(graph, embedding)
    return None


@lru_cache(maxsize=8)
def _by_distance(joints: tuple[str, ...], ties: Ties) -> Layout | None:
    graph = _graph(joints, ties)
    if not nx.is_connected(graph):
        return None
    return _points(nx.kamada_kawai_layout(graph, pos=nx.circular_layout(graph)))


@lru_cache(maxsize=8)
def _by_springs(joints: tuple[str, ...], ties: Ties) -> Layout:
    return _points(nx.spring_layout(_graph(joints, ties), seed=1, iterations=200))


def has_room(joints: int, room: tuple[float, float], radius: float) -> bool:
    """Whether so many discs clear of one another have room at all: of equal circles none lie denser
    than hexagons do (Fejes Toth 1940), and half a disc may stand out at each side."""
    apart = 2 * radius + CLEAR
    return joints * apart**2 * math.sqrt(3) / 2 <= (room[0] + apart) * (room[1] + apart)


def _points(layout: dict[str, np.ndarray]) -> Layout:
    return {joint: (float(p[0]), float(p[1])) for joint, p in layout.items()}


def _faces(embedding: nx.PlanarEmbedding) -> list[list[str]]:
    marked: set[tuple[str, str]] = set()
    return [
        embedding.traverse_face(u, v, marked) for u, v in embedding.edges() if (u, v) not in marked
    ]


def _tutte(graph: nx.Graph, embedding: nx.PlanarEmbedding) -> Layout:
    """Joints at the mean of their neighbours inside the longest face."""
    frame = max(_faces(embedding), key=lambda face: (len(set(face)) == len(face), len(face)))
    joints = list(graph)
    index = {joint: i for i, joint in enumerate(joints)}
    system, right = np.zeros((len(joints), len(joints))), np.zeros((len(joints), 2))
    turn = math.pi / 2 if len(frame) % 2 else math.pi / 2 - math.pi / len(frame)
    fixed = {joint: turn + 2 * math.pi * i / len(frame) for i, joint in enumerate(frame)}
    for joint in joints:
        i = index[joint]
        if joint in fixed:
            system[i, i] = 1
            right[i] = (math.cos(fixed[joint]), math.sin(fixed[joint]))
            continue
        system[i, i] = graph.degree(joint)
        for other in graph[joint]:
            system[i, index[other]] -= 1
    solved = np.linalg.solve(system, right)
    return {joint: (float(solved[i, 0]), float(solved[i, 1])) for joint, i in index.items()}


def fitted(layout: Layout, room: tuple[float, float]) -> Layout:
    """The layout scaled to fit (each way by itself up to a third more, to use the page)."""
    xs, ys = [p[0] for p in layout.values()], [p[1] for p in layout.values()]
    wide, tall = max(max(xs) - min(xs), 1e-9), max(max(ys) - min(ys), 1e-9)
    scale = min(room[0] / wide, room[1] / tall)
    sx, sy = min(room[0] / wide, scale * 4 / 3), min(room[1] / tall, scale * 4 / 3)
    left = (room[0] - wide * sx) / 2
    return {
        joint: (left + (x - min(xs)) * sx, (y - min(ys)) * sy) for joint, (x, y) in layout.items()
    }


def is_clear(framework: Framework, spots: Layout, radius: float) -> bool:
    """Whether discs stand clear of one another and of lines that do not end at them."""
    names = list(spots)
    at = np.array([spots[name] for name in names])
    apart = np.hypot(*(at[:, None] - at[None, :]).transpose(2, 0, 1))
    if np.any(apart[np.triu_indices(len(names), 1)] < 2 * radius + CLEAR):
        return False
    for link in framework.links:
        a, b = np.array(spots[link.start]), np.array(spots[link.finish])
        along = np.clip((at - a) @ (b - a) / ((b - a) @ (b - a)), 0, 1)
        near = np.hypot(*(at - (a + along[:, None] * (b - a))).T)
        ends = [names.index(link.start), names.index(link.finish)]
        if np.any(np.delete(near, ends) < radius + 1.5):
            return False
    return True
