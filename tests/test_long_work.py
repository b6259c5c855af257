"""What takes long is said before it begins."""

from __future__ import annotations

from pathlib import Path

import pytest

from buildplan.commands import pieces, printing
from buildplan.design.reading import read_design
from buildplan.evaluation.expected_time import seconds_to_print, seconds_to_work_out
from buildplan.language.voice import Voice

STAR = Path(__file__).parent.parent / "designs" / "reading_star.yaml"


def test_a_long_wait_is_told_and_a_short_one_is_not(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    star = read_design(STAR)
    pieces._tell_if_long(star, seconds_to_print, Voice())
    assert capsys.readouterr().err == ""
    pieces._tell_if_long(star, lambda balloons: 0.5 * balloons, Voice())
    assert "640 balloons: this takes about 5 minutes" in capsys.readouterr().err.replace("\n", " ")


def test_the_estimate_grows_with_the_piece() -> None:
    for seconds in (seconds_to_work_out, seconds_to_print):
        assert seconds(400) < 5
        assert seconds(2_000) < seconds(10_000) < seconds(30_000) < 3600


def test_many_copies_are_told_and_few_are_not(capsys: pytest.CaptureFixture[str]) -> None:
    printing._tell_if_many(200, Voice())
    assert capsys.readouterr().err == ""
    printing._tell_if_many(2_400, Voice())
    assert "2,400 copies: this takes about 2 minutes" in capsys.readouterr().err
