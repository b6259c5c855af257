"""The joint map is read as a builder reads it, and what is read must be the piece."""

from __future__ import annotations

import math
from collections import Counter
from itertools import combinations

import networkx as nx
import pytest
from diagram_pieces import assert_inside, assert_readable, built, listed, pieces, star, tube
from hypothesis import given, settings
from hypothesis import strategies as st
from map_reader import assert_rebuilds, read_map

from buildplan.drawing.colours import contrast
from buildplan.drawing.line_art import INK, PAPER, SOFT
from buildplan.drawing.map_layout import UnrolledTube
from buildplan.drawing.map_style import JOINT_FILL, LOCK_RADIUS, REPEAT_FILL
from buildplan.drawing.maps.joint_map import joint_map
from buildplan.drawing.marks import Circle, Label, Picture, Point
from buildplan.framework.counts import multigraph
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice

SHEET = (523.0, 720.0)
PIECES = pieces()


def discs(picture: Picture, joints: set[str]) -> list[tuple[str, Point, float, bool]]:
    """Each joint's disc: its label, centre, radius, and whether it is drawn in full."""
    circles = [m for m in picture.marks if isinstance(m, Circle) and m.radius > 5]
    found = []
    for mark in picture.marks:
        if isinstance(mark, Label) and mark.text in joints and mark.bold and mark.size == 8:
            near = [c for c in circles if math.dist(c.centre, mark.at) < 5]
            found.append((mark.text, near[0].centre, near[0].radius, mark.colour != SOFT))
    return found


def assert_map_is_the_piece(framework: Framework, sheets: tuple[Picture, ...]) -> None:
    assert_rebuilds(framework, sheets)
    # handshake lemma (Euler 1736): the lines' ends, counted at the joints, are twice the lines
    lines = [line for _, line in read_map(sheets).lines if not line.again]
    assert sum(dict(multigraph(framework).degree()).values()) == 2 * len(lines)


@pytest.mark.parametrize("name", PIECES)
def test_the_map_shows_the_piece(name: str) -> None:
    assert_map_is_the_piece(PIECES[name], joint_map(PIECES[name], *SHEET, Voice()))


@pytest.mark.parametrize("name", PIECES)
def test_sheets_are_readable(name: str) -> None:
    framework = PIECES[name]
    joints = set(framework.joints)
    for sheet in joint_map(framework, *SHEET, Voice()):
        assert sheet.width <= SHEET[0]
        assert sheet.height <= SHEET[1] + 1e-6
        assert_inside(sheet)
        assert_readable(sheet)
        spots = discs(sheet, joints)
        for i, (_, one, radius, _) in enumerate(spots):
            for _, other, _, _ in spots[:i]:
                assert math.dist(one, other) >= 2 * radius + 1


@pytest.mark.parametrize("name", PIECES)
def test_brace_numbers_and_locks_are_there_once(name: str) -> None:
    framework = PIECES[name]
    sheets = joint_map(framework, *SHEET, Voice())
    numbers = Counter(
        int(mark.text)
        for sheet in sheets
        for mark in sheet.marks
        if isinstance(mark, Label) and mark.text.isdigit() and mark.bold and mark.colour == INK
    )
    assert numbers == Counter(brace.number for brace in framework.braces)
    rounds = sum(
        isinstance(mark, Circle) and mark.radius == LOCK_RADIUS and mark.ink.fill == PAPER
        for sheet in sheets
        for mark in sheet.marks
    )
    # two rounds a lock, and one lock in each sheet's key
    assert rounds == 2 * len(framework.locks) + 2 * len(sheets)


def test_star_skips_ten_twins_and_is_cut_where_it_repeats() -> None:
    framework = star()
    plan = UnrolledTube(framework)
    strips = plan.strips(12)
    assert [(s.first, s.last) for s in strips] == [(0, 8), (8, 16), (16, 24), (24, 32), (32, 40)]
    open_discs = [
        mark
        for sheet in joint_map(framework, *SHEET, Voice())
        for mark in sheet.marks
        if isinstance(mark, Circle) and mark.ink.fill == PAPER and mark.ink.width == 1.3
    ]
    assert len(open_discs) == 2 * len(framework.singles) + 2  # and one in the key of each sheet


@pytest.mark.parametrize("sheet", [(362.0, 223.0), (387.0, 214.0), (264.0, 289.0)])
def test_small_sheets_hold_a_strip_each(sheet: tuple[float, float]) -> None:
    """Large print leaves this much room; the key goes on a sheet of its own rather than push
    strips off the others, and the heads of strips do not run into each other."""
    framework, joints = star(), set(star().joints)
    sheets = joint_map(framework, *sheet, Voice())
    assert_map_is_the_piece(framework, sheets)
    for picture in sheets:
        assert picture.width <= sheet[0]
        assert picture.height <= sheet[1]
        assert_inside(picture)
        assert_readable(picture)
    keys = [picture for picture in sheets if not discs(picture, joints)]
    upright = sheet[1] > sheet[0]
    assert keys == ([] if upright else [sheets[-1]])


def test_sheets_say_where_the_plan_goes_on() -> None:
    sheets = joint_map(PIECES["long"], *SHEET, Voice())
    assert len(sheets) > 1
    texts = [[m.text for m in sheet.marks if isinstance(m, Label)] for sheet in sheets]
    assert any("goes on at brace" in text and "sheet 2" in text for text in texts[0])
    assert any(text == "ends here" for text in texts[-1])


