"""Other courses and other advice that is tried on the piece itself before it is told."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import pytest
import yaml

from buildplan.cli import main
from buildplan.evaluation.measured import first_mistake, measure
from buildplan.fitting import near_courses as searching
from buildplan.fitting.mending import tried_on_the_piece
from buildplan.fitting.near_courses import near_courses
from buildplan.language.voice import Voice
from buildplan.shape.kinds import ShapeKind
from buildplan.source.file_changes import changed_data, changed_text

HEAD = """\
buildplan: 1
name: Ring
units: in
balloons:
  long:  {kind: link,  nominal: 12, inflate_to: 8,   colour: "#1F5F8B", label: blue}
  cross: {kind: link,  nominal: 12, inflate_to: 8,   colour: "#F7F3E8", label: ivory}
  lock:  {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
build:
  tube: {closed: true, chains: 4, long: long, brace: cross, single: cross, lock: lock,
    course: COURSE}
"""
# turns by 360 degrees, all of it in one place
HEAPED = "[{repeat: 9, cells: [straight]}, tip, tip, tip]"
SHORT = "[{repeat: 5, cells: [straight, fan]}]"


def data(course: str) -> dict[str, Any]:
    found: dict[str, Any] = yaml.safe_load(HEAD.replace("COURSE", course))
    return found


@pytest.fixture(scope="module")
def heaped() -> list[searching.NearCourse]:
    return near_courses(data(HEAPED), 2, 8)


def test_every_course_that_is_found_closes_and_stands(heaped: list[searching.NearCourse]) -> None:
    assert len(heaped) == 2
    assert [one.edit.moved for one in heaped] == sorted(one.edit.moved for one in heaped)
    for one in heaped:
        made = changed_data(data(HEAPED), one.changes)
        assert first_mistake(made) is None
        shape = measure(made).shape
        assert shape.closes
        assert shape.standing.stands
        assert not shape.problems


def test_the_search_ends_after_so_many_trials(monkeypatch: pytest.MonkeyPatch) -> None:
    tried: list[object] = []
    monkeypatch.setattr(searching, "_solved", lambda one: tried.append(one))
    assert near_courses(data(SHORT), 3, 4) == []
    assert len(tried) == 4
    assert near_courses(data(SHORT).copy() | {"build": open_tube()}, 3, 4) == []


def open_tube() -> dict[str, Any]:
    return {"tube": data(SHORT)["build"]["tube"] | {"closed": False}}


def test_advice_on_a_shape_mends_it_and_does_not_contradict_itself() -> None:
    wrong = data(HEAPED)
    problems = measure(wrong).shape.problems
    (not_closed,) = [one for one in problems if one.kind is ShapeKind.DOES_NOT_CLOSE]
    said = Voice().tell(not_closed.message)
    assert "of the 360 it needs" not in said
    assert "does not balance" in said
    told = tried_on_the_piece(wrong, problems)
    ways = [way for one in told for way in one.suggestion.ways]
    assert ways
    for way in ways:
        assert not measure(changed_data(wrong, way.changes)).shape.problems


def test_chains_of_other_balloons_at_the_back_are_told_with_the_change() -> None:
    wrong = data("[{repeat: 6, cells: [straight, fan]}]")
    other = wrong["balloons"]["long"] | {"inflate_to": 7.8}
    wrong["balloons"]["other"] = other
    wrong["build"]["tube"]["long"] = {"A": "long", "B": "long", "C": "long", "D": "other"}
    problems = [p for p in measure(wrong).shape.problems if p.kind is ShapeKind.UNLIKE_BACK]
    (told,) = tried_on_the_piece(wrong, problems)
    (way,) = told.suggestion.ways
    after = measure(changed_data(wrong, way.changes)).shape.problems
    assert ShapeKind.UNLIKE_BACK not in {one.kind for one in after}


def run(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], *arguments: object
) -> tuple[int, str]:
    monkeypatch.setattr(sys, "argv", ["buildplan", *map(str, arguments)])
    with pytest.raises(SystemExit) as ended:
        main()
    return int(ended.value.code or 0), capsys.readouterr().out


def test_check_and_course_lead_to_a_file_that_closes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    wrong, right = tmp_path / "wrong.yaml", tmp_path / "right.yaml"
    sheet = tmp_path / "sheet.svg"
    wrong.write_text(HEAD.replace("COURSE", SHORT), "utf-8")
    status, out = run(monkeypatch, capsys, "check", wrong, "--json")
    (problem,) = json.loads(out)["problems"]
    assert (status, problem["kind"], problem["by_hand"]) == (1, "not-coming-round", False)
    status, out = run(
        monkeypatch, capsys, "course", wrong, "--count", 1, "--out", right, "--picture", sheet
    )
    assert status == 0
    assert "course: [" in out
    assert sheet.stat().st_size > 1000
    status, out = run(monkeypatch, capsys, "check", right, "--json")
    assert json.loads(out)["closes"] is True


def test_a_course_is_written_into_the_file_as_it_stands(
    heaped: list[searching.NearCourse],
) -> None:
    text, kept = changed_text(HEAD.replace("COURSE", HEAPED), heaped[0].changes)
    assert kept
    assert yaml.safe_load(text) == changed_data(data(HEAPED), heaped[0].changes)
    assert tried_on_the_piece({"build": {"globe": {}}}, ()) == ()
