"""The commands as scripts rely on them: what they print, what they write, how they end."""

from __future__ import annotations

import json
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
from conftest import Call

ROOT = Path(__file__).parent.parent
STAR = ROOT / "designs" / "reading_star.yaml"
SHIPPED = [p for p in sorted((ROOT / "designs").glob("*.yaml")) if ".event." not in p.name]


def run(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    """A command as a user runs it, in a process of its own."""
    call = [sys.executable, "-m", "buildplan", *map(str, arguments)]
    return subprocess.run(call, capture_output=True, text=True, check=False)


@pytest.mark.parametrize("design", SHIPPED, ids=lambda path: path.stem)
def test_shipped_designs_have_no_problems(call: Call, design: Path) -> None:
    status, out, _ = call("check", design, "--json")
    facts = json.loads(out)
    assert (status, facts["problems"], facts["closes"], facts["stands"]) == (0, [], True, True)


def test_check_prints_the_figures_that_scripts_rely_on(call: Call) -> None:
    _, out, _ = call("check", STAR, "--json")
    facts = json.loads(out)
    assert facts["name"] == "Reading Star"
    assert facts["counts"] == {"long": 160, "cross": 160, "lock": 320}
    assert facts["balloons"] == 640
    assert facts["joints"] == 160
    assert facts["rings"] == [40, 40, 40, 40]
    assert (facts["braces"], facts["locks"]) == (40, 160)
    assert set(facts["size"]) == {"width", "height", "depth", "unit"}
    assert {"weight", "mechanisms", "stands", "tip_angle", "closes", "problems"} <= set(facts)


def test_steps_add_every_balloon_once(call: Call) -> None:
    status, out, _ = call("steps", STAR, "--json")
    steps = json.loads(out)
    assert status == 0
    assert [step["number"] for step in steps] == list(range(1, len(steps) + 1))
    added: dict[str, int] = {}
    for step in steps:
        assert {"stage", "text", "times", "needs", "adds"} <= set(step)
        assert all(number < step["number"] for number in step["needs"])
        for key, count in step["adds"].items():
            added[key] = added.get(key, 0) + count
    assert added == {"long": 160, "cross": 160, "lock": 320}


def test_booklet_prints_the_path_it_wrote(call: Call, tmp_path: Path) -> None:
    status, out, _ = call("booklet", ROOT / "designs" / "picture_frame.yaml", "--out", tmp_path)
    written = Path(out.strip())
    assert status == 0
    assert written.parent == tmp_path
    assert written.read_bytes().startswith(b"%PDF-1.7")
    assert list(tmp_path.iterdir()) == [written], "nothing half-written is left beside it"


@pytest.mark.parametrize(
    ("suffix", "begins"), [(".pdf", b"%PDF"), (".svg", b"<"), (".png", b"\x89PNG")]
)
def test_draw_writes_each_form(call: Call, tmp_path: Path, suffix: str, begins: bytes) -> None:
    target = tmp_path / f"star{suffix}"
    status, _, _ = call("draw", STAR, "--view", "corner", "--out", target)
    assert status == 0
    assert target.read_bytes().startswith(begins)


FRAME = ROOT / "designs" / "picture_frame.yaml"


def test_draw_writes_the_pictures_of_a_step(call: Call, tmp_path: Path) -> None:
    target = tmp_path / "step.svg"
    status, out, _ = call("draw", FRAME, "--step", "21", "--out", target)
    assert (status, out.strip()) == (0, str(target))
    # a tip: its close-up, the diagram of what is tied to what, and the whole piece
    root = ET.parse(target).getroot()
    words = root.findtext("{http://www.w3.org/2000/svg}desc")
    for begins in ("Close-up of step 21", "Diagram of step 21", "Step 21 on the whole piece"):
        assert begins in str(words)
    assert len(list(root.iter("{http://www.w3.org/2000/svg}svg"))) >= 1 + 3


def test_draw_writes_every_step(call: Call, tmp_path: Path) -> None:
    _, out, _ = call("steps", FRAME, "--json")
    numbers = [step["number"] for step in json.loads(out)]
    status, out, _ = call("draw", FRAME, "--all", "--out", tmp_path)
    assert status == 0
    wanted = [tmp_path / f"picture_frame-step-{number:02}.svg" for number in numbers]
    assert [Path(line) for line in out.split()] == wanted
    assert sorted(tmp_path.iterdir()) == wanted


@pytest.mark.parametrize("step", ["0", "999", "-3"])
def test_draw_of_a_step_that_is_not_there_says_how_many_there_are(call: Call, step: str) -> None:
    status, _, messages = call("draw", FRAME, "--step", step)
    assert status == 2
    _, steps, _ = call("steps", FRAME, "--json")
    assert f"{len(json.loads(steps))} steps" in " ".join(messages.split())


def test_draw_takes_one_thing_at_a_time(call: Call) -> None:
    assert call("draw", FRAME, "--step", "3", "--all")[0] == 2
    assert call("draw", FRAME, "--step", "3", "--view", "back")[0] == 2
    assert call("draw", FRAME, "--step", "3", "--format", "png")[0] == 2


def test_draw_refuses_another_form(call: Call, tmp_path: Path) -> None:
    status, _, messages = call("draw", STAR, "--out", tmp_path / "star.gif")
    assert status == 2
    assert ".pdf, .svg or .png" in messages


def test_missing_file_ends_in_one_line_and_status_2() -> None:
    ended = run("check", "no_such_design.yaml")
    assert ended.returncode == 2
    assert "no_such_design.yaml" in ended.stderr
    assert len(ended.stderr.strip().splitlines()) == 1
    assert "Traceback" not in ended.stderr


def test_mistakes_in_the_file_are_all_listed_with_status_1(call: Call, tmp_path: Path) -> None:
    wrong = tmp_path / "wrong.yaml"
    wrong.write_text(
        STAR.read_text("utf-8")
        .replace("chains: 4", "chains: 5")
        .replace("brace: cross", "brace: crss")
    )
    status, _, messages = call("check", wrong)
    assert status == 1
    assert "build.tube.chains" in messages
    assert "build.tube.brace" in messages
    lines = [line for line in messages.splitlines() if f"{wrong}:" in line]
    assert len(lines) == 2
    status, out, _ = call("check", wrong, "--json")
    assert status == 1
    assert len(json.loads(out)["problems"]) == 2


def test_wrong_call_has_status_2() -> None:
    assert run("booklet", STAR, "--paper", "a3").returncode == 2
    assert run("no-such-command").returncode == 2


def test_unwritable_folder_ends_in_one_message(call: Call, tmp_path: Path) -> None:
    blocked = tmp_path / "blocked"
    blocked.write_text("a file where a folder should be")
    status, _, messages = call("draw", STAR, "--out", blocked / "star.svg")
    assert status == 2
    assert "cannot write" in messages


def test_schema_is_a_json_schema(call: Call) -> None:
    status, out, _ = call("schema")
    assert status == 0
    assert json.loads(out)["$schema"] == "https://json-schema.org/draft/2020-12/schema"


def test_check_names_the_ballast_for_a_gust(call: Call) -> None:
    frame = ROOT / "designs" / "picture_frame.yaml"
    _, out, _ = call("check", frame, "--json", "--gust", "5m/s")
    held = json.loads(out)["wind"]
    assert held["gust_m_per_s"] == 5
    assert held["ballast"]["low"] < held["ballast"]["value"] < held["ballast"]["high"]
    # dynamic pressure goes with the square of the speed: 10 mph is 4.4704 m/s
    _, out, _ = call("check", frame, "--json", "--gust", "10 mph")
    assert json.loads(out)["wind"]["ballast"]["value"] < held["ballast"]["value"]
    status, _, messages = call("check", frame, "--gust", "fast")
    assert (status, "25km/h" in messages) == (2, True)


def test_report_says_what_an_estimate_is(call: Call) -> None:
    _, out, _ = call("check", ROOT / "designs" / "picture_frame.yaml")
    for name in ("Size", "Weight", "Stands", "Wind", "Sags", "Work", "Measure"):
        line = next(line for line in out.splitlines() if line.startswith(name))
        assert "estimate" in line
