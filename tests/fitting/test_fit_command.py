"""The command `fit` as scripts rely on it."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

from buildplan.design.reading import read_design
from buildplan.evaluation.evaluating import evaluate
from buildplan.shape.advice import LEANS_LIGHTLY_DEG


def fit(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    call = [sys.executable, "-m", "buildplan", "fit", *map(str, arguments)]
    return subprocess.run(call, capture_output=True, text=True, check=False)


def test_an_svg_of_her_own_becomes_a_design_and_a_picture(tmp_path: Path) -> None:
    svg = tmp_path / "my_disc.svg"
    svg.write_text('<svg xmlns="http://www.w3.org/2000/svg"><circle r="40"/></svg>', "utf-8")
    design, picture = tmp_path / "my_disc.yaml", tmp_path / "my_disc.png"
    ended = fit(svg, "--height", "150cm", "--gauges", "8", "--out", design, "--picture", picture)
    assert ended.returncode == 0, ended.stderr
    assert read_design(design).name == "My Disc"
    assert picture.read_bytes().startswith(b"\x89PNG")
    lines = ended.stdout.splitlines()
    assert lines[-2:] == [str(design), str(picture)]
    assert "overlap" in lines[1]
    # the base that it names for the narrow foot holds it
    (base,) = re.findall(r"in its file: (base: \{.*?\})", ended.stdout)
    assert float(re.findall(r"tips at (\d+\.\d) degrees", ended.stdout)[0]) < LEANS_LIGHTLY_DEG
    design.write_text(f"{design.read_text('utf-8')}{base}\n", "utf-8")
    held = read_design(design)
    piece = evaluate(held, held.units, 12)
    assert piece.shape.standing.tip_angle_deg >= LEANS_LIGHTLY_DEG


def test_a_wrong_call_ends_in_status_2(tmp_path: Path) -> None:
    for wrong in (
        ["no-such-outline"],
        ["star", "--height", "tall"],
        ["star", "--gauges", "x"],
        ["star", "--out", str(tmp_path / "a.txt")],
        [str(tmp_path / "none.svg")],
    ):
        ended = fit(*wrong)
        assert ended.returncode == 2
        assert "Traceback" not in ended.stderr
