"""A kind of balloon is one definition: a made-up one, in this test alone, prints its booklet."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import CliRunner

from buildplan.cli import app
from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.design.schema import design_schema
from buildplan.framework.balloon_kinds import BALLOON_KINDS, BalloonKind, BalloonWords
from buildplan.language.messages import message, message_count
from buildplan.source.problems import DesignProblemsError

FILE = """\
buildplan: 1
name: Pods
units: in
balloons:
  a: {kind: pod, nominal: 12, inflate_to: 8, colour: "#112233", label: blue}
  k: {kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
build: {column: {around: 4, rings: 2, ring: a, between: a, lock: k}}
"""
POD = BalloonKind(
    "pod",
    True,
    "link",
    BalloonWords(
        called=message("pod"),
        sized="{size} pod",
        coloured="{colour} pod",
        coloured_sized="{colour} {size} pod",
        coloured_and_sized="{colour}, {size} pod",
        in_a_key="Colour {letter}: {colour}, a pod.",
        sized_anew="{keys} sized to {gauge} {units} ({bag} {units} pod)",
        not_for="{key} is a pod, and {use} is made of rounds",
        in_stock="{colour} {size} pod, sized to {gauge} ({key})",
        counted=message_count("{number} {colour} pod ({letter})", "{number} pods", 0),
    ),
)


@pytest.fixture
def file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setitem(BALLOON_KINDS, "pod", POD)
    file = tmp_path / "pods.yaml"
    file.write_text(FILE, "utf-8")
    return file


def test_a_made_up_kind_is_a_strut_and_prints_its_booklet(file: Path, tmp_path: Path) -> None:
    framework = build_framework(read_design(file))
    # 4 edges of either square and 8 between: an antiprism of a square (Euler: 8 - 16 + 10 = 2)
    assert len(framework.links) == 16
    assert framework.balloons["a"].kind is POD
    assert framework.balloons["a"].tie_to_tie_m > framework.balloons["a"].gauge_m
    printed = CliRunner().invoke(app, ["booklet", str(file), "--out", str(tmp_path), "--draft"])
    assert printed.exit_code in (0, 1), printed.output
    assert (tmp_path / "pods-training-a4.pdf").exists()
    assert "12 in pod" in CliRunner().invoke(app, ["check", str(file)]).output
    assert "pod" in design_schema()["$defs"]["Balloon"]["properties"]["kind"]["enum"]


def test_it_is_refused_for_locks_in_its_own_words(file: Path) -> None:
    file.write_text(FILE.replace("lock: k", "lock: a"), "utf-8")
    with pytest.raises(DesignProblemsError) as raised:
        read_design(file)
    (problem,) = raised.value.problems
    assert problem.message.text == POD.words.not_for


def test_without_it_the_file_is_wrong(tmp_path: Path) -> None:
    file = tmp_path / "pods.yaml"
    file.write_text(FILE, "utf-8")
    with pytest.raises(DesignProblemsError) as raised:
        read_design(file)
    assert raised.value.problems[0].path == "balloons.a.kind"
