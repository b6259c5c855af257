"""Colour patterns: what is laid where, and what a file gets wrong about them."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from itertools import pairwise

import pytest
from design_texts import RING, changed, only_problem, problems
from hypothesis import given
from hypothesis import strategies as st

from buildplan.language.voice import Voice
from buildplan.patterns.colour_order import ColourPattern
from buildplan.patterns.colour_patterns import RunPlace, lay_colours, period, pitch
from buildplan.source.suggestions import suggestion_words

KEYS = ["a", "b", "c", "d"]
COUNTS = st.dictionaries(st.sampled_from(KEYS), st.integers(1, 6), min_size=1)


def along(count: int, turn: Fraction = Fraction(0)) -> list[RunPlace]:
    return [RunPlace(i, turn) for i in range(count)]


def fade(keys: list[str], count: int, back: bool = False, closed: bool = False) -> list[str]:
    pattern = ColourPattern(fade=keys, there_and_back=back)
    return lay_colours(pattern, along(count), count, closed)


@given(COUNTS, st.integers(1, 80))
def test_stripes_repeat_and_hold_their_counts(counts: dict[str, int], count: int) -> None:
    laid = lay_colours(ColourPattern(stripes=counts), along(count), count)
    again = sum(counts.values())
    assert len(laid) == count
    assert all(laid[i] == laid[i - again] for i in range(again, count))
    for start in range(count - again + 1):
        assert Counter(laid[start : start + again]) == Counter(counts)


@given(st.integers(2, 200))
def test_a_fade_is_half_of_each_and_grows_denser(count: int) -> None:
    """Floyd and Steinberg (Proc. SID 17, 1976, from memory) carry the whole error on, so that
    no sum is ever further than half a balloon from its due."""
    laid = fade(["a", "b"], count)
    assert laid[0] == "a"
    assert count < 4 or laid[-1] == "b"
    assert abs(laid.count("b") - count / 2) <= 0.5
    for end in range(count + 1):
        due = Fraction((end - 1) * end, 2 * (count - 1))
        assert abs(laid[:end].count("b") - due) <= Fraction(1, 2)
    # ever more of the second: gaps between its balloons never widen by more than rounding
    for size in (4, 8):
        sums = [laid[i : i + size].count("b") for i in range(0, count - size + 1, size)]
        assert all(later >= earlier - 1 for earlier, later in pairwise(sums))


@given(st.lists(st.sampled_from(KEYS), min_size=2, max_size=5), st.integers(2, 120))
def test_a_fade_of_many_colours_keeps_every_count_within_a_balloon(
    keys: list[str], count: int
) -> None:
    laid = fade(keys, count)
    due = dict.fromkeys(keys, Fraction(0))
    for i, key in enumerate(laid):
        way = Fraction(i * (len(keys) - 1), count - 1)
        before = min(int(way), len(keys) - 2)
        due[keys[before]] += 1 - (way - before)
        due[keys[before + 1]] += way - before
        assert key in keys[before : before + 2]
    counted = Counter(laid)
    # a key that is named twice is owed in two places
    assert all(abs(counted[key] - due[key]) <= keys.count(key) for key in due)


@given(st.integers(2, 120))
def test_there_and_back_is_its_own_mirror(count: int) -> None:
    laid = fade(["a", "b"], count, back=True)
    assert len(laid) == count
    assert laid == laid[::-1]
    assert laid[0] == "a"
    # told nothing, a fade returns round a ring and does not along an open chain
    asked = ColourPattern(fade=["a", "b"])
    assert lay_colours(asked, along(count), count, closed=True) == laid
    assert lay_colours(asked, along(count), count) == fade(["a", "b"], count)


@given(COUNTS, st.integers(1, 4), st.integers(2, 6), st.sampled_from(["left", "right"]))
def test_a_spiral_is_shifted_from_chain_to_chain_and_meets_after_a_turn(
    counts: dict[str, int], starts: int, chains: int, direction: str
) -> None:
    again = sum(counts.values())
    pattern = ColourPattern.model_validate(
        {"spiral": counts, "pitch": starts * again, "direction": direction}
    )
    assert (period(pattern), pitch(pattern)) == (again, starts * again)
    count = 3 * again
    laid = [lay_colours(pattern, along(count, Fraction(c, chains)), count) for c in range(chains)]
    first = lay_colours(ColourPattern(stripes=counts), along(count), count)
    assert laid[0] == first
    assert lay_colours(pattern, along(count, Fraction(1)), count) == first
    if starts * again % chains == 0:
        shift = starts * again // chains * (1 if direction == "right" else -1)
        for one, after in pairwise(laid):
            assert after == [one[(i - shift) % again] for i in range(count)]


PART = [
    ("{ring: {stripes: {long: 1}}}", "colour_pattern.ring", ["no ring"], ["long or brace"]),
    ("{E: [long]}", "colour_pattern.E", ["E"], ["A, B, C"]),
    ("{A: {stripe: {long: 1}}}", "colour_pattern.A.stripe", ["stripe"], ["did you mean stripes"]),
    ("{A: {}}", "colour_pattern.A", ["no colours"], ["stripes, spiral or fade"]),
    (
        "{A: {stripes: {long: 1}, fade: [long, cross]}}",
        "colour_pattern.A",
        ["stripes and fade"],
        ["one of"],
    ),
    ("{A: {stripes: {long: 0}}}", "colour_pattern.A.stripes.long", ["0"], ["1"]),
    ("{A: {stripes: {lnog: 3}}}", "colour_pattern.A.stripes.lnog", ["lnog"], ["long"]),
    ("{A: {stripes: {lock: 3}}}", "colour_pattern.A.stripes.lock", ["a round"], ["long or cross"]),
    ("{A: {fade: [long]}}", "colour_pattern.A.fade", ["1"], ["2"]),
    ("{A: {fade: [long, lok]}}", "colour_pattern.A.fade[1]", ["lok"], ["long and cross"]),
    (
        "{A: {fade: [long, cross], pitch: 4}}",
        "colour_pattern.A.pitch",
        ["belongs to a spiral"],
        ["take it out"],
    ),
    (
        "{A: {stripes: {long: 1}, there_and_back: true}}",
        "colour_pattern.A.there_and_back",
        ["belongs to a fade", "stripes"],
        ["take it out"],
    ),
    (
        "{brace: {spiral: {long: 1, cross: 2}}}",
        "colour_pattern.brace.spiral",
        ["each of one colour"],
        ["stripes"],
    ),
    ("{A: {spiral: {long: 1, cross: 2}}}", "colour_pattern.A.spiral", ["all long"], ["along long"]),
    (
        "{long: {spiral: {long: 1, cross: 2}, pitch: 4}}",
        "colour_pattern.long.pitch",
        ["4", "3"],
        ["use 3", "use 6"],
    ),
    # the outer rings have 12 balloons, the inner ones 6
    (
        "{long: {stripes: {long: 3, cross: 1}}}",
        "colour_pattern.long.stripes",
        ["add up to 4", "6 balloons of chain B"],
        ["2, 3 or 6", "as a list"],
    ),
    (
        "{D: {stripes: {long: 4, cross: 1}}}",
        "colour_pattern.D.stripes",
        ["add up to 5", "12 balloons of chain D"],
        ["2, 3, 4 or 6"],
    ),
]


@pytest.mark.parametrize(("pattern", "path", "message", "right"), PART)
def test_a_mistake_gives_one_clear_message(
    pattern: str, path: str, message: list[str], right: list[str]
) -> None:
    text = changed(RING, ("spare: 0.05", f"colour_pattern: {pattern}"))
    problem = only_problem(text)
    assert (problem.line, problem.path) == (23, path)
    assert all(word in Voice().tell(problem.message) for word in message)
    assert all(word in suggestion_words(problem.suggestion, Voice()) for word in right)


@pytest.mark.parametrize(
    "pattern",
    [
        "{long: {stripes: {long: 2, cross: 1}}}",
        "{long: {spiral: {long: 2, cross: 1}, pitch: 6, direction: left}}",
        "{long: {fade: [long, cross]}, brace: {fade: [cross, long]}, A: [long, cross, cross]}",
        "{A: {fade: [long, cross, long], there_and_back: false}, brace: [cross, long]}",
    ],
)
def test_what_comes_out_even_is_right(pattern: str) -> None:
    assert not problems(changed(RING, ("spare: 0.05", f"colour_pattern: {pattern}")))
