"""Assemblies: parts keep what they are, ties bring them together; the whole line behind them."""

from __future__ import annotations

import json
from collections import Counter
from itertools import pairwise
from pathlib import Path
from typing import Any

import networkx as nx
import numpy as np
import pytest
from trial_file import HEAD

from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.framework.counts import balloon_counts, multigraph
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.model import Kind
from buildplan.sequence.replay import ReplayError, replay
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape
from buildplan.source.problems import DesignProblemsError
from buildplan.source.suggestions import suggestion_words

COLUMN = "{column: {around: 4, rings: 3, ring: a, between: b, lock: k}}"
CUBE = "{solid: {shape: cube, edge: a, lock: k}}"
TUBE = (
    "{tube: {closed: false, chains: 4, long: a, brace: b, lock: k, course: [straight, straight]}}"
)
STACKED = f"""\
  assembly:
    parts:
      - {{name: L, build: {COLUMN}}}
      - {{name: U, build: {COLUMN}}}
    ties: [[L.C1, U.A1], [L.C2, U.A2], [L.C3, U.A3], [L.C4, U.A4]]
    lock: k
"""
ROW = f"""\
  assembly:
    parts:
      - name: S
        repeat: 3
        build: {TUBE}
        to_next:
          - {{joints: [B1, A1], balloon: b}}
          - {{joints: [C1, D1], balloon: b}}
          - {{joints: [B3, A3], balloon: b}}
          - {{joints: [C3, D3], balloon: b}}
    lock: k
"""


def built(folder: Path, build: str, more: str = "") -> Framework:
    file = folder / "trial.yaml"
    file.write_text(HEAD + build + more, "utf-8")
    return build_framework(read_design(file))


def edges(graph: nx.MultiGraph) -> list[tuple[Any, list[Any], list[Any]]]:
    return sorted(
        (key, sorted((one, other)), sorted(data.items()))
        for one, other, key, data in graph.edges(keys=True, data=True)
    )


def test_an_assembly_takes_what_its_parts_take_and_a_lock_for_each_tie(tmp_path: Path) -> None:
    whole = built(tmp_path, STACKED)
    part = built(tmp_path, f"  {COLUMN[1:-1]}\n")
    alone = balloon_counts(part)
    assert balloon_counts(whole) == {
        "a": 2 * alone["a"],
        "b": 2 * alone["b"],
        "k": 2 * alone["k"] + 2 * 4,
    }
    # bringing joints together takes a node away each time, and no balloon
    graph = multigraph(whole)
    assert len(graph) == 2 * len(part.joints) - 4
    assert graph.number_of_edges() == 2 * len(part.links)
    assert nx.is_connected(graph)
    assert len(set(whole.joints)) == len(whole.joints)
    assert {joint.split(".")[0] for joint in whole.joints} == {"L", "U"}
    # a tied joint has the degree of both
    assert graph.degree("L.C1+U.A1") == sum(
        len(whole.links_at[joint]) for joint in ("L.C1", "U.A1")
    )


def test_a_part_is_the_piece_that_it_is_alone(tmp_path: Path) -> None:
    whole = built(tmp_path, ROW)
    alone = nx.Graph(multigraph(built(tmp_path, f"  {TUBE[1:-1]}\n")))
    assert [part.name for part in whole.parts] == ["S1", "S2", "S3"]
    for part in whole.parts:
        assert nx.is_isomorphic(nx.Graph(multigraph(part.framework)), alone)
    assert [brace.number for brace in whole.braces] == list(range(1, 10))
    assert [cell.number for cell in whole.cells] == list(range(1, 7))
    for cell in whole.cells:
        assert set(whole.brace[cell.first].section) <= set(
            whole.built_with(whole.brace[cell.first].section[0]).joints
        )


@pytest.mark.parametrize("build", [STACKED, ROW], ids=["stacked", "row"])
def test_steps_build_each_part_and_then_tie_the_parts(tmp_path: Path, build: str) -> None:
    framework = built(tmp_path, build)
    steps = plan_steps(framework, 4)
    rebuilt = replay(json.loads(json.dumps(steps_as_json(steps))))
    assert edges(rebuilt.graph) == edges(multigraph(framework))
    assert rebuilt.locks == {lock.joint: lock.balloon for lock in framework.locks}
    order = [
        framework.part_at(operation.joints[0])
        for step in steps
        if step.kind in (Kind.LAY, Kind.BRACE)
        for operation in step.operations
    ]
    names = [part.name for part in order if part is not None]
    assert names == sorted(names)
    added: Counter[str] = Counter()
    for step in steps:
        added.update(step.adds)
    assert dict(added) == balloon_counts(framework)


