"""What takes long is said before it begins."""

from __future__ import annotations

from pathlib import Path

import pytest
from awkward_pieces import grid, random_graph, tube, wound_tube

from buildplan.commands import pieces, printing
from buildplan.commands.expecting import tell_expected
from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.evaluation.expected_time import (
    PieceSize,
    seconds_to_print,
    seconds_to_resize,
    seconds_to_tell,
    seconds_to_try_courses,
    seconds_to_work_out,
    size_of,
)
from buildplan.evaluation.seating import read_whole
from buildplan.fitting.effort import EFFORTS
from buildplan.fitting.fitting import expected_seconds
from buildplan.fitting.outlines import named_outline
from buildplan.language.voice import Voice
from buildplan.shape.crossing import tied_too_far_across
from buildplan.source.problems import DesignProblemsError, in_words

STAR = Path(__file__).parent.parent / "designs" / "reading_star.yaml"


def test_a_long_wait_is_told_and_a_short_one_is_not(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    star = read_design(STAR)
    pieces.tell_if_long(star, seconds_to_print, Voice())
    assert capsys.readouterr().err == ""
    pieces.tell_if_long(star, lambda size: 38.4, Voice())
    assert "640 balloons: this takes about 40 seconds" in capsys.readouterr().err.replace("\n", " ")
    pieces.tell_if_long(star, lambda size: 0.5 * size.balloons, Voice())
    assert "640 balloons: this takes about 5 minutes" in capsys.readouterr().err.replace("\n", " ")


def test_the_estimate_grows_with_the_piece() -> None:
    for seconds in (seconds_to_work_out, seconds_to_tell, seconds_to_print):
        few, many, most = (seconds(PieceSize(count)) for count in (400, 10_000, 30_000))
        assert few < 5 < 2 * many < most < 600


def test_what_is_tied_at_random_takes_longer_than_what_lies_in_space() -> None:
    """A ring's links close rings of four, all of them; few do of joints that chance ties."""
    lattice = size_of(build_framework(grid(5, 5, 4)))
    tied = size_of(build_framework(random_graph(250)))
    assert 0.8 < tied.balloons / lattice.balloons < 1.2
    assert lattice.across == 0.0
    assert tied.across > 0.7
    assert tied.factor > 3 * lattice.factor
    assert seconds_to_work_out(tied) > 3 * seconds_to_work_out(lattice)


def test_what_is_wound_into_itself_or_made_of_many_parts_takes_longer() -> None:
    straight = size_of(build_framework(tube(100)))
    wound = size_of(build_framework(wound_tube(100)))
    assert straight.pressed == 0
    assert wound.pressed > 3 * wound.balloons
    assert seconds_to_work_out(wound) > 1.5 * seconds_to_work_out(straight)
    assert seconds_to_work_out(PieceSize(3000, parts=1000)) > 50


def test_what_is_tied_too_far_across_is_refused_before_it_is_worked_on(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr("buildplan.shape.crossing.FEW_JOINTS", 0)
    assert tied_too_far_across(build_framework(random_graph(250))) is None
    monkeypatch.setattr("buildplan.shape.crossing.MOST_WORK", 3e7)
    assert tied_too_far_across(build_framework(grid(5, 5, 4))) is None
    file = tmp_path / "tangle.yaml"
    file.write_text(random_graph(250).model_dump_json(by_alias=True, exclude_unset=True), "utf-8")
    with pytest.raises(DesignProblemsError) as raised:
        read_whole(file)
    (problem,) = raised.value.problems
    assert "so many of its joints are tied crosswise" in in_words(problem, Voice())


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
    assert seconds_to_resize(PieceSize(400)) < seconds_to_resize(PieceSize(4_000))
    tell_expected(19.0, Voice())
    assert capsys.readouterr().err == ""
    tell_expected(179.0, Voice())
    assert "up to about 3 minutes" in capsys.readouterr().err
