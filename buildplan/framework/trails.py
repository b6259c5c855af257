"""The fewest trails that cover a graph, cut so that most balloons come from pairs.

A connected graph with 2k odd joints takes k trails and no fewer, one closed trail when k is
0 (Euler 1736; Hierholzer 1873). Which odd joints a trail runs between is free, and where two
trails meet their parts can be exchanged: of the two ways of doing so, one turns two trails of
odd length into two of even length. So no more than one trail of each connected part need be of
odd length, and hold a balloon without a partner.

One trail that runs all over a piece is the fewest to tie and the worst to build by: it lies loose
but for a few of its joints. What grows from a foot is therefore covered level by level.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

import networkx as nx

Trail = list[tuple[str, str, str]]
"""(joint, next joint, edge key) along the way; a closed trail ends where it starts."""


def fewest_trails(graph: nx.MultiGraph) -> list[Trail]:
    """The fewest trails that cover each edge of `graph` once, as few of odd length as can be.

    Deterministic for a given order of nodes and edges.
    """
    trails: list[Trail] = []
    for found in nx.connected_components(graph):
        nodes = [node for node in graph if node in found]  # a set's own order is no order
        part = nx.MultiGraph()
        part.add_nodes_from(nodes)
        part.add_edges_from(graph.edges(nodes, keys=True))
        if part.number_of_edges() == 0:
            continue
        odd = [node for node, degree in part.degree() if degree % 2]
        for i in range(0, len(odd), 2):
            part.add_edge(odd[i], odd[i + 1], key=("bridge", i))
        source = odd[0] if odd else next(iter(part))
        circuit = list(nx.eulerian_circuit(part, source=source, keys=True))
        trails += paired_up(_cut_at_bridges(circuit))
    return trails


def levels_from(graph: nx.MultiGraph, standing: Iterable[str]) -> dict[str, int]:
    """How many balloons each joint is from the nearest of `standing`.

    Raises ValueError when no way leads to a joint, or no joint is given to begin from.
    """
    found = nx.multi_source_dijkstra_path_length(graph, set(standing), weight=None)
    for joint in graph:
        if joint not in found:
            raise ValueError(f"no balloons lead from the foot to joint {joint!r}")
    return {joint: int(found[joint]) for joint in graph}


def trails_by_level(graph: nx.MultiGraph, levels: Mapping[str, int]) -> list[Trail]:
    """The trails of a piece that grows level by level, from the bottom up: those among the joints
    of a level, then those from it to the next. No balloon may pass a level by.

    Each such class of balloons is covered by the fewest trails, but that a balloon to a joint to
    which no other of its class goes is a trail of its own where what is left of the class closes:
    a zigzag as of a column and single balloons, in place of many open trails. Closed trails begin
    at their first joint in the order of `graph`, and go on towards the earlier of the joints of its
    level that come next.
    """
    number = {joint: i for i, joint in enumerate(graph)}
    classes: dict[tuple[int, int], list[tuple[str, str, str]]] = {}
    for u, v, key in graph.edges(keys=True):
        low, high = sorted((levels[u], levels[v]))
        classes.setdefault((low, high), []).append((u, v, key))
    trails: list[Trail] = []
    for _, edges in sorted(classes.items()):
        course = nx.MultiGraph()
        course.add_nodes_from(joint for joint in graph if any(joint in edge[:2] for edge in edges))
        course.add_edges_from(edges)
        single = _single_balloons(course)
        course.remove_edges_from(single)
        found = [_from_first(trail, number, levels) for trail in fewest_trails(course)]
        alone: list[Trail] = [[(u, v, key)] for u, v, key in single]
        for some in (found, alone):
            trails += sorted(some, key=lambda trail: min(number[joint] for joint in _joints(trail)))
    return trails


def _single_balloons(course: nx.MultiGraph) -> Trail:
    """Balloons to a joint with no other, if those that are left close; else none."""
    ends = {joint for joint, degree in course.degree() if degree == 1}
    left = course.copy()
    left.remove_nodes_from(ends)
    if not left.number_of_edges() or any(degree % 2 for _, degree in left.degree()):
        return []
    return [
        (u, v, str(key)) for u, v, key in course.edges(keys=True) if not ends.isdisjoint((u, v))
    ]


def _from_first(trail: Trail, number: Mapping[str, int], levels: Mapping[str, int]) -> Trail:
    if trail[0][0] != trail[-1][1]:
        turned = number[trail[-1][1]] < number[trail[0][0]] and len(trail) % 2 == 0
        return _reversed(trail) if turned else trail
    first = min(range(len(trail)), key=lambda i: number[trail[i][0]])
    begun = [*trail[first:], *trail[:first]]

    def next_of_level(way: Trail) -> int:
        return next(number[v] for _, v, _ in way if levels[v] == levels[way[0][0]])

    return min(begun, _reversed(begun), key=next_of_level)


def _cut_at_bridges(circuit: Sequence[tuple[str, str, object]]) -> list[Trail]:
    cuts = [i for i, (_, _, key) in enumerate(circuit) if isinstance(key, tuple)]
    if not cuts:
        return [[(u, v, str(key)) for u, v, key in circuit]]
    turned = [*circuit[cuts[0] + 1 :], *circuit[: cuts[0] + 1]]
    trails: list[Trail] = [[]]
    for u, v, key in turned:
        if isinstance(key, tuple):
            trails.append([])
        else:
            trails[-1].append((u, v, str(key)))
    return [trail for trail in trails if trail]


def paired_up(trails: Sequence[Trail]) -> list[Trail]:
    """Trails over the same edges and from the same ends, with at most one of odd length among
    those that hang together. `trails` are open, no two of them with an end in common."""
    made = list(trails)
    through: dict[str, dict[int, None]] = {}
    for i, trail in enumerate(made):
        for joint in _joints(trail):
            through.setdefault(joint, {})[i] = None

    def put(i: int, trail: Trail) -> None:
        for joint in _joints(made[i]):
            through[joint].pop(i, None)
        made[i] = trail
        for joint in _joints(trail):
            through[joint][i] = None

    for i in range(len(made)):
        if len(made[i]) % 2 == 0:
            continue
        # hand the odd balloon on from trail to trail until it meets another
        for (here, at), (there, leaves_at) in pairwise(_way_to_odd(made, through, i)):
            even, other = _exchanged(made[here], made[there], at, leaves_at)
            put(here, even)
            put(there, other)
    return made


def _joints(trail: Trail) -> Iterator[str]:
    yield trail[0][0]
    for _, joint, _ in trail:
        yield joint


def _way_to_odd(
    trails: Sequence[Trail], through: Mapping[str, Mapping[int, None]], start: int
) -> list[tuple[int, str]]:
    """Trails from `start` to the nearest other one of odd length, each with the joint at which
    it meets the next (empty for the last); nothing if there is no other."""
    came: dict[int, tuple[int, str]] = {start: (start, "")}
    queue = deque([start])
    while queue:
        here = queue.popleft()
        if here != start and len(trails[here]) % 2:
            way = [(here, "")]
            while here != start:
                here, at = came[here]
                way.append((here, at))
            return way[::-1]
        for joint in _joints(trails[here]):
            for there in through[joint]:
                if there not in came:
                    came[there] = (here, joint)
                    queue.append(there)
    return []


def _exchanged(one: Trail, other: Trail, at: str, leaves_at: str) -> tuple[Trail, Trail]:
    """Exchange parts of two trails at a joint that they share. `one` is of odd length; the
    first of the two results is of even length. So is the second if `other` was odd; else it
    is odd and runs through `leaves_at`."""
    i, j = (list(_joints(trail)).index(at) for trail in (one, other))
    straight = (one[:i] + other[j:], other[:j] + one[i:])
    turned = (one[:i] + _reversed(other[:j]), _reversed(one[i:]) + other[j:])
    for pair in (straight, turned):
        even, rest = sorted(pair, key=lambda trail: len(trail) % 2)
        if len(other) % 2:
            if len(rest) % 2 == 0:
                return even, rest
        elif leaves_at in _joints(rest):
            return even, rest
    raise AssertionError("one of the two ways always serves")


def _reversed(trail: Trail) -> Trail:
    return [(v, u, key) for u, v, key in reversed(trail)]
