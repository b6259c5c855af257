"""Outlines: named ones, SVG files, letters, and what is refused."""

from __future__ import annotations

from math import pi
from pathlib import Path

import numpy as np
import pytest
from matplotlib.textpath import TextPath
from shapely import Polygon

from buildplan.fitting.inside import band_width_m
from buildplan.fitting.lettering import letter_outline
from buildplan.fitting.outline import OutlineError, outline_of, symmetry_of
from buildplan.fitting.outlines import NAMED, named_outline
from buildplan.fitting.sources import (
    parse_gauges,
    parse_height,
    read_outline,
    read_outlines,
    units_of,
)
from buildplan.fitting.svg_outline import svg_outline

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">'


def drawn(folder: Path, body: str) -> Path:
    file = folder / "own.svg"
    file.write_text(f"{HEAD}{body}</svg>", "utf-8")
    return file


def area(points: np.ndarray) -> float:
    return float(Polygon(np.column_stack([points.real, points.imag])).area)


@pytest.mark.parametrize("name", NAMED)
def test_a_named_outline_has_its_height_and_stands_on_the_floor(name: str) -> None:
    outline = named_outline(name, 1.5)
    assert outline.height_m == pytest.approx(1.5)
    assert outline.points.imag.min() == pytest.approx(0.0, abs=1e-12)
    assert outline.region.is_valid
    assert not outline.region.exterior.is_ccw


@pytest.mark.parametrize("name", NAMED)
def test_turning_angles_of_a_simple_closed_curve_sum_to_a_full_turn(name: str) -> None:
    """Hopf's Umlaufsatz (1935), from memory: a simple closed plane curve turns 360 degrees."""
    points = named_outline(name, 1.5).points
    along = np.roll(points, -1) - points
    turns = np.angle(np.roll(along, -1) / along)
    assert turns.sum() == pytest.approx(-2 * pi)


@pytest.mark.parametrize(
    ("name", "fold", "mirrored"),
    [("star", 5, True), ("star-7", 7, True), ("rounded-square", 4, True), ("leaf", 2, True),
     ("lightning", 2, False), ("drop", 1, True), ("crescent", 1, True)],
)  # fmt: skip
def test_symmetry_is_told(name: str, fold: int, mirrored: bool) -> None:
    symmetry = symmetry_of(named_outline(name, 1.5))
    assert (symmetry.fold, bool(symmetry.mirrors)) == (fold, mirrored)


def test_a_ring_is_a_circle() -> None:
    """Area over squared perimeter of a circle is 1 / (4 pi), the most there is."""
    region = named_outline("ring", 1.5).region
    assert 4 * pi * region.area / region.length**2 == pytest.approx(1.0, abs=1e-3)


def test_every_command_of_svg_path_data_is_read(tmp_path: Path) -> None:
    """M L H V C S Q T A Z, absolute and relative (W3C SVG 2, section 9.3). The half discs
    added to the square of 40 have together the area of a disc of radius 20."""
    file = drawn(tmp_path, '<path d="M30 30 H70 a20 20 0 0 1 0 40 L30 70 A20 20 0 0 1 30 30 z"/>')
    assert area(svg_outline(file).points) == pytest.approx(1600 + pi * 400, rel=2e-3)
    # a parabola through the control point: area under Q is two thirds of base by height / 2
    file = drawn(tmp_path, '<path d="m0 50 q50 -50 100 0 Z"/>')
    assert area(svg_outline(file).points) == pytest.approx(100 * 25 * 2 / 3, rel=2e-3)
    # T and S mirror the control point before them: an S-curve and its way straight back
    file = drawn(tmp_path, '<path d="M0 50 Q25 0 50 50 T100 50 V90 h-100 Z"/>')
    assert area(svg_outline(file).points) == pytest.approx(4000, rel=2e-3)
    file = drawn(tmp_path, '<path d="M0 50 C10 20 40 20 50 50 s40 30 50 0 V90 H0 z"/>')
    assert area(svg_outline(file).points) == pytest.approx(4000, rel=2e-3)


