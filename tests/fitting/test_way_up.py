"""An outline that is drawn out of balance: its piece is held the way up that it is drawn."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from buildplan.design.model import Design
from buildplan.design.reading import read_design
from buildplan.evaluation.evaluating import evaluate
from buildplan.fitting import standing_fit
from buildplan.fitting.effort import QUICK
from buildplan.fitting.fit import UPRIGHT_DEG, Fit
from buildplan.fitting.fit_file import fit_text
from buildplan.fitting.fitting import fit_outline, recommended
from buildplan.fitting.report import fit_report
from buildplan.fitting.sources import read_outline
from buildplan.fitting.standing_fit import as_checked
from buildplan.fitting.way_up import feet_to_try, level_joints
from buildplan.language.messages import message
from buildplan.language.voice import Voice
from buildplan.shape.kinds import ShapeKind

BUBBLE = Path(__file__).parent / "unseen" / "bubble.svg"
FEW = replace(QUICK, courses=8, first=3, rounds=0, kept=1, judged=1, roots=1, changes=4, longer=1)


@cache
def bubble() -> Fit:
    return recommended(fit_outline(read_outline(str(BUBBLE), 1.2), (6.0,), effort=FEW))


def test_level_joints_are_low_level_and_far_apart() -> None:
    places = np.array([0.5 - 1j, 0j, 1 + 0.001j, 4 + 0j, 4.2 + 1j, 0 + 6j, 5 + 6j])
    assert level_joints("ABCDEFG", places, 1.0) == ["B", "D"]
    # what lies above one another tells nothing
    assert level_joints("AB", np.array([0j, 3j]), 1.0) == []


def test_own_feet_are_tried_first_then_the_lowest_then_level_ones() -> None:
    places = np.array([0.5 - 1j, 0j, 4 + 0j, 4.2 + 1j, 0 + 6j])
    assert list(feet_to_try("ABCDE", places, 1.0)) == [[], ["A"], ["A"], ["A"], ["B", "C"]]


def test_what_falls_is_the_way_up_that_it_is_drawn(tmp_path: Path) -> None:
    """The tail of a speech bubble is its lowest part, far left of its weight."""
    fit = bubble()
    assert fit.close.overlap > 0.85
    assert abs(fit.turned_deg) < UPRIGHT_DEG
    assert not fit.buildable
    file = tmp_path / "bubble.yaml"
    file.write_text(fit_text(fit, Voice()), "utf-8")
    read = evaluate(read_design(file), "in", 12)
    assert [one.kind for one in read.facts.problems] == [ShapeKind.DOES_NOT_STAND]
    assert read.shape.height_m == pytest.approx(fit.outline.height_m, rel=0.06)
    hung = read_design(file).model_copy(update={"hung": True})
    assert not evaluate(hung, "in", 12).facts.problems


def test_how_far_its_weight_is_beside_its_foot_is_told() -> None:
    fit = bubble()
    standing = fit.shape.standing
    right = float(standing.foot_polygon_m[:, 0].max())
    off_in = round((float(standing.centre_of_mass_m[0]) - right) / 0.0254)
    assert off_in > 5
    assert f"Its weight lies {off_in} in beside its foot" in fit_report([fit], Voice())


def test_what_sags_is_held_by_a_pole_in_its_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A piece that a check finds wrong without a pole and right with one has it in its file; what
    is wrong either way has none. Either is chosen only where none that stands is close."""
    fit, sags = bubble(), message("the piece does not hold itself up")

    def only_with_a_pole(design: Design, *given: object) -> tuple[object, ...]:
        return () if design.pole else (sags,)

    monkeypatch.setattr(standing_fit, "problems_of", only_with_a_pole)
    found = as_checked(fit.design, fit.framework, fit.shape, "in")
    assert found.design.pole
    assert found.shape.holding.fixed
    assert not found.problems
    monkeypatch.setattr(standing_fit, "problems_of", lambda *given: (sags,))
    broken = as_checked(fit.design, fit.framework, fit.shape, "in")
    assert not broken.design.pole
    assert broken.problems == (sags,)
    held = replace(fit, design=found.design, shape=found.shape, problems=())
    said = fit_report([held], Voice())
    assert "only with a pole" in said
    assert "(pole: true is in its file)" in said
    assert not held.buildable
    near = replace(held.close, overlap=0.95, farthest=0.3)
    held = replace(held, close=near, turned_deg=0.0)
    assert held.ready
    upright = replace(fit.shape, standing=replace(fit.shape.standing, stands=True))
    stands = replace(fit, problems=(), shape=upright, close=replace(near, overlap=0.94))
    assert stands.good
    assert recommended([held, stands]) is stands
    rough = replace(stands, close=replace(near, farthest=1.2))
    assert recommended([held, rough]) is held
    file = tmp_path / "held.yaml"
    file.write_text(fit_text(held, Voice()), "utf-8")
    read = read_design(file)
    assert read.pole
    assert not evaluate(read, "in", 12).facts.problems
