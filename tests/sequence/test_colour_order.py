"""Orders of colours can be followed: pieces of many colours rebuilt from the words of their
steps, and long orders told in sections."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st
from sequence_pieces import STAR, all_words, told, tube
from sequence_reader import read_words

from buildplan.framework.model import Framework
from buildplan.patterns.build import built_as
from buildplan.patterns.colour_order import ColourOrder, ColourPattern
from buildplan.patterns.colouring import coloured
from buildplan.patterns.tube_keys import Tube
from buildplan.sequence.colour_order import MOST_RUNS, MOST_SECTIONS, colour_runs, sections
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.model import Kind
from buildplan.sequence.replay import replay
from buildplan.sequence.steps import plan_steps

A_TUBE = built_as(
    "tube",
    Tube(closed=False, chains=4, long="long", brace="cross", lock="lock", course=["straight"]),
)

TWO = st.lists(st.sampled_from(["deep blue", "ivory"]), min_size=1, max_size=90)


def words(framework: Framework) -> str:
    return " ".join(part for _, said in told(framework) for part in all_words(said))


def assert_told(framework: Framework) -> None:
    steps = plan_steps(framework)
    label = {key: balloon.label for key, balloon in framework.balloons.items()}
    wanted = Counter(
        (link.neck, link.tail, label[link.balloon], str(link.role)) for link in framework.links
    )
    assert read_words(words(framework)).links == wanted
    rebuilt = replay(steps_as_json(steps))
    assert rebuilt.graph.number_of_edges() == len(framework.links)


@settings(max_examples=40)
@given(
    st.integers(2, 4),
    st.booleans(),
    st.integers(4, 40),
    st.sampled_from(["stripes", "spiral", "fade", "list"]),
    st.booleans(),
)
def test_a_coloured_tube_can_be_rebuilt_from_words(
    chains: int, closed: bool, length: int, kind: str, braces: bool
) -> None:
    framework = tube(["straight"] * length, chains, closed)
    patterns: dict[str, ColourOrder] = {
        "stripes": ColourPattern(stripes={"long": 2, "other": 1}),
        "spiral": ColourPattern(spiral={"long": 3, "other": 1}),
        "fade": ColourPattern(fade=["long", "other"]),
        "list": ["long", "other", "other", "long", "other"],
    }
    across = {"brace": ColourPattern(fade=["cross", "other"])} if braces else {}
    assert_told(coloured(framework, A_TUBE, {"long": patterns[kind], **across}))


def test_chains_of_one_make_are_one_step_each_row_with_its_own_order() -> None:
    framework = tube(["straight"] * 12)
    spiral = ColourPattern(spiral={"other": 1, "long": 3})
    steps = told(coloured(framework, A_TUBE, {"long": spiral}))
    (step,) = [said for s, said in steps if s.kind is Kind.CHAIN and s.operations[0].adds]
    assert len(step.rows) == 4
    assert "that the rows give" in step.text
    assert "(1 sea green, 3 deep blue, over and over)" in step.rows[0]
    assert "(1 deep blue, 1 sea green, 2 deep blue, over and over)" in step.rows[1]


def test_a_long_fade_is_told_in_sections() -> None:
    framework = tube(STAR, closed=True)
    fade = ColourPattern(fade=["long", "other"])
    steps = told(coloured(framework, A_TUBE, {"long": fade}))
    chains = [said for s, said in steps if s.kind is Kind.CHAIN and s.operations[0].adds]
    rows = [row for step in chains for row in step.rows]
    # 40 balloons a chain: a row for each chain, and told once, one for each eight
    assert len(rows) == 4 + 5
    assert "Chain D: 40 balloons (in sections as chain A), joints D1 to D40 and back to D1" in rows
    assert max(map(len, rows)) < 120
    assert rows[1].startswith("Chain A, balloons 1 to 8 (4 deep blue, 1 sea green, ")


@given(TWO)
def test_sections_and_runs_say_the_order_again(names: list[str]) -> None:
    runs, over = colour_runs(names)
    once = [name for count, name in runs for _ in range(count)]
    assert names == [once[i % len(once)] for i in range(len(names))]
    assert (len(names) >= 2 * len(once)) if over else names == once
    told: list[str] = []
    for first, last, part in sections(names):
        assert first == len(told) + 1
        assert first % 2  # pairs are never cut in two
        told += part
        assert last == len(told)
    assert told == names
    assert len(sections(names)) <= MOST_SECTIONS + 1


def test_a_few_runs_stay_in_one_line() -> None:
    assert colour_runs(["a", "b"] * 9) == ([(1, "a"), (1, "b")], True)
    assert colour_runs(["a"] * 5) == ([(5, "a")], False)
    # not twice over: told as it is
    assert colour_runs(list("aaaabaaa")) == ([(4, "a"), (1, "b"), (3, "a")], False)
    assert MOST_RUNS >= 4
