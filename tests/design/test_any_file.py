"""Whatever a file holds, reading it gives a design or one of the two errors."""

from __future__ import annotations

import copy
from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
import yaml
from design_texts import RING, TRIANGLE, VALID_FILES, read
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.design.reading import read_design
from buildplan.design.schema import design_schema
from buildplan.language.voice import Voice
from buildplan.source.problems import (
    DesignProblemsError,
    Problem,
    UnreadableDesignError,
    in_words,
)
from buildplan.source.suggestions import suggestion_words

VALIDATOR = Draft202012Validator(design_schema())
VALID = [yaml.safe_load(path.read_text("utf-8")) for path in VALID_FILES]
WORDS = sorted(
    {"straight", "fan", "tip", "wall", "link", "round", "in", "A1", "Top", "#1F5F8B", "yes"}
    | {"long", "cross", "lock", "green", "A", "E", "from", "repeat", "cells", "tube", "graph"}
    | set(Design.model_fields)
)
# words of the validation library that a user must never meet
JARGON = ("Input should", "pydantic", "NoneType", "dict", "Decimal", "Value error", "tag '")

reading = settings(max_examples=150)
scalars = (
    st.none()
    | st.booleans()
    | st.integers(-3, 40)
    | st.sampled_from([10**25, 0.5, -1.5, 1e300, float("inf"), float("nan")])
    | st.sampled_from(WORDS)
    | st.text(max_size=6)
)
values = st.recursive(
    scalars,
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.sampled_from(WORDS) | st.text(max_size=4), inner, max_size=4)
    ),
    max_leaves=10,
)


def well_told(problem: Problem) -> None:
    words = in_words(problem, Voice(), "a.yaml")
    assert Voice().tell(problem.message)
    assert suggestion_words(problem.suggestion, Voice())
    assert len(words) < 700, words
    assert words.isprintable(), words
    for word in JARGON:
        assert word not in Voice().tell(problem.message) + suggestion_words(
            problem.suggestion, Voice()
        )


def told_in_order(problems: Sequence[Problem]) -> None:
    lines = [problem.line for problem in problems if problem.line is not None]
    assert problems
    assert len(lines) == len(problems)
    assert lines == sorted(lines)
    for problem in problems:
        well_told(problem)


def outcome(content: str | bytes) -> Design | None:
    try:
        return read(content)
    except UnreadableDesignError as error:
        well_told(error.problem)
    except DesignProblemsError as error:
        told_in_order(error.problems)
    return None


@given(st.binary(max_size=200))
@reading
def test_any_bytes(content: bytes) -> None:
    assert outcome(content) is None


@given(st.text(st.sampled_from("ab:-?[]{},&*!|>'\"%@# \n\t\\<=~0.1e\0\x85\ud800é"), max_size=60))
@reading
def test_any_text_of_yaml_signs(content: str) -> None:
    assert outcome(content) is None


@given(st.sampled_from([RING, TRIANGLE]), st.data())
@reading
def test_a_design_with_a_slip_of_the_hand(base: str, data: st.DataObject) -> None:
    start = data.draw(st.integers(0, len(base)))
    end = data.draw(st.integers(start, min(len(base), start + 12)))
    typed = data.draw(st.text(st.sampled_from("a1:-[]{},&*!'\"# \n\t\\<"), max_size=4))
    outcome(base[:start] + typed + base[end:])


@given(values)
@reading
def test_any_structure(value: object) -> None:
    assert outcome(yaml.safe_dump(value)) is None


def places(value: Any) -> list[tuple[Any, Any]]:
    """Every (container, key) under `value`."""
    found: list[tuple[Any, Any]] = []
    inside = list(value.items()) if isinstance(value, dict) else list(enumerate(value))
    for key, inner in inside:
        found.append((value, key))
        if isinstance(inner, dict | list):
            found += places(inner)
    return found


@given(st.sampled_from(VALID), st.data())
@settings(max_examples=250)
def test_a_design_with_parts_changed(original: dict[str, Any], data: st.DataObject) -> None:
    """What is read is valid by the schema, and a framework can be built of it."""
    changed = copy.deepcopy(original)
    for _ in range(data.draw(st.integers(1, 3))):
        container, key = data.draw(st.sampled_from(places(changed)))
        match data.draw(st.sampled_from(["put", "put", "take out", "name"])):
            case "put":
                container[key] = data.draw(values)
            case "take out":
                del container[key]
            case _ if isinstance(container, dict):
                container[data.draw(st.sampled_from(WORDS))] = container.pop(key)
        if not changed:
            return
    text = yaml.safe_dump(changed, sort_keys=False)
    design = outcome(text)
    if design is not None:
        assert VALIDATOR.is_valid(yaml.safe_load(text))
        build_framework(design)


@pytest.mark.parametrize("path", VALID_FILES, ids=lambda path: path.stem)
def test_a_design_that_is_written_out_and_read_again_is_the_same(path: Path) -> None:
    design = read_design(path)
    data = design.model_dump(by_alias=True, exclude_defaults=True)
    assert read(yaml.safe_dump(numbers_of_the_file(data))) == design


def numbers_of_the_file(value: Any) -> Any:
    """`value` with money as the plain numbers that a file holds."""
    if isinstance(value, dict):
        return {key: numbers_of_the_file(inner) for key, inner in value.items()}
    return float(value) if isinstance(value, Decimal) else value
