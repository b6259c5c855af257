"""Operations: facts of the trade, and what each act handles."""

from collections import Counter

import networkx as nx
import pytest
from hypothesis import given, settings
from sequence_pieces import STAR, listed, listed_pieces, tube, tubes

from buildplan.framework.counts import balloon_counts
from buildplan.framework.ends import End
from buildplan.framework.model import Framework
from buildplan.sequence import work_names as names
from buildplan.sequence.model import Kind, Operation
from buildplan.sequence.operations import operations
from buildplan.sequence.ordering import in_order


def of_kind(framework: Framework, kind: Kind) -> list[Operation]:
    return [op for op in operations(framework) if op.kind is kind]


@pytest.mark.parametrize("count", [4, 6, 40])
def test_an_even_ring_of_n_takes_half_as_many_pairs(count: int) -> None:
    """Common practice, no source: pairs are tied first, so an even ring takes n / 2."""
    framework = tube(["straight"] * count, 2, closed=True)
    ring = framework.chains[0].chain
    pairs = [op for op in of_kind(framework, Kind.PAIR) if set(op.links) & set(ring.links)]
    assert len(pairs) == count // 2


def test_a_brace_of_four_closes_round_four_chains_and_takes_four_locks() -> None:
    """Common practice, no source."""
    framework = tube(["straight"] * 5, closed=True)
    ordered = in_order(operations(framework))
    heads = [i for i, op in enumerate(ordered) if op.kind is Kind.BRACE]
    for start in heads:
        brace = ordered[start]
        assert len(brace.links) == 4
        assert {joint[0] for joint in brace.joints} == set("ABCD")
        settling, *locks = ordered[start + 1 : start + 6]
        assert settling.kind is Kind.SETTLE
        assert [op.kind for op in locks] == [Kind.LOCK] * 4
        assert {op.joints[0] for op in locks} == set(brace.joints)


def test_a_brace_that_shares_a_balloon_is_a_chain_of_three() -> None:
    """Common practice, no source."""
    framework = tube(["straight", "fan", "straight"])
    third = next(op for op in operations(framework) if op.id == "brace 3")
    assert len(third.links) == 3
    assert {knot.joint for knot in third.knots} == {"B2", "C2"}
    assert all(len(knot.ends) == 1 for knot in third.knots)


@settings(max_examples=80)
@given(tubes())
def test_every_joint_that_is_held_takes_exactly_one_lock(framework: Framework) -> None:
    """Common practice, no source: one lock at each joint where a brace or single comes."""
    locks = Counter(op.joints[0] for op in of_kind(framework, Kind.LOCK))
    assert set(locks) == {lock.joint for lock in framework.locks}
    assert set(locks.values()) <= {1}
    if len(framework.chains) == 4:
        assert set(locks) == set(framework.joints)


@settings(max_examples=80)
@given(tubes())
def test_each_brace_is_locked_before_the_next_but_where_they_meet(framework: Framework) -> None:
    place = {op.id: i for i, op in enumerate(in_order(operations(framework)))}
    braces = framework.braces
    reached = [{j for chain in brace.chains for j in chain.joints} for brace in braces]
    for i in range(len(braces) - 1):
        for joint in reached[i].difference(*reached[i + 1 :]):
            assert place[names.lock(joint)] < place[names.brace(i + 2)]


@settings(max_examples=80)
@given(tubes())
def test_a_lock_comes_after_every_brace_that_is_tied_in_there(framework: Framework) -> None:
    """The one that closes a ring too: nothing is tied in beside a lock that is set already."""
    place = {op.id: i for i, op in enumerate(in_order(operations(framework)))}
    for brace in framework.braces:
        for joint in {joint for chain in brace.chains for joint in chain.joints}:
            assert place[names.brace(brace.number)] < place[names.lock(joint)]


