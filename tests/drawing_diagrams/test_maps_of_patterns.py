"""The joint maps of the shipped columns, walls, solids, globe, words and assembly are read from
their SVG, and what is read must be the piece; every label on them can be read."""

from __future__ import annotations

import math
from functools import cache
from itertools import combinations, pairwise
from pathlib import Path

import numpy as np
import pytest
from diagram_pieces import assert_inside, assert_readable, built, label_box
from map_reader import assert_rebuilds, read_map

from buildplan.design.building import build_framework
from buildplan.drawing.map_style import REPEAT_FILL
from buildplan.drawing.maps.blocks import MapNames
from buildplan.drawing.maps.joint_map import joint_map
from buildplan.drawing.maps.round_map import RoundMaps
from buildplan.drawing.maps.round_piece import round_piece
from buildplan.drawing.marks import Circle, Label, Picture
from buildplan.evaluation.seating import read_whole
from buildplan.framework.chain_roles import RING, ROW, UPRIGHT, ZIGZAG
from buildplan.framework.chained import ChainRun, build_chained
from buildplan.framework.model import Framework
from buildplan.language.voice import LOCALES, Voice
from buildplan.sequence.courses import loose_chains
from buildplan.shape.finding import find_shape
from buildplan.shape.model import FloatArray

GALLERY = Path(__file__).parents[2] / "designs" / "gallery"
# How many sheets each takes at most on A4, and what it took when chains were drawn as strings.
SHEETS = {
    "dawn_column": (1, 1),
    "reading_column": (1, 1),
    "slim_column": (1, 1),
    "story_wall": (1, 3),
    "doorway_wall": (2, 4),
    "reading_globe": (1, 1),
    "lamp_octahedron": (1, 1),
    "lamp_icosahedron": (1, 1),
    "lamp_cuboctahedron": (1, 1),
    "leo_5": (4, 7),
    "portal": (2, 3),
}
ROUND = [name for name in SHEETS if "globe" in name or "lamp" in name]
COLUMNS = [name for name in SHEETS if "column" in name]
# The room that the maps have in the training edition, in the crew's and on a phone.
A4, LETTER, PHONE = (510.0, 640.0), (527.0, 590.0), (360.0, 1500.0)


@cache
def piece(name: str) -> Framework:
    return build_framework(read_whole(GALLERY / f"{name}.yaml"))


@cache
def places(name: str) -> dict[str, FloatArray] | None:
    return find_shape(piece(name)).at if name in ROUND else None


@cache
def sheets(name: str, sheet: tuple[float, float] = A4, language: str = "en") -> tuple[Picture, ...]:
    return joint_map(piece(name), *sheet, Voice(language), places(name))


@pytest.mark.parametrize("sheet", [A4, LETTER, PHONE])
@pytest.mark.parametrize("name", SHEETS)
def test_the_map_is_the_piece(name: str, sheet: tuple[float, float]) -> None:
    assert_rebuilds(piece(name), sheets(name, sheet))


@pytest.mark.parametrize("language", LOCALES)
@pytest.mark.parametrize("sheet", [A4, LETTER, PHONE])
@pytest.mark.parametrize("name", SHEETS)
def test_every_label_can_be_read(name: str, sheet: tuple[float, float], language: str) -> None:
    """No label lies on another, on the disc of another joint or under a brace's number; discs
    stand clear of one another."""
    for picture in sheets(name, sheet, language):
        assert picture.width <= sheet[0]
        assert picture.height <= sheet[1] + 1e-6
        assert_inside(picture)
        assert_readable(picture)
        discs = [
            mark
            for mark in picture.marks
            if isinstance(mark, Circle) and mark.radius > 8 and mark.ink.fill != REPEAT_FILL
        ]
        for one, other in combinations(discs, 2):
            assert math.dist(one.centre, other.centre) >= one.radius + other.radius
        for label in (mark for mark in picture.marks if isinstance(mark, Label)):
            left, low, right, high = label_box(label)
            for disc in discs:
                x, y = disc.centre
                off = math.hypot(max(left - x, 0.0, x - right), max(low - y, 0.0, y - high))
                if math.hypot(x - label.at[0], y - label.at[1]) > 5 and not label.text.isdigit():
                    assert off >= disc.radius - 0.5, (label.text, disc.centre)


@pytest.mark.parametrize("name", SHEETS)
def test_it_takes_fewer_sheets_than_strings_of_chains(name: str) -> None:
    most, before = SHEETS[name]
    assert most <= before
    assert len(sheets(name)) <= most


