"""The JSON Schema: itself valid, and of one mind with the reader about the form of a file."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from design_texts import RING, TRIANGLE, VALID_FILES, changed, problems
from jsonschema import Draft202012Validator

from buildplan.design.reading import read_design
from buildplan.design.schema import design_schema

VALIDATOR = Draft202012Validator(design_schema())


def test_schema_is_valid_by_the_metaschema() -> None:
    # JSON Schema, draft 2020-12: https://json-schema.org/draft/2020-12/schema
    schema = design_schema()
    assert schema["$schema"] == Draft202012Validator.META_SCHEMA["$id"]
    Draft202012Validator.check_schema(schema)


@pytest.mark.parametrize("path", VALID_FILES, ids=lambda path: path.stem)
def test_designs_that_are_read_are_valid_by_the_schema(path: Path) -> None:
    assert read_design(path)
    # PyYAML's own safe loader, so that nothing of ours stands between file and schema
    VALIDATOR.validate(yaml.safe_load(path.read_text("utf-8")))


@pytest.mark.parametrize(
    ("base", "old", "new"),
    [
        (RING, "name: Ring", "name: 12"),
        (RING, "name: Ring\n", ""),
        (RING, "name: Ring", 'name: " "'),
        (RING, "buildplan: 1", "buildplan: true"),
        (RING, "units: in", "units: mm"),
        (RING, "nominal: 12", 'nominal: "12"'),
        (RING, "nominal: 12", "nominal: 0"),
        (RING, "nominal: 12", "nominal: true"),
        (RING, '"#1F5F8B"', "'#1F5'"),
        (RING, "  long:\n", "  long:\n    color: 1\n"),
        (RING, "closed: true", 'closed: "yes"'),
        (RING, "chains: 4", "chains: 5"),
        (RING, "long: long", "long: [long]"),
        (RING, "long: long", "long: {E: long}"),
        (RING, "repeat: 6", "repeat: 0"),
        (RING, "repeat: 6", "repeat: 1.5"),
        (RING, "fan]", "fun]"),
        (RING, "fan]", "[1]]"),
        (RING, "fan]", "[1, 2, 3]]"),
        (RING, "fan]", "[1, -1]]"),
        (RING, "fan]", "null]"),
        (RING, "fan]", "{repeat: 2}]"),
        (RING, "  tube:\n", "  wall:\n"),
        (RING, "spare: 0.05", "spare: 5"),
        (RING, "spare: 0.05", "prices: {long: -1}"),
        (RING, "spare: 0.05", "labour: {pairs: 1}"),
        (RING, "spare: 0.05", "text: {lock: x}"),
        (RING, "spare: 0.05", "stand_on: []"),
        (RING, "spare: 0.05", "constants: {A: 1}"),
        (TRIANGLE, "from: P", "form: P"),
        (TRIANGLE, "[P, Q, R]", "[P, Q, 3]"),
        (TRIANGLE, "[P, Q, R]", "[P]"),
    ],
)
def test_mistakes_of_form_fail_both_ways(base: str, old: str, new: str) -> None:
    text = changed(base, (old, new))
    assert problems(text)
    assert not VALIDATOR.is_valid(yaml.safe_load(text))


def test_exactly_one_pattern_in_the_schema() -> None:
    ring, triangle = yaml.safe_load(RING), yaml.safe_load(TRIANGLE)
    for build in ({}, {**ring["build"], **triangle["build"]}):
        assert not VALIDATOR.is_valid({**ring, "build": build})


def keys_in(schema: dict[str, Any]) -> Iterator[tuple[str, dict[str, Any]]]:
    for part in [schema, *schema["$defs"].values()]:
        yield from part.get("properties", {}).items()


def test_every_key_is_explained() -> None:
    explained = dict(keys_in(design_schema()))
    assert {"from", "course", "colour_pattern", "constants", "contact"} <= set(explained)
    for name, about in keys_in(design_schema()):
        assert len(about.get("description", "")) > 15, name


def test_schema_is_the_same_in_every_run() -> None:
    program = (
        "import json; from buildplan.design.schema import design_schema;"
        "print(json.dumps(design_schema()))"
    )
    runs = [
        subprocess.run(
            [sys.executable, "-c", program],
            env={"PYTHONHASHSEED": seed},
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    ]
    assert runs[0] == runs[1]
    assert json.loads(runs[0]) == design_schema()
