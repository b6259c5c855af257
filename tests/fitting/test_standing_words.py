"""What is said of how a piece gives: what falls is said to fall, and hardly any wind is no 0."""

from __future__ import annotations

from pathlib import Path

from typer.testing import CliRunner

from buildplan.cli import app
from buildplan.design.measures import speed_words
from buildplan.language.voice import Voice

HEAD = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: navy}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: gold}
build:
"""
SLENDER = "  column: {around: 3, rings: 14, ring: a, between: a, lock: k}\n"
STOUT = "  column: {around: 4, rings: 3, ring: a, between: a, lock: k}\n"
WOUND = """\
  tube:
    {closed: false, chains: 4, long: a, brace: a, lock: k,
     course: [{repeat: 9, cells: [straight, fan]}]}
"""
TOO_TIGHT = """\
  tube:
    {closed: true, chains: 4, long: a, brace: a, lock: k, extra: [[A1, A10]],
     course: [{repeat: 6, cells: [straight, straight, fan]}]}
"""


def checked(folder: Path, build: str) -> str:
    file = folder / "trial.yaml"
    file.write_text(HEAD + build, "utf-8")
    return CliRunner().invoke(app, ["check", str(file)]).output


def row(text: str, name: str) -> str:
    return next(line for line in text.splitlines() if line.startswith(name))


def test_what_may_fall_has_no_sag_as_high_as_itself(tmp_path: Path) -> None:
    """That nothing comes down by more than its own height is plain geometry."""
    assert row(checked(tmp_path, SLENDER), "Sags").endswith(
        "or it does not hold itself up, estimate)"
    )
    assert "hold itself up" not in row(checked(tmp_path, STOUT), "Sags")


def test_an_open_course_is_not_told_to_open(tmp_path: Path) -> None:
    (told,) = (line for line in checked(tmp_path, WOUND).splitlines() if "runs into itself" in line)
    assert "open the course" not in told
    assert "let the course turn less there" in told


def test_a_course_that_comes_round_is_not_blamed_for_a_balloon_more(tmp_path: Path) -> None:
    (told,) = (line for line in checked(tmp_path, TOO_TIGHT).splitlines() if "not close" in line)
    assert "does not balance" not in told
    assert "take out the balloon more between A1 and A10" in told


def test_hardly_any_wind_is_said_to_be_under_one() -> None:
    assert Voice().tell(speed_words(0.1, "in")) == "under 1 mph"
    assert Voice().tell(speed_words(0.1, "cm")) == "under 1 km/h"
    assert Voice().tell(speed_words(0.44704, "in")) == "1 mph"  # 1 mile is 1609.344 m (1959)
