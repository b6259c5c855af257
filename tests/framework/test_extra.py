"""Balloons that a design adds one by one, in any pattern: in its graph, its shape, its steps."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from buildplan.design.building import build_framework
from buildplan.design.model import Design
from buildplan.design.reading import read_design
from buildplan.drawing.maps.joint_map import joint_map
from buildplan.framework.cells import CELL_KINDS
from buildplan.framework.model import Role
from buildplan.instructions.telling import tell_steps
from buildplan.language.voice import Voice
from buildplan.patterns.tube_keys import Tube
from buildplan.patterns.tube_links import joined
from buildplan.sequence.exchange import steps_as_json
from buildplan.sequence.replay import replay
from buildplan.sequence.steps import plan_steps
from buildplan.shape.finding import find_shape
from buildplan.source.problems import DesignProblemsError

RING = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {kind: link,  nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: blue}
  b: {kind: link,  nominal: 12, inflate_to: 8, colour: "#F7F3E8", label: ivory}
  k: {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#C9A227", label: gold}
build:
  tube:
    closed: true
    chains: 4
    long: a
    brace: a
    lock: k
    extra: EXTRA
    course: [{repeat: 6, cells: [straight, fan]}]
"""


def design(folder: Path, extra: str) -> Design:
    file = folder / "trial.yaml"
    file.write_text(RING.replace("EXTRA", extra), "utf-8")
    return read_design(file)


@given(
    st.lists(st.sampled_from(sorted(CELL_KINDS)), min_size=4, max_size=12),
    st.sampled_from([2, 3, 4]),
    st.booleans(),
)
def test_what_the_check_takes_for_joined_is_what_the_framework_joins(
    names: list[str], chains: int, closed: bool
) -> None:
    course = ["straight", "straight", "straight", *names]
    balloon = {"kind": "link", "nominal": 12, "inflate_to": 8, "colour": "#1F5F8B", "label": "a"}
    tube = Tube.model_validate(
        {
            "closed": closed,
            "chains": chains,
            "long": "a",
            "brace": "a",
            "single": "a",
            "lock": "a",
            "course": course,
        }
    )
    whole = Design.model_validate(
        {
            "buildplan": 1,
            "name": "T",
            "units": "in",
            "balloons": {"a": balloon},
            "build": {"tube": tube.model_dump()},
        }
    )
    built = {frozenset((one.start, one.finish)) for one in build_framework(whole).links}
    assert {pair for pair in joined(tube) if len(pair) == 2} == built


def test_an_extra_balloon_is_in_the_graph_and_the_steps_rebuild_it(tmp_path: Path) -> None:
    plain = build_framework(design(tmp_path, "[]"))
    more = build_framework(design(tmp_path, "[[B1, B3], {joints: [A1, B2], balloon: b}]"))
    assert len(more.links) == len(plain.links) + 2
    extras = [more.link[link] for link in more.singles]
    assert [(one.start, one.finish, one.balloon) for one in extras] == [
        ("B1", "B3", "a"),
        ("A1", "B2", "b"),
    ]
    assert all(one.role is Role.SINGLE for one in extras)
    steps = plan_steps(more)
    rebuilt = replay(steps_as_json(steps))
    links = {tuple(sorted((one.start, one.finish))) for one in more.links}
    assert {tuple(sorted(ends)) for ends in rebuilt.graph.edges()} == links
    assert len(rebuilt.locks) == len(more.locks) == len(plain.locks)
    told = " ".join(row for said in tell_steps(steps, more, "in", Voice()) for row in said.rows)
    assert "Single: B1 – B3" in told or "Single: B3 – B1" in told


def test_a_ring_with_an_extra_balloon_is_still_built_flat(tmp_path: Path) -> None:
    assert find_shape(build_framework(design(tmp_path, "[[B1, B3]]"))).mirrored


@pytest.mark.parametrize(
    ("extra", "kind", "path"),
    [
        ("[[A1, A2]]", "joined-already", "build.tube.extra[0]"),
        ("[[A1, A1]]", "joined-already", "build.tube.extra[0]"),
        ("[[A1, B1]]", "joined-already", "build.tube.extra[0]"),
        ("[[A1, C1], [C1, A1]]", "joined-already", "build.tube.extra[1]"),
        ("[[A1, B99]]", "no-such-joint", "build.tube.extra[0][1]"),
        ("[{joints: [A1, E1], balloon: a}]", "no-such-joint", "build.tube.extra[0].joints[1]"),
        ("[{joints: [A1, C1], balloon: z}]", "no-such-balloon", "build.tube.extra[0].balloon"),
        (
            "[{joints: [A1, C1], balloon: k}]",
            "wrong-kind-of-balloon",
            "build.tube.extra[0].balloon",
        ),
        ("[[A1]]", "wrong-count", "build.tube.extra[0]"),
    ],
)
def test_what_cannot_be_tied_is_told(extra: str, kind: str, path: str, tmp_path: Path) -> None:
    with pytest.raises(DesignProblemsError) as found:
        design(tmp_path, extra)
    assert [(one.kind.value, one.path) for one in found.value.problems] == [(kind, path)]


