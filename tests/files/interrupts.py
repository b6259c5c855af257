"""How commands end that are stopped at work, as one at a terminal stops them.

    .venv/bin/python tests/files/interrupts.py [--moments 10] [--early 10] [COMMAND ...]

prints a row for each command and signal, sent at so many moments from the start to its usual end,
and at so many of its first 0.3 seconds, while it is loaded: Ctrl-C as a terminal sends it, to all
processes there, and SIGTERM to the command alone. Standard error is a terminal (pty(7)), so that
what turns there while it works is tried as well. `odd` names what should not be: another status,
more than one plain line, a file half written or one that a command left that says nothing was
written, a process or a temporary file that is still there.
"""

from __future__ import annotations

import argparse
import contextlib
import os
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from stopped_commands import COMMANDS, DESIGNS, ENDLESS, GIVEN, OUT, ROOT, lay_out

from buildplan.source import whole_files

SIGNALS = (signal.SIGINT, signal.SIGTERM)
# what a search that is interrupted has found by then is kept and told
KEPT = {("fit", signal.SIGINT): (0, 1)}
GONE_S = 10.0
LOADING_S = 0.3
Stop = Callable[[int, list[bytes]], float]
# how a terminal is told to move, to colour, to hide its cursor (ECMA-48, 5.4)
MOVES = re.compile(r"\x1b\[[0-9;?]*[A-Za-z]")
HIDDEN, SHOWN = "\x1b[?25l", "\x1b[?25h"


@dataclass(frozen=True)
class Ended:
    """How a command ended: its status, what it said beside its answer, the signs that moved the
    terminal taken out, and whether the cursor is to be seen; seconds from the signal to the end;
    the files then, those half written and those in the folder for temporary files among them; and
    how many of its processes were still there some seconds later."""

    status: int
    said: str
    cursor: bool
    took_s: float
    files: tuple[str, ...]
    temporary: tuple[str, ...]
    processes: int


def ended(command: Sequence[str | Path], place: Path, given: Path, stop: Stop) -> Ended:
    """How a command ends that works in `place`; `stop` is given the id of its process and what it
    says, and tells when it sent what."""
    shutil.rmtree(place, ignore_errors=True)
    out, temporary = place / "out", place / "tmp"
    temporary.mkdir(parents=True)
    if command[0] == "desk":
        shutil.copytree(DESIGNS / "gallery", out)
    call = [
        sys.executable,
        "-m",
        "buildplan",
        *(str(one).replace(OUT, str(out)).replace(GIVEN, str(given)) for one in command),
    ]
    ours, theirs = os.openpty()
    process = subprocess.Popen(
        call,
        cwd=ROOT,
        env={**os.environ, "TMPDIR": str(temporary)},
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=theirs,
        start_new_session=True,
    )
    os.close(theirs)
    said: list[bytes] = []
    hearing = threading.Thread(target=_heard, args=(ours, said))
    hearing.start()
    sent = stop(process.pid, said)
    status = process.wait()
    took = time.monotonic() - sent
    left = _left(process.pid)
    hearing.join(GONE_S)
    text = b"".join(said).decode("utf-8", "replace")
    return Ended(
        status,
        MOVES.sub("", text).replace("\r", "\n"),
        text.rfind(SHOWN) >= text.rfind(HIDDEN),
        took,
        _names(out),
        _names(temporary),
        left,
    )


def _heard(end: int, said: list[bytes]) -> None:
    """What comes out of a terminal, until nobody writes to it any more."""
    with contextlib.suppress(OSError):  # EIO: the other end is closed
        while part := os.read(end, 65536):
            said.append(part)
    os.close(end)


def _names(folder: Path) -> tuple[str, ...]:
    found = (path for path in folder.rglob("*") if path.is_file() or path.is_socket())
    return tuple(sorted(str(path.relative_to(folder)) for path in found))


def _left(session: int) -> int:
    """How many processes of a session are still there when some time has gone by."""
    until = time.monotonic() + GONE_S
    while (found := _of_session(session)) and time.monotonic() < until:
        time.sleep(0.05)
    for pid in found:
        with contextlib.suppress(ProcessLookupError):
            os.kill(pid, signal.SIGKILL)
    return len(found)


