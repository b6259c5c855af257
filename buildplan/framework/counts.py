"""Counts of a piece, always from its graph."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from buildplan.framework.model import Framework

if TYPE_CHECKING:
    import networkx as nx

BALLOONS_PER_LOCK = 2


def multigraph(framework: Framework) -> nx.MultiGraph:
    """The piece as a networkx multigraph.

    Nodes are joints; each edge is a link balloon, keyed by its id, with `balloon`, `role`,
    `neck` and `tail` (the joints at which those ends are tied). Joints that are tied together
    are one node, named by their tie.
    """
    import networkx as nx  # takes as long to import as a piece to count

    graph = nx.MultiGraph(name=framework.name)
    graph.add_nodes_from(framework.places)
    for link in framework.links:
        graph.add_edge(
            framework.place(link.start),
            framework.place(link.finish),
            key=link.id,
            balloon=link.balloon,
            role=link.role,
            neck=framework.place(link.neck),
            tail=framework.place(link.tail),
        )
    return graph


def balloon_counts(framework: Framework) -> dict[str, int]:
    """How many balloons of each key the piece takes, in the order of the file.

    A lock is two balloons. Keys that the piece does not use are counted as 0.
    """
    used = Counter(link.balloon for link in framework.links)
    for lock in framework.locks:
        used[lock.balloon] += BALLOONS_PER_LOCK
    return {key: used[key] for key in framework.balloons}


def ring_lengths(framework: Framework) -> list[int]:
    """Number of balloons in each closed long chain, by chain letter."""
    return [len(long.chain.links) for long in framework.chains if long.chain.closed]
