"""The words of the steps say enough to build from."""

import re
from collections import Counter
from dataclasses import replace

import networkx as nx
import pytest
from hypothesis import given, settings
from sequence_pieces import BALLOONS, STAR, all_words, listed_pieces, told, tube, tubes
from sequence_pieces import listed as listed_piece
from sequence_reader import Edge, Read, read_words

from buildplan.design.measures import Units
from buildplan.framework.assembly import Spacer, build_assembly
from buildplan.framework.cells import STRAIGHT, TIP, cell_kind
from buildplan.framework.model import Framework, Part
from buildplan.framework.tube import TubePlan, build_tube
from buildplan.instructions.model import Figures, Side, Span
from buildplan.instructions.telling import tell_steps
from buildplan.language.phrases import number_ranges
from buildplan.language.voice import Voice
from buildplan.sequence.directions import Direction
from buildplan.sequence.model import Kind
from buildplan.sequence.steps import plan_steps


def read(framework: Framework) -> Read:
    return read_words(" ".join(part for _, said in told(framework) for part in all_words(said)))


def links_of(framework: Framework) -> Counter[Edge]:
    label = {key: balloon.label for key, balloon in framework.balloons.items()}
    return Counter(
        (link.neck, link.tail, label[link.balloon], str(link.role)) for link in framework.links
    )


def assert_told(framework: Framework) -> None:
    found = read(framework)
    assert found.links == links_of(framework)
    assert found.locks == {lock.joint: "ivory" for lock in framework.locks}
    links = Counter(f"{name} link balloon" for _, _, name, _ in links_of(framework).elements())
    rounds = {"ivory round": 2 * len(framework.locks)} if framework.locks else {}
    assert found.sized == links + Counter(rounds)


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


def test_a_spur_of_two_colours_can_be_rebuilt_from_words() -> None:
    cells = [cell_kind(*advances) for advances in ((1, 1), (6, 0), (1, 1), (4, 0), (1, 1))]
    long = {letter: ["long"] for letter in "ABCD"}
    extras = [("A3", "A7", "cross"), ("D3", "D7", "other"), ("A9", "A11", "other")]
    plan = TubePlan(False, long, "cross", "cross", "lock", cells, extras)
    assert_told(build_tube("Piece", BALLOONS, plan))


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
    found = read(whole)
    label = {key: balloon.label for key, balloon in whole.balloons.items()}
    assert found.links == Counter(
        (whole.place(one.neck), whole.place(one.tail), label[one.balloon], str(one.role))
        for one in whole.links
    )
    assert found.locks == {lock.joint: "ivory" for lock in whole.locks}


@settings(max_examples=60)
@given(tubes())
def test_every_joint_of_a_brace_or_lock_is_named_in_its_row(framework: Framework) -> None:
    for step, words in told(framework):
        if step.kind in (Kind.BRACE, Kind.SINGLE):
            for turn, said in zip(step.turns, words.turns, strict=True):
                rows = [row.said for row in said.rows]
                assert set(re.findall(r"[A-D]\d+", " ".join(rows))) >= set(turn.joints)


def test_a_corner_names_what_it_shares_and_what_it_skips() -> None:
    tip, words = next(
        (step, words)
        for step, words in told(tube(["straight", "tip", "straight"]))
        if step.cells == (TIP,)
    )
    assert words.rows[0].endswith("shares B2-C2")
    assert "No brace reaches A3 and D3. They lie free." in words.text
    for joint in tip.turns[0].joints:
        assert joint in " ".join(words.rows)


@pytest.mark.parametrize(
    ("cells", "check"),
    [
        (["straight"] * 3, "Each chain has 1 balloon between braces."),
        (["straight", "tip"], "Between braces 2 and 3: A and D 2 balloons, B and C none."),
        (["straight", "fan"], "Between braces 2 and 3: A and D 1 balloon, B and C none."),
        (["straight", "dip"], "Between braces 2 and 3: B and C 2 balloons, A and D none."),
    ],
)
def test_a_check_fails_when_a_brace_is_at_a_wrong_joint(cells: list[str], check: str) -> None:
    """What lies between two braces is counted, so that a brace one joint off is seen."""
    checks = [words.check for step, words in told(tube(cells)) if step.kind is Kind.BRACE]
    assert check in checks[-1]


def test_a_hand_move_is_taught_once() -> None:
    """Issue 12: after it has been taught a step says only what is different."""
    star = told(tube(STAR, closed=True))
    everything = " ".join(words.text for _, words in star)
    for move in (
        "until it just slips through",
        "twist the two rounds past each other by two half turns",
        "and back; tie",
    ):
        assert everything.count(move) == 1
    teaching = {step.number for step, _ in star if step.kind is Kind.BRACE and step.alike is None}
    for step, words in star:
        if step.kind is Kind.BRACE and step.number not in teaching:
            assert len(re.findall(r"[^.]+\.", words.text)) <= 3, words.text