def test_equal_parts_are_drawn_once() -> None:
    found = read_map(sheets("portal"))
    both = {one.names for one in found.joints if not one.again and len(one.names) == 2}
    assert len(both) == len(piece("portal").parts[0].framework.joints)
    assert all(left.replace("L.", "R.") == right for left, right in both)
    labels = [m.text for s in sheets("portal") for m in s.marks if isinstance(m, Label)]
    assert "L and R" in labels


@pytest.mark.parametrize("name", COLUMNS)
def test_rings_are_rows_and_joints_lie_between_the_two_below(name: str) -> None:
    """A column is a stack of antiprism bands: each joint of a ring is joined to two neighbours of
    the ring below (from memory; Coxeter, Regular Polytopes, 1.6), and lies between them."""
    found = read_map(sheets(name))
    at: dict[str, list[tuple[float, float]]] = {}
    for one in found.joints:
        at.setdefault(one.names[0], []).append(one.middle)
    rings = [long.chain.joints for long in piece(name).chains if long.role == RING]
    levels = [{round(y, 1) for joint in ring for _, y in at[joint]} for ring in rings]
    assert all(len(level) == 1 for level in levels)
    assert [max(level) for level in levels] == sorted(max(level) for level in levels)
    width = abs(at[rings[0][1]][0][0] - at[rings[0][0]][0][0])
    for long in (one for one in piece(name).chains if one.role == ZIGZAG):
        for link in map(piece(name).link.__getitem__, long.chain.links):
            across = min(abs(a[0] - b[0]) for a in at[link.start] for b in at[link.finish])
            assert across == pytest.approx(width / 2, abs=0.1)


def test_joints_of_one_number_lie_above_one_another_in_every_second_ring() -> None:
    """On the piece and on its map: B1 between A1 and A2, C1 above A1."""
    at = find_shape(piece("slim_column")).at
    drawn = read_map(sheets("slim_column"))
    x = {one.names[0]: one.middle[0] for one in drawn.joints if not one.again}
    for number in range(1, 5):
        low, above = at[f"A{number}"], at[f"C{number}"]
        assert np.allclose(low[[0, 2]], above[[0, 2]], atol=0.01)
        assert x[f"C{number}"] == pytest.approx(x[f"A{number}"])
    middle = (at["A1"] + at["A2"]) / 2
    sides = [np.hypot(*(at[f"B{number}"] - middle)[[0, 2]]) for number in range(1, 5)]
    assert min(sides) == sides[0]
    assert x["B1"] == pytest.approx((x["A1"] + x["A2"]) / 2)


def test_rings_that_all_turn_on_lean_on_the_map() -> None:
    """As they do listed by hand with each zigzag from joint 1 to joint 1."""
    own = piece("slim_column")
    names = [[f"{letter}{n}" for n in range(1, 5)] for letter in "ABC"]
    runs = [ChainRun(RING, None, ring, "ring", closed=True) for ring in names]
    runs += [
        ChainRun(
            ZIGZAG,
            None,
            [joint for both in zip(low, high, strict=True) for joint in both],
            "between",
            closed=True,
        )
        for low, high in pairwise(names)
    ]
    leaning = build_chained("Leaning", own.balloons, runs, "lock", names[0])
    drawn = joint_map(leaning, *A4, Voice())
    assert_rebuilds(leaning, drawn)
    x = {one.names[0]: one.middle[0] for one in read_map(drawn).joints if not one.again}
    assert x["C1"] == pytest.approx(x["A2"])


def test_a_column_is_seen_from_outside() -> None:
    """Numbers that run clockwise seen from above run to the left for whoever stands outside."""
    framework = piece("slim_column")
    shape = find_shape(framework).at
    for turned in (False, True):
        mirror = np.array([-1.0 if turned else 1.0, 1.0, 1.0])
        at = {joint: place * mirror for joint, place in shape.items()}
        drawn = read_map(joint_map(framework, *A4, Voice(), at))
        x = {one.names[0]: one.middle[0] for one in drawn.joints if not one.again}
        ring = framework.chains[0].chain.joints
        # twice the area enclosed (shoelace formula), seen from above with the front at the foot
        plan = [(at[joint][0], -at[joint][2]) for joint in ring]
        around = zip(plan, [*plan[1:], plan[0]], strict=True)
        clockwise = sum(a[0] * b[1] - a[1] * b[0] for a, b in around) < 0
        assert all((x[second] < x[first]) == clockwise for first, second in pairwise(ring))


