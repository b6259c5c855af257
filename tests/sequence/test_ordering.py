"""The order of work."""

import random

import networkx as nx
import pytest
from hypothesis import given, settings
from sequence_pieces import STAR, listed_pieces, tube, tubes

from buildplan.framework.model import Framework
from buildplan.sequence.model import Kind, Operation, Stage
from buildplan.sequence.operations import operations
from buildplan.sequence.ordering import done_before, in_order, natural
from buildplan.sequence.work_names import Name


def act(name: str, needs: tuple[str, ...], makes: tuple[str, ...]) -> Operation:
    return Operation(
        Name(name), Kind.BRACE, Stage.BRACE, tuple(map(Name, needs)), tuple(map(Name, makes))
    )


def assert_order(ordered: tuple[Operation, ...]) -> None:
    made: set[str] = set()
    for operation in ordered:
        assert made.issuperset(operation.needs), operation.id
        made.update(operation.makes)


@settings(max_examples=60)
@given(tubes())
def test_everything_a_tube_needs_is_made_before(framework: Framework) -> None:
    assert_order(in_order(operations(framework)))


@settings(max_examples=60)
@given(listed_pieces())
def test_everything_a_listed_piece_needs_is_made_before(framework: Framework) -> None:
    assert_order(in_order(operations(framework)))


def test_the_order_does_not_hang_on_the_order_of_listing() -> None:
    ops = list(operations(tube(STAR, closed=True)))
    before = in_order(ops)
    random.Random(1).shuffle(ops)
    assert in_order(ops) == before
    assert len(before) == len(ops)


def test_the_needs_form_an_acyclic_graph_that_ends_in_standing() -> None:
    before = done_before(operations(tube(STAR, closed=True)))
    graph = nx.DiGraph((one, name) for name, ones in before.items() for one in ones)
    assert nx.is_directed_acyclic_graph(graph)
    assert [node for node, degree in graph.out_degree() if degree == 0] == ["stand up"]


def test_numbers_in_labels_count() -> None:
    assert sorted(["A10", "A9", "B1", "A2"], key=natural) == ["A2", "A9", "A10", "B1"]


def test_a_circle_of_needs_is_refused() -> None:
    with pytest.raises(ValueError, match="circle"):
        in_order([act("one", ("b",), ("a",)), act("two", ("a",), ("b",))])


def test_a_thing_that_nobody_makes_is_refused() -> None:
    with pytest.raises(ValueError, match="nothing makes"):
        in_order([act("one", ("b",), ("a",))])


def test_a_thing_made_twice_is_refused() -> None:
    with pytest.raises(ValueError, match="made by"):
        in_order([act("one", (), ("a",)), act("two", (), ("a",))])
