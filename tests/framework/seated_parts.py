"""Design files of parts that stand on or between others, and the pieces that they make."""

from __future__ import annotations

from pathlib import Path

from trial_file import HEAD

from buildplan.design.building import build_framework
from buildplan.evaluation.seating import read_whole
from buildplan.framework.model import Framework
from buildplan.shape.finding import find_shape
from buildplan.shape.model import Shape

COLUMN = "{column: {around: 4, rings: 3, ring: a, between: b, lock: k}}"
TOWER = "{wall: {across: 1, up: 3, layers: 2, row: a, upright: a, between: a, lock: k}}"
BEAM = "{wall: {across: 5, up: 1, layers: 2, row: a, upright: a, between: a, lock: k}}"
SIGN = "{letters: {text: L, cells: 5, long: a, brace: a, lock: k}}"
WORD = "{letters: {text: LI, cells: 5, long: a, brace: a, bar: b, lock: k}}"
LINK_M = 1.15 * 8 * 0.0254

ENTRANCE = (
    f"name: L, build: {COLUMN}",
    f"name: R, build: {COLUMN}",
    f"name: B, on: [L, R], build: {BEAM}",
    f"name: S, on: B, build: {SIGN}",
)
FOUR = f"name: B, build: {BEAM}", f"name: S, build: {SIGN}"


def text_of(*parts: str, more: str = "") -> str:
    lines = "".join(f"      - {{{part}}}\n" for part in parts)
    return f"{HEAD}  assembly:\n    parts:\n{lines}    lock: k\n{more}"


def file_of(folder: Path, *parts: str, more: str = "") -> Path:
    file = folder / "trial.yaml"
    file.write_text(text_of(*parts, more=more), "utf-8")
    return file


def solved(file: Path) -> tuple[Framework, Shape]:
    framework = build_framework(read_whole(file))
    return framework, find_shape(framework)