@pytest.mark.parametrize("name", ROUND)
def test_a_round_map_is_azimuthal_equidistant(name: str) -> None:
    """From the centre of an azimuthal equidistant projection all distances and bearings are true:
    rho is R times the angle from the centre, the azimuth is unchanged (Snyder, Map Projections: A
    Working Manual, USGS Professional Paper 1395, 1987, chapter 25; from memory)."""
    framework, at = piece(name), places(name)
    assert at is not None
    whole = round_piece(framework, at)
    assert whole is not None
    middle = np.mean([at[joint] for joint in framework.joints], axis=0)
    blocks = RoundMaps(whole, MapNames(), Voice()).blocks(1.0, 500.0, 500.0)
    for half, block in zip(whole.halves, blocks, strict=True):
        to_pole = np.array([0.0, -1.0 if half.from_below else 1.0, 0.0])
        to_the_right = np.array([1.0, 0.0, 0.0])
        drawn, expected = [], []
        for joint in block.joints:
            off = at[joint.joint] - middle
            angle = math.acos(np.clip(off @ to_pole / np.linalg.norm(off), -1, 1))
            # whoever looks down has what is at the back up on the paper, of both halves
            up = np.cross(np.array([0.0, 1.0, 0.0]), to_the_right)
            bearing = math.atan2(off @ up, off @ to_the_right)
            expected.append((angle * math.cos(bearing), angle * math.sin(bearing)))
            drawn.append(joint.at)
        seen, true = np.array(drawn), np.array(expected)
        seen, true = seen - seen.mean(axis=0), true - true.mean(axis=0)
        scale = float((seen * true).sum() / (true * true).sum())
        assert scale > 0
        assert np.abs(seen - scale * true).max() < 0.1
    # in too little room it is as small as it can be read, and no smaller: its letters stand there
    letters = {long.letter for long in framework.chains} - loose_chains(framework)
    for least in (
        RoundMaps(whole, MapNames(), Voice()).blocks(0.0, room, 300.0) for room in (90, 300)
    ):
        told = {mark.text for block in least for mark in block.notes if isinstance(mark, Label)}
        assert letters <= told
        for block in least:
            spots = [joint.at for joint in block.joints]
            apart = min(math.dist(one, other) for one, other in combinations(spots, 2))
            assert apart > 2 * MapNames().radius(framework.joints)


def test_every_balloon_at_a_pole_of_the_globe_can_be_seen() -> None:
    """Five balloons meet at each of the twelve corners of an icosahedron (Coxeter, Regular
    Polytopes, table I; from memory), two of which are the globe's poles."""
    framework, at = piece("reading_globe"), places("reading_globe")
    assert at is not None
    ends = [end for line in _full_lines("reading_globe") for end in line]
    for pole in (min(at, key=lambda j: at[j][1]), max(at, key=lambda j: at[j][1])):
        assert len(framework.links_at[pole]) == 5
        assert ends.count(pole) == 5


def _full_lines(name: str) -> list[tuple[str, str]]:
    found = read_map(sheets(name))
    lines = (found.joined(sheet, line) for sheet, line in found.lines if not line.again)
    return [(first[0], second[0]) for first, second in lines]


@pytest.mark.parametrize("name", ["story_wall", "doorway_wall"])
def test_front_and_back_of_a_wall_are_grids(name: str) -> None:
    """Joints of a row are on one level, in their order from the left; those of an upright in one
    line, from the foot up; what is behind a joint is named beside it."""
    framework = piece(name)
    at = {one.names[0]: one.middle for one in read_map(sheets(name)).joints if not one.again}
    for long in framework.chains:
        spots = [at[joint] for joint in long.chain.joints]
        if long.role == ROW:
            assert len({round(y, 1) for _, y in spots}) == 1
            assert [x for x, _ in spots] == sorted(x for x, _ in spots)
        elif long.role == UPRIGHT:
            assert len({round(x, 1) for x, _ in spots}) == 1
            assert [y for _, y in spots] == sorted(y for _, y in spots)


def test_large_walls_and_columns_are_cut_into_tiles() -> None:
    for build in (
        {"wall": {"across": 22, "up": 18, "layers": 2, "row": "long", "upright": "long",
                  "between": "long", "lock": "lock"}},
        {"column": {"around": 24, "rings": 40, "ring": "long", "between": "cross",
                    "lock": "lock"}},
    ):  # fmt: skip
        framework = built(build)
        drawn = joint_map(framework, *A4, Voice())
        assert len(drawn) > 1
        assert_rebuilds(framework, drawn)
        for picture in drawn:
            assert_inside(picture)
            assert_readable(picture)