def test_a_tie_cannot_be_left_out_or_come_before_its_part(tmp_path: Path) -> None:
    framework = built(tmp_path, STACKED)
    steps = json.loads(json.dumps(steps_as_json(plan_steps(framework))))
    tie = next(
        operation
        for step in steps
        for turn in step["turns"]
        for operation in turn["operations"]
        if operation["kind"] == "join" and len(operation["joints"]) > 1
    )
    kept, tie["joints"] = tie["joints"], ["L.C1", "U.Z9"]
    with pytest.raises(ReplayError):
        replay(steps)
    tie["joints"] = kept
    lay = next(
        step
        for step in steps
        for turn in step["turns"]
        for act in turn["operations"]
        if act["kind"] == "lay" and act["joints"][0].startswith("U.")
    )
    for turn in lay["turns"]:
        turn["operations"] = [act for act in turn["operations"] if act["kind"] != "lay"]
        turn["joints"] = [joint for act in turn["operations"] for joint in act["joints"]]
    with pytest.raises(ReplayError):
        replay(steps)


def test_stacked_columns_are_twice_as_high_less_the_ring_they_share(tmp_path: Path) -> None:
    """n joints a ring; the height of a band of antiprism with edge s is
    s sqrt(1 - sec^2(pi / 2n) / 4) (usual formula, from memory): four bands."""
    framework = built(tmp_path, STACKED)
    shape = find_shape(framework)
    assert not shape.problems
    assert shape.standing.stands
    assert np.array_equal(shape.at["L.C1"], shape.at["U.A1"])
    link_m = 1.15 * 8 * 0.0254
    band = link_m * np.sqrt(1 - 1 / np.cos(np.pi / 8) ** 2 / 4)
    up = np.mean([shape.at[f"U.C{i}"][1] - shape.at[f"L.A{i}"][1] for i in range(1, 5)])
    assert up == pytest.approx(4 * band, rel=0.03)


def test_a_row_stands_a_link_apart(tmp_path: Path) -> None:
    shape = find_shape(built(tmp_path, ROW, "stand_on: [S1.A1, S1.D1, S3.B1, S3.C1]\n"))
    assert not shape.problems
    middle = [np.mean([shape.at[f"S{i}.{j}2"] for j in "ABCD"], axis=0) for i in (1, 2, 3)]
    link_m = 1.15 * 8 * 0.0254
    for one, other in pairwise(middle):
        assert np.linalg.norm(other - one) == pytest.approx(2 * link_m, rel=0.03)


def test_a_mirrored_part_is_built_left_to_right(tmp_path: Path) -> None:
    """Two hooks (J, which is not the same from left to right) and one turned to face them."""
    hook = "{letters: {text: J, cells: 5, long: a, brace: a, lock: k}}"
    tied = "ties: [{joints: [P.A1, Q.A1], balloon: a}, {joints: [P.B1, Q.B1], balloon: a}]"
    text = f"""\
  assembly:
    parts:
      - {{name: P, build: {hook}}}
      - {{name: Q, mirrored: true, build: {hook}}}
    lock: k
    {tied}
"""
    framework = built(tmp_path, text)
    shape = find_shape(framework)
    one, other = (
        np.array([shape.at[joint] for joint in part.framework.joints]) for part in framework.parts
    )
    for points, sign in ((one, 1.0), (other, -1.0)):
        side = points[:, 0] - points[:, 0].mean()
        high = points[:, 1] - points[:, 1].mean()
        # the long stem of a J is on the right, so that what is high is on the right
        assert sign * float(side @ high) > 0
    assert framework.mirror
    assert shape.mirrored


def test_joints_that_cannot_meet_are_told_once(tmp_path: Path) -> None:
    crossed = STACKED.replace("U.A2", "U.X").replace("U.A4", "U.A2").replace("U.X", "U.A4")
    (problem,) = find_shape(built(tmp_path, crossed)).problems
    assert "cannot meet" in Voice().tell(problem.message)
    assert problem.path == "build.assembly.ties"
    # a square turned over about a diagonal meets another in two opposite corners, not in the others
    ends = {"L.C1", "U.A1", "L.C3", "U.A3"}, {"L.C2", "U.A4", "L.C4", "U.A2"}
    assert set(problem.joints) in ends


