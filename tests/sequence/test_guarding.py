"""A plan is read back before it is printed: what does not rebuild the piece is refused, whatever
makes a word of it wrong. What the words must say comes from the graph of the piece alone."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sequence_pieces import BALLOONS, STAR, listed, listed_pieces, tube, tubes

from buildplan.design.building import build_framework
from buildplan.design.measures import Units
from buildplan.design.reading import read_design
from buildplan.framework.assembly import build_assembly
from buildplan.framework.model import Framework, Part
from buildplan.instructions import (
    assembling,
    chaining,
    preparing,
    rows,
)
from buildplan.instructions.context import Context
from buildplan.instructions.guarding import DoesNotRebuildError, assert_rebuilds
from buildplan.instructions.model import RowWords
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import LOCALES, Voice
from buildplan.sequence.model import Kind
from buildplan.sequence.steps import plan_steps

FANS = tube(["straight", "fan", "straight"])
GALLERY = Path(__file__).parent.parent.parent / "designs" / "gallery"
# chains of every sort: one colour, a few runs over and over, and an order told in sections
MANY_RUNS = (["long"] * 3 + ["other"] * 2 + ["long", "other"] * 3 + ["long", "other", "other"]) * 3
PIECE = tube(
    STAR, closed=True, long=["long", "long", "other"], by_letter={"B": MANY_RUNS, "C": MANY_RUNS}
)
TETRAHEDRON = listed([(f"v{a}", f"v{b}", "long") for a in range(4) for b in range(a)])
ENDS = tube(["straight", "tip", "straight"])
PARTS = build_assembly(
    "Piece",
    BALLOONS,
    [Part("L", ENDS), Part("T", TETRAHEDRON), Part("R", ENDS)],
    [("L.A1", "T.v0"), ("T.v1", "R.A1")],
    [],
    "lock",
)
WALL = build_framework(read_design(GALLERY / "story_wall.yaml"))
PIECES = {"tube": PIECE, "listed": TETRAHEDRON, "parts": PARTS, "wall": WALL, "shared": FANS}


def read_back(
    framework: Framework, language: str = "en", units: Units = "in", **changed: Any
) -> None:
    """Tell the steps of a piece and read them back, as `booklet` does."""
    steps, voice = changed.get("steps") or plan_steps(framework), Voice(language)
    assert_rebuilds(framework, steps, tell_steps(steps, framework, units, voice), units, voice)


@settings(max_examples=40)
@given(tubes())
def test_every_tube_passes_in_every_language(framework: Framework) -> None:
    for language in LOCALES:
        read_back(framework, language)


@settings(max_examples=40)
@given(listed_pieces())
def test_every_listed_piece_passes(framework: Framework) -> None:
    read_back(framework)


@pytest.mark.parametrize("units", ["in", "cm"])
@pytest.mark.parametrize("language", LOCALES)
@pytest.mark.parametrize("name", PIECES)
def test_pieces_of_every_sort_pass(name: str, language: str, units: Units) -> None:
    read_back(PIECES[name], language, units)


# what may stand in a user's name of a colour: what rows and texts are made of
SNIPPETS = ("all ", "2 ", ", ", "ivory", " and ", "(", ")", ": ", " – ", ".", " in", "; and ", "y")


@settings(max_examples=60)
@given(
    st.lists(st.lists(st.sampled_from(SNIPPETS), min_size=1, max_size=5), min_size=3, max_size=3),
    st.sampled_from(sorted(LOCALES)),
)
def test_no_name_of_a_colour_stops_a_print(labels: list[list[str]], language: str) -> None:
    told = dict(zip(("long", "other", "cross"), map("".join, labels), strict=True))
    balloons = {
        key: replace(one, label=told.get(key, one.label).strip() or "x")
        for key, one in BALLOONS.items()
    }
    named = replace(
        tube(["straight", "straight", "tip"], long=["long", "other"]), balloons=balloons
    )
    read_back(named, language)


def _first_wrong(real: Callable[..., Any]) -> Callable[..., Any]:
    """A list of joints whose last two have changed places."""
    return lambda joints: real([*joints[:-2], *reversed(joints[-2:])])


def _one_less(real: Callable[..., Any]) -> Callable[..., Any]:
    return lambda voice, count, *rest: real(voice, count - 1, *rest)


def _in_other_words(old: str, new: str) -> Callable[[Callable[..., Any]], Callable[..., Any]]:
    """What is said, with one word in place of another."""

    def faulty(real: Callable[..., Any]) -> Callable[..., Any]:
        def said(*given: Any, **named: Any) -> Any:
            told = real(*given, **named)
            if isinstance(told, RowWords):
                line, words = (text.replace(old, new, 1) for text in (told.line, told.said))
                return replace(told, line=line, said=words)
            return told.replace(old, new, 1) if isinstance(told, str) else told

        return said

    return faulty


FAULTS: Sequence[tuple[str, object, str, Callable[..., Any], str]] = (
    # long chains
    ("tube", rows, "counted", _in_other_words("A40", "A39"), "along other joints"),
    ("tube", rows, "chain", _in_other_words("40", "41"), "more or fewer balloons"),
    ("tube", chaining, "colours", _in_other_words("2 deep blue", "3 deep blue"), "other colours"),
    ("tube", chaining, "colours", _in_other_words("deep blue", "sea green"), "other colours"),
    ("tube", rows, "section", _in_other_words("balloons 9", "balloons 8"), "other colours"),
    ("tube", rows, "as_chain", _in_other_words("B", "A"), "other colours"),
    ("tube", rows, "ring", _in_other_words("A1", "A2"), "closed otherwise"),
    # braces, singles, locks
    ("tube", rows, "brace", _in_other_words("B5", "B6"), "other joints than are tied"),
    ("tube", rows, "brace", _in_other_words("A2", "A3"), "other joints than are tied"),
    ("shared", rows, "brace", _in_other_words("shares ", "shares A1-B1, "), "shares other"),
    ("tube", rows, "at_joints", _in_other_words("B3", "B4"), "a row names other joints"),
    ("tube", rows, "along", _first_wrong, "other joints than are tied"),
    # joins
    ("listed", rows, "passes", _in_other_words("chain A", "chain B"), "other"),
    ("wall", rows, "balloon", _in_other_words("A1 – ", "A2 – "), "another balloon"),
    ("wall", rows, "balloon", _in_other_words("(cream)", "(navy)"), "another balloon"),
    ("listed", rows, "then_locked", _in_other_words("; then lock it", ""), "locks another joint"),
    # ties
    ("parts", rows, "tied", _in_other_words("A1", "A2"), "is not its name and its words"),
    ("parts", rows, "tied", _in_other_words("one lock", "no lock"), "locks no joints that are"),
    # colours in the texts
    ("tube", assembling, "_take", _in_other_words("ivory", "deep blue"), "other colours"),
    ("tube", assembling, "_take", _in_other_words("ivory", "mauve"), "other colours"),
    ("tube", Context, "lock_name", lambda real: lambda *given: "deep blue", "made ready|rounds"),
    ("tube", preparing, "_take_links", _in_other_words("8 in", "9 in"), "balloons are sized"),
    ("tube", preparing, "_take_rounds", _in_other_words("ivory", "red"), "balloons are sized"),
    ("tube", rows, "link_pairs", _one_less, "more or fewer are made ready"),
    ("tube", rows, "short_chains", _in_other_words("four", "three"), "other balloons are made"),
)


@pytest.mark.parametrize(
    ("name", "where", "what", "fault", "reason"),
    FAULTS,
    ids=[f"{what}-{i}" for i, (_, _, what, _, _) in enumerate(FAULTS)],
)
def test_a_wrong_word_is_refused(
    name: str,
    where: object,
    what: str,
    fault: Callable[..., Any],
    reason: str,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(where, what, fault(getattr(where, what)))
    with pytest.raises(DoesNotRebuildError, match=reason):
        read_back(PIECES[name])


def test_names_that_have_changed_places_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    wrong = {"long": "sea green", "other": "deep blue", "cross": "ivory", "lock": "ivory"}
    monkeypatch.setattr(Context, "names", wrong)
    with pytest.raises(DoesNotRebuildError, match="other balloons are sized"):
        read_back(PIECE)


def test_a_step_left_out_is_refused() -> None:
    with pytest.raises(DoesNotRebuildError):
        read_back(PIECE, steps=plan_steps(PIECE)[:-1])


def test_another_piece_is_refused() -> None:
    steps, voice = plan_steps(PIECE), Voice()
    other = tube([*STAR[:-1], "fan"], closed=True)
    with pytest.raises(DoesNotRebuildError, match="come to others"):
        assert_rebuilds(other, steps, tell_steps(steps, PIECE, "in", voice), "in", voice)


def test_nobody_stands_a_piece_up_alone() -> None:
    """Common practice, no source."""
    steps = plan_steps(PIECE)
    last = steps[-1]
    assert last.kind is Kind.STAND_UP
    alone = tuple(replace(op, people=1) for op in last.operations)
    turn = replace(last.turns[0], operations=alone)
    with pytest.raises(DoesNotRebuildError, match="alone"):
        read_back(PIECE, steps=(*steps[:-1], replace(last, turns=(turn,))))
