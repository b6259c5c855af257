"""A plan is read back before it is printed: what does not rebuild the piece is refused."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from sequence_pieces import STAR, listed_pieces, tube, tubes

from buildplan.framework.model import Framework
from buildplan.instructions.guarding import DoesNotRebuildError, assert_rebuilds
from buildplan.instructions.model import StepWords, TurnWords
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import LOCALES, Voice
from buildplan.sequence.model import Kind, Step
from buildplan.sequence.steps import plan_steps

PIECE = tube(STAR, closed=True)
STEPS = plan_steps(PIECE)


def words_of(framework: Framework, steps: tuple[Step, ...], language: str) -> list[StepWords]:
    return list(tell_steps(steps, framework, "in", Voice(language)))


@settings(max_examples=40)
@given(tubes())
def test_every_tube_passes_in_every_language(framework: Framework) -> None:
    steps = plan_steps(framework)
    for language in LOCALES:
        assert_rebuilds(framework, steps, words_of(framework, steps, language))


@settings(max_examples=40)
@given(listed_pieces())
def test_every_listed_piece_passes(framework: Framework) -> None:
    steps = plan_steps(framework)
    assert_rebuilds(framework, steps, words_of(framework, steps, "en"))


@pytest.mark.parametrize("language", LOCALES)
@pytest.mark.parametrize(
    ("right", "wrong"),
    [("A7 – B5", "A8 – B5"), ("B5 – C5", "C5 – B5"), ("A7, B5", "A8, B5"), ("A5 – D5", "A5 – D6")],
)
def test_a_row_that_names_a_wrong_joint_is_refused(language: str, right: str, wrong: str) -> None:
    words = words_of(PIECE, STEPS, language)
    changed = 0
    for place, said in enumerate(words):
        turns = []
        for turn in said.turns:
            rows = tuple(replace(row, said=row.said.replace(right, wrong)) for row in turn.rows)
            changed += STEPS[place].kind is Kind.BRACE and rows != turn.rows
            turns.append(
                TurnWords(turn.name, rows if STEPS[place].kind is Kind.BRACE else turn.rows)
            )
        words[place] = replace(said, turns=tuple(turns))
    assert changed == 1
    with pytest.raises(DoesNotRebuildError, match="a row names other joints"):
        assert_rebuilds(PIECE, STEPS, words)


def test_a_step_left_out_is_refused() -> None:
    words = words_of(PIECE, STEPS, "en")
    with pytest.raises(DoesNotRebuildError):
        assert_rebuilds(PIECE, STEPS[:-1], words[:-1])


def test_another_piece_is_refused() -> None:
    other = tube([*STAR[:-1], "fan"], closed=True)
    with pytest.raises(DoesNotRebuildError, match="come to others"):
        assert_rebuilds(other, STEPS, words_of(PIECE, STEPS, "en"))


def test_nobody_stands_a_piece_up_alone() -> None:
    """Common practice, no source."""
    last = STEPS[-1]
    alone = tuple(replace(op, people=1) for op in last.operations)
    steps = (*STEPS[:-1], replace(last, turns=(replace(last.turns[0], operations=alone),)))
    with pytest.raises(DoesNotRebuildError, match="alone"):
        assert_rebuilds(PIECE, steps, words_of(PIECE, STEPS, "en"))
