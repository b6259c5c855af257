"""Advice that only the solved piece can judge: every wording that names a change is told for a
piece of ours, its change is made in the file, and the problem is gone.

That no wording is left out stands in tests/design/test_kinds_of_advice.py.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
import yaml
from conftest import Call
from piece_advice import BY_A_PROBLEM, BY_WHAT_STIFFENS, Told
from trial_pieces import PIECES, design

from buildplan.evaluation.evaluating import evaluate
from buildplan.evaluation.measured import measure
from buildplan.evaluation.seating import read_whole
from buildplan.fitting.extra_balloon import balloons_more
from buildplan.source.file_changes import changed_data, changed_text
from buildplan.source.suggestions import Put, TakeOut


def wrong_with(file: Path, text: str) -> set[str]:
    """What is wrong with the piece of a file of that text, and what is cautioned of."""
    file.write_text(text, "utf-8")
    piece = evaluate(read_whole(file), "in", 12)
    return {one.kind.value for one in (*piece.facts.problems, *piece.examination.cautions)}


@pytest.mark.parametrize("told", BY_A_PROBLEM, ids=lambda told: f"{told.kind}: {told.says[0][:30]}")
def test_what_is_told_of_a_piece_mends_it(call: Call, tmp_path: Path, told: Told) -> None:
    file = tmp_path / "piece.yaml"
    text = yaml.safe_dump(told.piece)
    file.write_text(text, "utf-8")
    found = json.loads(call("check", file, "--json")[1])
    (problem,) = [
        one for one in [*found["problems"], *found.get("cautions", [])] if one["kind"] == told.kind
    ]
    for wording in told.says:
        assert any(told.is_worded(way["text"], wording) for way in problem["changes"]), problem
    for way in problem["changes"]:
        mended, _ = changed_text(text, [made(one) for one in way["changes"]])
        assert told.kind not in wrong_with(file, mended), way["text"]


def made(change: dict[str, Any]) -> Put | TakeOut:
    """A change of a file, from what `check --json` prints."""
    at = tuple(change["at"])
    return TakeOut(at) if change.get("take_out") else Put(at, change["put"], change.get("last"))


@pytest.mark.parametrize("balloons", [1, 2])
def test_balloons_more_that_stiffen_a_piece_are_tied(balloons: int) -> None:
    """One by itself, and one with its twin behind."""
    data = design(PIECES["arch"])
    piece = measure(data)
    _, ways = next(balloons_more(data, piece))
    way = ways[balloons - 1]
    assert way.words.text == BY_WHAT_STIFFENS[balloons - 1]
    tied = measure(changed_data(data, way.changes))
    assert len(tied.framework.links) == len(piece.framework.links) + balloons
    assert not tied.shape.problems
