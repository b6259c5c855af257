"""Design files for the tests, and what reading them says."""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from pathlib import Path

from buildplan.design.model import Design
from buildplan.design.reading import read_design
from buildplan.shape.constants import CONSTANTS
from buildplan.source.problems import DesignProblemsError, Problem, UnreadableDesignError

HERE = Path(__file__).parent
ROOT = HERE.parent.parent
SHIPPED = [p for p in sorted((ROOT / "designs").glob("*.yaml")) if ".event." not in p.name]
VALID_FILES = [*SHIPPED, *sorted((HERE / "files").glob("*.yaml"))]

# Tests name the line that a mistake stands on: keep the lines as they are.
RING = """\
buildplan: 1
name: Ring
units: in
balloons:
  long:
    kind: link
    nominal: 12
    inflate_to: 8
    colour: "#1F5F8B"
    label: deep blue
  cross: {kind: link,  nominal: 12, inflate_to: 8,   colour: "#F7F3E8", label: ivory}
  lock:  {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
build:
  tube:
    closed: true
    chains: 4
    long: long
    brace: cross
    lock: lock
    course:
      - repeat: 6
        cells: [straight, fan]
spare: 0.05
"""
LAST_LINE = RING.count("\n")

TRIANGLE = """\
buildplan: 1
name: Triangle
units: in
balloons:
  edge: {kind: link,  nominal: 12, inflate_to: 8,   colour: "#1F5F8B", label: deep blue}
  lock: {kind: round, nominal: 5,  inflate_to: 3.5, colour: "#F7F3E8", label: ivory}
build:
  graph:
    joints: [P, Q, R]
    lock: lock
    balloons:
      - {from: P, to: Q, balloon: edge}
      - {from: Q, to: R, balloon: edge}
      - {from: R, to: P, balloon: edge}
"""


def changed(text: str, *changes: tuple[str, str]) -> str:
    """`text` with the first of each old piece made new; an old piece must be there."""
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return text


def read(text: str | bytes) -> Design:
    """The design that a file of this content holds."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass"))
        return read_design(path, CONSTANTS)


def problems(text: str | bytes) -> Sequence[Problem]:
    """What is wrong with a file of this content that can be read; nothing if it is right."""
    try:
        read(text)
    except DesignProblemsError as error:
        return error.problems
    return ()


def refusal(text: str | bytes) -> Problem:
    """Why a file of this content cannot be read."""
    try:
        read(text)
    except UnreadableDesignError as error:
        return error.problem
    raise AssertionError("the file was read")


def only_problem(text: str) -> Problem:
    """The one problem of a file of this content."""
    found = problems(text)
    assert len(found) == 1, found
    return found[0]
