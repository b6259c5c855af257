"""The command `fit` as scripts rely on it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from conftest import Call

from buildplan.design.reading import read_design
from buildplan.evaluation.evaluating import evaluate
from buildplan.fitting import progress_report
from buildplan.shape.advice import LEANS_LIGHTLY_DEG

RING = ("fit", "ring", "--height", "120cm", "--gauges", "20cm", "--effort", "quick", "--out")
BY_THE_CLOCK = "The search was ended by the clock, after 0.001s"


def test_an_svg_of_her_own_becomes_a_design_and_a_picture(call: Call) -> None:
    svg = Path("my_disc.svg")
    svg.write_text('<svg xmlns="http://www.w3.org/2000/svg"><circle r="40"/></svg>', "utf-8")
    design, picture = Path("my_disc.yaml"), Path("my_disc.png")
    wish = ("--height", "150cm", "--gauges", "8", "--effort", "quick", "--workers", "1")
    status, said, messages = call("fit", svg, *wish, "--out", design, "--picture", picture)
    assert status == 0, messages
    assert read_design(design).name == "My Disc"
    assert picture.read_bytes().startswith(b"\x89PNG")
    lines = said.splitlines()
    assert lines[-2:] == [str(design), str(picture)]
    assert "overlap" in lines[1]
    # what comes closest never falls, and is never less than what is best to build
    told = re.findall(r"closest so far (\S+)%; best to build so far overlaps by (\S+)%", messages)
    closest, best = ([float(one) for one in column] for column in zip(*told, strict=True))
    assert closest == sorted(closest)
    assert all(one >= other for one, other in zip(closest, best, strict=True))
    # the base that it names for the narrow foot holds it
    (base,) = re.findall(r"write into its file: (base: \{.*?\})", said)
    assert float(re.findall(r"tips at (\d+\.\d) degrees", said)[0]) < LEANS_LIGHTLY_DEG
    design.write_text(f"{design.read_text('utf-8')}{base}\n", "utf-8")
    held = read_design(design)
    piece = evaluate(held, held.units, 12)
    assert piece.shape.standing.tip_angle_deg >= LEANS_LIGHTLY_DEG


def test_a_clock_ends_the_search_with_the_best_and_the_file_says_so(call: Call) -> None:
    status, _, messages = call(*RING, "ring.yaml", "--workers", "1", "--within", "0.001s")
    assert status == 0
    assert "round 1 of 2" in messages
    assert "round 2 of 2" not in messages
    assert BY_THE_CLOCK in Path("ring.yaml").read_text("utf-8")


def test_ctrl_c_ends_the_search_and_writes_the_best(
    call: Call, monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupted(*given: object) -> str:
        raise KeyboardInterrupt

    monkeypatch.setattr(progress_report, "progress_words", interrupted)
    status, said, _ = call(*RING, "ring.yaml", "--workers", "1")
    assert status == 0
    assert "ring.yaml" in said
    assert BY_THE_CLOCK[:30] not in Path("ring.yaml").read_text("utf-8")
    assert read_design(Path("ring.yaml")).name == "Ring"


def test_a_wrong_call_ends_in_status_2(call: Call) -> None:
    for wrong in (
        ["no-such-outline"],
        ["star", "--height", "tall"],
        ["star", "--gauges", "x"],
        ["star", "--out", "a.txt"],
        ["none.svg"],
    ):
        status, said, messages = call("fit", *wrong)
        assert status == 2
        assert messages
        assert not said
