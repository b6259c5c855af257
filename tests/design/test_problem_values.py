"""Problems are values: a code, data and a place, with no language before they are told."""

from __future__ import annotations

import re

from design_texts import RING, changed, only_problem

from buildplan.business.buying.money import MoneyKind
from buildplan.business.copies.brand import BrandKind
from buildplan.language.voice import Voice
from buildplan.sequence.reach import ReachKind
from buildplan.shape.kinds import ShapeKind
from buildplan.source.kinds import FileKind
from buildplan.source.problems import Problem, in_words, problem_as_data
from buildplan.source.suggestions import Put, suggestion_words

OF_ALL_ROOMS = (FileKind, ShapeKind, ReachKind, MoneyKind, BrandKind)


def test_one_problem_is_said_in_any_language() -> None:
    problem = only_problem(changed(RING, ("fan]", "tip]")))
    assert in_words(problem, Voice("en")) != in_words(problem, Voice("es"))


def test_codes_are_words_of_small_letters_and_stand_for_one_thing_each() -> None:
    codes = [kind.value for room in OF_ALL_ROOMS for kind in room]
    assert len(set(codes)) == len(codes)
    assert all(re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", code) for code in codes)


def test_a_problem_as_data_names_its_code_its_data_and_the_change() -> None:
    problem = only_problem(changed(RING, ("long: long", "long: lnog")))
    data = problem_as_data(problem, Voice(), "ring.yaml")
    assert data["kind"] == "no-such-balloon"
    assert data["data"] == {"key": '"lnog"'}
    assert (data["path"], data["line"]) == ("build.tube.long", 17)
    assert data["by_hand"] is False
    assert data["changes"] == [
        {
            "text": "did you mean long?",
            "changes": [{"at": ["build", "tube", "long"], "put": "long"}],
        }
    ]


def test_ways_are_told_before_the_words_and_with_or_between() -> None:
    problem: Problem = only_problem(changed(RING, ("fan]", "fann]")))
    (way,) = problem.suggestion.ways
    assert way.changes == (Put(("build", "tube", "course", 0, "cells", 1), "fan"),)
    assert suggestion_words(problem.suggestion, Voice()).startswith("did you mean fan?")
