"""Colours against published values."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from buildplan.drawing.colours import contrast, from_oklab, luminance, mix, shade, to_oklab

colours = st.integers(0, 0xFFFFFF).map(lambda value: f"#{value:06X}")


@pytest.mark.parametrize(
    ("first", "second", "ratio"),
    [
        ("#000000", "#FFFFFF", 21.0),  # WCAG 2.2, definition of contrast ratio
        ("#767676", "#FFFFFF", 4.542),  # worked from WCAG's formula by hand
        ("#777777", "#FFFFFF", 4.478),
        ("#0072B2", "#FFFFFF", 5.19),  # Okabe and Ito's blue
    ],
)
def test_contrast_ratio(first: str, second: str, ratio: float) -> None:
    assert contrast(first, second) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize(
    ("colour", "lab"),
    [
        # CSS Color 4's sample values for Oklab, from memory
        ("#FFFFFF", (1.0, 0.0, 0.0)),
        ("#FF0000", (0.628, 0.225, 0.126)),
        ("#00FF00", (0.866, -0.234, 0.179)),
        ("#0000FF", (0.452, -0.032, -0.312)),
    ],
)
def test_oklab(colour: str, lab: tuple[float, float, float]) -> None:
    assert to_oklab(colour) == pytest.approx(lab, abs=0.001)


@given(colours)
def test_oklab_there_and_back(colour: str) -> None:
    assert from_oklab(to_oklab(colour)) == colour


@given(colours, st.floats(0.05, 0.9))
def test_shade_darkens_and_lightens(colour: str, amount: float) -> None:
    tolerance = 1 / 255
    assert luminance(shade(colour, -amount)) <= luminance(colour) + tolerance
    assert luminance(shade(colour, amount)) >= luminance(colour) - tolerance


@given(colours, colours)
def test_mix_begins_and_ends_at_its_colours(first: str, second: str) -> None:
    assert mix(first, second, 0.0) == first
    assert mix(first, second, 1.0) == second


def test_grey_keeps_its_hue_in_shadow() -> None:
    assert np.allclose(to_oklab(shade("#FFFFFF", -0.4))[1:], 0, atol=0.003)
