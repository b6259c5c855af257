"""Parts that lean over where they are tied. A body that is held along one level line turns about
it: three directions of support that do not meet in a line are needed (statics of rigid bodies)."""

from __future__ import annotations

from pathlib import Path

import pytest

from buildplan.design.building import build_framework
from buildplan.evaluation.seating import read_whole
from buildplan.shape.finding import find_shape
from buildplan.shape.leaning import LEANS_DEG, lean_of, leaning

TRIAL = """\
buildplan: 1
name: Trial
units: in
balloons:
  a: {{kind: link,  nominal: 12, inflate_to: 8, colour: deep blue}}
  k: {{kind: round, nominal: 5,  inflate_to: 3.5, colour: cream}}
build:
  assembly:
    parts:
      - {{name: L, build: {{column: {{around: 4, rings: 4, ring: a, between: a, lock: k}}}}}}
      - {{name: R, build: {{column: {{around: 4, rings: 4, ring: a, between: a, lock: k}}}}}}
      - {{name: N, {rest}}}
    lock: k
"""
LETTER = "between: [L, R], build: {letters: {text: I, cells: 5, long: a, brace: a, lock: k}}"
BEAM = (
    "on: [L, R], build: {wall: {across: 5, up: 1, layers: 2, row: a, upright: a, between: a,"
    " lock: k}}"
)


@pytest.mark.parametrize(("rest", "leans"), [(LETTER, True), (BEAM, False)])
def test_columns_held_at_one_height_lean_over(tmp_path: Path, rest: str, *, leans: bool) -> None:
    file = tmp_path / "trial.yaml"
    file.write_text(TRIAL.format(rest=rest), "utf-8")
    framework = build_framework(read_whole(file))
    shape = find_shape(framework)
    found = leaning(framework, shape)
    assert [dict(one.message.values)["part"] for one in found] == (["L", "R"] if leans else [])
    for part in framework.parts[:2]:
        lean_deg = lean_of(part.framework, shape)
        assert lean_deg is not None
        assert (lean_deg > LEANS_DEG) is leans
