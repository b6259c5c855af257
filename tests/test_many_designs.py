"""One command on several designs: by all cores, and yet as if they came one by one."""

from __future__ import annotations

import signal
import sys
from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest

from buildplan.cli import main
from buildplan.fitting.workers import each_in_turn

POST = """\
buildplan: 1
name: {name}
units: in
balloons:
  long: {{kind: link, nominal: 12, inflate_to: 8, colour: "#1F5F8B", label: deep blue}}
  lock: {{kind: round, nominal: 5, inflate_to: 3.5, colour: "#F7F3E8", label: ivory}}
build:
  tube: {{closed: false, chains: 4, long: long, brace: long, lock: lock, course: [{course}]}}
"""
Called = Callable[..., int]
COURSES = {
    "one": "straight",
    "leans": "straight, fan, straight, straight, straight",
    "two": "straight, straight",
    "broken": "sideways",
    "late": "straight",
}


@pytest.fixture
def called(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Called:
    """Run a command in a folder of designs: its exit status."""
    for name, course in COURSES.items():
        text = POST.format(name=name.capitalize(), course=course)
        (tmp_path / f"{name}.yaml").write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)

    def run(*arguments: str) -> int:
        monkeypatch.setattr(sys, "argv", ["buildplan", *arguments])
        try:
            main()
        except SystemExit as end:
            return int(end.code or 0)
        return 0

    return run


def test_booklets_come_in_order_with_what_is_wrong_and_the_same_bytes(
    called: Called, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """The fourth cannot be read: what was asked after it is not printed, as it is one by one."""
    names = [f"{name}.yaml" for name in COURSES]
    status = called("booklet", *names, "--edition", "crew", "--out", "all")
    out, messages = capsys.readouterr()
    alone = [called("booklet", name, "--edition", "crew", "--out", "alone") for name in names[:4]]
    out_alone, messages_alone = capsys.readouterr()
    assert alone == [0, 1, 0, 1]
    assert status == 1, messages
    assert out == out_alone.replace("alone", "all")
    assert messages == messages_alone
    written = sorted(path.name for path in (tmp_path / "all").iterdir())
    assert written == ["one-crew-a4.pdf", "two-crew-a4.pdf"]
    for name in written:
        assert (tmp_path / "all" / name).read_bytes() == (tmp_path / "alone" / name).read_bytes()


@pytest.mark.skipif(not hasattr(signal, "pthread_sigmask"), reason="no masks of signals here")
def test_processes_leave_ctrl_c_to_the_one_that_began_them() -> None:
    """One that is still loading would print where it was interrupted."""
    held = partial(signal.pthread_sigmask, signal.SIG_BLOCK)
    masks = list(each_in_turn(held, [(), ()]))
    assert [signal.SIGINT in mask for mask in masks] == [True, True]
    assert signal.SIGINT not in held(())