@settings(max_examples=80)
@given(tubes())
def test_a_single_comes_once_both_braces_of_its_cell_are_tied(framework: Framework) -> None:
    place = {op.id: i for i, op in enumerate(in_order(operations(framework)))}
    for cell in framework.cells:
        for link in (framework.link[s] for s in framework.singles):
            if link.start in cell.skipped:
                assert place[names.single(link.id)] > place[names.brace(cell.first)]
                assert place[names.single(link.id)] > place[names.brace(cell.second)]
                assert place[names.lock(link.start)] > place[names.single(link.id)]
                assert place[names.lock(link.finish)] > place[names.single(link.id)]


@settings(max_examples=60)
@given(tubes())
def test_what_operations_bring_is_the_whole_piece(framework: Framework) -> None:
    brought: Counter[str] = Counter()
    for op in (op for op in operations(framework) if op.adds):
        brought.update(framework.link[link].balloon for link in op.links)
        brought.update({framework.lock_at[joint].balloon: 2 for joint in op.locks})
    assert {k: brought[k] for k in framework.balloons} == balloon_counts(framework)


@settings(max_examples=60)
@given(listed_pieces())
def test_every_end_of_a_listed_piece_is_tied_once_but_where_one_balloon_ends(
    framework: Framework,
) -> None:
    tied = Counter(end for op in operations(framework) for knot in op.knots for end in knot.ends)
    assert set(tied.values()) <= {1}
    for link in framework.links:
        for end, joint in ((End.NECK, link.neck), (End.TAIL, link.tail)):
            alone = len(framework.links_at[joint]) == 1
            assert tied[link.id, end] == (0 if alone else 1)


def test_a_shared_joint_is_locked_after_the_brace_that_shares_it() -> None:
    order = [op.id for op in in_order(operations(tube(["straight", "tip", "straight"])))]
    assert (
        order.index(names.lock("A2")) < order.index(names.brace(3)) < order.index(names.lock("B2"))
    )


def test_a_run_of_fans_locks_the_shared_joint_after_the_last() -> None:
    order = [op.id for op in in_order(operations(tube(["straight"] + ["fan"] * 3)))]
    assert order.index(names.brace(5)) < order.index(names.lock("B2"))
    assert order.index(names.lock("A4")) < order.index(names.brace(5))


def test_the_star_comes_to_its_known_numbers() -> None:
    """By hand: 40 braces, of which 10 share a balloon with one before; 10 singles; 160
    joints, each with one lock."""
    framework = tube(STAR, closed=True)
    braces = of_kind(framework, Kind.BRACE)
    assert Counter(len(op.links) for op in braces) == {4: 30, 3: 10}
    assert len(of_kind(framework, Kind.SINGLE)) == 10
    assert len(of_kind(framework, Kind.LOCK)) == 160
    long = [op for op in of_kind(framework, Kind.CHAIN) if op.adds]
    assert [len(op.knots) for op in long] == [19] * 4


@pytest.mark.parametrize(
    ("graph", "odd_joints"),
    [
        (nx.tetrahedral_graph(), 4),
        (nx.cubical_graph(), 8),
        (nx.octahedral_graph(), 0),
        (nx.dodecahedral_graph(), 20),
        (nx.icosahedral_graph(), 12),
    ],
)
def test_platonic_solids_take_the_fewest_chains(graph: nx.Graph, odd_joints: int) -> None:
    """Joints of a solid have degree 3, 3, 4, 3, 5 (Euclid, Elements XIII); a connected graph
    with 2k odd joints is covered by k trails and no fewer (Euler 1736), one ring if k = 0."""
    framework = listed([(f"v{a}", f"v{b}", "long") for a, b in graph.edges()])
    chains = of_kind(framework, Kind.CHAIN)
    assert len(chains) == max(1, odd_joints // 2)
    assert nx.is_eulerian(graph) == bool(of_kind(framework, Kind.CLOSE_RING))
    assert len(of_kind(framework, Kind.JOIN)) == graph.number_of_nodes()
