"""A shape is the same to the last digits that are kept, whatever a processor makes of those after.

Processors and versions of libraries add in different orders, and so differ in the last digits
(Higham, Accuracy and Stability of Numerical Algorithms, 2nd edition, 2002, chapter 4: summation).
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.model import Framework
from buildplan.shape import finding
from buildplan.shape.bodies import LinkBodies
from buildplan.shape.comparing import apart_m, laid_on
from buildplan.shape.finding import Settings, come_to_rest
from buildplan.shape.model import FloatArray
from buildplan.shape.posing import DIGITS_OF_A_METRE

GALLERY = Path(__file__).parent.parent.parent / "designs" / "gallery"
LAST_DIGIT_M = 1e-15


@pytest.mark.parametrize("name", ["dawn_column", "reading_column", "evening_moon"])
def test_a_piece_comes_to_rest_in_the_same_place_whatever_the_last_digits(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    framework = build_framework(read_design(GALLERY / f"{name}.yaml"))
    first = come_to_rest(framework).results[0]
    starts, other = finding._starts, np.random.default_rng(3)

    def elsewhere(framework: Framework, bodies: LinkBodies, settings: Settings) -> list[FloatArray]:
        return [
            start + LAST_DIGIT_M * other.standard_normal(start.shape)
            for start in starts(framework, bodies, settings)
        ]

    monkeypatch.setattr(finding, "_starts", elsewhere)
    second = come_to_rest(framework).results[0]
    assert first.positions_m == pytest.approx(
        second.positions_m, rel=0, abs=1e-3 * 10**-DIGITS_OF_A_METRE
    )
    assert first.residual_n < 1e-10


def test_a_shape_is_laid_on_another_and_not_mirrored() -> None:
    chance = np.random.default_rng(4)
    shape = chance.standard_normal((9, 3))
    turn, _ = np.linalg.qr(chance.standard_normal((3, 3)))
    turn *= np.sign(np.linalg.det(turn))
    moved = shape @ turn + [1.0, 2.0, 3.0]
    assert laid_on(shape, moved) == pytest.approx(shape)
    mirrored = moved * [1.0, 1.0, -1.0]
    assert not np.allclose(laid_on(shape, mirrored), shape, atol=0.1)
    assert apart_m(shape, mirrored) == pytest.approx(np.zeros(9), abs=1e-12)
    # what is flat lies on itself whichever way its third axis is taken
    flat = shape * [1.0, 1.0, 0.0]
    assert laid_on(flat, flat @ turn) == pytest.approx(flat)
