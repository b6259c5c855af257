"""The words of the steps say enough to build from."""

import re
from collections import Counter
from dataclasses import replace

import networkx as nx
import pytest
from hypothesis import given, settings
from sequence_pieces import BALLOONS, STAR, listed_pieces, tube, tubes
from sequence_pieces import listed as listed_piece
from sequence_reader import Edge, Read, read_words

from buildplan.framework.assembly import Spacer, build_assembly
from buildplan.framework.model import Framework, Part
from buildplan.language.grammar import listed, number_ranges
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.steps import plan_steps


def read(steps: tuple[Step, ...]) -> Read:
    said = ((step.title, step.text, *(turn.words for turn in step.turns)) for step in steps)
    return read_words(" ".join(part for parts in said for part in parts))


def links_of(framework: Framework) -> Counter[Edge]:
    label = {key: balloon.label for key, balloon in framework.balloons.items()}
    return Counter(
        (link.neck, link.tail, label[link.balloon], str(link.role)) for link in framework.links
    )


def assert_told(framework: Framework) -> None:
    told = read(plan_steps(framework))
    assert told.links == links_of(framework)
    assert told.locks == {lock.joint: "ivory" for lock in framework.locks}
    links = Counter(f"{name} link balloon" for _, _, name, _ in links_of(framework).elements())
    rounds = {"ivory round": 2 * len(framework.locks)} if framework.locks else {}
    assert told.sized == links + Counter(rounds)


@settings(max_examples=120)
@given(tubes())
def test_a_tube_can_be_rebuilt_from_words(framework: Framework) -> None:
    assert_told(framework)


@settings(max_examples=120)
@given(listed_pieces())
def test_a_listed_piece_can_be_rebuilt_from_words(framework: Framework) -> None:
    assert_told(framework)


def test_the_star_can_be_rebuilt_from_words() -> None:
    assert_told(tube(STAR, closed=True))


def test_an_assembly_can_be_rebuilt_from_words() -> None:
    """Parts of every kind, tied joint on joint and by a balloon between."""
    cube = listed_piece([(f"v{a}", f"v{b}", "long") for a, b in nx.cubical_graph().edges()])
    ends = tube(["straight", "tip", "straight"])
    ring = tube(STAR, closed=True)
    parts = [Part("L", ends), Part("C", cube), Part("S", ring), Part("R", ends)]
    whole = build_assembly(
        "Piece",
        BALLOONS,
        parts,
        [("L.A1", "S.A1"), ("S.B3", "R.C2", f"C.{cube.joints[0]}")],
        [Spacer("L.D1", "R.D1", "cross")],
        "lock",
    )
    told = read(plan_steps(whole))
    label = {key: balloon.label for key, balloon in whole.balloons.items()}
    assert told.links == Counter(
        (whole.place(one.neck), whole.place(one.tail), label[one.balloon], str(one.role))
        for one in whole.links
    )
    assert told.locks == {lock.joint: "ivory" for lock in whole.locks}


@settings(max_examples=60)
@given(tubes())
def test_every_joint_of_a_brace_or_lock_is_named_in_its_row(framework: Framework) -> None:
    for step in plan_steps(framework):
        if step.kind in (Kind.BRACE, Kind.SINGLE):
            for turn in step.turns:
                rows = [row.partition(": ")[2] for row in turn.words.splitlines()]
                assert set(re.findall(r"[A-D]\d+", " ".join(rows))) >= set(turn.joints)


def test_a_corner_names_what_it_shares_and_what_it_skips() -> None:
    steps = plan_steps(tube(["straight", "tip", "straight"]))
    tip = next(step for step in steps if step.cells == ("tip",) and step.kind is Kind.BRACE)
    assert "shares balloon B2-C2 with brace 2" in tip.text
    assert "No brace reaches A3 and D3" in tip.text
    for joint in tip.turns[0].joints:
        assert joint in tip.text


@pytest.mark.parametrize(("units", "gauge"), [("in", "8 in"), ("cm", "20.5 cm")])
def test_gauges_are_told_in_the_units_asked_for(units: str, gauge: str) -> None:
    first = plan_steps(tube(STAR, closed=True), units=units)[0]  # type: ignore[arg-type]
    assert f"in the {gauge} gauge" in first.text


def test_counts_to_check_come_out_at_the_end() -> None:
    steps = plan_steps(tube(STAR, closed=True))
    last_brace = [step for step in steps if step.kind is Kind.BRACE][-1]
    assert "160 of 160" in last_brace.check
    assert "40 of 40" in last_brace.check
    ring = next(step for step in steps if step.kind is Kind.CLOSE_RING)
    assert ring.check.startswith("Each ring has 40 balloons, 20 neck knots and 20 tail knots")


def test_labels_alike_are_told_apart_by_gauge() -> None:
    framework = tube(["straight"] * 3, long=["long"])
    balloons = {**framework.balloons}
    balloons["long"] = replace(balloons["long"], label="ivory", gauge_m=0.254)
    texts = [s.text for s in plan_steps(replace(framework, balloons=balloons))]
    assert texts[0].startswith("Take 8 ivory 10 in link balloons")


def test_lists_and_ranges() -> None:
    assert listed(["A"]) == "A"
    assert listed(["A", "B", "C"]) == "A, B and C"
    assert number_ranges([1, 2, 3, 4, 6, 8, 9]) == "1 to 4, 6, 8 and 9"
