"""Simulated sight and colour differences, against colorspacious (which ships the tables that
Machado and others published)."""

import numpy as np
import pytest
from colorspacious import cspace_convert
from hypothesis import given
from hypothesis import strategies as st

from buildplan.drawing.colour_vision import VISIONS, confusable, difference, lightness, seen_as
from buildplan.drawing.colours import linear

colours = st.integers(0, 0xFFFFFF).map(lambda value: f"#{value:06X}")
PUBLISHED = {
    "protanopia": "protanomaly",
    "deuteranopia": "deuteranomaly",
    "tritanopia": "tritanomaly",
}


def rgb(colour: str) -> np.ndarray:
    return np.array([int(colour[i : i + 2], 16) for i in (1, 3, 5)]) / 255


@pytest.mark.parametrize("vision", PUBLISHED)
@given(colours)
def test_sight_is_that_of_the_published_tables(vision: str, colour: str) -> None:
    space = {"name": "sRGB1+CVD", "cvd_type": PUBLISHED[vision], "severity": 100}
    wanted = np.clip(cspace_convert(rgb(colour), space, "sRGB1"), 0, 1)
    assert rgb(seen_as(colour, vision)) == pytest.approx(wanted, abs=1.5 / 255)


@given(colours, colours)
def test_difference_is_that_of_cielab(first: str, second: str) -> None:
    labs = [cspace_convert(rgb(colour), "sRGB1", "CIELab") for colour in (first, second)]
    assert lightness(first) == pytest.approx(labs[0][0], abs=0.05)
    assert difference(first, second) == pytest.approx(np.linalg.norm(labs[0] - labs[1]), abs=0.15)


@given(colours)
def test_full_sight_changes_nothing(colour: str) -> None:
    assert seen_as(colour, "full colour") == colour


@pytest.mark.parametrize("grey", ["#000000", "#404040", "#808080", "#C0C0C0", "#FFFFFF"])
@pytest.mark.parametrize("vision", VISIONS)
def test_greys_stay_grey(grey: str, vision: str) -> None:
    seen = linear(seen_as(grey, vision))
    assert np.ptp(seen) < 0.01


def test_the_usual_mistakes() -> None:
    # CIE lightness of Okabe and Ito's colours in grey print: orange and sky blue are one grey
    assert lightness("#E69F00") == pytest.approx(70.6, abs=0.1)
    assert lightness("#56B4E9") == pytest.approx(69.8, abs=0.1)
    assert confusable("#E69F00", "#56B4E9")
    # red and green of like lightness, to those who do not tell red from green
    assert difference("#B05050", "#708030") > 50
    assert difference(*(seen_as(c, "deuteranopia") for c in ("#B05050", "#708030"))) < 20
    assert not confusable("#000000", "#FFFFFF")
