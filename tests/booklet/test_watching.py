"""Looking at a design at each save: through good files, broken ones and none at all."""

from __future__ import annotations

import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from itertools import islice
from pathlib import Path
from typing import Any

import pytest

from buildplan.commands.watching import Glance, preview_path, saves, watch
from buildplan.evaluation.evaluating import resting_shape
from buildplan.language.voice import Voice
from buildplan.shape.constants import CONSTANTS
from buildplan.shape.model import Shape

FRAME = Path(__file__).parent.parent.parent / "designs" / "picture_frame.yaml"
TEXT = FRAME.read_text("utf-8")


@pytest.fixture
def design(tmp_path: Path) -> Path:
    path = tmp_path / "frame.yaml"
    path.write_text(TEXT, "utf-8")
    return path


def looked_at(design: Path, *contents: str | bytes | None) -> list[Glance]:
    """What is shown when the file is saved with each of `contents` in turn; None takes it away."""

    def saved() -> Iterator[None]:
        for content in contents:
            if content is None:
                design.unlink()
            elif isinstance(content, bytes):
                design.write_bytes(content)
            else:
                design.write_text(content, "utf-8")
            yield

    shown: list[Glance] = []
    watch(design, saved(), shown.append, Voice(), CONSTANTS)
    return shown


def test_each_save_is_shown_with_what_it_changed(design: Path) -> None:
    before, after = looked_at(design, TEXT, TEXT.replace("repeat: 6", "repeat: 4"))
    # each side loses two cells: 2 balloons on each of 4 chains, 2 braces of 4, 8 locks
    assert "448 balloons (112 frame, 112 across, 224 knot)" in before.lines[0]
    assert "320 balloons (80 frame, 80 across, 160 knot)" in after.lines[0]
    assert before.picture is not None
    assert after.picture is not None
    assert before.picture.marks != after.picture.marks


def test_broken_and_half_written_files_are_survived(design: Path) -> None:
    broken = (TEXT[:300], "", TEXT.replace("tip", "tap"), b"\xff\xfe\x00", None)
    *shown, last = looked_at(design, *broken, TEXT)
    for seen in shown:
        assert seen.picture is None
        assert any(str(design) in line for line in seen.lines), "says in which file"
    assert "tap" in " ".join(shown[2].lines)
    assert last.picture is not None


def test_a_fault_of_ours_does_not_end_the_watch(
    design: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls = []

    def faulty(*arguments: Any) -> Shape:
        calls.append(arguments)
        if len(calls) == 1:
            raise FloatingPointError("on purpose")
        return resting_shape(*arguments)

    monkeypatch.setattr("buildplan.commands.watching.resting_shape", faulty)
    first, second = looked_at(design, TEXT, TEXT)
    assert "fault" in first.lines[0]
    assert second.picture is not None


def test_saves_are_told_once_each_and_only_at_rest(design: Path) -> None:
    """A scripted disk in place of a clock: at each pause the next thing happens to the file."""
    steps: list[Callable[[], object]] = [
        lambda: None,  # at rest after the first look
        lambda: None,
        lambda: design.write_text("", "utf-8"),  # an editor empties it ...
        lambda: design.write_text("a: 1", "utf-8"),  # ... and writes it
        lambda: None,
        lambda: design.unlink(),
        lambda: None,
        lambda: None,
        lambda: design.write_text("a: 12", "utf-8"),
        lambda: None,
    ]
    happens = iter(steps)

    def pause(_: float) -> None:
        next(happens)()

    sizes = [None if state is None else state[1] for state in islice(saves(design, pause), 4)]
    assert sizes == [len(TEXT.encode()), 4, None, 5]


def test_the_preview_stands_beside_the_file() -> None:
    assert preview_path(Path("designs/star.yaml")) == Path("designs/star.preview.png")


@pytest.mark.skipif(sys.platform == "win32", reason="signals")
def test_ctrl_c_ends_the_watch_with_status_0(design: Path) -> None:
    call = [sys.executable, "-m", "buildplan", "check", str(design), "--watch"]
    with subprocess.Popen(call, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as run:
        assert run.stdout is not None
        while "preview" not in run.stdout.readline():
            assert run.poll() is None
        run.send_signal(signal.SIGINT)
        _, messages = run.communicate()
    assert run.returncode == 0
    assert "Traceback" not in messages
    assert preview_path(design).read_bytes().startswith(b"\x89PNG")
