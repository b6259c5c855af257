"""Letters and digits: their outlines, junctions and braces, and the whole line behind them."""

from __future__ import annotations

from itertools import product
from pathlib import Path

import networkx as nx
import numpy as np
import pytest

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.counts import multigraph
from buildplan.framework.model import Framework, Role
from buildplan.language.voice import Voice
from buildplan.patterns.alphabet import GLYPHS
from buildplan.patterns.letter_rows import letter_joints
from buildplan.patterns.letter_spacing import facing, joiner
from buildplan.patterns.lettering import HEIGHTS, can_draw, glyph
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.replay import replay
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape
from buildplan.source.problems import DesignProblemsError
from buildplan.source.suggestions import suggestion_words

HEAD = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#C9A227", label: gold}
build:
"""
CHARACTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
LINK_M = 1.15 * 8 * 0.0254
# Holes of the usual capitals and digits, 4 open: common knowledge, no source.
HOLES = {"A": 1, "B": 2, "D": 1, "O": 1, "P": 1, "Q": 1, "R": 1, "0": 1, "6": 1, "8": 2, "9": 1}
# Where three strokes meet or more.
JOINED = "ABEFHKMPRTWXY468"


def letters(text: str, size: str = "cells: 7") -> str:
    return f'  letters: {{text: "{text}", {size}, long: a, brace: a, lock: k}}\n'


def built(folder: Path, build: str) -> Framework:
    file = folder / "trial.yaml"
    file.write_text(HEAD + build, "utf-8")
    return build_framework(read_design(file))


def test_there_is_every_letter_and_digit() -> None:
    assert set(CHARACTERS) <= set(GLYPHS)
    for height in HEIGHTS[1:]:
        assert all(can_draw(one, height) for one in CHARACTERS)


@pytest.mark.parametrize("height", HEIGHTS)
def test_outlines_are_those_of_the_character(height: int) -> None:
    """Its holes; every joint on one outline; Euler's formula V - E + F = 2 for its front, whose
    faces are its cells, its holes and what lies outside (networkx finds the faces)."""
    for one in CHARACTERS:
        if not can_draw(one, height):
            continue
        drawn = glyph(one, height)
        joints = [joint for loop in drawn.loops for joint in loop]
        assert sorted(joints) == list(range(len(drawn.at))), one
        assert len(drawn.loops) == 1 + HOLES.get(one, 0), one
        front = nx.Graph(drawn.rungs)
        for loop in drawn.loops:
            nx.add_cycle(front, loop)
        assert nx.is_connected(front)
        planar, embedding = nx.check_planarity(front)
        assert planar
        seen: set[tuple[int, int]] = set()
        faces = [
            embedding.traverse_face(a, b, mark_half_edges=seen)
            for a, b in embedding.edges
            if (a, b) not in seen
        ]
        assert len(front) - front.number_of_edges() + len(faces) == 2
        # every cell has three or four sides: fans three, squares and corners four
        cells = len(faces) - len(drawn.loops)
        sides = 2 * len(drawn.rungs) + len(joints)
        assert 3 * cells <= sides <= 4 * cells
        # balloons are all of one length where nothing has to give
        apart = [abs(drawn.at[a] - drawn.at[b]) for a, b in front.edges]
        assert np.median(apart) == pytest.approx(1.0)


@pytest.mark.parametrize("one", CHARACTERS)
def test_a_character_is_braced_front_to_back(tmp_path: Path, one: str) -> None:
    framework = built(tmp_path, letters(one))
    drawn = glyph(one, 7)
    joints, rungs = len(drawn.at), len(drawn.rungs)
    # outlines and rungs twice, and one balloon from every joint to the one behind it
    assert len(framework.links) == 2 * (joints + rungs) + joints
    assert set(framework.joints) == set(letter_joints(one, 7))
    ends = {frozenset((link.start, link.finish)) for link in framework.links}
    assert ends == {frozenset(framework.mirror[joint] for joint in pair) for pair in ends}
    assert all(frozenset((joint, twin)) in ends for joint, twin in framework.mirror.items())
    assert all(long.chain.closed for long in framework.chains)
    assert {lock.joint for lock in framework.locks} == set(framework.joints)
    graph = multigraph(framework)
    assert max(len(set(graph[joint])) for joint in graph) <= 6
    # each brace is closed, by its own balloons or by those that it shares
    for brace in framework.braces:
        assert len(brace.links) + len(brace.shared) == 4
    rebuilt = replay(steps_as_json(plan_steps(framework)))
    wanted = {frozenset(edge[:2]) for edge in graph.edges}
    assert {frozenset(edge[:2]) for edge in rebuilt.graph.edges} == wanted
    assert set(rebuilt.locks) == set(framework.joints)


@pytest.mark.parametrize("one", JOINED)
def test_strokes_meet_in_junctions(tmp_path: Path, one: str) -> None:
    """At a junction a cell is braced on three sides or more."""
    drawn = glyph(one, 7)
    front = nx.Graph(drawn.rungs)
    for loop in drawn.loops:
        nx.add_cycle(front, loop)
    rungs = {frozenset(rung) for rung in drawn.rungs}
    cells = [cycle for cycle in nx.minimum_cycle_basis(front) if len(cycle) <= 4]
    braced = [
        sum(front.has_edge(a, b) and frozenset((a, b)) in rungs for a in c for b in c if a < b)
        for c in cells
    ]
    assert max(braced) >= 3


@pytest.mark.parametrize("one", "EHLX08")
def test_a_character_closes_stands_and_is_as_high_as_it_says(tmp_path: Path, one: str) -> None:
    shape = find_shape(built(tmp_path, letters(one)))
    assert not shape.problems
    assert shape.mirrored
    up = [at[1] for at in shape.at.values()]
    assert max(up) - min(up) == pytest.approx(7 * LINK_M, rel=0.05)


def test_height_in_units_takes_the_nearest_cells(tmp_path: Path) -> None:
    by_height = built(tmp_path, letters("E", "height: 86"))  # 9 cells of 9.2 in are 82.8
    assert by_height == built(tmp_path, letters("E", "cells: 9"))


def test_letters_are_raised_to_capitals_and_the_nearest_height_is_taken(tmp_path: Path) -> None:
    """By how high it stands when it is solved, bodies and all."""
    assert built(tmp_path, letters("Leo")) == built(tmp_path, letters("LEO"))
    stands = {
        cells: find_shape(built(tmp_path, letters("L", f"cells: {cells}"))) for cells in (5, 7)
    }
    inches = {cells: shape.height_m / 0.0254 for cells, shape in stands.items()}
    middle = sum(inches.values()) / 2
    for height, cells in ((middle - 2, 5), (middle + 2, 7), (inches[5] - 8, 5)):
        asked = built(tmp_path, letters("L", f"height: {height:.1f}"))
        assert asked == built(tmp_path, letters("L", f"cells: {cells}"))


def test_a_height_that_no_letters_of_the_links_come_near_is_told_with_the_nearest(
    tmp_path: Path,
) -> None:
    """The nearest by how high it stands when it is solved, bodies and all."""
    shape = find_shape(built(tmp_path, letters("L", "cells: 5")))
    with pytest.raises(DesignProblemsError) as raised:
        built(tmp_path, letters("L", f"height: {shape.height_m / 0.0254 / 2:.1f}"))
    (problem,) = raised.value.problems
    told = {key: str(value) for key, value in problem.message.values}
    assert float(told["nearest"]) == pytest.approx(shape.height_m / 0.0254, rel=0.03)


def test_a_word_is_one_piece_of_characters_and_bars(tmp_path: Path) -> None:
    framework = built(tmp_path, letters("LO 1L"))
    names = [part.name for part in framework.parts]
    assert names == ["L-1", "BAR-1", "O", "SPACE", "1", "BAR-2", "L-2"]
    assert set(framework.joints) == set(letter_joints("LO 1L", 7))
    assert nx.is_connected(multigraph(framework))
    between = [link for link in framework.links if "." in link.id and link.role is Role.SINGLE]
    across = [
        link
        for link in between
        if framework.part_at(link.start) is not framework.part_at(link.finish)
    ]
    # front and back, a lower and an upper one at each of six places
    assert len(across) == 4 * 6
    shape = find_shape(framework)
    assert not shape.problems
    assert shape.standing.stands
    left = [min(shape.at[j][0] for j in part.framework.joints) for part in framework.parts]
    assert left == sorted(left)
    rebuilt = replay(steps_as_json(plan_steps(framework)))
    graph = multigraph(framework)
    assert {frozenset(e[:2]) for e in rebuilt.graph.edges} == {
        frozenset(e[:2]) for e in graph.edges
    }


@pytest.mark.parametrize("height", HEIGHTS)
def test_characters_of_a_word_are_told_apart(height: int) -> None:
    """Bodies are about as thick as a link is long: so much is free between two characters at least
    (1.9 links from joint to joint), and no more than is asked for by what leans out."""
    drawn = [one for one in CHARACTERS if can_draw(one, height)]
    apart = []
    for left, right in product(drawn, drawn):
        bar = glyph(joiner(left, right, height), height)
        x = facing(glyph(left, height), bar)[0] + facing(bar, glyph(right, height))[0]
        one, other = np.array(glyph(left, height).at), np.array(glyph(right, height).at) + x
        apart.append(np.abs(other[None] - one[:, None]).min())
    assert min(apart) > 1.85
    assert np.mean(np.array(apart) < 3.2) > 0.99


@pytest.mark.parametrize("height", HEIGHTS)
def test_a_t_is_wider_at_the_top_and_an_i_is_not(height: int) -> None:
    def widths(one: str) -> tuple[float, float]:
        at = np.array(glyph(one, height).at)
        top, foot = at[at.imag > at.imag.max() - 0.5], at[at.imag < at.imag.min() + 0.5]
        return float(np.ptp(top.real)), float(np.ptp(foot.real))

    assert widths("T")[0] >= widths("T")[1] + 2
    assert widths("I")[0] == pytest.approx(widths("I")[1])


def test_what_cannot_stand_says_so(tmp_path: Path) -> None:
    problems = find_shape(built(tmp_path, letters("Z", "cells: 5"))).problems
    assert any("does not stand" in Voice().tell(problem.message) for problem in problems)


@pytest.mark.parametrize(
    ("build", "path", "says"),
    [
        (letters("W", "cells: 5"), "build.letters.cells", "W cannot be had 5 cells high"),
        (letters("E", "cells: 6"), "build.letters.cells", "cells"),
        (letters("E!"), "build.letters.text", "holds signs that no letters"),
        (letters("E", "cells: 7, height: 60"), "build.letters", "twice over"),
        (letters("E").replace("cells: 7, ", ""), "build.letters", "neither"),
        (letters("E").replace("brace: a", "brace: k"), "build.letters.brace", "link"),
    ],
)
def test_mistakes_are_told_with_line_and_path(
    tmp_path: Path, build: str, path: str, says: str
) -> None:
    with pytest.raises(DesignProblemsError) as raised:
        built(tmp_path, build)
    problem = raised.value.problems[0]
    assert problem.path == path
    assert problem.line
    assert says in Voice().tell(problem.message)
    assert suggestion_words(problem.suggestion, Voice())
