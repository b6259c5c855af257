"""Whether a word stays as it is drawn: told of its letters where they lean, sink or come loose."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from pathlib import Path

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.model import Framework
from buildplan.patterns.letter_spacing import facing, joiner
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
    framework, at = word(tmp_path, "HI")
    kept = [one for one in framework.links if {one.start[:2], one.finish[:2]} != {"BA", "I."}]
    problem = not_as_drawn(replace(framework, links=tuple(kept)), at)
    assert problem is not None
    assert problem.joints == ("I.A1",)


@pytest.mark.parametrize("height", HEIGHTS)
def test_every_two_letters_are_tied_to_the_bar_between_them(height: int) -> None:
    """A longer bar where one leans out over the other; and nothing of one is in the other."""
    for one, other in product("ADFHJKLPSTVXYZ347", repeat=2):
        if can_draw(one, height) and can_draw(other, height):
            a, b = glyph(one, height), glyph(other, height)
            bar = glyph(joiner(one, other, height), height)
            (near, first), (far, second) = facing(a, bar), facing(bar, b)
            assert first, (one, other)
            assert second, (one, other)
            apart = np.array(b.at)[None] + near + far - np.array(a.at)[:, None]
            assert np.abs(apart).min() > 0.9, (one, other)


@pytest.mark.parametrize("height", HEIGHTS)
def test_what_stands_beside_a_letter_holds_it_at_two_heights(height: int) -> None:
    """One joint, front and back, would be a hinge."""
    bar = glyph("-", height)
    for one in CHARACTERS:
        if one not in HINGED and can_draw(one, height):
            _, pairs = facing(glyph(one, height), bar)
            assert len(pairs) >= 2, one
