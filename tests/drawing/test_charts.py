"""The charts of `check --chart`: their figures are those of the check."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from buildplan.design.reading import read_design
from buildplan.drawing.charts import FORMS, GAUGE_STEPS, ballast_kg, check_chart, heights_m
from buildplan.drawing.fonts import text_width
from buildplan.drawing.lettering import line_outline
from buildplan.drawing.typeset import setting
from buildplan.drawing.typeset.setting import set_line
from buildplan.evaluation.evaluating import Evaluation, evaluate
from buildplan.language.told import NoSignError
from buildplan.language.voice import Voice

DESIGNS = Path(__file__).parents[2] / "designs"


@cache
def frame(gust: float | None = None) -> Evaluation:
    design = read_design(DESIGNS / "picture_frame.yaml")
    return evaluate(design, design.units, 12, gust)


def test_the_ballast_is_what_check_says_of_that_gust() -> None:
    piece = frame(5.0)
    found = piece.examination
    assert found.wind.ballast is not None
    (likely,) = ballast_kg(found.mass.value, found.wind.tips_at.value, np.array([5.0]))
    held = found.wind.ballast_factor * likely
    assert held == pytest.approx(found.wind.ballast.value, rel=1e-6)


def test_no_ballast_is_asked_for_below_the_gust_that_tips() -> None:
    assert ballast_kg(2.0, 3.0, np.array([0.0, 2.9, 3.0])).tolist() == [0.0, 0.0, 0.0]
    # drag goes with the square of the speed (ASCE 7: q = 0.613 v^2): twice the gust, three masses
    assert ballast_kg(2.0, 3.0, np.array([6.0])).tolist() == [6.0]


def test_heights_go_through_the_height_of_the_piece() -> None:
    likely, low, high = heights_m(frame())
    middle = likely[np.abs(GAUGE_STEPS).argmin()]
    assert middle == pytest.approx(frame().standing_height_m)
    assert (np.diff(likely) > 0).all()
    assert (low < likely).all()
    assert (likely < high).all()


@pytest.mark.parametrize("form", FORMS.values())
def test_the_same_piece_gives_the_same_bytes(form: str) -> None:
    first = check_chart(frame(), form, Voice())
    assert first == check_chart(frame(), form, Voice())
    assert first != check_chart(frame(), form, Voice("es"))


def test_a_name_is_no_formula_and_stands_above_in_its_own_script_or_is_refused(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    set_line.cache_clear()
    monkeypatch.setattr(setting, "fonts_of_machine", lambda: ())
    for name in ("$x^{", "\u05db\u05d5\u05db\u05d1 3", "W" * 80):
        named = replace(frame(), facts=replace(frame().facts, name=name))
        assert check_chart(named, "svg", Voice()) != check_chart(frame(), "svg", Voice())
    unknown = replace(frame(), facts=replace(frame().facts, name="\u661f"))
    with pytest.raises(NoSignError, match=r"U\+661F"):
        check_chart(unknown, "png", Voice())
    set_line.cache_clear()


@pytest.mark.parametrize(
    "text", ["Fish & Co", "\u05db\u05d5\u05db\u05d1 3", "\u0646\u062c\u0645\u0629"]
)
def test_an_outline_is_as_wide_as_the_line_is_set(text: str) -> None:
    line, wide = line_outline(text, 12.0)
    # lines of pages know no kerning
    assert wide == pytest.approx(text_width(text, 12.0), rel=0.04)
    box = line.get_extents()
    assert box.x0 > -1.0
    assert box.x1 < wide + 1.0
    assert 0.4 * wide < box.width
