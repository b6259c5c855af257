"""Assemblies of assemblies: each file is read once, and there is an end to how deep they go.

All work is counted, none is timed. That a chain of n files, each of which names the one before
twice, stands for 2**n pieces is arithmetic.
"""

from __future__ import annotations

from collections import Counter
from itertools import pairwise, product
from pathlib import Path

import networkx as nx
import pytest
from awkward_pieces import graph, random_graph
from conftest import Call

from buildplan.design.building import build_framework
from buildplan.design.reading import MOST_WITHIN, read_design
from buildplan.patterns.assembly_keys import assemblies_deep
from buildplan.patterns.limits import MOST_BALLOONS
from buildplan.patterns.registry import joints_of
from buildplan.shape.pressing import MOST_AT_A_JOINT, tied_too_many_at_one
from buildplan.source import file_text

BALLOONS = """\
units: in
balloons:
  long: {kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  lock: {kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
"""
RING = """\
  graph:
    joints: [A, B, C]
    balloons:
      - {from: A, to: B, balloon: long}
      - {from: B, to: C, balloon: long}
      - {from: C, to: A, balloon: long}
    lock: lock
"""


def chain(folder: Path, count: int, times: int) -> Path:
    """So many files, each an assembly of the one before so many times; the last of them."""
    for number in range(count + 1):
        build, within = RING, "A." * (number - 1)
        if number:
            names = "AB"[:times]
            parts = "".join(
                f"      - {{name: {name}, design: p{number - 1}.yaml}}\n" for name in names
            )
            ties = f"    ties: [[A.{within}A, B.{within}A]]\n" if times == 2 else ""
            build = f"  assembly:\n    lock: lock\n    parts:\n{parts}{ties}"
        text = f"buildplan: 1\nname: P{number}\n{BALLOONS}build:\n{build}"
        (folder / f"p{number}.yaml").write_text(text, "utf-8")
    return folder / f"p{count}.yaml"


def test_each_file_is_read_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    read: Counter[str] = Counter()
    text_of = file_text.text_of

    def counted(path: Path) -> str:
        read[path.name] += 1
        return text_of(path)

    monkeypatch.setattr("buildplan.design.form_reading.text_of", counted)
    design = read_design(chain(tmp_path, MOST_WITHIN, 2))
    assert set(read.values()) == {1}
    assert len(read) == MOST_WITHIN + 1
    assert assemblies_deep(design.build) == MOST_WITHIN
    joints = joints_of(design.build.model_dump(by_alias=True, exclude_none=True))
    assert joints is not None
    assert len(joints.labels) == 3 * 2**MOST_WITHIN


def test_a_part_with_mistakes_is_read_once_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: Call
) -> None:
    last = chain(tmp_path, 6, 2)
    (tmp_path / "p0.yaml").write_text("buildplan: 1\nname: [\n", "utf-8")
    read: Counter[str] = Counter()
    text_of = file_text.text_of

    def counted(path: Path) -> str:
        read[path.name] += 1
        return text_of(path)

    monkeypatch.setattr("buildplan.design.form_reading.text_of", counted)
    status, _, said = call("check", str(last))
    assert status == 1
    assert set(read.values()) == {1}
    assert "p0.yaml, line 3" in said


def test_what_is_tied_within_a_part_and_tied_again_meets_at_one_place(tmp_path: Path) -> None:
    """Joints tied by any chain of ties are at one place: as the parts of a graph that hold together
    (networkx)."""
    framework = build_framework(read_design(chain(tmp_path, 3, 2)))
    tied = nx.Graph()
    tied.add_nodes_from(framework.joints)
    for level in range(1, 4):
        for outer in product("AB", repeat=3 - level):
            within = "".join(f"{one}." for one in outer)
            inner = "A." * (level - 1) + "A"
            tied.add_edge(f"{within}A.{inner}", f"{within}B.{inner}")
    meeting = {frozenset(one) for one in nx.connected_components(tied)}
    places: dict[str, set[str]] = {}
    for joint in framework.joints:
        places.setdefault(framework.place(joint), set()).add(joint)
    assert set(map(frozenset, places.values())) == meeting
    assert len(framework.ties) == 1
    assert [lock.joint for lock in framework.locks] == [framework.ties[0].name]


def test_a_part_that_outer_ties_fold_up_is_a_mistake(call: Call, tmp_path: Path) -> None:
    chain(tmp_path, 1, 2)
    parts = "".join(f"      - {{name: {name}, design: p1.yaml}}\n" for name in "AB")
    ties = "    ties: [[A.A.A, B.A.B], [A.B.B, B.B.A]]\n"
    text = f"buildplan: 1\nname: W\n{BALLOONS}build:\n  assembly:\n    lock: lock\n    parts:\n"
    (tmp_path / "whole.yaml").write_text(text + parts + ties, "utf-8")
    assert len(build_framework(read_design(tmp_path / "whole.yaml")).ties) == 2
    folding = ties.replace("B.B.A]", "B.B.A], [A.B.A, B.A.C]")
    (tmp_path / "whole.yaml").write_text(text + parts + folding, "utf-8")
    status, _, said = call("check", "whole.yaml")
    assert status == 1
    assert "cannot meet: part B.A has two of them" in said