def _of_session(session: int) -> list[int]:
    """The processes of a session that are at work (proc(5): state, parent, group, session follow
    the name)."""
    found = []
    for path in Path("/proc").glob("[0-9]*/stat"):
        with contextlib.suppress(OSError):  # gone meanwhile
            state, _, _, of, *_ = path.read_text("utf-8").rpartition(")")[2].split()
            if int(of) == session and state != "Z":
                found.append(int(path.parent.name))
    return found


def sent_after(seconds: float, number: signal.Signals) -> Stop:
    """Send a signal so long after the beginning; an interrupt to every process."""

    def stop(pid: int, _: list[bytes]) -> float:
        time.sleep(seconds)
        with contextlib.suppress(ProcessLookupError):
            (os.killpg if number == signal.SIGINT else os.kill)(pid, number)
        return time.monotonic()

    return stop


def once_open(words: str) -> Stop:
    """Send an interrupt as soon as something is said."""

    def stop(pid: int, said: list[bytes]) -> float:
        while words.encode() not in b"".join(said):
            time.sleep(0.05)
        os.killpg(pid, signal.SIGINT)
        return time.monotonic()

    return stop


def odd(name: str, number: signal.Signals, one: Ended, whole: Ended) -> str:
    """What should not be in how a command ended; nothing where all is as it should be."""
    started = "buildplan" in one.said or "Stopped" in one.said
    if one.status in (1, -number) and one.said.endswith("KeyboardInterrupt\n\n") and not started:
        return ""  # Python has not come to our first line
    found = []
    good = name in ENDLESS and ENDLESS[name] in one.said and number == signal.SIGINT
    usual = 0 if good else 128 + number
    lines = [line for line in one.said.splitlines() if line.strip()]
    if one.status == usual:
        if usual and (not lines or not lines[-1].startswith("Stopped")):
            found.append(f"said {lines[-1:]}")
    # before Python has begun or when it is about to be gone a signal ends it by itself
    elif one.status not in (whole.status, -number, *KEPT.get((name, number), ())):
        found.append(f"status {one.status} {one.said[-1000:]!r}")
    if "Traceback" in one.said or "Error" in one.said:
        found.append(f"said {_last(one)!r}")
    if any(whole_files.PREFIX in file for file in one.files):
        found.append("a part of a file")
    if one.processes:
        found.append(f"{one.processes} processes")
    if one.temporary:
        found.append(f"temporary {one.temporary}")
    if not one.cursor:
        found.append("no cursor")
    return ", ".join(found)


def _last(one: Ended) -> str:
    """The last of what was said."""
    return one.said[-1500:]


def rows(name: str, moments: int, early: int, given: Path) -> None:
    """Print the rows of a command."""
    with tempfile.TemporaryDirectory() as place:

        def stopped(stop: Stop) -> Ended:
            return ended(COMMANDS[name], Path(place), given, stop)

        begun = time.monotonic()
        stop = once_open(ENDLESS[name]) if name in ENDLESS else lambda *_: begun
        whole = stopped(stop)
        usual_s = time.monotonic() - begun
        if name in ENDLESS:  # from its beginning to some time after it is open
            usual_s *= 2
        at = [usual_s * (n + 0.5) / moments for n in range(moments)]
        at += [LOADING_S * (n + 0.5) / early for n in range(early)]
        for number in SIGNALS:
            tries = [stopped(sent_after(seconds, number)) for seconds in at]
            wrong = {odd(name, number, one, whole) for one in tries} - {""}
            statuses = sorted({one.status for one in tries})
            print(
                name,
                number.name,
                len(tries),
                "/".join(f"{sum(one.status == s for one in tries)} x {s}" for s in statuses),
                f"{max(one.took_s for one in tries):.2f} s",
                "; ".join(sorted(wrong)) or "-",
                sep="\t",
                flush=True,
            )


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("commands", nargs="*")
    parser.add_argument("--moments", type=int, default=10)
    parser.add_argument("--early", type=int, default=10)
    asked = parser.parse_args()
    signal.signal(
        signal.SIGINT, signal.default_int_handler
    )  # heard, though begun in the background
    print("command", "signal", "moments", "statuses", "longest to the end", "odd", sep="\t")
    with tempfile.TemporaryDirectory() as given:
        lay_out(Path(given))
        for name in asked.commands or COMMANDS:
            rows(name, asked.moments, asked.early, Path(given))


if __name__ == "__main__":
    main()