def test_a_step_refers_to_one_that_teaches_its_moves() -> None:
    star = told(tube(STAR, closed=True))
    for step, words in star:
        for number in map(int, re.findall(r"[Aa]s in step (\d+)", words.text)):
            assert number < step.number
            assert star[number - 1][0].kind is step.kind or step.kind is Kind.PAIR


@pytest.mark.parametrize(("units", "gauge"), [("in", "8 in"), ("cm", "20.3 cm")])
def test_gauges_are_told_in_the_units_asked_for(units: Units, gauge: str) -> None:
    framework = tube(STAR, closed=True)
    first = tell_steps(plan_steps(framework), framework, units, Voice())[0]
    assert f"gauge {gauge}." in first.text


def test_counts_to_check_come_out_at_the_end() -> None:
    star = told(tube(STAR, closed=True))
    last_brace = [words for step, words in star if step.kind is Kind.BRACE][-1]
    assert "160/160 locks" in last_brace.check
    assert "40/40 braces" in last_brace.check
    ring = next(words for step, words in star if step.kind is Kind.CLOSE_RING)
    assert ring.check.startswith("Each ring has 40 balloons, 20 neck knots and 20 tail knots")


def test_labels_alike_are_told_apart_by_gauge() -> None:
    framework = tube(["straight"] * 3, long=["long"])
    balloons = {**framework.balloons}
    balloons["long"] = replace(balloons["long"], label="ivory", gauge_m=0.254)
    texts = [words.text for _, words in told(replace(framework, balloons=balloons))]
    assert texts[0].startswith("Take 8 ivory 10 in link balloons")


@pytest.mark.parametrize("way", [Direction.CLOCKWISE, Direction.ANTICLOCKWISE])
def test_the_way_round_is_told_where_it_is_known(way: Direction) -> None:
    framework = tube(STAR, closed=True)
    figures = Figures(ways={long.letter: way for long in framework.chains})
    steps = plan_steps(framework)
    words = tell_steps(steps, framework, "in", Voice(), figures)
    for step, said in zip(steps, words, strict=True):
        if step.kind is Kind.LAY:
            assert f"the numbers run {way.name.lower()}." in said.text


def test_measured_rings_and_sides_are_told_with_their_range() -> None:
    framework = tube(STAR, closed=True)
    span = Span(1.0, 0.9, 1.1)
    figures = Figures(dict.fromkeys("ABCD", span), {4: Side(1, 4, span)})
    steps = plan_steps(framework)
    checks = [said.check for said in tell_steps(steps, framework, "cm", Voice(), figures)]
    rings = "rings A to D are 100 cm across their outside (90 to 110)"
    assert sum(rings in check for check in checks) == 1
    told = "A tape along the chain from knot A1 to knot A4 says 100 cm (90 to 110)"
    assert sum(told in check for check in checks) == 1


def test_a_measure_is_never_at_the_edge_of_its_range() -> None:
    """12.0 in of 11.2 to 12.4 in is told outwards: a tape that shows 12 in is within it."""
    inch = 0.0254
    figures = Figures(dict.fromkeys("ABCD", Span(12.0 * inch, 11.2 * inch, 12.04 * inch)))
    framework = tube(STAR, closed=True)
    words = tell_steps(plan_steps(framework), framework, "in", Voice(), figures)
    assert any("12 in across their outside (11 to 13)" in said.check for said in words)


def test_lists_and_ranges() -> None:
    assert Voice().listed(["A"]) == "A"
    assert Voice().listed(["A", "B", "C"]) == "A, B and C"
    assert number_ranges(Voice(), [1, 2, 3, 4, 6, 8, 9]) == "1 to 4, 6, 8 and 9"


def test_a_corner_leads_to_the_first_of_its_kind() -> None:
    """A dip is tied as the first dip was, not as a tip; each says so that comes again, and the
    first of each kind is told in full."""
    first: dict[str, int] = {}
    for step, said in told(tube(STAR, closed=True)):
        corners = [str(kind) for kind in step.cells if kind != STRAIGHT]
        known = {first[name] for name in corners if name in first}
        told_in = set(map(int, re.findall(r"As in step (\d+)", said.text)))
        if corners:
            assert set(said.as_in) == known
            assert told_in == known
            assert ("Tie its free tail into" in said.text) is not bool(known)
        for name in corners:
            first.setdefault(name, step.number)
    assert len(first) == 2
