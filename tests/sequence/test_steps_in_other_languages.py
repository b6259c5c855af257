"""Steps told in another language say the same as in English: joints, numbers, order of work."""

from __future__ import annotations

import re
from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sequence_pieces import STAR, all_words, listed_pieces, told, tube, tubes

from buildplan.framework.model import Framework
from buildplan.instructions.exchange import told_as_json
from buildplan.instructions.model import StepWords
from buildplan.instructions.timetables import timetable_lines
from buildplan.language.voice import ENGLISH, LOCALES, Voice
from buildplan.sequence.steps import plan_steps
from buildplan.sequence.timetable import crew_of, timetable

# joints (`A12`, `v3`), links between them, and numbers
FIGURES = re.compile(r"[A-Za-z]?\d+")
OTHERS = [language for language in LOCALES if language != ENGLISH]
# `a` is a word of Spanish and Portuguese; letters of chains are capitals
ENGLISH_WORDS = re.compile(
    r"\b(the|of|and|with|each|its|then|them|together|balloons?|joints?|step)\b"
)


def texts(words: StepWords) -> list[str]:
    return [*all_words(words), words.check]


def assert_same(framework: Framework, language: str) -> None:
    for (_, english), (_, other) in zip(
        told(framework, ENGLISH), told(framework, language), strict=True
    ):
        for said, translated in zip(texts(english), texts(other), strict=True):
            assert Counter(FIGURES.findall(said)) == Counter(FIGURES.findall(translated))
            assert not ENGLISH_WORDS.search(translated), translated


@settings(max_examples=60)
@given(tubes(), st.sampled_from(OTHERS))
def test_a_tube_is_told_alike_in_every_language(framework: Framework, language: str) -> None:
    assert_same(framework, language)


@settings(max_examples=60)
@given(listed_pieces(), st.sampled_from(OTHERS))
def test_a_listed_piece_is_told_alike_in_every_language(
    framework: Framework, language: str
) -> None:
    assert_same(framework, language)


@pytest.mark.parametrize("language", LOCALES)
def test_a_row_begins_with_the_name_of_its_turn(language: str) -> None:
    for _, words in told(tube(STAR, closed=True), language):
        for turn in words.turns:
            if turn.name:
                after = turn.lines[0].removeprefix(turn.name)
                # French sets a space that does not break before its colon
                assert after.lstrip("\N{NO-BREAK SPACE}").startswith((": ", " ("))
                assert after != turn.lines[0]


@pytest.mark.parametrize("language", OTHERS)
def test_plain_data_is_the_same_whatever_language_it_is_told_in(language: str) -> None:
    in_english, in_another = (
        told_as_json(*zip(*told(tube(STAR, closed=True), each), strict=True))
        for each in (ENGLISH, language)
    )
    for one, other in zip(in_english, in_another, strict=True):
        assert one["title"] != other["title"]
        for said in ("title", "text", "check"):
            del one[said], other[said]
        for turn in (*one["turns"], *other["turns"]):
            del turn["name"], turn["words"]
        assert one == other


@pytest.mark.parametrize("language", OTHERS)
def test_a_timetable_is_told_alike_in_every_language(language: str) -> None:
    planned = timetable(plan_steps(tube(STAR, closed=True)), crew_of(2), {})
    english, other = (timetable_lines(Voice(each), planned) for each in (ENGLISH, language))
    assert [FIGURES.findall(line) for line in english] == [FIGURES.findall(li) for li in other]
    assert not any(ENGLISH_WORDS.search(line) for line in other)
