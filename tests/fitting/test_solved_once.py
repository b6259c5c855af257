"""A piece that has been solved is not solved again to try what mends it, but where other hands
solved it."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from pathlib import Path

import pytest
import yaml

from buildplan.evaluation.evaluating import evaluate
from buildplan.evaluation.measured import Measured, measure
from buildplan.fitting import mending
from buildplan.fitting.checking import checked, tried
from buildplan.hands.file import hands_text
from buildplan.hands.model import HANDS_FILE, Size, StandingHeight
from buildplan.hands.reading import read_known
from buildplan.language.voice import Voice
from buildplan.source.problems import Problem

KIND = {"kind": "link", "nominal": 12, "colour": "#000080"}
FIVE = {
    "buildplan": 1,
    "name": "Five",
    "units": "in",
    "balloons": {
        "a": {**KIND, "inflate_to": 8, "label": "a"},
        "b": {**KIND, "inflate_to": 5, "label": "b"},
        "l": {"kind": "round", "nominal": 5, "inflate_to": 3.5, "colour": "#FFD700", "label": "l"},
    },
    "build": {
        "graph": {
            "joints": list("PQRST"),
            "lock": "l",
            # five joints cannot all be equally far from one another in space
            "balloons": [
                {"from": one, "to": other, "balloon": "b" if one + other == "PQ" else "a"}
                for one, other in combinations("PQRST", 2)
            ],
        }
    },
}


def solved_anew(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> tuple[Sequence[Problem], Sequence[Problem], list[object]]:
    """What `check` tells, what it tells when it is given no solved piece, and what it solves."""
    voice, solved = Voice(), list[object]()

    def counted(data: object, folder: Path) -> Measured:
        solved.append(data)
        return measure(data, folder)

    design = read_known(file, voice)
    piece = evaluate(design, design.units, 12)
    monkeypatch.setattr(mending, "measure", counted)
    told = checked(file, piece, voice).piece.facts.problems
    count = len(solved)
    anew = tried(file, piece.facts.problems, voice)
    return told, anew, solved[:count]


def test_a_solved_piece_is_not_solved_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "five.yaml"
    file.write_text(yaml.safe_dump(FIVE), "utf-8")
    told, anew, solved = solved_anew(file, monkeypatch)
    assert solved
    assert FIVE not in solved
    assert told == anew


def test_a_piece_of_other_hands_is_solved_as_its_file_has_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "five.yaml"
    file.write_text(yaml.safe_dump(FIVE), "utf-8")
    measured = StandingHeight(((Size(0.305, 0.2), 10),), 2.0, 0.2, 0.1, 2.0)
    (tmp_path / HANDS_FILE).write_text(hands_text([measured]), "utf-8")
    told, anew, solved = solved_anew(file, monkeypatch)
    assert FIVE in solved
    assert told == anew