def test_y_points_down_in_svg_and_up_here(tmp_path: Path) -> None:
    points = svg_outline(drawn(tmp_path, '<path d="M0 0 L100 0 L50 80 Z"/>')).points
    assert points.imag.min() == pytest.approx(-80)
    widest = points[np.isclose(points.imag, 0)]
    assert np.ptp(widest.real) == pytest.approx(100)


def test_transforms_and_other_shapes_are_read_and_the_largest_is_taken(tmp_path: Path) -> None:
    file = drawn(
        tmp_path,
        '<rect x="1" y="1" width="3" height="3"/>'
        '<g transform="scale(2)"><circle cx="20" cy="20" r="15"/></g>',
    )
    assert area(svg_outline(file).points) == pytest.approx(pi * 30**2, rel=5e-3)


RING = "M50 10 A40 40 0 1 1 49.99 10 Z"
WITHIN, WITHIN_BACK = "M50 30 A20 20 0 1 1 49.99 30 Z", "M50 30 A20 20 0 1 0 50.01 30 Z"


@pytest.mark.parametrize(
    ("body", "holes", "left_out"),
    [
        (f'<path fill-rule="evenodd" d="{RING} {WITHIN}"/>', 1, 0),
        (f'<path style="fill-rule:evenodd" d="{RING} {WITHIN}"/>', 1, 0),
        (f'<path d="{RING} {WITHIN_BACK}"/>', 1, 0),
        (f'<path d="{RING} {WITHIN}"/>', 0, 1),
        (f'<path d="{RING}"/><path d="{WITHIN_BACK}"/>', 0, 1),
    ],
    ids=["even-odd", "even-odd in a style", "other way round", "same way round", "on top"],
)
def test_holes_are_what_the_fill_rule_leaves_empty(
    tmp_path: Path, body: str, holes: int, left_out: int
) -> None:
    """The non-zero and even-odd rules of SVG 2, section 13.4.2."""
    found = svg_outline(drawn(tmp_path, body))
    assert (len(found.holes), found.left_out) == (holes, left_out)
    outline = outline_of("ring", found.points, 1.6, found.holes)
    left = pi * 0.8**2 - (pi * 0.4**2 if holes else 0.0)
    assert outline.region_with_holes.area == pytest.approx(left, rel=5e-3)


def test_a_band_has_one_width(tmp_path: Path) -> None:
    """A ring of radii 40 and 20, drawn 1.6 m high, is 40 cm wide everywhere; A and B are none."""
    found = svg_outline(drawn(tmp_path, f'<path fill-rule="evenodd" d="{RING} {WITHIN}"/>'))
    assert band_width_m(outline_of("ring", found.points, 1.6, found.holes)) == pytest.approx(
        0.4, rel=0.01
    )
    assert band_width_m(read_outline("letter:O", 1.5)) is not None
    for other in ("letter:A", "letter:B", "letter:L", "star"):
        assert band_width_m(read_outline(other, 1.5)) is None


def test_a_letter_has_the_holes_of_the_font() -> None:
    """The genus of the letters, as topology has it: A and O have one hole, B two, L none."""
    for letter, holes in (("A", 1), ("B", 2), ("L", 0), ("O", 1), ("8", 2)):
        assert len(read_outline(f"letter:{letter}", 1.5).holes) == holes


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (f'{HEAD}<path d="M0 0 L10 0 L10 10"/></svg>', "no closed path"),
        (f"{HEAD}</svg>", "no closed path"),
        ("no drawing at all", "not written as SVG is: see its line 1"),
        (
            '<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>' + HEAD + "&b;</svg>",
            "entities",
        ),
        (HEAD + " " * 3_000_000 + "</svg>", "larger than"),
        (f'{HEAD}<path d="M0 0{" L1 1 L2 5" * 15_000} Z"/></svg>', "path segments"),
    ],
    ids=["open", "empty", "text", "entities", "huge", "many"],
)
def test_an_svg_that_will_not_do_is_refused(tmp_path: Path, text: str, says: str) -> None:
    file = tmp_path / "bad.svg"
    file.write_text(text, "utf-8")
    with pytest.raises(OutlineError, match=says):
        svg_outline(file)


