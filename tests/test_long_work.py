"""What takes long is said before it begins."""

from __future__ import annotations

from pathlib import Path

import pytest

from buildplan.commands import pieces, printing
from buildplan.commands.expecting import tell_expected
from buildplan.design.reading import read_design
from buildplan.evaluation.expected_time import (
    seconds_to_print,
    seconds_to_resize,
    seconds_to_try_courses,
    seconds_to_work_out,
)
from buildplan.fitting.effort import EFFORTS
from buildplan.fitting.fitting import expected_seconds
from buildplan.fitting.outlines import named_outline
from buildplan.language.voice import Voice

STAR = Path(__file__).parent.parent / "designs" / "reading_star.yaml"


def test_a_long_wait_is_told_and_a_short_one_is_not(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    star = read_design(STAR)
    pieces.tell_if_long(star, seconds_to_print, Voice())
    assert capsys.readouterr().err == ""
    pieces.tell_if_long(star, lambda balloons: 0.5 * balloons, Voice())
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


def test_searches_say_how_long_they_take(capsys: pytest.CaptureFixture[str]) -> None:
    drop = named_outline("drop", 1.5, Voice())
    quick, usual, long = (
        expected_seconds(drop, (8, 6), "in", effort, Voice()) for effort in EFFORTS.values()
    )
    assert 0 < quick < usual < long
    assert expected_seconds(drop, (8,), "in", EFFORTS["usual"], Voice()) < usual
    assert seconds_to_try_courses(300, 24) < seconds_to_try_courses(300, 200)
    assert seconds_to_resize(400) < seconds_to_resize(4_000)
    tell_expected(19.0, Voice())
    assert capsys.readouterr().err == ""
    tell_expected(179.0, Voice())
    assert "up to about 3 minutes" in capsys.readouterr().err