def test_alt_text_says_what_each_brace_ties() -> None:
    framework = star()
    words = " ".join(sheet.alt for sheet in joint_map(framework, *SHEET, Voice()))
    for brace in framework.braces:
        assert f"Brace {brace.number} ties {', '.join(brace.section)}" in words
    for link in framework.singles:
        assert link in words


CELLS = st.sampled_from(["straight", "fan", "fan_in", "tip", "dip", [2, 1], [1, 3], [2, 2]])


@settings(max_examples=20)
@given(st.lists(CELLS, min_size=1, max_size=30), st.sampled_from([2, 3, 4]))
def test_any_open_course(course: list[object], chains: int) -> None:
    framework = tube(course, chains)
    sheets = joint_map(framework, *SHEET, Voice())
    assert_map_is_the_piece(framework, sheets)
    for sheet in sheets:
        assert_inside(sheet)
        assert_readable(sheet)


SOLIDS = {
    "tetrahedron": nx.tetrahedral_graph(),
    "cube": nx.cubical_graph(),
    "octahedron": nx.octahedral_graph(),
    "dodecahedron": nx.dodecahedral_graph(),
    "icosahedron": nx.icosahedral_graph(),
    "complete on five": nx.complete_graph(5),
    "tree": nx.balanced_tree(2, 3),
}


@pytest.mark.parametrize("name", SOLIDS)
def test_listed_pieces(name: str) -> None:
    framework = listed([(f"J{u}", f"J{v}") for u, v in SOLIDS[name].edges()])
    sheets = joint_map(framework, *SHEET, Voice())
    assert_map_is_the_piece(framework, sheets)
    for sheet in sheets:
        assert_inside(sheet)
        assert_readable(sheet)


def _cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < -1e-6 and side(c, d, a) * side(c, d, b) < -1e-6


@pytest.mark.parametrize("name", ["cube", "octahedron", "dodecahedron", "icosahedron"])
def test_solids_are_drawn_without_crossings(name: str) -> None:
    """Tutte 1963: a 3-connected planar graph drawn by his method has no crossings."""
    framework = listed([(f"J{u}", f"J{v}") for u, v in SOLIDS[name].edges()])
    (sheet,) = joint_map(framework, *SHEET, Voice())
    spots = {joint: centre for joint, centre, _, _ in discs(sheet, set(framework.joints))}
    lines = [(spots[x.start], spots[x.finish]) for x in framework.links]
    assert not any(_cross(*one, *two) for i, one in enumerate(lines) for two in lines[:i])


def test_two_balloons_between_the_same_joints() -> None:
    framework = listed([("P", "Q"), ("P", "Q"), ("Q", "R"), ("R", "P"), ("P", "Q")])
    assert_map_is_the_piece(framework, joint_map(framework, 300, 300, Voice()))


def test_crowded_listed_piece_is_written_out_in_rows() -> None:
    graph = nx.random_regular_graph(4, 60, seed=2)
    framework = listed([(f"J{u}", f"J{v}") for u, v in graph.edges()])
    sheets = joint_map(framework, 380, 380, Voice())
    assert_map_is_the_piece(framework, sheets)
    for sheet in sheets:
        assert_inside(sheet)
        assert_readable(sheet)


@pytest.mark.parametrize(
    ("text", "ground"), [(PAPER, JOINT_FILL), (SOFT, REPEAT_FILL), (SOFT, PAPER), (INK, PAPER)]
)
def test_labels_stand_out_from_their_discs(text: str, ground: str) -> None:
    """WCAG 2.2, success criterion 1.4.3: a contrast of at least 4.5 : 1."""
    assert contrast(text, ground) >= 4.5


LAID: dict[str, dict[str, object]] = {
    "column": {"column": {"around": 6, "rings": 9}},
    "tall column": {"column": {"around": 5, "rings": 40}},
    "wall": {"wall": {"across": 7, "up": 7, "layers": 2}},
}


def _laid(name: str) -> Framework:
    ((pattern, keys),) = LAID[name].items()
    uses = {"column": ("ring", "between"), "wall": ("row", "upright", "between")}[pattern]
    assert isinstance(keys, dict)
    return built({pattern: {**keys, **dict.fromkeys(uses, "long"), "lock": "lock"}})


@pytest.mark.parametrize("name", LAID)
def test_columns_and_walls_are_drawn_as_they_are(name: str) -> None:
    framework = _laid(name)
    sheets = joint_map(framework, *SHEET, Voice())
    assert_map_is_the_piece(framework, sheets)
    for sheet in sheets:
        assert sheet.height <= SHEET[1] + 1e-6
        assert_inside(sheet)
        assert_readable(sheet)
        spots = discs(sheet, set(framework.joints))
        assert all(math.dist(a[1], b[1]) >= 2 * a[2] + 1 for a, b in combinations(spots, 2))


def test_a_column_is_unrolled_as_an_antiprism() -> None:
    """In an antiprism's band every corner above stands over the middle of the edge below it
    (Kepler, Harmonices Mundi 1619, book II; from memory). Seen from outside, what runs clockwise
    from above runs to the left."""
    framework = _laid("column")
    (sheet,) = joint_map(framework, *SHEET, Voice())
    at = {joint: spot for joint, spot, _, full in discs(sheet, set(framework.joints)) if full}
    step = at["A1"][0] - at["A2"][0]
    assert step > 0
    for link in framework.links:
        (x, y), (u, v) = at[link.start], at[link.finish]
        turned = abs(x - u) / step
        expected = 1.0 if y == v else 0.5
        assert min(turned, 6 - turned) == pytest.approx(expected)