def test_a_joint_with_more_balloons_than_can_be_tied_is_told_before_any_work(
    call: Call, tmp_path: Path
) -> None:
    """Ten files stand for 1,024 rings of two balloons each at one joint."""
    status, out, said = call("check", str(chain(tmp_path, MOST_WITHIN - 4, 2)))
    assert (status, out) == (1, "")
    assert "128 balloons are tied at joint" in said
    assert f"at most {MOST_AT_A_JOINT}" in said
    hub = random_graph(MOST_AT_A_JOINT + 2)
    ends = [("link", 0, number) for number in range(1, MOST_AT_A_JOINT + 1)]
    assert tied_too_many_at_one(build_framework(graph(ends))) is None
    one_more = [*ends, ("link", 0, MOST_AT_A_JOINT + 1)]
    assert tied_too_many_at_one(build_framework(graph(one_more))) is not None
    assert tied_too_many_at_one(build_framework(hub)) is None


@pytest.mark.parametrize("count", [MOST_WITHIN + 1, 200])
def test_files_that_lead_on_too_far_end_in_one_message(
    call: Call, tmp_path: Path, count: int
) -> None:
    status, out, said = call("check", str(chain(tmp_path, count, 1)))
    assert status == 2
    assert out == ""
    assert len(said.splitlines()) == 1
    assert f"p{count}.yaml: " in said
    assert f"more than {MOST_WITHIN} deep" in said


def test_what_is_known_of_a_file_does_not_let_it_go_deeper(call: Call, tmp_path: Path) -> None:
    """The deep part is first read where it is allowed, and is then named from one file further."""
    last = chain(tmp_path, MOST_WITHIN, 1)
    (tmp_path / "further.yaml").write_text(
        (tmp_path / "p1.yaml").read_text("utf-8").replace("p0.yaml", f"p{MOST_WITHIN - 1}.yaml"),
        "utf-8",
    )
    whole = (
        (tmp_path / "p1.yaml")
        .read_text("utf-8")
        .replace(
            "    parts:\n", f"    parts:\n      - {{name: Z, design: p{MOST_WITHIN - 1}.yaml}}\n"
        )
        .replace("p0.yaml", "further.yaml")
    )
    (tmp_path / "whole.yaml").write_text(whole, "utf-8")
    assert read_design(last).name == f"P{MOST_WITHIN}"
    status, _, said = call("check", "whole.yaml")
    assert status == 2
    assert f"more than {MOST_WITHIN} deep" in said


def test_a_piece_of_too_many_balloons_is_told_before_it_is_worked_out(
    call: Call, tmp_path: Path
) -> None:
    """A tube, a graph and an assembly have the one limit that README states."""
    column = "{column: {around: 4, rings: 41, ring: long, between: long, lock: lock}}"
    parts = f"      - {{name: S, repeat: 33, to_next: [[A1, C1]], build: {column}}}\n"
    assembly = f"  assembly:\n    lock: lock\n    parts:\n{parts}"
    names = [f"J{number}" for number in range(6_800)]
    ties = "".join(
        f"      - {{from: {one}, to: {other}, balloon: long}}\n" for one, other in pairwise(names)
    )
    graph = f"  graph:\n    lock: lock\n    joints: [{', '.join(names)}]\n    balloons:\n{ties}"
    for build in (assembly, graph):
        file = tmp_path / "large.yaml"
        file.write_text(f"buildplan: 1\nname: L\n{BALLOONS}build:\n{build}", "utf-8")
        status, out, said = call("check", str(file))
        assert (status, out) == (1, "")
        assert f"may have {MOST_BALLOONS:,}" in said


def test_an_assembly_of_too_many_joints_is_told_before_they_are_named(
    call: Call, tmp_path: Path
) -> None:
    column = "{column: {around: 24, rings: 100, ring: long, between: long, lock: lock}}"
    parts = f"      - {{name: S, repeat: 40, to_next: [[A1, C1]], build: {column}}}\n"
    text = f"buildplan: 1\nname: L\n{BALLOONS}build:\n  assembly:\n    lock: lock\n    parts:\n"
    (tmp_path / "large.yaml").write_text(text + parts, "utf-8")
    status, _, said = call("check", "large.yaml")
    assert status == 1
    assert "this assembly has 96,000 joints or more" in said
