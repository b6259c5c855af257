"""Diagrams of one cell and of one brace."""

from __future__ import annotations

import math
from itertools import combinations
from pathlib import Path

import pytest
from diagram_pieces import assert_inside, assert_readable, pieces, star

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.drawing.cell_diagrams import cell_diagram
from buildplan.drawing.cell_plan import INNER, OUTER, polygon, run_plan
from buildplan.drawing.labels import label_boxes
from buildplan.drawing.line_art import PAPER
from buildplan.drawing.map_style import LOCK_RADIUS
from buildplan.drawing.marks import Circle, Curve, Label, Picture
from buildplan.drawing.section_diagram import section_diagram
from buildplan.framework.cells import FAN, STRAIGHT
from buildplan.framework.model import Cell
from buildplan.language.voice import Voice

PIECES = pieces()
WORD = Path(__file__).parents[2] / "designs" / "gallery" / "leo_5.yaml"
CASES = sorted(
    {
        (name, next(c.number for c in framework.cells if c.name == kind))
        for name, framework in PIECES.items()
        for kind in {cell.name for cell in framework.cells}
    }
    | {(name, len(framework.cells)) for name, framework in PIECES.items()}
)


def texts(picture: Picture) -> list[str]:
    return [mark.text for mark in picture.marks if isinstance(mark, Label)]


@pytest.mark.parametrize(
    ("sides", "circumradius"),
    [(3, 0.5774), (4, 0.7071), (5, 0.8507), (6, 1.0000), (8, 1.3066)],
)
def test_cells_are_regular_polygons(sides: int, circumradius: float) -> None:
    """R/S of regular polygons: Machinery's Handbook, 31st ed., p. 82."""
    for outer in range(sides - 1):
        corners = polygon(outer, sides - 2 - outer)
        assert len(corners) == sides
        for at in corners.values():
            assert math.hypot(*at) == pytest.approx(circumradius, abs=5e-5)


def test_a_fan_turns_by_sixty_degrees() -> None:
    """Two straight cells with a fan between: the angle of an equilateral triangle."""
    cells = [
        Cell(1, STRAIGHT, 1, 2, ()),
        Cell(2, FAN, 2, 3, ()),
        Cell(3, STRAIGHT, 3, 4, ()),
    ]
    at = run_plan(cells, 0)

    def way(a: tuple[int, int], b: tuple[int, int]) -> float:
        return math.degrees(math.atan2(at[b][1] - at[a][1], at[b][0] - at[a][0]))

    before, after = way((OUTER, 0), (OUTER, 1)), way((OUTER, 2), (OUTER, 3))
    assert before - after == pytest.approx(60)
    assert way((INNER, 0), (INNER, 1)) - way((INNER, 1), (INNER, 2)) == pytest.approx(60)


@pytest.mark.parametrize(("name", "number"), CASES)
def test_a_cell_shows_its_joints_and_is_readable(name: str, number: int) -> None:
    framework = PIECES[name]
    cell = framework.cells[number - 1]
    picture = cell_diagram(framework, number, 250, 172, Voice())
    assert (picture.width, picture.height) == (250, 172)
    assert_inside(picture)
    assert_readable(picture)
    joints = {
        *framework.braces[cell.first - 1].section,
        *framework.braces[cell.second - 1].section,
        *cell.skipped,
    }
    shown = [text for text in texts(picture) if text in framework.joints]
    assert joints <= set(shown)
    assert len(shown) == len(set(shown))
    # joints that are not the cell's are those that its chains pass, of [m, n] cells only
    assert set(shown) == joints


@pytest.mark.parametrize(("name", "number"), CASES)
def test_joints_stand_clear(name: str, number: int) -> None:
    picture = cell_diagram(PIECES[name], number, 250, 172, Voice())
    discs = [m for m in picture.marks if isinstance(m, Circle) and m.radius > 5]
    for i, one in enumerate(discs):
        for other in discs[:i]:
            assert math.dist(one.centre, other.centre) >= 2 * one.radius


