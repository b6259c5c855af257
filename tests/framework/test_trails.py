"""The fewest trails, and the fewest balloons without a partner."""

from __future__ import annotations

import os
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from itertools import pairwise, product

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from buildplan.framework.trails import Trail, fewest_trails, levels_from, trails_by_level

EdgeEnd = tuple[str, str]  # edge key, joint


@st.composite
def graphs(draw: st.DrawFn, joints: int = 12, edges: int = 40) -> nx.MultiGraph:
    """Multigraphs without loops, connected or not."""
    count = draw(st.integers(2, joints))
    pairs = st.tuples(st.integers(0, count - 1), st.integers(0, count - 1))
    ties = draw(st.lists(pairs.filter(lambda t: t[0] != t[1]), min_size=1, max_size=edges))
    graph = nx.MultiGraph()
    graph.add_nodes_from(f"v{i}" for i in range(count))
    for number, (one, other) in enumerate(ties):
        graph.add_edge(f"v{one}", f"v{other}", key=f"e{number}")
    return graph


def connected_parts(graph: nx.MultiGraph) -> list[nx.MultiGraph]:
    parts = (graph.subgraph(nodes) for nodes in nx.connected_components(graph))
    return [part for part in parts if part.number_of_edges()]


def trails_in(part: nx.MultiGraph, trails: list[Trail]) -> list[Trail]:
    return [trail for trail in trails if trail[0][0] in part]


@given(graphs())
def test_every_edge_is_walked_once_along_the_way(graph: nx.MultiGraph) -> None:
    trails = fewest_trails(graph)
    walked = Counter(key for trail in trails for _, _, key in trail)
    assert walked == Counter(key for _, _, key in graph.edges(keys=True))
    for trail in trails:
        assert all(graph.has_edge(*step) for step in trail)
        assert all(before[1] == after[0] for before, after in pairwise(trail))


@given(graphs())
def test_no_fewer_trails_can_cover_a_connected_part(graph: nx.MultiGraph) -> None:
    """Half the number of odd joints, one where there is none: Euler 1736."""
    trails = fewest_trails(graph)
    for part in connected_parts(graph):
        odd = sum(degree % 2 for _, degree in part.degree())
        assert len(trails_in(part, trails)) == max(1, odd // 2)


@given(graphs())
def test_one_balloon_at_most_is_left_without_a_partner(graph: nx.MultiGraph) -> None:
    """The lengths add up to the number of edges, so no fewer than its parity can be odd."""
    trails = fewest_trails(graph)
    for part in connected_parts(graph):
        odd = sum(len(trail) % 2 for trail in trails_in(part, trails))
        assert odd == part.number_of_edges() % 2


@given(graphs())
def test_trails_by_level_stay_in_their_level_or_between_two(graph: nx.MultiGraph) -> None:
    """Every balloon once, along the way, from the bottom up."""
    for part in connected_parts(graph):
        levels = levels_from(part, list(part)[:1])
        trails = trails_by_level(nx.MultiGraph(part), levels)
        walked = Counter(key for trail in trails for _, _, key in trail)
        assert walked == Counter(key for _, _, key in part.edges(keys=True))
        spans: list[tuple[int, ...]] = []
        for trail in trails:
            assert all(part.has_edge(*step) for step in trail)
            assert all(before[1] == after[0] for before, after in pairwise(trail))
            pairs = {tuple(sorted((levels[u], levels[v]))) for u, v, _ in trail}
            assert len(pairs) == 1
            spans += pairs
        assert spans == sorted(spans)


def test_no_level_without_a_way_to_it() -> None:
    graph = nx.MultiGraph([("a", "b"), ("c", "d")])
    with pytest.raises(ValueError, match="foot to joint 'c'"):
        levels_from(graph, ["a"])


def pairings(ends: list[EdgeEnd]) -> Iterator[list[tuple[EdgeEnd, EdgeEnd]]]:
    """Every way of joining edge ends at a joint two by two, one left over if they are odd."""
    if len(ends) < 2:
        yield []
        return
    first, *rest = ends
    if len(ends) % 2:
        yield from pairings(rest)
    for i, other in enumerate(rest):
        for more in pairings(rest[:i] + rest[i + 1 :]):
            yield [(first, other), *more]


def fewest_odd_by_brute_force(part: nx.MultiGraph, count: int) -> int:
    """Least number of odd trails among all ways of covering `part` by `count` trails."""
    at: dict[str, list[EdgeEnd]] = {joint: [] for joint in part}
    for one, other, key in part.edges(keys=True):
        at[one].append((key, one))
        at[other].append((key, other))
    best: int = part.number_of_edges()
    for choice in product(*(list(pairings(ends)) for ends in at.values())):
        joined = nx.Graph()
        joined.add_nodes_from(key for _, _, key in part.edges(keys=True))
        joined.add_edges_from((a[0], b[0]) for pairs in choice for a, b in pairs)
        trails = list(nx.connected_components(joined))
        if len(trails) == count:
            best = min(best, sum(len(trail) % 2 for trail in trails))
    return best


@settings(max_examples=60)
@given(graphs(joints=6, edges=7))
def test_brute_force_finds_nothing_better(graph: nx.MultiGraph) -> None:
    trails = fewest_trails(graph)
    for part in connected_parts(graph):
        mine = trails_in(part, trails)
        least = fewest_odd_by_brute_force(part, len(mine))
        assert sum(len(trail) % 2 for trail in mine) == least


@pytest.mark.parametrize(
    "graph",
    [nx.octahedral_graph(), nx.complete_graph(5), nx.complete_graph(7), nx.cycle_graph(6)],
)
def test_a_closed_trail_where_networkx_finds_an_eulerian_circuit(graph: nx.Graph) -> None:
    assert nx.is_eulerian(graph)
    multigraph = nx.MultiGraph()
    multigraph.add_edges_from((f"v{a}", f"v{b}", f"{a}-{b}") for a, b in graph.edges())
    (trail,) = fewest_trails(multigraph)
    assert trail[0][0] == trail[-1][1]
    assert len(trail) == graph.number_of_edges()


def test_two_odd_trails_with_an_even_one_between_are_paired_up() -> None:
    """A comb whose first and last teeth are odd: the odd balloon is handed on."""
    graph = nx.MultiGraph()
    ties = ["ab", "bc", "bd", "de", "df", "fg", "fh", "hi", "hj", "jk", "jl"]
    for number, tie in enumerate(ties):
        graph.add_edge(tie[0], tie[1], key=f"e{number}")
    lengths = sorted(len(trail) for trail in fewest_trails(graph))
    assert sum(length % 2 for length in lengths) == len(ties) % 2


def test_trails_do_not_hang_on_the_order_of_a_set() -> None:
    """The order of a set of strings is another one in every process."""
    asked = (
        "import networkx as nx; from buildplan.framework.trails import fewest_trails;"
        "solid = nx.relabel_nodes(nx.octahedral_graph(), str);"
        "print(fewest_trails(nx.MultiGraph((u, v, f'{u}-{v}') for u, v in solid.edges)))"
    )
    told = {
        subprocess.run(
            [sys.executable, "-c", asked],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            check=True,
        ).stdout
        for seed in "012"
    }
    assert len(told) == 1
