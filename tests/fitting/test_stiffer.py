"""What `check` says would stiffen a piece, and what broke one: both tried on the piece itself."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from buildplan.evaluation.evaluating import evaluate
from buildplan.evaluation.measured import Measured, measure
from buildplan.fitting import mending
from buildplan.fitting.extra_balloon import balloons_more
from buildplan.fitting.mending import Broken, stiffer, tried_on_the_piece, without_what_breaks
from buildplan.language.voice import Voice
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.examining import examine
from buildplan.source.file_changes import changed_data
from buildplan.source.suggestions import Remedy, TakeOut

LINK = {"kind": "link", "nominal": 12, "inflate_to": 8, "colour": "#1F5F8B", "label": "blue"}
ROUND = {"kind": "round", "nominal": 5, "inflate_to": 3.5, "colour": "#C9A227", "label": "gold"}
# of what would stiffen it most, the first makes it fold: it reaches from the front to the back
COURSE = [{"repeat": 2, "cells": [*["straight"] * 4, *["fan"] * 3]}]


def piece(**keys: Any) -> dict[str, Any]:
    tube = {"closed": True, "chains": 4, "long": "a", "brace": "a", "lock": "k", "course": COURSE}
    return {
        "buildplan": 1,
        "name": "Trial",
        "units": "in",
        "balloons": {"a": LINK, "k": ROUND},
        "build": {"tube": {**tube, **keys}},
    }


def problems(measured: Measured) -> list[str]:
    found = examine(measured.framework, measured.shape, constants=CONSTANTS).problems
    return [one.kind.value for one in (*measured.shape.problems, *found)]


def followed(data: dict[str, Any], way: Remedy) -> Measured:
    return measure(changed_data(data, way.changes))


@pytest.fixture(scope="module")
def sound() -> Measured:
    return measure(piece())


def test_what_would_stiffen_a_piece_leaves_it_sound_when_it_is_written(sound: Measured) -> None:
    assert not problems(sound)
    data = piece()
    likeliest, ways = next(balloons_more(data, sound))
    assert problems(followed(data, ways[0])) == ["folds"]
    told = stiffer(Broken(data, Path()), sound)
    assert told is not None
    assert told.extra.joints != likeliest.joints
    made = followed(data, told.way)
    assert not problems(made)
    assert len(made.framework.links) == len(sound.framework.links) + 1


def test_what_was_added_and_breaks_a_piece_is_taken_out(sound: Measured) -> None:
    data = piece(extra=[["A1", "A3"], ["B3", "C6"]])
    broken = Broken(data, Path())
    assert broken.piece is not None
    assert broken.piece.shape.problems
    for problem in tried_on_the_piece(data, broken.piece.shape.problems):
        assert problem.suggestion.ways, problem.kind
        for way in problem.suggestion.ways:
            assert all(isinstance(change, TakeOut) for change in way.changes)
            assert problem.kind.value not in problems(followed(data, way))
    assert without_what_breaks(broken)


def test_of_ways_to_hold_a_piece_up_those_are_told_that_leave_nothing_wrong() -> None:
    """A tall letter that falls over and does not hold itself up: on a base it still sinks."""
    letter = {"text": "P", "cells": 13, "long": "a", "brace": "a", "lock": "k"}
    data = {**piece(), "build": {"letters": letter}}
    found = measure(data)
    known = evaluate(found.design, "in", 12).facts.problems
    assert {one.kind.value for one in known} == {"does-not-stand", "does-not-hold-itself"}
    for problem in tried_on_the_piece(data, known):
        assert problem.suggestion.ways
        for way in problem.suggestion.ways:
            assert not problems(followed(data, way)), way.words


def test_what_is_not_tried_is_not_told_as_tried_in_vain(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of a piece so large that no trial is left, what might mend it is counted by itself."""
    monkeypatch.setattr(mending, "MOST_TRIALS", 0)
    data = piece(extra=[["A1", "A3"], ["B3", "C6"]])
    found = Broken(data, Path()).piece
    assert found is not None
    told = tried_on_the_piece(data, found.shape.problems)
    for problem in told:
        said = Voice().tell(problem.suggestion.words[0])
        assert not problem.suggestion.ways
        assert "not tried" in said, said
        assert "tried on the piece" not in said
