"""Figures over outlines that no tube can follow: as grown, as written, as solved."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from shapely import Polygon, unary_union
from shapely.geometry import Point

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.fitting.courses import Course
from buildplan.fitting.effort import QUICK
from buildplan.fitting.figure_fits import judged_figure
from buildplan.fitting.figure_growing import Grown, grow, starts_of
from buildplan.fitting.figure_strokes import figure_design
from buildplan.fitting.fit import Fit
from buildplan.fitting.fit_file import fit_text
from buildplan.fitting.fitting import recommended
from buildplan.fitting.following import with_a_foot
from buildplan.fitting.narrow import promising
from buildplan.fitting.outline import Outline, outline_of
from buildplan.fitting.report import fit_report
from buildplan.fitting.sources import read_outline
from buildplan.fitting.tube_design import design_of, gauges_from
from buildplan.language.voice import Voice
from buildplan.patterns.figure_cells import in_the_way, lay_figure, sides_of
from buildplan.patterns.figure_keys import Figure

UNSEEN = Path(__file__).parent / "unseen"
CHANGES = 100
GAUGES = gauges_from(5.0)


@cache
def anchor() -> Outline:
    return read_outline(str(UNSEEN / "anchor.svg"), 1.8)


@cache
def whale() -> Outline:
    """It has no mirror axis."""
    return read_outline(str(UNSEEN / "whale.svg"), 0.9)


@cache
def grown(whole: bool = True) -> Grown:
    starts = starts_of(anchor() if whole else whale(), GAUGES, 3)
    return min((grow(start, CHANGES) for start in starts), key=lambda one: one.score)


@cache
def anchor_fit() -> Fit:
    fit = judged_figure(grown(), anchor(), Voice())
    assert fit is not None
    return fit


def test_of_an_outline_that_is_smaller_than_a_cell_no_figure_is_made() -> None:
    assert judged_figure(replace(grown(), cells=()), anchor(), Voice()) is None


@pytest.mark.parametrize("mirrored", [True, False])
def test_cells_of_a_figure_meet_side_to_side(mirrored: bool) -> None:
    """No side is that of two cells on one side of it, and one outline passes every joint; shapely
    finds no two cells on one another, and one piece."""
    figure = grown(mirrored)
    sides = [side for corners in figure.cells for side in sides_of(corners)]
    assert len(set(sides)) == len(sides)
    free = Counter(a for a, b in sides if (b, a) not in set(sides))
    assert set(free) == {joint for side in sides for joint in side}
    assert set(free.values()) == {1}
    assert all(abs(figure.at[a] - figure.at[b]) == pytest.approx(1.0) for a, b in sides)
    cells = [
        Polygon([(figure.at[joint].real, figure.at[joint].imag) for joint in corners])
        for corners in figure.cells
    ]
    whole = unary_union([cell.buffer(1e-6) for cell in cells])
    assert whole.geom_type == "Polygon"
    assert whole.area == pytest.approx(sum(cell.area for cell in cells), rel=1e-3)


def test_a_figure_is_as_symmetric_as_its_outline() -> None:
    figure = grown()
    places = np.array([figure.at[joint] for c in figure.cells for joint in c])
    axis = figure.start.root.axis
    assert axis is not None
    image = 2 * axis - places.conjugate()
    apart = np.abs(image[:, None] - places).min(axis=1)
    assert apart.max() < 1e-6


def test_a_figure_begins_within_its_outline() -> None:
    """On the mirror axis of an H there is nothing between its legs: a square there would tie them
    together."""
    letter = read_outline("letter:H", 1.2)
    for start in starts_of(letter, GAUGES, 10):
        middle = start.root.at + start.root.along * GAUGES.sizes.long_m * (1 + 1j) / 2
        assert letter.region.contains(Point(middle.real, middle.imag))


def test_more_changes_never_cover_worse() -> None:
    """Of one start, with as many changes and none (those begin with the same growing)."""
    start = grown().start
    assert grown().score <= grow(start, 0).score


@pytest.mark.parametrize("mirrored", [True, False])
def test_strokes_draw_the_same_cells(mirrored: bool) -> None:
    figure = grown(mirrored)
    design = figure_design(figure.at, figure.cells, GAUGES, "anchor")
    keys = design.build.keys_of(Figure)
    assert keys is not None
    sheet = lay_figure(keys)
    assert in_the_way(sheet) is None
    assert sorted(len(cell.corners) for cell in sheet.cells) == sorted(map(len, figure.cells))
    framework = build_framework(design)
    laid = {(round(x, 3), round(y, 3)) for x, y, _ in framework.laid.values()}
    link_m = GAUGES.sizes.long_m
    used = np.array([figure.at[joint] for joint in {j for c in figure.cells for j in c}])
    used = (used - used.real.min() - 1j * used.imag.min()) * link_m
    for place in used:
        nearest = min(Point(place.real, place.imag).distance(Point(one)) for one in laid)
        assert nearest < 0.02 * link_m


def test_a_figure_follows_where_no_tube_can(tmp_path: Path) -> None:
    """An anchor's stock and arms are narrower than any tube; a figure covers more than half as much
    again as the best tube did (0.51)."""
    assert not promising(anchor(), [8.0, 6.0, 5.0], "in")
    fit = anchor_fit()
    assert fit.is_figure
    assert fit.buildable
    assert fit.close.overlap > 0.75
    # it stays as it is drawn
    drawn = np.array([fit.framework.laid[joint] for joint in fit.framework.joints])
    moved = (drawn - drawn.mean(axis=0)) - (fit.shape.positions_m - fit.shape.positions_m.mean(0))
    assert np.abs(moved[:, :2]).max() < 0.1 * fit.close.link_m
    # and its file says the same
    file = tmp_path / "anchor.yaml"
    file.write_text(fit_text(fit, Voice()), "utf-8")
    read = read_design(file)
    assert build_framework(read).laid == fit.framework.laid


def test_a_figure_of_many_more_balloons_is_written_only_if_much_closer() -> None:
    """Of twice the balloons and more, by three hundredths of overlap; and whenever the tube is not
    as close as it should be and the figure is."""
    figure = anchor_fit()
    pointed = Course(first=11, cells=(4,), last=8, mirrored=True, fold=5)
    design = design_of(pointed, GAUGES, "star")
    few = replace(figure, design=design, framework=build_framework(design))
    assert 2 * few.balloons < figure.balloons

    def lapping(fit: Fit, overlap: float, farthest: float = 1.0) -> Fit:
        return replace(fit, close=replace(fit.close, overlap=overlap, farthest=farthest))

    tube = lapping(few, 0.82)
    little, much = lapping(figure, 0.84), lapping(figure, 0.86)
    assert recommended([tube, little]) is tube
    assert recommended([tube, much]) is much
    near = lapping(figure, 0.89, farthest=0.5)
    assert recommended([lapping(few, 0.87), near]) is near
    said = fit_report([tube, little], Voice())
    assert f"The figure of {figure.balloons} balloons comes little closer" in said
    assert "little closer" not in fit_report([tube, much], Voice())


def test_outlines_on_a_point_are_given_a_foot() -> None:
    """A kite on its point is grown with a foot below its weight."""
    kite = outline_of("kite", [0j, -0.4 + 0.8j, 1.2j, 0.4 + 0.8j], 1.2)
    followed = with_a_foot(kite, GAUGES.sizes.long_m)
    figure = grow(starts_of(followed, GAUGES, 2)[0], QUICK.changes)
    used = np.array([figure.at[joint] for c in figure.cells for joint in c])
    low = used.real[used.imag <= used.imag.min() + 0.15]
    assert low.min() < used.real.mean() < low.max()


def test_edges_that_fall_together_are_not_called_narrow() -> None:
    """A kite with four straight sides is nowhere narrower than a tube but at its points, with any
    gauge (the intersection of equal regions came out empty with one)."""
    kite = read_outline(str(UNSEEN / "kite.svg"), 1.2)
    gauges = [4.0, 4.5, 5.0, 5.5, 6.0]
    assert promising(kite, gauges, "in") == gauges
