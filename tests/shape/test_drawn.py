"""Whether a word stays as it is drawn: told of its letters where they lean, sink or come loose."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.model import Framework
from buildplan.patterns.letter_frames import facing
from buildplan.patterns.lettering import HEIGHTS, can_draw, glyph
from buildplan.shape.drawn import not_as_drawn
from buildplan.shape.kinds import ShapeKind
from buildplan.shape.model import FloatArray

FILE = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#C9A227", label: gold}
build:
  letters: {text: "TEXT", cells: 5, long: a, brace: a, lock: k}
"""
# letters with a slanted or round side below, which what stands beside them holds at one height
HINGED = "DKSVXZ35"
CHARACTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"


def word(folder: Path, text: str) -> tuple[Framework, FloatArray]:
    """The framework of a word, and where its joints are drawn."""
    file = folder / "trial.yaml"
    file.write_text(FILE.replace("TEXT", text), "utf-8")
    framework = build_framework(read_design(file))
    return framework, np.array([framework.laid[joint] for joint in framework.places])


def turned(framework: Framework, at: FloatArray, letter: str, degrees: float) -> FloatArray:
    """The joints of a letter turned in the plane of the word, about the first of them."""
    own = [i for i, one in enumerate(framework.places) if one.startswith(f"{letter}.")]
    turn = Rotation.from_euler("z", degrees, degrees=True)
    moved = at.copy()
    moved[own] = at[own[0]] + turn.apply(at[own] - at[own[0]])
    return moved


def test_a_word_as_it_is_drawn_has_no_problem(tmp_path: Path) -> None:
    framework, at = word(tmp_path, "OPEN")
    assert not_as_drawn(framework, at) is None
    # wherever it stands and whichever way it faces
    away = Rotation.from_euler("y", 90, degrees=True).apply(at) + np.array([3.0, 1.0, 0.0])
    assert not_as_drawn(framework, away) is None
    assert not_as_drawn(framework, turned(framework, at, "P", 3.0)) is None


@pytest.mark.parametrize(("letter", "degrees"), [("P", 20.0), ("O", -50.0), ("N", 180.0)])
def test_a_letter_that_goes_out_of_place_is_named(
    tmp_path: Path, letter: str, degrees: float
) -> None:
    framework, at = word(tmp_path, "OPEN")
    problem = not_as_drawn(framework, turned(framework, at, letter, degrees))
    assert problem is not None
    assert problem.kind is ShapeKind.NOT_AS_DRAWN
    assert problem.joints[0].startswith(f"{letter}.")


def test_a_letter_that_sinks_is_told(tmp_path: Path) -> None:
    framework, at = word(tmp_path, "HI")
    own = [one.startswith("I.") for one in framework.places]
    assert not_as_drawn(framework, at - np.outer(own, [0.0, 0.3, 0.0])) is not None


def test_a_letter_that_nothing_ties_is_named(tmp_path: Path) -> None:
    """A V stands on its point, and no bar comes near it under its arms."""
    file = tmp_path / "trial.yaml"
    file.write_text(FILE.replace("TEXT", "IV").replace("cells: 5", "cells: 7"), "utf-8")
    framework = build_framework(read_design(file))
    at = np.array([framework.laid[joint] for joint in framework.places])
    problem = not_as_drawn(framework, at)
    assert problem is not None
    assert problem.joints == ("V.A1",)


@pytest.mark.parametrize("height", HEIGHTS)
def test_what_stands_beside_a_letter_holds_it_at_two_heights(height: int) -> None:
    """One joint, front and back, would be a hinge."""
    bar = glyph("-", height)
    for one in CHARACTERS:
        if one not in HINGED and can_draw(one, height):
            _, pairs = facing(glyph(one, height), bar)
            assert len(pairs) >= 2, one
