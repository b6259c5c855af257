"""Figures drawn in strokes of cells: their graphs, what is refused, and the whole line behind."""

from __future__ import annotations

from pathlib import Path

import networkx as nx
import numpy as np
import pytest
import yaml

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.counts import multigraph
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.patterns.registry import joints_of
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
  figure:
    long: a
    brace: a
    lock: k
"""
LINK_M = 1.15 * 8 * 0.0254
PLUS = """\
    strokes:
      - cells: [{repeat: 3, cells: [straight]}, straight]
      - {stroke: 1, cell: 3, side: left, cells: [straight]}
      - {stroke: 1, cell: 3, side: right, cells: [straight]}
      - {stroke: 1, cell: 1, side: left, cells: [straight]}
      - {stroke: 1, cell: 1, side: right, cells: [straight]}
"""
# squares on the sides of a hexagon that is left open, with a triangle between each two
RING = """\
    strokes:
      - cells: [straight, fan_left, straight, fan_left, straight, fan_left, straight, fan_left,
          straight, fan_left, straight, fan_left]
"""
TREE = """\
    heading: 90
    strokes:
      - cells: [straight, straight, fan_left]
      - {stroke: 1, cell: 2, side: left, cells: [fan_left]}
      - {stroke: 1, cell: 2, side: right, cells: [fan_right]}
"""


def built(folder: Path, build: str) -> Framework:
    file = folder / "trial.yaml"
    file.write_text(HEAD + build, "utf-8")
    return build_framework(read_design(file))


def front_of(framework: Framework) -> nx.Graph[str]:
    """The front as a graph: its own outlines and the braces' front links."""
    front = [joint for joint in framework.joints if framework.laid[joint][2] > 0]
    return nx.Graph(multigraph(framework).subgraph(front))


@pytest.mark.parametrize(
    ("build", "squares", "triangles", "holes"), [(PLUS, 8, 0, 0), (TREE, 2, 3, 0), (RING, 6, 6, 1)]
)
def test_cells_share_sides_and_are_braced_there(
    tmp_path: Path, build: str, squares: int, triangles: int, holes: int
) -> None:
    """Counted by hand; Euler's formula V - E + F = 2 for the front, whose faces are its cells, its
    holes and what lies outside; every side of it is a link long."""
    framework = built(tmp_path, build)
    front = front_of(framework)
    cells = squares + triangles
    assert len(front) - front.number_of_edges() + cells + holes + 1 == 2
    # a side of two cells is counted twice, one on an outline once
    outer = sum(len(c.chain.joints) for c in framework.chains) // 2
    assert 4 * squares + 3 * triangles == 2 * len(framework.braces) + outer
    assert len(framework.chains) == 2 * (1 + holes)
    for a, b in front.edges:
        apart = np.subtract(framework.laid[a], framework.laid[b])
        assert np.linalg.norm(apart) == pytest.approx(LINK_M)
    # and one balloon from every joint to the one behind it
    assert len(framework.links) == 2 * front.number_of_edges() + len(front)
    joints = joints_of(yaml.safe_load(HEAD + build)["build"])
    assert joints is not None
    assert set(joints.labels) == set(framework.joints)


@pytest.mark.parametrize("build", [PLUS, TREE])
def test_a_figure_closes_and_stands_as_it_is_drawn(tmp_path: Path, build: str) -> None:
    framework = built(tmp_path, build)
    shape = find_shape(framework)
    assert not shape.problems
    drawn = np.array([framework.laid[joint][:2] for joint in framework.joints])
    found = np.array([shape.at[joint][:2] for joint in framework.joints])
    drawn, found = drawn - drawn.mean(axis=0), found - found.mean(axis=0)
    assert np.abs(drawn - found).max() < 0.15 * LINK_M


def test_the_order_of_work_builds_it(tmp_path: Path) -> None:
    framework = built(tmp_path, PLUS)
    rebuilt = replay(steps_as_json(plan_steps(framework)))
    wanted = {frozenset(edge[:2]) for edge in multigraph(framework).edges}
    assert {frozenset(edge[:2]) for edge in rebuilt.graph.edges} == wanted
    assert set(rebuilt.locks) == set(framework.joints)


def test_heading_turns_the_whole(tmp_path: Path) -> None:
    """Lying on its side it is as long as it was high."""
    upright, lying = built(tmp_path, TREE), built(tmp_path, TREE.replace("90", "0"))

    def extent(framework: Framework, axis: int) -> float:
        return float(np.ptp([at[axis] for at in framework.laid.values()]))

    assert extent(lying, 0) == pytest.approx(extent(upright, 1))
    assert extent(lying, 1) == pytest.approx(extent(upright, 0))


@pytest.mark.parametrize(
    ("build", "path", "says"),
    [
        # back over the first cell
        ("strokes: [{cells: [straight, corner_left, corner_left, corner_left, straight]}]",
         "build.figure.strokes[0].cells", "cell 5 of stroke 1 lies on another"),
        # six triangles shut their middle joint in
        ("strokes: [{cells: [fan_left, fan_left, fan_left, fan_left, fan_left, fan_left]}]",
         "build.figure.strokes[0].cells", "cell 6 of stroke 1 shuts in a joint"),
        # two squares that meet at a joint alone
        ("strokes: [{cells: [straight]}, {stroke: 1, cell: 1, side: left, cells: [corner_right, "
         "straight, corner_right, straight, corner_right, straight]}]", "build.figure.strokes",
         "meets another at a joint alone"),
        ("strokes: [{cells: [straight]}, {stroke: 1, cell: 2, side: left, cells: [straight]}]",
         "build.figure.strokes[1]", "a side that is not there"),
        ("strokes: [{cells: [straight]}, {cells: [straight]}]",
         "build.figure.strokes[1]", "a side that is not there"),
        ("strokes: [{cells: [fan_left]}, {stroke: 1, cell: 1, side: ahead, cells: [straight]}]",
         "build.figure.strokes[1]", "a side that is not there"),
        ("strokes: [{cells: [strait]}]", "build.figure.strokes[0].cells[0]", "strait"),
        ("strokes: []", "build.figure.strokes", "strokes"),
    ],
)  # fmt: skip
def test_mistakes_are_told_with_line_and_path(
    tmp_path: Path, build: str, path: str, says: str
) -> None:
    with pytest.raises(DesignProblemsError) as raised:
        built(tmp_path, f"    {build}\n")
    problem = raised.value.problems[0]
    assert problem.path.startswith(path)
    assert problem.line
    assert says in Voice().tell(problem.message)
    assert suggestion_words(problem.suggestion, Voice())
