"""Lengths as people write them."""

import pytest

from buildplan.design.measures import gauged_words, length_words, nominal_words, size_words
from buildplan.language.voice import Voice

INCH = 0.0254  # exact: international inch, 1959


@pytest.mark.parametrize(
    ("inches", "words"),
    [
        (8, "8 in"),
        (3.5, "3 1/2 in"),
        (0.75, "3/4 in"),
        (5.26, "5 1/4 in"),
        (11.9, "12 in"),
        (0.01, "1/4 in"),
    ],
)
def test_inches_are_told_to_the_quarter(inches: float, words: str) -> None:
    assert Voice().tell(length_words(inches * INCH, "in")) == words


@pytest.mark.parametrize(
    ("metres", "words"), [(0.2032, "20.5 cm"), (0.2, "20 cm"), (0.0889, "9 cm"), (0.001, "0.5 cm")]
)
def test_centimetres_are_told_to_the_half(metres: float, words: str) -> None:
    assert Voice().tell(length_words(metres, "cm")) == words


@pytest.mark.parametrize(
    ("inches", "in_inches", "in_cm"),
    [(8, "8 in", "20.3 cm"), (3.5, "3 1/2 in", "8.9 cm"), (3.4, "3.4 in", "8.6 cm")],
)
def test_gauges_are_told_as_they_are_cut(inches: float, in_inches: str, in_cm: str) -> None:
    said = [Voice().tell(gauged_words(inches * INCH, units)) for units in ("in", "cm")]
    assert said == [in_inches, in_cm]
    assert Voice().tell(gauged_words(0.2, "cm")) == "20 cm"


@pytest.mark.parametrize(("inches", "words"), [(12, "30 cm"), (5, "13 cm"), (11, "28 cm")])
def test_balloons_are_sold_in_whole_centimetres(inches: float, words: str) -> None:
    """A 12 in balloon is called 30 cm (common practice, no source)."""
    assert Voice().tell(nominal_words(inches * INCH, "cm")) == words
    assert Voice().tell(nominal_words(inches * INCH, "in")) == f"{inches} in"
    # and what is sold by centimetres is called in whole inches
    in_cm = float(words.removesuffix(" cm"))
    assert Voice().tell(nominal_words(in_cm / 100, "in")) == f"{inches} in"


@pytest.mark.parametrize(
    ("metres", "units", "words"),
    [
        (76 * INCH, "in", "6 ft 4 in"),
        (72 * INCH, "in", "6 ft"),
        (10 * INCH, "in", "10 in"),
        (71.6 * INCH, "in", "6 ft"),
        (1.934, "cm", "1.93 m"),
    ],
)
def test_sizes_of_pieces(metres: float, units: str, words: str) -> None:
    assert Voice().tell(size_words(metres, units)) == words  # type: ignore[arg-type]