@pytest.mark.parametrize(("name", "number"), CASES)
def test_every_balloon_of_a_cell_is_drawn(name: str, number: int) -> None:
    framework = PIECES[name]
    picture = cell_diagram(framework, number, 250, 172, Voice())
    joints = {text for text in texts(picture) if text in framework.joints}
    inside = [x for x in framework.links if {x.start, x.finish} <= joints]
    bodies = [m for m in picture.marks if isinstance(m, Curve) and m.ink.stroke]
    assert len(bodies) == len(inside)


def test_the_star_tip_marks_shared_single_and_new() -> None:
    picture = cell_diagram(star(), 4, 250, 172, Voice())
    assert texts(picture).count("shared") == 1
    assert texts(picture).count("single") == 1
    assert {"brace 4", "brace 5"} <= set(texts(picture))
    bold = [m for m in picture.marks if isinstance(m, Curve) and m.ink.width == 2.0]
    assert len(bold) == 3  # the second brace is a chain of three (common practice, no source)
    open_discs = [
        m for m in picture.marks if isinstance(m, Circle) and m.ink.fill == PAPER and m.radius > 5
    ]
    assert len(open_discs) == 2
    for words in ("C4-D6, D6-A6, A6-B4", "Shared with another brace: B4-C4", "A5, D5", "A5-D5"):
        assert words in picture.alt


def test_the_ring_closes_on_its_first_brace() -> None:
    picture = cell_diagram(star(), 40, 250, 172, Voice())
    assert {"A1", "B1", "C1", "D1", "B39", "C39", "B40", "C40"} <= set(texts(picture))
    assert "New in brace 40" in picture.alt


@pytest.mark.parametrize("name", PIECES)
def test_sections(name: str) -> None:
    framework = PIECES[name]
    for brace in framework.braces[:12]:
        picture = section_diagram(framework, brace.number, framework.lock_at, Voice(), 172)
        assert_inside(picture)
        assert_readable(picture)
        words = texts(picture)
        assert set(brace.section) <= set(words)
        order = {
            data["joint"]: int(data["order"])
            for mark in picture.marks
            if isinstance(mark, Label) and "order" in (data := dict(mark.data))
        }
        walked = dict.fromkeys(joint for chain in brace.chains for joint in chain.joints)
        assert sorted(order, key=lambda joint: order[joint]) == list(walked)
        assert words.count("shared") == len(brace.shared)
        for chain in brace.chains:
            assert " to ".join(chain.joints) in picture.alt


def test_words_of_a_section_keep_apart_where_labels_are_long() -> None:
    """A part's name makes its joints' discs large, up to where the picture's own words are."""
    word = build_framework(read_design(WORD))
    for brace in word.braces[:12]:
        picture = section_diagram(word, brace.number, word.lock_at, Voice())
        boxes = [box for found in label_boxes(picture).values() for box in found]
        for one, other in combinations(boxes, 2):
            wide = min(one[2], other[2]) - max(one[0], other[0])
            high = min(one[3], other[3]) - max(one[1], other[1])
            assert wide <= 0 or high <= 0


def test_a_section_shows_the_locks_that_are_set_now() -> None:
    """A lock is a pair of rounds; of the first brace of a ring, two joints wait for the last."""
    framework = PIECES["star"]
    picture = section_diagram(framework, 1, {"B1", "C1"}, Voice())
    rounds = [m for m in picture.marks if isinstance(m, Circle) and m.radius == LOCK_RADIUS]
    assert len(rounds) == 2 * 2
    assert "A lock at each of B1, C1." in picture.alt


def test_only_joints_that_are_locked_by_then_carry_locks() -> None:
    """A star's tip with all locks, with two, and with none: fewer marks each time, by as many for
    each lock."""
    framework, joints = star(), star().brace[5].section[:2]
    everywhere, two, none = (
        len(cell_diagram(framework, 4, 250, 172, Voice(), locked).marks)
        for locked in (None, joints, ())
    )
    assert everywhere > two > none
    assert (two - none) % len(joints) == 0


@pytest.mark.parametrize("width", [130.0, 140.0, 158.0])
@pytest.mark.parametrize("language", ["en", "de", "es"])
def test_no_word_of_a_narrow_corner_is_cut_off(width: float, language: str) -> None:
    framework = star()
    for number in (4, 8):  # a tip and a dip
        assert_inside(cell_diagram(framework, number, width, 136.0, Voice(language)))