@pytest.mark.parametrize(
    "drawn",
    ['<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>', "<g>" * 300 + "</g>" * 300],
    ids=["in themselves", "deep"],
)
def test_shapes_without_end_are_told_as_that(tmp_path: Path, drawn: str) -> None:
    """SVG 2, 5.6: a `use` that leads back to itself is an error."""
    file = tmp_path / "bad.svg"
    file.write_text(f"{HEAD}{drawn}</svg>", "utf-8")
    with pytest.raises(OutlineError, match="too deep in others or in themselves"):
        svg_outline(file)


def test_more_outlines_than_are_drawn_at_once_are_told(tmp_path: Path) -> None:
    file = tmp_path / "dots.svg"
    dots = [f'<rect x="{3 * n}" width="2" height="2"/>' for n in range(9)]
    file.write_text(f"{HEAD}{''.join(dots)}</svg>", "utf-8")
    with pytest.raises(OutlineError, match="shows 9 outlines, and at most 8"):
        read_outlines(str(file), 1.5)
    file.write_text(f"{HEAD}{''.join(dots[:8])}</svg>", "utf-8")
    assert len(read_outlines(str(file), 1.5)) == 8


def test_a_crossing_outline_is_refused() -> None:
    with pytest.raises(OutlineError, match="crosses"):
        outline_of("bow", [0, 1 + 1j, 1, 0.2 + 1j], 1.0)


def test_a_letter_is_that_of_the_font() -> None:
    """matplotlib's TextPath as an independent reading of the font: L is as wide for its height."""
    from matplotlib.font_manager import FontProperties

    path = TextPath((0, 0), "L", size=50, prop=FontProperties(family="DejaVu Sans", weight="bold"))
    box = path.get_extents()
    points = letter_outline("L").points
    assert np.ptp(points.real) / np.ptp(points.imag) == pytest.approx(
        box.width / box.height, rel=0.02
    )


@pytest.mark.parametrize(
    ("source", "says"),
    [("strr", "there is no outline"), ("letter:AB", "not one letter"), ("letter:i", "in 2 parts"),
     ("shape.tif", "no drawing that is read"), ("star-99", "there is no outline")],
)  # fmt: skip
def test_other_outlines_are_refused(source: str, says: str) -> None:
    with pytest.raises(OutlineError, match=says):
        read_outline(source, 1.5)


def test_heights_and_gauges_are_read() -> None:
    assert parse_height("150cm") == pytest.approx(1.5)
    assert parse_height("60 in") == pytest.approx(1.524)  # 25.4 mm to the inch, exact
    for feet in ("5 ft 3 in", "5'3\"", "5′3", "5ft3in", "5 feet 3 inches", "63 inches", '63"'):
        assert parse_height(feet) == pytest.approx(63 * 0.0254)
        assert units_of(feet) == "in"
    for metric in ("1,8 m", "1m80", "180 centimetres", "1 m 80 cm", "1800mm"):
        assert parse_height(metric) == pytest.approx(1.8)
        assert units_of(metric) == "cm"
    assert parse_gauges("8, 6") == (8.0, 6.0)
    for wrong in ("tall", "9km", "1cm", "5 ft 3 cm", "5 in 3 ft", "-3in", "1.8.2m"):
        with pytest.raises(ValueError, match="height"):
            parse_height(wrong)
    with pytest.raises(ValueError, match="no unit; write 150cm or 150in"):
        parse_height("150")
    for wrong in ("", "a", "0", "99"):
        with pytest.raises(ValueError, match="gauges"):
            parse_gauges(wrong)
