"""Joints that steps could not name, and tubes that a single cell takes all the way round."""

from __future__ import annotations

from pathlib import Path

import pytest

from buildplan.design.reading import read_design
from buildplan.language.voice import Voice
from buildplan.source.problems import DesignProblemsError, Problem
from buildplan.source.suggestions import suggestion_words

HEAD = """buildplan: 1
name: Trial
units: in
balloons:
  edge: {kind: link, nominal: 12, inflate_to: 8, colour: "#884488", label: plum}
  lock: {kind: round, nominal: 5, inflate_to: 3.5, colour: "#FFFFFF", label: white}
build:
"""


def problems_of(tmp_path: Path, build: str) -> tuple[Problem, ...]:
    file = tmp_path / "trial.yaml"
    file.write_text(HEAD + build, encoding="utf-8")
    with pytest.raises(DesignProblemsError) as found:
        read_design(file)
    return found.value.problems


@pytest.mark.parametrize("label", ["A 1", "A,1", "A-1", "A:1", "A – B"])
def test_a_label_that_steps_would_misread_is_refused(tmp_path: Path, label: str) -> None:
    build = (
        f'  graph:\n    joints: ["{label}", B]\n'
        f'    balloons:\n      - {{from: "{label}", to: B, balloon: edge}}\n'
    )
    (problem,) = problems_of(tmp_path, build)
    assert (problem.path, problem.line) == ("build.graph.joints[0]", 9)
    assert "letters and digits" in suggestion_words(problem.suggestion, Voice())


def test_a_cell_that_goes_all_the_way_round_is_refused(tmp_path: Path) -> None:
    build = (
        "  tube: {closed: true, chains: 4, long: edge, brace: edge, single: edge, lock: lock, "
        "course: [[0, 4], [3, 0]]}\n"
    )
    (problem,) = problems_of(tmp_path, build)
    assert problem.path == "build.tube.course"
    assert "all the way round" in Voice().tell(problem.message)
