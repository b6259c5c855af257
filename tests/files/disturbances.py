"""What is done to a process that writes, just before its first write, to see what comes of it."""

from __future__ import annotations

import os
import resource
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from types import FrameType
from typing import Any

from buildplan.desk import history, saving
from buildplan.source import whole_files

NOBODY = 65534
# the lines at which a process is stopped: where files are written and get other names
SOURCES = {module.__file__ for module in (whole_files, saving, history)}


def traced(counted: list[int], told: Callable[[], object]) -> None:
    """From now on, count the lines of the writer that are run, telling each; those too of what is
    under way."""

    def lines(_: FrameType, event: str, __: object) -> Any:
        if event == "line":
            counted[0] += 1
            told()
        return lines

    def calls(frame: FrameType, _: str, __: object) -> Any:
        return lines if frame.f_code.co_filename in SOURCES else None

    sys.settrace(calls)
    frame: FrameType | None = sys._getframe()
    while frame is not None:
        frame.f_trace = calls(frame, "", None)
        frame = frame.f_back


def killed_at(line: int) -> Callable[[], None]:
    """Killed at a line of the writer, counted over all files that are written."""

    def disturb() -> None:
        counted = [0]

        def told() -> None:
            if counted[0] == line:
                os.kill(os.getpid(), signal.SIGKILL)

        traced(counted, told)

    return disturb


def killed_after(seconds: float) -> Callable[[], None]:
    """Killed so many seconds after the first write began, wherever it then is."""

    def disturb() -> None:
        # without a handler the system ends the process there and then (POSIX.1-2017, SIGALRM)
        signal.signal(signal.SIGALRM, signal.SIG_DFL)
        signal.setitimer(signal.ITIMER_REAL, max(seconds, 1e-6))

    return disturb


def vanished_at(line: int, folder: Path) -> Callable[[], None]:
    """The folder goes at a line of the writer."""

    def disturb() -> None:
        counted = [0]

        def told() -> None:
            if counted[0] == line:
                sys.settrace(None)
                shutil.rmtree(folder, ignore_errors=True)

        traced(counted, told)

    return disturb


def no_more_than(size: int) -> Callable[[], None]:
    """No file may grow beyond a size (POSIX.1-2017, RLIMIT_FSIZE): a write fails at that byte."""
    return lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (size, resource.RLIM_INFINITY))


def forbidden(folder: Path) -> Callable[[], None]:
    """Nothing may be written into the folder."""

    def disturb() -> None:
        for path in (*folder.rglob("*"), folder):
            path.chmod(0o555 if path.is_dir() else 0o444)
        if os.geteuid() == 0:  # nothing is forbidden to root
            os.setuid(NOBODY)

    return disturb


def linked(folder: Path, away: Path) -> Callable[[], None]:
    """Each file that stands there becomes a link to one elsewhere."""

    def disturb() -> None:
        shutil.rmtree(away, ignore_errors=True)
        away.mkdir()
        for number, path in enumerate(sorted(p for p in folder.rglob("*") if p.is_file())):
            path.rename(away / str(number))
            path.symlink_to(away / str(number))

    return disturb


@contextmanager
def small_disk(folder: Path, size: int) -> Iterator[bool]:
    """The folder is a disk of its own that holds so many bytes (of none: no file at all); False
    where none may be mounted."""
    folder.mkdir(exist_ok=True)
    room = f"size={size}" if size else "nr_inodes=1"  # of 0 means without end (tmpfs(5))
    kind = ("-t", "tmpfs", "-o", f"{room},mode=755", "tmpfs")
    try:
        done = subprocess.run(["mount", *kind, str(folder)], capture_output=True, check=False)
    except FileNotFoundError:
        yield False
        return
    if done.returncode:
        yield False
        return
    owner = os.getpid()
    try:
        yield True
    finally:
        if os.getpid() == owner:  # not a copy of it
            subprocess.run(["umount", str(folder)], check=True)
