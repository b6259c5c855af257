"""A kind of cell is one definition: a made-up one, in this test alone, is read and printed."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import CliRunner

from buildplan.cli import app
from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.cell_turns import CourseTurn, SideLengths, polygon_turn
from buildplan.framework.cells import CELL_KINDS, CellKind, CellWords, cell_kind
from buildplan.instructions.telling import tell_steps
from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.patterns.turning import cell_turn
from buildplan.sequence.steps import plan_steps
from buildplan.source.problems import DesignProblemsError

FILE = """\
buildplan: 1
name: Kinked
units: in
balloons:
  a: {kind: link, nominal: 12, inflate_to: 8, colour: "#112233", label: blue}
  k: {kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
build:
  tube:
    {closed: false, chains: 4, long: a, brace: a, single: a, lock: k,
     course: [straight, kink, straight]}
"""
KINK = CellKind(
    "kink",
    2,
    1,
    CellWords(
        message("kink"),
        message("a kink"),
        message("The piece leans there."),
    ),
    polygon_turn,
)


@pytest.fixture
def file(tmp_path: Path) -> Path:
    file = tmp_path / "kinked.yaml"
    file.write_text(FILE, "utf-8")
    return file


def test_a_made_up_cell_is_read_told_and_printed(
    file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(CELL_KINDS, "kink", KINK)
    framework = build_framework(read_design(file))
    assert [cell.kind for cell in framework.cells] == [
        CELL_KINDS["straight"],
        KINK,
        CELL_KINDS["straight"],
    ]
    # outer chains 1 + 2 + 1 long, inner ones 1 + 1 + 1
    assert [len(long.chain.links) for long in framework.chains] == [4, 3, 3, 4]
    words = tell_steps(plan_steps(framework), framework, "in", Voice())
    told = " ".join(f"{step.title} {step.text}" for step in words)
    assert "kink" in told
    assert "The piece leans there." in told
    assert "uneven" not in told
    printed = CliRunner().invoke(app, ["booklet", str(file), "--out", str(tmp_path), "--draft"])
    assert printed.exit_code in (0, 1), printed.output
    assert (tmp_path / "kinked-training-a4.pdf").exists()


def test_without_it_the_file_is_wrong(file: Path) -> None:
    with pytest.raises(DesignProblemsError) as raised:
        read_design(file)
    assert raised.value.problems[0].path == "build.tube.course[1]"


def test_how_far_it_turns_is_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    def turns_thirty(outer: int, inner: int, lengths: SideLengths) -> CourseTurn:
        return CourseTurn(30.0, 30.0)

    own = CellKind("kink", 2, 1, KINK.words, turns_thirty)
    assert cell_turn(own, SideLengths(1, 1, 1, 8, 12)) == CourseTurn(30.0, 30.0)


def test_no_two_kinds_advance_alike() -> None:
    assert len({kind.advances for kind in CELL_KINDS.values()}) == len(CELL_KINDS)
    for kind in CELL_KINDS.values():
        assert cell_kind(*kind.advances) == kind
