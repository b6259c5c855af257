"""Steps told in Spanish say the same as in English: the same joints, numbers and order of work."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from sequence_pieces import STAR, listed_pieces, tube, tubes

from buildplan.framework.model import Framework
from buildplan.language.speaking import LOCALES, speaking
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.model import Step
from buildplan.sequence.steps import plan_steps
from buildplan.sequence.tell_times import timetable_lines
from buildplan.sequence.timetable import crew_of, timetable

# joints (`A12`, `v3`), links between them, and numbers
FIGURES = re.compile(r"[A-Za-z]?\d+")
# `y` and `a` are words of Spanish; letters of chains are capitals
ENGLISH = re.compile(r"\b(the|of|and|with|each|its|then|them|together|balloons?|joints?|step)\b")


def told(framework: Framework, language: str) -> tuple[Step, ...]:
    with speaking(language):
        return plan_steps(framework)


def texts(step: Step) -> list[str]:
    return [step.title, step.text, step.check, *(turn.words for turn in step.turns)]


def silent(step: Step) -> Step:
    """What of a step is no text."""
    return replace(step, title="", text="", check="", turns=())


def assert_same(framework: Framework) -> None:
    english, spanish = told(framework, "en"), told(framework, "es")
    assert len(english) == len(spanish)
    for one, other in zip(english, spanish, strict=True):
        for said, translated in zip(texts(one), texts(other), strict=True):
            assert Counter(FIGURES.findall(said)) == Counter(FIGURES.findall(translated))
            assert not ENGLISH.search(translated), translated
        bare = [turn.operations for turn in one.turns]
        assert bare == [turn.operations for turn in other.turns]
        assert silent(one) == silent(other)


@settings(max_examples=60)
@given(tubes())
def test_a_tube_is_told_alike_in_both_languages(framework: Framework) -> None:
    assert_same(framework)


@settings(max_examples=60)
@given(listed_pieces())
def test_a_listed_piece_is_told_alike_in_both_languages(framework: Framework) -> None:
    assert_same(framework)


@pytest.mark.parametrize("language", LOCALES)
def test_a_row_begins_with_the_name_of_its_turn(language: str) -> None:
    for step in told(tube(STAR, closed=True), language):
        for turn in step.turns:
            if turn.name:
                assert turn.words.startswith((f"{turn.name}: ", f"{turn.name} ("))


def test_names_in_plain_data_are_not_translated() -> None:
    english = steps_as_json(told(tube(STAR, closed=True), "en"))
    spanish = steps_as_json(told(tube(STAR, closed=True), "es"))
    for one, other in zip(english, spanish, strict=True):
        for key in ("stage", "kind", "cells", "adds", "prepares", "needs"):
            assert one[key] == other[key]


def test_a_timetable_is_told_alike_in_both_languages() -> None:
    lines = []
    for language in ("en", "es"):
        with speaking(language):
            planned = timetable(plan_steps(tube(STAR, closed=True)), crew_of(2), {})
            lines.append(timetable_lines(planned))
    english, spanish = lines
    assert [FIGURES.findall(line) for line in english] == [FIGURES.findall(li) for li in spanish]
    assert not any(ENGLISH.search(line) for line in spanish)
