"""A pattern is one module: a made-up one, in this test alone, is read, checked and printed."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from pydantic import Field
from typer.testing import CliRunner

from buildplan.cli import app
from buildplan.design.building import build_framework
from buildplan.design.reading import read_design
from buildplan.design.schema import design_schema
from buildplan.framework.chain_roles import OPEN_CHAIN, RING
from buildplan.framework.chained import ChainRun, build_chained
from buildplan.framework.model import Framework
from buildplan.language.voice import Voice
from buildplan.patterns import colour_runs, growing
from buildplan.patterns.build import Build
from buildplan.patterns.colour_patterns import RunPlace
from buildplan.patterns.pattern import (
    LOCK,
    Colouring,
    Given,
    Joints,
    JointsOf,
    Making,
    Pattern,
    link,
)
from buildplan.patterns.pattern_joints import first_to_last
from buildplan.patterns.registry import PATTERNS, register
from buildplan.source.problems import DesignProblemsError, in_words
from buildplan.source.suggestions import Put
from buildplan.source.values import FileModel, Key

FILE = """\
buildplan: 1
name: Tent
units: in
balloons:
  a: {kind: link, nominal: 12, inflate_to: 8, colour: "#112233", label: blue}
  b: {kind: link, nominal: 12, inflate_to: 8, colour: "#F7F3E8", label: ivory}
  k: {kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
build:
  tent: {sides: 4, foot: a, pole: a, lock: k}
"""


class Tent(FileModel):
    """A ring on the floor, and a pole from each of its joints to one tip."""

    sides: int = Field(ge=3, le=12, description="how many sides it has")
    foot: Key = Field(description="the link balloon of the ring")
    pole: Key = Field(description="the link balloon of the poles")
    lock: Key = Field(description="the round balloon of the locks")


def _foot(sides: int) -> list[str]:
    return [f"A{i + 1}" for i in range(sides)]


def _joints(given: Given, of_part: JointsOf) -> Joints | None:
    sides = given.get("sides")
    return first_to_last([*_foot(sides), "B1"]) if isinstance(sides, int) else None


def _built(tent: Tent, making: Making) -> Framework:
    foot = _foot(tent.sides)
    poles = [ChainRun(OPEN_CHAIN, None, [joint, "B1"], tent.pole, closed=False) for joint in foot]
    ring = ChainRun(RING, None, foot, tent.foot, closed=True)
    return build_chained(making.name, making.balloons, [ring, *poles], tent.lock, foot)


def _coloured(framework: Framework, tent: Tent, part: str) -> Iterator[colour_runs.ColourRun]:
    links = framework.chains[0].chain.links
    yield colour_runs.ColourRun(
        [RunPlace(i) for i in range(len(links))], [[one] for one in links], 4
    )


def _more_cells(data: Given, factor: float) -> Iterator[Put]:
    yield from growing.counts(data, ("build", "tent"), {"sides": 3}, factor)


TENT = Pattern(
    name="tent",
    about="a ring and poles to one tip",
    keys=Tent,
    uses=(link("foot", "a ring"), link("pole", "a pole"), LOCK),
    joints=_joints,
    build=_built,
    colours=Colouring(("hem",), (), _coloured),
    more_cells=_more_cells,
)


@pytest.fixture
def tent(tmp_path: Path) -> Iterator[Path]:
    register(TENT)
    file = tmp_path / "tent.yaml"
    file.write_text(FILE, "utf-8")
    yield file
    del PATTERNS["tent"], Build.__pydantic_fields__["tent"]
    register()  # the patterns that there are now are read anew


def test_a_made_up_pattern_is_built_and_prints_its_booklet(tent: Path, tmp_path: Path) -> None:
    framework = build_framework(read_design(tent))
    # a pyramid's edges: as many on the floor as up to its tip (Euler: V - E + F = 2)
    assert (len(framework.joints), len(framework.links)) == (5, 8)
    for command in (
        ["booklet", "--out", str(tmp_path)],
        ["check"],
        ["draw", "--out", str(tmp_path / "t.svg")],
    ):
        done = CliRunner().invoke(app, [command[0], str(tent), *command[1:]])
        assert done.exit_code == 0, done.output
    assert (tmp_path / "tent-training-a4.pdf").stat().st_size > 10_000


@pytest.mark.parametrize(
    ("right", "wrong", "path", "told"),
    [
        ("pole: a", "pole: k", "build.tent.pole", "use a or b"),
        ("pole: a", "pole: z", "build.tent.pole", "there is no balloon"),
        ("sides: 4", "sides: 2", "build.tent.sides", "at least 3"),
        ("sides: 4, ", "", "build.tent.sides", "how many sides it has"),
        ("sides", "sidse", "build.tent.sidse", "did you mean sides"),
        ("lock: k}", "lock: k}\nstand_on: C1", "stand_on", "A1 to B1"),
        ("lock: k}", "lock: k}\ncolour_pattern: {hem: [a, z]}", "colour_pattern.hem[1]", "z"),
        ("lock: k}", "lock: k}\ncolour_pattern: {row: [a, b]}", "colour_pattern.row", "use hem"),
    ],
)
def test_mistakes_in_it_are_told(tent: Path, right: str, wrong: str, path: str, told: str) -> None:
    tent.write_text(FILE.replace(right, wrong), "utf-8")
    with pytest.raises(DesignProblemsError) as raised:
        read_design(tent)
    (problem,) = raised.value.problems
    assert problem.path == path
    assert told in str(in_words(problem, Voice()))


def test_its_colours_are_laid(tent: Path) -> None:
    tent.write_text(FILE + "colour_pattern: {hem: [a, b]}\n", "utf-8")
    framework = build_framework(read_design(tent))
    ring = framework.chains[0].chain.links
    assert [framework.link[one].balloon for one in ring] == ["a", "b"] * 2


def test_it_can_be_a_part_of_an_assembly(tent: Path) -> None:
    head, own = FILE.split("\nbuild:\n")
    part = f"{{name: T, repeat: 2, to_next: [[B1, B1]], build: {{{own.strip()}}}}}"
    tent.write_text(f"{head}\nbuild: {{assembly: {{parts: [{part}], lock: k}}}}\n", "utf-8")
    assert len(build_framework(read_design(tent)).joints) == 10


def test_the_schema_knows_it_while_it_is_there(tent: Path) -> None:
    assert "tent" in design_schema()["$defs"]["Build"]["properties"]


def test_it_is_gone_afterwards() -> None:
    assert "tent" not in PATTERNS
    assert "tent" not in design_schema()["$defs"]["Build"]["properties"]


def test_a_name_is_given_once() -> None:
    with pytest.raises(ValueError, match="already"):
        register(PATTERNS["tube"])
