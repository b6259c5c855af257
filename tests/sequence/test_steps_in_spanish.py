"""Steps told in Spanish say the same as in English: the same joints, numbers and order of work."""

from __future__ import annotations

import re
from collections import Counter

import pytest
from hypothesis import given, settings
from sequence_pieces import STAR, all_words, listed_pieces, told, tube, tubes

from buildplan.framework.model import Framework
from buildplan.instructions.exchange import told_as_json
from buildplan.instructions.model import StepWords
from buildplan.instructions.timetables import timetable_lines
from buildplan.language.voice import LOCALES, Voice
from buildplan.sequence.steps import plan_steps
from buildplan.sequence.timetable import crew_of, timetable

# joints (`A12`, `v3`), links between them, and numbers
FIGURES = re.compile(r"[A-Za-z]?\d+")
# `y` and `a` are words of Spanish; letters of chains are capitals
ENGLISH = re.compile(r"\b(the|of|and|with|each|its|then|them|together|balloons?|joints?|step)\b")


def texts(words: StepWords) -> list[str]:
    return [*all_words(words), words.check]


def assert_same(framework: Framework) -> None:
    for (_, english), (_, spanish) in zip(
        told(framework, "en"), told(framework, "es"), strict=True
    ):
        for said, translated in zip(texts(english), texts(spanish), strict=True):
            assert Counter(FIGURES.findall(said)) == Counter(FIGURES.findall(translated))
            assert not ENGLISH.search(translated), translated


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
    for _, words in told(tube(STAR, closed=True), language):
        for turn in words.turns:
            if turn.name:
                assert turn.lines[0].startswith((f"{turn.name}: ", f"{turn.name} ("))


def test_plain_data_is_the_same_whatever_language_it_is_told_in() -> None:
    english, spanish = (
        told_as_json(*zip(*told(tube(STAR, closed=True), language), strict=True))
        for language in ("en", "es")
    )
    for one, other in zip(english, spanish, strict=True):
        assert one["title"] != other["title"]
        for said in ("title", "text", "check"):
            del one[said], other[said]
        for turn in (*one["turns"], *other["turns"]):
            del turn["name"], turn["words"]
        assert one == other


def test_a_timetable_is_told_alike_in_both_languages() -> None:
    planned = timetable(plan_steps(tube(STAR, closed=True)), crew_of(2), {})
    english, spanish = (timetable_lines(Voice(language), planned) for language in ("en", "es"))
    assert [FIGURES.findall(line) for line in english] == [FIGURES.findall(li) for li in spanish]
    assert not any(ENGLISH.search(line) for line in spanish)