@pytest.mark.parametrize(
    ("old", "new", "path", "says"),
    [
        ("U.A4", "V.A4", "build.assembly.ties[3]", "names no part"),
        ("U.A4", "U.Z4", "build.assembly.ties[3]", "no joint"),
        ("U.A4", "L.A1", "build.assembly.ties[3]", "cannot meet"),
        ("U.A4", "U.A3", "build.assembly.ties[3]", "tied to other joints already"),
        ("name: U", "name: L", "build.assembly.parts[1].name", "already"),
        ("name: U, build", "name: U, mirrored", "build.assembly.parts[1].mirrored", "false"),
        ("ring: a", "ring: q", "build.assembly.parts[0].build.column.ring", "no balloon"),
        ("lock: k\n", "lock: a\n", "build.assembly.lock", "link"),
        (f"build: {COLUMN}", "design: no.yaml", "build.assembly.parts[0].design", "no such file"),
        (f"build: {COLUMN}", "repeat: 2", "build.assembly.parts[0]", "neither"),
        ("[[L.C1, U.A1], ", "[[L.C1, U.A1, U.A2], ", "build.assembly.ties[0]", "cannot meet"),
        ("ties: [[L.C1, U.A1], [L.C2, U.A2], [L.C3, U.A3], [L.C4, U.A4]]\n", "ties: []\n",
         "build.assembly", "nothing ties part U"),
    ],
)  # fmt: skip
def test_mistakes_are_told_with_line_and_path(
    tmp_path: Path, old: str, new: str, path: str, says: str
) -> None:
    with pytest.raises(DesignProblemsError) as raised:
        built(tmp_path, STACKED.replace(old, new, 1))
    problem = raised.value.problems[0]
    assert problem.path == path
    assert problem.line
    assert says in Voice().tell(problem.message)
    assert suggestion_words(problem.suggestion, Voice())


def part_file(folder: Path, name: str, build: str, **changes: str) -> None:
    text = HEAD + build
    for old, new in changes.items():
        text = text.replace(old, new)
    (folder / name).write_text(text, "utf-8")


FROM_FILE = STACKED.replace(f"build: {COLUMN}", "design: parts/column.yaml")


def test_a_part_comes_from_a_file_beside_the_design(tmp_path: Path) -> None:
    (tmp_path / "parts").mkdir()
    part_file(tmp_path, "parts/column.yaml", f"  {COLUMN[1:-1]}\n")
    inline, from_file = built(tmp_path, STACKED), built(tmp_path, FROM_FILE)
    assert from_file == inline


def test_files_of_parts_agree_with_the_whole(tmp_path: Path) -> None:
    (tmp_path / "parts").mkdir()
    part_file(tmp_path, "parts/column.yaml", f"  {COLUMN[1:-1]}\n", **{"units: in": "units: cm"})
    with pytest.raises(DesignProblemsError, match="problem") as raised:
        built(tmp_path, FROM_FILE)
    assert "cm" in Voice().tell(raised.value.problems[0].message)
    # an assembly as a part of itself, also by way of another file
    part_file(
        tmp_path, "parts/column.yaml", STACKED.replace(f"build: {COLUMN}", "design: ../trial.yaml")
    )
    with pytest.raises(DesignProblemsError) as raised:
        built(tmp_path, FROM_FILE)
    assert "itself" in Voice().tell(raised.value.problems[0].message)
    assert raised.value.problems[0].path == "build.assembly.parts[0].design"


def test_an_assembly_of_assemblies_is_one_of_their_parts(tmp_path: Path) -> None:
    (tmp_path / "parts").mkdir()
    part_file(tmp_path, "parts/column.yaml", STACKED)
    four = FROM_FILE.replace("L.C", "L.U.C").replace("U.A", "U.L.A")
    framework = built(tmp_path, four)
    assert [part.name for part in framework.parts] == ["L.L", "L.U", "U.L", "U.U"]
    assert len(framework.ties) == 12
    rebuilt = replay(steps_as_json(plan_steps(framework)))
    assert edges(rebuilt.graph) == edges(multigraph(framework))
