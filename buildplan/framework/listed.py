"""The piece that is listed joint by joint: its chains are worked out from the graph, as rings
and the fewest trails that cover every balloon, or those of each course."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import count
from typing import TYPE_CHECKING

from buildplan.framework.chain_roles import OPEN_CHAIN, RING, ZIGZAG, ChainRole
from buildplan.framework.ends import start_end
from buildplan.framework.locks import Lock
from buildplan.framework.model import BalloonType, Chain, Framework, Link, LongChain, Role
from buildplan.framework.naming import letters

if TYPE_CHECKING:
    from buildplan.framework.trails import Trail


def build_listed(
    name: str,
    balloons: Mapping[str, BalloonType],
    joints: Sequence[str],
    listed: Iterable[tuple[str, str, str]],
    lock: str | None,
    standing: Sequence[str] = (),
) -> Framework:
    """Build a framework from `listed` (joint, joint, balloon key) triples.

    Joints keep their given names. With `lock`, a lock goes on every joint where more than
    one knot is brought together, that is where more than two balloon ends meet. A piece that is
    `standing` on some of its joints has its chains course by course, named from the bottom up.

    Raises ValueError when no balloons lead from the joints it stands on to some other.
    """
    import networkx as nx  # takes long to import, and few patterns are listed

    from buildplan.framework.trails import fewest_trails, levels_from, trails_by_level

    graph = nx.MultiGraph()
    graph.add_nodes_from(joints)
    key_of: dict[str, str] = {}
    for u, v, balloon in listed:
        link_id, copy = f"{u}-{v}", 2
        while link_id in key_of:
            link_id, copy = f"{u}-{v}#{copy}", copy + 1
        key_of[link_id] = balloon
        graph.add_edge(u, v, key=link_id)

    levels = levels_from(graph, standing) if standing else {}
    trails = trails_by_level(graph, levels) if standing else fewest_trails(graph)
    sorts = {joint.rstrip("0123456789") for joint in joints} if standing else set()
    names = (name for name in map(letters, count()) if name not in sorts)
    links, chains = [], []
    for trail in trails:
        closed = trail[0][0] == trail[-1][1]
        for i, (u, v, link_id) in enumerate(trail):
            end = start_end(i)
            links.append(Link(link_id, key_of[link_id], Role.CHAIN, u, v, end))
        walked = tuple(u for u, _, _ in trail) + (() if closed else (trail[-1][1],))
        chain = Chain(walked, tuple(link_id for _, _, link_id in trail), closed)
        chains.append(LongChain(next(names), _role(trail, levels), None, chain))
    locked = [joint for joint in joints if graph.degree(joint) > 2] if lock else []
    return Framework(
        name=name,
        balloons=dict(balloons),
        joints=tuple(joints),
        links=tuple(links),
        chains=tuple(chains),
        braces=(),
        cells=(),
        singles=(),
        locks=tuple(Lock(joint, str(lock)) for joint in locked),
        closed=all(chain.chain.closed for chain in chains),
        mirror={},
        foot=tuple(standing),
    )


def _role(trail: Trail, levels: Mapping[str, int]) -> ChainRole:
    if trail[0][0] != trail[-1][1]:
        return OPEN_CHAIN
    return ZIGZAG if len({levels.get(u) for u, _, _ in trail}) > 1 else RING