HEAD = RING.partition("build:")[0]
# a pattern, the balloons more, and what a plain pair of joints is tied with
PATTERNS = {
    "column": ("{around: 4, rings: 3, ring: a, between: b, lock: k, EXTRA}", "A1", "A3", "b"),
    "wall": ("{across: 2, up: 2, layers: 1, row: a, upright: b, lock: k, EXTRA}", "A1", "B2", "b"),
    "solid": ("{shape: cube, edge: a, lock: k, EXTRA}", "P1", "P3", "a"),
    "globe": ("{long: a, short: b, lock: k, EXTRA}", "P1", "P20", "a"),
    "arch": ("{kind: square, leg: 2, span: 2, long: a, brace: b, lock: k, EXTRA}", "A1", "B2", "b"),
    "letters": ("{text: L, cells: 5, long: a, brace: b, lock: k, EXTRA}", "A1", "B3", "b"),
}
WORD = "{text: HI, cells: 5, long: a, brace: b, lock: k, EXTRA}"
# within a letter, and from one letter to the other
PATTERNS["letters "] = (WORD, "I.A2", "I.A4", "b")
PATTERNS["letters  "] = (WORD, "H.A8", "I.A4", "b")


def of_pattern(folder: Path, build: str) -> Design:
    file = folder / "trial.yaml"
    file.write_text(f"{HEAD}build:\n  {build}\n", "utf-8")
    return read_design(file)


@pytest.mark.parametrize("name", PATTERNS)
@pytest.mark.parametrize("in_part", [False, True])
def test_every_pattern_takes_balloons_more_and_its_steps_tie_them(
    tmp_path: Path, name: str, in_part: bool
) -> None:
    keys, one, other, usual = PATTERNS[name]
    build = f"{name.strip()}: {keys}"
    if in_part:
        build = (
            f"assembly: {{parts: [{{name: S, build: {{{build}}}}}, {{name: T, build: {{solid: "
            f"{{shape: cube, edge: a, lock: k}}}}}}], ties: [[S.{one}, T.P1]], lock: k}}"
        )
    plain = build_framework(of_pattern(tmp_path, build.replace(", EXTRA", "")))
    listed = f"extra: [[{one}, {other}]]"
    more = build_framework(of_pattern(tmp_path, build.replace("EXTRA", listed)))
    ends = (f"S.{one}", f"S.{other}") if in_part else (one, other)
    (added,) = [link for link in more.links if link.id not in plain.link]
    assert (added.start, added.finish, added.balloon) == (*ends, usual)
    assert added.id in more.singles
    steps = plan_steps(more)
    rebuilt = replay(steps_as_json(steps))
    links = sorted(
        tuple(sorted((more.place(link.start), more.place(link.finish)))) for link in more.links
    )
    assert sorted(tuple(sorted(edge[:2])) for edge in rebuilt.graph.edges) == links
    told = " ".join(row for said in tell_steps(steps, more, "in", Voice()) for row in said.rows)
    assert f"{ends[0]} – {ends[1]}" in told or f"{ends[1]} – {ends[0]}" in told
    if not in_part and not more.parts and not more.cells:
        assert added.id in " ".join(sheet.alt for sheet in joint_map(more, 480, 640, Voice()))


@pytest.mark.parametrize(
    ("extra", "kind"),
    [
        ("[[A1, A2]]", "joined-already"),
        ("[[A1, A1]]", "joined-already"),
        ("[[A1, Z9]]", "no-such-joint"),
        ("[{joints: [A1, A3], balloon: k}]", "wrong-kind-of-balloon"),
    ],
)
@pytest.mark.parametrize("name", ["column", "wall", "arch", "letters"])
def test_what_cannot_be_tied_in_any_pattern_is_told(
    name: str, extra: str, kind: str, tmp_path: Path
) -> None:
    build = f"{name}: {PATTERNS[name][0]}".replace("EXTRA", f"extra: {extra}")
    with pytest.raises(DesignProblemsError) as found:
        of_pattern(tmp_path, build)
    assert [one.kind.value for one in found.value.problems] == [kind]
    assert found.value.problems[0].path.startswith(f"build.{name}.extra[0]")
