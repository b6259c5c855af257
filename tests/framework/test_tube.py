"""The tube's graph against counts that do not come from it."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise

import networkx as nx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from buildplan.framework.balloon_kinds import LINK
from buildplan.framework.cells import cell_kind
from buildplan.framework.counts import balloon_counts, multigraph, ring_lengths
from buildplan.framework.ends import End
from buildplan.framework.model import BalloonType, Framework, Role
from buildplan.framework.tube import TubePlan, build_tube

CELLS = {"straight": (1, 1), "fan": (1, 0), "fan_in": (0, 1), "tip": (2, 0), "dip": (0, 2)}


def balloon(key: str) -> BalloonType:
    return BalloonType(key, LINK, 0.3048, 0.2032, 0.23, False, "#000000", key)


def tube(course: list[str], *, chains: int = 4, closed: bool = True) -> Framework:
    keys = {key: balloon(key) for key in ("long", "cross", "lock")}
    plan = TubePlan(
        closed=closed,
        long={letter: ["long"] for letter in "ABCD"[:chains]},
        brace="cross",
        single="cross",
        lock="lock",
        course=[cell_kind(*CELLS[name]) for name in course],
    )
    return build_tube("a piece", keys, plan)


STAR = (["straight"] * 3 + ["tip"] + ["straight"] * 3 + ["dip"]) * 5

courses = st.lists(st.sampled_from(sorted(CELLS)), min_size=0, max_size=12).map(
    # enough straights that each ring has three balloons at least
    lambda cells: [*cells, "straight", "straight", "straight"]
)


def test_five_pointed_star_by_hand() -> None:
    """40 balloons a ring; 40 braces of which 10 share a balloon; 10 singles; 160 joints."""
    star = tube(STAR)
    assert ring_lengths(star) == [40, 40, 40, 40]
    assert len(star.braces) == 40
    assert sum(len(brace.links) for brace in star.braces) == 40 * 4 - 10
    assert len(star.singles) == 10
    assert balloon_counts(star) == {"long": 160, "cross": 160, "lock": 320}


def test_only_a_chain_that_comes_round_is_a_ring() -> None:
    """A ring is a cycle of the graph: as many balloons as joints, two at each (networkx)."""
    for closed in (True, False):
        piece = tube(["straight"] * 6, closed=closed)
        rings = []
        for long in piece.chains:
            along = multigraph(piece).edge_subgraph(
                edge
                for edge in multigraph(piece).edges(keys=True)
                if edge[2] in set(long.chain.links)
            )
            if nx.is_connected(along) and {degree for _, degree in along.degree()} == {2}:
                rings.append(along.number_of_edges())
        assert rings == ring_lengths(piece) == ([6] * 4 if closed else [])


def test_brace_of_four_closes_round_and_shared_brace_takes_three() -> None:
    """Common practice, no source."""
    star = tube(STAR)
    assert star.braces[0].chains[0].closed
    assert len(star.braces[0].links) == 4
    assert star.braces[0].section == ("A1", "B1", "C1", "D1")
    after_tip = star.braces[4]
    assert after_tip.shared == ("B4-C4",)
    assert len(after_tip.links) == 3
    assert after_tip.chains[0].joints == ("C4", "D6", "A6", "B4")


def test_fan_shares_the_inner_balloon_and_fan_in_the_outer() -> None:
    piece = tube(["straight", "fan", "straight", "fan_in", "straight"], closed=False)
    by_name = {cell.name: cell for cell in piece.cells}
    fan = piece.braces[by_name["fan"].second - 1]
    fan_in = piece.braces[by_name["fan_in"].second - 1]
    assert fan.shared == ("B2-C2",)
    assert fan_in.shared == ("D4-A4",)


@pytest.mark.parametrize("cell", ["tip", "dip"])
def test_skipped_joints_get_a_single_with_a_lock_at_each_end(cell: str) -> None:
    piece = tube(["straight", cell, "straight"], closed=False)
    skipped = next(c.skipped for c in piece.cells if c.name == cell)
    assert len(skipped) == 2
    single = piece.link[piece.singles[0]]
    assert {single.start, single.finish} == set(skipped)
    assert set(skipped) <= set(piece.lock_at)


@given(courses, st.sampled_from([2, 3, 4]), st.booleans())
def test_every_tube_is_sound(course: list[str], chains: int, closed: bool) -> None:
    piece = tube(course, chains=chains, closed=closed)
    graph = multigraph(piece)
    # handshake lemma (Euler 1736)
    assert sum(degree for _, degree in graph.degree()) == 2 * graph.number_of_edges()
    assert nx.is_connected(graph)
    assert not any(link.start == link.finish for link in piece.links)
    assert len({link.id for link in piece.links}) == len(piece.links)
    # each section is linked all round, by this brace or an earlier one
    for brace in piece.braces:
        links = [piece.link[i] for i in (*brace.links, *brace.shared)]
        sides = {frozenset((link.start, link.finish)) for link in links}
        ring = [*brace.section, brace.section[0]] if chains > 2 else list(brace.section)
        assert sides == {frozenset(side) for side in pairwise(ring)}


@given(courses, st.booleans())
def test_each_joint_of_four_long_chains_has_exactly_one_lock(
    course: list[str], closed: bool
) -> None:
    """Common practice, no source."""
    piece = tube(course, closed=closed)
    assert Counter(lock.joint for lock in piece.locks) == Counter(piece.joints)


@given(courses, st.sampled_from([2, 3, 4]), st.booleans())
def test_necks_and_tails_alternate_along_every_chain(
    course: list[str], chains: int, closed: bool
) -> None:
    piece = tube(course, chains=chains, closed=closed)
    strands = [long.chain for long in piece.chains]
    strands += [chain for brace in piece.braces for chain in brace.chains]
    for strand in strands:
        for first, second in strand.pairs:
            knot = set(_ends(piece, first)) & set(_ends(piece, second))
            assert any(
                piece.link[first].end_at(j) is piece.link[second].end_at(j) is End.NECK
                for j in knot
            )
        assert (strand.odd is None) == (len(strand.links) % 2 == 0)


def _ends(piece: Framework, link_id: str) -> tuple[str, str]:
    return piece.link[link_id].start, piece.link[link_id].finish


def test_even_ring_takes_half_as_many_pairs_as_links() -> None:
    """Common practice, no source."""
    star = tube(STAR)
    for long in star.chains:
        assert len(long.chain.pairs) == len(long.chain.links) // 2


@given(courses)
def test_surface_of_a_closed_tube_obeys_euler(course: list[str]) -> None:
    """Euler's formula: a torus has V - E + F = 0.

    Faces: between two neighbouring braces one face on each of the four sides of the tube,
    less the sides that have shrunk to a shared balloon.
    """
    piece = tube(course)
    vertices, edges, faces = len(piece.joints), 0, 0
    edges = sum(link.role is not Role.SINGLE for link in piece.links)
    for cell in piece.cells:
        # front and back each have a face; outer and inner only where their chains advance
        faces += 2 + (cell.outer > 0) + (cell.inner > 0)
    assert vertices - edges + faces == 0
