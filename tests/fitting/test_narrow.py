"""What of an outline is too narrow for a tube, and from which height on it no longer is."""

from __future__ import annotations

import numpy as np
import pytest
from shapely import Polygon, box

from buildplan.fitting.effort import EFFORTS
from buildplan.fitting.heights import smallest_height
from buildplan.fitting.larger_report import larger_words
from buildplan.fitting.narrow import least_height_m, narrow_parts, narrow_share, tube_width_m
from buildplan.fitting.outline import outline_of, ring_points
from buildplan.fitting.sources import read_outline
from buildplan.language.voice import Voice

# a flag: a square of 1, and a pole of 0.2 by 2 below it
FLAG = box(0, 2, 1, 3).union(box(0.4, 0, 0.6, 2))


def test_the_share_is_the_area_of_what_is_narrower() -> None:
    """By hand: the pole is 0.4 of 1.4; a square is no narrower than itself."""
    assert narrow_share(FLAG, 0.5) == pytest.approx(0.4 / 1.4, abs=1e-6)
    assert narrow_share(FLAG, 0.19) == pytest.approx(0, abs=1e-6)
    assert narrow_share(box(0, 0, 1, 1), 0.99) == pytest.approx(0, abs=1e-6)
    assert narrow_share(FLAG, 1.01) == pytest.approx(1)


def test_at_the_least_height_the_narrow_part_is_as_wide_as_the_tube() -> None:
    """A pole of a fifteenth of the height comes to 0.43 m at 6.45 m."""
    outline = outline_of("flag", ring_points(FLAG), 1.5)
    assert least_height_m(outline, 0.43) == pytest.approx(0.43 * 15, rel=1e-3)
    assert least_height_m(outline, 0.05) == 1.5


def test_no_height_is_tried_at_which_too_much_is_narrow(monkeypatch: pytest.MonkeyPatch) -> None:
    tried: list[float] = []

    def never(outline: object, gauge: float, units: str, figures: object, height_m: float) -> None:
        tried.append(height_m)

    monkeypatch.setattr("buildplan.fitting.heights._good_at", never)
    flag = outline_of("flag", ring_points(FLAG), 1.5)
    larger = smallest_height(flag, 8.0, "in", EFFORTS["long"])
    assert not tried
    assert larger.least_m == pytest.approx(15 * tube_width_m(8.0, "in"), rel=1e-3)
    said = larger_words(larger, 8.0, "in", Voice())
    assert "29% of the outline is narrower than a tube of 8 in links" in said
    # 258 inches are more than a piece can have: 6 m
    assert "at any height that a piece can have" in said
    assert "Too narrow for it: the part in the middle of the bottom, about 4 in wide" in said
    assert "any height tried" not in said
    smaller = smallest_height(flag, 6.0, "in", EFFORTS["long"])
    assert "below about 193 in" in larger_words(smaller, 6.0, "in", Voice())
    assert all(smaller.least_m <= height_m <= 6 for height_m in tried)
    tried.clear()
    thick = outline_of("flag", ring_points(FLAG.buffer(0.25)), 1.5)
    larger = smallest_height(thick, 6.0, "in", EFFORTS["long"])
    assert tried
    assert min(tried) >= larger.least_m > 1.5
    assert "With links of 6 in it cannot" in larger_words(larger, 6.0, "in", Voice())
    larger = smallest_height(thick, 6.0, "in", EFFORTS["long"], of_figures=(10.0,))
    assert "nor as a figure can it be had" in larger_words(larger, 6.0, "in", Voice())


def test_the_parts_that_are_too_narrow_are_named_by_place_and_width() -> None:
    """By hand: the pole of the flag is 0.2 wide and ends below; the bar of a dumb-bell is a tenth,
    in its middle; a tapering arm counts by its mean width."""
    (pole,) = narrow_parts(FLAG, 0.5)
    assert Voice().tell(pole.where) == "in the middle of the bottom"
    assert pole.width_m == pytest.approx(0.2, abs=1e-4)
    bell = box(0, 0, 1, 1).union(box(1, 0.45, 3, 0.55)).union(box(3, 0, 4, 1))
    (bar,) = narrow_parts(bell, 0.5)
    assert Voice().tell(bar.where) == "in the middle"
    assert bar.width_m == pytest.approx(0.1, abs=1e-4)
    taper = box(0, 0, 1, 1).union(Polygon([(1, 0.8), (1, 1), (3, 0.9)]))
    (arm,) = narrow_parts(taper, 0.5)
    assert Voice().tell(arm.where) == "at the upper right"
    assert arm.width_m == pytest.approx(0.1, abs=0.02)
    assert not narrow_parts(box(0, 0, 1, 1), 0.9)


def test_a_ring_is_nowhere_narrow() -> None:
    ring = read_outline("ring", 1.2)
    assert least_height_m(ring, tube_width_m(8.0, "in")) == 1.2
    assert np.isclose(narrow_share(ring.region, 0.4), 0, atol=0.01)


def test_the_height_told_is_the_smallest_that_will_do_to_five_centimetres(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Of an outline that can be had from 1.37 m on: 1.4 m, found in few tries."""
    tried: list[float] = []

    def from_there_on(
        outline: object, gauge: float, units: str, figures: object, at: float
    ) -> float | None:
        tried.append(at)
        return 5.0 if at >= 1.37 else None

    monkeypatch.setattr("buildplan.fitting.heights._good_at", from_there_on)
    for effort in EFFORTS.values():
        tried.clear()
        larger = smallest_height(read_outline("ring", 1.0), 6.0, "in", effort)
        assert larger.height_m == pytest.approx(1.4)
        assert "about 55 in, with links of 5 in." in larger_words(larger, 6.0, "in", Voice())
        assert len(tried) <= effort.taller + 3
        assert len(set(tried)) == len(tried)
