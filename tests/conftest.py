"""One way to try random examples, always the same ones and never against the clock; one way to
run a command; one browser for the tests of pages in a file."""

from __future__ import annotations

import gc
import io
import signal
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

from buildplan.__main__ import COLLECT_AT
from buildplan.cli import main

if TYPE_CHECKING:
    from playwright.sync_api import Browser

settings.register_profile("steady", derandomize=True, deadline=None, database=None)
settings.load_profile("steady")

# as the command has it: the heap of a test run is large, and looking through it a tenth of its time
gc.set_threshold(*COLLECT_AT)

# A shell begins what it puts in the background with Ctrl-C not to be heard (POSIX.1-2017, 2.11),
# and what is begun from there inherits that: tests of Ctrl-C would wait for ever.
if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)

# files of few tests that take long: begun first, so that no worker ends alone with one
LONG = ("test_same_bytes.py", "test_desk_killed.py", "test_desk_main_job.py")

Called = tuple[int, str, str]
Call = Callable[..., Called]


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Long files first; the others stay in their order."""
    items.sort(key=lambda item: item.path.name not in LONG)


@pytest.fixture
def call(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> Call:
    """Run a command in a folder of its own, with `answers` to what it asks: (exit status, output,
    messages)."""
    monkeypatch.chdir(tmp_path)

    def called(*arguments: str | Path, answers: str = "") -> Called:
        monkeypatch.setattr(sys, "argv", ["buildplan", *map(str, arguments)])
        monkeypatch.setattr(sys, "stdin", io.StringIO(answers))
        try:
            main()
            status = 0
        except SystemExit as end:
            status = int(end.code or 0)
        out, messages = capsys.readouterr()
        return status, out, messages

    return called


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """A Chromium; the test is skipped where none is installed."""
    from browser import chromium

    with chromium() as found:
        yield found
